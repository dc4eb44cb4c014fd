"""Un-ionised shares of ammonia and hydrogen sulfide in dilute water, and a redox potential as an electron activity."""

import numpy as np

from .equilibria import CELSIUS_ZERO, log_equilibrium_constant
from .intervals import Behaviour, behaves
from .tables import V, arrays, restored

_FARADAY = 96485.33212  # C/mol, exact in the SI of 2019
_GAS_CONSTANT = 8.314462618  # J/(mol K), exact likewise


@behaves(Behaviour(falling=("temperature",)))
def ammonia_pka(*, temperature: V | float) -> V:
    """pKa of the ammonium ion in fresh water [1].

    Parameters
    ----------
    temperature : float or array
        Water temperature [°C]

    References
    ----------
    .. [1] Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32, 2379-2383: 0.09018 + 2729.92/T.
    """
    return restored(-np.asarray(log_equilibrium_constant("ammonia_emerson", temperature)))


@behaves(Behaviour(rising=("ph", "temperature"), least=0.0, greatest=1.0))
def unionized_ammonia_fraction(*, ph: V | float, temperature: V | float) -> V:
    """Share of the ammonia nitrogen that is un-ionised (NH3) in fresh water [1].

    Parameters
    ----------
    ph : float or array
        pH [1]
    temperature : float or array
        Water temperature [°C]

    Notes
    -----
    Made for the toxicity to fish, not to people. In saline water the share is smaller: `speciate` knows of that.

    References
    ----------
    .. [1] Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32, 2379-2383.
    """
    (acidity,) = arrays(ph)
    return restored(1 / (1 + 10 ** (np.asarray(ammonia_pka(temperature=temperature)) - acidity)))


@behaves(Behaviour(rising=("ammonia", "ph", "temperature"), least=0.0))
def unionized_ammonia(*, ammonia: V | float, ph: V | float, temperature: V | float) -> V:
    """Un-ionised ammonia in fresh water, as N [mg/L].

    Parameters
    ----------
    ammonia : float or array
        Total ammonia (ammonium and ammonia), as N [mg/L]
    ph : float or array
        pH [1]
    temperature : float or array
        Water temperature [°C]

    References
    ----------
    .. [1] Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32, 2379-2383.
    """
    (total,) = arrays(ammonia)
    return restored(total * np.asarray(unionized_ammonia_fraction(ph=ph, temperature=temperature)))


@behaves(Behaviour(falling=("temperature",)))
def hydrogen_sulfide_pk1(*, temperature: V | float) -> V:
    """pK1 of hydrogen sulfide at infinite dilution [1].

    Parameters
    ----------
    temperature : float or array
        Water temperature [°C]

    Notes
    -----
    6.94 at 25 °C; handbooks print 6.98 to 7.04, which moves the fraction by up to 0.06.

    References
    ----------
    .. [1] Parkhurst & Appelo 2013, phreeqc.dat: HS- + H+ = H2S, analytic expression.
    """
    return log_equilibrium_constant("H2S", temperature)


@behaves(Behaviour(falling=("ph", "temperature"), least=0.0, greatest=1.0))
def hydrogen_sulfide_fraction(*, ph: V | float, temperature: V | float) -> V:
    """Share of the dissolved sulfide that is un-ionised (H2S), which can leave the water as gas, when dilute [1].

    Parameters
    ----------
    ph : float or array
        pH [1]
    temperature : float or array
        Water temperature [°C]

    References
    ----------
    .. [1] APHA/AWWA/WEF, Standard Methods 4500-S2- (un-ionized hydrogen sulfide): 1/(1 + 10^(pH - pK1)).
    .. [2] Parkhurst & Appelo 2013, phreeqc.dat, for pK1.
    """
    (acidity,) = arrays(ph)
    return restored(1 / (1 + 10 ** (acidity - np.asarray(hydrogen_sulfide_pk1(temperature=temperature)))))


@behaves(Behaviour(rising=("redox_potential",)))
def electron_activity(*, redox_potential: V | float, temperature: V | float) -> V:
    """pe, -log10 of the electron's activity, of a redox potential [1].

    Parameters
    ----------
    redox_potential : float or array
        Potential against the standard hydrogen electrode; a meter's reading against Ag/AgCl or calomel has to be
        raised by its electrode's potential first, about 200 to 250 mV [mV]
    temperature : float or array
        Water temperature [°C]

    References
    ----------
    .. [1] Stumm & Morgan 1996, Aquatic Chemistry, 3rd ed., ch. 8 (from memory): pe = F Eh/(2.303 R T).
    """
    potential, celsius = arrays(redox_potential, temperature)
    return restored(potential / 1000 * _FARADAY / (np.log(10) * _GAS_CONSTANT * (celsius + CELSIUS_ZERO)))
