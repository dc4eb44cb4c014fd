"""What a function may give over a box of inputs: bounds of computed values from bounds of the inputs."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import partial
from itertools import product
from math import prod
from typing import Any, NamedTuple, TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

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


def behaves(output: Behaviour = Behaviour(), /, **outputs: Behaviour) -> Callable[[F], F]:
    """Declare of a function what `bounds` may rely on; a test samples every declaration.

    Parameters
    ----------
    output : Behaviour
        Of a function with one output.
    **outputs : Behaviour
        By field, of a function that gives a named tuple or a dataclass.
    """

    def declare(function: F) -> F:
        function.__dict__["behaviour"] = outputs or output
        return function

    return declare


_FEW, _MANY = 17, 5  # points along an argument: where one or two are searched, and where more are
_GOLDEN = (np.sqrt(5.0) - 1.0) / 2.0
_REFINEMENTS = 24  # golden sections of two neighbouring cells: 1e-5 of a cell
_SWEEPS = 6
_TURNED = 4  # arguments whose ends are tried in every combination
_SAMPLES = 64
_MARGIN = 0.01
_SETTLED = 1e-9  # relative gain of a sweep that is none
_AT_ONCE = 2**16  # values that are asked of the function in one call


def bounds(function: Callable[..., Any], intervals: Mapping[str, ArrayLike | tuple[ArrayLike, ArrayLike] | str]) -> Any:
    """Bounds of a function's values over a box of its arguments.

    Parameters
    ----------
    function : callable
        A function of this room, or any other that is elementwise on keyword arguments.
    intervals : mapping
        By argument, a value, or a tuple of the low and the high end, each a float or an array. A high end that is
        infinite or NaN leaves the argument unbounded above: a censored `>`, or a substance that was not measured. Words
        (a basis, a criterion) are passed on as they are.

    Returns
    -------
    Bounds
        Low and high, elementwise; for a function that gives a named tuple or a dataclass, that with `Bounds` in its
        fields. NaN where a low end is NaN, or where nothing is uncertain and the function has no value.

    Raises
    ------
    ValueError
        Where an interval's low end is above its high end.

    Notes
    -----
    - In arguments of which the function declares a direction (`behaves`), the ends decide and the bounds are exact.
    - In one with a single turning point, that is found by golden section, and what its precision may hide is added.
    - In the others the box is searched: points along each argument in turn, from its middle and from the best of some
      samples, refined by golden section until nothing changes. That finds the ends wherever the function is monotone,
      declared or not, and the turning points of a function as smooth as those of water chemistry; it is no proof for an
      arbitrary function. Where several arguments are searched, 1 % of what the samples differ by is added.
    - An unbounded argument gives the end of the function's range, and so does a corner in which it has no value (0/0).
    """
    words = {name: given for name, given in intervals.items() if isinstance(given, str)}
    known, function = getattr(function, "behaviour", None), partial(function, **words)
    box = _box({name: given for name, given in intervals.items() if not isinstance(given, str)})
    if isinstance(known, Behaviour):
        return _bounds(function, box, known)
    # One water shows whether the function has one output or several.
    first = function(**{name: low.reshape(-1)[0] if low.size else np.nan for name, (low, _) in box.items()})
    names = [field.name for field in fields(first)] if is_dataclass(first) else getattr(first, "_fields", ())
    if not names:
        return _bounds(function, box, Behaviour())
    declared: dict[str, Behaviour] = known or {}
    return type(first)(
        **{name: _bounds(_field(function, name), box, declared.get(name, Behaviour())) for name in names}
    )


def _field(function: Callable[..., Any], name: str) -> Callable[..., Any]:
    return lambda **point: getattr(function(**point), name)


def _box(intervals: Mapping[str, ArrayLike | tuple[ArrayLike, ArrayLike]]) -> dict[str, tuple[Array, Array]]:
    """Ends of every argument as arrays, an unknown high end as infinity."""
    box = {}
    for name, given in intervals.items():
        low, high = arrays(*given) if isinstance(given, tuple) else arrays(given, given)
        if not (low <= high).all():
            high = np.where(np.isnan(high) & ~np.isnan(low), np.inf, high)
            if np.any(low > high):
                raise ValueError(f"the interval of {name} has its low end above its high end")
        box[name] = (low, high)
    return box


def _bounds(function: Callable[..., Any], box: Mapping[str, tuple[Array, Array]], known: Behaviour) -> Bounds:
    """Bounds of one output: what is certain is computed as it is, the rest is searched for both ends."""
    shape = np.broadcast_shapes(*(end.shape for pair in box.values() for end in pair))
    if (directed := _directed(function, box, known, shape)) is not None:
        return directed
    flat = {name: (_flat(low, shape), _flat(high, shape)) for name, (low, high) in box.items()}
    size = int(np.prod(shape))
    uncertain, missing = np.zeros(size, dtype=bool), np.zeros(size, dtype=bool)
    for low, high in flat.values():
        uncertain |= low != high
        missing |= np.isnan(low)
    chosen = uncertain & ~missing
    low_end, high_end = np.empty(size), np.empty(size)
    if not np.all(chosen):
        certain = _value(function, {name: low for name, (low, _) in flat.items()})
        low_end[:] = high_end[:] = np.where(missing, np.nan, certain)
    if np.any(chosen):
        part = {name: (_some(low, chosen), _some(high, chosen)) for name, (low, high) in flat.items()}
        least, greatest = _extremes(function, part, known)
        for ends, found, limit in ((low_end, least, known.least), (high_end, greatest, known.greatest)):
            ends[chosen] = np.clip(np.where(np.isnan(found), limit, found), known.least, known.greatest)
    return Bounds(restored(low_end.reshape(shape)), restored(high_end.reshape(shape)))


def _directed(
    function: Callable[..., Any], box: Mapping[str, tuple[Array, Array]], known: Behaviour, shape: tuple[int, ...]
) -> Bounds | None:
    """Bounds of a few waters where whatever is uncertain has a direction and two ends: both corners, in one call.

    None where that is not so, or a corner has no value in the function's range.
    """
    if 2 * prod(shape) > _AT_ONCE:
        return None
    corners: dict[str, Array] = {}
    for name, (low, high) in box.items():
        exact = low == high
        if exact.all():
            corners[name] = low
            continue
        if not (exact | np.isfinite(high - low)).all() or name not in (*known.rising, *known.falling):
            return None
        ends = (low, high) if name in known.rising else (high, low)
        corners[name] = np.array([np.broadcast_to(end, shape) if end.shape != shape else end for end in ends])
    if all(corner.ndim <= len(shape) for corner in corners.values()):
        return None
    values = _value(function, corners)
    if not ((values >= known.least) & (values <= known.greatest)).all():
        return None
    return Bounds(restored(values[0]), restored(values[1]))


def _flat(end: Array, shape: tuple[int, ...]) -> Array:
    """An end in a row; one for all waters stays a number."""
    return end if end.ndim == 0 else np.broadcast_to(end, shape).reshape(-1)


def _some(values: ArrayLike, chosen: NDArray[np.bool_]) -> Array:
    given = np.asarray(values, dtype=np.float64)
    return given[..., chosen] if given.ndim else given


def _value(function: Callable[..., Any], point: Point) -> Array:
    """The function's value in the shape that its arguments make."""
    with np.errstate(all="ignore"):
        found = np.asarray(function(**point), dtype=np.float64)
    return np.broadcast_to(found, np.broadcast_shapes(*(np.shape(value) for value in point.values())))


