"""Thirty-nine invented wells: what published guidance (named in each file) leads one to expect of them."""

from functools import cache

import pytest
from interpretation.wells_reader import NAMES, Well

BOILING = {
    "helps": ("A rolling boil",),
    "other_water": ("Take another water and do not boil",),
    "harms": ("Do not boil", "Boiling concentrates"),
}


@cache
def well(name):
    return Well(name)


@cache
def found(name):
    return well(name).interpreted()


def expecting(key):
    return [name for name in NAMES if key in well(name).expect]


def by_code(items):
    return {item.code: item for item in items}


def test_there_are_thirty():
    assert len(NAMES) >= 30
    assert all(well(name).guidance for name in NAMES)


@pytest.mark.parametrize("name", expecting("verdicts"))
def test_verdicts(name):
    for key, verdict in well(name).expect["verdicts"].items():
        analyte, kind = key.split("/")
        verdicts = {
            item.verdict.value
            for item in found(name).comparisons
            if item.analyte == analyte and item.limit.kind.value == kind and item.condition_settled
        }
        assert verdict in verdicts, (key, verdicts)
        if verdict == "within":
            assert verdicts == {"within"}


@pytest.mark.parametrize("name", expecting("problems"))
def test_problems(name):
    problems = by_code(found(name).problems)
    sure = {
        code: problems[code].certainty.value if code in problems else None for code in well(name).expect["problems"]
    }
    assert sure == well(name).expect["problems"]


@pytest.mark.parametrize("name", NAMES)
def test_no_other_problem(name):
    expect = well(name).expect
    problems = set(by_code(found(name).problems))
    assert not problems & set(expect.get("absent", ()))
    assert set(expect.get("present", ())) <= problems
    if expect.get("none"):
        assert not problems


@pytest.mark.parametrize("name", expecting("checks"))
def test_checks(name):
    checks = by_code(found(name).checks)
    assert {code: checks[code].status.value for code in well(name).expect["checks"]} == well(name).expect["checks"]


@pytest.mark.parametrize("name", expecting("urgency"))
def test_urgency(name):
    problems = by_code(found(name).problems)
    expected = well(name).expect["urgency"]
    assert {code: problems[code].urgency.value for code in expected} == expected


@pytest.mark.parametrize("name", expecting("boiling"))
def test_boiling(name):
    for code, kind in well(name).expect["boiling"].items():
        texts = {action.boiling for action in found(name).actions if action.hazard == code and action.boiling}
        assert texts, code
        assert all(text.startswith(BOILING[kind]) for text in texts), texts


@pytest.mark.parametrize("name", [name for name in NAMES if {"signs", "no_signs"} & set(well(name).expect)])
def test_signs(name):
    signs = set(by_code(found(name).signs))
    assert set(well(name).expect.get("signs", ())) <= signs
    assert not set(well(name).expect.get("no_signs", ())) & signs


@pytest.mark.parametrize("name", expecting("missing"))
def test_missing(name):
    missing = [item.code for item in found(name).missing]
    assert set(well(name).expect["missing"]) <= set(missing)
    if first := well(name).expect.get("first_missing"):
        assert missing[0] == first
