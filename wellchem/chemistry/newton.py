"""Newton's method on all equations of an aqueous system together, for the waters on which sweeps are slow.

Sweeps of the mass balances are cheap and settle almost every water. They crawl where two components hold most of each
other, and swing where the pH hangs on the ionic strength (much carbon dioxide beside a solid carbonate). Here the
unknowns are solved for at once: ln of the free molalities, of the ionic strength and, where it is sought, of the
hydrogen ion's activity.
"""

import numpy as np

from .activity import debye_huckel_parameters, ionic_terms
from .equilibria import temperature_basis
from .equilibrium import Conditions, Given, Unknowns, conditional_constants, molalities, water_activity
from .system import CALCIUM, System
from .tables import Array

_LN10 = np.log(10)
_TOLERANCE = 1e-9  # of the relative errors of all equations
_STEPS = 60
_LONGEST = 1.0  # most that a step moves the logarithm of an unknown
_NUDGE = 1e-6  # relative, of the ionic strength, for the slope of the activity coefficients
_RIDGE = 1e-14
_TRACE = 1e-12  # mol/kg, below which a component need not be balanced to a relative tolerance


def finish(system: System, known: Conditions, now: Unknowns) -> None:
    """Solve the waters, beginning with the unknowns, which are overwritten."""
    count, size = len(system.components), now.error.size
    sought = not known.given.has_ph
    log_k = system.constants @ temperature_basis(known.temperature)
    a, b = (np.tile(one, 2) for one in debye_huckel_parameters(known.temperature))
    balances, target = _equations(system, known)
    weights = np.vstack([balances, system.strength])
    # What the sums are to come to, and what their errors are held against; the ionic strength's row is filled in turn.
    goal = np.vstack([target, now.ionic_strength])
    divisor = np.abs(goal) + _TRACE
    derivatives = system.stoichiometry
    if sought:
        derivatives = np.column_stack([derivatives, np.concatenate([np.zeros(count), system.hydrogen])])
    unknowns = derivatives.shape[1] + 1
    terms = np.empty((system.conditional.shape[1], 2 * size))  # at the ionic strength, and a little beside it
    terms[-1] = np.tile(known.log_electron, 2)
    slope = np.empty((size, unknowns, unknowns))
    by_strength = np.zeros((len(system.stoichiometry), size))
    for _ in range(_STEPS):
        strength = now.ionic_strength
        ionic_terms(np.concatenate([strength, strength * (1 + _NUDGE)]), a, b, system.sizes, out=terms[:-3])
        terms[-3, :size], terms[-2, :size] = now.log_water, now.log_hydrogen
        terms[-3:-1, size:] = terms[-3:-1, :size]
        at, moved = terms[:, :size], (terms[:, size:] - terms[:, :size]) * (_LN10 / _NUDGE)
        species = np.concatenate([now.free, molalities(system, now.free, conditional_constants(system, at, log_k))])
        by_strength[count:] = system.conditional @ moved
        now.log_water = water_activity(species.sum(axis=0))

        sums = weights @ species
        goal[-1] = divisor[-1] = strength
        residual = (sums - goal) / divisor
        np.matmul(weights * species.T[:, None, :], derivatives, out=slope[:, :, :-1])
        slope[:, :, -1] = (weights @ (species * by_strength)).T
        slope[:, -1, -1] -= sums[-1]
        slope /= divisor.T[:, :, None]
        _fix_carbonate(system, known, now, at, moved, residual, slope)
        step = _solved(slope, -residual.T)
        now.error = np.abs(residual).max(axis=0)
        step *= np.minimum(1.0, _LONGEST / np.maximum(np.abs(step).max(axis=0), _LONGEST))
        now.free *= np.exp(step[:count])
        now.ionic_strength = strength * np.exp(step[-1])
        if sought:
            now.log_hydrogen = now.log_hydrogen + step[count] / _LN10
        if (now.error <= _TOLERANCE).all():
            return


def _solved(slope: Array, right: Array) -> Array:
    """Solution of each water's linear equations, in rows of unknowns.

    A component that is absent has an empty equation: its unknown stays. The trace that is added to the diagonal keeps
    a hopeless water from being singular, which would stop all others.
    """
    largest = np.abs(slope).max(axis=2)
    empty = largest == 0
    largest[empty] = 1.0
    scaled = slope / largest[:, :, None]
    places = np.arange(slope.shape[1])
    scaled[:, places, places] += np.where(empty, 1.0, _RIDGE)
    return np.asarray(np.linalg.solve(scaled, (right / largest)[:, :, None])[:, :, 0].T)


def _equations(system: System, known: Conditions) -> tuple[Array, Array]:
    """Weights of the species in each balance and what it comes to: the components', then that for a pH that is sought.

    A pCO2 or a solid puts other equations in the carbonate ion's (and calcium's) place: see `_fix_carbonate`.
    """
    carbon = system.stoichiometry[:, system.carbonate]
    weights = np.vstack([system.stoichiometry.T, system.alkalinity])
    target = np.vstack([known.totals, known.alkalinity])
    if known.given is Given.PH_ALKALINITY:
        weights[system.carbonate], target[system.carbonate] = system.alkalinity, known.alkalinity
    elif known.given is Given.CARBON_PCO2:
        weights[-1], target[-1] = carbon, known.totals[system.carbonate]
    elif known.given is Given.CALCIUM_CARBONATE:
        # The solid takes one calcium and two equivalents of alkalinity with each carbon.
        calcium = system.components.index(CALCIUM)
        weights[-1], target[-1] = system.alkalinity - 2 * carbon, known.alkalinity - 2 * known.totals[system.carbonate]
        weights[calcium] = system.stoichiometry[:, calcium] - carbon
        target[calcium] = known.totals[calcium] - known.totals[system.carbonate]
    return (weights[:-1], target[:-1]) if known.given.has_ph else (weights, target)


def _fix_carbonate(
    system: System, known: Conditions, now: Unknowns, at: Array, moved: Array, residual: Array, slope: Array
) -> None:
    """Put the gas's or the solid's equilibrium in the place of the carbonate ion's balance."""
    if known.given in (Given.PH_PCO2, Given.ALKALINITY_PCO2, Given.CARBON_PCO2):
        ions, hydrogen, fixed = [system.carbonate], 2.0, known.constant + now.log_water - 2 * now.log_hydrogen
    elif known.given is Given.CALCIUM_CARBONATE:
        ions, hydrogen, fixed = [system.carbonate, system.components.index(CALCIUM)], 0.0, known.constant
    else:
        return
    gamma = system.gamma[ions].sum(axis=0)
    place, count = system.carbonate, len(system.components)
    residual[place] = np.log(now.free[ions]).sum(axis=0) + _LN10 * (gamma @ at[:-3] - fixed)
    slope[:, place] = 0.0
    slope[:, place, ions] = 1.0
    if not known.given.has_ph:
        slope[:, place, count] = hydrogen
    slope[:, place, -1] = gamma @ moved[:-3]
