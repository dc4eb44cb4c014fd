"""A flood at the well: a recent one stops the drinking, one of long before a sound test is a way in to be looked for.

US CDC and US EPA on flooded wells: no drinking until the well was disinfected and tests afterwards found nothing. That
a year must lie between is common practice, no source.
"""

from datetime import date

import pytest

import wellchem
from wellchem.models.codes import SamplingPoint
from wellchem.models.household import Household
from wellchem.models.sample import Sample

NONE_FOUND = {"Total coliform": "Absent", "E. coli": "Absent", "Nitrate as N": "1 mg/L"}
TAKEN = {"collected": date(2026, 4, 20)}
LONG_AGO = date(2019, 6, 3)


def finding(flooded, values=NONE_FOUND, **about):
    sample = Sample.from_values(values, **{**TAKEN, **about})
    return wellchem.interpret(sample, on=date(2026, 5, 1), household=Household(flooded=flooded, infants=False))


def codes(found):
    return {problem.code for problem in found.problems}


def test_a_flood_of_long_before_a_test_that_found_none_asks_for_an_inspection():
    found = finding(LONG_AGO)
    assert "flooded_well" not in codes(found)
    assert "surface_connection" in codes(found)
    assert not any(action.urgency == "now" for action in found.actions)
    assert "2019-06-03" in found.to_text()


@pytest.mark.parametrize(
    "flooded, values, about",
    [
        (True, NONE_FOUND, {}),
        (date(2026, 4, 10), NONE_FOUND, {}),
        (date(2026, 4, 25), NONE_FOUND, {}),  # after the sample
        (LONG_AGO, {"Nitrate as N": "1 mg/L"}, {}),
        (LONG_AGO, {**NONE_FOUND, "Free chlorine": "0.6 mg/L"}, {}),
        (LONG_AGO, {"Total coliform": "<10 CFU/100 mL", "E. coli": "Absent"}, {}),
        (LONG_AGO, {"Total coliform": "Present", "E. coli": "Absent"}, {}),
        (LONG_AGO, NONE_FOUND, {"collected": None}),
        (LONG_AGO, NONE_FOUND, {"received": date(2026, 4, 27), "analysed": date(2026, 4, 28)}),
        (LONG_AGO, NONE_FOUND, {"point": SamplingPoint.AFTER_TREATMENT}),
    ],
    ids=str,
)
def test_otherwise_nobody_drinks_it_before_it_was_looked_at(flooded, values, about):
    found = finding(flooded, values, **about)
    assert "flooded_well" in codes(found)
    assert any(action.hazard == "flooded_well" and action.urgency == "now" for action in found.actions)


def test_a_well_that_was_never_under_water_has_no_flood():
    assert not codes(finding(False)) & {"flooded_well", "surface_connection"}


def test_when_is_asked_until_it_is_said():
    asked = {said: {test.field for test in finding(said).missing} for said in (None, True, False, LONG_AGO)}
    assert [said for said, fields in asked.items() if "flooded" in fields] == [None, True]


def test_the_day_comes_back_from_json():
    home = Household(flooded=LONG_AGO)
    assert Household.model_validate_json(home.model_dump_json()) == home
    assert Household.model_validate_json('{"flooded": true}').flooded is True
