"""Speciation: from a water's analysis to the activities of its ions, for one water or a million."""

import numpy as np
from numpy.typing import ArrayLike

from .activity import water_density
from .equilibria import log_equilibrium_constant, phases, temperature_basis
from .equilibrium import FLOOR, Conditions, Given, Unknowns, start
from .masses import molar_mass
from .solver import solve
from .state import BLOCK, CACO3_EQUIVALENT, SALINE, Reason, Speciation
from .system import CARBONATE, System, system
from .tables import Array, restored, rows

_CARBON = "inorganic_carbon"
_LOWEST, _HIGHEST = 0.0, 100.0  # °C


def speciate(
    *,
    temperature: ArrayLike,
    ph: ArrayLike | None = None,
    alkalinity: ArrayLike | None = None,
    inorganic_carbon: ArrayLike | None = None,
    pco2: ArrayLike | None = None,
    calcium: ArrayLike | None = None,
    magnesium: ArrayLike | None = None,
    sodium: ArrayLike | None = None,
    potassium: ArrayLike | None = None,
    sulfate: ArrayLike | None = None,
    chloride: ArrayLike | None = None,
    nitrate: ArrayLike | None = None,
    nitrite: ArrayLike | None = None,
    fluoride: ArrayLike | None = None,
    bromide: ArrayLike | None = None,
    silica: ArrayLike | None = None,
    boron: ArrayLike | None = None,
    orthophosphate: ArrayLike | None = None,
    ammonia: ArrayLike | None = None,
    sulfide: ArrayLike | None = None,
    iron: ArrayLike | None = None,
    manganese: ArrayLike | None = None,
    barium: ArrayLike | None = None,
    strontium: ArrayLike | None = None,
    lithium: ArrayLike | None = None,
    pe: ArrayLike | None = None,
) -> Speciation:
    """Equilibrium of a water's dissolved species, with ion pairs, from its analysis.

    Exactly two of pH, alkalinity, inorganic carbon and pCO2 are given. All arguments broadcast together.

    Parameters
    ----------
    temperature : float or array
        Water temperature at which the pH was measured (or holds), 0 to 100 [°C]
    ph : float or array, optional
        pH [1]
    alkalinity : float or array, optional
        Total alkalinity, as CaCO3 [mg/L]
    inorganic_carbon : float or array, optional
        Dissolved inorganic carbon, as C [mg/L]
    pco2 : float or array, optional
        Partial pressure of carbon dioxide in equilibrium with the water [atm]
    calcium, magnesium, sodium, potassium, chloride, fluoride, bromide : float or array, optional
        Dissolved ions, as the element [mg/L]
    sulfate : float or array, optional
        Sulfate, as SO4 [mg/L]
    nitrate, nitrite, ammonia : float or array, optional
        Nitrate, nitrite, and ammonia with ammonium, as N [mg/L]
    silica : float or array, optional
        Dissolved silica, as SiO2 [mg/L]
    boron, iron, manganese, barium, strontium, lithium : float or array, optional
        Dissolved elements, as the element [mg/L]
    orthophosphate : float or array, optional
        Dissolved orthophosphate, as P [mg/L]
    sulfide : float or array, optional
        Dissolved sulfide (H2S, HS-, S2-), as S [mg/L]
    pe : float or array, optional
        -log10 of the electron's activity, which shares the iron out between ferrous and ferric; see
        `electron_activity` for a redox potential [1]

    Returns
    -------
    Speciation
        The water; NaN with a `Reason` where there is no result.

    Raises
    ------
    ValueError
        Where not exactly two of the four carbonate quantities are given, or the shapes do not broadcast.

    Notes
    -----
    ============================  =================================================================================
    Assumption                    Consequence
    ============================  =================================================================================
    What is not given is absent   A missing major ion makes the ionic strength too low.
    Concentrations are dissolved  A total metal of a turbid sample is not what takes part here.
    Alkalinity holds all bases    Carbonate, hydroxide, borate, silicate, phosphate, ammonia, sulfide and ion pairs;
                                  organic bases are not known, and count as carbonate.
    Iron without `pe` is ferrous  So is that of most anoxic wells; of aerated water it is not.
    One atmosphere                No effect of depth.
    Ion association model         Ionic strengths to about 1 mol/kg; the agreement with the reference engine is
                                  tested to 8 g/L.
    Inorganic carbon with pCO2    Says little of the pH below 6, where carbon dioxide is nearly all of that carbon.
    Litres at the temperature     Molalities are made with water's density and the ions' molar volumes at 25 °C.
    ============================  =================================================================================

    References
    ----------
    .. [1] Parkhurst & Appelo 2013, PHREEQC version 3, USGS Techniques and Methods 6-A43, and its phreeqc.dat.
    .. [2] Ball & Nordstrom 1991, WATEQ4F, USGS Open-File Report 91-183.
    .. [3] Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46, 1011-1040.
    """
    given = {
        name: np.asarray(value, dtype=np.float64) for name, value in locals().items() if value is not None
    }  # locals() holds nothing but the arguments here
    closure = _closure(given)
    components = tuple(
        row["master"] for row in rows("water_components") if row["analyte"] in given or row["analyte"] == _CARBON
    )
    waters = system(components, "pe" in given)
    shape = np.broadcast_shapes(*(value.shape for value in given.values()))
    size = int(np.prod(shape))
    flat = {
        name: value.reshape(-1) if value.size == 1 else np.broadcast_to(value, shape).reshape(-1)
        for name, value in given.items()
    }
    free = np.empty((len(components), size))
    strength, hydrogen, water_activity, water, reason = (np.empty(size) for _ in range(5))
    for begin in range(0, size, BLOCK):
        part = slice(begin, min(begin + BLOCK, size))
        block = {
            name: value[part] if value.size == size else np.full(part.stop - begin, value[0])
            for name, value in flat.items()
        }
        found, water[part], reason[part] = _block(waters, closure, block)
        free[:, part], strength[part] = found.free, found.ionic_strength
        hydrogen[part], water_activity[part] = found.log_hydrogen, found.log_water
    codes = reason.astype(np.int8).reshape(shape)
    solved = np.where(codes == Reason.SOLVED, 0.0, np.nan)
    return Speciation(
        components,
        "pe" in given,
        free.reshape(len(components), *shape),
        restored(given["temperature"] + solved),
        restored(-hydrogen.reshape(shape)),
        restored(given["pe"] + solved if "pe" in given else np.full(shape, np.nan)),
        restored(strength.reshape(shape)),
        restored(water_activity.reshape(shape)),
        restored(water.reshape(shape)),
        codes if shape else int(codes),
    )


