"""The equations of an aqueous system solved for many waters at once, without a loop over waters.

Unknowns are the components' free molalities, the ionic strength and, where it is not given, the pH. Mass balances
are swept one component after another: each is linear in its own free molality while the others are held, so that a
sweep needs multiplications only, and exponentials are taken anew only when the ionic strength (or the pH) moves.
The ionic strength is found by secants, the pH by Newton's method.
"""

from dataclasses import dataclass, fields
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from .activity import debye_huckel_parameters, ionic_terms, water_property
from .equilibria import temperature_basis
from .system import CALCIUM, System
from .tables import Array

_LN10 = np.log(10)
_TOLERANCE = 1e-7  # relative, of the error left in free molalities, ionic strength and hydrogen ion activity
_TRACE = 1e-12  # mol/kg, below which a component need not be balanced to a relative tolerance
_RATE = 0.03  # at best a secant's change is taken to be this much of the one before
_SWEEPS = 2  # of the mass balances between two refreshes
_STEP = 2.0  # most that a Newton step moves ln of the hydrogen ion's activity
FLOOR = 1e-30  # mol/kg, keeps a quotient finite where a component is absent


class Given(Enum):
    """What closes the carbonate system: the two quantities that are known, or equilibrium with a carbonate."""

    PH_ALKALINITY = "pH and alkalinity"
    PH_CARBON = "pH and inorganic carbon"
    PH_PCO2 = "pH and partial pressure of carbon dioxide"
    ALKALINITY_CARBON = "alkalinity and inorganic carbon"
    ALKALINITY_PCO2 = "alkalinity and partial pressure of carbon dioxide"
    CARBON_PCO2 = "inorganic carbon and partial pressure of carbon dioxide"
    CALCIUM_CARBONATE = "alkalinity and inorganic carbon, less the calcium carbonate that precipitates"

    @property
    def has_ph(self) -> bool:
        """Whether the pH is among what is known."""
        return self in (Given.PH_ALKALINITY, Given.PH_CARBON, Given.PH_PCO2)


@dataclass(frozen=True)
class Conditions:
    """What is known of some waters, on molalities.

    `totals` has a row per component; the carbonate row is inorganic carbon where that is given. `constant` is log10
    of what fixes the carbonate ion: of its activity times {H+}²/{H2O} under a pCO2, of the ion activity product with
    a solid.
    """

    given: Given
    temperature: Array
    totals: Array
    alkalinity: Array
    log_electron: Array
    constant: Array

    def at(self, chosen: NDArray[np.bool_]) -> "Conditions":
        """The same of some of the waters."""
        arrays = {field.name: getattr(self, field.name) for field in fields(self) if field.name != "given"}
        return Conditions(self.given, **{name: value[..., chosen] for name, value in arrays.items()})


@dataclass
class Unknowns:
    """Free molalities of the components (rows), ionic strength, log10 of the activities of H+ and water.

    `error` is the largest relative one of the mass balances, of the ionic strength (by the rate at which its changes
    fall) and of the hydrogen ion where it is sought. `secant` has the ionic strength that the last step began with
    and the one it came to, NaN before the first.
    """

    free: Array
    ionic_strength: Array
    log_hydrogen: Array
    log_water: Array
    error: Array
    secant: Array

    @classmethod
    def near(cls, free: Array, ionic_strength: Array, log_hydrogen: Array, log_water: Array) -> "Unknowns":
        """A guess to begin with; the arrays are copied."""
        free, ionic_strength = free.copy(), ionic_strength.copy()
        error, secant = np.ones_like(ionic_strength), np.full((2, ionic_strength.size), np.nan)
        return cls(free, ionic_strength, log_hydrogen.copy(), log_water.copy(), error, secant)

    def at(self, chosen: NDArray[np.bool_]) -> "Unknowns":
        """The same of some of the waters, copied."""
        return Unknowns(*(getattr(self, field.name)[..., chosen] for field in fields(self)))

    def put(self, chosen: NDArray[np.bool_] | NDArray[np.intp], part: "Unknowns") -> None:
        """Take over some waters' values."""
        for field in fields(self):
            getattr(self, field.name)[..., chosen] = getattr(part, field.name)

    @property
    def converged(self) -> NDArray[np.bool_]:
        """Where nothing that matters is left to change."""
        return self.error <= _TOLERANCE


