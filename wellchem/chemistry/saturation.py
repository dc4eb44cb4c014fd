"""Saturation indices: whether a mineral can form in a water, or dissolve in it."""

from dataclasses import dataclass, fields

import numpy as np

from .equilibria import phases
from .state import Speciation
from .tables import Array, restored


@dataclass(frozen=True)
class SaturationIndices:
    """Saturation indices of the minerals that a well's water is judged by, NaN where a component was not given.

    Positive: the water can form it. Negative: the water can dissolve it. Nought: equilibrium.

    Attributes
    ----------
    calcite, aragonite, dolomite, siderite : float or array
        Carbonates of calcium (two), calcium with magnesium (ordered), and ferrous iron [1]
    gypsum, barite, celestite : float or array
        Sulfates of calcium, barium and strontium [1]
    fluorite : float or array
        Calcium fluoride [1]
    chalcedony, silica_gel : float or array
        Silica, microcrystalline and amorphous [1]
    ferrihydrite : float or array
        Amorphous ferric hydroxide; needs `pe` [1]
    """

    calcite: float | Array
    aragonite: float | Array
    dolomite: float | Array
    siderite: float | Array
    gypsum: float | Array
    barite: float | Array
    celestite: float | Array
    fluorite: float | Array
    chalcedony: float | Array
    silica_gel: float | Array
    ferrihydrite: float | Array


def saturation_index(waters: Speciation, mineral: str) -> float | Array:
    """Saturation index with one mineral of `phases.csv`, log10 of its ion activity product over its constant [1].

    Parameters
    ----------
    waters : Speciation
        Waters from `speciate`.
    mineral : str
        Name in the table, `rhodochrosite` for one.

    Returns
    -------
    float or array
        NaN where a component of the mineral was not given to `speciate`, -inf where it is nought [1]

    Raises
    ------
    ValueError
        Where the table has no such mineral.

    References
    ----------
    .. [1] Parkhurst & Appelo 2013, phreeqc.dat; each row names its own.
    """
    if mineral not in phases():
        raise ValueError(f"no mineral is named {mineral!r}")
    return waters.each(lambda block: block.index(mineral))


def saturation_indices(waters: Speciation) -> SaturationIndices:
    """Saturation indices with the minerals of `SaturationIndices`, all at once.

    Parameters
    ----------
    waters : Speciation
        Waters from `speciate`.

    References
    ----------
    .. [1] Parkhurst & Appelo 2013, phreeqc.dat; each row of `phases.csv` names its own.
    """
    names = [field.name for field in fields(SaturationIndices)]
    shape = np.shape(waters.ph)
    absent = np.broadcast_to(np.float64(np.nan), shape)
    known = [name for name in names if waters.system.phase(name) is not None]
    found = {name: np.empty(np.size(waters.ph)) for name in known}
    for part, block in waters.blocks():
        log_activities = block.log_activities()
        for name, values in found.items():
            values[part] = block.index(name, log_activities)
    return SaturationIndices(
        **{name: restored(found[name].reshape(shape) if name in found else absent) for name in names}
    )
