"""Activity coefficients: water's density and permittivity, and the Debye-Hückel equation in WATEQ's form."""

from functools import cache
from math import pi

import numpy as np

from .equilibria import CELSIUS_ZERO
from .tables import Array, V, arrays, restored, rows

_AVOGADRO = 6.02214076e23  # 1/mol, exact in the SI of 2019
# e²/(4π ε0 k) in metre kelvin, from the exact e, k and the vacuum permittivity of CODATA 2018.
_BJERRUM = 1.602176634e-19**2 / (4 * pi * 8.8541878128e-12 * 1.380649e-23)


@cache
def water_property(name: str) -> dict[str, float]:
    """Coefficients of one property in `water_properties.csv`."""
    return {row["coefficient"]: float(row["value"]) for row in rows("water_properties") if row["property"] == name}


def water_density(temperature: V | float) -> V:
    """Density of pure water at saturation pressure (at one atmosphere 0.005 % more) [kg/L].

    Parameters
    ----------
    temperature : float or array
        Water temperature, 0 to 100 [°C]

    References
    ----------
    .. [1] Wagner & Pruss 2002, J. Phys. Chem. Ref. Data 31, 387-535, Eq. 2.6.
    """
    (celsius,) = arrays(temperature)
    c = water_property("density")
    root = np.cbrt(1 - (celsius + CELSIUS_ZERO) / c["critical_temperature"])
    # Powers of the cube root by squaring: a power function costs more than all the rest of this room's set-up.
    r2 = root * root
    r4 = r2 * r2
    r8 = r4 * r4
    r16 = r8 * r8
    r32 = r16 * r16
    r43 = r32 * r8 * r2 * root
    r110 = r32 * r32 * r32 * r8 * r4 * r2
    series = c["b1"] * root + c["b2"] * r2 + c["b3"] * r4 * root + c["b4"] * r16 + c["b5"] * r43 + c["b6"] * r110
    return restored(c["critical_density"] * (1 + series) / 1000)


def relative_permittivity(temperature: V | float) -> V:
    """Relative permittivity (dielectric constant) of water at one atmosphere [1].

    Parameters
    ----------
    temperature : float or array
        Water temperature, 0 to 100 [°C]

    References
    ----------
    .. [1] Bradley & Pitzer 1979, J. Phys. Chem. 83, 1599-1603, Eq. 1 and Table 2.
    """
    (celsius,) = arrays(temperature)
    kelvin = celsius + CELSIUS_ZERO
    c = water_property("permittivity")
    at_reference = c["u1"] * np.exp(kelvin * (c["u2"] + kelvin * c["u3"]))
    slope = c["u4"] + c["u5"] / (c["u6"] + kelvin)
    offset = c["u7"] + c["u8"] / kelvin + c["u9"] * kelvin
    return restored(at_reference + slope * np.log((offset + c["pressure"]) / (offset + c["reference_pressure"])))


def debye_huckel_parameters(temperature: V | float) -> tuple[V, V]:
    """Debye-Hückel's A [(kg/mol)^0.5] and B [(kg/mol)^0.5/Å] of water.

    Parameters
    ----------
    temperature : float or array
        Water temperature, 0 to 100 [°C]

    References
    ----------
    .. [1] Parkhurst & Appelo 2013, PHREEQC version 3, USGS Techniques and Methods 6-A43.
    """
    (celsius,) = arrays(temperature)
    bjerrum = _BJERRUM / (np.asarray(relative_permittivity(celsius)) * (celsius + CELSIUS_ZERO))
    kappa = np.sqrt(8 * pi * _AVOGADRO * 1000 * bjerrum * np.asarray(water_density(celsius)))
    return restored(kappa * bjerrum / (2 * np.log(10))), restored(kappa * 1e-10)


def ionic_terms(ionic_strength: Array, a: Array, b: Array, sizes: Array, out: Array) -> None:
    """Terms of log10 of activity coefficients, in rows: for each ion size, Davies's, and the ionic strength.

    A row of size å is -A √I/(1 + B å √I); Davies's is -A (√I/(1 + √I) - 0.3 I).
    """
    root = np.sqrt(ionic_strength)
    limiting = -a * root
    by_size = out[:-2]
    np.multiply.outer(sizes, b * root, out=by_size)
    by_size += 1.0
    np.divide(limiting, by_size, out=by_size)
    out[-2] = limiting / (1 + root) + water_property("activity")["davies"] * a * ionic_strength
    out[-1] = ionic_strength
