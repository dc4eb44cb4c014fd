"""The carbonate system as Standard Methods 2330 B has it: one activity exponent, no ion pairs."""

from dataclasses import dataclass

import numpy as np

from .conversions import equivalents_per_mole
from .equilibria import CELSIUS_ZERO, log_equilibrium_constant
from .intervals import Behaviour, behaves
from .masses import equivalent_weight
from .tables import Array, V, arrays, restored


@behaves(Behaviour(rising=("temperature",), peaked=("dissolved_solids",)))
def activity_exponent(*, temperature: V | float, dissolved_solids: V | float) -> V:
    """Negative logarithm of a single charge's activity coefficient, pfm.

    Parameters
    ----------
    temperature : float or array
        Water temperature [°C].
    dissolved_solids : float or array
        Dissolved solids [mg/L].

    Returns
    -------
    float or array
        The exponent; z² times it for a charge z [1].

    Notes
    -----
    Ionic strength is taken as dissolved solids over 40,000 [mol/L].

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2330 B.3 (from memory).
    """
    celsius, solids = arrays(temperature, dissolved_solids)
    strength = solids / 40000.0
    kelvin = celsius + CELSIUS_ZERO
    permittivity = 60954.0 / (kelvin + 116.0) - 68.937
    slope = 1.82e6 * (permittivity * kelvin) ** -1.5
    root = np.sqrt(strength)
    return restored(slope * (root / (1.0 + root) - 0.3 * strength))


@dataclass(frozen=True)
class Carbonate:
    """A water's carbonate system on concentrations [mol/L]; the constants hold for concentrations, [H+] too."""

    hydrogen: Array
    hydroxide: Array
    bicarbonate: Array
    k1: Array
    k2: Array


def carbonate(*, ph: Array, alkalinity: Array, temperature: Array, dissolved_solids: Array) -> Carbonate:
    """Bicarbonate by charge and mass balance from pH, alkalinity as CaCO3 [mg/L], °C and dissolved solids [mg/L].

    Standard Methods prints, as far as it is remembered, a factor 0.5 for carbonate in the balance of alkalinity where
    the two charges of carbonate make it 2, which is used here: below pH 8.5 the difference in pHs is under 0.03.
    """
    exponent = np.asarray(activity_exponent(temperature=temperature, dissolved_solids=dissolved_solids))
    k1 = 10.0 ** (log_equilibrium_constant("carbonic_k1", temperature) + 2.0 * exponent)
    k2 = 10.0 ** (log_equilibrium_constant("carbonic_k2", temperature) + 4.0 * exponent)
    kw = 10.0 ** (log_equilibrium_constant("water_kw_sm2330", temperature) + 2.0 * exponent)
    hydrogen = 10.0 ** (exponent - ph)
    hydroxide = kw / hydrogen
    total = alkalinity / equivalent_weight("CaCO3", equivalents_per_mole("CaCO3")) / 1000.0
    # Where hydroxide alone is more than the alkalinity, none is left for bicarbonate.
    bicarbonate = np.maximum(total + hydrogen - hydroxide, 0.0) / (1.0 + 2.0 * k2 / hydrogen)
    return Carbonate(hydrogen, hydroxide, bicarbonate, k1, k2)
