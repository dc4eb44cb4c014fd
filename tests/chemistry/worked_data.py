"""The published examples of `worked/`, as typed rows."""

import csv
from dataclasses import dataclass
from functools import cache
from pathlib import Path

Value = float | bool | str | list[float] | list[str]
Inputs = dict[str, float | str]
FOLDER = Path(__file__).parent / "worked"


@dataclass(frozen=True)
class Expected:
    """One published or recalculated value: where it is from, and how close to it one must come."""

    example: str
    name: str
    value: Value
    tolerance: float | None
    relative_tolerance: float | None
    source: str
    checked: str


def _parsed(text: str) -> Value:
    if text in ("true", "false"):
        return text == "true"
    if "|" in text:
        parts = text.split("|")
        try:
            return [float(part) for part in parts]
        except ValueError:
            return parts
    try:
        return float(text)
    except ValueError:
        return text


def _rows(name: str) -> list[dict[str, str]]:
    with (FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


@cache
def examples() -> dict[str, dict[str, str]]:
    return {row["example"]: row for row in _rows("examples")}


@cache
def inputs(example: str) -> Inputs:
    found: Inputs = {}
    for row in _rows("values"):
        if row["example"] == example and row["role"] == "input":
            value = _parsed(row["value"])
            found[row["name"]] = value if isinstance(value, float) else row["value"]
    return found


@cache
def expected() -> tuple[Expected, ...]:
    found = []
    for row in _rows("values"):
        if row["role"] == "expected":
            origin = examples()[row["example"]]
            source = ", ".join(filter(None, (origin["author"], origin["title"], origin["year"], origin["place"])))
            found.append(
                Expected(
                    row["example"],
                    row["name"],
                    _parsed(row["value"]),
                    float(row["tolerance"]) if row["tolerance"] else None,
                    float(row["relative_tolerance"]) if row["relative_tolerance"] else None,
                    source,
                    row["checked"],
                )
            )
    return tuple(found)
