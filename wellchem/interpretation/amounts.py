"""Amounts worked out from several results, with their bounds: ions in equivalents, solids, hardness, indices."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np

from wellchem import chemistry
from wellchem.interpretation.practice import level
from wellchem.interpretation.table import Column, Floats, Table
from wellchem.interpretation.working import Amount, Ends, has, once_per_table, unknown, worked_out
from wellchem.models.codes import Fraction


def _ends(column: Column) -> Ends:
    return column.low, column.high


def _or_range(column: Column, low: float, high: float) -> Ends:
    """The column's bounds, or a stated range where nothing was measured."""
    return np.where(column.measured, column.low, low), np.where(column.measured, column.high, high)


@once_per_table
def alkalinity(table: Table) -> Ends:
    """Total alkalinity as CaCO3: as printed, else from bicarbonate and carbonate."""
    printed = table.standing("total_alkalinity")
    bicarbonate, carbonate = table.standing("bicarbonate"), table.standing("carbonate")
    of_bicarbonate = chemistry.basis_factor("HCO3", "CaCO3")
    of_carbonate = chemistry.basis_factor("CO3", "CaCO3")
    low = bicarbonate.low * of_bicarbonate + np.where(carbonate.measured, carbonate.low * of_carbonate, 0.0)
    high = bicarbonate.high * of_bicarbonate + np.where(carbonate.measured, carbonate.high * of_carbonate, 0.0)
    return np.where(printed.measured, printed.low, low), np.where(printed.measured, printed.high, high)


def _dissolved(table: Table, analyte: str) -> Ends:
    """Dissolved metal: as measured, else anything from none to the total; none where nothing was measured."""
    dissolved = table.standing(analyte, Fraction.DISSOLVED)
    total = table.standing(analyte)
    high = np.where(dissolved.measured, dissolved.high, np.where(total.measured, total.high, 0.0))
    return np.where(dissolved.measured, dissolved.low, 0.0), np.where(np.isnan(high), 0.0, high)


def _minor(table: Table, analyte: str) -> Ends:
    """An ion that is left out where it was not measured."""
    column = table.standing(analyte)
    return np.where(column.bounded, column.low, 0.0), np.where(column.bounded, column.high, 0.0)


_CATIONS = (
    *("calcium", "magnesium", "sodium", "potassium", "iron", "manganese"),
    *("ammonia", "strontium", "barium", "lithium", "ph"),
)
_ANIONS = ("total_alkalinity", "sulfate", "chloride", "nitrate", "nitrite", "fluoride", "bromide")


@once_per_table
def cations(table: Table) -> Amount:
    """Sum of the cations [meq/L]."""
    if not has(table, *_CATIONS[:3]):
        return _with_taken(table, unknown(table, _CATIONS), "potassium")
    given = {name: _ends(table.standing(name)) for name in _CATIONS[:3]}
    given["potassium"] = _or_range(table.standing("potassium"), 0.0, level("potassium_unmeasured"))
    given |= {name: _dissolved(table, name) for name in _CATIONS[4:6]}
    given |= {name: _minor(table, name) for name in _CATIONS[6:-1]}
    ph = table.standing("ph")
    given["ph"] = np.where(ph.bounded, ph.low, np.inf), np.where(ph.bounded, ph.high, np.inf)
    return _with_taken(table, worked_out(chemistry.cation_sum, given, _CATIONS), "potassium")


@once_per_table
def anions(table: Table) -> Amount:
    """Sum of the anions [meq/L]."""
    if not has(table, *_ANIONS[:3]):
        return _with_taken(table, unknown(table, _ANIONS), "nitrate", "nitrate_plus_nitrite")
    given = {"alkalinity": alkalinity(table)}
    given |= {name: _ends(table.standing(name)) for name in _ANIONS[1:3]}
    given["nitrate"] = nitrate(table)
    given |= {name: _minor(table, name) for name in _ANIONS[4:]}
    amount = worked_out(chemistry.anion_sum, given, _ANIONS)
    return _with_taken(table, amount, "nitrate", "nitrate_plus_nitrite")


