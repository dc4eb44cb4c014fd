"""What is typed onto a page rather than printed on it: fields, free text and comments, as characters in their place.

The shown text of a field is its value (PDF 32000-1:2008, 12.7); its place is its rectangle. The characters have the
attributes of pdfminer's `LTChar` that `chars.gather` takes, so that geometry does the rest.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from wellchem.reading.pdf.objects import on_page

LETTER = 0.5  # parts of the type size: how wide a typed letter is taken to be (common practice, no source)
DESCENT = 0.21  # how far a letter reaches below its baseline (Helvetica's)
PUSH_BUTTON, MULTILINE = 1 << 16, 1 << 12  # flags of a field, tables 226 and 228 of the standard
HIDDEN, NO_VIEW = 1 << 1, 1 << 5  # flags of an annotation, table 165
SIZE = re.compile(rb"([\d.]+)\s+Tf")
SILENT = frozenset({"Link", "Popup", "Screen", "Movie", "Sound", "3D", "RichMedia", "TrapNet", "PrinterMark"})
BOXES = ("☐", "☒")
STRUCK = frozenset({"StrikeOut"})


@dataclass(frozen=True)
class Typed:
    """A character typed onto a page; `seen` is false where the page does not show it."""

    _text: str
    matrix: tuple[float, float, float, float, float, float]
    x0: float
    y0: float
    x1: float
    y1: float
    size: float
    seen: bool
    fontname: str = "typed"


def typed(page: Any, printed: Sequence[Any]) -> tuple[list[Typed], list[tuple[float, float, float]]]:
    """Characters typed onto a page (pdfplumber's), and strokes (y, x0, x1) by which comments strike text out.

    A field whose text is also printed in its place is left to what is printed.
    """
    from pdfminer.pdftypes import resolve1

    found: list[Typed] = []
    strokes: list[tuple[float, float, float]] = []
    for reference in resolve1(page.page_obj.annots) or []:
        annotation = resolve1(reference)
        rectangle = [resolve1(edge) for edge in resolve1(annotation.get("Rect")) or []] if _is_dict(annotation) else []
        if len(rectangle) != 4:
            continue
        kind = _name(annotation.get("Subtype"))
        box = on_page(page, rectangle)
        if kind in STRUCK:
            strokes.append(((box[1] + box[3]) / 2, box[0], box[2]))
        text = _field_text(annotation) if kind == "Widget" else "" if kind in SILENT else _words(annotation, "Contents")
        if not text.strip() or _is_printed(text, box, printed):
            continue
        flags = int(resolve1(annotation.get("F")) or 0)
        seen = kind in ("Widget", "FreeText") and not flags & (HIDDEN | NO_VIEW)
        found += _characters(annotation, text, box, _turn(page, annotation), seen, printed)
    return found, strokes


def _is_dict(value: Any) -> bool:
    return isinstance(value, dict)


def _name(value: Any) -> str:
    """A name of the file as text."""
    from pdfminer.psparser import literal_name

    return str(literal_name(value)) if value is not None else ""


def _inherited(annotation: Any, key: str) -> Any:
    """An entry of a field, or of the fields above it."""
    from pdfminer.pdftypes import resolve1

    for _ in range(32):
        if not _is_dict(annotation):
            return None
        value = resolve1(annotation.get(key))
        if value is not None:
            return value
        annotation = resolve1(annotation.get("Parent"))
    return None


def _decoded(value: Any) -> str:
    """A string of the file as text."""
    from pdfminer.pdftypes import PDFStream
    from pdfminer.utils import decode_text

    data = value.get_data() if isinstance(value, PDFStream) else value
    if isinstance(data, bytes):
        return data[3:].decode("utf-8", "replace") if data.startswith(b"\xef\xbb\xbf") else decode_text(data)
    return data if isinstance(data, str) else ""


def _words(annotation: Any, key: str) -> str:
    return _decoded(_inherited(annotation, key))


def _field_text(field: Any) -> str:
    """What a field shows: its text, its choices, a ticked or an empty box."""
    from pdfminer.pdftypes import resolve1

    kind = _name(_inherited(field, "FT"))
    if kind == "Btn":
        if int(_inherited(field, "Ff") or 0) & PUSH_BUTTON:
            return ""
        return BOXES[_name(resolve1(field.get("AS"))) not in ("", "Off")]
    if kind not in ("Tx", "Ch"):
        return ""
    value = _inherited(field, "V")
    chosen = [_decoded(resolve1(one)) for one in (value if isinstance(value, list) else [value])]
    pairs = [resolve1(option) for option in _inherited(field, "Opt") or []] if kind == "Ch" else []
    shown = {_decoded(resolve1(pair[0])): _decoded(resolve1(pair[1])) for pair in pairs if isinstance(pair, list)}
    return ", ".join(shown.get(text, text) for text in chosen if text)


def _turn(page: Any, annotation: Any) -> int:
    """Quarter turns of a field's text against the page as it is shown: none where the field does not say."""
    from pdfminer.pdftypes import resolve1

    look = resolve1(annotation.get("MK"))
    turn = resolve1(look.get("R")) if _is_dict(look) else None
    return int(turn - page.page_obj.rotate) // 90 % 4 if turn is not None else 0


def _is_printed(text: str, box: tuple[float, float, float, float], printed: Sequence[Any]) -> bool:
    """Whether the characters printed inside a rectangle spell the text."""
    inside = [
        char._text
        for char in printed
        if box[0] - 1 <= (char.x0 + char.x1) / 2 <= box[2] + 1 and box[1] - 1 <= (char.y0 + char.y1) / 2 <= box[3] + 1
    ]
    return "".join("".join(inside).split()) == "".join(text.split())


def _characters(
    annotation: Any, text: str, box: tuple[float, float, float, float], turn: int, seen: bool, printed: Sequence[Any]
) -> Iterator[Typed]:
    """The characters of a text in its rectangle, upright but for its quarter turns."""
    width, height = box[2] - box[0], box[3] - box[1]
    if turn % 2:
        width, height = height, width
    look = _inherited(annotation, "DA")
    told = SIZE.search(look) if isinstance(look, bytes) else None
    size = float(told[1]) if told else 0.0
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    one = (
        len(lines) == 1 and (height < 2.4 * size or not size) and not int(_inherited(annotation, "Ff") or 0) & MULTILINE
    )
    if not size:
        size = min(12.0, 0.7 * height) if one else 9.0
    if not one:
        lines = [part for line in lines for part in _wrapped(line, width / (LETTER * size))]
    for number, line in enumerate(lines):
        step = width if line in BOXES else min(LETTER * size, width / max(len(line), 1))
        base = (height - size) / 2 + DESCENT * size if one else height - (1.2 * number + 1 - DESCENT) * size - 2
        if not turn:  # on the baseline of the words beside it
            base += _to_baseline(box[1] + base, size, box, printed)
        start = {1: (width - step * len(line)) / 2, 2: width - step * len(line)}.get(
            int(_inherited(annotation, "Q") or 0), 1.0 if line not in BOXES else 0.0
        )
        for at, letter in enumerate(line):
            u = start + step * at
            corners = [
                _placed(box, turn, u, base - DESCENT * size),
                _placed(box, turn, u + step, base + (1 - DESCENT) * size),
            ]
            (x_a, y_a), (x_b, y_b) = corners
            cosine, sine = ((1, 0), (0, 1), (-1, 0), (0, -1))[turn]
            yield Typed(
                letter, (cosine, sine, -sine, cosine, *_placed(box, turn, u, base)),
                min(x_a, x_b), min(y_a, y_b), max(x_a, x_b), max(y_a, y_b), size, seen,
            )  # fmt: skip


def _placed(box: tuple[float, float, float, float], turn: int, u: float, v: float) -> tuple[float, float]:
    """A point of a turned rectangle: u along its text, v upwards from it."""
    return (
        (box[0] + u, box[1] + v), (box[2] - v, box[1] + u), (box[2] - u, box[3] - v), (box[0] + v, box[3] - u),
    )[turn]  # fmt: skip


def _to_baseline(base: float, size: float, box: tuple[float, float, float, float], printed: Sequence[Any]) -> float:
    """How far the nearest printed baseline of a rectangle's height lies from a typed one."""
    near = [char.matrix[5] - base for char in printed if char.matrix[1] == 0 and box[1] - 1 <= char.matrix[5] <= box[3]]
    step = min(near, key=abs, default=0.0)
    return step if abs(step) < 0.6 * size else 0.0


def _wrapped(line: str, most: float) -> list[str]:
    """A line of text in parts of at most so many letters."""
    parts: list[str] = []
    for word in line.split():
        if parts and len(parts[-1]) + 1 + len(word) <= most:
            parts[-1] += f" {word}"
        else:
            parts.append(word)
    return parts or [""]
