"""Printed column headers: which role a column has, in reports and in data standards."""

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from wellchem.models.codes import Fraction
from wellchem.vocabulary.column_words import ColumnWords
from wellchem.vocabulary.meanings import ColumnMeaning, ColumnRole
from wellchem.vocabulary.tables import Row
from wellchem.vocabulary.text import clean, without_date_format, words
from wellchem.vocabulary.units import Units

# The context of headings that mean a statistic right of another one, and something else by themselves (STD).
BESIDE_STATISTIC = "beside a statistic"
_MARKS = re.compile(r"[*†‡§:?]+$|\^\(?[\da-z]\)?|^\*+|[(\[{]\d[)\]}]$")
# Roles whose header may carry a unit: "RL (mg/L)", "Result, µg/L".
_WITH_UNIT = {
    ColumnRole.VALUE, ColumnRole.VALUE_NUMBER, ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT, ColumnRole.LIMIT,
    ColumnRole.UNCERTAINTY, ColumnRole.PREVIOUS, ColumnRole.STATISTIC, ColumnRole.WELL_DEPTH, ColumnRole.SPIKE_AMOUNT,
    ColumnRole.LIMIT_VALUE,
}  # fmt: skip
# A second number in the cells of the results: "Result (MCL)", "Activity ± uncertainty (MDC)", "Result / Limit".
_SECOND = re.compile(
    r"(?P<value>[^()\[\]/±]+?)\s*(?:(?:±|\+/-)[^()\[\]]*)?(?:[(\[](?P<inside>[^()\[\]]+)[)\]]|/(?P<behind>[^()\[\]/]+))"
)
_BEHIND = {ColumnRole.LIMIT, ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT, ColumnRole.PREVIOUS}
_LONGEST = 300  # letters of a heading at most: a row of thousands of cells is none
_RESULTS = (ColumnRole.VALUE, ColumnRole.VALUE_NUMBER)


def _key(text: str) -> str:
    return words(text).replace(" ", "") or clean(text)


@dataclass
class Columns:
    """Every header that is known; headers of data standards keep the standard's name."""

    rows: Iterable[Row]
    word_rows: Iterable[Row]
    units: Units
    fractions: Mapping[str, Fraction]
    _headers: dict[str, list[ColumnMeaning]] = field(init=False, default_factory=dict)
    _known: dict[tuple[str, str], ColumnMeaning | None] = field(init=False, default_factory=dict)
    _words: ColumnWords = field(init=False)

    def __post_init__(self) -> None:
        for row in self.rows:
            made = ColumnMeaning(
                ColumnRole(row["role"]),
                Fraction(row["fraction"]) if row.get("fraction") else None,
                row.get("unit", ""),
                row.get("standard", ""),
                row.get("group", ""),
                row.get("note", ""),
            )
            self._headers.setdefault(_key(row["header"]), []).append(made)
        self._words = ColumnWords(self.word_rows)

    def meaning(self, text: str, standard: str) -> ColumnMeaning | None:
        """What a header says (see Vocabulary.column)."""
        if len(text) > _LONGEST:
            return None
        key = (text, standard)
        if key not in self._known:
            self._known[key] = self._meaning(clean(text), standard)
        return self._known[key]

    def standard(self, headers: Sequence[str]) -> str:
        """The data standard that most of the headers belong to, empty where they are a laboratory's own."""
        votes: Counter[str] = Counter()
        own: Counter[str] = Counter()
        for header in dict.fromkeys(headers):
            found = {meaning.standard for meaning in self._headers.get(_key(header), ())} - {BESIDE_STATISTIC}
            votes.update(found - {""})
            own.update(found if "" not in found else ())
        best = max(votes, key=lambda standard: (own[standard], votes[standard]), default="")
        return best if own[best] >= 3 and votes[best] * 3 >= len(set(headers)) else ""

    def _meaning(self, printed: str, standard: str) -> ColumnMeaning | None:
        for text in dict.fromkeys((printed, _MARKS.sub("", printed).strip(), without_date_format(printed))):
            if known := self._plain(text, standard):
                return known
            if made := self._with_unit(text, standard):
                return made
            if fraction := self._fraction(words(text)):
                return ColumnMeaning(ColumnRole.VALUE, fraction)
            if both := self._with_second(text, standard):
                return both
        return self._twice(printed, standard) or self._words.meaning(printed)

    def _with_second(self, text: str, standard: str) -> ColumnMeaning | None:
        """A header of results and of what stands behind each of them in its cell."""
        found = _SECOND.fullmatch(text)
        if found is None:
            return None
        value = self._meaning(found["value"], standard)
        inside = self._meaning((found["inside"] or found["behind"]).strip(), standard)
        if value is None or value.role is not ColumnRole.VALUE or inside is None or inside.role not in _BEHIND:
            return None
        return replace(value, brackets=inside.role)

    def _twice(self, text: str, standard: str) -> ColumnMeaning | None:
        """A header that says one thing twice, in two languages or two words: "Paramètre / Parameter"."""
        single = text.split()
        halves = [text.split("/")] + [[" ".join(single[:at]), " ".join(single[at:])] for at in range(1, len(single))]
        for parts in halves:
            known = [self._plain(part.strip(), standard) for part in parts]
            if len(parts) > 1 and known[0] is not None and len({one.role if one else None for one in known}) == 1:
                return known[0]
        return None

    def _fraction(self, text: str) -> Fraction | None:
        """The fraction that a whole header is; letters alone head other things."""
        return self.fractions.get(text) if len(text) > 3 else None

    def _plain(self, text: str, standard: str) -> ColumnMeaning | None:
        found = self._headers.get(_key(text), [])
        if standard != BESIDE_STATISTIC:
            found = [meaning for meaning in found if meaning.standard != BESIDE_STATISTIC]
        if not found:
            return None
        own = [meaning for meaning in found if standard and meaning.standard == standard]
        return (own or [meaning for meaning in found if not meaning.standard] or found)[0]

    def _with_unit(self, text: str, standard: str) -> ColumnMeaning | None:
        """A header followed or preceded by a unit, or a fraction with a unit: "Result (mg/L)", "Dissolved, µg/L"."""
        for place in range(1, len(text)):
            if text[place - 1] not in " ([,-_" and text[place] not in "([":
                continue
            head, tail = text[:place].rstrip(" ([,-_"), text[place:].strip(" ()[],")
            unit = re.sub(r"^in\s+", "", tail.replace("_", "/", 1) if "_" in tail else tail)
            if unit.isdigit():  # "Result 2" is one of several results; "N-1" is no number of samples
                if (known := self._plain(head, standard)) and known.role is ColumnRole.VALUE:
                    return known
                continue
            if not head or not self.units.parse(unit) or not self.units.is_printed(unit):
                continue
            if (word := self._plain(unit, standard)) and word.role is ColumnRole.UNIT:  # "detect_limit_unit"
                continue
            if known := self._plain(head, standard):
                numbered = not unit.strip("0123456789")  # "Result 2"; but "N-1" and "GW-2" are names of samples
                if known.role in (_RESULTS if numbered else _WITH_UNIT):
                    return replace(known, unit_text=unit)
            elif fraction := self._fraction(words(head)):
                return ColumnMeaning(ColumnRole.VALUE, fraction, unit)
        return None
