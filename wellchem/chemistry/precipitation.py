"""Calcium carbonate that a water can lay down or take up, by equilibration."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike, NDArray

from .closed_system import change_temperature, closed_conditions, heated, settled
from .equilibria import temperature_basis
from .equilibrium import Given
from .masses import molar_mass
from .saturation import saturation_index
from .state import Reason, Speciation
from .system import CALCIUM
from .tables import Array, restored

_MINERALS = ("calcite", "aragonite")


@dataclass(frozen=True)
class CalciumCarbonatePotential:
    """What a water comes to beside solid calcium carbonate.

    Attributes
    ----------
    precipitated : float or array
        Calcium carbonate precipitation potential: positive what precipitates, negative what dissolves, as CaCO3 per
        litre of the water at the temperature at which it was analysed [mg/L]
    ph_after : float or array
        pH at the temperature of equilibration, beside the solid [1]
    reason : int or array
        A `Reason`; the other values are NaN where it is not SOLVED.
    mineral : str
        `calcite` or `aragonite`.
    waters : Speciation
        The waters as they were analysed.
    temperature : float, array or None
        Temperature of equilibration; None where it is the waters' own [°C]
    """

    precipitated: float | Array
    ph_after: float | Array
    reason: int | NDArray[np.int8]
    mineral: str
    waters: Speciation
    temperature: ArrayLike | None

    @cached_property
    def before(self) -> Speciation:
        """The waters at the temperature of equilibration, before anything precipitates."""
        return self.waters if self.temperature is None else change_temperature(self.waters, self.temperature)

    @property
    def saturation_index(self) -> float | Array:
        """Saturation index before, at the temperature of equilibration [1]."""
        return restored(saturation_index(self.before, self.mineral) + np.where(self.reason == Reason.SOLVED, 0, np.nan))

    @property
    def ph_before(self) -> float | Array:
        """pH before, at the temperature of equilibration [1]."""
        return self.before.ph


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
    parts = waters.system.phase(mineral)
    assert parts is not None
    shape, size = np.shape(waters.ph), np.size(waters.ph)
    target = np.reshape(np.broadcast_to(waters.temperature if temperature is None else temperature, shape), -1)
    target, reason = heated(target, waters.reason)
    precipitated, ph = np.empty(size), np.empty(size)
    carbon = waters.system.stoichiometry[:, waters.system.carbonate]
    for part, block in waters.blocks():
        # The product {Ca}{CO3} of the saturated water is what makes the index nought.
        constant = -(parts[1] @ temperature_basis(target[part]))
        # A closed volume keeps its totals: the way there, by temperature first or by the solid, does not matter.
        known = closed_conditions(block, Given.CALCIUM_CARBONATE, target[part], constant)
        after, found = settled(block, known)
        reason[part] = np.where(reason[part] == Reason.SOLVED, found, reason[part])
        ph[part] = after.ph
        precipitated[part] = known.totals[waters.system.carbonate] - carbon @ after.molalities()
    precipitated *= np.reshape(waters.water, -1) * molar_mass("CaCO3") * 1000
    nan = np.where(reason == Reason.SOLVED, 0.0, np.nan)
    return CalciumCarbonatePotential(
        precipitated=restored((precipitated + nan).reshape(shape)),
        ph_after=restored((ph + nan).reshape(shape)),
        reason=reason.reshape(shape) if shape else int(reason[0]),
        mineral=mineral,
        waters=waters,
        temperature=temperature,
    )
