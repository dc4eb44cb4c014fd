"""Scores what is read of each layout against its truth, result by result.

Run as a program for the table: `python tests/reports/reports_score.py [NAME ...]`.
"""

from __future__ import annotations

import math
import sys
from collections import Counter
from dataclasses import dataclass, field
from importlib import import_module
from pathlib import Path

from reports_catalog import Layout, Water

import wellchem
from wellchem.models.sample import Result, Sample

# Each module beside this one that states LAYOUTS; a layout's key is its maker's name and its module's.
MAKERS = {
    f"{maker.__name__}_{path.stem.removeprefix('reports_')}": maker
    for path in sorted(Path(__file__).parent.glob("reports_*.py"))
    if path != Path(__file__)
    for maker in getattr(import_module(path.stem), "LAYOUTS", ())
}


@dataclass
class Score:
    """Counts for one file; `lines` says what each fault is."""

    name: str
    truth: int = 0
    right: int = 0
    missing: int = 0
    wrong: int = 0
    extra: int = 0
    leaked: int = 0
    balanced: bool = True
    heads: list[str] = field(default_factory=list)
    lines: list[str] = field(default_factory=list)


def _near(a: float | None, b: float) -> bool:
    """Equal to the digits that reports print; a truth that is not a number says that there is no bound."""
    if math.isnan(b):
        return a is None
    return a is not None and (a == b or abs(a - b) <= 0.006 * max(abs(a), abs(b)))


def _sample_of(
    water: Water, read: list[tuple[Sample, list[Result]]], *, alone: bool
) -> tuple[Sample | None, list[Result]]:
    """The sample that is this water: by its name, then by its day; the only sample where there is one."""
    if alone:
        return read[0]
    named = [pair for pair in read if water.id and pair[0].id == water.id]
    named = named or [pair for pair in read if water.id and pair[0].site == water.id]  # named by its well
    named = named or [pair for pair in read if water.site in (pair[0].id, pair[0].site)]
    dated = [pair for pair in named if str(pair[0].collected)[:10] == water.day]
    return next(iter(dated or named), (None, []))


def _head_faults(water: Water, sample: Sample | None) -> list[str]:
    """What is read of a sample's name, day and laboratory other than printed."""
    if sample is None:
        return [f"no sample {water.id}"]
    read = {
        "name": water.id in ("", sample.id, sample.site) or water.site in (sample.id, sample.site),
        "day": water.day in ("", str(sample.collected)[:10]),
        "laboratory": water.laboratory in ("", sample.laboratory),
    }
    seen = f"{sample.id!r} {sample.site!r} {str(sample.collected)[:10]} {sample.laboratory!r}"
    return [f"{field} of {water.id or water.site}: {seen}" for field, right in read.items() if not right]


def _unread_lines(layout: Layout, told: int) -> list[str]:
    return [f"unread: {told} of {layout.unread}"] if told < layout.unread else []


def score(layout: Layout) -> Score:
    """Each true result is found and right, missing or wrong; what is read beyond the truth is extra."""
    out = Score(layout.name, truth=sum(len(water.items) for water in layout.waters))
    try:
        report = wellchem.read(layout.data, name=f"{layout.name}.{layout.suffix}")
    except wellchem.errors.ReadError as error:
        out.missing = out.truth
        out.lines.append(str(error))
        out.lines += _unread_lines(layout, len(getattr(error, "unread", ())))
        return out
    out.balanced = report.explanation.balanced
    unused = [(sample, list(sample.results)) for sample in report.samples]
    for water in layout.waters:
        sample, results = _sample_of(water, unused, alone=len(unused) == 1 == len(layout.waters))
        out.heads += _head_faults(water, sample)
        if layout.strict and sample is not None and str(sample.collected)[:10] != (water.day or "None"):
            out.lines.append(f"day {water.id}: {water.day or 'none'} read as {str(sample.collected)[:10]}")
        for item in water.items:
            same = (
                [r for r in results if r.analyte == item.analyte and r.printed.name.strip() == item.name]
                or [r for r in results if r.analyte == item.analyte and r.fraction == item.fraction]
                or [r for r in results if r.analyte == item.analyte]
            )
            if not same:
                out.missing += 1
                out.lines.append(f"missing {water.id}: {item.name} {item.value} {item.unit}")
                continue
            best = min(same, key=lambda r: not (_near(r.low, item.low) and _near(r.high, item.high)))
            results.remove(best)
            bounds = _near(best.low, item.low) and _near(best.high, item.high)
            marked = not item.flag or item.flag in (*best.qualifiers, best.measured)
            if bounds and best.fraction == item.fraction and marked:
                out.right += 1
            else:
                out.wrong += 1
                out.lines.append(
                    f"wrong {water.id}: {item.name} {item.value} {item.unit} [{item.low:.4g}, {item.high:.4g}] {item.fraction}"
                    f" read as [{best.low}, {best.high}] {best.fraction} from {best.printed.value!r} {best.printed.unit!r}"
                    f" {best.qualifiers} {best.measured or ''}"
                )
    for sample, results in unused:
        for result in results:
            if result.analyte in layout.extra_ok and result.censoring == "not_reported":
                continue
            out.extra += 1
            out.lines.append(
                f"extra in {sample.id or sample.site!r}: {result.analyte} {result.printed.name!r} {result.printed.value!r}"
            )
    quality = sum(len(sample.results) for sample in report.quality_control)
    if quality < layout.quality_control or (layout.strict and quality != layout.quality_control):
        out.lines.append(f"quality control: {quality} of {layout.quality_control} results")
    out.lines += _unread_lines(layout, len(report.unread))
    if out.missing or out.wrong:
        reasons = Counter(f"{unread.reason}" for unread in report.unread).most_common(4)
        out.lines.append(f"unread: {reasons}")
    return out


def main(names: list[str]) -> None:
    """Print the table; with names, also each fault."""
    scores = [score(maker()) for key, maker in MAKERS.items() if not names or any(name in key for name in names)]
    print(f"{'layout':28}{'truth':>6}{'right':>6}{'miss':>6}{'wrong':>6}{'extra':>6}  accounted")
    for one in scores:
        print(f"{one.name:28}{one.truth:6}{one.right:6}{one.missing:6}{one.wrong:6}{one.extra:6}  {one.balanced}")
        if names or one.lines or one.missing or one.wrong or one.extra or one.heads:
            print("".join(f"    {line}\n" for line in (one.heads + one.lines)[: 40 if names else 6]), end="")
    total = sum(one.truth for one in scores)
    print(f"all: {total} true, {sum(one.right for one in scores) / total:.2%} right", end="")
    print(f", {sum(one.wrong for one in scores)} wrong, {sum(one.extra for one in scores)} extra")


if __name__ == "__main__":
    main(sys.argv[1:])
