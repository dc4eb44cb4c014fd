"""Printed units: a grammar of the words that laboratories use, and conversion through pint's algebra.

One registry of this library's own definitions (`units.txt`) is loaded when the first unit must be converted.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from wellchem.vocabulary.analytes import Analyte
from wellchem.vocabulary.forms import (
    counts_in_hardness,
    form_factor,
    grams_per_equivalent,
    grams_per_mole,
    opened_form,
    printed_form,
    usual_forms,
)
from wellchem.vocabulary.meanings import NameMeaning, UnitMeaning, UnitProblem
from wellchem.vocabulary.tables import Row, bundled_rows, definitions_path
from wellchem.vocabulary.text import fold

_NOT_PRINTED = {"", "-", "--", "---", "none", "n/a", "na", "n.a.", "nil", "null", "nan", ".", "?", "sans", "ohne"}
_TEMPERATURE = re.compile(
    r"[,;]?\s*\(?(?:@|\bat\b|\bbei\b|\ba\b|\bzu\b|\()\s*(\d{1,2}(?:[.,]\d)?)\s*(?:°|deg\.?|degrees)?\s*c?\s*\)?$"
)
_PLAIN_TEMPERATURE = re.compile(r"\s(\d{2})\s*(?:°|deg\.?)\s*c$")
_POWER = re.compile(r"(?:[\s*·.]+|(?<=[a-zµ])(?=(?:l|ml|cm|m|kg)\^?-1$))([a-z]+)\s*\^?\s*-\s*1$")
_OPENER = re.compile(r"^(?:in|en|as|als|unit|units|unite|einheit|unidad)[\s:]+(?=\S*(?:/|pp[mbt]))")
_PLURAL = re.compile(r"\b([mnuµ]g)s/")
_FOOTNOTE = re.compile(r"\s*(?:[*†‡§]+|[¹²³⁴⁵⁶⁷⁸⁹]{1,2}(?<=[lLdD][¹²³⁴⁵⁶⁷⁸⁹]))$")
_TWICE = re.compile(r"(.+?)\s*[(\[]([^()\[\]]+)[)\]]")
_EITHER = re.compile(r"(.+?)\s+/\s+(.+)")  # in two languages: "CFU/100 mL / UFC/100 mL"
_NUMBERED = re.compile(r"^(\d+(?:[.,]\d+)?)?(.*)$")
# Groups in whose reports "ppt" may as well be parts per thousand.


@dataclass(frozen=True)
class PrintedUnit:
    """One reading of a printed unit: pint's expression (None: a count without a volume), form, temperature."""

    expression: str | None
    form: str | None = None
    temperature: float | None = None
    counted_by: str = ""
    quantities: frozenset[str] = frozenset()


@cache
def _registry() -> Any:
    import pint

    registry: Any = pint.UnitRegistry(None)
    registry.load_definitions(str(definitions_path()))
    return registry


@cache
def _linear(expression: str, canonical: str) -> tuple[float, float] | None:
    """Factor and offset from one expression to another by pint, or None where the dimensions differ."""
    import pint

    registry = _registry()
    try:
        unit, wanted = registry.parse_expression(expression), registry.parse_expression(canonical)
        if isinstance(unit, (int, float)):
            return None
        sizes = (0.0, 1000.0)
        at = [registry.Quantity(size * unit.magnitude, unit.units).to(wanted.units).magnitude for size in sizes]
    except (pint.DimensionalityError, pint.UndefinedUnitError):
        return None
    # Fifteen digits: what binary fractions of the definitions leave behind is not printed.
    return float(f"{(at[1] - at[0]) / 1000.0 / wanted.magnitude:.15g}"), float(f"{at[0] / wanted.magnitude:.13g}")


@cache
def _quantity_expressions() -> dict[tuple[str, str], str]:
    return {(row["quantity"], row["unit"]): row["expression"] for row in bundled_rows("quantities")}


@cache
def _conductance_factors() -> dict[float, float]:
    return {float(row["temperature"]): float(row["factor_to_25"]) for row in bundled_rows("conductance_temperatures")}


def _close(text: str) -> str:
    return re.sub(r"\s+", "", text)


