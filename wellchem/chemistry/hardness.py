"""Hardness: from calcium and magnesium, in its two parts, and in every unit in use."""

from functools import cache

import numpy as np

from .conversions import basis_factor, equivalents_per_mole
from .intervals import Behaviour, behaves
from .masses import equivalent_weight, molar_mass
from .tables import V, arrays, restored, rows


@behaves(Behaviour(rising=("calcium", "magnesium")))
def total_hardness(*, calcium: V | float, magnesium: V | float) -> V:
    """Total hardness by calculation.

    Parameters
    ----------
    calcium : float or array
        Calcium as Ca [mg/L].
    magnesium : float or array
        Magnesium as Mg [mg/L].

    Returns
    -------
    float or array
        Hardness as CaCO3 [mg/L].

    Notes
    -----
    Calcium and magnesium alone, as the method defines it: iron, manganese, strontium, aluminium and zinc, which some
    older editions add, are left out.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2340 B.
    """
    ca, mg = arrays(calcium, magnesium)
    return restored(ca * basis_factor("Ca", "CaCO3") + mg * basis_factor("Mg", "CaCO3"))


@behaves(Behaviour(rising=("calcium",)))
def calcium_hardness(*, calcium: V | float) -> V:
    """Calcium hardness.

    Parameters
    ----------
    calcium : float or array
        Calcium as Ca [mg/L].

    Returns
    -------
    float or array
        Calcium hardness as CaCO3 [mg/L].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2340 B.
    """
    (ca,) = arrays(calcium)
    return restored(ca * basis_factor("Ca", "CaCO3"))


@behaves(Behaviour(rising=("magnesium",)))
def magnesium_hardness(*, magnesium: V | float) -> V:
    """Magnesium hardness.

    Parameters
    ----------
    magnesium : float or array
        Magnesium as Mg [mg/L].

    Returns
    -------
    float or array
        Magnesium hardness as CaCO3 [mg/L].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2340 B.
    """
    (mg,) = arrays(magnesium)
    return restored(mg * basis_factor("Mg", "CaCO3"))


@behaves(Behaviour(rising=("total_hardness", "alkalinity")))
def carbonate_hardness(*, total_hardness: V | float, alkalinity: V | float) -> V:
    """Carbonate hardness: the part of the hardness that alkalinity balances.

    Parameters
    ----------
    total_hardness : float or array
        Hardness as CaCO3 [mg/L].
    alkalinity : float or array
        Carbonate and bicarbonate alkalinity as CaCO3 [mg/L].

    Returns
    -------
    float or array
        Carbonate hardness as CaCO3: the smaller of the two [mg/L].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2340 A.
    .. [2] Davis, Water and Wastewater Engineering, 2010, p. 7-4.
    """
    return restored(np.minimum(*arrays(total_hardness, alkalinity)))


@behaves(Behaviour(rising=("total_hardness",), falling=("alkalinity",), least=0.0))
def noncarbonate_hardness(*, total_hardness: V | float, alkalinity: V | float) -> V:
    """Noncarbonate hardness: what hardness exceeds alkalinity by.

    Parameters
    ----------
    total_hardness : float or array
        Hardness as CaCO3 [mg/L].
    alkalinity : float or array
        Carbonate and bicarbonate alkalinity as CaCO3 [mg/L].

    Returns
    -------
    float or array
        Noncarbonate hardness as CaCO3, nought where alkalinity is the greater [mg/L].

    References
    ----------
    .. [1] As `carbonate_hardness`.
    """
    hardness, buffer = arrays(total_hardness, alkalinity)
    return restored(np.maximum(hardness - buffer, 0.0))


@cache
def hardness_factor(unit: str) -> float:
    """Hardness that one of a unit is, as CaCO3 [mg/L].

    Parameters
    ----------
    unit : str
        `mg/L` (as CaCO3), `mmol/L` (of calcium and magnesium), `meq/L`, `gpg` (grains per US gallon), `°e` (English or
        Clark degree, grains per imperial gallon), `°dH` (German), `°fH` (French), `°rH` (Russian).

    Raises
    ------
    ValueError
        Where the unit is not in the table.

    References
    ----------
    .. [1] `reference_limits/chemistry/hardness_units.csv`, source per row.
    """
    for row in rows("hardness_units"):
        if row["unit"] == unit:
            amount = float(row["amount"])
            substance = row["substance"]
            if row["amount_unit"] == "mmol":
                amount *= molar_mass(substance)
            elif row["amount_unit"] == "meq":
                amount *= equivalent_weight(substance, equivalents_per_mole(substance))
            return amount * basis_factor(substance, "CaCO3") / float(row["volume"])
    raise ValueError(f"{unit!r} is not a unit of hardness")


@behaves(Behaviour(rising=("value",)))
def convert_hardness(value: V | float, source: str, target: str) -> V:
    """Hardness said in another unit.

    Parameters
    ----------
    value : float or array
        Hardness in the unit `source`.
    source, target : str
        Units, as in `hardness_factor`.

    Returns
    -------
    float or array
        Hardness in the unit `target`.
    """
    (given,) = arrays(value)
    return restored(given * (hardness_factor(source) / hardness_factor(target)))
