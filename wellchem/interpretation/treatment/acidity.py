"""What a water comes to beside solid calcium carbonate or in open air: the far end of neutralisation and aeration."""

from __future__ import annotations

from functools import lru_cache
from itertools import product

import numpy as np

from wellchem import chemistry
from wellchem.chemistry.equilibria import log_equilibrium_constant
from wellchem.chemistry.handbook import carbonate
from wellchem.chemistry.tables import Array
from wellchem.interpretation.treatment.tables import Ends, constant
from wellchem.interpretation.treatment.water import Water

_GRID = 96  # points of pH at which the water is tried; between two of them the line is straight enough
_TOP = 10.5
_LITRE = 1000.0


def _range(water: Water, analyte: str, otherwise: str) -> Ends:
    """Bounds of an amount; where it was not measured or has no upper bound, a stated range."""
    supposed = constant(otherwise)
    low, high = water.get(analyte) or (supposed.low, supposed.high)
    return low, max(low, supposed.high) if np.isinf(high) else high


def _clipped(ends: Ends, limits: Ends) -> Ends:
    low, high = (min(max(end, limits[0]), limits[1]) for end in ends)
    return low, high


def _box(water: Water) -> tuple[Ends, ...]:
    """Inputs of the carbonate system, kept where the handbook's equations mean something."""
    supposed, valid = constant("neutralised_ph"), constant("carbonate_ph")
    solids = constant("carbonate_solids")
    return (
        _clipped(water.get("ph") or (supposed.low, supposed.high), (valid.low, valid.high)),
        _range(water, "total_alkalinity", "neutralised_alkalinity"),
        _range(water, "calcium", "neutralised_calcium"),
        _clipped(_range(water, "temperature", "neutralised_temperature"), (0.0, 50.0)),
        _clipped(_range(water, "total_dissolved_solids", "neutralised_solids"), (solids.low, solids.high)),
    )


def _corners(box: tuple[Ends, ...]) -> list[Array]:
    """Every corner of the box, one column each, ready to be spread over a grid of pH."""
    points = np.array(list(product(*({low, high} for low, high in box))), dtype=np.float64)
    return [column[:, None] for column in points.T]


def beside_calcite(water: Water) -> tuple[float, float]:
    """Highest pH, and most calcium carbonate taken up [mg/L as CaCO3], of the water at equilibrium with calcite."""
    return _beside_calcite(_box(water))


@lru_cache(maxsize=256)
def _beside_calcite(box: tuple[Ends, ...]) -> tuple[float, float]:
    """By handbook constants in a closed bed: each pH of a grid fixes by carbon and charge how much was dissolved; where
    the water so made is saturated, dissolution ends. Bounds are sought at the corners of the box.
    """
    ph, alkalinity, calcium, temperature, solids = _corners(box)
    grid = ph + (_TOP - ph) * np.linspace(0.0, 1.0, _GRID)
    equivalents = alkalinity / chemistry.equivalent_weight("CaCO3", 2) / _LITRE
    raw = carbonate(ph=ph, alkalinity=alkalinity, temperature=temperature, dissolved_solids=solids)
    carbon = (equivalents + raw.hydrogen - raw.hydroxide) / _charge(raw.hydrogen, raw.k1, raw.k2)
    grown = np.zeros_like(grid)
    for _ in range(2):  # what dissolves raises the ionic strength, which changes the constants a little
        strength = solids + grown
        at = carbonate(ph=grid, alkalinity=alkalinity, temperature=temperature, dissolved_solids=strength)
        charge = _charge(at.hydrogen, at.k1, at.k2)
        taken = (carbon * charge + at.hydroxide - at.hydrogen - equivalents) / (2.0 - charge)
        grown = np.maximum(taken, 0.0) * _LITRE * chemistry.molar_mass("CaCO3")
    index = grid - np.asarray(
        chemistry.saturation_ph(
            ph=grid,
            calcium=calcium + grown * chemistry.basis_factor("CaCO3", "Ca"),
            alkalinity=alkalinity + grown,
            temperature=temperature,
            dissolved_solids=solids + grown,
        )
    )
    index = np.maximum(index, -99.0)  # without calcium the index is unbounded below
    saturated = index >= 0.0
    first = np.where(saturated.any(axis=1), saturated.argmax(axis=1), _GRID - 1)
    rows = np.arange(len(first))
    before = np.maximum(first - 1, 0)
    rise = index[rows, first] - index[rows, before]
    share = np.clip(-index[rows, before] / np.where(rise > 0.0, rise, np.inf), 0.0, 1.0)
    end = [part[rows, before] + share * (part[rows, first] - part[rows, before]) for part in (grid, grown)]
    end = [np.where(first == 0, part[:, 0], found) for part, found in zip((grid, grown), end, strict=True)]
    return float(np.max(end[0])), float(np.max(end[1]))


def _charge(hydrogen: Array, k1: Array, k2: Array) -> Array:
    """Charge of a mole of inorganic carbon."""
    return (k1 * hydrogen + 2.0 * k1 * k2) / (hydrogen**2 + k1 * hydrogen + k1 * k2)


def soda_ash(water: Water) -> Ends:
    """Least and most sodium carbonate that brings the water to the pH that a feed is set to [mmol/L]."""
    target = constant("soda_ash_target")
    return _soda_ash(_box(water), (target.low, target.high))


@lru_cache(maxsize=256)
def _soda_ash(box: tuple[Ends, ...], target: Ends) -> Ends:
    """A mole brings two equivalents of alkalinity and one mole of carbon, in a closed pipe."""
    ph, alkalinity, _, temperature, solids = _corners(box)
    grid = np.array([target])
    equivalents = alkalinity / chemistry.equivalent_weight("CaCO3", 2) / _LITRE
    raw = carbonate(ph=ph, alkalinity=alkalinity, temperature=temperature, dissolved_solids=solids)
    carbon = (equivalents + raw.hydrogen - raw.hydroxide) / _charge(raw.hydrogen, raw.k1, raw.k2)
    at = carbonate(ph=grid, alkalinity=alkalinity, temperature=temperature, dissolved_solids=solids)
    charge = _charge(at.hydrogen, at.k1, at.k2)
    taken = (carbon * charge + at.hydroxide - at.hydrogen - equivalents) / (2.0 - charge)
    taken = np.maximum(taken, 0.0) * _LITRE
    return float(np.min(taken[:, 0])), float(np.max(taken[:, 1]))


def in_air(water: Water) -> float:
    """Highest pH of the water when its carbon dioxide has come to that of the air."""
    return _in_air(_box(water), constant("air_carbon_dioxide").low)


@lru_cache(maxsize=256)
def _in_air(box: tuple[Ends, ...], pressure: float) -> float:
    _, alkalinity, _, temperature, solids = _corners(box)
    grid = np.broadcast_to(np.linspace(4.0, _TOP, _GRID), (len(alkalinity), _GRID))
    at = carbonate(ph=grid, alkalinity=alkalinity, temperature=temperature, dissolved_solids=solids)
    acid = pressure * 10.0 ** np.asarray(log_equilibrium_constant("carbon_dioxide_henry", temperature))
    # Bicarbonate by charge balance rises above what the air sustains, below the pH sought.
    reached = acid * at.k1 / at.hydrogen >= at.bicarbonate
    first = np.where(reached.any(axis=1), reached.argmax(axis=1), _GRID - 1)
    return float(np.max(grid[np.arange(len(first)), first]))
