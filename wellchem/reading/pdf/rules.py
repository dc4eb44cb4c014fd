"""The drawn rules of a page, and the lattices of cells that crossing rules make."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from wellchem.reading.pdf.chars import Frame

SNAP = 3.0  # points within which rules are one, or meet
THIN = 2.5  # points up to which a filled box is a rule
OPEN = 12.0  # points that rules reach beyond the outermost one across them where a side is left open
SHORT = 6.0  # points under which a rule is an ornament

Segments = NDArray[np.float64]  # rows of: position across, begin, end along


@dataclass(frozen=True)
class Rules:
    """Horizontal rules (y, x0, x1) and vertical rules (x, top, bottom) in the page's upright frame."""

    horizontal: Segments
    vertical: Segments


@dataclass(frozen=True)
class Lattice:
    """Cells between crossing rules: `xs` and `ys` the rules' places, `cell[i, j]` which cell the field i, j belongs to.

    Fields with no rule between them are one cell, numbered after its first field (row by row).
    """

    xs: NDArray[np.float64]
    ys: NDArray[np.float64]
    cell: NDArray[np.int32]

    @property
    def box(self) -> tuple[float, float, float, float]:
        return float(self.xs[0]), float(self.ys[0]), float(self.xs[-1]), float(self.ys[-1])

    def holds(self, x: float, y: float) -> bool:
        x0, top, x1, bottom = self.box
        return x0 <= x <= x1 and top <= y <= bottom

    def field(self, x: float, y: float) -> tuple[int, int]:
        """Row and column of the field at a point inside."""
        row = int(np.clip(np.searchsorted(self.ys, y, "right") - 1, 0, len(self.ys) - 2))
        column = int(np.clip(np.searchsorted(self.xs, x, "right") - 1, 0, len(self.xs) - 2))
        return row, column


def page_rules(shapes: Iterable[Any], frame: Frame, left: float, top: float) -> Rules:
    """Rules among a page's shapes (pdfminer's LTLine, LTRect, LTCurve): lines, thin boxes, the edges of boxes."""
    boxes: list[tuple[float, float, float, float]] = []
    across, down = (frame.height, frame.width) if frame.turns % 2 else (frame.width, frame.height)
    for shape in shapes:
        points = shape.pts
        thin = min(shape.x1 - shape.x0, shape.y1 - shape.y0) <= THIN  # a border with mitred ends is a curve too
        if shape.__class__.__name__ == "LTCurve" and not thin:
            # Only paths of straight pieces along the axes: a box with cut corners, a polyline.
            pairs = list(pairwise(points))
            straight = [(a, b) for a, b in pairs if abs(a[0] - b[0]) < 0.5 or abs(a[1] - b[1]) < 0.5]
            if len(straight) < len(pairs) or len(pairs) > 40:
                continue
            ends = straight
        else:
            ends = [((shape.x0, shape.y0), (shape.x1, shape.y1))]
        for (x_a, y_a), (x_b, y_b) in ends:
            box = frame.into(
                min(x_a, x_b) + left, frame.height - max(y_a, y_b) + top,
                max(x_a, x_b) + left, frame.height - min(y_a, y_b) + top,
            )  # fmt: skip
            if box[2] - box[0] > 0.97 * across and box[3] - box[1] > 0.97 * down:
                continue  # the page's own background
            boxes.append(box)
    horizontal: list[tuple[float, float, float]] = []
    vertical: list[tuple[float, float, float]] = []
    for x0, y0, x1, y1 in boxes:
        if y1 - y0 <= THIN:
            horizontal.append(((y0 + y1) / 2, x0, x1))
        elif x1 - x0 <= THIN:
            vertical.append(((x0 + x1) / 2, y0, y1))
        else:
            horizontal += [(y0, x0, x1), (y1, x0, x1)]
            vertical += [(x0, y0, y1), (x1, y0, y1)]
    return Rules(_merged(horizontal), _merged(vertical))


def _merged(segments: list[tuple[float, float, float]]) -> Segments:
    """Rules at one place put together where they touch; ornaments left out."""
    if not segments:
        return np.empty((0, 3))
    table = np.array(segments)
    table = table[np.argsort(table[:, 0], kind="stable")]
    # Places within the snap of each other's mean are one.
    places = table[:, 0].copy()
    begin = 0
    for at in range(1, len(places) + 1):
        if at == len(places) or table[at, 0] - table[begin, 0] > SNAP:
            places[begin:at] = table[begin:at, 0].mean()
            begin = at
    table[:, 0] = places
    table = table[np.lexsort((table[:, 1], table[:, 0]))]
    merged: list[list[float]] = []
    for place, start, end in table.tolist():
        last = merged[-1] if merged else None
        if last is not None and last[0] == place and start <= last[2] + SNAP:
            last[2] = max(last[2], end)
        else:
            merged.append([place, start, end])
    found = np.array(merged)
    return np.asarray(found[found[:, 2] - found[:, 1] > SHORT])


