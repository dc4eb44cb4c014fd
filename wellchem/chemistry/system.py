"""The set of species that a water's components can form, laid out as the arrays that the solver works with."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, cached_property

import numpy as np

from .activity import water_property
from .equilibria import phases, species
from .tables import Array, rows

CARBONATE, CALCIUM = "CO3-2", "Ca+2"
_IMPLICIT = ("H+", "H2O", "e-")  # master species with a known activity instead of a mass balance
_CHARGE = re.compile(r"([+-])(\d*)$")


def charge(name: str) -> int:
    """Charge number that a species' name ends with (`Ca+2`, `HCO3-`, `CO2`)."""
    match = _CHARGE.search(name)
    return int(match[1] + (match[2] or "1")) if match else 0


@dataclass(frozen=True)
class Group:
    """Species that are formed from the same components and differ in hydrogen, water or electrons only.

    Their molalities are one product of the components' free molalities times a conditional constant each, and
    stand in `rows` of the complexes. `factors` has each component as often as it is multiplied. `alkalinity` and
    `ones` are weights of the members.
    """

    index: int
    factors: tuple[int, ...]
    rows: slice
    alkalinity: Array
    ones: Array

    def without(self, component: int) -> tuple[int, ...]:
        """Factors that remain after dividing the product by a component once."""
        place = self.factors.index(component)
        return self.factors[:place] + self.factors[place + 1 :]


@dataclass(frozen=True)
class System:
    """Components (free master species) and the complexes that they form, with H+ and OH- among the complexes.

    `coefficients` are components in a complex; `conditional` turns the solver's terms (rows of
    `activity.ionic_terms`, then log10 of the activities of water, hydrogen ion and electron) into log10 of a
    conditional constant on molalities; `gamma` turns the first of them into log10 activity coefficients of the
    components, then of the complexes. `charges`, `strength` (half their squares) and `alkalinity`
    are of both in this order too.
    """

    components: tuple[str, ...]
    redox: bool
    complexes: tuple[str, ...]
    coefficients: Array
    hydrogen: Array
    constants: Array
    conditional: Array
    gamma: Array
    sizes: Array
    charges: Array
    strength: Array
    alkalinity: Array
    groups: tuple[Group, ...]

    @cached_property
    def stoichiometry(self) -> Array:
        """Components (columns) in every species, the components themselves first."""
        return np.vstack([np.eye(len(self.components)), self.coefficients])

    @cached_property
    def carbonate(self) -> int:
        """Index of the carbonate ion among the components."""
        return self.components.index(CARBONATE)

    def phase(self, name: str) -> tuple[Array, Array] | None:
        """A phase's coefficients: of the components' and then water's, hydrogen's and the electron's log10
        activities, and of the temperature basis. None where the water has no such component.
        """
        reaction = phases()[name]
        known = (*self.components, "H2O", "H+", "e-")
        absent = () if self.redox else ("e-",)
        if any(master not in known or master in absent for master in reaction.masters):
            return None
        return np.array([reaction.masters.get(master, 0.0) for master in known]), reaction.constants


@cache
def system(components: tuple[str, ...], redox: bool) -> System:
    """The system of the given components (master species of `water_components.csv`).

    Species of another oxidation state than their component's (ferric iron) take part where `redox` is known.
    """
    implicit = _IMPLICIT if redox else _IMPLICIT[:2]
    alkalinity = {row["master"]: float(row["alkalinity_eq_mol"]) for row in rows("water_components")}
    table = {row["species"]: row for row in rows("aqueous_species")}
    found = [
        reaction
        for name, reaction in species().items()
        if name not in components and all(master in (*components, *implicit) for master in reaction.masters)
    ]
    columns = {name: index for index, name in enumerate(components)}

    def factors(masters: Iterable[tuple[str, float]]) -> tuple[int, ...]:
        return tuple(sorted(columns[name] for name, count in masters if name in columns for _ in range(int(count))))

    found.sort(key=lambda reaction: factors(reaction.masters.items()))
    monomials = [factors(reaction.masters.items()) for reaction in found]
    complexes = tuple(reaction.name for reaction in found)
    coefficients = np.array([[reaction.masters.get(name, 0.0) for name in components] for reaction in found])
    water, hydrogen, electron = (
        np.array([reaction.masters.get(name, 0.0) for reaction in found]) for name in ("H2O", "H+", "e-")
    )
    formed = [sum(alkalinity[name] * count for name, count in reaction.masters.items()) for reaction in found]
    held = np.array([alkalinity[name] for name in components] + formed)
    charges = np.array([float(charge(name)) for name in (*components, *complexes)])
    groups: list[Group] = []
    for monomial in dict.fromkeys(monomials):
        members = slice(monomials.index(monomial), monomials.index(monomial) + monomials.count(monomial))
        groups.append(
            Group(len(groups), monomial, members, np.array(formed[members]), np.ones(monomials.count(monomial)))
        )
    sizes, gamma = _gamma(table, (*components, *complexes))
    return System(
        components=components,
        redox=redox,
        complexes=complexes,
        coefficients=coefficients,
        hydrogen=hydrogen,
        constants=np.array([reaction.constants for reaction in found]),
        conditional=np.column_stack(
            [coefficients @ gamma[: len(components)] - gamma[len(components) :], water, hydrogen, electron]
        ),
        gamma=gamma,
        sizes=sizes,
        charges=charges,
        strength=0.5 * charges**2,
        alkalinity=held,
        groups=tuple(groups),
    )


def _gamma(table: dict[str, dict[str, str]], names: tuple[str, ...]) -> tuple[Array, Array]:
    """Ion sizes that occur, and each species' coefficients of the terms of `activity.ionic_terms`."""
    neutral = water_property("activity")["neutral_b"]
    sizes = sorted({float(table[name]["ion_size_angstrom"]) for name in names if table[name]["ion_size_angstrom"]})
    gamma = np.zeros((len(names), len(sizes) + 2))
    for row, name in zip(gamma, names, strict=True):
        number, size = charge(name), table[name]["ion_size_angstrom"]
        if number == 0:
            row[-1] = neutral
        elif size:
            row[sizes.index(float(size))] = number**2
            row[-1] = float(table[name]["b_kg_mol"])
        else:
            row[-2] = number**2
    return np.array(sizes), gamma
