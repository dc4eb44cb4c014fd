"""Values worked out for one sample, with bounds, the formula's source and what went in."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from math import isnan

import numpy as np

from wellchem import chemistry
from wellchem.interpretation.amounts import alkalinity
from wellchem.interpretation.waters import Waters
from wellchem.interpretation.working import Amount, has, worked_out
from wellchem.models.finding import Computed, Source

_MG = "mg/L as CaCO3"
_SM = "Standard Methods, 24th ed."


@dataclass(frozen=True)
class _Formula:
    """One computed value: the amount's name, what a reader calls it, its unit, its source, and its classes."""

    name: str
    label: str
    unit: str
    title: str
    locator: str
    scheme: str = ""
    note: str = ""


_BALANCE = (
    _Formula("cations", "sum of cations", "meq/L", _SM, "1030 E.1"),
    _Formula("anions", "sum of anions", "meq/L", _SM, "1030 E.1"),
)
_SCALING = (
    _Formula("langelier", "Langelier index", "1", _SM, "2330 B", "Langelier USGS"),
    _Formula("ryznar", "Ryznar index", "1", "Ryznar, J. AWWA 36", "1944, p. 472", "Ryznar"),
)
_SPECIATED = "calcite by full speciation, constants of Plummer and Busenberg"
_SCALING_SPECIATED = (
    _Formula("calcite", "saturation index of calcite", "1", _SPECIATED, "1982"),
    _Formula("precipitation", "calcium carbonate precipitation potential", _MG, _SPECIATED, "1982; SM 2330 C"),
    _Formula("heater_scale", "the same in a water heater at 60 °C", _MG, _SPECIATED, "1982; closed system"),
    _Formula("carbon_dioxide", "log pressure of carbon dioxide", "log10 atm", _SPECIATED, "1982; -3.4 in the open air"),
)
_CORROSION = (
    _Formula("aggressive", "aggressive index", "1", "AWWA C400", "definition", "aggressive index"),
    _Formula(
        "larson_skold",
        "Larson-Skold ratio",
        "meq/meq",
        "Larson and Skold, Corrosion 14",
        "1958, p. 285t",
        "Larson-Skold",
        "for mild steel only",
    ),
    _Formula(
        "chloride_sulfate",
        "chloride to sulfate mass ratio",
        "mg/mg",
        "Belitz, Jurgens and Johnson, USGS SIR 2016-5092",
        "2016",
        note="for lead in contact with copper only; no index shows that plumbing gives off no metal",
    ),
)
_CHECKED = "memory"


@cache
def _source(title: str, locator: str) -> Source:
    return Source(title=title, locator=locator, checked=_CHECKED)


def _value(formula: _Formula, amount: Amount) -> Iterable[Computed]:
    low, high = float(amount.low[0]), float(amount.high[0])
    if isnan(low) or isnan(high):
        return
    notes = [*amount.taken, *filter(None, [formula.note])]
    if formula.scheme:
        classes = dict.fromkeys(str(chemistry.classify(formula.scheme, end)) for end in (low, high))
        notes.append(f"class: {' to '.join(classes)}")
    yield Computed(
        name=formula.name,
        label=formula.label,
        low=low,
        high=high,
        unit=formula.unit,
        source=_source(formula.title, formula.locator),
        inputs=amount.inputs,
        notes=tuple(notes),
    )


def _all(waters: Waters, formulas: Iterable[_Formula]) -> tuple[Computed, ...]:
    return tuple(one for formula in formulas for one in _value(formula, waters.worked(formula.name)))


def hardness_values(waters: Waters) -> tuple[Computed, ...]:
    """Total hardness as mg/L of CaCO3 and in grains and German degrees, its class, and its carbonate part."""
    amount = waters.worked("hardness")
    main = _Formula("hardness", "total hardness", _MG, _SM, "2340 B", "hardness USGS")
    made = list(_value(main, amount))
    if not made:
        return ()
    for unit, label in (("gpg", "grains per US gallon"), ("°dH", "German degrees")):
        convert = _converter(unit)
        shown = Amount(convert(amount.low), convert(amount.high), amount.inputs)
        made += _value(_Formula(f"hardness_{unit}", "total hardness", label, main.title, "2340 A"), shown)
    alkaline = waters.worked("alkalinity_amount")
    part = Amount(
        np.minimum(amount.low, alkaline.low), np.minimum(amount.high, alkaline.high), (*amount.inputs, *alkaline.inputs)
    )
    made += _value(_Formula("carbonate_hardness", "carbonate hardness", _MG, main.title, "2340 A"), part)
    return tuple(made)


def _converter(unit: str) -> Callable[[np.ndarray], np.ndarray]:
    factor = float(chemistry.convert_hardness(1.0, "mg/L", unit))
    return lambda values: values * factor


def balance_values(waters: Waters) -> tuple[Computed, ...]:
    """Each ion, the sums of cations and anions, and their difference."""
    made = [*_ions(waters), *_all(waters, _BALANCE)]
    positive, negative = waters.worked("cations"), waters.worked("anions")
    if bool((positive.known & negative.known)[0]):
        balance = worked_out(
            chemistry.charge_balance,
            {"cations": (positive.low, positive.high), "anions": (negative.low, negative.high)},
            positive.inputs + negative.inputs,
        )
        formula = _Formula("charge_balance", "cations less anions over their sum", "%", _SM, "1030 E.1")
        made += _value(formula, Amount(balance.low, balance.high, balance.inputs, positive.taken + negative.taken))
    return tuple(made)


_IONS = {
    "cation": {"calcium": "Ca", "magnesium": "Mg", "sodium": "Na", "potassium": "K", "iron": "Fe", "ammonia": "NH4"},
    "anion": {"alkalinity": "HCO3", "sulfate": "SO4", "chloride": "Cl", "nitrate": "NO3", "fluoride": "F"},
}


def _ions(waters: Waters) -> Iterable[Computed]:
    """Each measured ion in equivalents."""
    for side, symbols in _IONS.items():
        for analyte, symbol in symbols.items():
            given = "total_alkalinity" if analyte == "alkalinity" else analyte
            if not has(waters.table, given):
                continue
            column = waters.table.standing(analyte)
            low, high = alkalinity(waters.table) if analyte == "alkalinity" else (column.low, column.high)
            amount = Amount(
                chemistry.ion_milliequivalents(low, analyte), chemistry.ion_milliequivalents(high, analyte), (given,)
            )
            yield from _value(_Formula(f"{side}:{analyte}", symbol, "meq/L", _SM, "1030 E.1"), amount)


def scaling_values(waters: Waters) -> tuple[Computed, ...]:
    """Indices of scale."""
    return _all(waters, _SCALING + _SCALING_SPECIATED)


def corrosion_values(waters: Waters) -> tuple[Computed, ...]:
    """Indices of corrosion."""
    return _all(waters, _CORROSION)
