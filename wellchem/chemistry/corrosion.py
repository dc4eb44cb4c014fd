"""Indices of corrosion. Each says what its author found in some waters and metals, and no more.

None of them measures lead or copper: a first-draw sample of the household's own tap does. An index cannot show that
plumbing gives off no metal.
"""

import numpy as np
from numpy.typing import ArrayLike

from .classes import Names
from .handbook import carbonate
from .intervals import Behaviour, behaves
from .ions import equivalent_weights
from .tables import V, arrays, restored, rows


@behaves(Behaviour(rising=("chloride", "sulfate"), falling=("alkalinity",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
def larson_skold_ratio(*, chloride: V | float, sulfate: V | float, alkalinity: V | float) -> V:
    """Larson-Skold ratio: chloride and sulfate over alkalinity, in equivalents.

    Parameters
    ----------
    chloride : float or array
        As such [mg/L].
    sulfate : float or array
        As SO4 [mg/L].
    alkalinity : float or array
        Bicarbonate and carbonate alkalinity as CaCO3 [mg/L].

    Returns
    -------
    float or array
        Ratio [meq/meq].

    Notes
    -----
    Found on mild steel in waters like those of the Great Lakes; it says nothing of lead, copper or of soft, cold or
    very saline waters. A ratio of the masses is not the index.

    References
    ----------
    .. [1] Larson and Skold, Corrosion 14, 285t, 1958.
    .. [2] 35 Illinois Administrative Code 604.900 (all terms as CaCO3).
    """
    cl, so4, alk = arrays(chloride, sulfate, alkalinity)
    weights = equivalent_weights()
    aggressive = cl / weights["chloride"] + so4 / weights["sulfate"]
    return restored(aggressive / (alk / weights["alkalinity"]))


@behaves(Behaviour(rising=("chloride",), falling=("sulfate",), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
def chloride_sulfate_mass_ratio(*, chloride: V | float, sulfate: V | float) -> V:
    """Chloride-sulfate mass ratio (CSMR).

    Parameters
    ----------
    chloride : float or array
        As such [mg/L].
    sulfate : float or array
        As SO4 [mg/L].

    Returns
    -------
    float or array
        Ratio, infinite without sulfate [mg/mg].

    Notes
    -----
    It concerns lead in galvanic contact with copper (solder, brass, partly replaced pipes), and nothing else.

    References
    ----------
    .. [1] Belitz, Jurgens and Johnson, USGS SIR 2016-5092, 2016 (after Edwards and Triantafyllidou 2007, memory).
    """
    cl, so4 = arrays(chloride, sulfate)
    return restored(cl / so4)


def galvanic_corrosion_potential(*, chloride_sulfate_ratio: ArrayLike, alkalinity: ArrayLike) -> str | Names:
    """Potential to promote galvanic corrosion of lead (PPGC): low, moderate or high.

    Parameters
    ----------
    chloride_sulfate_ratio : float or array
        `chloride_sulfate_mass_ratio` [mg/mg].
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].

    Returns
    -------
    str or array of str
        The class; empty where it cannot be told.

    Notes
    -----
    A screening class of untreated ground water. `low` does not mean that there is no lead.

    References
    ----------
    .. [1] Belitz, Jurgens and Johnson, USGS SIR 2016-5092, 2016, classes; `galvanic_corrosion.csv`.
    """
    ratio, alk = np.broadcast_arrays(*arrays(chloride_sulfate_ratio, alkalinity))
    result = np.full(ratio.shape, "", dtype="<U8")
    # From the mildest class to the severest, each taking what it covers; NaN compares false everywhere.
    for row in reversed(rows("galvanic_corrosion")):
        covered = ratio > float(row["ratio_above"] or -np.inf)
        if row["alkalinity_below"]:
            covered &= alk < float(row["alkalinity_below"])
            # An unknown alkalinity leaves the class open where it would decide.
            result = np.where((ratio > float(row["ratio_above"])) & np.isnan(alk), "", result)
        result = np.where(covered, row["class"], result)
    return result if result.ndim else str(result)


def copper_pipe_range(*, ph: ArrayLike, organic_carbon: ArrayLike = np.nan) -> str | Names:
    """Whether a water lies in the range for which the German standard accepts copper pipe: inside or outside.

    Parameters
    ----------
    ph : float or array
        pH of the water in the pipe [1].
    organic_carbon : float or array
        Total organic carbon as C, NaN where it was not measured [mg/L].

    Returns
    -------
    str or array of str
        `inside`, `outside`, or empty where organic carbon decides and is not known, or pH is not known.

    Notes
    -----
    The range is meant to keep the copper of a settled pipe below 2 mg/L. `inside` is no measurement: new pipe, long
    standing and brass give more, and of lead it says nothing.

    References
    ----------
    .. [1] DIN 50930-6:2013 (memory): pH 7.4 or more, or 7.0 to 7.4 with organic carbon up to 1.5 mg/L;
       `copper_pipe.csv`.
    """
    acidity, carbon = np.broadcast_arrays(*arrays(ph, organic_carbon))
    inside, open_question = np.zeros(acidity.shape, dtype=bool), np.isnan(acidity)
    for row in rows("copper_pipe"):
        reached = acidity >= float(row["ph_minimum"])
        if row["organic_carbon_maximum"]:
            open_question = open_question | (reached & np.isnan(carbon))
            reached = reached & (carbon <= float(row["organic_carbon_maximum"]))
        inside |= reached
    result = np.where(inside, "inside", np.where(open_question, "", "outside"))
    return result if result.ndim else str(result)


@behaves(Behaviour(rising=("alkalinity",), least=0.0))
def buffer_capacity(*, ph: V | float, alkalinity: V | float, temperature: V | float, dissolved_solids: V | float) -> V:
    """Buffer capacity of the carbonate system: strong base that raises pH by one, at the water's own pH.

    Parameters
    ----------
    ph : float or array
        pH [1].
    alkalinity : float or array
        Total alkalinity as CaCO3, taken as carbonate alkalinity [mg/L].
    temperature : float or array
        Water temperature [°C].
    dissolved_solids : float or array
        Dissolved solids, for the ionic strength [mg/L].

    Returns
    -------
    float or array
        Capacity [meq/L per unit of pH].

    Notes
    -----
    In a closed system: no carbon dioxide comes or goes. It is least near pH 8.3 and above 0 everywhere; in a poorly
    buffered water corrosion itself shifts the pH within the pipe.

    References
    ----------
    .. [1] Stumm and Morgan, Aquatic Chemistry, 3rd ed., 1996, section on buffer intensity (memory).
    .. [2] Standard Methods, 24th ed., 2330 B.3 (activity correction).
    """
    acidity, alk, celsius, solids = arrays(ph, alkalinity, temperature, dissolved_solids)
    c = carbonate(ph=acidity, alkalinity=alk, temperature=celsius, dissolved_solids=solids)
    h, k1, k2 = c.hydrogen, c.k1, c.k2
    # Inorganic carbon in terms of bicarbonate, times the slope of its charge per carbon.
    buffered = c.bicarbonate * (h**2 + 4.0 * k2 * h + k1 * k2) / (h**2 + k1 * h + k1 * k2)
    return restored(1000.0 * np.log(10.0) * (h + c.hydroxide + buffered))
