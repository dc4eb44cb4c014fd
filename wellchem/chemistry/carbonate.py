"""The carbonate system of a speciated water in the handbooks' terms, and which bases its alkalinity is made of."""

from dataclasses import dataclass

import numpy as np

from .masses import molar_mass
from .state import CACO3_EQUIVALENT, Block, Speciation
from .system import CARBONATE
from .tables import Array, restored


@dataclass(frozen=True)
class CarbonateSystem:
    """Dissolved carbonate species, free ones and what ion pairs hold apart.

    Attributes
    ----------
    carbon_dioxide : float or array
        Dissolved carbon dioxide (with carbonic acid), as CO2 [mg/L]
    bicarbonate, carbonate, hydroxide : float or array
        Free ions, as HCO3, CO3 and OH [mg/L]
    paired : float or array
        Inorganic carbon in ion pairs (CaHCO3+, MgCO3 …), as C [mg/L]
    inorganic_carbon : float or array
        All of it, as C [mg/L]
    log_pco2 : float or array
        log10 of the partial pressure of carbon dioxide [atm]
    """

    carbon_dioxide: float | Array
    bicarbonate: float | Array
    carbonate: float | Array
    hydroxide: float | Array
    paired: float | Array
    inorganic_carbon: float | Array
    log_pco2: float | Array


@dataclass(frozen=True)
class AlkalinityParts:
    """Alkalinity by the base that holds it, each as CaCO3 [mg/L]; together they are the total.

    Attributes
    ----------
    carbonate : float or array
        Bicarbonate and carbonate with their ion pairs [mg/L]
    hydroxide : float or array
        Hydroxide and hydroxide complexes less the hydrogen ion (and hydrogen sulfate and fluoride) [mg/L]
    borate, silicate, phosphate, ammonia, sulfide : float or array
        The other weak acids' bases [mg/L]
    """

    carbonate: float | Array
    hydroxide: float | Array
    borate: float | Array
    silicate: float | Array
    phosphate: float | Array
    ammonia: float | Array
    sulfide: float | Array


_FREE = {
    "carbon_dioxide": ("CO2", "CO2"),
    "bicarbonate": ("HCO3-", "HCO3"),
    "carbonate": (CARBONATE, "CO3"),
    "hydroxide": ("OH-", "OH"),
}
# A species with several of these counts with the first; one with none of them is a hydroxide (or an acid).
_BASES = {
    "carbonate": CARBONATE,
    "phosphate": "PO4-3",
    "sulfide": "HS-",
    "borate": "H3BO3",
    "silicate": "H4SiO4",
    "ammonia": "NH4+",
}


def carbonate_system(waters: Speciation) -> CarbonateSystem:
    """Carbon dioxide, bicarbonate, carbonate and hydroxide of waters.

    Parameters
    ----------
    waters : Speciation
        Waters from `speciate`.

    References
    ----------
    .. [1] Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46, 1011-1040.
    """
    species = waters.species
    places = {field: species.index(name) for field, (name, _) in _FREE.items()}
    carbon = waters.system.stoichiometry[:, waters.system.carbonate].copy()
    alone = [places[field] for field in ("carbon_dioxide", "bicarbonate", "carbonate")]
    pairs = carbon.copy()
    pairs[[*alone, species.index("(CO2)2")]] = 0.0
    size = np.size(waters.ph)
    found = {name: np.empty(size) for name in (*places, "paired", "inorganic_carbon", "log_pco2")}
    for part, block in waters.blocks():
        molalities = block.molalities() * block.water
        for field, place in places.items():
            found[field][part] = molalities[place] * molar_mass(_FREE[field][1]) * 1000
        found["paired"][part] = pairs @ molalities * molar_mass("C") * 1000
        found["inorganic_carbon"][part] = carbon @ molalities * molar_mass("C") * 1000
        found["log_pco2"][part] = block.index("carbon_dioxide_gas")
    shape = np.shape(waters.ph)
    return CarbonateSystem(**{name: restored(values.reshape(shape)) for name, values in found.items()})


def alkalinity_parts(waters: Speciation) -> AlkalinityParts:
    """Which bases hold a water's alkalinity: what is left for carbonate beside borate, silicate and the others.

    Parameters
    ----------
    waters : Speciation
        Waters from `speciate`.

    References
    ----------
    .. [1] Parkhurst & Appelo 2013, PHREEQC version 3, USGS Techniques and Methods 6-A43 (alkalinity of a species).
    """
    system = waters.system
    left = np.ones(len(waters.species), dtype=bool)
    weights = {}
    for base, master in _BASES.items():
        holds = np.zeros(len(waters.species), dtype=bool)
        if master in waters.components:
            holds = left & (system.stoichiometry[:, waters.components.index(master)] > 0)
        weights[base] = np.where(holds, system.alkalinity, 0.0)
        left &= ~holds
    weights["hydroxide"] = np.where(left, system.alkalinity, 0.0)

    def part(of: Array) -> float | Array:
        def sums(block: Block) -> Array:
            return np.asarray(of @ block.molalities() * block.water * CACO3_EQUIVALENT)

        return waters.each(sums)

    return AlkalinityParts(**{base: part(of) for base, of in weights.items()})
