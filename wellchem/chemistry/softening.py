"""Arithmetic of ion exchange softening: what goes in for the hardness, and how much hardness there is to take."""

from .conversions import basis_factor
from .hardness import hardness_factor
from .intervals import Behaviour, behaves
from .tables import V, arrays, restored


@behaves(Behaviour(rising=("hardness_removed",)))
def sodium_added(*, hardness_removed: V | float) -> V:
    """Sodium that a softener charged with sodium chloride gives for the hardness it takes.

    Parameters
    ----------
    hardness_removed : float or array
        Hardness as CaCO3 [mg/L].

    Returns
    -------
    float or array
        Sodium [mg/L].

    References
    ----------
    .. [1] Stoichiometry: two sodium ions for each calcium or magnesium ion (7.86 mg/L for each grain per gallon).
    """
    (hardness,) = arrays(hardness_removed)
    return restored(hardness * basis_factor("CaCO3", "Na"))


@behaves(Behaviour(rising=("hardness_removed",)))
def potassium_added(*, hardness_removed: V | float) -> V:
    """Potassium that a softener charged with potassium chloride gives for the hardness it takes.

    Parameters
    ----------
    hardness_removed : float or array
        Hardness as CaCO3 [mg/L].

    Returns
    -------
    float or array
        Potassium [mg/L].

    References
    ----------
    .. [1] Stoichiometry: two potassium ions for each calcium or magnesium ion.
    """
    (hardness,) = arrays(hardness_removed)
    return restored(hardness * basis_factor("CaCO3", "K"))


@behaves(Behaviour(rising=("total_hardness", "iron")))
def compensated_hardness(*, total_hardness: V | float, iron: V | float, allowance: float) -> V:
    """Hardness with an allowance for iron, by which softeners are sized.

    Parameters
    ----------
    total_hardness : float or array
        Hardness as CaCO3 [mg/L].
    iron : float or array
        Iron [mg/L].
    allowance : float
        Grains per US gallon that are added for each mg/L of iron [gpg/(mg/L)].

    Returns
    -------
    float or array
        Compensated hardness as CaCO3 [mg/L].

    Notes
    -----
    The allowance is a convention of the trade, 2 to 5, and has to be chosen; iron's own equivalents are 0.105.

    References
    ----------
    .. [1] Sizing examples of the trade, which differ; common practice, no one source.
    """
    hardness, fe = arrays(total_hardness, iron)
    return restored(hardness + allowance * hardness_factor("gpg") * fe)


@behaves(Behaviour(rising=("total_hardness", "volume")))
def hardness_load(*, total_hardness: V | float, volume: V | float) -> V:
    """Hardness that a volume of water carries to the softener, as the trade states capacity.

    Parameters
    ----------
    total_hardness : float or array
        Hardness, compensated where it is to be, as CaCO3 [mg/L].
    volume : float or array
        Volume of water, such as a day's use [L].

    Returns
    -------
    float or array
        Load as CaCO3 [grain].

    References
    ----------
    .. [1] NIST Handbook 44, Appendix C (grain and US gallon, exact).
    """
    hardness, litres = arrays(total_hardness, volume)
    return restored(hardness * litres / _GRAIN)


_GRAIN = 64.79891  # mg, exact: NIST Handbook 44, Appendix C
