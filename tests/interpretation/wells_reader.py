"""Reads the invented wells: results in canonical units, a household, and what is expected, written before the code."""

import re
import tomllib
from datetime import date
from pathlib import Path

from wellchem.models.codes import Censoring, Fraction
from wellchem.models.household import Household
from wellchem.models.sample import Printed, Result, Sample
from wellchem.vocabulary import bundled

FOLDER = Path(__file__).parent / "wells"
NAMES = sorted(path.stem for path in FOLDER.glob("*.toml"))
_NUMBER = r"[0-9.]+(?:e-?[0-9]+)?"


def result(analyte: str, text: str, **more: object) -> Result:
    """One result from `2.4`, `<0.5`, `>2400`, `0.3 +- 0.1`, `absent`, `present`, in the canonical unit."""
    known = bundled().analytes[analyte]
    count = known.quantity == "count"
    fields: dict[str, object] = {
        "analyte": analyte,
        "unit": known.unit,
        "basis": known.basis,
        "printed": Printed(name=analyte, value=text, unit=known.unit),
    }
    if text in ("absent", "present"):
        fields |= {"censoring": Censoring(text)}
        fields |= {"low": 0.0, "high": 0.0} if text == "absent" else {"low": 1.0, "high": float("inf")}
    elif found := re.fullmatch(rf"<({_NUMBER})", text):
        bound = float(found[1])
        none_found = count and bound <= 1.0
        fields |= {"censoring": Censoring.LEFT, "value": bound, "low": 0.0, "high": 0.0 if none_found else bound}
    elif found := re.fullmatch(rf">({_NUMBER})", text):
        fields |= {"censoring": Censoring.RIGHT, "value": float(found[1]), "low": float(found[1]), "high": float("inf")}
    elif found := re.fullmatch(rf"({_NUMBER}) \+- ({_NUMBER})", text):
        value, spread = float(found[1]), float(found[2])
        fields |= {"value": value, "low": value - spread, "high": value + spread, "uncertainty": spread}
    else:
        value = float(text)
        fields |= {"value": value, "low": value, "high": value}
    return Result(**(fields | more))  # type: ignore[arg-type]


def results(table: dict[str, object]) -> tuple[Result, ...]:
    """The results of a table: text, or text by fraction."""
    made = []
    for analyte, given in table.items():
        if isinstance(given, dict):
            made += [result(analyte, text, fraction=Fraction(fraction)) for fraction, text in given.items()]
        else:
            made.append(result(analyte, str(given)))
    return tuple(made)


class Well:
    """One invented well."""

    def __init__(self, name: str) -> None:
        table = tomllib.loads((FOLDER / f"{name}.toml").read_text(encoding="utf-8"))
        self.name = name
        self.guidance: list[str] = table["guidance"]
        self.on: date = table["on"]
        self.authorities: tuple[str, ...] = tuple(table["authorities"])
        self.household = Household(**table["household"]) if "household" in table else None
        self.sample = Sample(key=name, id=name, results=results(table["results"]), **table["sample"])
        self.expect: dict[str, object] = table["expect"]

    def interpreted(self):
        """The interpretation of it."""
        import wellchem

        return wellchem.interpret(self.sample, self.authorities, on=self.on, household=self.household)
