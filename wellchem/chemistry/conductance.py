"""Specific conductance from the speciated ions."""

import numpy as np

from .activity import debye_huckel_parameters, water_property
from .closed_system import change_temperature
from .state import Block, Speciation
from .tables import Array, rows

_REFERENCE = 25.0  # °C, to which specific conductance refers
_FARADAY = 96485.33212  # C/mol, exact in the SI of 2019
_GAS_CONSTANT = 8.314462618  # J/(mol K), exact likewise
_KELVIN = 298.15


def speciated_conductance(waters: Speciation) -> float | Array:
    """Specific conductance at 25 °C of the ions that ion pairing leaves, the water brought to 25 °C unopened [µS/cm].

    Each ion gives its molar conductance at infinite dilution (from its tracer diffusion coefficient), lowered by
    exp(-a A |z| √I/(1 + κ)), κ = B a2 √I/(1 + I^a3).

    Parameters
    ----------
    waters : Speciation
        Waters from `speciate`.

    Returns
    -------
    float or array
        Specific conductance at 25 °C [µS/cm]

    Notes
    -----
    Ions without a tabulated diffusion coefficient (mostly scarce complexes) carry nothing. Molalities are taken as
    concentrations, as the reference engine does: 0.5 % or less in water below 5 g/L.

    References
    ----------
    .. [1] Appelo 2017, Cement and Concrete Research 101, 102-113.
    .. [2] Parkhurst & Appelo 2013, PHREEQC version 3, USGS Techniques and Methods 6-A43.
    """
    at_reference = change_temperature(waters, _REFERENCE)
    table = {row["species"]: float(row["diffusion_m2_s"] or 0) for row in rows("aqueous_species")}
    charges = np.abs(waters.system.charges)
    # Nernst-Einstein: S/m for a mole per litre, times 1e4 for µS/cm.
    limiting = charges**2 * np.array([table[name] for name in waters.species])
    limiting *= _FARADAY**2 / (_GAS_CONSTANT * _KELVIN) * 1e3 * 1e4
    a, b = debye_huckel_parameters(_REFERENCE)
    c = water_property("conductance")

    def of(block: Block) -> Array:
        root = np.sqrt(block.ionic_strength)
        kappa = b * c["a2"] * root / (1 + block.ionic_strength ** c["a3"])
        exponent = -c["a"] * a * root / (1 + kappa)
        molalities = block.molalities()
        total = np.zeros(root.size)
        # The fall depends on the charge number alone.
        for number in np.unique(charges[limiting > 0]):
            chosen = (charges == number) & (limiting > 0)
            total += (limiting[chosen] @ molalities[chosen]) * np.exp(number * exponent)
        return total

    return at_reference.each(of)
