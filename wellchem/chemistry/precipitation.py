"""Calcium carbonate that a water can lay down or take up, by equilibration."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from .closed_system import change_temperature, closed_conditions, settled
from .equilibria import temperature_basis
from .equilibrium import Given
from .masses import molar_mass
from .state import Reason, Speciation
from .system import CALCIUM
from .tables import Array, restored

_MINERALS = ("calcite", "aragonite")


@dataclass(frozen=True)
class CalciumCarbonatePotential:
    """What a water comes to beside solid calcium carbonate.

    Attributes
    ----------
    saturation_index : float or array
        Saturation index before, at the temperature of equilibration [1]
    precipitated : float or array
        Calcium carbonate precipitation potential: positive what precipitates, negative what dissolves, as CaCO3 per
        litre of the water at the temperature at which it was analysed [mg/L]
    ph_before, ph_after : float or array
        pH at that temperature before and after [1]
    reason : int or array
        A `Reason`; the other fields are NaN where it is not SOLVED.
    """

    saturation_index: float | Array
    precipitated: float | Array
    ph_before: float | Array
    ph_after: float | Array
    reason: int | NDArray[np.int8]


def calcium_carbonate_potential(
    waters: Speciation, *, temperature: ArrayLike | None = None, mineral: str = "calcite"
) -> CalciumCarbonatePotential:
    """Calcium carbonate precipitation potential (CCPP) by equilibration in a closed volume.

    Positive is oversaturated water's scale, negative the mineral that an aggressive water dissolves before it is
    saturated. With a temperature it is the potential after heating, as in a water heater.

    Parameters
    ----------
    waters : Speciation
        Waters from `speciate`, with calcium.
    temperature : float or array, optional
        Temperature of equilibration, of the waters' shape or one for all, 0 to 100; the waters' own without it [°C]
    mineral : str
        `calcite` or `aragonite`.

    Returns
    -------
    CalciumCarbonatePotential

    Raises
    ------
    ValueError
        Where the waters were speciated without calcium, the mineral is another, or temperatures do not broadcast.

    Notes
    -----
    ====================  ============================================================================================
    Assumption            Consequence
    ====================  ============================================================================================
    Closed to the air     Carbon dioxide stays: water that loses it on the way precipitates more.
    Equilibrium           A bound: how fast, and whether scale sticks, is not said. Phosphate, magnesium and organic
                          matter slow calcite down.
    Enough solid          A negative potential needs that much solid to be in reach.
    ====================  ============================================================================================

    References
    ----------
    .. [1] APHA/AWWA/WEF, Standard Methods 2330 C (calcium carbonate precipitation potential).
    .. [2] Parkhurst & Appelo 2013, PHREEQC version 3, USGS Techniques and Methods 6-A43.
    """
    if CALCIUM not in waters.components:
        raise ValueError("a calcium carbonate potential needs waters speciated with calcium")
    if mineral not in _MINERALS:
        raise ValueError(f"calcium carbonate is one of {', '.join(_MINERALS)}, not {mineral!r}")
    before = waters if temperature is None else change_temperature(waters, temperature)
    parts = before.system.phase(mineral)
    assert parts is not None
    size = np.size(before.ph)
    index, precipitated, ph = (np.empty(size) for _ in range(3))
    reason = np.array(before.reason, dtype=np.int8).reshape(-1)
    litre = np.reshape(waters.water, -1)
    for part, block in before.blocks():
        # The product {Ca}{CO3} of the saturated water is what makes the index nought.
        constant = -(parts[1] @ temperature_basis(block.temperature))
        known = closed_conditions(block, Given.CALCIUM_CARBONATE, block.temperature, constant)
        after, found = settled(block, known)
        reason[part] = np.where(reason[part] == Reason.SOLVED, found, reason[part])
        index[part], ph[part] = block.index(mineral), after.ph
        carbon = before.system.stoichiometry[:, before.system.carbonate]
        precipitated[part] = known.totals[before.system.carbonate] - carbon @ after.molalities()
    precipitated *= litre * molar_mass("CaCO3") * 1000
    nan = np.where(reason == Reason.SOLVED, 0.0, np.nan)
    shape = np.shape(before.ph)

    def shaped(values: Array) -> float | Array:
        return restored((values + nan).reshape(shape))

    return CalciumCarbonatePotential(
        shaped(index),
        shaped(precipitated),
        before.ph,
        shaped(ph),
        reason.reshape(shape) if shape else int(reason[0]),
    )
