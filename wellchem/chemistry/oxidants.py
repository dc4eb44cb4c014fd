"""What an oxidant does by stoichiometry: how much of it a reduced substance takes, and how much alkalinity."""

from .conversions import equivalents_per_mole
from .intervals import Behaviour, behaves
from .masses import atoms, equivalent_weight, molar_mass
from .tables import V, arrays, restored, rows


def _row(table: str, column: str, key: str) -> dict[str, str]:
    for row in rows(table):
        if row[column] == key:
            return row
    raise ValueError(f"no {column} {key!r} is known; there are {', '.join(row[column] for row in rows(table))}")


def _moles_per_milligram(basis: str, element: str) -> float:
    """Moles of the element that is oxidised in a milligram of any basis that has it [mmol/mg]."""
    count = atoms(basis).get(element, 0)
    if not count:
        raise ValueError(f"{basis!r} has no {element} to be oxidised")
    return count / molar_mass(basis)


@behaves(Behaviour(rising=("value",)))
def oxidant_demand(value: V | float, oxidation: str, oxidant: str, *, basis: str | None = None) -> V:
    """Oxidant that the oxidation takes.

    Parameters
    ----------
    value : float or array
        Concentration of what is oxidised [mg/L].
    oxidation : str
        Key of `oxidations.csv`, such as `iron to ferric hydroxide`.
    oxidant : str
        Key of `oxidants.csv`: `chlorine`, `permanganate`, `oxygen` …
    basis : str, optional
        Formula in which the concentration is given, the element itself unless given (`H2S` for sulfide as H2S).

    Returns
    -------
    float or array
        Oxidant, as its own formula: chlorine as Cl2, permanganate as KMnO4 [mg/L].

    Raises
    ------
    ValueError
        Where a table has no such key, or the basis has none of the element.

    Notes
    -----
    Stoichiometry alone. A water's organic matter, ammonia and the contact time ask for more; a dose is found by trial.

    References
    ----------
    .. [1] AWWA/ASCE, Water Treatment Plant Design, 2005, Tables 10.7 and 10.8; half-reactions in the tables.
    """
    reduced, taken = _row("oxidations", "oxidation", oxidation), _row("oxidants", "oxidant", oxidant)
    (given,) = arrays(value)
    moles = given * _moles_per_milligram(basis or reduced["basis"], reduced["basis"])
    per_mole = int(reduced["electrons"]) / int(taken["electrons"])
    return restored(moles * per_mole * molar_mass(taken["formula"]))


def alkalinity_consumed(value: V | float, oxidation: str, oxidant: str, *, basis: str | None = None) -> V:
    """Alkalinity that the oxidation takes.

    Parameters
    ----------
    value, oxidation, oxidant, basis
        As in `oxidant_demand` [mg/L].

    Returns
    -------
    float or array
        Alkalinity as CaCO3; negative where the reaction gives some [mg/L].

    Raises
    ------
    ValueError
        As `oxidant_demand`.

    References
    ----------
    .. [1] As `oxidant_demand`.
    """
    reduced, taken = _row("oxidations", "oxidation", oxidation), _row("oxidants", "oxidant", oxidant)
    (given,) = arrays(value)
    moles = given * _moles_per_milligram(basis or reduced["basis"], reduced["basis"])
    electrons = int(reduced["electrons"])
    hydrogen = int(reduced["hydrogen_given"]) - electrons * int(taken["hydrogen_taken"]) / int(taken["electrons"])
    return restored(moles * hydrogen * equivalent_weight("CaCO3", equivalents_per_mole("CaCO3")))
