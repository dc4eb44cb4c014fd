"""The limits' tables as they lie in the repository, and a conversion of units independent of the package."""

import csv
import re
import tomllib
from functools import cache
from pathlib import Path

AUTHORITIES = ("us-epa", "health-canada", "who", "eu", "germany", "england-private", "australia", "new-zealand")
ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "reference_limits"

# Unit as printed, to (dimension, factor to the reference unit of that dimension).
UNITS = {
    "mg/L": ("mass", 1.0),
    "mg/l": ("mass", 1.0),
    "µg/L": ("mass", 1e-3),
    "µg/l": ("mass", 1e-3),
    "ng/L": ("mass", 1e-6),
    "ng/l": ("mass", 1e-6),
    "Bq/L": ("activity", 1.0),
    "Bq/l": ("activity", 1.0),
    "pCi/L": ("activity", 0.037),
    "1/(100 mL)": ("count", 1.0),
    "1/(250 mL)": ("count", 0.4),
    "1/(100 L)": ("count", 1e-3),
    "1/L": ("count", 0.1),
    "1/mL": ("count", 100.0),
    "CFU/l": ("count", 0.1),
    "CFU/L": ("count", 0.1),
    "CFU/(100 mL)": ("count", 1.0),
    "PFU/(100 mL)": ("count", 1.0),
    "NTU": ("turbidity", 1.0),
    "TON": ("odor", 1.0),
    "FTN": ("taste", 1.0),
    "Pt-Co": ("color", 1.0),
    "color units": ("color", 1.0),
    "TCU": ("color", 1.0),
    "HU": ("color", 1.0),
    "mg/l Pt/Co": ("color", 1.0),
    "1": ("number", 1.0),
    "pH units": ("number", 1.0),
    "µS/cm": ("conductance", 1.0),
    "µS/cm at 20 °C": ("conductance", 1.116),  # ISO 7888: 1.116 from 20 to 25 °C
    "°C": ("temperature", 1.0),
    "mSv": ("dose", 1.0),
    "1/m": ("absorbance", 1.0),
    "million fibers/L": ("fibers", 1.0),
    "million fibres/L": ("fibers", 1.0),
}

# Molar masses (g/mol), CIAAW 2024 abridged atomic weights.
MASS = {"N": 14.007, "NO3": 62.004, "NO2": 46.005, "NH4": 18.039, "NH3": 17.031}
# One form of which the analyte's canonical form is another: only nitrogen, the rest is printed on its canonical basis.
NITROGEN = {"nitrate", "nitrite", "nitrate_plus_nitrite", "ammonia"}


def read(path):
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def canonical(number, unit, basis, analyte):
    """The number in the reference unit of its dimension, nitrogen as N."""
    value = float(number) * UNITS[unit][1]
    if basis in MASS and analyte in NITROGEN:
        value *= MASS["N"] / MASS[basis]
    return value


def in_force(row, day):
    """Whether a row is in force on a day (ISO text); an unknown start counts as before."""
    return (row["in_force_from"] or "0000") <= day <= (row["in_force_to"] or "9999")


MEMBER = re.compile(r"(?P<key>[a-z0-9_]+)(?::(?P<number>[\d.]+) (?P<unit>[^ ]+)(?: as (?P<basis>\w+))?)?")


def members(row):
    """Members as (key, number or None, unit or None, basis or None)."""
    found = []
    for text in filter(None, row["members"].split(";")):
        match = MEMBER.fullmatch(text)
        assert match, f"{row['analyte']}: cannot read member {text!r}"
        found.append(match.group("key", "number", "unit", "basis"))
    return found


@cache
def rows():
    """Every row of every authority, with its authority."""
    return tuple({"authority": name, **row} for name in AUTHORITIES for row in read(FOLDER / f"{name}.csv"))


@cache
def analytes():
    return {row["analyte"]: row for row in read(ROOT / "wellchem" / "vocabulary" / "analytes.csv")}


@cache
def sources():
    return tomllib.loads((FOLDER / "sources.toml").read_text(encoding="utf-8"))


@cache
def predicates():
    return {row["code"]: row for row in read(FOLDER / "predicates.csv")}
