"""Plain numbers that nobody can name are unread with their place; layout is what is known to be no result."""

import pytest

import wellchem
from wellchem.errors import NothingFound


def _unread(text, **how):
    try:
        report = wellchem.read(text.encode(), format="csv", **how)
    except NothingFound as nothing:
        return [(one.text, one.reason.value, one.detail) for one in nothing.unread]
    assert report.explanation.balanced
    return [(one.text, one.reason.value, one.detail) for one in report.unread]


def test_numbers_in_a_list_of_samples():
    """Flows of a national database: sites and days are known, the numbers beside them are of no analyte."""
    rows = "".join(f"USGS\t02177000\t2012-09-0{day}\t{190 + day}\tA\n" for day in range(1, 5))
    text = (
        f"# daily data\nagency_cd\tsite_no\tdatetime\t01_00060_00003\t01_00060_00003_cd\n5s\t15s\t20d\t14n\t10s\n{rows}"
    )
    assert _unread(text) == [(str(190 + day), "unknown_name", "01_00060_00003") for day in range(1, 5)]


def test_numbers_among_words_of_a_wide_table():
    text = "Sample,Iron (mg/L),Zinc (mg/L),Weather\nA,0.2,0.3,rain\nB,0.1,0.2,12\nC,0.4,0.1,dry\n"
    assert _unread(text) == [("12", "ambiguous_column", "Weather")]


def test_rows_of_numbers_outside_every_table():
    assert _unread("Letters,Figures\n05020500,0.1103,junk\n06031960,48.3,words\n") == [
        ("05020500 | 0.1103 | junk", "not_a_table", ""),
        ("06031960 | 48.3 | words", "not_a_table", ""),
    ]


def test_a_sample_without_results_whose_kind_of_water_is_printed():
    text = "Well,Type,Depth,Iron (mg/L),Zinc (mg/L)\nA,GW,54,0.2,0.3\nMill Brook,SW,0,,\nB,GW,49,0.1,0.2\n"
    assert _unread(text) == [("Mill Brook | SW | 0", "no_value", "")]


def test_groundwater_is_no_limit_for_its_letters():
    """GW heads the limits (Grenzwert) of German reports."""
    text = "Well,Type,Iron (mg/L),Zinc (mg/L)\nA,GW,0.2,0.3\nB,GW,0.1,0.2\n"
    assert wellchem.read(text.encode(), format="csv").to_frame()["value"].tolist() == [0.2, 0.3, 0.1, 0.2]


@pytest.mark.parametrize("heading", ["Mean", "Average"])
def test_statistics_beside_results_are_layout_of_their_own_kind(heading):
    text = f"Analyte,Unit,Result,{heading}\nIron,mg/L,0.2,0.25\nZinc,mg/L,0.3,0.31\nLead,mg/L,0.004,0.003\n"
    report = wellchem.read(text.encode(), format="csv")
    assert {one.kind.value: one.cells for one in report.explanation.layout}["statistic"] == 3


def test_results_of_two_visits_in_a_row_are_all_results():
    """Sites are called by letters, of which B is boron elsewhere."""
    head = "site,C1sample_dt,C1Nitrate,C2sample_dt,C2Nitrate\n"
    text = head + "A,2026-01-02,13.6,2026-05-02,4.3\nB,2026-01-03,1.6,2026-05-03,2.3\n"
    report = wellchem.read(text.encode(), format="csv")
    found = report.to_frame()
    assert sorted(found["value"]) == [1.6, 2.3, 4.3, 13.6]
    assert set(found["analyte"]) == {"nitrate"}
    assert "administrative" not in {one.kind.value for one in report.explanation.layout}
