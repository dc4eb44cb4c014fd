"""Equilibrate waters: sweeps for many, Newton's method for those that are left and for a few from the outset."""

import numpy as np

from .equilibrium import FLOOR, Conditions, Given, Iteration, Unknowns
from .newton import finish
from .system import System

_ROUNDS = (3, 2, 2, 2)  # steps after which the waters that are still open go on alone
_FEW = 32  # waters; up to that many cost less by a few calls on whole matrices than by many on rows
_MORE = (2, 2, 2, 2)  # the same again where the pH is sought, which needs more of them


@np.errstate(all="ignore")
def solve(system: System, known: Conditions, guess: Unknowns) -> Unknowns:
    """Equilibrate waters under what is known of them, beginning with a guess (which is overwritten).

    A water whose numbers run over is one that does not converge, and is told by its `error`: no warning is needed.
    """
    part, places = guess, np.arange(guess.error.size)
    if guess.error.size <= _FEW:
        part = _at_once(system, known, guess)
        guess.put(part.converged, part.at(part.converged))
        still = ~part.converged
        if not still.any():
            return guess
        part, known, places = guess.at(still), known.at(still), places[still]
    for steps in _ROUNDS if known.given.has_ph else _ROUNDS + _MORE:
        iteration = Iteration(system, known, part)
        for _ in range(steps):
            iteration.step()
            if part.converged.all():
                break
        if part is not guess:
            guess.put(places, part)
        # A block is not held up by its most saline member: waters that are done step aside.
        still = ~part.converged
        if not still.any():
            return guess
        part, known, places = part.at(still), known.at(still), places[still]
    if known.given is Given.PH_ALKALINITY:
        # Where the other bases hold all of the alkalinity there is nothing to solve for.
        still = part.free[system.carbonate] > FLOOR
        part, known, places = part.at(still), known.at(still), places[still]
    if places.size:
        finish(system, known, part)
        guess.put(places, part)
    return guess


def _at_once(system: System, known: Conditions, guess: Unknowns) -> Unknowns:
    """Newton's method from a guess in which every component has an amount, if need be by one sweep."""
    part = guess.at(np.ones(guess.error.size, dtype=bool))
    if (part.free <= 0.0).any():
        Iteration(system, known, part).step()
    if known.given is Given.PH_ALKALINITY and (part.free[system.carbonate] <= FLOOR).any():
        return part  # of one of them there is nothing to solve for: sweeps tell the others from it
    finish(system, known, part)
    return part
