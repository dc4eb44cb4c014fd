"""Column headings put together of words that nobody listed: ParameterValue, detect_limit_value, sample_coll_date."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from wellchem.vocabulary.meanings import ColumnMeaning, ColumnRole
from wellchem.vocabulary.tables import Row

# A hump of CamelCase, and whatever is no letter or digit, part words.
_HUMP = re.compile(r"(?<=[a-z0-9])(?=[A-Z])|(?<=[A-Z])(?=[A-Z][a-z])")
_PART = re.compile(r"[^\W_]+")
_LONGEST = 7
_ANY = "*"


def heading_words(text: str) -> tuple[str, ...]:
    """The single words of a heading in small letters."""
    return tuple(word.casefold() for word in _PART.findall(_HUMP.sub(" ", text)))


def shared_prefix(headings: Iterable[str]) -> str:
    """A first word and its low line with which four of five headings of a table begin (`GM_RESULT`), else nothing."""
    texts = [text for text in headings if text]
    starts = [text.partition("_")[0] + "_" for text in texts if "_" in text.strip("_")]
    best = max(set(starts), key=starts.count, default="")
    return best if len(texts) >= 4 and starts.count(best) * 5 >= len(texts) * 4 else ""


@dataclass(frozen=True)
class _Row:
    """A role, groups of words of which a heading has one each, and words that it may have besides."""

    meaning: ColumnMeaning
    needs: tuple[frozenset[str], ...]
    may: frozenset[str]

    def fits(self, words: tuple[str, ...]) -> bool:
        """Whether each group gives a word of its own, and every other word is one of the row's."""
        left = list(words)
        for group in self.needs:
            found = next((word for word in reversed(left) if word in group), None)
            if found is None:
                return False
            left.remove(found)
        allowed = self.may.union(*self.needs)
        return _ANY in self.may or all(word in allowed for word in left)


class ColumnWords:
    """The rows of `column_words.csv`; the first that explains every word of a heading gives its role.

    A row whose `may` is `*` lets any other word pass, in headings that are one code (`WELL_UID`) alone.
    """

    def __init__(self, rows: Iterable[Row]) -> None:
        self._rows = [
            _Row(
                ColumnMeaning(ColumnRole(row["role"]), note=row["note"]),
                tuple(frozenset(group.split()) for group in row["needs"].split(";")),
                frozenset(row["may"].split()),
            )
            for row in rows
        ]

    def meaning(self, text: str) -> ColumnMeaning | None:
        """What a heading of two words and more says, or None where a word of it is left over."""
        words = heading_words(text)
        if not 2 <= len(words) <= _LONGEST:
            return None
        coded = text.isascii() and not any(letter in text for letter in " :")
        rows = (row for row in self._rows if coded or _ANY not in row.may)
        return next((row.meaning for row in rows if row.fits(words)), None)
