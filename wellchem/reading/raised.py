"""Raised letters and figures, kept apart from the number that they stand beside: `0.31²` is never 0.312."""

from __future__ import annotations

from typing import Any

_PLAIN = "0123456789+-−–=()abcdefghijklmnoprstuvwxyzABDEGHIJKLMNOPRTUVW"
_RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻⁻⁻⁼⁽⁾ᵃᵇᶜᵈᵉᶠᵍʰⁱʲᵏˡᵐⁿᵒᵖʳˢᵗᵘᵛʷˣʸᶻᴬᴮᴰᴱᴳᴴᴵᴶᴷᴸᴹᴺᴼᴾᴿᵀᵁⱽᵂ"
_TABLE = str.maketrans(_PLAIN, _RAISED)
# Signs that are raised by their drawing, or that separate raised ones; and those of Unicode that are raised already.
_AS_THEY_ARE = frozenset("*†‡§¶°™®©,'\"′″#^~. \u00a0" + _RAISED + "⁄")


def superscript(text: str) -> str:
    """Raised text in Unicode's raised characters; apart by a blank where Unicode has none for one of them."""
    if all(character in _PLAIN or character in _AS_THEY_ARE for character in text):
        return text.translate(_TABLE)
    return f" {text} "


def raised_text(runs: Any) -> tuple[str, str]:
    """Text of a spreadsheet's rich text with its raised runs in raised characters; and those runs alone."""
    written: list[str] = []
    raised: list[str] = []
    for run in runs:
        font = getattr(run, "font", None)
        text = run if isinstance(run, str) else str(run.text or "")
        if font is not None and font.vertAlign == "superscript" and text.strip():
            raised.append(text.strip())
            text = superscript(text)
        written.append(text)
    return "".join(written), " ".join(raised)