def _signed(function: Callable[..., Any], sign: float) -> Callable[[Point], Array]:
    """The function or its opposite, so that the least value is the greatest of something."""
    return lambda point: sign * _value(function, point)


@dataclass(frozen=True)
class _Sought:
    """What leads to one end of a function's values: the arguments that are settled, and those still to be searched."""

    point: Point
    box: Mapping[str, tuple[Array, Array]]
    opened: NDArray[np.bool_]  # where an unbounded argument leaves the end open
    cornered: bool  # whether the end is at a corner of the box

    @property
    def corners(self) -> list[Point]:
        """The corners that the arguments of the box make."""
        sides = product((0, 1), repeat=len(self.box))
        return [
            {**self.point, **{name: self.box[name][side] for name, side in zip(self.box, one, strict=True)}}
            for one in sides
        ]


def _extremes(
    function: Callable[..., Any], box: Mapping[str, tuple[Array, Array]], known: Behaviour
) -> tuple[Array, Array]:
    """Least and greatest value over the box; NaN where an unbounded argument leaves one open.

    Corners of both ends are asked of the function together: for a single water a call costs more than its values.
    """
    sought = {sign: _sought(box, known, sign) for sign in (-1.0, 1.0)}
    corners = [(sign, corner) for sign, one in sought.items() if one.cornered for corner in one.corners]
    values = iter(_together(function, [corner for _, corner in corners], sought[1.0].opened.size))
    found = {sign: [next(values) for other, _ in corners if other == sign] for sign in sought}
    ends = []
    for sign, one in sought.items():
        if one.cornered:
            end = np.asarray((np.minimum if sign < 0.0 else np.maximum).reduce(found[sign]))
        else:
            surely = set(one.box) <= {*known.peaked, *known.dipped}
            end = sign * _search(_signed(function, sign), one.box, one.point, dict(known.breaks), surely)
        ends.append(np.where(one.opened, np.nan, end))
    return ends[0], ends[1]


