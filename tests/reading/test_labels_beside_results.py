"""Limits, units and methods on the lines above and under a result, in brackets behind it, or on its own line."""

import pytest

import wellchem


def read(text):
    report = wellchem.read(text.encode(), name="a.txt")
    assert report.explanation.balanced
    found = {one.analyte: one for sample in report.samples for one in sample.results}
    return found, report.unread


BLOCKS = {
    "under the result": "Lead\nResult: ND\nReporting limit: 1 ug/L\nIron\nResult: 0.2 mg/L\nRL: 0.05 mg/L\n",
    "above the result": "Lead\nReporting limit: 1 ug/L\nResult: ND\nIron\nRL: 0.05 mg/L\nResult: 0.2 mg/L\n",
    "with units under it": "Parameter: Lead\nResult: ND\nUnits: ug/L\nRL: 1\n\nParameter: Iron\nResult: 0.2\n"
    "Units: mg/L\nRL: 0.05\n",
    "with units above it": "Parameter: Lead\nUnits: ug/L\nRL: 1\nResult: ND\n\nParameter: Iron\nUnits: mg/L\nRL: 0.05\n"
    "Result: 0.2\n",
    "on one line": "Lead    Result: ND    Reporting limit: 1 ug/L\nIron    Result: 0.2 mg/L    RL: 0.05 mg/L\n",
    "on one line of labels": "Test: Lead\tResult: ND\tRL: 1 ug/L\nTest: Iron\tResult: 0.2 mg/L\tRL: 0.05 mg/L\n",
    "under running lines": "Lead: ND\nReporting limit: 1 ug/L\nIron: 0.2 mg/L\nReporting limit: 0.05 mg/L\n",
    "in brackets": "Lead: ND (RL 1 ug/L)\nIron: 0.2 mg/L (reporting limit: 0.05 mg/L)\n",
}


@pytest.mark.parametrize("block", BLOCKS.values(), ids=BLOCKS.keys())
def test_a_reporting_limit_bounds_its_own_result(block):
    found, unread = read("Sample: W-1\n" + block)
    assert set(found) == {"lead", "iron"}
    assert (found["lead"].censoring, found["lead"].high) == ("left", pytest.approx(0.001))
    assert found["lead"].reporting_limit == pytest.approx(0.001)
    assert (found["iron"].value, found["iron"].reporting_limit) == (0.2, 0.05)
    assert not unread


def test_limits_before_running_results_are_not_those_of_the_result_above_them():
    found, _ = read("Sample: W-1\nRL: 0.05 mg/L\nIron: ND\nRL: 0.001 mg/L\nLead: ND\nDone\n")
    assert found["iron"].reporting_limit != 0.001
    assert found["lead"].reporting_limit is None


@pytest.mark.parametrize("beside", ["guideline 0.3", "limit: 0.3 mg/L", "MCL 0.3"])
def test_a_limit_of_law_in_brackets_is_nothing_of_the_result(beside):
    found, _ = read(f"Sample: W-1\nIron: ND ({beside})\nZinc: 0.1 mg/L\n")
    assert (found["iron"].high, found["iron"].reporting_limit, found["iron"].detection_limit) == (None, None, None)


def test_a_legend_under_a_result_is_no_limit():
    found, _ = read("Sample: W-1\nIron: ND\nRL: Reporting Limit\nMDL: Method Detection Limit\n")
    assert (found["iron"].high, found["iron"].reporting_limit) == (None, None)


CARDS = "Iron\tManganese\tLead\nResult: 0.42 mg/L\tResult: ND\tResult: 3 ug/L\nRL: 0.05\tRL: 0.005 mg/L\tRL: n/a\n"


def test_cards_side_by_side_under_their_names():
    found, unread = read("Sample:\tW-1\n" + CARDS + "pH\tNitrate as N\nResult: 7.1\tResult: 4.2 mg/L\nRL: -\tRL: 0.1\n")
    assert {key: (one.high, one.reporting_limit) for key, one in found.items()} == {
        "iron": (0.42, 0.05), "manganese": (0.005, 0.005), "lead": (pytest.approx(0.003), None), "ph": (7.1, None),
        "nitrate": (4.2, 0.1),
    }  # fmt: skip
    assert not unread


def test_amounts_on_the_lines_under_their_names():
    found, unread = read(
        "Sample: W-1\nIron\n0.42 mg/L\nManganese\n<0.05 mg/L\npH\n7.1\nTotal Coliform\nAbsent\nE. coli\n0 CFU/100 mL\n"
    )
    assert {key: one.high for key, one in found.items()} == {
        "iron": 0.42, "manganese": 0.05, "ph": 7.1, "total_coliform": 0.0, "e_coli": 0.0,
    }  # fmt: skip
    assert not unread


@pytest.mark.parametrize(
    "lines",
    [
        "Iron\n0.42 mg/L\n0.3 mg/L\n",  # two amounts
        "Iron\n0.42\n",  # no unit
        "Iron\n0.42 µS/cm\n",  # none of its units
        "Drinking water limits\nIron\n0.3 mg/L\n",
    ],
)
def test_what_may_be_no_result_under_a_name_is_left(lines):
    found, _ = read("Sample: W-1\nZinc: 0.1 mg/L\n" + lines)
    assert set(found) == {"zinc"}