@once_per_table
def nitrate(table: Table) -> Ends:
    """Nitrate as N: as printed, else the sum with nitrite, else what is taken as possible."""
    alone, both = table.standing("nitrate"), table.standing("nitrate_plus_nitrite")
    low = np.where(both.measured, both.low, 0.0)
    high = np.where(both.measured, both.high, level("nitrate_unmeasured"))
    return np.where(alone.measured, alone.low, low), np.where(alone.measured, alone.high, high)


def _with_taken(table: Table, amount: Amount, *analytes: str) -> Amount:
    if any(table.standing(analyte).measured.all() for analyte in analytes):
        return amount
    note = f"{analytes[0]} where not measured: 0 to {level(f'{analytes[0]}_unmeasured'):g} mg/L"
    return Amount(amount.low, amount.high, amount.inputs, (note,))


@once_per_table
def calculated_hardness(table: Table) -> Amount:
    """Hardness from calcium and magnesium [mg/L as CaCO3]."""
    given = {name: _ends(table.standing(name)) for name in ("calcium", "magnesium")}
    return worked_out(chemistry.total_hardness, given, tuple(given))


@once_per_table
def hardness(table: Table) -> Amount:
    """Hardness as printed, else from calcium and magnesium [mg/L as CaCO3]."""
    printed, worked = table.standing("total_hardness"), calculated_hardness(table)
    return Amount(
        np.where(printed.measured, printed.low, worked.low),
        np.where(printed.measured, printed.high, worked.high),
        ("total_hardness",) if printed.measured.any() else worked.inputs,
    )


_SOLIDS = ("calcium", "magnesium", "sodium", "sulfate", "chloride")


@once_per_table
def calculated_solids(table: Table) -> Amount:
    """Dissolved solids from the ions, as drying at 180 °C leaves them [mg/L]."""
    inputs = (*_SOLIDS, "potassium", "alkalinity", "nitrate", "fluoride", "silica")
    if not has(table, *_SOLIDS, "total_alkalinity"):
        return _with_taken(table, unknown(table, inputs), "potassium")
    given = {name: _ends(table.standing(name)) for name in _SOLIDS}
    given["potassium"] = _or_range(table.standing("potassium"), 0.0, level("potassium_unmeasured"))
    given["alkalinity"] = alkalinity(table)
    given |= {name: _minor(table, name) for name in ("nitrate", "fluoride", "silica")}
    return _with_taken(table, worked_out(chemistry.dissolved_solids_residue, given, inputs), "potassium")


@once_per_table
def solids(table: Table) -> Amount:
    """Dissolved solids: as printed, else from the ions, else from conductance [mg/L]."""
    printed, worked, conductance = (
        table.standing("total_dissolved_solids"),
        calculated_solids(table),
        table.standing("specific_conductance"),
    )
    low = np.where(worked.known, worked.low, conductance.low * level("solids_conductance_low"))
    high = np.where(worked.known, worked.high, conductance.high * level("solids_conductance_high"))
    return Amount(
        np.where(printed.bounded, printed.low, low),
        np.where(printed.bounded, printed.high, high),
        ("total_dissolved_solids",),
    )


@once_per_table
def calcium(table: Table) -> Ends:
    """Calcium as Ca: as printed, else from calcium hardness."""
    printed, as_hardness = table.standing("calcium"), table.standing("calcium_hardness")
    factor = chemistry.basis_factor("CaCO3", "Ca")
    return (
        np.where(printed.measured, printed.low, as_hardness.low * factor),
        np.where(printed.measured, printed.high, as_hardness.high * factor),
    )


@once_per_table
def alkalinity_amount(table: Table) -> Amount:
    """Total alkalinity as an amount [mg/L as CaCO3]."""
    return Amount(*alkalinity(table), ("total_alkalinity", "bicarbonate", "carbonate"))


_INDEX = ("ph", "calcium", "total_alkalinity", "temperature", "total_dissolved_solids")


