"""What laboratories print and what it means: names, units, values, column headers, phrases, qualifiers.

Data are the CSV tables of this folder; the meaning of a string is worked out once per distinct string and context.
"""

from collections.abc import Mapping, Sequence
from functools import cache, cached_property
from types import MappingProxyType

from wellchem.models.codes import Censoring, Fraction, Measured, Role, SamplingPoint
from wellchem.vocabulary import numerals as _numerals
from wellchem.vocabulary import values as _values
from wellchem.vocabulary.analytes import Analyte, analytes
from wellchem.vocabulary.codes import Codes
from wellchem.vocabulary.column_words import shared_prefix
from wellchem.vocabulary.columns import BESIDE_STATISTIC, Columns
from wellchem.vocabulary.forms import form_factor, printed_form, usual_forms
from wellchem.vocabulary.meanings import (
    Bound,
    ColumnMeaning,
    ColumnRole,
    Companion,
    Consequence,
    NameMeaning,
    PhraseKind,
    PhraseMeaning,
    QualifierMeaning,
    UnitMeaning,
    UnitProblem,
    ValueMeaning,
)
from wellchem.vocabulary.names import Names
from wellchem.vocabulary.phrases import Phrases
from wellchem.vocabulary.qualifiers import Qualifiers
from wellchem.vocabulary.tables import Row, Rows, bundled_rows, read_rows
from wellchem.vocabulary.text import clean, fold, squash, words
from wellchem.vocabulary.units import Units

__all__ = [
    "BESIDE_STATISTIC",
    "Analyte",
    "Bound",
    "ColumnMeaning",
    "ColumnRole",
    "Companion",
    "Consequence",
    "NameMeaning",
    "PhraseKind",
    "PhraseMeaning",
    "QualifierMeaning",
    "UnitMeaning",
    "UnitProblem",
    "ValueMeaning",
    "Vocabulary",
    "bundled",
    "clean",
    "fold",
    "squash",
    "words",
]

_TABLES = ("analytes", "names", "units", "columns", "phrases", "qualifiers", "values", "codes")
_FILES = {"values": "value_words"}