_CLOSURES = {
    frozenset({"ph", "alkalinity"}): Given.PH_ALKALINITY,
    frozenset({"ph", _CARBON}): Given.PH_CARBON,
    frozenset({"ph", "pco2"}): Given.PH_PCO2,
    frozenset({"alkalinity", _CARBON}): Given.ALKALINITY_CARBON,
    frozenset({"alkalinity", "pco2"}): Given.ALKALINITY_PCO2,
    frozenset({_CARBON, "pco2"}): Given.CARBON_PCO2,
}


def _closure(given: dict[str, Array]) -> Given:
    pair = frozenset(name for name in ("ph", "alkalinity", _CARBON, "pco2") if name in given)
    if pair not in _CLOSURES:
        named = " and ".join(sorted(pair)) or "none of them"
        raise ValueError(f"two of ph, alkalinity, inorganic_carbon and pco2 are needed; {named} given")
    return _CLOSURES[pair]


def _block(waters: System, closure: Given, block: dict[str, Array]) -> tuple[Unknowns, Array, Array]:
    """One block of waters: the solution, the water in a litre, the reasons; NaN where there is one."""
    size = block["temperature"].size
    reason = _reasons(block)
    good = reason == Reason.SOLVED
    none = np.full(size, np.nan)
    result, water = Unknowns.near(np.full((len(waters.components), size), np.nan), none, none, none), none.copy()
    if good.any():
        chosen = block if good.all() else {name: value[good] for name, value in block.items()}
        water[good], known = _conditions(waters, closure, chosen)
        log_hydrogen = -chosen["ph"] if "ph" in chosen else np.full(known.temperature.size, -7.0)
        found = solve(waters, known, start(waters, known, log_hydrogen))
        after = np.where(found.converged, Reason.SOLVED, Reason.NOT_CONVERGED)
        if closure is Given.PH_ALKALINITY:
            after[found.free[waters.carbonate] <= FLOOR] = Reason.NO_CARBONATE
        elif closure is Given.CARBON_PCO2:
            dissolved = chosen["pco2"] * 10 ** log_equilibrium_constant("carbon_dioxide_gas", known.temperature)
            after[dissolved >= known.totals[waters.carbonate]] = Reason.NO_CARBONATE
        elif closure is Given.PH_PCO2:
            # A carbonate ion of more than 1 mol/kg: the sweeps run away there.
            after[known.constant - 2 * log_hydrogen > 0] = Reason.TOO_SALINE
        after[found.ionic_strength > SALINE] = Reason.TOO_SALINE
        result.put(good, found)
        reason[good] = after
    bad = reason != Reason.SOLVED
    for field in (result.free, result.ionic_strength, result.log_hydrogen, result.log_water, water):
        field[..., bad] = np.nan
    return result, water, reason


