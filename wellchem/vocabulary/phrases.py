"""Text around the tables: section titles, quality-control titles, labels of a sample's head, furniture, and the cells
of columns that hold a closed set of words (fraction, matrix, sample type, limit type, point)."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from wellchem.models.codes import Fraction, Measured, Role, SamplingPoint
from wellchem.vocabulary.columns import Columns
from wellchem.vocabulary.meanings import ColumnRole, PhraseKind, PhraseMeaning
from wellchem.vocabulary.tables import Row
from wellchem.vocabulary.text import clean, fold, words

# Roles of column headers that may as well label a line of a sample's head.
_HEAD_ROLES = {
    ColumnRole.SAMPLE_ID, ColumnRole.SITE, ColumnRole.POINT, ColumnRole.DATE_COLLECTED, ColumnRole.TIME_COLLECTED,
    ColumnRole.DATE_RECEIVED, ColumnRole.DATE_ANALYSED, ColumnRole.MATRIX, ColumnRole.LABORATORY, ColumnRole.LATITUDE,
    ColumnRole.LONGITUDE, ColumnRole.WELL_DEPTH, ColumnRole.AQUIFER, ColumnRole.PRESERVED, ColumnRole.SAMPLE_TYPE,
    ColumnRole.ADMINISTRATIVE,
}  # fmt: skip
# Roles of column headers that may as well label a row, or a table, that is no sample's.
_LABELS = {
    ColumnRole.LIMIT, ColumnRole.STATISTIC, ColumnRole.PREVIOUS, ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT,
    ColumnRole.UNCERTAINTY,
}  # fmt: skip
_ORDINAL = re.compile(r"(?:19|20)\d\d|\d{1,2}(?:st|nd|rd|th|%)")
_PAGE = re.compile(r"^(?:page|seite|pagina|pag\.?|p\.)\s*\d+(?:\s*(?:of|de|von|/|sur)\s*\d+)?$|^\d+\s*/\s*\d+$")
# A legend's line: a code and its meaning, or a mark (a sign, a raised or bracketed letter or digit) and its meaning.
_LEGEND_LINE = re.compile(
    r"^[\[({]?(?P<code>[A-Z0-9]{1,5}[+-]?|[a-z\d]|[*†‡§#<>]{1,3})[\])}.]?(?:\s*[=:]\s*|\s+(?:-|means|is)\s+)(?P<said>\D*[A-Za-z]{3}.*)$"
    r"|^(?P<unit>\S{1,12})\s*=\s*(?P<name>\D*[A-Za-z]{3}.*)$"
    r"|^(?P<mark>[*†‡§#]{1,3}|\^[a-z\d]{1,2}|\([a-z\d]\)(?=\s))\s*(?P<note>[A-Za-z]\S* .*)$"
)
# A compound labelled with carbon-13 or deuterium was added by the laboratory: a surrogate or an internal standard.
_LABELLED = re.compile(r"^\(?13c\d{0,2}[)-]?[\s-]*[a-z]{2}|^d\d{1,2}-[a-z]{3}|[a-z)]-d\d{1,2}$")
_CONTROL = (PhraseKind.QUALITY_CONTROL, PhraseKind.SURROGATES)
_ID_WORDS = re.compile(r"[A-Za-z]+|\d+")
_UUID = re.compile(r"^\{?[0-9a-fA-F]{8}(?:-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}\}?$")
_GLUED = re.compile(r"^([A-Z]{2,})(BLANK|BLNK|DUP)$")

# A word of a cell that says the kind of a sample, whatever else stands in it.
_ROLES_BY_WORD = {
    "blank": Role.BLANK, "blanks": Role.BLANK, "spike": Role.SPIKE, "spiked": Role.SPIKE,
    "duplicate": Role.DUPLICATE, "replicate": Role.DUPLICATE, "split": Role.DUPLICATE,
}  # fmt: skip


@dataclass
class Phrases:
    """Phrases by kind; exact, or as the beginning of a line where the row says so."""

    rows: Iterable[Row]
    word_rows: Iterable[Row]
    fractions: Mapping[str, Fraction]
    columns: Columns
    _exact: dict[tuple[str, str], str] = field(init=False, default_factory=dict)
    _starts: list[tuple[str, str, str]] = field(init=False, default_factory=list)
    _section: set[str] = field(init=False, default_factory=set)
    _fractions: dict[str, Fraction] = field(init=False, default_factory=dict)
    _measured: dict[str, Measured] = field(init=False, default_factory=dict)
    _control: set[str] = field(init=False, default_factory=set)
    _end_codes: set[str] = field(init=False, default_factory=set)
    _noise: set[str] = field(init=False, default_factory=set)
    _known: dict[str, PhraseMeaning | None] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        self._fractions.update(self.fractions)
        for row in self.rows:
            key = words(row["phrase"])
            if row["kind"] in ("section_word", "section_link"):
                self._section.add(key)
            self._exact[row["kind"], key] = row["value"]
            if row["kind"] == "fraction_cell":
                self._fractions[key] = Fraction(row["value"])
            if row["match"] == "end":
                self._end_codes.add(key)
            if row["kind"] in ("quality_control", "surrogates", "control_word"):
                self._control.update(key.split())
            if row["match"] == "start":
                self._starts.append((key, row["kind"], row["value"]))
        self._starts.sort(key=lambda start: -len(start[0]))
        for row in self.word_rows:
            if row["kind"] == "measured":
                self._measured[words(row["words"])] = Measured(row["value"])
            elif row["kind"] in ("method", "noise"):
                self._noise.add(words(row["words"]))

    def meaning(self, text: str) -> PhraseMeaning | None:
        """What a line or cell outside a table's body says (see Vocabulary.phrase)."""
        if text not in self._known:
            self._known[text] = self._meaning(clean(text))
        return self._known[text]

    def fraction(self, text: str) -> Fraction | None:
        """A cell of a fraction column, or None."""
        return self._fractions.get(words(text))

    def date_word(self, word: str, kind: str) -> str:
        """What a word says of a date near it, empty where nothing (see Vocabulary.date_word)."""
        return self._exact.get((kind, words(word)), "")

    def measured(self, text: str) -> Measured | None:
        """Field or laboratory, from a cell or an activity type."""
        key = words(text)
        if key.startswith("field msr"):
            return Measured.FIELD
        return self._measured.get(key)

    def sample_role(self, text: str) -> Role | None:
        """The role of a cell of a sample-type or activity-type column; None where it is unknown."""
        key = words(text)
        for kind in ("sample_type", "quality_control", "surrogates"):
            if found := self._exact.get((kind, key)):
                return Role(found)
        if key.startswith("quality control"):  # "Quality Control Sample-Lab Matrix Spike Duplicate"
            return next((_ROLES_BY_WORD[word] for word in key.split() if word in _ROLES_BY_WORD), Role.CONTROL)
        if key.startswith("sample routine"):  # "Sample - Routine, with an associated replicate" is no replicate
            return Role.ROUTINE
        if key.startswith("sample ") and (role := _ROLES_BY_WORD.get(key.split()[-1])):  # "Sample-Field Blank"
            return role
        return Role.ROUTINE if fold(text).startswith(("sample-", "sample -", "field msr")) else None

    def id_role(self, text: str) -> Role | None:
        """The role of a sample whose identifier is built of a quality-control code: `MB-1234`, `W-3 DUP`, `Trip Blank`.

        A code of letters only counts in capitals at an end of an identifier that has digits, or alone; a short one that
        may as well be somebody's initials (`BS-12`) only behind the digits. A day may follow it (`W-3 DUP 101726`), and
        in one word with letters before it and the day behind it (`ELMBLANK090626`) it counts in capitals.
        """
        if _UUID.match(text):
            return None
        parts = _ID_WORDS.findall(clean(text))
        numbered = any(part.isdigit() for part in parts)
        if len(parts) > 1 and parts[-1].isdigit() and len(parts[-1]) in (5, 6, 8):
            *parts, _ = parts
            if glued := _GLUED.match(parts[-1]):
                parts[-1:] = glued.groups()
        for size in (3, 2, 1):
            for place in {0, len(parts) - size} if len(parts) >= size else ():
                span = parts[place : place + size]
                found = self._exact.get(("id_role", fold(" ".join(span))))
                if found is None:
                    continue
                whole = size == len(parts)
                word = size > 1 or len(span[0]) > 4
                last = place + size == len(parts)
                long = last and len(span[0]) > 2  # "GW-1 dup", "North well dup"
                code = span[0].isupper() or (long and (span[0].istitle() or span[0].islower()))
                if whole or word or ((numbered or long) and code and (last or not self._only_at_end(span[0]))):
                    return Role(found)
        return None

    def _only_at_end(self, code: str) -> bool:
        return fold(code) in self._end_codes

    def is_water(self, text: str) -> bool | None:
        """Whether a matrix cell is water; None where it says neither."""
        found = self._exact.get(("matrix", words(text)))
        return None if found is None else found != "other"

    def matrix_role(self, text: str) -> Role | None:
        """The role of a sample whose matrix is water of quality control, as data standards code it; else None."""
        found = self._exact.get(("matrix", words(text)))
        return Role(found) if found not in (None, "water", "other") else None

    def point(self, text: str) -> SamplingPoint | None:
        """Where in the plumbing a cell or line says that the sample was taken; the words may stand among others."""
        key = words(text)
        if found := self._exact.get(("point", key)):
            return SamplingPoint(found)
        tokens = key.split()
        hits = []
        for size in range(min(5, len(tokens)), 0, -1):
            for place in range(len(tokens) - size + 1):
                found = self._exact.get(("point", " ".join(tokens[place : place + size])))
                if found and (size > 1 or found != "tap" or len(tokens) <= 4):
                    hits.append(SamplingPoint(found))
        order = (SamplingPoint.TAP_FIRST_DRAW, SamplingPoint.TAP_FLUSHED, SamplingPoint.AFTER_TREATMENT,
                 SamplingPoint.BEFORE_TREATMENT, SamplingPoint.WELL_HEAD, SamplingPoint.TAP)  # fmt: skip
        if {SamplingPoint.AFTER_TREATMENT, SamplingPoint.BEFORE_TREATMENT} <= set(hits) or {"before", "after"} <= set(
            tokens
        ):
            return None  # a line of both samples
        return next((point for point in order if point in hits), None)

    def is_rejected(self, text: str) -> bool:
        """Whether a cell of a column of the results' status says that the result is not to be used."""
        return ("rejected_status", words(text)) in self._exact

    def label_role(self, text: str) -> ColumnRole | None:
        """What a label of a row or of a whole table calls it: limits, statistics, earlier results; None for a sample's.

        Every word must be explained: by a header of such a column, as a year or an ordinal number, or as a word that
        goes with them ("WHO guideline value, 2022", "95th percentile of all wells"). An authority alone
        heads its limits.
        """
        tokens, place, role = words(text).split(), 0, None
        while place < len(tokens):
            for size in range(min(5, len(tokens) - place), 0, -1):
                word = " ".join(tokens[place : place + size])
                found = self.columns.meaning(word, "") if len(word) > 2 or size == len(tokens) else None
                if found is not None and found.role in _LABELS:
                    role = role or found.role
                elif self._exact.get(("label_word", word)) == "authority":
                    role = role or ColumnRole.LIMIT  # a row of an authority's values
                elif ("label_word", word) not in self._exact and not _ORDINAL.fullmatch(word):
                    continue
                place += size
                break
            else:
                return None
        return role

    def limit_role(self, text: str) -> ColumnRole | None:
        """Whether a limit-type cell names a reporting or a detection limit."""
        found = self._exact.get(("limit_type", words(text)))
        return ColumnRole(found) if found in ("reporting_limit", "detection_limit") else None

    def _meaning(self, printed: str) -> PhraseMeaning | None:
        key = words(printed)
        if not key:
            return None
        if _PAGE.match(fold(printed)):
            return PhraseMeaning(PhraseKind.FOOTER)
        if _LABELLED.search(fold(printed)):
            return PhraseMeaning(PhraseKind.QUALITY_CONTROL, role=Role.SPIKE)
        label, colon, rest = printed.partition(":")
        if ("legend", key) in self._exact:
            return PhraseMeaning(PhraseKind.LEGEND)
        for kind in (*_CONTROL, PhraseKind.TITLE):
            if (kind.value, key) in self._exact:
                return self._made(kind, self._exact[kind.value, key])
        if (field_ := self._head(label)) is not None and (colon or len(key.split()) <= 4):
            return PhraseMeaning(PhraseKind.SAMPLE_HEAD, field=field_, rest=rest.strip())
        if section := self._section_title(key):
            return section
        if (role := self.limit_role(printed)) is not None:
            return PhraseMeaning(PhraseKind.LIMIT_TYPE, limit_role=role)
        if (point := self._exact.get(("point", key))) is not None:
            return PhraseMeaning(PhraseKind.POINT, point=SamplingPoint(point))
        if (water := self.is_water(printed)) is not None:
            return PhraseMeaning(PhraseKind.MATRIX, water=water)
        if ("footer", key) in self._exact:
            return PhraseMeaning(PhraseKind.FOOTER)
        if (found := _LEGEND_LINE.match(printed)) and not (found["code"] or "").isdigit():
            code, said = (
                found["code"] or found["unit"] or found["mark"],
                found["said"] or found["name"] or found["note"],
            )
            return PhraseMeaning(PhraseKind.LEGEND, rest=said.strip(), note=code.strip("^()"))
        if (role_ := self.sample_role(printed)) is not None and role_ is not Role.ROUTINE:
            return PhraseMeaning(PhraseKind.SAMPLE_TYPE, role=role_)
        for start, kind_word, value in self._starts:
            if key.startswith(start) and (len(key) == len(start) or key[len(start)] == " "):
                return self._started(printed, start, PhraseKind(kind_word), value)
        return None if role_ is None else PhraseMeaning(PhraseKind.SAMPLE_TYPE, role=role_)

    def _started(self, printed: str, start: str, kind: PhraseKind, value: str) -> PhraseMeaning | None:
        """A line that begins as a known phrase.

        After a single word of quality control only numbers and such words may follow ("MB 240311-1", "Spike Recovery";
        not "Ms Smith", "Blank Road"), and a code of up to four letters stands in capitals.
        """
        if kind in _CONTROL and " " not in start:
            code = printed[: len(start)]
            others = words(printed[len(start) :]).split()
            follows = printed[len(start) :].lstrip()[:1] in (":", "(")
            if len(start) <= 4 and not code.isupper():
                return None
            if not follows and not all(
                word in self._control or (word.isalnum() and not word.isalpha()) for word in others
            ):
                return None
        return self._made(kind, value)

    def _made(self, kind: PhraseKind, value: str) -> PhraseMeaning:
        return PhraseMeaning(kind, role=Role(value) if value and kind in _CONTROL else None)

    def _head(self, label: str) -> ColumnRole | None:
        if (known := self._exact.get(("head", words(label)))) is not None:
            return ColumnRole(known)
        column = self.columns.meaning(label, "")
        return column.role if column and column.role in _HEAD_ROLES and not column.standard else None

    def _section_title(self, key: str) -> PhraseMeaning | None:
        """A title of which every word is of a section, a fraction, a place of measurement or a method."""
        tokens = key.split()
        place, subject, fractions, measured, role = 0, False, set(), None, None
        if key in self._fractions and len(key) > 2:
            return PhraseMeaning(PhraseKind.SECTION, fraction=self._fractions[key])
        while place < len(tokens):
            for size in range(min(6, len(tokens) - place), 0, -1):
                word = " ".join(tokens[place : place + size])
                if word in self._section:
                    subject = subject or ("section_link", word) not in self._exact
                    where = self._exact.get(("section_measured", word))
                    measured = Measured(where) if where else measured
                    role = Role(told) if (told := self._exact.get(("section_word", word))) else role
                elif len(word) > 1 and word in self._fractions:
                    fractions.add(self._fractions[word])
                elif word in self._measured:
                    measured = self._measured[word]
                elif word not in self._noise and not word.isdigit():
                    continue
                place += size
                break
            else:
                return None
        if not subject or len(fractions) > 1:
            return None
        return PhraseMeaning(PhraseKind.SECTION, fraction=next(iter(fractions), None), measured=measured, role=role)
