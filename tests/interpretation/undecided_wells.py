"""Undecided verdicts of every invented well, counted by their reason. Run as a program for the table.

PYTHONPATH=.:tests python tests/interpretation/undecided_wells.py
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cache

from interpretation import wells_more_reader, wells_reader

from wellchem.models.finding import Interpretation


def findings() -> Iterator[tuple[str, Interpretation]]:
    """Every invented well with its interpretation."""
    for name in wells_reader.NAMES:
        yield name, wells_reader.Well(name).interpreted()
    for name in wells_more_reader.NAMES:
        yield name, wells_more_reader.found(name)


def reason_of(text: str) -> str:
    """The reason without the names that it carries (`members_missing=bromate`)."""
    return text.partition("=")[0].partition(":")[0]


@cache
def counted() -> dict[str, tuple[int, int, int]]:
    """By reason: undecided verdicts, those of them on health limits, wells; a verdict may have several reasons."""
    verdicts, health, wells = Counter[str](), Counter[str](), Counter[str]()
    for _, finding in findings():
        seen = set[str]()
        for one in finding.comparisons:
            if one.verdict != "undecided":
                continue
            reasons = {reason_of(text) for text in one.reasons} or {"none given"}
            verdicts.update(reasons)
            health.update(reasons if one.limit.kind == "health" else ())
            seen |= reasons
        wells.update(seen)
    return {reason: (verdicts[reason], health[reason], wells[reason]) for reason, _ in verdicts.most_common()}


def main() -> None:
    """Print the table."""
    every = [one for _, finding in findings() for one in finding.comparisons]
    undecided = sum(one.verdict == "undecided" for one in every)
    print(f"{undecided:,} of {len(every):,} verdicts are undecided")
    print(f"{'reason':26}{'verdicts':>10}{'of health':>11}{'wells':>7}")
    for reason, (verdicts, health, wells) in counted().items():
        print(f"{reason:26}{verdicts:10}{health:11}{wells:7}")


if __name__ == "__main__":
    main()