def lattices(rules: Rules) -> list[Lattice]:
    """Lattices of the rules that cross or meet each other, from top to bottom."""
    h, v = rules.horizontal, rules.vertical
    if len(h) < 2 or len(v) < 2:
        return []
    meet = (
        (v[None, :, 0] >= h[:, None, 1] - SNAP) & (v[None, :, 0] <= h[:, None, 2] + SNAP)
        & (h[:, None, 0] >= v[None, :, 1] - SNAP) & (h[:, None, 0] <= v[None, :, 2] + SNAP)
    )  # fmt: skip
    group_h = np.arange(len(h))
    group_v = np.full(len(v), -1)
    # Labels spread along meetings until none changes.
    while True:
        group_v_new = np.where(meet.any(axis=0), np.where(meet, group_h[:, None], len(h)).min(axis=0), -1)
        linked = np.where(meet, np.where(group_v_new < 0, len(h), group_v_new)[None, :], len(h)).min(axis=1)
        group_h_new = np.minimum(group_h, linked)
        if (group_h_new == group_h).all() and (group_v_new == group_v).all():
            break
        group_h, group_v = group_h_new, group_v_new
    found = []
    for group in np.unique(group_v[group_v >= 0]):
        lattice = _lattice(h[group_h == group], v[group_v == group])
        if lattice is not None:
            found.append(lattice)
    found.sort(key=lambda lattice: (lattice.box[1], lattice.box[0]))
    outer = [one for one in found if not any(_inside(one, other) for other in found if other is not one)]
    return [one for one in outer if not any(_alternate(one, other) for other in outer if other is not one)]


def _alternate(one: Lattice, other: Lattice) -> bool:
    """Whether two lattices are shaded bands of one table: a row each, of the same columns, with something between."""
    if len(one.ys) > 2 or len(other.ys) > 2 or len(one.xs) != len(other.xs):
        return False
    return bool(np.abs(one.xs - other.xs).max() <= SNAP)


def _inside(one: Lattice, other: Lattice) -> bool:
    """Whether a lattice lies within one cell's frame of another that has more cells."""
    (x0, top, x1, bottom), outer = one.box, other.box
    return (
        x0 >= outer[0] - SNAP and top >= outer[1] - SNAP and x1 <= outer[2] + SNAP and bottom <= outer[3] + SNAP
        and len(np.unique(one.cell)) <= len(np.unique(other.cell)) and other.cell.size > 1
    )  # fmt: skip


def _with_open_sides(places: NDArray[np.float64], across: Segments) -> NDArray[np.float64]:
    """The places of rules, and those where most of the rules across begin and end beyond the first and last of them.

    A table whose outer sides are not drawn is as wide as its rules.
    """
    begin, end = float(np.median(across[:, 1])), float(np.median(across[:, 2]))
    sides = []
    for side, ends, beyond in (
        (begin, across[:, 1], begin < places[0] - OPEN),
        (end, across[:, 2], end > places[-1] + OPEN),
    ):
        if beyond and (np.abs(ends - side) <= SNAP).mean() > 0.6:
            sides.append(side)
    return np.unique(np.concatenate((places, sides)))


def _lattice(h: Segments, v: Segments) -> Lattice | None:
    """The lattice of rules that belong together; None where they enclose nothing."""
    ys, xs = np.unique(h[:, 0]), np.unique(v[:, 0])
    xs, ys = xs[np.diff(xs, prepend=-np.inf) > SNAP], ys[np.diff(ys, prepend=-np.inf) > SNAP]
    xs, ys = _with_open_sides(xs, h), _with_open_sides(ys, v)
    if len(xs) < 2 or len(ys) < 2:
        return None
    height, width = len(ys) - 1, len(xs) - 1
    middle_x, middle_y = (xs[:-1] + xs[1:]) / 2, (ys[:-1] + ys[1:]) / 2
    parent = np.arange(height * width)

    def root(at: int) -> int:
        while parent[at] != at:
            parent[at] = parent[parent[at]]
            at = int(parent[at])
        return at

    for column in range(1, width):
        there = v[np.abs(v[:, 0] - xs[column]) <= SNAP]
        ruled = ((there[:, 1, None] <= middle_y) & (there[:, 2, None] >= middle_y)).any(axis=0)
        for row in np.flatnonzero(~ruled).tolist():
            parent[root(row * width + column)] = root(row * width + column - 1)
    for row in range(1, height):
        there = h[np.abs(h[:, 0] - ys[row]) <= SNAP]
        ruled = ((there[:, 1, None] <= middle_x) & (there[:, 2, None] >= middle_x)).any(axis=0)
        for column in np.flatnonzero(~ruled).tolist():
            parent[root(row * width + column)] = root((row - 1) * width + column)
    labels = np.array([root(at) for at in range(height * width)], dtype=np.int32)
    first: dict[int, int] = {}
    for at, label in enumerate(labels.tolist()):
        first.setdefault(label, at)
    cell = np.array([first[label] for label in labels.tolist()], dtype=np.int32).reshape(height, width)
    return Lattice(xs, ys, cell)
