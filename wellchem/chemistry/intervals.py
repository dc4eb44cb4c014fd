"""What a function may give over a box of inputs: bounds of computed values from bounds of the inputs."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import product
from typing import Any, NamedTuple, TypeVar

import numpy as np
from numpy.typing import ArrayLike

from .tables import Array, arrays, restored

F = TypeVar("F", bound=Callable[..., Any])
Point = Mapping[str, ArrayLike]


class Bounds(NamedTuple):
    """Lowest and highest value that the inputs allow, floats or arrays, in the function's unit."""

    low: Any
    high: Any


@dataclass(frozen=True)
class Behaviour:
    """How an output answers to each argument, whatever the others are, and the range of its values.

    It never falls as a `rising` argument rises, and never rises as a `falling` one does; in a `peaked` argument it
    rises up to some value and falls from there, in a `dipped` one the other way round. `breaks` are values of an
    argument that it jumps at.
    """

    rising: tuple[str, ...] = ()
    falling: tuple[str, ...] = ()
    peaked: tuple[str, ...] = ()
    dipped: tuple[str, ...] = ()
    breaks: tuple[tuple[str, tuple[float, ...]], ...] = ()
    least: float = -np.inf
    greatest: float = np.inf


def behaves(output: Behaviour = Behaviour(), /, **fields: Behaviour) -> Callable[[F], F]:
    """Declare of a function what `bounds` may rely on; a test samples every declaration.

    Parameters
    ----------
    output : Behaviour
        Of a function with one output.
    **fields : Behaviour
        By field, of a function that gives a named tuple.
    """

    def declare(function: F) -> F:
        function.__dict__["behaviour"] = fields or output
        return function

    return declare


_FEW, _MANY = 17, 5  # points along an argument: where one or two are searched, and where more are
_GOLDEN = (np.sqrt(5.0) - 1.0) / 2.0
_REFINEMENTS = 24  # golden sections of two neighbouring cells: 1e-5 of a cell
_SWEEPS = 6


def bounds(function: Callable[..., Any], intervals: Mapping[str, ArrayLike | tuple[ArrayLike, ArrayLike]]) -> Any:
    """Bounds of a function's values over a box of its arguments.

    Parameters
    ----------
    function : callable
        A function of this room, or any other that is elementwise on keyword arguments.
    intervals : mapping
        By argument, a value, or a tuple of the low and the high end, each a float or an array. A high end that is
        infinite or NaN leaves the argument unbounded above: a censored `>`, or a substance that was not measured.

    Returns
    -------
    Bounds
        Low and high, elementwise; for a function that gives a named tuple, that tuple with `Bounds` in its fields. NaN
        where a low end is NaN, or where nothing is uncertain and the function has no value.

    Raises
    ------
    ValueError
        Where an interval's low end is above its high end.

    Notes
    -----
    - In arguments of which the function declares a direction (`behaves`), the ends decide and the bounds are exact.
    - In one with a single turning point, that is found by golden section, and what its precision may hide is added.
    - In the others the box is searched: points along each argument in turn from several starts, refined by golden
      section until nothing changes. That finds the ends wherever the function is monotone, declared or not, and the
      turning points of a function as smooth as those of water chemistry; it is no proof for an arbitrary function.
    - An unbounded argument gives the end of the function's range, and so does a corner in which it has no value (0/0).
    """
    box = _box(intervals)
    first = function(**{name: low for name, (low, _) in box.items()})
    names = getattr(first, "_fields", None)
    if names is None:
        return _bounds(function, box, getattr(function, "behaviour", Behaviour()))
    declared = getattr(function, "behaviour", {})
    return type(first)(*(_bounds(_field(function, name), box, declared.get(name, Behaviour())) for name in names))


def _field(function: Callable[..., Any], name: str) -> Callable[..., Any]:
    return lambda **point: getattr(function(**point), name)


def _box(intervals: Mapping[str, ArrayLike | tuple[ArrayLike, ArrayLike]]) -> dict[str, tuple[Array, Array]]:
    """Ends of every argument as arrays, an unknown high end as infinity."""
    box = {}
    for name, given in intervals.items():
        low, high = arrays(*given) if isinstance(given, tuple) else arrays(given, given)
        high = np.where(np.isnan(high) & ~np.isnan(low), np.inf, high)
        if np.any(low > high):
            raise ValueError(f"the interval of {name} has its low end above its high end")
        box[name] = (low, high)
    return box


def _bounds(function: Callable[..., Any], box: Mapping[str, tuple[Array, Array]], known: Behaviour) -> Bounds:
    """Bounds of one output."""
    ends = [end for pair in box.values() for end in pair]
    shape = np.broadcast_shapes(*(end.shape for end in ends))
    free = [name for name, (low, high) in box.items() if np.any(low != high) and not np.all(np.isnan(low))]
    if not free:
        value = function(**{name: low for name, (low, _) in box.items()})
        return Bounds(restored(value), restored(value))
    uncertain = np.zeros(shape, dtype=bool)
    for name in free:
        uncertain = uncertain | (box[name][0] != box[name][1])
    missing = np.zeros(shape, dtype=bool)
    for low, _ in box.values():
        missing = missing | np.isnan(low)

    def end(sign: float) -> Any:
        found = sign * _greatest(lambda point: sign * _value(function, point, shape), box, free, known, sign)
        limit = known.greatest if sign > 0.0 else known.least
        found = np.where(np.isnan(found) & uncertain, limit, found)
        return restored(np.where(missing, np.nan, np.clip(found, known.least, known.greatest)))

    return Bounds(end(-1.0), end(1.0))


