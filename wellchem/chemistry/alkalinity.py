"""Alkalinity's forms, as titration and the handbook's formulas give them."""

from typing import Generic, NamedTuple

import numpy as np

from .conversions import basis_factor
from .intervals import Behaviour, behaves
from .tables import V, arrays, restored


class AlkalinityForms(NamedTuple, Generic[V]):
    """Alkalinity by the anion that bears it, each as CaCO3 [mg/L]."""

    hydroxide: V
    carbonate: V
    bicarbonate: V


@behaves(
    hydroxide=Behaviour(rising=("phenolphthalein_alkalinity",), falling=("alkalinity",), least=0.0),
    carbonate=Behaviour(peaked=("phenolphthalein_alkalinity",), rising=("alkalinity",), least=0.0),
    bicarbonate=Behaviour(rising=("alkalinity",), falling=("phenolphthalein_alkalinity",), least=0.0),
)
def alkalinity_forms(*, phenolphthalein_alkalinity: V | float, alkalinity: V | float) -> AlkalinityForms[V]:
    """Hydroxide, carbonate and bicarbonate alkalinity from the two end points of a titration.

    Parameters
    ----------
    phenolphthalein_alkalinity : float or array
        Alkalinity to pH 8.3, P, as CaCO3 [mg/L].
    alkalinity : float or array
        Alkalinity to about pH 4.5, T, as CaCO3 [mg/L].

    Returns
    -------
    AlkalinityForms
        The three, as CaCO3; NaN where P is above T, which no water has [mg/L].

    Notes
    -----
    The five rows of the table (P = 0, P < T/2, P = T/2, P > T/2, P = T) are one rule: hydroxide is what P has above
    T/2, twice; carbonate is twice the smaller of P and T - P; bicarbonate is the rest. Weak acids other than carbonic
    are taken as absent, and hydroxide and bicarbonate as not existing side by side.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2320 B.5d and Table 2320:II.
    """
    end, total = arrays(phenolphthalein_alkalinity, alkalinity)
    impossible = (end > total) | (end < 0.0)
    hydroxide = np.where(impossible, np.nan, np.maximum(2.0 * end - total, 0.0))
    carbonate = np.where(impossible, np.nan, 2.0 * np.minimum(end, total - end))
    return AlkalinityForms(
        restored(hydroxide), restored(carbonate), restored(np.maximum(total - hydroxide - carbonate, 0.0))
    )


@behaves(Behaviour(rising=("bicarbonate", "carbonate", "hydroxide")))
def total_alkalinity(*, bicarbonate: V | float, carbonate: V | float = 0.0, hydroxide: V | float = 0.0) -> V:
    """Total alkalinity of the anions that bear it.

    Parameters
    ----------
    bicarbonate : float or array
        Bicarbonate as HCO3 [mg/L].
    carbonate : float or array
        Carbonate as CO3 [mg/L].
    hydroxide : float or array
        Hydroxide as OH [mg/L].

    Returns
    -------
    float or array
        Alkalinity as CaCO3 [mg/L].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2320 B.
    """
    hco3, co3, oh = arrays(bicarbonate, carbonate, hydroxide)
    return restored(
        hco3 * basis_factor("HCO3", "CaCO3") + co3 * basis_factor("CO3", "CaCO3") + oh * basis_factor("OH", "CaCO3")
    )


@behaves(
    hydroxide=Behaviour(rising=("ph",), least=0.0),
    carbonate=Behaviour(rising=("alkalinity",), peaked=("ph",), least=0.0),
    bicarbonate=Behaviour(rising=("alkalinity",), falling=("ph",), least=0.0),
)
def handbook_alkalinity_forms(*, alkalinity: V | float, ph: V | float) -> AlkalinityForms[V]:
    """Hydroxide, carbonate and bicarbonate alkalinity from pH, by the handbook's formulas for 25 °C.

    Parameters
    ----------
    alkalinity : float or array
        Alkalinity as CaCO3 [mg/L].
    ph : float or array
        pH [1].

    Returns
    -------
    AlkalinityForms
        The three, as CaCO3 [mg/L].

    Notes
    -----
    For 25 °C and very dilute water: the constants 5.0 and 0.94 hold nowhere else. The carbonate functions solve
    the same for any temperature and salinity.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 4500-CO2 D, equations 1 to 3 (from memory).
    """
    total, acidity = arrays(alkalinity, ph)
    above_ten = 10.0 ** (acidity - 10.0)
    bicarbonate = np.maximum(total - 5.0 * above_ten, 0.0) / (1.0 + 0.94 * above_ten)
    hydroxide = np.where(np.isnan(total), np.nan, 5.0 * above_ten)
    return AlkalinityForms(restored(hydroxide), restored(0.94 * bicarbonate * above_ten), restored(bicarbonate))


@behaves(Behaviour(rising=("alkalinity",), falling=("ph",), least=0.0))
def handbook_carbon_dioxide(*, alkalinity: V | float, ph: V | float) -> V:
    """Free carbon dioxide from alkalinity and pH, by the handbook's formula for 25 °C.

    Parameters
    ----------
    alkalinity : float or array
        Alkalinity as CaCO3 [mg/L].
    ph : float or array
        pH [1].

    Returns
    -------
    float or array
        Free carbon dioxide as CO2 [mg/L].

    Notes
    -----
    For 25 °C and very dilute water; at 10 °C there is about 30 % more.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 4500-CO2 D, equation 4 (from memory).
    """
    forms = handbook_alkalinity_forms(alkalinity=alkalinity, ph=ph)
    bicarbonate, acidity = arrays(forms.bicarbonate, ph)
    return restored(2.0 * bicarbonate * 10.0 ** (6.0 - acidity))
