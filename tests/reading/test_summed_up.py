"""Averages are nobody's result: formulas over other cells, ranges of a water system, samples that have nothing."""

import io

import openpyxl
import pytest

import wellchem
from wellchem.errors import NothingFound


def workbook(rows, merged=(), saved=()):
    """A workbook's bytes; `saved` gives the values that a program saved with the formulas, by cell."""
    book = openpyxl.Workbook()
    sheet = book.active
    for row in rows:
        sheet.append(row)
    for span in merged:
        sheet.merge_cells(span)
    made = io.BytesIO()
    book.save(made)
    if not saved:
        return made.getvalue()
    return with_values(made.getvalue(), dict(saved))


def with_values(data, values):
    """What a spreadsheet program leaves: each formula with the value that it had when it was saved."""
    import re
    import zipfile

    source, made = zipfile.ZipFile(io.BytesIO(data)), io.BytesIO()
    with zipfile.ZipFile(made, "w") as target:
        for part in source.namelist():
            text = source.read(part)
            if part.endswith("sheet1.xml"):
                for place, value in values.items():
                    text = re.sub(
                        rf'(<c r="{place}"[^>]*><f>[^<]*</f>)<v ?/?>(</v>)?'.encode(),
                        rf"\g<1><v>{value}</v>".encode(),
                        text,
                    )
            target.writestr(part, text)
    return made.getvalue()


def test_an_average_among_the_results_is_unread_with_its_formula():
    rows = [
        ["Analyte", "Unit", "Well A", "Well B"],
        ["pH", "", 7.1, 6.9],
        ["pH", "", 7.3, "=AVERAGE(C2:C3)"],
        ["Iron", "mg/L", 0.31, 0.02],
    ]
    report = wellchem.read(workbook(rows, saved={"D3": "7.2"}), format="xlsx")
    assert sorted(result.value for sample in report.samples for result in sample.all("ph")) == [6.9, 7.1, 7.3]
    (unread,) = report.unread
    assert (unread.reason, unread.detail, unread.origin.row) == ("statistic", "=AVERAGE(C2:C3)", 3)


def test_a_column_of_averages_under_a_heading_of_results_is_read():
    """A laboratory's own sheet may work its results out of two readings."""
    rows = [
        ["Analyte", "Unit", "Result"],
        ["Iron", "mg/L", "=AVERAGE(F2:G2)"],
        ["Manganese", "mg/L", "=AVERAGE(F3:G3)"],
    ]
    report = wellchem.read(workbook(rows, saved={"C2": "0.3", "C3": "0.05"}), format="xlsx")
    assert [result.value for result in report.samples[0].results] == [0.3, 0.05]


def test_a_name_merged_over_two_rows_names_both():
    rows = [
        ["Analyte", "Unit", "Result"],
        ["Iron", "mg/L", 0.31],
        ["pH", "", 7.1],
        [None, "", 7.3],
        ["Sodium", "mg/L", 12],
    ]
    report = wellchem.read(workbook(rows, merged=["A3:A4"]), format="xlsx")
    assert [result.value for result in report.samples[0].all("ph")] == [7.1, 7.3]
    assert not report.unread


def test_a_sample_without_results_is_unread_whatever_letters_stand_in_its_row():
    lines = (
        "Site,Rock,Latitude,Longitude,Calcium,Iron\n"
        "Oak Rd,P,44.1,-89.2,40.1,0.2\nElm Rd,P,44.2,-89.3,,\nAsh Rd,Tr,44.3,-89.4,39,0.1\n"
    )
    report = wellchem.read(lines.encode(), format="csv")
    assert sum(len(sample.results) for sample in report.samples) == 4
    assert [(one.reason.value, one.origin.row) for one in report.unread] == [("no_value", 3)]


def test_ranges_and_averages_of_a_system_are_unread_whole():
    head = "Constituent,Units,MCL,Range,Average,When"  # a heading that nobody listed, over years
    lines = f"{head}\nArsenic,ppb,10,ND-4.1,2.2,2016\nBarium,ppm,1,ND,ND,2016\n"
    with pytest.raises(NothingFound) as nothing:
        wellchem.read(lines.encode(), format="csv")
    unread = nothing.value.unread
    assert [one.reason.value for one in unread] == ["statistic", "statistic"]
    assert "ND-4.1 | 2.2" in unread[0].text
    assert unread[0].detail == "Range, Average"


def test_a_range_with_a_mark_behind_it_is_no_bound():
    from wellchem.vocabulary import bundled

    assert bundled().value("ND-0.11¹") is None


def test_a_concentration_below_zero_says_why_it_is_unread():
    lines = "Analyte,Result,Unit\nIron,-0.02,mg/L\npH,71,\nTemperature,140,°C\nSodium,3,mg/L\n"
    report = wellchem.read(lines.encode(), format="csv")
    assert [one.detail for one in report.unread] == [
        "a concentration cannot be below 0 mg/L",
        "a pH lies between -1 and 15",
        "a temperature lies between -5 and 100 °C",
    ]


def test_of_two_columns_that_repeat_each_other_the_one_with_the_non_detects_is_read():
    """A half of a detection limit in the cleaned column is no measurement."""
    lines = (
        "sample,lead,leadRaw,leadClass\nA1,3.1,3.1,metal\nA2,0.01,<LOD,metal\nA3,2.2,2.2,metal\nA4,≤LOD,≤LOD,metal\n"
    )
    report = wellchem.read(lines.encode(), format="csv")
    found = [(result.printed.value, result.low, result.high) for sample in report.samples for result in sample.results]
    assert [value for value, _, _ in found] == ["3.1", "<LOD", "2.2", "≤LOD"]
    assert found[1][1] == 0
    assert found[1][2] is None or found[1][2] == float("inf")
    assert not report.unread


def test_raw_and_treated_water_do_not_repeat_each_other():
    lines = "sample,lead,leadRaw\nA1,3.1,8.1\nA2,0.01,<5\nA3,2.2,2.3\n"
    report = wellchem.read(lines.encode(), format="csv")
    assert {result.printed.value for sample in report.samples for result in sample.results} == {"3.1", "0.01", "2.2"}
    assert len(report.unread) == 3


def test_an_action_level_beside_percentiles_is_no_result():
    """Numbers under a heading that nobody listed, in a table of percentiles: nobody's result."""
    head = "Constituent,Units,Trigger,90th percentile,Sampled in"
    lines = f"{head}\nCopper,ppm,1.3,0.067,2018\nLead,ppb,15,ND,2018\n"
    with pytest.raises(NothingFound):
        wellchem.read(lines.encode(), format="csv")
