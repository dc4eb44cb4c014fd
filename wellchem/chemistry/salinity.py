"""Dissolved solids and conductance calculated from the ions, and what salt means for a soil."""

from functools import cache
from typing import Generic, NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from .conversions import basis_factor
from .intervals import Behaviour, behaves
from .ions import equivalent_weights
from .tables import Array, V, arrays, restored, rows

_SOLIDS = ("calcium", "magnesium", "sodium", "potassium", "alkalinity", "sulfate", "chloride", "nitrate", "fluoride")
_CONDUCTING = Behaviour(rising=(*_SOLIDS, "ammonia", "iron"), falling=("ph",), least=0.0)


@behaves(Behaviour(rising=(*_SOLIDS, "silica")))
def dissolved_solids_residue(
    *,
    calcium: V | float,
    magnesium: V | float,
    sodium: V | float,
    potassium: V | float,
    alkalinity: V | float,
    sulfate: V | float,
    chloride: V | float,
    nitrate: V | float = 0.0,
    fluoride: V | float = 0.0,
    silica: V | float = 0.0,
) -> V:
    """Dissolved solids calculated as what drying at 180 °C leaves.

    Parameters
    ----------
    calcium, magnesium, sodium, potassium, chloride, fluoride : float or array
        As such [mg/L].
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].
    sulfate : float or array
        As SO4 [mg/L].
    nitrate : float or array
        As N [mg/L].
    silica : float or array
        As SiO2 [mg/L].

    Returns
    -------
    float or array
        Calculated dissolved solids [mg/L].

    Notes
    -----
    - Bicarbonate loses half its carbon as carbon dioxide: alkalinity is counted as CO3, 0.5996 of its figure as CaCO3,
      which the method rounds to 0.6 (others print 0.61).
    - Nitrate is counted as NO3 and silica as SiO2, as practice has it; the method prints NO3-N and SiO3.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 1030 E.2.
    """
    given = _solids(calcium, magnesium, sodium, potassium, sulfate, chloride, nitrate, fluoride, silica)
    (alk,) = arrays(alkalinity)
    return restored(given + alk * basis_factor("CaCO3", "CO3"))


@behaves(Behaviour(rising=(*_SOLIDS, "silica")))
def dissolved_solids_sum(
    *,
    calcium: V | float,
    magnesium: V | float,
    sodium: V | float,
    potassium: V | float,
    alkalinity: V | float,
    sulfate: V | float,
    chloride: V | float,
    nitrate: V | float = 0.0,
    fluoride: V | float = 0.0,
    silica: V | float = 0.0,
) -> V:
    """Dissolved solids as the sum of all ions as they are in the water, bicarbonate whole.

    Parameters
    ----------
    calcium, magnesium, sodium, potassium, alkalinity, sulfate, chloride, nitrate, fluoride, silica
        As in `dissolved_solids_residue` [mg/L].

    Returns
    -------
    float or array
        Sum of the dissolved constituents [mg/L].

    Notes
    -----
    Alkalinity is counted as bicarbonate. Above about pH 8.3, where part of it is carbonate, the sum is a little high.

    References
    ----------
    .. [1] Livingstone, USGS PP 440-G, 1963 (the world's rivers are summed so).
    """
    given = _solids(calcium, magnesium, sodium, potassium, sulfate, chloride, nitrate, fluoride, silica)
    (alk,) = arrays(alkalinity)
    return restored(given + alk * basis_factor("CaCO3", "HCO3"))


def _solids(
    calcium: ArrayLike,
    magnesium: ArrayLike,
    sodium: ArrayLike,
    potassium: ArrayLike,
    sulfate: ArrayLike,
    chloride: ArrayLike,
    nitrate: ArrayLike,
    fluoride: ArrayLike,
    silica: ArrayLike,
) -> Array:
    """Everything but alkalinity, nitrate as NO3."""
    ca, mg, na, k, so4, cl, no3, f, sio2 = arrays(
        calcium, magnesium, sodium, potassium, sulfate, chloride, nitrate, fluoride, silica
    )
    return ca + mg + na + k + so4 + cl + no3 * basis_factor("N", "NO3") + f + sio2


@cache
def _conducting() -> dict[str, tuple[float, int]]:
    """Equivalent conductance and size of the charge, by the analyte that the ion is measured as."""
    table = {row["ion"]: row for row in rows("equivalent_conductances")}
    analytes = {row["analyte"]: row["ion"] for row in rows("ions") if row["ion"] in table} | {"ph": "H"}
    return {
        analyte: (float(table[ion]["equivalent_conductance"]), abs(int(table[ion]["charge"])))
        for analyte, ion in analytes.items()
    }


class HandbookConductance(NamedTuple, Generic[V]):
    """Conductance by the handbook's method, with what it is calculated from."""

    infinite_dilution: V  # conductance of ions that do not hinder each other [µS/cm]
    ionic_strength: V  # of the ions as analysed, without ion pairs [mol/L]
    activity_coefficient: V  # of a single charge [1]
    conductance: V  # at 25 °C [µS/cm]