class Vocabulary:
    """Tables of printed strings and the grammars over them. Immutable: `extended` gives another one."""

    def __init__(self, added: Mapping[str, tuple[Row, ...]] = MappingProxyType({})) -> None:
        self._added = dict(added)
        self.analytes: Mapping[str, Analyte] = MappingProxyType(analytes(self._rows("analytes")))

    def _rows(self, table: str) -> tuple[Row, ...]:
        """Rows of one table, the added ones first; the bundled ones are read when they are first needed."""
        return (*self._added.get(table, ()), *bundled_rows(_FILES.get(table, table)))

    def extended(self, **rows: Rows) -> "Vocabulary":
        """This vocabulary with more rows, each table by its name, as a CSV path or mappings with the same columns.

        Tables: analytes, names, units, columns, phrases, qualifiers, values, codes. Added rows come before the
        bundled ones, so that they win. Raises ValueError for a table that there is not, KeyError for a missing column.
        """
        if unknown := set(rows) - set(_TABLES):
            raise ValueError(f"no table {', '.join(sorted(unknown))} in the vocabulary; there are {', '.join(_TABLES)}")
        more = {name: read_rows(given) + self._added.get(name, ()) for name, given in rows.items()}
        return Vocabulary(self._added | more)

    @cached_property
    def _units(self) -> Units:
        return Units(self._rows("units"), bundled_rows("unit_words"))

    @cached_property
    def _names(self) -> Names:
        return Names(
            self._rows("names"),
            bundled_rows("name_words"),
            bundled_rows("name_switches"),
            self.analytes,
            self._units,
            self._role,
        )

    @cached_property
    def _codes(self) -> Codes:
        return Codes(self._rows("codes"), self.analytes)

    @cached_property
    def _qualifiers(self) -> Qualifiers:
        return Qualifiers(self._rows("qualifiers"), bundled_rows("legend_words"))

    @cached_property
    def _values(self) -> _values.Values:
        return _values.Values(
            self._rows("values"), self.is_unit, self._qualifiers.known, self._qualifiers.before_number, self._role
        )

    def _role(self, header: str) -> ColumnRole | None:
        found = self.column(header)
        return found.role if found else None

    @cached_property
    def _fractions(self) -> dict[str, Fraction]:
        rows = (row for row in bundled_rows("name_words") if row["kind"] == "fraction")
        return {words(row["words"]): Fraction(row["value"]) for row in rows}

    @cached_property
    def _columns(self) -> Columns:
        return Columns(self._rows("columns"), bundled_rows("column_words"), self._units, self._fractions)

    @cached_property
    def _phrases(self) -> Phrases:
        return Phrases(self._rows("phrases"), bundled_rows("name_words"), self._fractions, self._columns)

    def name(
        self, text: str, *, code_list: str | None = None, unit: str = "", fraction: Fraction | None = None
    ) -> NameMeaning | None:
        """What a printed name says, or None where it is unknown.

        Parameters
        ----------
        text : str
            The name, or a code where `code_list` says of which list ("nwis", "cas", "storet", "local").
        unit : str
            The unit printed beside it, where that tells which of two analytes is meant (uranium in µg/L or pCi/L).
        fraction : Fraction, optional
            The fraction printed beside it (column, heading), where that tells which analyte is meant (Solids).
        """
        if code_list:
            return self._codes.meaning(text, code_list)
        return self._names.meaning(text, unit, fraction)

    def suggest(self, text: str) -> tuple[str, ...]:
        """Nearest known names of an unknown one, best first, at most three."""
        return self._names.suggest(text)

    def unit(self, text: str, analyte: str, name: NameMeaning | None = None) -> UnitMeaning:
        """What a printed unit says of an analyte; `name` is the printed name's meaning (form, unit, temperature).

        An empty text takes the name's own unit, else the canonical one as an assumption. A unit that is unknown or
        cannot be right for the analyte has its `problem` set. Raises KeyError for an unknown analyte key.
        """
        return self._units.meaning(text, self.analytes[analyte], name or NameMeaning(analyte))

    def is_unit(self, text: str) -> bool:
        """Whether the text is a unit of something."""
        return bool(self._units.parse(text))

    def value(self, text: str, *, decimal: str | None = ".", presence: bool = False) -> ValueMeaning | None:
        """What one cell says as a value, or None where it is none.

        `decimal` is the table's decimal sign, None where it is not known: then a number that it would change is noted
        `ambiguous_decimal`. `presence` tells that the analyte is reported as present or absent ("A", "P", "None").
        Qualifiers are split off and not applied: what `U` does depends on the quantity and the report's legend.
        """
        return self._values.meaning(text, decimal, presence)

    @property
    def compared(self) -> Mapping[str, Censoring]:
        """Signs before a number that say how it is censored, whatever the number."""
        return self._values.compared

    def decimal_votes(self, text: str) -> tuple[int, int]:
        """Whether a cell surely shows a decimal point (1, 0) or a decimal comma (0, 1)."""
        return _numerals.decimal_votes(text)

    def column(self, text: str, standard: str = "") -> ColumnMeaning | None:
        """What a column header says; `standard` prefers the columns of one data standard."""
        return self._columns.meaning(text, standard)

    def shared_prefix(self, headers: Sequence[str]) -> str:
        """What nearly all of a table's headers begin with and nothing is meant by (`GM_`), else an empty text."""
        return shared_prefix(headers)

    def standard(self, headers: Sequence[str]) -> str:
        """The data standard that a table's headers belong to, empty for a laboratory's own."""
        return self._columns.standard(headers)

    def phrase(self, text: str) -> PhraseMeaning | None:
        """What a line or cell around the tables says: section, quality control, head label, legend, furniture."""
        return self._phrases.meaning(text)

    def date_word(self, word: str, kind: str = "date_verb") -> str:
        """What a word says of a date near it, empty where nothing.

        A `date_verb` gives the role of the date ("taken", "reçu"), `administrative` where it is nothing of a sample; a
        `date_bar` directly before it ("before", "week") and a `date_past` in its clause ("previous") tell that it is
        no day of this sample.
        """
        return self._phrases.date_word(word, kind)

    def qualifier(
        self, code: str, legend: Mapping[str, str] | None = None, family: str = "usual"
    ) -> QualifierMeaning | None:
        """What a qualifier does: the report's own legend (code to words) decides, else the family's usual reading."""
        return self._qualifiers.meaning(code, legend or {}, family)

    def fraction(self, text: str) -> Fraction | None:
        """A cell of a fraction column, or None."""
        return self._phrases.fraction(text)

    def form(self, text: str) -> str | None:
        """A cell of a basis column ("as N", "CaCO3") as a chemical form, or None."""
        return printed_form(text)

    def usual_forms(self, analyte: str) -> tuple[str, ...]:
        """Forms in which laboratories report the analyte, where there is more than one ("N", "NO3")."""
        return usual_forms(analyte)

    def form_factor(self, analyte: str, form: str) -> float | None:
        """Canonical mass for one unit mass in the form, or None where the analyte is not expressed in it."""
        return form_factor(self.analytes[analyte], form)

    def measured(self, text: str) -> Measured | None:
        """Field or laboratory, from a cell."""
        return self._phrases.measured(text)

    def sample_role(self, text: str) -> Role | None:
        """The role of a sample from a cell of its type column; None where the cell does not say."""
        return self._phrases.sample_role(text)

    def id_role(self, text: str) -> Role | None:
        """The role of a sample whose identifier is built of a quality-control code; else None."""
        return self._phrases.id_role(text)

    def is_water(self, text: str) -> bool | None:
        """Whether a matrix cell is water; None where it does not say."""
        return self._phrases.is_water(text)

    def matrix_role(self, text: str) -> Role | None:
        """The role of a sample whose matrix cell says water of quality control; else None."""
        return self._phrases.matrix_role(text)

    def is_rejected(self, text: str) -> bool:
        """Whether a cell of a column of the results' status says that the result is rejected."""
        return self._phrases.is_rejected(text)

    def label_role(self, text: str) -> ColumnRole | None:
        """What a label of a row or a table that is no sample's calls it (limit, statistic …), else None."""
        return self._phrases.label_role(text)

    def point(self, text: str) -> SamplingPoint | None:
        """Where in the plumbing a text says that the sample was taken."""
        return self._phrases.point(text)


@cache
def bundled() -> Vocabulary:
    """The vocabulary of the library's own tables."""
    return Vocabulary()
