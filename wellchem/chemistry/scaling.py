"""Scale from an analysis in one call, with what `bounds` may rely on: the speciation behind is `speciate`'s."""

from collections.abc import Mapping
from typing import Any

import numpy as np

from .intervals import Behaviour, behaves
from .precipitation import calcium_carbonate_potential
from .saturation import saturation_index
from .speciation import speciate
from .state import Speciation
from .tables import V, restored

_NEEDED = ("ph", "alkalinity", "temperature", "calcium")
_SALTS = ("magnesium", "sodium", "potassium", "sulfate", "chloride", "nitrate", "fluoride", "silica")


def _speciated(arguments: Mapping[str, Any]) -> Speciation:
    """The water of a function's own arguments (its `locals()`), without the ions that are nowhere in it: they would
    only cost time.
    """
    analysis = {name: value for name, value in arguments.items() if name in _NEEDED}
    return speciate(**analysis, **{name: arguments[name] for name in _SALTS if np.any(arguments[name])})


# The directions hold for waters of 1 to 60 °C, pH 4 to 10 and up to 1000 mg/L of each ion. That of the other salts is
# mostly downward, by ionic strength and pairs, but not everywhere: they are left to be searched.
@behaves(Behaviour(rising=("alkalinity",), peaked=("ph", "temperature", "calcium")))
def calcite_saturation_index(
    *,
    ph: V | float,
    alkalinity: V | float,
    temperature: V | float,
    calcium: V | float,
    magnesium: V | float = 0.0,
    sodium: V | float = 0.0,
    potassium: V | float = 0.0,
    sulfate: V | float = 0.0,
    chloride: V | float = 0.0,
    nitrate: V | float = 0.0,
    fluoride: V | float = 0.0,
    silica: V | float = 0.0,
) -> V:
    """Saturation index of calcite, by full speciation.

    Parameters
    ----------
    ph : float or array
        pH [1].
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].
    temperature : float or array
        Water temperature, 0 to 100 [°C].
    calcium, magnesium, sodium, potassium, chloride, fluoride : float or array
        As such [mg/L].
    sulfate : float or array
        As SO4 [mg/L].
    nitrate : float or array
        As N [mg/L].
    silica : float or array
        As SiO2 [mg/L].

    Returns
    -------
    float or array
        Index: positive where calcite may precipitate, -inf without calcium, NaN where `speciate` has no result [1].

    References
    ----------
    .. [1] As `speciate` and `saturation_index`.
    """
    return restored(saturation_index(_speciated(locals()), "calcite"))


@behaves(Behaviour(rising=("alkalinity",), falling=("ph",)))
def log_carbon_dioxide_pressure(
    *,
    ph: V | float,
    alkalinity: V | float,
    temperature: V | float,
    calcium: V | float = 0.0,
    magnesium: V | float = 0.0,
    sodium: V | float = 0.0,
    potassium: V | float = 0.0,
    sulfate: V | float = 0.0,
    chloride: V | float = 0.0,
    nitrate: V | float = 0.0,
    fluoride: V | float = 0.0,
    silica: V | float = 0.0,
) -> V:
    """Partial pressure of carbon dioxide in equilibrium with the water: log10, -3.4 in the open air.

    Parameters
    ----------
    ph, alkalinity, temperature, calcium, magnesium, sodium, potassium, sulfate, chloride, nitrate, fluoride, silica
        As in `calcite_saturation_index`.

    Returns
    -------
    float or array
        log10 of the pressure in atmospheres [1].

    References
    ----------
    .. [1] As `speciate`.
    """
    return restored(_speciated(locals()).log_pco2)


@behaves(Behaviour(peaked=("ph",)))
def calcium_carbonate_precipitated(
    *,
    ph: V | float,
    alkalinity: V | float,
    temperature: V | float,
    calcium: V | float,
    magnesium: V | float = 0.0,
    sodium: V | float = 0.0,
    potassium: V | float = 0.0,
    sulfate: V | float = 0.0,
    chloride: V | float = 0.0,
    nitrate: V | float = 0.0,
    fluoride: V | float = 0.0,
    silica: V | float = 0.0,
    heated_to: float | None = None,
) -> V:
    """Calcium carbonate precipitation potential from an analysis, cold or heated.

    Parameters
    ----------
    ph, alkalinity, temperature, calcium, magnesium, sodium, potassium, sulfate, chloride, nitrate, fluoride, silica
        As in `calcite_saturation_index`.
    heated_to : float, optional
        Temperature of a water heater, in which the water is closed; its own temperature unless given [°C].

    Returns
    -------
    float or array
        Potential as CaCO3: positive where the water precipitates, negative where it dissolves [mg/L].

    References
    ----------
    .. [1] As `calcium_carbonate_potential`.
    """
    return restored(calcium_carbonate_potential(_speciated(locals()), temperature=heated_to).precipitated)
