"""Dates inside lines of words ("taken on 9 February 2026 and received on the 10th"): which of them says what."""

from __future__ import annotations

import re

import numpy as np

from wellchem.reading.dates import dates_in, parsed
from wellchem.reading.grid import Source
from wellchem.reading.tables.cells import Lexicon
from wellchem.reading.tables.heads import label
from wellchem.vocabulary import ColumnRole
from wellchem.vocabulary.text import printed_day_first

_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?")
_CLAUSE = re.compile(r"(?<!\b[^\W\d_])\.(?=\s)|[;|]")  # what is said before it is not said of a date behind it
_JOINED = re.compile(r"\s*(?:\b(?:and|und|et|y)\b|[,.;]|$)")
_LABEL = 5  # words of a label at most
_SENTENCE = 40  # letters of a line that is broken within a sentence, at least
_HEAD = 300  # rows of a grid in which a format of dates is looked for
_SAID = (ColumnRole.DATE_COLLECTED, ColumnRole.DATE_RECEIVED, ColumnRole.DATE_ANALYSED)


def dates_said(lexicon: Lexicon, begun: str, text: str) -> dict[str, str]:
    """Fields of a sample's head and the dates that a line gives for them; its sentence may have `begun` before it.

    The words before a date decide: a label directly before it, else the nearest verb of its clause; else the only
    verb behind it. A field with two different dates is not said at all.
    """
    places = dates_in(text)
    told: dict[str, set[str]] = {}
    start, before = 0, begun
    for place, date in enumerate(places):
        before = f"{before} {text[start : date.start]}"
        start = date.end
        role = _before(lexicon, before)
        if role is None:
            stop = places[place + 1].start if place + 1 < len(places) else len(text)
            role, start = _behind(lexicon, text, date.end, stop)
        if role in _SAID:
            told.setdefault(str(role), set()).add(date.text)
        before = ""
    return {field: dates.pop() for field, dates in told.items() if len(dates) == 1}


def clause_begun(text: str) -> str:
    """The end of a line whose sentence goes on in the next one, empty where it does not."""
    dates = dates_in(text)
    rest = _CLAUSE.split(text[dates[-1].end if dates else 0 :])[-1]
    return rest if len(text) >= _SENTENCE and text[-1] not in ".:;!?" else ""


def with_dates(lexicon: Lexicon, said: dict[str, str]) -> dict[str, str]:
    """The same, where a labelled date was printed with words about it ("by the owner, 14 April 2026, 9:10").

    Of a span of days the analyses began on the first; a sample was not taken on either.
    """
    for field in map(str, _SAID):
        text = said.get(field, "")
        if text and not parsed(text):
            found = dates_in(text)
            spans = 2 if field == ColumnRole.DATE_ANALYSED else 1
            if 1 <= len(found) <= spans and not _barred(lexicon, text[: found[0].start]):
                said = {**said, field: found[0].text}
    return said


def day_first_printed(source: Source) -> bool | None:
    """Whether the source prints that the day leads in its dates ("Collected (dd/mm/yyyy)"); None where it does not."""
    told: set[bool | None] = set()
    for grid in source.grids:
        for column in grid.columns:
            texts = (str(column.texts[code]) for code in np.unique(column.codes[:_HEAD]) if code >= 0)
            told.update(printed_day_first(text[:200]) for text in texts)
    told.discard(None)
    return told.pop() if len(told) == 1 else None


def _before(lexicon: Lexicon, before: str) -> ColumnRole | None:
    """What a date is by the words before it: `administrative` where it is no day of this sample."""
    clause = _CLAUSE.split(before)[-1]
    words = list(_WORD.finditer(clause))
    if _barred(lexicon, clause) or any(lexicon.vocabulary.date_word(word[0], "date_past") for word in words):
        return ColumnRole.ADMINISTRATIVE
    for end in range(
        len(words), max(0, len(words) - 3), -1
    ):  # the last words may only lead to the date: "le", "on the"
        for first in range(max(0, end - _LABEL), end):
            field = label(lexicon, clause[words[first].start() : words[end - 1].end()])
            if field in _SAID:
                return ColumnRole(field)
    verbs = (lexicon.vocabulary.date_word(word[0]) for word in reversed(words))
    return next((ColumnRole(verb) for verb in verbs if verb), None)


def _behind(lexicon: Lexicon, text: str, start: int, stop: int) -> tuple[ColumnRole | None, int]:
    """What a date is by the one verb behind it that closes its clause ("am 3. März entnommen und"), and its end."""
    clause = _CLAUSE.split(text[start:stop])[0]
    verbs = [(verb, word.end()) for word in _WORD.finditer(clause) if (verb := lexicon.vocabulary.date_word(word[0]))]
    if len({verb for verb, _ in verbs}) != 1:
        return None, start
    verb, end = verbs[-1]
    closed = stop == len(text) or _JOINED.match(text, start + end)
    return (ColumnRole(verb), start + end) if closed else (None, start)


def _barred(lexicon: Lexicon, before: str) -> bool:
    """Whether the words directly before a date say that nothing happened on it ("before", "week of")."""
    return any(lexicon.vocabulary.date_word(word, "date_bar") for word in _WORD.findall(before)[-2:])