@behaves(
    infinite_dilution=_CONDUCTING,
    ionic_strength=_CONDUCTING,
    activity_coefficient=Behaviour(dipped=(*_CONDUCTING.rising, "ph"), least=0.0),
    conductance=_CONDUCTING,
)
def handbook_conductance(
    *,
    calcium: V | float,
    magnesium: V | float,
    sodium: V | float,
    potassium: V | float,
    alkalinity: V | float,
    sulfate: V | float,
    chloride: V | float,
    nitrate: V | float = 0.0,
    fluoride: V | float = 0.0,
    ammonia: V | float = 0.0,
    iron: V | float = 0.0,
    ph: V | float = np.inf,
) -> HandbookConductance[V]:
    """Conductance at 25 °C calculated from the ions by the handbook's method.

    Parameters
    ----------
    calcium, magnesium, sodium, potassium, chloride, fluoride : float or array
        As such [mg/L].
    alkalinity : float or array
        Total alkalinity as CaCO3, taken as bicarbonate [mg/L].
    sulfate : float or array
        As SO4 [mg/L].
    nitrate, ammonia : float or array
        As N [mg/L].
    iron : float or array
        Dissolved iron, with two charges [mg/L].
    ph : float or array
        pH, for the hydrogen ion of an acid water; left out where not given [1].

    Returns
    -------
    HandbookConductance
        The conductance and its steps [µS/cm].

    Notes
    -----
    A published approximation for dilute water: one activity coefficient, squared, for every ion, and no ion pairs. It
    is some 4 % low below 500 mg/L of dissolved solids, and from 22 % low to 15 % high above 1500 mg/L.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2510 A, Table 2510:II and text; 1030 E.
    """
    given: dict[str, ArrayLike] = {
        "calcium": calcium,
        "magnesium": magnesium,
        "sodium": sodium,
        "potassium": potassium,
        "alkalinity": alkalinity,
        "sulfate": sulfate,
        "chloride": chloride,
        "nitrate": nitrate,
        "fluoride": fluoride,
        "ammonia": ammonia,
        "iron": iron,
    }
    weights = equivalent_weights()
    equivalents = {analyte: np.asarray(value, float) / weights[analyte] for analyte, value in given.items()}
    (acidity,) = arrays(ph)
    equivalents["ph"] = 10.0 ** (3.0 - acidity)
    dilute = np.asarray(sum(_conducting()[ion][0] * amount for ion, amount in equivalents.items()))
    strength = np.asarray(sum(_conducting()[ion][1] * amount / 2000.0 for ion, amount in equivalents.items()))
    root = np.sqrt(strength)
    activity = 10.0 ** (-0.5 * (root / (1.0 + root) - 0.3 * strength))
    return HandbookConductance(restored(dilute), restored(strength), restored(activity), restored(dilute * activity**2))


@behaves(Behaviour(rising=("conductance",), falling=("temperature",), least=0.0))
def conductance_at_25(*, conductance: V | float, temperature: V | float, coefficient: float = 0.0191) -> V:
    """Specific conductance at 25 °C from a reading at another temperature.

    Parameters
    ----------
    conductance : float or array
        Conductance as read, without compensation [µS/cm].
    temperature : float or array
        Temperature of the water [°C].
    coefficient : float
        Increase per degree, of the conductance at 25 °C [1/°C].

    Returns
    -------
    float or array
        Specific conductance at 25 °C [µS/cm].

    Notes
    -----
    ISO 7888 takes about 0.02 or a table for natural waters: about 1 % otherwise at 15 °C.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2510 B.5.
    """
    read, celsius = arrays(conductance, temperature)
    return restored(read / (1.0 + coefficient * (celsius - 25.0)))


@behaves(Behaviour(rising=("sodium",), falling=("calcium", "magnesium"), least=0.0))
@np.errstate(divide="ignore", invalid="ignore")
def sodium_adsorption_ratio(*, sodium: V | float, calcium: V | float, magnesium: V | float) -> V:
    """Sodium adsorption ratio.

    Parameters
    ----------
    sodium, calcium, magnesium : float or array
        As such [mg/L].

    Returns
    -------
    float or array
        Ratio, infinite for sodium alone [(meq/L)^0.5].

    References
    ----------
    .. [1] U.S. Salinity Laboratory Staff, USDA Agriculture Handbook 60, 1954.
    """
    na, ca, mg = arrays(sodium, calcium, magnesium)
    weights = equivalent_weights()
    hard = ca / weights["calcium"] + mg / weights["magnesium"]
    return restored(na / weights["sodium"] / np.sqrt(hard / 2.0))


@behaves(Behaviour(rising=("alkalinity",), falling=("calcium", "magnesium")))
def residual_sodium_carbonate(*, alkalinity: V | float, calcium: V | float, magnesium: V | float) -> V:
    """Residual sodium carbonate.

    Parameters
    ----------
    alkalinity : float or array
        Total alkalinity as CaCO3, for bicarbonate and carbonate [mg/L].
    calcium, magnesium : float or array
        As such [mg/L].

    Returns
    -------
    float or array
        Alkalinity less calcium and magnesium, negative where they exceed it [meq/L].

    References
    ----------
    .. [1] Wilcox, USDA Circular 969, 1955 (after Eaton 1950).
    """
    alk, ca, mg = arrays(alkalinity, calcium, magnesium)
    weights = equivalent_weights()
    return restored(alk / weights["alkalinity"] - ca / weights["calcium"] - mg / weights["magnesium"])
