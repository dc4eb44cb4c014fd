"""The equations of an aqueous system solved for many waters at once, without a loop over waters.

Unknowns are the components' free molalities, the ionic strength and, where it is not given, the pH. Mass balances
are swept one component after another: each is linear in its own free molality while the others are held, so that a
sweep needs multiplications only, and exponentials are taken anew only when the ionic strength (or the pH) moves.
The ionic strength is found by secants, the pH by Newton's method.
"""

from dataclasses import dataclass
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from .activity import debye_huckel_parameters, ionic_terms, water_property
from .equilibria import temperature_basis
from .system import System
from .tables import Array

_LN10 = np.log(10)
_TOLERANCE = 1e-8  # relative, on free molalities, ionic strength and hydrogen ion activity
_STAGES = (6, 12, 100)  # refreshes after which the waters still open go on alone
_SWEEPS = 2  # of the mass balances between two refreshes
_STEP = 2.0  # most that a Newton step moves ln of the hydrogen ion's activity
_TINY = 1e-30  # mol/kg, keeps a quotient finite where a component is absent


class Given(Enum):
    """What closes the carbonate system: the two quantities that are known, or equilibrium with a carbonate."""

    PH_ALKALINITY = "pH and alkalinity"
    PH_CARBON = "pH and inorganic carbon"
    PH_PCO2 = "pH and partial pressure of carbon dioxide"
    ALKALINITY_CARBON = "alkalinity and inorganic carbon"
    ALKALINITY_PCO2 = "alkalinity and partial pressure of carbon dioxide"
    CARBON_PCO2 = "inorganic carbon and partial pressure of carbon dioxide"
    CALCIUM_CARBONATE = "alkalinity and inorganic carbon, less the calcium carbonate that precipitates"


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
        return Conditions(
            self.given,
            self.temperature[chosen],
            self.totals[:, chosen],
            self.alkalinity[chosen],
            self.log_electron[chosen],
            self.constant[chosen],
        )


@dataclass
class Solution:
    """Free molalities of the components (rows), ionic strength, log10 of the activities of H+ and water.

    `residual` is the largest relative change that the last step made.
    """

    free: Array
    ionic_strength: Array
    log_hydrogen: Array
    log_water: Array
    residual: Array

    def at(self, chosen: NDArray[np.bool_]) -> "Solution":
        """The same of some of the waters, copied."""
        return Solution(
            self.free[:, chosen],
            self.ionic_strength[chosen],
            self.log_hydrogen[chosen],
            self.log_water[chosen],
            self.residual[chosen],
        )

    def put(self, chosen: NDArray[np.bool_], part: "Solution") -> None:
        """Take over some waters' values."""
        self.free[:, chosen] = part.free
        self.ionic_strength[chosen] = part.ionic_strength
        self.log_hydrogen[chosen] = part.log_hydrogen
        self.log_water[chosen] = part.log_water
        self.residual[chosen] = part.residual

    @property
    def converged(self) -> NDArray[np.bool_]:
        """Where the last step changed nothing that matters."""
        return self.residual <= _TOLERANCE


def start(system: System, known: Conditions, log_hydrogen: Array) -> Solution:
    """A first guess: every component free, at the ionic strength that this makes."""
    free = known.totals.copy()
    strength = 0.5 * (system.component_charge**2 @ free)
    if known.given is Given.PH_ALKALINITY:
        strength += 0.5 * np.abs(known.alkalinity)
    return Solution(free, strength + 1e-7, log_hydrogen.copy(), np.zeros_like(strength), np.full_like(strength, np.inf))


def solve(system: System, known: Conditions, guess: Solution) -> Solution:
    """Equilibrate waters under what is known of them, beginning with a guess (which is overwritten)."""
    everything = np.ones(guess.ionic_strength.size, dtype=bool)
    part, rest = guess, everything
    for steps in _STAGES:
        iteration = _Iteration(system, known, part)
        for _ in range(steps):
            iteration.step()
            if part.converged.all():
                break
        if part is not guess:
            guess.put(rest, part)
        # A block is not held up by its most saline member: slow waters go on alone.
        open_ = ~part.converged
        if not open_.any():
            break
        rest = np.flatnonzero(rest)[open_] if rest.dtype == bool else rest[open_]
        part, known = part.at(open_), known.at(open_)
    return guess


def terms_of(
    system: System,
    temperature: Array,
    ionic_strength: Array,
    log_water: Array,
    log_hydrogen: Array,
    log_electron: Array,
) -> Array:
    """The rows that `System.conditional` is for."""
    a, b = debye_huckel_parameters(temperature)
    return np.vstack([ionic_terms(ionic_strength, a, b, system.sizes), log_water, log_hydrogen, log_electron])


