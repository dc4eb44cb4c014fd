"""Names, units, fractions and forms: each distinct combination that is printed is understood once."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.models.codes import Fraction, Measured, UnreadReason
from wellchem.reading.combinations import grouped
from wellchem.reading.rows import Coded
from wellchem.vocabulary import NameMeaning, UnitMeaning, UnitProblem, Vocabulary

_PROBLEMS = {
    UnitProblem.UNKNOWN_UNIT: UnreadReason.UNKNOWN_UNIT,
    UnitProblem.UNIT_NOT_OF_ANALYTE: UnreadReason.UNIT_NOT_OF_ANALYTE,
    UnitProblem.CONTRADICTORY: UnreadReason.UNIT_NOT_OF_ANALYTE,
}
_NO_UNIT = UnitMeaning()
_OPEN_DETAIL = "no unit is printed; it may be ng/L or µg/L"


@dataclass(frozen=True)
class Meaning:
    """What one combination of name, unit, fraction, form and place of measurement means."""

    printed: str
    analyte: str = ""
    fraction: Fraction | None = None
    measured: Measured | None = None
    name: NameMeaning | None = None
    unit: UnitMeaning = _NO_UNIT
    quantity: str = ""
    problem: UnreadReason | None = None
    detail: str = ""
    unit_open: bool = False  # no unit is printed, and none may be supposed for a number
    possible: tuple[float, float] = (0.0, np.inf)  # numbers that can be, in canonical units

    @property
    def signed(self) -> bool:
        """Whether the true value may lie below zero."""
        return self.possible[0] < 0.0 and self.quantity != "activity"

    @property
    def impossible(self) -> str:
        """What a number outside `possible` is told."""
        least, most = self.possible
        named = "pH" if self.quantity == "ph" else (self.quantity or "concentration").replace("_", " ")
        unit = "" if self.unit.unit == "1" else f" {self.unit.unit}"
        if np.isinf(most):
            return f"a {named} cannot be below {least:g}{unit}"
        return f"a {named} lies between {least:g} and {most:g}{unit}"


def fraction_of(vocabulary: Vocabulary, text: str) -> Fraction | None:
    """The fraction that a cell or a title prints."""
    if not text:
        return None
    if text in Fraction._value2member_map_:
        return Fraction(text)
    return vocabulary.fraction(text)


def meaning_of(
    vocabulary: Vocabulary, name: str, code_list: str, unit: str, fraction: str, basis: str, measured: str
) -> Meaning:
    """What one printed combination means."""
    part = fraction_of(vocabulary, fraction)
    found = vocabulary.name(name, code_list=code_list or None, unit=unit, fraction=part)
    if found is None:
        return Meaning(name, problem=UnreadReason.UNKNOWN_NAME if name else UnreadReason.NO_NAME)
    form = vocabulary.form(basis) if basis else None
    if form and found.basis and form != found.basis:
        return Meaning(
            name,
            found.analyte,
            problem=UnreadReason.UNIT_NOT_OF_ANALYTE,
            detail=f"the name says as {found.basis}, the form's column as {form}",
        )
    if form:
        found = replace(found, basis=form)
    where = vocabulary.measured(measured) if measured else None
    converted = vocabulary.unit(unit, found.analyte, found)
    analyte = vocabulary.analytes[found.analyte]
    # To suppose the canonical mg/L of what is printed in ng/L or µg/L would be wrong.
    unit_open = "trace" in analyte.traits and any(code.startswith("unit=") for code in converted.assumptions)
    return Meaning(
        name,
        found.analyte,
        found.fraction or (part if analyte.fractions else None),
        found.measured or where,
        found,
        converted,
        analyte.quantity,
        _PROBLEMS[converted.problem] if converted.problem else None,
        converted.detail or (_OPEN_DETAIL if unit_open else ""),
        unit_open,
        analyte.possible,
    )


@dataclass(frozen=True, eq=False)
class Meanings:
    """Meanings of the combinations, and which one each row has."""

    group: NDArray[np.int64]
    each: list[Meaning]

    def floats(self, of: Any) -> NDArray[np.float64]:
        """A number of each row's meaning."""
        return np.array([of(one) for one in self.each], np.float64).take(self.group)

    def canonical(self, printed: NDArray[np.float64]) -> NDArray[np.float64]:
        """Numbers printed in each row's unit, in the canonical one."""
        made = printed * self.floats(lambda one: one.unit.factor)
        if any(one.unit.offset for one in self.each):
            made += self.floats(lambda one: one.unit.offset)
        return made

    def flags(self, of: Any) -> NDArray[np.bool_]:
        """A truth of each row's meaning."""
        return np.array([bool(of(one)) for one in self.each], bool).take(self.group)

    def texts(self, of: Any) -> Coded:
        """A text of each row's meaning."""
        place: dict[str, int] = {}
        codes = np.array(
            [place.setdefault(str(text), len(place)) if (text := of(one)) else -1 for one in self.each], np.int32
        )
        texts = np.empty(len(place), object)
        texts[:] = list(place)
        return Coded(codes.take(self.group), texts)


def meanings_of(
    vocabulary: Vocabulary, name: Coded, code_list: Coded, unit: Coded, fraction: Coded, basis: Coded, measured: Coded
) -> Meanings:
    """Meanings of rows."""
    group, firsts = grouped(name, code_list, unit, fraction, basis, measured)
    each = [
        meaning_of(vocabulary, name[row], code_list[row], unit[row], fraction[row], basis[row], measured[row])
        for row in firsts.tolist()
    ]
    return Meanings(group, each)
