"""Ratios of two ions, from which the origin of a water is read."""

import numpy as np

from .intervals import Behaviour, behaves
from .ions import equivalent_weights
from .masses import molar_mass
from .tables import V, arrays, restored


@np.errstate(divide="ignore", invalid="ignore")
def _ratio(one: V | float, other: V | float, weight: float = 1.0, other_weight: float = 1.0) -> V:
    """Ratio of two amounts, each over the mass of its mole or equivalent."""
    over, under = arrays(one, other)
    return restored((over / weight) / (under / other_weight))


@behaves(Behaviour(rising=("sodium",), falling=("chloride",), least=0.0))
def sodium_chloride_ratio(*, sodium: V | float, chloride: V | float) -> V:
    """Molar ratio of sodium to chloride: 1 from halite, 0.86 in sea water.

    Parameters
    ----------
    sodium, chloride : float or array
        As such [mg/L].

    Returns
    -------
    float or array
        Ratio [mol/mol].

    References
    ----------
    .. [1] Hem, USGS WSP 2254, 1985, Table 2 (sea water 10,500 and 19,000 mg/L; memory).
    """
    return _ratio(sodium, chloride, molar_mass("Na"), molar_mass("Cl"))


@behaves(Behaviour(rising=("calcium",), falling=("magnesium",), least=0.0))
def calcium_magnesium_ratio(*, calcium: V | float, magnesium: V | float) -> V:
    """Molar ratio of calcium to magnesium, which is also that of their equivalents: 1 from dolomite.

    Parameters
    ----------
    calcium, magnesium : float or array
        As such [mg/L].

    Returns
    -------
    float or array
        Ratio [mol/mol].

    References
    ----------
    .. [1] Hem, USGS WSP 2254, 1985, section on magnesium (memory).
    """
    return _ratio(calcium, magnesium, molar_mass("Ca"), molar_mass("Mg"))


@behaves(Behaviour(rising=("chloride",), falling=("bromide",), least=0.0))
def chloride_bromide_ratio(*, chloride: V | float, bromide: V | float) -> V:
    """Mass ratio of chloride to bromide, which road salt and sewage raise above rain's and sea water's.

    Parameters
    ----------
    chloride, bromide : float or array
        As such [mg/L].

    Returns
    -------
    float or array
        Ratio [mg/mg].

    References
    ----------
    .. [1] Davis, Whittemore and Fabryka-Martin, Ground Water 36, 338-350, 1998 (memory).
    """
    return _ratio(chloride, bromide)


@behaves(Behaviour(rising=("sulfate",), falling=("chloride",), least=0.0))
def sulfate_chloride_ratio(*, sulfate: V | float, chloride: V | float) -> V:
    """Ratio of sulfate to chloride in equivalents.

    Parameters
    ----------
    sulfate, chloride : float or array
        As such (sulfate as SO4) [mg/L].

    Returns
    -------
    float or array
        Ratio [meq/meq].

    Notes
    -----
    Not the inverse of the chloride-sulfate mass ratio, which is of masses.

    References
    ----------
    .. [1] Hem, USGS WSP 2254, 1985, section on ratios (memory).
    """
    weights = equivalent_weights()
    return _ratio(sulfate, chloride, weights["sulfate"], weights["chloride"])