def conditional_constants(system: System, terms: Array, log_k: Array) -> Array:
    """Constants of the complexes on molalities, given the activities of hydrogen ion, water and electron."""
    constants = system.conditional @ terms
    constants += log_k
    constants *= _LN10
    return np.exp(constants, out=constants)


def molalities(system: System, free: Array, constants: Array) -> Array:
    """Molalities of the complexes, which take the place of their conditional constants."""
    for group in system.groups:
        for factor in group.factors:
            constants[group.start : group.stop] *= free[factor]
    return constants


class _Iteration:
    """One set of waters under way. The solution is changed in place by `step`."""

    def __init__(self, system: System, known: Conditions, now: Solution) -> None:
        self.system, self.known, self.now = system, known, now
        self.log_k = system.constants @ temperature_basis(known.temperature)
        self.a, self.b = debye_huckel_parameters(known.temperature)
        self.last: tuple[Array, Array] | None = None
        carbonate = system.carbonate
        calcium = system.components.index("Ca+2") if known.given is Given.CALCIUM_CARBONATE else None
        self.order = [e for e in range(len(system.components)) if e not in (carbonate, calcium)]
        self.involved = [
            [group for group in system.groups if component in group.factors]
            for component in range(len(system.components))
        ]

        self.alkaline_groups = [
            group
            for group in system.groups
            if known.given is Given.PH_ALKALINITY and system.complex_alkalinity[group.start : group.stop].any()
        ]

    def step(self) -> None:
        """Refresh the constants, sweep the mass balances, move the ionic strength and a pH that is sought."""
        system, now = self.system, self.now
        before = now.free.copy()
        terms = np.vstack(
            [
                ionic_terms(now.ionic_strength, self.a, self.b, system.sizes),
                now.log_water,
                now.log_hydrogen,
                self.known.log_electron,
            ]
        )
        self.log_gamma = system.gamma[: len(system.components)] @ terms[:-3]
        self.constants = conditional_constants(system, terms, self.log_k)
        self.sums = {
            group: self.constants[group.start : group.stop].sum(axis=0)
            if group.stop - group.start > 1
            else self.constants[group.start]
            for group in system.groups
        }
        self.alkaline = {
            group: system.complex_alkalinity[group.start : group.stop] @ self.constants[group.start : group.stop]
            for group in self.alkaline_groups
        }
        for _ in range(_SWEEPS):
            self.carbonate()
            for component in self.order:
                now.free[component] = self.known.totals[component] / self.denominator(component)
        change = np.abs(now.free - before)
        change /= np.maximum(now.free, _TINY)
        now.residual = change.max(axis=0)
        self.strength()
        if self.known.given.name[:2] != "PH":
            self.hydrogen()

    def product(self, factors: tuple[int, ...], of: Array) -> Array:
        """A row times the free molalities of some components."""
        for factor in factors:
            of = of * self.now.free[factor]
        return of

    def denominator(self, component: int, without: int | None = None) -> Array:
        """Total over free molality of a component, leaving out the complexes with another."""
        total = np.ones_like(self.now.ionic_strength)
        for group in self.involved[component]:
            if without is None or without not in group.factors:
                part = self.product(group.without(component), self.sums[group])
                total += part if group.factors.count(component) == 1 else group.factors.count(component) * part
        return total

    def carbonate(self) -> None:
        """The free carbonate ion (and calcium, beside a solid carbonate) from what closes the system."""
        system, known, now = self.system, self.known, self.now
        place = system.carbonate
        if known.given is Given.PH_ALKALINITY:
            of_carbonate = np.full_like(now.ionic_strength, system.component_alkalinity[place])
            of_others = np.zeros_like(now.ionic_strength)
            for group, weighted in self.alkaline.items():
                if place in group.factors:
                    of_carbonate += self.product(group.without(place), weighted)
                else:
                    of_others += self.product(group.factors, weighted)
            for component in np.flatnonzero(system.component_alkalinity):
                if component != place:
                    of_others += system.component_alkalinity[component] * now.free[component]
            now.free[place] = np.maximum((known.alkalinity - of_others) / of_carbonate, _TINY)
        elif known.given in (Given.PH_CARBON, Given.ALKALINITY_CARBON):
            now.free[place] = known.totals[place] / self.denominator(place)
        elif known.given is Given.CALCIUM_CARBONATE:
            self.beside_solid()
        else:
            log_activity = known.constant + now.log_water - 2 * now.log_hydrogen
            now.free[place] = 10 ** (log_activity - self.log_gamma[place])

    def beside_solid(self) -> None:
        """Calcium and carbonate at a solid's solubility product.

        What precipitates takes as much of either, so the difference of the totals stays; complexes of both cancel in
        it, and with {Ca}{CO3} known it is a quadratic equation in the free carbonate ion.
        """
        system, known, now = self.system, self.known, self.now
        carbonate, calcium = system.carbonate, system.components.index("Ca+2")
        difference = known.totals[calcium] - known.totals[carbonate]
        of_carbonate = self.denominator(carbonate, without=calcium)
        of_calcium = self.denominator(calcium, without=carbonate)
        product = 10 ** (known.constant - self.log_gamma[calcium] - self.log_gamma[carbonate])
        root = np.sqrt(difference**2 + 4 * of_carbonate * of_calcium * product)
        # Of the two forms of a quadratic's root, the one without cancellation.
        with np.errstate(divide="ignore"):
            now.free[carbonate] = np.where(
                difference > 0, 2 * of_calcium * product / (difference + root), (root - difference) / (2 * of_carbonate)
            )
        now.free[calcium] = product / now.free[carbonate]

    def strength(self) -> None:
        """Ionic strength and the activity of water from the species; the former by the secant of two steps."""
        system, now = self.system, self.now
        found = 0.5 * (system.component_charge**2 @ now.free)
        solutes = now.free.sum(axis=0)
        squares = 0.5 * system.complex_charge**2
        for group in system.groups:
            product = self.product(group.factors, np.ones_like(found)) if group.factors else 1.0
            solutes += self.sums[group] * product
            weights = squares[group.start : group.stop]
            if weights.any():
                found += (weights @ self.constants[group.start : group.stop]) * product
        now.log_water = np.log10(np.maximum(1 - water_property("activity")["water"] * solutes, 0.5))
        now.residual = np.maximum(now.residual, np.abs(found - now.ionic_strength) / found)
        guess = now.ionic_strength
        moved = found
        if self.last is not None:
            run = guess - self.last[0]
            with np.errstate(divide="ignore", invalid="ignore"):
                slope = np.where(run == 0, 0.0, (found - self.last[1]) / run)
            moved = guess + (found - guess) / (1 - np.clip(slope, -0.9, 0.5))
        self.last = (guess, found)
        now.ionic_strength = np.maximum(moved, 0.2 * guess)

    def hydrogen(self) -> None:
        """One Newton step of the hydrogen ion's activity on the balance of alkalinity (or of inorganic carbon)."""
        system, known, now = self.system, self.known, self.now
        place = system.carbonate
        complexes = molalities(system, now.free, self.constants)
        totals = now.free + system.coefficients.T @ complexes
        # d ln(free)/d ln{H+} of each component: its total stays, save where the carbonate system says otherwise.
        slope = -(system.coefficients.T @ (system.hydrogen[:, None] * complexes)) / np.maximum(totals, _TINY)
        if known.given in (Given.ALKALINITY_PCO2, Given.CARBON_PCO2):
            slope[place] = -2.0
        elif known.given is Given.CALCIUM_CARBONATE:
            calcium = system.components.index("Ca+2")
            alone = (system.coefficients[:, place] * (system.coefficients[:, calcium] == 0))[:, None] * complexes
            free_of_it = (system.coefficients[:, calcium] * (system.coefficients[:, place] == 0)) @ complexes
            mobile = alone.sum(axis=0) + now.free[place] + now.free[calcium] + free_of_it
            slope[place] = -(system.hydrogen @ alone) / mobile
            slope[calcium] = -slope[place]
        moves = complexes * (system.hydrogen[:, None] + system.coefficients @ slope)
        of_carbon = totals[place]
        carbon_slope = system.coefficients[:, place] @ moves + now.free[place] * slope[place]
        alkalinity = system.component_alkalinity @ now.free + system.complex_alkalinity @ complexes
        alkalinity_slope = system.component_alkalinity @ (now.free * slope) + system.complex_alkalinity @ moves
        if known.given is Given.CARBON_PCO2:
            surplus, rate = of_carbon - known.totals[place], carbon_slope
        elif known.given is Given.CALCIUM_CARBONATE:
            # The solid takes two equivalents of alkalinity with each mole of carbon.
            surplus = alkalinity - known.alkalinity - 2 * (of_carbon - known.totals[place])
            rate = alkalinity_slope - 2 * carbon_slope
        else:
            surplus, rate = alkalinity - known.alkalinity, alkalinity_slope
        with np.errstate(divide="ignore", invalid="ignore"):
            move = np.clip(-surplus / rate, -_STEP, _STEP)
        now.log_hydrogen = now.log_hydrogen + move / _LN10
        now.residual = np.maximum(now.residual, np.abs(move))
