"""Limits in the brackets of a name: one of reporting is the result's, one of law is nothing of it."""

import pytest

import wellchem
from wellchem.vocabulary import bundled


def read(name, value, unit="mg/L"):
    report = wellchem.read(f'Analyte,Result,Units\n"{name}",{value},{unit}\nSodium,20,mg/L\n'.encode(), name="a.csv")
    assert report.explanation.balanced
    found = [one for sample in report.samples for one in sample.results if one.analyte != "sodium"]
    return (found[0] if found else None), report.unread


@pytest.mark.parametrize(
    ("name", "unit", "limit"),
    [
        ("Lead (RL 0.001)", "mg/L", 0.001), ("Lead (RL: 1)", "ug/L", 0.001), ("Lead [PQL = 1 ug/L]", "mg/L", 0.001),
        ("Lead (LOQ 0.001 mg/L)", "mg/L", 0.001), ("Lead, total (reporting limit 0.001)", "mg/L", 0.001),
        ("Blei (BG 1)", "µg/L", 0.001),
    ],
)  # fmt: skip
def test_a_reporting_limit_becomes_the_result_s(name, unit, limit):
    one, unread = read(name, "ND", unit)
    assert (one.analyte, one.censoring) == ("lead", "left")
    assert (one.high, one.reporting_limit) == (pytest.approx(limit), pytest.approx(limit))
    assert not unread


def test_a_detection_limit_bounds_with_an_assumption():
    one, _ = read("Zinc [MDL 0.002]", "ND")
    assert (one.high, one.detection_limit, one.reporting_limit) == (0.002, 0.002, None)
    assert "bound=detection_limit" in map(str, one.assumptions)


@pytest.mark.parametrize(
    ("name", "analyte"),
    [
        ("Nitrate (MCL 10)", "nitrate"), ("Iron (0.3)", "iron"), ("Iron (0.3 mg/L)", "iron"), ("Lead (10)", "lead"),
        ("Lead (10) - total", "lead"), ("Sulfate (<250)", "sulfate"), ("Fluoride (max. 1.5 mg/L)", "fluoride"),
        ("Manganese (guideline 0.05)", "manganese"), ("Nitrate-N (10)", "nitrate"), ("Chloride [250 mg/L]", "chloride"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("value", ["4", "ND"])
def test_a_limit_of_law_is_nothing_of_the_result(name, analyte, value):
    one, unread = read(name, value)
    assert one.analyte == analyte
    assert (one.reporting_limit, one.detection_limit) == (None, None)
    assert one.high == (4.0 if value == "4" else None)
    assert (one.fraction == "total") == ("total" in name)
    assert not unread


@pytest.mark.parametrize(
    "name", ["Alkalinity (8.3)", "Conductivity (20)", "Radium (226)", "Absorbance (254)", "Colony count (22)",
             "Iron (0.45)", "Color (410)", "PCB (118)", "Iron (2)"],
)  # fmt: skip
def test_a_number_that_may_mean_something_else_is_no_limit(name):
    found = bundled().name(name)
    bare = bundled().name(name.split(" (")[0])
    assert found is None or found != bare or found.footnotes
