"""Ratios of two ions, from which the origin of a water is read."""

import numpy as np

from .intervals import Behaviour, behaves
from .ions import equivalent_weights
from .masses import molar_mass
from .tables import V, arrays, restored


@behaves(Behaviour(rising=("sodium",), falling=("chloride",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
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
    na, cl = arrays(sodium, chloride)
    return restored((na / molar_mass("Na")) / (cl / molar_mass("Cl")))


@behaves(Behaviour(rising=("calcium",), falling=("magnesium",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
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
    ca, mg = arrays(calcium, magnesium)
    return restored((ca / molar_mass("Ca")) / (mg / molar_mass("Mg")))


@behaves(Behaviour(rising=("chloride",), falling=("bromide",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
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
    cl, br = arrays(chloride, bromide)
    return restored(cl / br)


@behaves(Behaviour(rising=("sulfate",), falling=("chloride",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
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
    so4, cl = arrays(sulfate, chloride)
    weights = equivalent_weights()
    return restored((so4 / weights["sulfate"]) / (cl / weights["chloride"]))