def _reasons(block: dict[str, Array]) -> Array:
    """What can be told from the inputs alone."""
    wrong = (block["temperature"] < _LOWEST) | (block["temperature"] > _HIGHEST)
    missing = np.zeros(wrong.size, dtype=bool)
    for name, value in block.items():
        missing |= np.isnan(value)
        if name == "ph":
            wrong |= (value < 0) | (value > 14)
        elif name == "pco2":
            wrong |= value <= 0
        elif name not in ("temperature", "alkalinity", "pe"):
            wrong |= value < 0
        wrong |= np.isinf(value)
    return np.where(missing, Reason.MISSING, np.where(wrong, Reason.OUT_OF_RANGE, Reason.SOLVED)).astype(float)


def _conditions(waters: System, closure: Given, block: dict[str, Array]) -> tuple[Array, Conditions]:
    """Mass of water in a litre, and what is known on molalities."""
    temperature = block["temperature"]
    volume = {row["species"]: float(row["molar_volume_cm3_mol"] or 0) for row in rows("aqueous_species")}
    analyte = {row["master"]: (row["analyte"], row["basis"]) for row in rows("water_components")}
    totals = np.zeros((len(waters.components), temperature.size))
    solutes = np.zeros_like(temperature)
    for row, master in zip(totals, waters.components, strict=True):
        name, basis = analyte[master]
        if name in block:
            np.divide(block[name], molar_mass(basis) * 1000, out=row)
            solutes += row * volume["HCO3-" if master == CARBONATE else master]
    alkalinity = block.get("alkalinity", np.zeros_like(temperature)) / CACO3_EQUIVALENT
    if _CARBON not in block:
        solutes += alkalinity * volume["HCO3-"]
    water = np.asarray(water_density(temperature)) * (1 - solutes / 1000)
    totals /= water
    constant = np.zeros_like(temperature)
    if "pco2" in block:
        gas = phases()["carbon_dioxide_gas"].constants
        constant = np.log10(block["pco2"]) - gas @ temperature_basis(temperature)
    electron = -block["pe"] if "pe" in block else np.zeros_like(temperature)
    return water, Conditions(closure, temperature, totals, alkalinity / water, electron, constant)
