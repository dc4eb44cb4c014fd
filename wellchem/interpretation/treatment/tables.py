"""The tables of `reference_limits/practice/treatment`: stages, their answers, feed conditions, removals, constants."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import inf
from types import MappingProxyType

from wellchem.interpretation import practice
from wellchem.models.finding import Source

Ends = tuple[float, float]

ENTRY, TAP = "entry", "tap"
ORGANISMS, GRIT, BEHIND, SITE = "organisms", "grit", "behind:", "site:"


def rows(table: str) -> tuple[Mapping[str, str], ...]:
    """Rows of one table of treatment, as text by column."""
    return practice.rows(f"treatment/{table}")


@cache
def _documents() -> Mapping[str, str]:
    own = {
        row["id"]: ", ".join(part for part in (row["title"], row["publisher"], row["edition"]) if part)
        for row in rows("sources")
    }
    return MappingProxyType({**practice.documents(), **own})


@cache
def _source(document: str, locator: str, checked: str) -> Source:
    return Source(title=_documents()[document], locator=locator, checked=checked)


def source(row: Mapping[str, str]) -> Source:
    """The document behind a row."""
    return _source(row["source"], row["locator"], row["checked"])


def share(amount: float, part: float) -> float:
    """A part of an amount; no part of an amount without bound is nothing."""
    return amount * part if part else 0.0


def ends(low: str, high: str) -> Ends:
    """Two cells as bounds; an empty one is open."""
    return (float(low) if low else -inf, float(high) if high else inf)


@dataclass(frozen=True)
class StageKind:
    """One class of treatment. `pieces` is how much equipment it is, `order` its place in the trade's sequence, `group`
    names alternatives of which a train holds one, `disinfects` whether it is a barrier to bacteria, so that what bears
    no organisms may stand behind it, `gathers` the nuclides that stay on its medium."""

    code: str
    title: str
    place: str
    order: int
    pieces: int
    preference: int
    process: str
    group: str
    disinfects: bool
    silent: bool
    where: str
    why: str
    adds: str
    certification: str
    maintenance: str
    failure: str
    tests: str
    gathers: tuple[str, ...]
    source: Source

    @property
    def oxidant(self) -> bool:
        """Whether an oxidant is fed that turns arsenic III into arsenic V; air alone is too slow for it."""
        return self.process in ("chlorinate", "oxidise_with_feed")


@cache
def stages() -> Mapping[str, StageKind]:
    """The classes of treatment by code, in the trade's order."""
    made = [
        StageKind(
            code=row["code"],
            title=row["title"],
            place=row["place"],
            order=int(row["order"]),
            pieces=int(row["pieces"]),
            preference=int(row["preference"]),
            process=row["process"],
            group=row["group"],
            disinfects=row["disinfects"] == "yes",
            silent=row["silent"] == "yes",
            where=row["where"],
            why=row["why"],
            adds=row["adds"],
            certification=row["certification"],
            maintenance=row["maintenance"],
            failure=row["failure"],
            tests=row["tests"],
            gathers=tuple(filter(None, row["gathers"].split(";"))),
            source=source(row),
        )
        for row in rows("stages")
    ]
    return MappingProxyType({one.code: one for one in sorted(made, key=lambda one: one.order)})


@cache
def answers() -> Mapping[str, frozenset[str]]:
    """Problems that each stage answers."""
    found: dict[str, set[str]] = {}
    for row in rows("answers"):
        found.setdefault(row["stage"], set()).add(row["problem"])
    return MappingProxyType({stage: frozenset(codes) for stage, codes in found.items()})


@cache
def places() -> Mapping[str, str]:
    """Where the water that a problem is judged by is drawn: at every tap (`entry`), or where it is drunk (`tap`)."""
    return MappingProxyType({row["problem"]: row["place"] for row in rows("places")})


@dataclass(frozen=True)
class Condition:
    """A condition on the water that a stage takes in: bounds of a sum of amounts, or a word of its own. `supposed` is
    what is taken where nothing was measured and nothing else is known of the water of a well; `unless` names what goes
    before the condition.
    """

    amounts: tuple[str, ...]
    minimum: float
    maximum: float
    supposed: Ends | None
    unless: str
    text: str
    source: Source


@cache
def conditions(stage: str) -> tuple[Condition, ...]:
    """Feed conditions of a stage."""
    found = []
    for row in rows("feed_conditions"):
        if row["stage"] == stage:
            minimum, maximum = ends(row["minimum"], row["maximum"])
            supposed = ends(row["supposed_low"], row["supposed_high"]) if row["supposed_low"] else None
            amounts = tuple(row["amounts"].split("+"))
            found.append(Condition(amounts, minimum, maximum, supposed, row["unless"], row["text"], source(row)))
    return tuple(found)


@dataclass(frozen=True)
class Removal:
    """Share of an analyte that a stage takes out, least and most; `leaves` is the most that is left of a feed of no
    more than `challenge`."""

    least: float
    most: float
    leaves: float
    challenge: float
    source: Source

    def left(self, amount: Ends) -> Ends:
        """What is left of an amount."""
        low, high = amount
        kept = share(high, 1.0 - self.least)
        if high <= self.challenge:
            kept = min(kept, self.leaves)
        return min(low * (1.0 - self.most), kept), kept


@cache
def _removals() -> Mapping[str, Mapping[str, Removal]]:
    found: dict[str, dict[str, Removal]] = {}
    for row in rows("removals"):
        found.setdefault(row["stage"], {})[row["analyte"]] = Removal(
            least=float(row["low"]) / 100.0,
            most=float(row["high"]) / 100.0,
            leaves=float(row["leaves"]) if row["leaves"] else inf,
            challenge=float(row["challenge"]) if row["challenge"] else -inf,
            source=source(row),
        )
    return MappingProxyType(found)


@cache
def removal(stage: str, analyte: str) -> Removal | None:
    """What a stage takes out of an analyte: its own row, else that of its group; None where it passes unchanged."""
    table = _removals().get(stage, {})
    return table.get(analyte) or table.get(f"@{practice.groups().get(analyte, '')}")


@cache
def plumbing_metals() -> frozenset[str]:
    """Metals that the plumbing gives to the water behind every stage at the entry."""
    return frozenset(row["analyte"] for row in rows("plumbing_metals"))


@dataclass(frozen=True)
class Constant:
    """A constant of sizing with its range."""

    low: float
    high: float
    unit: str
    meaning: str
    source: Source


@cache
def constant(code: str) -> Constant:
    """A constant of `sizing.csv`. Raises KeyError for an unknown code."""
    return _constants()[code]


@cache
def _constants() -> Mapping[str, Constant]:
    return {
        row["code"]: Constant(float(row["low"]), float(row["high"]), row["unit"], row["meaning"], source(row))
        for row in rows("sizing")
    }
