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
