"""A column of recoveries makes a row quality control, or is the method's beside the household's results."""

import pytest

import wellchem

PLAIN = "Analyte,Result,Units,% Recovery\nIron,0.1,mg/L,98\nLead,ND,mg/L,102\nZinc,0.3,mg/L,95\n"


def read(text):
    report = wellchem.read(text.encode(), name="a.csv")
    assert report.explanation.balanced
    household = [one.analyte for sample in report.samples for one in sample.results]
    control = [one.analyte for sample in report.quality_control for one in sample.results]
    return household, control, report


@pytest.mark.parametrize("head", ["", "Sample ID: W-1,,,\nMatrix: Well water,,,\n", "Results,,,\n"])
def test_recoveries_beside_every_result_leave_them_the_household_s(head):
    household, control, report = read(head + PLAIN)
    assert (household, control) == (["iron", "lead", "zinc"], [])
    assert all("column=Result" in map(str, one.assumptions) for one in report.samples[0].results)


@pytest.mark.parametrize(
    "text",
    [
        "Quality Control,,,\n" + PLAIN,
        "Laboratory Control Sample,,,\n" + PLAIN,
        "Matrix spike,,,\n" + PLAIN,
        # an amount added, a second recovery, bounds of the recovery
        "Analyte,Result,Units,Spike Added,% Recovery\nIron,0.1,mg/L,0.1,98\nLead,1.0,mg/L,1,102\n",
        "Analyte,Result,Units,% Recovery,% Rec Limits\nIron,0.1,mg/L,98,85-115\nLead,1.0,mg/L,102,85 - 115\n",
        "Analyte,Result,Units,% Recovery,RPD\nIron,0.1,mg/L,98,2\nLead,1.0,mg/L,102,3\n",
    ],
)
def test_a_title_or_a_column_of_quality_control_keeps_them_apart(text):
    household, control, _ = read(text)
    assert not household
    assert control


def test_an_untitled_table_of_recoveries_behind_the_results_is_quality_control():
    household, control, _ = read("Analyte,Result,Units\nIron,0.1,mg/L\nLead,ND,mg/L\n,,\n" + PLAIN)
    assert household == ["iron", "lead"]
    assert control == ["iron", "lead", "zinc"]