@once_per_table
def acidity(table: Table) -> Ends:
    """pH in the well: as measured there, else the laboratory's, which has changed on the way, with a spread."""
    column = table.standing("ph")
    spread = np.where(table.in_field(column), 0.0, level("laboratory_ph_spread"))
    return column.low - spread, column.high + spread


def _ph_note(table: Table) -> tuple[str, ...]:
    if table.in_field(table.standing("ph")).all():
        return ()
    return (f"pH of a laboratory: plus or minus {level('laboratory_ph_spread'):g}",)


@once_per_table
def _temperature(table: Table) -> tuple[Ends, tuple[str, ...]]:
    """Temperature as printed, else the range of ground water, and a note where that was taken."""
    column = table.standing("temperature")
    cold, warm = level("temperature_low"), level("temperature_high")
    taken = () if column.bounded.all() else (f"temperature where not measured: {cold:g} to {warm:g} °C",)
    return _or_range(column, cold, warm), (*_ph_note(table), *taken)


@once_per_table
def _index_inputs(table: Table) -> dict[str, Ends]:
    dissolved = solids(table)
    return {
        "ph": acidity(table),
        "calcium": calcium(table),
        "alkalinity": alkalinity(table),
        "dissolved_solids": (dissolved.low, dissolved.high),
    }


# Where the indices are monotone in every input; tests sample the box. Beyond it the bounds are searched.
_FRESH = {"ph": 9.0, "temperature": 40.0, "dissolved_solids": 3000.0}


@chemistry.behaves(
    chemistry.Behaviour(rising=("ph", "calcium", "alkalinity", "temperature"), falling=("dissolved_solids",))
)
def fresh_langelier(**given: Floats) -> Floats:
    """Langelier index of a fresh water: up to pH 9, 40 °C and 3000 mg/L of dissolved solids."""
    made: Floats = chemistry.langelier_index(**given)
    return made


def any_ryznar(ph: Floats, **others: Floats) -> Floats:
    """Ryznar index with the saturation pH of Standard Methods."""
    saturation: Floats = chemistry.saturation_ph(ph=ph, **others)
    return chemistry.ryznar_index(ph=ph, saturation_ph=saturation)


@chemistry.behaves(
    chemistry.Behaviour(rising=("dissolved_solids",), falling=("calcium", "alkalinity", "temperature"), dipped=("ph",))
)
def fresh_ryznar(**given: Floats) -> Floats:
    """The same for a fresh water."""
    return any_ryznar(**given)


def _index(table: Table, fresh: Callable[..., Floats], any_water: Callable[..., Floats]) -> Amount:
    """An index of calcium carbonate over the bounds of its inputs."""
    temperature, taken = _temperature(table)
    if not has(table, "ph", "any_calcium", "total_alkalinity"):
        return unknown(table, _INDEX, taken)
    given = _index_inputs(table) | {"temperature": temperature}
    salty = np.zeros(table.size, dtype=bool)
    for name, most in _FRESH.items():
        salty |= given[name][1] > most
    within = {name: (np.where(salty, np.nan, low), high) for name, (low, high) in given.items()}
    amount = worked_out(fresh, within, _INDEX)
    low, high = amount.low, amount.high
    if salty.any():
        beyond = worked_out(any_water, {name: (low[salty], high[salty]) for name, (low, high) in given.items()}, _INDEX)
        low[salty], high[salty] = beyond.low, beyond.high
    return Amount(low, high, _INDEX, taken)


@once_per_table
def langelier(table: Table) -> Amount:
    """Langelier index by Standard Methods [1]."""
    return _index(table, fresh_langelier, chemistry.langelier_index)


@once_per_table
def ryznar(table: Table) -> Amount:
    """Ryznar index with the saturation pH of Standard Methods [1]."""
    return _index(table, fresh_ryznar, any_ryznar)


@once_per_table
def aggressive(table: Table) -> Amount:
    """Aggressive index [1]."""
    given = {"ph": acidity(table), "calcium": calcium(table), "alkalinity": alkalinity(table)}
    amount = worked_out(chemistry.aggressive_index, given, ("ph", "calcium", "total_alkalinity"))
    return Amount(amount.low, amount.high, amount.inputs, _ph_note(table))


