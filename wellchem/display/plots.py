"""Pictures inside the page, as SVG text: shapes and words carry the meaning, color only repeats it."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Sequence
from html import escape

from wellchem.display import words
from wellchem.models.codes import LimitKind, Verdict
from wellchem.models.finding import Computed, Interpretation
from wellchem.models.limits import Comparison

INK, PAPER, FAINT, STRONG, CALM = "#1b1b1b", "#ffffff", "#b9b9b9", "#a23b00", "#1f5a82"
_ROW = 22


def _svg(width: int, height: int, body: list[str], title: str) -> str:
    return (
        f'<svg viewBox="0 0 {width} {height}" role="img" aria-label="{escape(title)}" '
        f'xmlns="http://www.w3.org/2000/svg"><title>{escape(title)}</title>{"".join(body)}</svg>'
    )


def _text(x: float, y: float, text: str, *, anchor: str = "start", weight: str = "normal", size: int = 12) -> str:
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" font-size="{size}" font-weight="{weight}" '
        f'fill="{INK}">{escape(text)}</text>'
    )


def _line(x1: float, y1: float, x2: float, y2: float, color: str = INK, width: float = 1, dash: str = "") -> str:
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    ends = f'x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}"'
    return f'<line {ends} stroke="{color}" stroke-width="{width}"{dashes}/>'


def shown(finding: Interpretation) -> list[Comparison]:
    """The comparisons of a plot: settled, with a ratio, the strictest health and the strictest other limit of each."""
    order = {LimitKind.HEALTH: 0, LimitKind.AESTHETIC: 1, LimitKind.OPERATIONAL: 1}
    best: dict[tuple[str, object, int], Comparison] = {}
    for item in finding.comparisons:
        if item.limit.kind not in order or not item.condition_settled or item.ratio is None:
            continue
        key = (item.analyte, item.fraction, order[item.limit.kind])
        if key not in best or item.ratio.high > (best[key].ratio or item.ratio).high:
            best[key] = item
    return sorted(best.values(), key=lambda item: (order[item.limit.kind], -(item.ratio.high if item.ratio else 0)))


def against_limits(finding: Interpretation) -> str:
    """Each result as a multiple of its limit on a log axis; a censored value is an open bar over its whole interval."""
    rows = shown(finding)
    if not rows:
        return ""
    left, right, width = 190, 150, 760
    low, high = -3.0, 2.0
    span = width - left - right
    height = _ROW * len(rows) + 52

    def at(ratio: float) -> float:
        power = low if ratio <= 0 else min(max(math.log10(ratio), low), high)
        return left + span * (power - low) / (high - low)

    body = []
    for power in range(int(low), int(high) + 1):
        x = at(10.0**power)
        body.append(_line(x, 22, x, height - 24, INK if power == 0 else FAINT, 1.6 if power == 0 else 0.6))
        body.append(_text(x, height - 8, "the limit" if power == 0 else f"{10.0**power:g} ×", anchor="middle", size=11))
    previous: LimitKind | None = None
    for index, item in enumerate(rows):
        y = 30 + _ROW * index + _ROW / 2
        assert item.ratio is not None
        start, end = at(item.ratio.low), at(item.ratio.high)
        strong = item.verdict in (Verdict.ABOVE, Verdict.BELOW)
        color = STRONG if strong else CALM
        group = "health" if item.limit.kind is LimitKind.HEALTH else "other"
        if previous is not item.limit.kind and index:
            body.append(_line(8, y - _ROW / 2, width - 8, y - _ROW / 2, FAINT, 0.6, "2 3"))
        previous = item.limit.kind
        body.append(_text(left - 8, y + 4, f"{words.label(item.analyte)} ({group})", anchor="end"))
        if end - start > 3:
            body.append(
                f'<rect x="{start:.1f}" y="{y - 5:.1f}" width="{end - start:.1f}" height="10" fill="{PAPER}" '
                f'stroke="{color}" stroke-width="1.5" stroke-dasharray="4 2"/>'
            )
        elif strong:
            body.append(f'<path d="M{end - 6:.1f} {y + 5:.1f} h12 l-6 -11 z" fill="{color}"/>')
        else:
            body.append(f'<circle cx="{end:.1f}" cy="{y:.1f}" r="5" fill="{color}"/>')
        if item.ratio.high > 10**high:
            body.append(_text(left + span + 2, y + 4, "→", size=13))
        body.append(_text(width - right + 16, y + 4, words.verdict(item), weight="bold" if strong else "normal"))
    body.append(_text(left, 14, "triangle: above · circle: within · open bar: all that the report allows", size=11))
    return _svg(width, height, body, "Results as multiples of their limits")


def ions(cations: Sequence[Computed], anions: Sequence[Computed]) -> str:
    """Two bars of milliequivalents per litre, cations over anions, each part named."""

    def middle(item: Computed) -> float:
        known = [bound for bound in (item.low, item.high) if bound is not None and math.isfinite(bound)]
        return sum(known) / len(known) if known else 0.0

    sums = [sum(map(middle, part)) for part in (cations, anions)]
    if min(sums) <= 0:
        return ""
    width, left, height = 760, 70, 132
    scale = (width - left - 60) / max(sums)
    patterns = ("#dcdcdc", "#f4f4f4")
    body = []
    for row, (name, part, total) in enumerate(zip(("cations", "anions"), (cations, anions), sums, strict=True)):
        y = 12 + 60 * row
        body.append(_text(left - 8, y + 20, name, anchor="end"))
        x = float(left)
        for index, item in enumerate(sorted(part, key=middle, reverse=True)):
            wide = middle(item) * scale
            body.append(
                f'<rect x="{x:.1f}" y="{y}" width="{wide:.1f}" height="30" fill="{patterns[index % 2]}" '
                f'stroke="{INK}" stroke-width="0.8"/>'
            )
            if wide > 7 * len(item.label) + 6:
                body.append(_text(x + wide / 2, y + 20, item.label, anchor="middle", size=11))
            elif wide > 3:
                body.append(_text(x + wide / 2, y + 43, item.label[:3], anchor="middle", size=9))
            x += wide
        body.append(_text(x + 6, y + 20, words.number(total), size=12))
    body.append(
        _text(left, height - 4, "milliequivalents per litre; parts too narrow to name are marked below", size=11)
    )
    return _svg(width, height, body, "Cations and anions in milliequivalents per litre")


def train(finding: Interpretation) -> str:
    """The stages in order, each with the water predicted behind it."""
    stages = finding.treatment.stages
    if not stages:
        return ""
    width = 760
    lines = [[f"{item.label}: {words.computed(item)}" for item in stage.after[:4]] for stage in stages]
    body = [_text(20, 20, "raw water", weight="bold")]
    y = 30.0
    for step, (stage, after) in enumerate(zip(stages, lines, strict=True), 1):
        body.append(_line(60, y, 60, y + 16, INK, 1.5))
        body.append(f'<path d="M55 {y + 11:.1f} h10 l-5 7 z" fill="{INK}"/>')
        y += 18
        names = textwrap.wrap(f"{step}. {stage.title}", 44) + textwrap.wrap(stage.where, 52)
        box = 20 + 17 * len(names)
        tall = max(box, 10 + 15 * len(after))
        body.append(
            f'<rect x="20" y="{y:.1f}" width="300" height="{box}" rx="4" fill="{PAPER}" '
            f'stroke="{INK}" stroke-width="1.4"/>'
        )
        bold = len(textwrap.wrap(f"{step}. {stage.title}", 44))
        for index, text in enumerate(names):
            body.append(_text(30, y + 20 + 17 * index, text, weight="bold" if index < bold else "normal", size=12))
        for index, text in enumerate(after):
            body.append(_text(340, y + 14 + 15 * index, text, size=11))
        y += tall
    return _svg(width, int(y + 12), body, "Treatment train with the predicted water behind each stage")
