"""Indices of calcium carbonate scale in the published handbook forms. A report must say which form it uses.

`saturation_ph` is Standard Methods' equation with the constants of 1982; `saturation_ph_short_form` the trade's short
form. The two differ by up to 0.1 or so. The saturation index of calcite, from the full speciation, is the better
figure where the major ions are known.
"""

import numpy as np

from .conversions import basis_factor
from .equilibria import CELSIUS_ZERO, log_equilibrium_constant
from .handbook import activity_exponent, carbonate
from .intervals import Behaviour, behaves
from .masses import molar_mass
from .tables import V, arrays, restored


@behaves(
    Behaviour(rising=("ph",), falling=("calcium", "alkalinity"), peaked=("dissolved_solids",), dipped=("temperature",))
)
@np.errstate(divide="ignore", invalid="ignore")
def saturation_ph(
    *,
    ph: V | float,
    calcium: V | float,
    alkalinity: V | float,
    temperature: V | float,
    dissolved_solids: V | float,
) -> V:
    """pH at which the water would be saturated with calcite, pHs, by Standard Methods 2330 B.

    Parameters
    ----------
    ph : float or array
        pH of the water, for the share of alkalinity that is bicarbonate [1].
    calcium : float or array
        Calcium as Ca, not corrected for ion pairs [mg/L].
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].
    temperature : float or array
        Water temperature [°C].
    dissolved_solids : float or array
        Dissolved solids, for the ionic strength [mg/L].

    Returns
    -------
    float or array
        pHs; infinite where there is no calcium or no bicarbonate [1].

    Notes
    -----
    Ion pairs are neglected, which the method allows below some 500 to 1000 mg/L of dissolved solids.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2330 B.3 (from memory), pHs = pK2 - pKs + p[Ca] + p[HCO3] + 5 pfm.
    .. [2] Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46, 1011-1040 (constants).
    """
    acidity, ca, alk, celsius, solids = arrays(ph, calcium, alkalinity, temperature, dissolved_solids)
    bicarbonate = carbonate(ph=acidity, alkalinity=alk, temperature=celsius, dissolved_solids=solids).bicarbonate
    constants = log_equilibrium_constant("calcite", celsius) - log_equilibrium_constant("carbonic_k2", celsius)
    concentrations = np.log10(ca / molar_mass("Ca") / 1000.0) + np.log10(bicarbonate)
    exponent = np.asarray(activity_exponent(temperature=celsius, dissolved_solids=solids))
    return restored(constants - concentrations + 5.0 * exponent)


@behaves(Behaviour(rising=("calcium", "alkalinity"), peaked=("ph", "temperature"), dipped=("dissolved_solids",)))
def langelier_index(
    *,
    ph: V | float,
    calcium: V | float,
    alkalinity: V | float,
    temperature: V | float,
    dissolved_solids: V | float,
) -> V:
    """Langelier index by Standard Methods 2330 B: pH less `saturation_ph`.

    Parameters
    ----------
    ph, calcium, alkalinity, temperature, dissolved_solids : float or array
        As in `saturation_ph`.

    Returns
    -------
    float or array
        Index: positive where calcium carbonate may precipitate [1].

    References
    ----------
    .. [1] Langelier, J. AWWA 28, 1500, 1936; Standard Methods, 24th ed., 2330 B.
    """
    acidity, ca, alk, celsius, solids = arrays(ph, calcium, alkalinity, temperature, dissolved_solids)
    saturation = saturation_ph(ph=acidity, calcium=ca, alkalinity=alk, temperature=celsius, dissolved_solids=solids)
    return restored(acidity - saturation)


@behaves(Behaviour(rising=("dissolved_solids",), falling=("calcium", "alkalinity", "temperature")))
@np.errstate(divide="ignore", invalid="ignore")
def saturation_ph_short_form(
    *,
    calcium: V | float,
    alkalinity: V | float,
    temperature: V | float,
    dissolved_solids: V | float,
) -> V:
    """pH at which the water would be saturated with calcium carbonate, by the trade's short form.

    Parameters
    ----------
    calcium : float or array
        Calcium as Ca [mg/L].
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].
    temperature : float or array
        Water temperature [°C].
    dissolved_solids : float or array
        Dissolved solids [mg/L].

    Returns
    -------
    float or array
        pHs = 9.3 + A + B - C - D [1].

    Notes
    -----
    A = (log10 TDS - 1)/10, B = 34.55 - 13.12 log10 (kelvin), C = log10 (calcium hardness) - 0.4, D = log10 alkalinity.
    The manual's own table of B lies 0.04 to 0.12 below this formula, so that an index by the table is that much higher.

    References
    ----------
    .. [1] UFC 3-240-13FN Industrial water treatment, U.S. Department of Defense, 2005, Appendix B, pp. 210-217.
    """
    ca, alk, celsius, solids = arrays(calcium, alkalinity, temperature, dissolved_solids)
    salt = (np.log10(solids) - 1.0) / 10.0
    heat = 34.55 - 13.12 * np.log10(celsius + CELSIUS_ZERO)
    hardness = np.log10(ca * basis_factor("Ca", "CaCO3")) - 0.4
    return restored(9.3 + salt + heat - hardness - np.log10(alk))


