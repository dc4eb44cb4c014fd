"""Molar masses and equivalent weights, from the CIAAW standard atomic weights."""

import re
from collections import Counter
from functools import cache

from .tables import rows

# An element symbol, an opening or a closing bracket, each with the count that follows it.
_TOKEN = re.compile(r"([A-Z][a-z]?)(\d*)|(\()|(\))(\d*)")


@cache
def _atomic_weights() -> dict[str, float]:
    return {row["symbol"]: float(row["atomic_weight"]) for row in rows("atomic_weights")}


def atomic_weight(symbol: str) -> float:
    """Standard atomic weight of an element [g/mol].

    The conventional value is given where CIAAW prints an interval. Elements without a stable composition
    (technetium, radium, radon …) have no standard atomic weight.

    Raises
    ------
    ValueError
        Where the symbol is not an element that has a standard atomic weight.

    References
    ----------
    .. [1] CIAAW, Standard atomic weights of the elements 2024 (`atomic_weights.csv`).
    """
    try:
        return _atomic_weights()[symbol]
    except KeyError:
        raise ValueError(f"no standard atomic weight for {symbol!r}") from None


@cache
def _atoms(formula: str) -> tuple[tuple[str, int], ...]:
    total: Counter[str] = Counter()
    for part in re.split(r"[·.*]", formula):
        leading = re.match(r"\d*", part)
        count = leading.group() if leading else ""
        for symbol, number in _part(part[len(count) :], formula).items():
            total[symbol] += number * int(count or 1)
    return tuple(sorted(total.items()))


def _part(text: str, formula: str) -> Counter[str]:
    """Atoms of a formula without hydrate dots; brackets nest."""
    stack: list[Counter[str]] = [Counter()]
    place = 0
    while place < len(text):
        token = _TOKEN.match(text, place)
        if token is None or not token.group():
            raise ValueError(f"cannot read the chemical formula {formula!r}")
        symbol, number, opening, closing, repeat = token.groups()
        if symbol:
            atomic_weight(symbol)
            stack[-1][symbol] += int(number or 1)
        elif opening:
            stack.append(Counter())
        elif closing and len(stack) > 1:
            for inner, atoms in stack.pop().items():
                stack[-1][inner] += atoms * int(repeat or 1)
        else:
            raise ValueError(f"unbalanced brackets in the chemical formula {formula!r}")
        place = token.end()
    if len(stack) > 1 or not stack[0]:
        raise ValueError(f"cannot read the chemical formula {formula!r}")
    return stack[0]


def atoms(formula: str) -> dict[str, int]:
    """Atoms of each element in one formula unit.

    Brackets and hydrates are read (`Ca(HCO3)2`, `CaSO4·2H2O`); a charge is not part of the formula, because
    `Ca2+` and `NH4+` cannot be told apart: it is an argument of its own wherever it matters.

    Raises
    ------
    ValueError
        Where the formula cannot be read or has an element without a standard atomic weight.
    """
    return dict(_atoms(formula))


@cache
def molar_mass(formula: str) -> float:
    """Molar mass [g/mol].

    The mass of gained or lost electrons is neglected (5e-4 g/mol each).

    Raises
    ------
    ValueError
        As `atoms`.

    References
    ----------
    .. [1] CIAAW, Standard atomic weights of the elements 2024.
    """
    return sum(count * atomic_weight(symbol) for symbol, count in _atoms(formula))


def equivalent_weight(formula: str, charge: int) -> float:
    """Equivalent weight, molar mass over the charge's size [g/eq].

    Parameters
    ----------
    formula : str
        Formula of the ion, without its charge.
    charge : int
        Charge of the ion, or the equivalents per mole that the trade counts (2 for CaCO3) [eq/mol].

    Raises
    ------
    ValueError
        As `atoms`, and where the charge is nought.
    """
    if charge == 0:
        raise ValueError(f"{formula} without a charge has no equivalent weight")
    return molar_mass(formula) / abs(charge)
