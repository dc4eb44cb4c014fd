"""Digits and separators to numbers, whatever the decimal sign."""

import re

from wellchem.vocabulary.text import clean

# A number with its separators, its exponent apart.
NUMBER = re.compile(
    r"([+-]?)((?:\d{1,3}(?:[ ']\d{3})+|\d+)?(?:[.,]\d+)*[.,]?)"
    r"(?:\s*(?:e|x\s*10\s*\^?|\*\s*10\s*\^?|·\s*10\s*\^?|×\s*10\s*\^?)\s*\(?([+-]?\d{1,2})\)?(?![\d.,]))?"
)
# Dates, times of day, fractions and telephone numbers.
DATE = re.compile(
    r"^\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}(?:[ t]\d.*)?$|^\d{1,2}:\d{2}|^\d{1,2}/\d{1,4}$|^\d{3}-\d{4}$"
    r"|^\(?\d{3}\)?[- ]\d{3}-\d{4}$"
)


def read_number(text: str, decimal: str | None) -> float | str | None:
    """The number that digits and separators stand for, "ambiguous" where the decimal sign would change it, else None.

    A separator that cannot part thousands is the decimal sign whatever the table's convention: `0,8`, `12.5`,
    `1.234,5`.
    """
    if not text or text in (".", ","):
        return None
    grouped = re.fullmatch(r"\d{1,3}(?:[ ']\d{3})+(?:([.,])\d+)?", text)
    if grouped:
        return float(text.replace(" ", "").replace("'", "").replace(",", "."))
    if " " in text or "'" in text:
        return None
    dots, commas = text.count("."), text.count(",")
    if not dots and not commas:
        return float(text)
    if dots and commas:
        last = max(text.rfind("."), text.rfind(","))
        sign, other = text[last], "," if text[last] == "." else "."
        whole = text[:last]
        if text.count(sign) > 1 or not re.fullmatch(rf"\d{{1,3}}(?:\{other}\d{{3}})+", whole):
            return None
        return float(whole.replace(other, "") + "." + (text[last + 1 :] or "0"))
    sign = "." if dots else ","
    thousands = re.fullmatch(rf"[1-9]\d{{0,2}}(?:\{sign}\d{{3}})+", text)
    if text.count(sign) > 1:
        return float(text.replace(sign, "")) if thousands else None
    if thousands and decimal != sign:
        return "ambiguous" if decimal is None else float(text.replace(sign, ""))
    return float(text.replace(sign, "."))


def decimal_votes(text: str) -> tuple[int, int]:
    """How surely a cell shows a decimal point and a decimal comma: (1, 0), (0, 1) or (0, 0)."""
    found = re.search(r"\d*(?:[ ']?\d{3})*[.,\d]+", clean(text))
    if found is None or not re.search(r"[.,]", found.group()):
        return 0, 0
    number = found.group().strip(".,")
    point, comma = read_number(number, "."), read_number(number, ",")
    if not isinstance(point, float) or point != comma:
        return 0, 0
    last = max(number.rfind("."), number.rfind(","))
    if last < 0 or DATE.match(clean(text)):
        return 0, 0
    if number.count(number[last]) > 1:
        return (0, 1) if number[last] == "." else (1, 0)
    return (1, 0) if number[last] == "." else (0, 1)
