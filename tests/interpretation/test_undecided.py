"""Every undecided verdict of the invented wells says why, and each reason that a report can give comes up."""

from datetime import date

import pytest
from interpretation.undecided_wells import counted, findings, reason_of

import wellchem
from wellchem.models.codes import Reason

# Reasons that say what a decided verdict rests on, and are none for leaving it open.
RESTS_ON = {Reason.DERIVED_FROM, Reason.DISSOLVED_MEASURED, Reason.TOTAL_MEASURED}
# No well stands for these: dates and units are of tests/limits.
ELSEWHERE = {Reason.DATE_UNKNOWN, Reason.NOT_DATED, Reason.UNIT_MISSING}


def test_each_reason_is_one_of_the_catalogue():
    assert set(counted()) <= set(Reason)
    assert set(counted()) - RESTS_ON


@pytest.mark.parametrize("reason", sorted(set(Reason) - RESTS_ON - ELSEWHERE))
def test_each_reason_comes_up_in_some_well(reason):
    assert counted().get(reason, (0, 0, 0))[2], f"no well leaves a verdict open by {reason}"


def test_no_undecided_verdict_rests_only_on_what_decides():
    for name, finding in findings():
        for one in finding.comparisons:
            if one.verdict == "undecided":
                assert {reason_of(text) for text in one.reasons} - {Reason.DERIVED_FROM}, (name, one.analyte)


@pytest.mark.parametrize("authorities", [("us-epa",), ("us-epa", "who", "eu")], ids=str)
@pytest.mark.parametrize(
    "values",
    [
        {"Nitrate as N": "9 mg/L", "E. coli": "4 MPN/100mL"},
        {"Nitrate as N": "22 mg/L", "Nitrite as N": "<2 mg/L", "E. coli": "present"},
        {"Nitrate as N": "22 mg/L"},
    ],
    ids=str,
)
def test_nitrite_is_asked_for_once(values, authorities):
    """One bottle, one line: the sum of nitrate and nitrite and nitrite itself are settled by one test."""
    asked = wellchem.interpret(wellchem.Sample.from_values(values), authorities=authorities).missing
    assert sum(test.title.startswith("Nitrite") for test in asked) == 1


@pytest.mark.parametrize(
    "values, named",
    [
        ({"Cadmium": "<0.02 mg/L", "Thallium": "<0.01 mg/L"}, ("cadmium", "thallium")),
        ({"Antimony": "<0.05 mg/L"}, ("antimony",)),
        ({"Uranium": "<0.1 mg/L"}, ("uranium",)),
        ({"Lead": "<0.05 mg/L"}, ("lead",)),
    ],
    ids=str,
)
def test_a_metal_that_was_looked_for_too_coarsely_is_to_be_measured_again(values, named):
    """40 CFR 141.62 and 141.80: cadmium 0.005, thallium 0.002, antimony 0.006, uranium 0.030, lead 0.015 mg/L."""
    finding = wellchem.interpret(wellchem.Sample.from_values(values), authorities=["us-epa"])
    texts = [action.text for action in finding.actions if "measured again" in action.text]
    assert len(texts) == 1
    assert all(name in texts[0] for name in named)
    fine = dict.fromkeys(values, "<0.0001 mg/L")
    assert not wellchem.interpret(wellchem.Sample.from_values(fine), authorities=["us-epa"]).actions


@pytest.mark.parametrize("value, told", [("<20 ng/L", True), ("<2 ng/L", False)], ids=str)
def test_a_reporting_limit_above_what_is_enacted_for_later_is_said(value, told):
    """89 FR 32532: PFOA and PFOS 4.0 ng/L each; on the day only the goal of nought was in force."""
    sample = wellchem.Sample.from_values({"PFOA": value, "PFOS": value})
    finding = wellchem.interpret(sample, authorities=["us-epa"], on=date(2026, 5, 1))
    said = {caution.code: caution.text for caution in finding.cautions}.get("untold", "")
    assert ("PFOA" in said and "PFOS" in said) is told
    assert ("lower_limit_pfoa" in {test.code for test in finding.missing}) is told


@pytest.mark.parametrize("name", ["PFOA", "Benzene", "Barium", "Arsenic", "Atrazine", "Radium-226"])
@pytest.mark.parametrize("printed", ["not reported", "ND"])
def test_a_name_without_an_amount_never_passes_for_a_result(name, printed):
    """Without a number nothing is known: the page names it among what counts as not tested."""
    clear = {"Total Coliform": "Absent", "E. coli": "Absent", "Nitrate as N": "1.2 mg/L", "Lead": "<0.001 mg/L"}
    clear |= {"Arsenic": "<0.001 mg/L", "pH": 7.2}
    sample = wellchem.Sample.from_values(clear | {name: printed}, collected=date(2026, 11, 1))
    finding = wellchem.interpret(sample, on=date(2026, 11, 20))
    said = [one.text for one in (*finding.cautions, *finding.actions)] + [one.title for one in finding.problems]
    assert any(name.lower() in text.lower() for text in said), said