def start(system: System, known: Conditions, log_hydrogen: Array) -> Unknowns:
    """A first guess: every component free, at the ionic strength that this makes."""
    strength = system.strength[: len(known.totals)] @ known.totals + 1e-7
    if known.given is Given.PH_ALKALINITY:
        strength += 0.5 * np.abs(known.alkalinity)
    return Unknowns.near(known.totals, strength, log_hydrogen, np.zeros_like(strength))


def terms_of(system: System, temperature: Array, ionic_strength: Array, others: tuple[Array, Array, Array]) -> Array:
    """The rows that `System.conditional` is for; `others` are log10 of the activities of water, H+ and electron."""
    terms = np.empty((system.conditional.shape[1], temperature.size))
    ionic_terms(ionic_strength, *debye_huckel_parameters(temperature), system.sizes, out=terms[:-3])
    terms[-3:] = others
    return terms


def conditional_constants(system: System, terms: Array, log_k: Array) -> Array:
    """Constants of the complexes on molalities, given the activities of hydrogen ion, water and electron."""
    constants: Array = system.conditional @ terms
    constants += log_k
    constants *= _LN10
    np.exp(constants, out=constants)
    return constants


def water_activity(solutes: Array) -> Array:
    """log10 of the activity of water from the sum of the solutes' molalities."""
    return np.asarray(np.log10(np.maximum(1 - water_property("activity")["water"] * solutes, 0.5)))


def weighted(weights: Array, values: Array) -> Array:
    """Weighted sum of rows. A single row of weight one is given itself."""
    if len(weights) == 1 and weights[0] == 1:
        return np.asarray(values[0])
    return np.asarray(weights @ values)


def molalities(system: System, free: Array, constants: Array) -> Array:
    """Molalities of the complexes, which take the place of their conditional constants."""
    for group in system.groups:
        for factor in group.factors:
            constants[group.rows] *= free[factor]
    return constants