def _together(function: Callable[..., Any], points: list[Point], size: int) -> Array:
    """Values at several points, a row each, by as few calls as memory allows."""
    if size * len(points) > _AT_ONCE:
        return np.array([np.broadcast_to(_value(function, point), size) for point in points])
    stacked: dict[str, Array] = {}
    for name in points[0] if points else ():
        given = [np.asarray(point[name]) for point in points]
        same = all(one is given[0] for one in given)
        stacked[name] = given[0] if same else np.stack([np.broadcast_to(one, size) for one in given])
    return np.broadcast_to(_value(function, stacked), (len(points), size)) if points else np.empty((0, size))


def _sought(box: Mapping[str, tuple[Array, Array]], known: Behaviour, sign: float) -> _Sought:
    """What the declared directions settle of the way to the greatest (sign 1) or the least value (sign -1)."""
    upward, downward, ended = known.rising, known.falling, known.dipped
    if sign < 0.0:
        upward, downward, ended = known.falling, known.rising, known.peaked
    size = max(end.size for pair in box.values() for end in pair)
    point: dict[str, ArrayLike] = {name: low for name, (low, _) in box.items()}
    finite: dict[str, tuple[Array, Array]] = {}
    opened = np.zeros(size, dtype=bool)
    for name, (low, high) in box.items():
        if name in downward or not np.any(low != high):
            continue
        # The low end stands in for an infinite one, whose waters are left open anyhow.
        finite[name] = np.broadcast_to(low, size), np.broadcast_to(np.where(np.isinf(high), low, high), size)
        opened |= np.isinf(high) & (low != high)
        if name in upward:
            point[name] = finite.pop(name)[1]
    # What dips is greatest at an end.
    return _Sought(point, finite, opened, set(finite) <= set(ended) and len(finite) <= _TURNED)


def _search(
    value: Callable[[Point], Array],
    box: Mapping[str, tuple[Array, Array]],
    point: Point,
    breaks: Mapping[str, tuple[float, ...]],
    surely: bool,
) -> Array:
    """Greatest value found along the box's arguments in turn, until no argument leads further up."""
    middle = {**point, **{name: (low + high) / 2.0 for name, (low, high) in box.items()}}
    if len(box) == 1:
        ((name, (low, high)),) = box.items()
        return _along(value, middle, name, low, high, _FEW, breaks.get(name, ()), True)[1]
    best = _ascent(value, box, middle, breaks)
    if surely:
        return best
    start, spread = _sampled(value, box, middle)
    best = np.fmax(best, _ascent(value, box, start, breaks))
    # What a search in several directions may have missed: a small part of what the samples differ by.
    return np.where(np.isfinite(spread), best + _MARGIN * spread, best)


