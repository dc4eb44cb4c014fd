"""Dates and times as laboratories print them: ISO, American and European orders, month names in four languages."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from datetime import datetime

_MONTHS = {
    "jan": 1, "january": 1, "janvier": 1, "januar": 1, "jänner": 1, "enero": 1, "ene": 1, "janv": 1,
    "feb": 2, "february": 2, "fevrier": 2, "fevr": 2, "fev": 2, "februar": 2, "febrero": 2,
    "mar": 3, "march": 3, "mars": 3, "marz": 3, "maerz": 3, "mrz": 3, "marzo": 3,
    "apr": 4, "april": 4, "avril": 4, "avr": 4, "abril": 4, "abr": 4,
    "may": 5, "mai": 5, "mayo": 5,
    "jun": 6, "june": 6, "juin": 6, "juni": 6, "junio": 6,
    "jul": 7, "july": 7, "juillet": 7, "juil": 7, "juli": 7, "julio": 7,
    "aug": 8, "august": 8, "aout": 8, "agosto": 8, "ago": 8,
    "sep": 9, "sept": 9, "september": 9, "septembre": 9, "septiembre": 9, "setiembre": 9,
    "oct": 10, "october": 10, "octobre": 10, "oktober": 10, "okt": 10, "octubre": 10,
    "nov": 11, "november": 11, "novembre": 11, "noviembre": 11,
    "dec": 12, "december": 12, "decembre": 12, "dezember": 12, "dez": 12, "diciembre": 12, "dic": 12,
}  # fmt: skip

_TIME = r"(?P<h>[01]?\d|2[0-4])(?:\s?[:hH.]\s?(?P<mi>[0-5]\d))?(?::(?P<s>[0-5]\d))?(?:\.\d+)?"
_ZONE = r"(?:\s*(?:Z|UTC|[A-Z]{2,4}T|[+-]\d{2}:?\d{2}|hrs?|hours?|Uhr|h))?"
_CLOCK = re.compile(
    rf"^(?:at |[àa] (?:las )?|um |@\s?)?(?:{_TIME}\s*(?P<half>[AaPp]\.?\s?[Mm]\.?)?"
    rf"|(?P<four>[0-2]\d[0-5]\d)(?P<ss>[0-5]\d)?){_ZONE}$"
)
_YEAR_FIRST = re.compile(r"^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:[T ,]+(.*))?$")
_YEAR_LAST = re.compile(r"^(\d{1,2})([-/.])\s?(\d{1,2})\2\s?(\d{4}|\d{2})(?:[T ,]+(.*))?$")
_SOLID = re.compile(r"^((?:19|20)\d{2})(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])(?:[T ]?(\d{4}(?:\d{2})?)|[T ](.*))?$")
_DAY_NAME = re.compile(
    r"^(\d{1,2})(?:\.|st|nd|rd|th|er)?[ \-/]*(?:de |of )?([^\W\d]{3,10})\.?,?"
    r"[ \-/]*(?:de |del )?(\d{4}|\d{2})(?:[t ,]+(.*))?$"
)
_NAME_DAY = re.compile(r"^([^\W\d]{3,10})\.?[ \-]*(\d{1,2})(?:st|nd|rd|th)?,?[ \-]*(\d{4})(?:[t ,]+(.*))?$")
_LONGEST = 40  # letters of a date
_WEEKDAY = re.compile(
    r"^(?:[^\W\d]{2,10}\.?,\s*|(?:(?:mon|tue|wed|thu|fri|sat|sun|lun|mer|jeu|ven|sam|dim|mi[eé]|jue|vie|s[aá]b|dom)[a-z]{0,7}"
    r"|mardi|martes|mo|di|mi|do|fr|sa|so|[a-z]{4,7}tag|mittwoch)\.?\s+(?=[^\W\d]*\.?\s?\d))",
    re.IGNORECASE,
)
# Where a date can stand in a line of words; the longest that is one is taken, with the time of day behind it.
_MONTH = rf"(?:{'|'.join(sorted(_MONTHS, key=len, reverse=True))})\b\.?"
_PLACE = re.compile(
    r"(?<![\w./-])(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}([-/.])\s?\d{1,2}\1\s?(?:\d{4}|\d{2})"
    rf"|\d{{1,2}}(?:\.|st|nd|rd|th|er)?[ /-]?(?:(?:de|of) )?{_MONTH},?[ /-]?(?:del? )?(?:\d{{4}}|(?<=[-/])\d{{2}})"
    rf"|{_MONTH}[ -]\d{{1,2}}(?:st|nd|rd|th)?,?[ -]\d{{4}})(?![\d/-])"
)
# A day, or a month of a year, in the title of a sheet.
_VISIT = re.compile(
    rf"(?<![\d.-])(?:\d{{1,4}}([-/._ ])\d{{1,2}}\1\d{{1,4}}"
    rf"|(?:19|20)\d{{2}}[-/._ ]?(?:0[1-9]|1[0-2])(?:[0-3]\d)?)(?![\d.])"
    rf"|(?:(?<!\d)\d{{1,2}}\W{{0,2}}|(?<![a-z])){_MONTH}\W{{0,2}}(?:\d{{1,2}}\W{{1,2}})?(?:\d{{4}}|\d{{2}})?(?!\d)"
)
_BEHIND = re.compile(
    r"(?:t|,?\s*(?:[-–]\s*)?(?:at |a las |um |a |@ ?|time:? )?)(?P<time>\d{1,2}(?:\s?[:h.]\s?[0-5]\d(?::[0-5]\d)?"
    r"(?:\s*[ap]\.?\s?m\b\.?)?|\s*[ap]\.?m\b\.?|\d{2}(?=\s*h)|\s?h\b)(?:\s*(?:hrs?|uhr|h)\b)?)(?!\d|[.:/-]\d)"
)


@dataclass(frozen=True)
class PrintedDate:
    """A date read once: `either` holds the second reading where day and month could be exchanged."""

    when: datetime
    timed: bool
    either: datetime | None = None


def clock(text: str) -> tuple[int, int, int] | None:
    """Hours, minutes and seconds of a printed time of day, or None."""
    found = _CLOCK.match(text.strip())
    if not found:
        return None
    if found["four"]:
        hours, minutes, seconds = int(found["four"][:2]), int(found["four"][2:]), int(found["ss"] or 0)
    else:
        if found["mi"] is None and not found["half"] and not re.search(r"[hH]|Uhr", text):
            return None  # a bare number is no time
        hours, minutes, seconds = int(found["h"]), int(found["mi"] or 0), int(found["s"] or 0)
        if found["half"]:
            if not 1 <= hours <= 12:
                return None
            hours = hours % 12 + (12 if found["half"][0] in "Pp" else 0)
    return (hours, minutes, seconds) if hours < 24 else None


def _made(year: int, month: int, day: int, rest: str | None) -> tuple[datetime, bool] | None:
    if year < 100:
        year += 2000 if year < 70 else 1900
    time = None
    if rest and rest.strip():
        time = clock(rest)
        if time is None:
            return None
    try:
        return datetime(year, month, day, *(time or (0, 0, 0))), time is not None
    except ValueError:
        return None


def parsed(text: str) -> PrintedDate | None:
    """The printed date, or None where the text is not a date and nothing else. A bare number of eight digits is one
    only as yyyymmdd."""
    if len(text) == 10 and text[4] == text[7] == "-":  # much the commonest in files of many rows
        try:
            return PrintedDate(datetime.fromisoformat(text), False)
        except ValueError:
            return None
    text = _WEEKDAY.sub("", text.strip())
    if not 6 <= len(text) <= _LONGEST or not any(letter.isdigit() for letter in text):
        return None
    if found := _YEAR_FIRST.match(text):
        made = _made(int(found[1]), int(found[3]), int(found[4]), found[5])
        return PrintedDate(*made) if made else None
    if found := _SOLID.match(text):
        made = _made(int(found[1]), int(found[2]), int(found[3]), found[4] or found[5])
        return PrintedDate(*made) if made else None
    if found := _YEAR_LAST.match(text):
        first, second, year, rest = int(found[1]), int(found[3]), int(found[4]), found[5]
        day_first = _made(year, second, first, rest)
        if found[2] == ".":  # with points the day always comes first
            return PrintedDate(*day_first) if day_first else None
        month_first = _made(year, first, second, rest)
        if month_first and day_first and first != second:
            return PrintedDate(*month_first, day_first[0])
        either = month_first or day_first
        return PrintedDate(*either) if either else None
    plain = "".join(c for c in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(c))
    for pattern, day, month in ((_DAY_NAME, 1, 2), (_NAME_DAY, 2, 1)):
        if found := pattern.match(plain):
            number = _MONTHS.get(found[month])
            if number:
                rest = text[len(text) - len(found[4] or "") :]  # as printed: a zone is told by its capitals
                made = _made(int(found[3]), number, int(found[day]), rest)
                return PrintedDate(*made) if made else None
    return None


@dataclass(frozen=True)
class PlacedDate:
    """A date in a line of words: its place there and its text, with the time of day behind it."""

    start: int
    end: int
    text: str


def dates_in(text: str) -> list[PlacedDate]:
    """Every date in a line of words, from left to right."""
    if not any(letter.isdigit() for letter in text):
        return []
    plain = "".join(_bare(letter) for letter in text)  # as long as the text: places stay
    found = []
    for place in _PLACE.finditer(plain):
        printed, end = text[place.start() : place.end()], place.end()
        if parsed(printed) is None:
            continue
        behind = _BEHIND.match(plain, end)
        if behind and clock(time := text[behind.start("time") : behind.end("time")].strip()):
            printed, end = f"{printed} {time}", behind.end()
        found.append(PlacedDate(place.start(), end, printed))
    return found


def visit_in(title: str) -> str:
    """The day or month that a sheet's title names, as printed; empty where it names none.

    It tells visits apart and is no date: whether the day or the month comes first may be open.
    """
    found = _VISIT.search("".join(_bare(letter) for letter in title).replace("_", " "))
    return found[0].strip() if found and any(letter.isdigit() for letter in found[0]) else ""


def _bare(letter: str) -> str:
    """A letter without case and accent."""
    return letter.lower() if letter.isascii() else (unicodedata.normalize("NFKD", letter)[0].lower() or letter)[0]


def day_leads(text: str) -> bool | None:
    """Whether the day comes before the month in a date in figures, as the date itself tells; None where it does not."""
    found = _YEAR_LAST.match(text)
    if not found or found[2] == ".":
        return None
    first, second = int(found[1]), int(found[3])
    return None if (first > 12) == (second > 12) else first > 12