class Iteration:
    """One set of waters under way. The unknowns are changed in place by `step`."""

    def __init__(self, system: System, known: Conditions, now: Unknowns) -> None:
        self.system, self.known, self.now = system, known, now
        self.log_k = system.constants @ temperature_basis(known.temperature)
        self.a, self.b = debye_huckel_parameters(known.temperature)
        self.sought = not known.given.has_ph
        if self.sought:
            self.ph_balance = _ph_balance(system, known.given)
        count = len(system.components)
        self.terms = np.empty((system.conditional.shape[1], known.temperature.size))
        self.terms[-1] = known.log_electron
        self.spare = np.empty(known.temperature.size)
        bound = known.given is Given.CALCIUM_CARBONATE
        apart = {system.carbonate, system.components.index(CALCIUM)} if bound else {system.carbonate}
        self.balances, self.target = _balances(system, known)
        self.scale = np.abs(self.target) + _TRACE
        self.order = [component for component in range(count) if component not in apart]
        self.bases = [group for group in system.groups if group.alkalinity.any()]
        self.involved = [[group for group in system.groups if place in group.factors] for place in range(count)]

    def step(self) -> None:
        """Refresh the constants, sweep the mass balances, move the ionic strength and a pH that is sought."""
        system, now = self.system, self.now
        ionic_terms(now.ionic_strength, self.a, self.b, system.sizes, out=self.terms[:-3])
        self.terms[-3], self.terms[-2] = now.log_water, now.log_hydrogen
        self.constants = conditional_constants(system, self.terms, self.log_k)
        self.sums = [weighted(group.ones, self.constants[group.rows]) for group in system.groups]
        if self.known.given is Given.PH_ALKALINITY:
            self.alkaline = [weighted(group.alkalinity, self.constants[group.rows]) for group in self.bases]
        for _ in range(_SWEEPS):
            self.carbonate()
            for component in self.order:
                np.divide(self.known.totals[component], self.denominator(component), out=now.free[component])
        complexes = molalities(system, now.free, self.constants)
        now.error = np.maximum(self.imbalance(complexes), self.strength(complexes))
        if self.sought:
            now.error = np.maximum(now.error, self.hydrogen(complexes))

    def imbalance(self, complexes: Array) -> Array:
        """Largest relative error of the balances that the sweeps are to meet."""
        of_free, of_complexes = self.balances
        off = of_free @ self.now.free + of_complexes @ complexes
        off -= self.target
        np.abs(off, out=off)
        off /= self.scale
        return np.asarray(off.max(axis=0))

    def denominator(self, component: int, without: int | None = None) -> Array:
        """Total over free molality of a component, leaving out the complexes with another."""
        total = np.ones_like(self.spare)
        for group in self.involved[component]:
            if without is None or without not in group.factors:
                total += self.product(group.without(component), self.sums[group.index], group.factors.count(component))
        return total

    def product(self, factors: tuple[int, ...], of: Array, times: float = 1.0) -> Array:
        """A row times the free molalities of some components (in a buffer that the next call overwrites)."""
        for factor in factors:
            of = np.multiply(of, self.now.free[factor], out=self.spare)
        return of if times == 1 else np.multiply(of, times, out=self.spare)

    def carbonate(self) -> None:
        """The free carbonate ion (and calcium, beside a solid carbonate) from what closes the system."""
        system, known, now = self.system, self.known, self.now
        place = system.carbonate
        if known.given is Given.PH_ALKALINITY:
            self.from_alkalinity()
        elif known.given in (Given.PH_CARBON, Given.ALKALINITY_CARBON):
            now.free[place] = known.totals[place] / self.denominator(place)
        elif known.given is Given.CALCIUM_CARBONATE:
            self.beside_solid()
        else:
            log_gamma = system.gamma[place] @ self.terms[:-3]
            now.free[place] = 10 ** (known.constant + now.log_water - 2 * now.log_hydrogen - log_gamma)

    def from_alkalinity(self) -> None:
        """The free carbonate ion from the alkalinity that the other bases leave over."""
        system, now = self.system, self.now
        place = system.carbonate
        of_carbonate = np.full_like(self.spare, system.alkalinity[place])
        rest = self.known.alkalinity.copy()
        for group, alkaline in zip(self.bases, self.alkaline, strict=True):
            if place in group.factors:
                of_carbonate += self.product(group.without(place), alkaline)
            else:
                rest -= self.product(group.factors, alkaline)
        for component in np.flatnonzero(system.alkalinity[: len(now.free)]):
            if component != place:
                rest -= system.alkalinity[component] * now.free[component]
        np.maximum(np.divide(rest, of_carbonate, out=rest), FLOOR, out=now.free[place])

    def beside_solid(self) -> None:
        """Calcium and carbonate at a solid's solubility product.

        What precipitates takes as much of either, so the difference of the totals stays; complexes of both cancel in
        it, and with {Ca}{CO3} known it is a quadratic equation in the free carbonate ion.
        """
        system, known, now = self.system, self.known, self.now
        carbonate, calcium = system.carbonate, system.components.index(CALCIUM)
        difference = known.totals[calcium] - known.totals[carbonate]
        of_carbonate = self.denominator(carbonate, without=calcium)
        of_calcium = self.denominator(calcium, without=carbonate)
        product = 10 ** (known.constant - (system.gamma[calcium] + system.gamma[carbonate]) @ self.terms[:-3])
        root = np.sqrt(difference**2 + 4 * of_carbonate * of_calcium * product)
        # Of the two forms of a quadratic's root, the one without cancellation.
        now.free[carbonate] = np.where(
            difference > 0,
            2 * of_calcium * product / (np.abs(difference) + root),
            (root - difference) / (2 * of_carbonate),
        )
        now.free[calcium] = product / now.free[carbonate]

    def strength(self, complexes: Array) -> Array:
        """Move the ionic strength and the activity of water to the species'; the former by the secant of two steps.

        Gives the relative change.
        """
        system, now = self.system, self.now
        found = system.strength[: len(now.free)] @ now.free + system.strength[len(now.free) :] @ complexes
        solutes = now.free.sum(axis=0) + complexes.sum(axis=0)
        now.log_water = water_activity(solutes)
        guess, moved = now.ionic_strength, found
        change = np.abs(found - guess) / found
        if not self.sought:
            # A pH that is sought moves the ionic strength too, and would be mistaken for a slope here.
            before = guess - now.secant[0]
            before[before == 0] = np.inf
            slope = (found - now.secant[1]) / before
            # Ion pairing makes the slope negative and small; what is far from that is noise of the first steps.
            moved = guess + (found - guess) / (1 - np.where(np.isnan(slope), 0.0, np.clip(slope, -0.9, 0.5)))
            # The secant leaves about the square of the change, over the change before.
            change *= np.fmin(np.fmax(np.abs((moved - guess) / before), _RATE), 1.0)
            now.secant = np.stack([guess, found])
        now.ionic_strength = np.maximum(moved, 0.2 * guess)
        return np.asarray(change)

    def hydrogen(self, complexes: Array) -> Array:
        """One Newton step of the hydrogen ion's activity on the balance of alkalinity (or of inorganic carbon).

        Gives the relative change.
        """
        system, known, now = self.system, self.known, self.now
        place, count = system.carbonate, len(now.free)
        of_free, of_complexes = self.ph_balance
        sums = of_complexes @ complexes
        totals, by_hydrogen, weighed = (sums[part * count : (part + 1) * count] for part in range(3))
        # d ln(free)/d ln{H+} of each component: its total stays, save where the carbonate system says otherwise.
        slope = -by_hydrogen / np.maximum(totals + now.free, FLOOR)
        target = known.alkalinity
        if known.given in (Given.ALKALINITY_PCO2, Given.CARBON_PCO2):
            slope[place] = -2.0
            target = known.alkalinity if known.given is Given.ALKALINITY_PCO2 else known.totals[place]
        elif known.given is Given.CALCIUM_CARBONATE:
            # Complexes of both stay as they are beside the solid, and what one gains the other loses.
            calcium = system.components.index(CALCIUM)
            slope[place] = -sums[-1] / (sums[-2] + now.free[place] + now.free[calcium])
            slope[calcium] = -slope[place]
            target = known.alkalinity - 2 * known.totals[place]
        surplus = of_free @ now.free + sums[3 * count] - target
        rate = sums[3 * count + 1] + ((weighed + of_free[:, None] * now.free) * slope).sum(axis=0)
        move = np.clip(-surplus / np.where(rate == 0, np.nan, rate), -_STEP, _STEP)
        now.log_hydrogen = now.log_hydrogen + move / _LN10
        return np.asarray(np.abs(move))