@dataclass
class Units:
    """Every unit that can be read: words for the grammar, whole spellings for what it cannot say."""

    rows: Iterable[Row]
    words: Iterable[Row]
    _whole: dict[str, list[PrintedUnit]] = field(init=False, default_factory=dict)
    _words: dict[str, tuple[str, str, str]] = field(init=False, default_factory=dict)
    _parsed: dict[str, tuple[PrintedUnit, ...]] = field(init=False, default_factory=dict)
    _meanings: dict[tuple[str, str, NameMeaning], UnitMeaning] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        for row in self.rows:
            printed = PrintedUnit(
                row.get("expression") or None,
                row.get("basis") or None,
                None,
                row.get("counted_by", ""),
                frozenset(row.get("quantities", "").split()),
            )
            self._whole.setdefault(_close(fold(row["printed"])), []).append(printed)
        for row in self.words:
            self._words[_close(fold(row["word"]))] = (row["unit"], row["place"], row["counted_by"])

    def is_printed(self, text: str) -> bool:
        """Whether the text says something as a unit (not a dash, "None" or nothing)."""
        return fold(text).strip("()[] ") not in _NOT_PRINTED

    def parse(self, text: str) -> tuple[PrintedUnit, ...]:
        """Every reading of a printed unit that the grammar knows, the most particular first; empty if there is none."""
        if text not in self._parsed:
            self._parsed[text] = tuple(self._readings(text))
        return self._parsed[text]

    def _readings(self, text: str) -> Iterable[PrintedUnit]:
        text = _PLURAL.sub(r"\1/", _FOOTNOTE.sub("", text))
        printed = _OPENER.sub("", fold(text).strip(" ,;:"))
        while printed[:1] + printed[-1:] in ("()", "[]", "{}"):
            printed = printed[1:-1].strip()
        printed = printed.replace("{", "(").replace("}", ")")  # an annotation of UCUM: mg{NO3}/L
        printed = printed.replace(".as.", " as ")  # blanks that a program replaced by dots
        whole = self._whole.get(_close(printed), [])
        yield from whole
        if any("gas" in reading.quantities for reading in whole):
            return
        temperature = None
        if found := _TEMPERATURE.search(printed) or _PLAIN_TEMPERATURE.search(printed):
            temperature, printed = float(found.group(1).replace(",", ".")), printed[: found.start()].strip(" (,;")
            for known in self._whole.get(_close(printed), []):
                yield PrintedUnit(known.expression, known.form, temperature, known.counted_by, known.quantities)
        for core, form in self._splits(printed):
            if read := self._core(core):
                yield PrintedUnit(read[0], form, temperature, read[1])
                return
            for known in self._whole.get(_close(core), []) if form else ():
                if known.form in (None, form):
                    yield PrintedUnit(known.expression, form, temperature, known.counted_by, known.quantities)
        if twice := _TWICE.fullmatch(printed) or _EITHER.fullmatch(printed):
            yield from self._same(*twice.groups())
        elif printed.endswith("."):
            yield from self.parse(printed.rstrip("."))

    def _same(self, first: str, second: str) -> Iterable[PrintedUnit]:
        """Readings of a unit that is printed twice, "mg/L (ppm)", where both are the same."""
        others = self.parse(second)
        for reading in self.parse(first):
            if reading.expression and any(
                other.expression and _linear(reading.expression, other.expression) == (1.0, 0.0) for other in others
            ):
                yield reading

    def _splits(self, printed: str) -> Iterable[tuple[str, str | None]]:
        """Ways to part a unit from the form that it carries: none, at its end, inside its numerator."""
        yield printed, None
        for place in range(1, len(printed)):
            if printed[place - 1] in " -(,;[:" or printed[place - 1] in "l)" or printed[place] == "(":
                core = printed[:place].rstrip(" -(,;[:")
                rest = printed[place:].lstrip(" -(,;[:")
                if core and (form := printed_form(rest)):
                    yield core, form
        top, slash, bottom = printed.partition("/")
        if slash:
            for place in range(1, len(top)):
                amount, rest = top[:place].strip(" -"), top[place:].strip(" -")
                if amount in self._words and (form := printed_form(rest)):
                    yield f"{amount}/{bottom}", form

    def _core(self, printed: str) -> tuple[str | None, str] | None:
        """Expression and way of counting of a unit without a form, or None."""
        whole = _close(printed).replace(".", "")
        if whole in self._words and self._words[whole][1] == "alone":
            return self._words[whole][0], self._words[whole][2]
        printed = re.sub(r"(?:^|\s+)(?:per|pro|par|por|je|dans|in|en)\s+", "/", printed)
        printed = _POWER.sub(r"/\1", printed)
        text = _close(printed)
        word = self._words.get(text)
        if word and word[1] in ("alone",):
            return word[0], word[2]
        if re.fullmatch(r"[a-zµ]+\.[a-z]+", text):
            text = text.replace(".", "/")  # a slash that a program replaced by a dot
        if text.count("/") != 1:
            return self._presence(text)
        top, bottom = (part.strip("().") for part in text.split("/"))
        size = _NUMBERED.match(bottom)
        over = self._words.get(size.group(2)) if size else None
        if size is None or over is None or over[1] not in ("both", "denominator"):
            return None
        volume = f"({(size.group(1) or '1').replace(',', '.')}*{over[0]})"
        if top in ("", "1"):
            return f"organism/{volume}", ""
        count = _NUMBERED.match(top)
        once = count is not None and count.group(1) in (None, "1")  # "10 mg/L" is an amount, no unit
        under = self._words.get(top) or (self._words.get(count.group(2)) if count and once else None)
        if under is None or under[1] == "denominator" or (under[1] == "alone"):
            return None
        return f"({under[0]})/{volume}", under[2]

    def _presence(self, text: str) -> tuple[str | None, str] | None:
        """`P/A/100mL`: present or absent in a volume."""
        head, _, bottom = text.rpartition("/")
        size = _NUMBERED.match(bottom)
        over = self._words.get(size.group(2)) if size else None
        if head in ("p/a", "a/p", "present/absent", "presence/absence", "absent/present") and size and over:
            return f"organism/({size.group(1) or 1}*{over[0]})", "presence"
        return None

    def is_word(self, text: str) -> bool:
        """Whether the text is a unit by itself, without a volume or a length under it."""
        key = _close(fold(text))
        return key in self._whole or self._words.get(key, ("", "", ""))[1] == "alone"

    def measures(self, text: str, analyte: Analyte) -> bool:
        """Whether the unit can be one of the analyte."""
        return self.meaning(text, analyte, NameMeaning(analyte.key)).problem is None

    def meaning(self, text: str, analyte: Analyte, name: NameMeaning) -> UnitMeaning:
        """What the printed unit says of the analyte, in the context of its printed name."""
        key = (text, analyte.key, name)
        if key not in self._meanings:
            self._meanings[key] = self._meaning(text, analyte, name)
        return self._meanings[key]

    def _meaning(self, text: str, analyte: Analyte, name: NameMeaning) -> UnitMeaning:
        in_name = self._of(name.unit, analyte, name) if self.is_printed(name.unit) else None
        if not self.is_printed(text):
            return in_name or self._supposed(analyte, name)
        if in_name is None and (form := opened_form(text)):  # "as CaCO3" and no unit
            if name.basis not in (None, form):
                return _problem(UnitProblem.CONTRADICTORY, f"the name says as {name.basis}, the unit as {form}")
            return self._supposed(analyte, replace(name, basis=form))
        found = self._of(text, analyte, name)
        if in_name is None or found.problem or in_name.problem:
            return found
        if abs(in_name.factor / found.factor - 1) > 1e-9 or in_name.offset != found.offset:
            return _problem(UnitProblem.CONTRADICTORY, f"the name says {name.unit}, the unit {text}")
        return found

    def _supposed(self, analyte: Analyte, name: NameMeaning) -> UnitMeaning:
        """No unit printed: the canonical one, as an assumption where there could be another."""
        plain = PrintedUnit(_quantity_expressions()[analyte.quantity, analyte.unit])
        made = self._convert(plain, analyte, name)
        if isinstance(made, str):
            return _problem(UnitProblem.UNIT_NOT_OF_ANALYTE, made)
        if analyte.quantity in ("ph", "index", "ratio"):
            return made
        return _with(made, f"unit={analyte.unit}")

    def _of(self, text: str, analyte: Analyte, name: NameMeaning) -> UnitMeaning:
        readings = self.parse(text)
        if not readings:
            return _problem(UnitProblem.UNKNOWN_UNIT, f"{text} is not a known unit")
        why = f"{text} cannot be a unit of {analyte.label}"
        kinds = kinds_of(analyte)
        for reading in readings:
            if reading.quantities and not reading.quantities & kinds:
                continue
            if reading.expression == "ppt" and "thousandths" in analyte.traits:
                why = f"{text} may be per thousand or per trillion"
                continue
            made = self._convert(reading, analyte, name)
            if not isinstance(made, str):
                return made
            why = made or why
        return _problem(UnitProblem.UNIT_NOT_OF_ANALYTE, why)

    def _convert(self, reading: PrintedUnit, analyte: Analyte, name: NameMeaning) -> UnitMeaning | str:
        """The conversion, or what forbids it (empty: the dimension)."""
        canonical = _quantity_expressions()[analyte.quantity, analyte.unit]
        assumed: list[str] = []
        expression = reading.expression
        if expression is None:
            assumed.append("volume=" + analyte.unit.removeprefix("1/").strip("()"))
            expression = canonical
        if analyte.quantity == "concentration":
            return self._concentration(expression, reading, analyte, name)
        if reading.form and form_factor(analyte, reading.form) is None:
            return f"{analyte.label} is not expressed as {reading.form}"
        line = _linear(expression, canonical)
        if line is None:
            return ""
        factor, offset = line
        volume = None
        if analyte.quantity == "count":
            size = _linear(f"organism/({expression})", "milliliter")
            volume = size[0] if size else None
        if analyte.quantity == "conductance":
            at = reading.temperature or name.temperature or 25.0
            if at not in _conductance_factors():
                return f"conductance at {at:g} °C is not converted to 25 °C"
            factor *= _conductance_factors()[at]
        return UnitMeaning(factor, offset, analyte.unit, analyte.basis, volume, reading.counted_by, tuple(assumed))

    def _concentration(
        self, expression: str, reading: PrintedUnit, analyte: Analyte, name: NameMeaning
    ) -> UnitMeaning | str:
        """Mass, amount or equivalents per volume, from the form printed to the canonical one."""
        form = reading.form or name.basis
        if reading.form and name.basis and reading.form != name.basis:
            return f"the name says as {name.basis}, the unit as {reading.form}"
        assumed: tuple[str, ...] = ()
        if (line := _linear(expression, "milligram/liter")) is not None:
            if form is None and name.supposed:
                form, assumed = name.supposed, (f"basis={name.supposed}",)
            elif form is None and len(usual_forms(analyte.key)) > 1:
                assumed = (f"basis={analyte.form}",)
            share = 1.0 if form is None else form_factor(analyte, form)
            if share is None:
                return f"{analyte.label} is not expressed as {form}"
            factor = line[0] * share
        elif (line := _linear(expression, "millimole/liter")) is not None:
            if (grams := grams_per_mole(analyte)) is None:
                return f"{analyte.label} has no molar mass"
            factor = line[0] * grams
        elif (line := _linear(expression, "milliequivalent/liter")) is not None:
            if (grams := grams_per_equivalent(analyte)) is None:
                return f"{analyte.label} has no equivalent weight"
            factor = line[0] * grams
        else:
            return ""
        return UnitMeaning(factor, 0.0, analyte.unit, analyte.basis, None, "", assumed)


@cache
def kinds_of(analyte: Analyte) -> frozenset[str]:
    """Kinds of unit that the analyte may have: its quantity, and degrees of hardness where it counts in equivalents."""
    return frozenset({analyte.quantity, "hardness"} if counts_in_hardness(analyte) else {analyte.quantity})


def _problem(problem: UnitProblem, detail: str) -> UnitMeaning:
    return UnitMeaning(problem=problem, detail=detail)


def _with(made: UnitMeaning, *codes: str) -> UnitMeaning:
    return replace(made, assumptions=tuple(sorted({*made.assumptions, *codes})))