def _value(function: Callable[..., Any], point: Point, shape: tuple[int, ...]) -> Array:
    with np.errstate(all="ignore"):
        return np.broadcast_to(np.asarray(function(**point), dtype=np.float64), shape)


def _greatest(
    value: Callable[[Point], Array],
    box: Mapping[str, tuple[Array, Array]],
    free: list[str],
    known: Behaviour,
    sign: float,
) -> Array:
    """Greatest value of the (signed) function over the box; NaN where an unbounded argument leaves it open."""
    upward, downward, ended = known.rising, known.falling, known.dipped
    if sign < 0.0:
        upward, downward, ended = known.falling, known.rising, known.peaked
    point: dict[str, ArrayLike] = {name: low for name, (low, _) in box.items()}
    opened = np.zeros((), dtype=bool)
    searched: list[str] = []
    turned: list[str] = []
    for name in free:
        low, high = box[name]
        bounded = np.where(np.isinf(high), low, high)
        if name in upward:
            point[name] = bounded
            opened = opened | np.isinf(high)
        elif name in downward:
            point[name] = low
        else:
            # What dips is greatest at an end; everything else somewhere between.
            (turned if name in ended else searched).append(name)
            opened = opened | (np.isinf(high) & (low != high))
    finite = {name: (box[name][0], np.where(np.isinf(box[name][1]), box[name][0], box[name][1])) for name in box}
    best: Array | None = None
    for corner in product((0, 1), repeat=len(turned)):
        at = {**point, **{name: finite[name][side] for name, side in zip(turned, corner, strict=True)}}
        here = _search(value, finite, searched, at, dict(known.breaks)) if searched else value(at)
        best = here if best is None else np.maximum(best, here)
    assert best is not None
    return np.where(opened, np.nan, best)


def _search(
    value: Callable[[Point], Array],
    box: Mapping[str, tuple[Array, Array]],
    names: list[str],
    point: Point,
    breaks: Mapping[str, tuple[float, ...]],
) -> Array:
    """Greatest value found along the named arguments, from the box's middle and from two of its corners."""
    points = _FEW if len(names) <= 2 else _MANY
    starts = (0.5,) if len(names) == 1 else (0.5, 0.0, 1.0)
    best: Array | None = None
    for share in starts:
        at = {**point, **{name: box[name][0] + share * (box[name][1] - box[name][0]) for name in names}}
        reached = value(at)
        for _ in range(1 if len(names) == 1 else _SWEEPS):
            before = reached
            for name in names:
                at[name], reached = _along(value, at, name, *box[name], points, breaks.get(name, ()))
            if not np.any(reached > before):
                break  # no argument, turned alone, leads further up
        best = reached if best is None else np.fmax(best, reached)
    assert best is not None
    return best


def _along(
    value: Callable[[Point], Array],
    point: Point,
    name: str,
    low: Array,
    high: Array,
    points: int,
    breaks: tuple[float, ...],
) -> tuple[Array, Array]:
    """Where along one argument the function is greatest, and how great it may be there."""

    def at(place: ArrayLike) -> Array:
        found = value({**point, name: place})
        return np.where(np.isnan(found), -np.inf, found)

    shape = at(point[name]).shape
    width = high - low
    places = [np.broadcast_to(low + width * (i / (points - 1)), shape) for i in range(points)]
    found = np.stack([at(place) for place in places])
    which = np.argmax(found, axis=0)
    best = np.max(found, axis=0)
    where = np.take_along_axis(np.stack(places), which[None], axis=0)[0]
    # At an end there is nothing to refine: its neighbour is lower, and beyond it the box is left.
    inner = (which > 0) & (which < points - 1) & np.isfinite(best)
    if np.any(inner):
        cell = width / (points - 1) * inner
        left, right = where - cell, where + cell
        for _ in range(_REFINEMENTS):
            one, other = right - _GOLDEN * (right - left), left + _GOLDEN * (right - left)
            lower = at(one) < at(other)
            left, right = np.where(lower, one, left), np.where(lower, right, other)
        middle = (left + right) / 2.0
        refined = at(middle)
        # Within the last bracket a smooth peak lies no higher above the middle than the ends lie below it. At a jump
        # those ends tell nothing: no more is added than a small part of what the peak stands above its cells.
        with np.errstate(invalid="ignore"):
            hidden = refined - np.minimum(at(left), at(right))
            hidden = np.minimum(hidden, 1e-4 * (refined - np.minimum(at(where - cell), at(where + cell))))
        better = inner & (refined >= best)
        where = np.where(better, middle, where)
        best = np.where(better, refined + np.where(np.isfinite(hidden), hidden, 0.0), best)
    # Where the argument stands already, and both sides of a jump, may be better than all that.
    for place in (np.asarray(point[name]), *(np.clip(side, low, high) for edge in breaks for side in _sides(edge))):
        found_here = at(place)
        kept = found_here > best
        where, best = np.where(kept, place, where), np.where(kept, found_here, best)
    return where, np.where(np.isneginf(best), np.nan, best)


def _sides(edge: float) -> tuple[float, float]:
    return edge, float(np.nextafter(edge, np.inf))