@behaves(Behaviour(rising=("ph", "calcium", "alkalinity", "temperature"), falling=("dissolved_solids",)))
def langelier_index_short_form(
    *,
    ph: V | float,
    calcium: V | float,
    alkalinity: V | float,
    temperature: V | float,
    dissolved_solids: V | float,
) -> V:
    """Langelier index by the trade's short form: pH less `saturation_ph_short_form`.

    Parameters
    ----------
    ph : float or array
        pH [1].
    calcium, alkalinity, temperature, dissolved_solids : float or array
        As in `saturation_ph_short_form`.

    Returns
    -------
    float or array
        Index: positive where calcium carbonate may precipitate [1].

    References
    ----------
    .. [1] As `saturation_ph_short_form`.
    """
    acidity, ca, alk, celsius, solids = arrays(ph, calcium, alkalinity, temperature, dissolved_solids)
    saturation = saturation_ph_short_form(calcium=ca, alkalinity=alk, temperature=celsius, dissolved_solids=solids)
    return restored(acidity - saturation)


@behaves(Behaviour(rising=("saturation_ph",), falling=("ph",)))
def ryznar_index(*, ph: V | float, saturation_ph: V | float) -> V:
    """Ryznar stability index.

    Parameters
    ----------
    ph : float or array
        pH [1].
    saturation_ph : float or array
        pHs, by either form [1].

    Returns
    -------
    float or array
        2 pHs - pH: low where scale forms [1].

    References
    ----------
    .. [1] Ryznar, J. AWWA 36, 472, 1944.
    """
    acidity, saturation = arrays(ph, saturation_ph)
    return restored(2.0 * saturation - acidity)


@behaves(Behaviour(rising=("saturation_ph",), falling=("alkalinity",)))
@np.errstate(divide="ignore", invalid="ignore")
def puckorius_index(*, alkalinity: V | float, saturation_ph: V | float) -> V:
    """Puckorius scaling index (practical scaling index).

    Parameters
    ----------
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].
    saturation_ph : float or array
        pHs, by either form [1].

    Returns
    -------
    float or array
        2 pHs - pHeq, with pHeq = 1.465 log10 (alkalinity) + 4.54 [1].

    Notes
    -----
    Made for cooling towers: the pH that the alkalinity of concentrated water comes to stands for the measured one. The
    manual prints 1.485 in the text, but its table and its example follow 1.465, as other literature does.

    References
    ----------
    .. [1] UFC 3-240-13FN Industrial water treatment, 2005, Appendix B, Example B-2.
    """
    alk, saturation = arrays(alkalinity, saturation_ph)
    return restored(2.0 * saturation - (1.465 * np.log10(alk) + 4.54))


@behaves(Behaviour(rising=("ph", "calcium", "alkalinity")))
@np.errstate(divide="ignore", invalid="ignore")
def aggressive_index(*, ph: V | float, calcium: V | float, alkalinity: V | float) -> V:
    """Aggressive index.

    Parameters
    ----------
    ph : float or array
        pH [1].
    calcium : float or array
        Calcium as Ca [mg/L].
    alkalinity : float or array
        Total alkalinity as CaCO3 [mg/L].

    Returns
    -------
    float or array
        pH + log10 (calcium hardness x alkalinity) [1].

    Notes
    -----
    Made for asbestos-cement pipe. It knows neither temperature nor salinity.

    References
    ----------
    .. [1] AWWA C400; former 40 CFR 141.42, 1980 (memory).
    """
    acidity, ca, alk = arrays(ph, calcium, alkalinity)
    return restored(acidity + np.log10(ca * basis_factor("Ca", "CaCO3") * alk))


@behaves(Behaviour(rising=("initial_alkalinity",), falling=("final_alkalinity",)))
def marble_test_potential(*, initial_alkalinity: V | float, final_alkalinity: V | float) -> V:
    """Calcium carbonate precipitation potential as the marble test measures it.

    Parameters
    ----------
    initial_alkalinity, final_alkalinity : float or array
        Alkalinity as CaCO3 before and after contact with calcite [mg/L].

    Returns
    -------
    float or array
        Potential as CaCO3: positive where the water precipitates [mg/L].

    Notes
    -----
    Illinois (35 IAC 604.900) subtracts the other way round: what it calls a gain is calcite dissolved.

    References
    ----------
    .. [1] Standard Methods, 24th ed., 2330 C.
    """
    before, after = arrays(initial_alkalinity, final_alkalinity)
    return restored(before - after)