def _ascent(
    value: Callable[[Point], Array],
    box: Mapping[str, tuple[Array, Array]],
    start: Point,
    breaks: Mapping[str, tuple[float, ...]],
) -> Array:
    """Value that is reached from a start by going up along one argument after the other."""
    points = _FEW if len(box) <= 2 else _MANY
    at, reached = dict(start), value(start)
    # By coarse steps as far as they lead, and only then to the tops between them.
    for refine in (False, True):
        for _ in range(_SWEEPS):
            before = reached
            for name, (low, high) in box.items():
                at[name], reached = _along(value, at, name, low, high, points, breaks.get(name, ()), refine)
            with np.errstate(invalid="ignore"):
                if not np.any(reached - before > _SETTLED * np.abs(reached)):
                    break
    return reached


def _sampled(
    value: Callable[[Point], Array], box: Mapping[str, tuple[Array, Array]], middle: Point
) -> tuple[dict[str, ArrayLike], Array]:
    """The best of some points and corners of the box, always the same, and how much their values differ."""
    drawn = np.random.default_rng(0).uniform(size=(_SAMPLES, len(box)))
    drawn[::2] = np.round(drawn[::2])
    best = dict(middle)
    top = bottom = value(middle)
    for shares in drawn:
        ends = zip(box.items(), shares, strict=True)
        here = {name: low + share * (high - low) for (name, (low, high)), share in ends}
        found = value({**middle, **here})
        higher = (found > top) | np.isnan(top)
        best |= {name: np.where(higher, place, best[name]) for name, place in here.items()}
        top, bottom = np.fmax(top, found), np.fmin(bottom, found)
    with np.errstate(invalid="ignore"):
        return best, top - bottom


def _along(
    value: Callable[[Point], Array],
    point: Point,
    name: str,
    low: Array,
    high: Array,
    points: int,
    breaks: tuple[float, ...],
    refine: bool,
) -> tuple[Array, Array]:
    """Where along one argument the function is greatest, and how great it may be there."""

    def at(place: ArrayLike, chosen: NDArray[np.bool_] | None = None) -> Array:
        others = point if chosen is None else {other: _some(values, chosen) for other, values in point.items()}
        found = value({**others, name: place})
        return np.where(np.isnan(found), -np.inf, found)

    width = high - low
    edges = [np.clip(side, low, high) for edge in breaks for side in (edge, np.nextafter(edge, np.inf))]
    # Evenly spaced places first; then both sides of every jump, and where the argument stands already.
    spaced = [low + width * (i / (points - 1)) for i in range(points - 1)] + [high]
    places = np.stack([*spaced, *edges, np.broadcast_to(point[name], low.shape)])
    found = at(places) if places.size <= _AT_ONCE else np.stack([at(place) for place in places])
    # The last of equals would be the place it stands at: the first keeps to the ends.
    which = np.argmax(found, axis=0)[None]
    where = np.take_along_axis(places, which, axis=0)[0]
    best = np.take_along_axis(found, which, axis=0)[0]
    # At an end there is nothing to refine: its neighbour is lower, and beyond it the box is left.
    inner = (where > low) & (where < high) & np.isfinite(best)
    if refine and np.any(inner):
        top, above = _refined(
            lambda place: at(place, inner), where[inner], (width / (points - 1))[inner], low[inner], high[inner]
        )
        better = above >= best[inner]
        where[inner] = np.where(better, top, where[inner])
        best[inner] = np.where(better, above, best[inner])
    return where, np.where(np.isneginf(best), np.nan, best)


def _refined(at: Callable[[Array], Array], where: Array, cell: Array, low: Array, high: Array) -> tuple[Array, Array]:
    """Top of the peak that lies within a cell of a place, and what it may be at most."""
    left, right = np.maximum(where - cell, low), np.minimum(where + cell, high)
    beside = np.minimum(at(left), at(right))
    for _ in range(_REFINEMENTS):
        one, other = right - _GOLDEN * (right - left), left + _GOLDEN * (right - left)
        lower = at(one) < at(other)
        left, right = np.where(lower, one, left), np.where(lower, right, other)
    middle = (left + right) / 2.0
    top = at(middle)
    # Within the last bracket a smooth peak lies no higher above the middle than the ends lie below it. At a jump those
    # ends tell nothing: no more is added than a small part of what the peak stands above its cells.
    with np.errstate(invalid="ignore"):
        hidden = np.minimum(top - np.minimum(at(left), at(right)), 1e-4 * (top - beside))
    return middle, top + np.where(np.isfinite(hidden), hidden, 0.0)
