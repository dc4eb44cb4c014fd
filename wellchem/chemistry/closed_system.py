"""What a closed volume of water comes to when its temperature changes or a carbonate mineral settles in it.

Nothing enters or leaves but the mineral: the totals of the components, and with them inorganic carbon and
alkalinity, are kept, and the pH follows.
"""

from dataclasses import replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from .activity import water_density
from .equilibrium import Conditions, Given, Unknowns
from .solver import solve
from .state import SALINE, Block, Reason, Speciation
from .tables import Array, restored


def closed_conditions(block: Block, given: Given, temperature: Array, constant: Array) -> Conditions:
    """A block's totals and alkalinity, to be kept at a temperature."""
    species = block.molalities()
    totals = block.system.stoichiometry.T @ species
    return Conditions(given, temperature, totals, block.system.alkalinity @ species, -block.pe, constant)


def settled(block: Block, known: Conditions) -> tuple[Block, NDArray[np.int8]]:
    """The state that a block comes to, NaN where it was NaN, and for each water whether it was found."""
    present = np.isfinite(block.ph) & np.isfinite(known.temperature)
    state = Unknowns.near(block.free, block.ionic_strength, -block.ph, block.log_water)
    state.put(present, solve(block.system, known.at(present), state.at(present)))
    after = Block(
        block.system,
        state.free,
        known.temperature,
        -state.log_hydrogen,
        block.pe,
        state.ionic_strength,
        state.log_water,
        block.water,
    )
    reason = np.where(state.converged, Reason.SOLVED, Reason.NOT_CONVERGED).astype(np.int8)
    reason[state.ionic_strength > SALINE] = Reason.TOO_SALINE
    return after, reason


def heated(target: Array, before: int | NDArray[np.int8]) -> tuple[Array, NDArray[np.int8]]:
    """Temperatures that waters in a row are to come to, NaN where there is no such water, and the waters' reasons."""
    reason = np.array(before, dtype=np.int8).reshape(-1)
    solved = reason == Reason.SOLVED
    with np.errstate(invalid="ignore"):
        in_range = (target >= 0) & (target <= 100)
    reason[solved & ~in_range] = Reason.OUT_OF_RANGE
    reason[solved & np.isnan(target)] = Reason.MISSING
    return np.where(in_range, target, np.nan), reason


def change_temperature(waters: Speciation, temperature: ArrayLike) -> Speciation:
    """The same waters at another temperature, without gain or loss of carbon dioxide.

    Parameters
    ----------
    waters : Speciation
        Waters at their own temperature, from `speciate`.
    temperature : float or array
        Temperature to come to, of the waters' shape or one for all, 0 to 100 [°C]

    Returns
    -------
    Speciation
        The waters, their pH moved; NaN with a `Reason` where there is no result.

    Raises
    ------
    ValueError
        Where the temperatures do not broadcast to the waters' shape.

    References
    ----------
    .. [1] Parkhurst & Appelo 2013, PHREEQC version 3, USGS Techniques and Methods 6-A43.
    """
    shape = np.shape(waters.ph)
    target = np.broadcast_to(np.asarray(temperature, dtype=np.float64), shape).reshape(-1)
    size = target.size
    free = np.empty((len(waters.components), size))
    ph, strength, log_water = (np.empty(size) for _ in range(3))
    to, reason = heated(target, waters.reason)
    for part, block in waters.blocks():
        known = closed_conditions(block, Given.ALKALINITY_CARBON, to[part], np.zeros(len(block.ph)))
        after, found = settled(block, known)
        reason[part] = np.where(reason[part] == Reason.SOLVED, found, reason[part])
        free[:, part], ph[part] = after.free, after.ph
        strength[part], log_water[part] = after.ionic_strength, after.log_water
    nan = np.where(reason == Reason.SOLVED, 0.0, np.nan)
    density = np.asarray(water_density(target)) / np.asarray(water_density(np.reshape(waters.temperature, -1)))

    def shaped(values: Array) -> float | Array:
        return restored((values + nan).reshape(shape))

    return replace(
        waters,
        free=(free + nan).reshape(-1, *shape),
        temperature=shaped(target),
        ph=shaped(ph),
        pe=shaped(np.reshape(waters.pe, -1)),
        ionic_strength=shaped(strength),
        log_water_activity=shaped(log_water),
        water=shaped(np.reshape(waters.water, -1) * density),
        reason=reason.reshape(shape) if shape else int(reason[0]),
    )
