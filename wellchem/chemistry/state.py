"""A water at equilibrium, and what follows from the activities of its species."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import IntEnum
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from .equilibria import temperature_basis
from .equilibrium import conditional_constants, molalities, terms_of
from .masses import molar_mass
from .system import System, system
from .tables import Array, restored, rows

BLOCK = 8192  # waters worked on at a time: large enough to hide the interpreter, small enough for the cache
SALINE = 1.0  # mol/kg, beyond which this kind of activity model is not used
CACO3_EQUIVALENT = molar_mass("CaCO3") / 2 * 1000  # mg of CaCO3 per equivalent


class Reason(IntEnum):
    """Why a water has no result."""

    SOLVED = 0
    MISSING = 1
    """An input is NaN."""
    OUT_OF_RANGE = 2
    """A concentration is negative, pCO2 not positive, the temperature outside 0 to 100 °C, the pH outside 0 to 14."""
    NO_CARBONATE = 3
    """Nothing is left for carbonate: the other bases hold all of the alkalinity at this pH, or the carbon dioxide of
    the given pressure is all of the inorganic carbon, or more."""
    TOO_SALINE = 4
    """The ionic strength is above 1 mol/kg."""
    NOT_CONVERGED = 5
    """No solution was found to the tolerance."""


@dataclass(frozen=True)
class Speciation:
    """A water, or an array of waters, at equilibrium in solution.

    Attributes
    ----------
    components : tuple of str
        Master species that take part, the rows of `free`.
    redox : bool
        Whether other oxidation states than the components' take part (ferric iron), by `pe`.
    free : array, components first
        Molalities of the components' free ions [mol/kg water]
    temperature : float or array
        Temperature [°C]
    ph, pe : float or array
        -log10 of the activity of the hydrogen ion and of the electron (pe is NaN without redox) [1]
    ionic_strength : float or array
        Ionic strength, ion pairs counted [mol/kg water]
    log_water_activity : float or array
        log10 of the activity of water [1]
    water : float or array
        Mass of water in a litre of the solution at its temperature [kg/L]
    reason : int or array
        A `Reason`; every other field is NaN where it is not SOLVED.
    """

    components: tuple[str, ...]
    redox: bool
    free: Array
    temperature: float | Array
    ph: float | Array
    pe: float | Array
    ionic_strength: float | Array
    log_water_activity: float | Array
    water: float | Array
    reason: int | NDArray[np.int8]

    @property
    def system(self) -> System:
        """Components and complexes with their constants."""
        return system(self.components, self.redox)

    @property
    def species(self) -> tuple[str, ...]:
        """Names of all species that take part, free ions first."""
        return self.components + self.system.complexes

    def molality(self, species: str) -> float | Array:
        """Molality of one species [mol/kg water]; nought where it takes no part.

        Raises
        ------
        ValueError
            Where no table has the species.
        """
        place = self._place(species)
        return self.each(lambda part: part.molalities()[place] if place is not None else part.ph * 0.0)

    def log_activity(self, species: str) -> float | Array:
        """log10 of the activity of one species [1]; -inf where it takes no part.

        Raises
        ------
        ValueError
            Where no table has the species.
        """
        place = self._place(species)

        def of(part: Block) -> Array:
            if place is None:
                return part.ph * 0.0 - np.inf
            with np.errstate(divide="ignore"):
                return np.asarray(np.log10(part.molalities()[place]) + self.system.gamma[place] @ part.terms[:-3])

        return self.each(of)

    def _place(self, species: str) -> int | None:
        if species in self.species:
            return self.species.index(species)
        if species not in {row["species"] for row in rows("aqueous_species")}:
            raise ValueError(f"no aqueous species is named {species!r}")
        return None

    @property
    def log_pco2(self) -> float | Array:
        """log10 of the partial pressure of carbon dioxide in equilibrium with the water [atm]."""
        return self.each(lambda part: part.index("carbon_dioxide_gas"))

    @property
    def alkalinity(self) -> float | Array:
        """Alkalinity of all species that hold any, as CaCO3 [mg/L]."""
        weights = self.system.alkalinity
        return self.each(lambda part: (weights @ part.molalities()) * part.water * CACO3_EQUIVALENT)

    @property
    def inorganic_carbon(self) -> float | Array:
        """Dissolved inorganic carbon, as C [mg/L]."""
        weights = self.system.stoichiometry[:, self.system.carbonate]
        return self.each(lambda part: (weights @ part.molalities()) * part.water * molar_mass("C") * 1000)

    @property
    def charge_balance(self) -> float | Array:
        """Charge of the cations less that of the anions; nought for an analysis without error [eq/kg water]."""
        return self.each(lambda part: self.system.charges @ part.molalities())

    def each(self, of: "Callable[[Block], Array]") -> float | Array:
        """What a function gives for each block of waters, put together in their shape; a float for a single water."""
        flat = np.empty(np.size(self.ph))
        for part, block in self.blocks():
            flat[part] = of(block)
        return restored(flat.reshape(np.shape(self.ph)))

    def blocks(self) -> "Iterator[tuple[slice, Block]]":
        """The waters in a row, in parts of a size to work with."""
        if 0 < np.size(self.ph) <= BLOCK:
            yield slice(0, BLOCK), self._alone
            return
        yield from self._parts()

    @cached_property
    def _alone(self) -> "Block":
        """The block of waters that are few."""
        return next(self._parts())[1]

    def _parts(self) -> "Iterator[tuple[slice, Block]]":
        free = self.free.reshape(len(self.components), -1)
        pe = self.pe if self.redox else np.zeros(np.shape(self.ph))
        fields = (self.temperature, self.ph, pe, self.ionic_strength, self.log_water_activity, self.water)
        columns = [np.reshape(field, -1) for field in fields]
        for begin in range(0, free.shape[1], BLOCK):
            part = slice(begin, begin + BLOCK)
            yield part, Block(self.system, free[:, part], *(column[part] for column in columns))


class Block:
    """Some waters of a speciation in a row, with the arrays that the solver works with."""

    def __init__(
        self,
        system: System,
        free: Array,
        temperature: Array,
        ph: Array,
        pe: Array,
        ionic_strength: Array,
        log_water: Array,
        water: Array,
    ) -> None:
        self.system, self.free, self.temperature, self.water = system, free, temperature, water
        self.ph, self.pe, self.ionic_strength, self.log_water = ph, pe, ionic_strength, log_water
        self.basis = temperature_basis(temperature)
        self.terms = terms_of(system, temperature, ionic_strength, (log_water, -ph, -pe))

    def molalities(self) -> Array:
        """Molalities of all species, in rows as `Speciation.species` names them [mol/kg water]."""
        constants = conditional_constants(self.system, self.terms, self.system.constants @ self.basis)
        return np.concatenate([self.free, molalities(self.system, self.free, constants)])

    def log_activities(self) -> Array:
        """log10 of the activities of the components, then of water, the hydrogen ion and the electron, in rows."""
        count = len(self.system.components)
        found = np.empty((count + 3, self.ph.size))
        with np.errstate(divide="ignore"):
            np.log10(self.free, out=found[:count])
        found[:count] += self.system.gamma[:count] @ self.terms[:-3]
        found[count:] = self.terms[-3:]
        return found

    def index(self, phase: str, log_activities: Array | None = None) -> Array:
        """Saturation index with a phase, NaN where the water lacks one of its components."""
        parts = self.system.phase(phase)
        if parts is None:
            return np.full(self.ph.size, np.nan)
        coefficients, constants = parts
        known = self.log_activities() if log_activities is None else log_activities
        found: Array = constants @ self.basis
        for place in np.flatnonzero(coefficients):
            found += coefficients[place] * known[place]
        return found
