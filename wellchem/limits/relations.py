"""What one analyte's amount says of another's, and the usual units of a number printed without one: tables."""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import inf

from wellchem.reference import folder


@dataclass(frozen=True)
class Relation:
    """The amount of `analyte` lies between the sums of `least` and of `most` times the amounts of the members.

    With negative coefficients it is the first member's less the others'. `decided_only`: where it decides nothing it is
    not told, since nobody measured the analyte.
    """

    analyte: str
    members: tuple[str, ...]
    least: tuple[float, ...]
    most: tuple[float, ...]
    decided_only: bool


@cache
def relations() -> tuple[Relation, ...]:
    """The relations in order: of two for one analyte, the first that a sample's results allow is used."""
    return tuple(
        Relation(
            analyte=row["analyte"],
            members=tuple(row["members"].split(";")),
            least=tuple(map(float, row["least"].split(";"))),
            most=tuple(float(part) if part else inf for part in row["most"].split(";")),
            decided_only=row["told"] == "decided",
        )
        for row in _rows("relations.csv")
    )


@cache
def usual_units() -> Mapping[str, tuple[str, ...]]:
    """Units that laboratories usually print, by analyte or by group of analytes."""
    return {row["of"]: tuple(row["units"].split(";")) for row in _rows("usual_units.csv")}


def _rows(name: str) -> tuple[Mapping[str, str], ...]:
    with (folder() / name).open(encoding="utf-8", newline="") as lines:
        return tuple(csv.DictReader(lines))
