"""Equilibrium constants, their temperature dependence, and the reactions they belong to, as data.

The tables print every reaction as its source does. A species may be formed from another that is itself formed
(`Na+ + HCO3- = NaHCO3`), so each reaction is resolved here once into the master species that a water's analysis
gives, `H+`, `H2O` and `e-`.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from math import log

import numpy as np

from .tables import Array, V, arrays, restored, rows

CELSIUS_ZERO = 273.15  # °C in K, exact by the definition of the Celsius scale
_GAS_CONSTANT = 8.314462618e-3  # kJ/(mol K), exact in the SI of 2019
_REFERENCE = 298.15  # K, at which the tables state log_k
_ANALYTIC = ("a1", "a2", "a3", "a4", "a5", "a6")
_TERM = re.compile(r"(\d+\.?\d*)?\s*(\S+)")


@dataclass(frozen=True)
class Reaction:
    """A species, mineral or gas in terms of master species.

    `masters` holds the master species' coefficients in one mole of it, and `constants` the six coefficients of
    log10 K of its formation from them, in the basis that `temperature_basis` gives.
    """

    name: str
    masters: Mapping[str, float]
    constants: Array


def temperature_basis(temperature: Array) -> Array:
    """Terms of log10 K = a1 + a2 T + a3/T + a4 log10 T + a5/T² + a6 T², T in kelvin, in rows."""
    kelvin = temperature + CELSIUS_ZERO
    inverse = 1.0 / kelvin
    terms = np.empty((6, *kelvin.shape))
    for place, term in enumerate((1.0, kelvin, inverse, np.log10(kelvin), inverse**2, kelvin**2)):
        terms[place] = term
    return terms


def _constants(row: Mapping[str, str]) -> Array:
    """Coefficients of log10 K: the analytic ones where the source has them, else van 't Hoff's with log_k."""
    if any(row[name] for name in _ANALYTIC):
        return np.array([float(row[name] or 0) for name in _ANALYTIC])
    slope = float(row["delta_h_kj_mol"] or 0) / (log(10) * _GAS_CONSTANT)
    return np.array([float(row["log_k"]) + slope / _REFERENCE, 0, -slope, 0, 0, 0])


def _sides(reaction: str) -> tuple[list[tuple[str, float]], list[tuple[str, float]]]:
    """Species with their coefficients on the left and on the right of a printed reaction."""
    left, right = reaction.split(" = ")

    def terms(side: str) -> list[tuple[str, float]]:
        found = []
        for term in re.split(r"\s+\+\s+", side.strip()):
            match = _TERM.fullmatch(term)
            if match is None:
                raise ValueError(f"cannot read {term!r} in the reaction {reaction!r}")
            found.append((match[2], float(match[1] or 1)))
        return found

    return terms(left), terms(right)


@cache
def species() -> dict[str, Reaction]:
    """Every aqueous species of `aqueous_species.csv`, by name, resolved into master species."""
    printed = {row["species"]: row for row in rows("aqueous_species")}
    masters = {row["master"] for row in rows("water_components")}
    resolved = {name: Reaction(name, {name: 1.0}, np.zeros(6)) for name in masters}

    def resolve(name: str) -> Reaction:
        if name not in resolved:
            left, right = _sides(printed[name]["reaction"])
            others = left + [(other, -count) for other, count in right if other != name]
            resolved[name] = _combine(name, _constants(printed[name]), others, resolve)
        return resolved[name]

    return {name: resolve(name) for name in printed}


def _combine(
    name: str, constants: Array, terms: list[tuple[str, float]], resolve: Callable[[str], Reaction]
) -> Reaction:
    """A reaction's own constant plus those of the species that it is written with."""
    total = constants.copy()
    masters: dict[str, float] = {}
    for other, count in terms:
        part = resolve(other)
        total += count * part.constants
        for master, of_each in part.masters.items():
            masters[master] = masters.get(master, 0.0) + count * of_each
    return Reaction(name, {master: count for master, count in masters.items() if count}, total)


@cache
def phases() -> dict[str, Reaction]:
    """Every mineral and gas of `phases.csv`, by name.

    A phase's saturation index is the sum of `masters` times log10 of the activities, plus log10 K of `constants`.
    """
    aqueous = species()
    water = {name: Reaction(name, {name: 1.0}, np.zeros(6)) for name in ("H2O", "e-")}
    found = {}
    for row in rows("phases"):
        left, right = _sides(row["reaction"])
        terms = right + [(other, -count) for other, count in left[1:]]
        found[row["phase"]] = _combine(
            row["phase"], -_constants(row), terms, lambda name: water.get(name) or aqueous[name]
        )
    return found


@cache
def _printed_constants() -> dict[str, Array]:
    """log10 K's coefficients of the reactions as they are printed, of all three tables."""
    found = {row["species"]: _constants(row) for row in rows("aqueous_species") if row["reaction"]}
    found |= {row["phase"]: _constants(row) for row in rows("phases")}
    return found | {row["constant"]: _constants(row) for row in rows("handbook_constants")}


def log_equilibrium_constant(name: str, temperature: V | float) -> V:
    """log10 of the equilibrium constant of a reaction as its table prints it, at one atmosphere.

    Parameters
    ----------
    name : str
        A species of `aqueous_species.csv` (`HCO3-`: CO3-2 + H+ = HCO3-), a phase of `phases.csv` (`calcite`), or a
        constant of `handbook_constants.csv` (`carbonic_k1`).
    temperature : float or array
        Water temperature [°C]

    Returns
    -------
    float or array
        log10 K, activities on the molal scale, gases in atmospheres [1]

    Raises
    ------
    ValueError
        Where no table has the name.

    References
    ----------
    .. [1] Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46, 1011-1040.
    .. [2] Ball & Nordstrom 1991, WATEQ4F, USGS Open-File Report 91-183.
    .. [3] Parkhurst & Appelo 2013, PHREEQC version 3, USGS Techniques and Methods 6-A43.
    """
    constants = _printed_constants().get(name)
    if constants is None:
        raise ValueError(f"no equilibrium constant is named {name!r}")
    (celsius,) = arrays(temperature)
    terms = temperature_basis(celsius).reshape(6, -1)
    return restored(np.dot(constants[None], terms).reshape(celsius.shape))