@once_per_table
def larson_skold(table: Table) -> Amount:
    """Larson-Skold ratio [meq/meq]."""
    given = {name: _ends(table.standing(name)) for name in ("chloride", "sulfate")}
    given["alkalinity"] = alkalinity(table)
    return worked_out(chemistry.larson_skold_ratio, given, ("chloride", "sulfate", "total_alkalinity"))


@once_per_table
def chloride_sulfate(table: Table) -> Amount:
    """Chloride-sulfate mass ratio [mg/mg]."""
    given = {name: _ends(table.standing(name)) for name in ("chloride", "sulfate")}
    return worked_out(chemistry.chloride_sulfate_mass_ratio, given, tuple(given))


@once_per_table
def _speciation(table: Table) -> dict[str, Amount]:
    """Quantities of the full speciation at the corners of pH and temperature, other ions at the middle of their bounds.

    Calcium and alkalinity are at their low ends where pH is, and at their high ends where it is. The first half of the
    waters stays at its temperature, the second is heated.
    """
    others = ("magnesium", "sodium", "sulfate", "chloride")
    inputs = (*_INDEX[:-1], *others)
    nothing = dict.fromkeys(("calcite", "carbon_dioxide", "precipitation", "heater_scale"), unknown(table, inputs))
    if not has(table, "ph", "any_calcium", "total_alkalinity", *others):
        return nothing
    temperature, taken = _temperature(table)
    ph, ca, alk = acidity(table), calcium(table), alkalinity(table)
    given = {name: table.standing(name) for name in others}
    whole = ~np.isnan(ph[0] + ph[1] + ca[0] + ca[1] + alk[0] + alk[1])
    for column in given.values():
        whole &= column.bounded & np.isfinite(column.high)
    if not whole.any():
        return nothing
    corners = [(end, heat[whole]) for end in (0, 1) for heat in temperature] * 2
    cold = len(corners) // 2
    heats = np.stack([heat for _, heat in corners])
    waters = chemistry.speciate(
        ph=np.stack([ph[end][whole] for end, _ in corners]),
        calcium=np.stack([ca[end][whole] for end, _ in corners]),
        alkalinity=np.stack([alk[end][whole] for end, _ in corners]),
        temperature=heats,
        **{name: (column.low[whole] + column.high[whole]) / 2.0 for name, column in given.items()},
    )
    heated = heats.copy()
    heated[cold:] = level("heater_temperature")
    scale = np.asarray(chemistry.calcium_carbonate_potential(waters, temperature=heated).precipitated)
    found = {
        "calcite": np.asarray(chemistry.saturation_index(waters, "calcite"))[:cold],
        "carbon_dioxide": np.asarray(waters.log_pco2)[:cold],
        "precipitation": scale[:cold],
        "heater_scale": scale[cold:],
    }
    made, notes = {}, ("at the corners of pH and temperature", *taken)
    for name, values in found.items():
        low, high = np.full(table.size, np.nan), np.full(table.size, np.nan)
        low[whole], high[whole] = np.min(values, axis=0), np.max(values, axis=0)
        made[name] = Amount(low, high, inputs, notes)
    return made


def calcite(table: Table) -> Amount:
    """Saturation index of calcite by full speciation [1]."""
    return _speciation(table)["calcite"]


def carbon_dioxide(table: Table) -> Amount:
    """log10 of the pressure of carbon dioxide, by full speciation [1]."""
    return _speciation(table)["carbon_dioxide"]


def precipitation(table: Table) -> Amount:
    """Calcium carbonate precipitation potential [mg/L as CaCO3]."""
    return _speciation(table)["precipitation"]


def heater_scale(table: Table) -> Amount:
    """The same in a water heater [mg/L as CaCO3]."""
    return _speciation(table)["heater_scale"]


DERIVED: Mapping[str, Callable[[Table], Amount]] = {
    "calculated_hardness": calculated_hardness,
    "langelier": langelier,
    "aggressive": aggressive,
}
"""Names that a rule may use as if they were analytes."""
