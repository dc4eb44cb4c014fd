"""One normalisation of printed text, used by every part of the vocabulary and by the readers above it."""

import html
import re
import unicodedata
from functools import lru_cache

_RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻⁽⁾ᵃᵇᶜᵈᵉᶠᵍʰⁱʲᵏˡᵐⁿᵒᵖʳˢᵗᵘᵛʷˣʸᶻ"
_SUPERSCRIPTS = str.maketrans(_RAISED, "0123456789+-()abcdefghijklmnoprstuvwxyz")
_SUPERSCRIPT_RUN = re.compile(f"[{_RAISED}]+")
# What NFKC would change in meaning, or does not unify: ordinals used as degree signs, dashes, primes, blanks.
_SIGNS = str.maketrans(
    {
        **dict.fromkeys("ºª˚∘", "°"),
        **dict.fromkeys("‐‑‒–—―−﹣－", "-"),
        **dict.fromkeys("’‘′`´ʹ", "'"),
        **dict.fromkeys("“”″", '"'),
        **dict.fromkeys("⁄∕", "/"),
        **dict.fromkeys("⩽≦", "≤"),
        **dict.fromkeys("⩾≧", "≥"),
        **dict.fromkeys("\u00ad\u200b\u200c\u200d\u2060\ufeff", ""),
        **dict.fromkeys("•∙⋅‧", "·"),
    }
)
_GREEK = {"α": "alpha", "β": "beta", "γ": "gamma", "δ": "delta", "λ": "lambda", "ω": "omega", "σ": "sigma"}
_DEGREES = re.compile(r"(\d)°")
# A format of dates beside a header word: (mm/dd/yyyy), JJ/MM/AAAA hh:mm, TT.MM.JJJJ.
_DATE_FORMAT = re.compile(
    r"[\s,(\[-]+(?=\S*[/.-])(?:(?P<day>d{1,2}|j{1,2}|t{1,2})|(?P<month>m{1,3})|(?P<year>[yja]{4}))(?P<part>[-/.])(?:m{1,3}|d{1,2})(?P=part)"
    r"(?:[yja]{1,4}|d{1,2}|j{1,2}|t{1,2})(?:[\s,t]+h{1,2}:m{1,2}(?::ss)?)?\b\s*[)\]]?",
    re.IGNORECASE,
)
_TAGS = re.compile(r"</?(?:sub|sup|b|i|u|em|strong|small|span|font)(?:\s[^<>]*)?>", re.IGNORECASE)
_BLANKS = re.compile(r"\s+")


@lru_cache(maxsize=1 << 16)
def clean(text: str) -> str:
    """The text with one form for each sign and single blanks; case, accents and order stay.

    HTML entities are resolved, tags of letters set apart (`SO<sub>4</sub>`) left out, ligatures and full-width letters
    unified, all three micros become `µ`, all dashes `-`, and a run of superscripts becomes `^…` so that `10⁻³` and
    `SO₄²⁻` keep what they say.
    """
    if "</" in text:
        text = _TAGS.sub("", text)
    if text.isascii() and "&" not in text:
        return _BLANKS.sub(" ", text).strip()
    if "&" in text:
        text = html.unescape(text)
    text = _SUPERSCRIPT_RUN.sub(lambda run: "^" + run.group().translate(_SUPERSCRIPTS), text)
    text = unicodedata.normalize("NFKC", text.translate(_SIGNS)).replace("μ", "µ")
    return _BLANKS.sub(" ", text).strip()


@lru_cache(maxsize=1 << 16)
def fold(text: str) -> str:
    """The cleaned text without case and accents."""
    text = clean(text)
    if text.isascii():
        return text.lower()
    marks = unicodedata.normalize("NFD", text.casefold())
    return "".join(letter for letter in marks if not unicodedata.combining(letter))


@lru_cache(maxsize=1 << 16)
def squash(text: str) -> str:
    """Letters and digits of the folded text, and a degree sign that follows no digit ("T°"; "22 °C" is "22C")."""
    folded = fold(text)
    for letter, name in _GREEK.items():
        if letter in folded:
            folded = folded.replace(letter, name)
    return _DEGREES.sub(r"\1", "".join(letter for letter in folded if letter.isalnum() or letter == "°"))


@lru_cache(maxsize=1 << 16)
def words(text: str) -> str:
    """The folded text with every run of blanks and punctuation turned into one blank, for tables of phrases."""
    return " ".join("".join(letter if letter.isalnum() or letter in "°%#" else " " for letter in fold(text)).split())


def without_date_format(text: str) -> str:
    """A header without the format of dates that it ends with."""
    found = _DATE_FORMAT.search(text)
    return text[: found.start()] if found and found.end() == len(text) else text


def printed_day_first(text: str) -> bool | None:
    """Whether a format of dates in the text lets the day lead; None where there is none, or the year leads."""
    found = _DATE_FORMAT.search(text)
    return bool(found["day"]) if found and not found["year"] else None