def _balances(system: System, known: Conditions) -> tuple[tuple[Array, Array], Array]:
    """Weights of components and complexes in the balances that are to be met, and what these come to."""
    weights, target = system.stoichiometry.T.copy(), known.totals.copy()
    place = system.carbonate
    if known.given is Given.PH_ALKALINITY:
        weights[place], target[place] = system.alkalinity, known.alkalinity
    elif known.given not in (Given.PH_CARBON, Given.ALKALINITY_CARBON):
        weights[place], target[place] = 0.0, 0.0
        if known.given is Given.CALCIUM_CARBONATE:
            calcium = system.components.index(CALCIUM)
            weights[calcium], target[calcium] = 0.0, 0.0
    of_free, of_complexes = np.split(weights, [len(target)], axis=1)
    return (of_free, of_complexes), target


def _ph_balance(system: System, given: Given) -> tuple[Array, Array]:
    """Weights of the components and of the complexes in the sums that `Iteration.hydrogen` needs.

    What is balanced is alkalinity, inorganic carbon under a known pCO2, or, beside a solid carbonate, which takes two
    equivalents with each mole of carbon, alkalinity less twice the carbon.
    """
    count, each = len(system.components), system.coefficients
    carbon = np.concatenate([np.eye(count)[system.carbonate], each[:, system.carbonate]])
    weights = {Given.CARBON_PCO2: carbon, Given.CALCIUM_CARBONATE: system.alkalinity - 2 * carbon}.get(
        given, system.alkalinity
    )
    of_free, of_each = np.split(weights, [count])
    sums = [
        each.T,
        (each * system.hydrogen[:, None]).T,
        (each * of_each[:, None]).T,
        of_each,
        of_each * system.hydrogen,
    ]
    if given is Given.CALCIUM_CARBONATE:
        calcium, carbonate = each[:, system.components.index(CALCIUM)] > 0, each[:, system.carbonate] > 0
        sums += [(calcium != carbonate) * 1.0, (carbonate & ~calcium) * system.hydrogen]
    return of_free, np.vstack(sums)
