"""Numbers and results as words of a sentence."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache

import numpy as np

from wellchem.limits.documents import short_name
from wellchem.models.codes import Censoring
from wellchem.models.limits import Comparison
from wellchem.models.sample import Result

_SYMBOLS = {"ph": "pH", "chromium_vi": "hexavalent chromium"}


def _unit(unit: str) -> str:
    """A unit behind a number: nothing for a pure number, `per 100 mL` for a count."""
    if unit in ("", "1"):
        return ""
    return f" per {unit[2:].strip('()')}" if unit.startswith("1/") else f" {unit}"


@lru_cache(maxsize=1 << 12)
def label(key: str) -> str:
    """An analyte's or a problem's key as words inside a sentence."""
    from wellchem.vocabulary import bundled

    if key in _SYMBOLS:
        return _SYMBOLS[key]
    known = bundled().analytes.get(key)
    name = known.label if known else key.replace("_", " ")
    # Of a word the first letter is made small; an acronym or an abbreviated genus stays.
    return name[:1].lower() + name[1:] if name[1:2].islower() else name


def labels(keys: str) -> str:
    """Keys that are joined by commas, as words."""
    return ", ".join(map(label, keys.split(",")))


def title(key: str) -> str:
    """A key as the beginning of a sentence."""
    name = label(key)
    return name if name == "pH" else name[:1].upper() + name[1:]


def listed(words: Iterable[str]) -> str:
    """Words of a sentence, the last two joined by *and*."""
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def number(value: float) -> str:
    """A number with three digits, without an exponent where one is not needed."""
    if math.isinf(value):
        return "no known end"
    plain = 1e-9 <= abs(value) < 1e9 or value == 0.0
    return np.format_float_positional(float(f"{value:.3g}"), trim="-") if plain else f"{value:.2e}"


def interval(low: float, high: float, unit: str = "") -> str:
    """Two bounds as words."""
    tail = _unit(unit)
    if math.isnan(low) or math.isnan(high):
        return "unknown"
    if number(low) == number(high):
        return f"{number(low)}{tail}"
    if math.isinf(high):
        return f"at least {number(low)}{tail}"
    if low == 0.0:
        return f"at most {number(high)}{tail}"
    return f"{number(low)} to {number(high)}{tail}"


def result(given: Result) -> str:
    """A result as printed, else in its canonical unit."""
    fraction = f", {given.fraction.replace('_', ' ')}" if given.fraction else ""
    if given.printed.value:
        unit = "" if given.printed.value.endswith(given.printed.unit) else _unit(given.printed.unit)
        return f"{label(given.analyte)}{fraction} {given.printed.value}{unit}"
    if given.censoring in (Censoring.PRESENT, Censoring.ABSENT):
        return f"{label(given.analyte)} {given.censoring.value}"
    low = math.nan if given.low is None else given.low
    high = math.nan if given.high is None else given.high
    return f"{label(given.analyte)}{fraction} {interval(low, high, given.unit or '')}"


def comparison(given: Comparison) -> str:
    """A verdict with its limit."""
    limit = given.limit
    side = limit.minimum if given.verdict == "below" else limit.maximum
    unit = _unit(limit.unit)
    bound = "" if side is None else f" of {np.format_float_positional(side, trim='-')}{unit}"
    basis = f" as {limit.basis}" if limit.basis and limit.unit != "1" else ""
    verdict = {"above": "is above", "below": "is below", "within": "is within", "undecided": "cannot be judged against"}
    named = f"{limit.term}{bound}{basis} ({short_name(limit.authority)})"
    return f"{title(given.analyte)} {verdict[given.verdict]} the {named}"
