"""Rows that say something of whole columns: units, methods and limits among the samples or over them."""

import pytest

import wellchem


def read(text):
    report = wellchem.read(text.encode(), name="lab.csv")
    assert report.explanation.balanced
    return report


def found(report):
    return {
        (sample.id or sample.site, one.analyte): (one.high, one.printed.unit, one.method)
        for sample in report.samples
        for one in sample.results
    }


WIDE = """{sample};{iron};{lead};pH
{unit};mg/L;µg/L;
{method};EPA 200.7;EPA 200.8;
{lod};0.01;0.5;
{limit};0.3;10;
W-1;0.1;2;7.1
W-2;ND;3;7.2
"""
WORDS = (
    ("Sample", "Iron", "Lead", "Units", "Method", "LOD", "MCL"),
    ("Sample ID", "Iron", "Lead", "Unit", "Methods", "Reporting Limit", "Limit"),
    ("Probe", "Eisen", "Blei", "Einheit", "Verfahren", "BG", "Grenzwert"),
    ("Échantillon", "Fer", "Plomb", "Unité", "Méthode", "LQ", "Limite de qualité"),
)


@pytest.mark.parametrize("words", WORDS, ids=lambda words: words[3])
@pytest.mark.parametrize("order", [(1, 2, 3, 4), (2, 1, 4, 3), (3, 1, 2, 4), (4, 3, 2, 1)])
def test_rows_of_units_methods_and_limits_under_analytes(words, order):
    sample, iron, lead, unit, method, lod, limit = words
    text = WIDE.format(sample=sample, iron=iron, lead=lead, unit=unit, method=method, lod=lod, limit=limit)
    lines = text.splitlines()
    report = read("\n".join([lines[0], *(lines[place] for place in order), *lines[5:]]) + "\n")
    assert found(report) == {
        ("W-1", "iron"): (0.1, "mg/L", "EPA 200.7"),
        ("W-1", "lead"): (pytest.approx(0.002), "µg/L", "EPA 200.8"),
        ("W-1", "ph"): (7.1, "", None),
        ("W-2", "iron"): (0.01, "mg/L", "EPA 200.7"),
        ("W-2", "lead"): (pytest.approx(0.003), "µg/L", "EPA 200.8"),
        ("W-2", "ph"): (7.2, "", None),
    }
    assert not report.unread


def test_methods_that_are_numbers_are_no_sample():
    report = read("Sample,Iron,Lead\nMethod,200.7,200.8\nUnits,mg/L,ug/L\nW-1,0.1,2\nW-2,0.2,3\n")
    assert {sample.id for sample in report.samples} == {"W-1", "W-2"}
    assert found(report)["W-1", "lead"] == (pytest.approx(0.002), "ug/L", "200.8")


@pytest.mark.parametrize("label", ["Unit", "Units:", "Einheit", "Unité"])
@pytest.mark.parametrize("days", ["", "Date sampled,2026-05-01,2026-05-02\n"])
def test_a_row_of_units_under_samples_as_columns(label, days):
    report = read(f"Parameter,Well 1,Well 2\n{days}{label},ug/L,ug/L\nIron,300,100\nLead,3,1\n")
    assert {key: value[:2] for key, value in found(report).items()} == {
        ("Well 1", "iron"): (pytest.approx(0.3), "ug/L"),
        ("Well 1", "lead"): (pytest.approx(0.003), "ug/L"),
        ("Well 2", "iron"): (pytest.approx(0.1), "ug/L"),
        ("Well 2", "lead"): (pytest.approx(0.001), "ug/L"),
    }
    assert all(bool(days) == (sample.collected is not None) for sample in report.samples)


def test_limits_of_reporting_may_stand_first():
    report = read("LOR,Analyte,Unit,W-1,W-2\n0.05,Iron,mg/L,0.1,ND\n0.001,Lead,mg/L,ND,0.004\n")
    assert {key: value[0] for key, value in found(report).items()} == {
        ("W-1", "iron"): 0.1,
        ("W-2", "iron"): 0.05,
        ("W-1", "lead"): 0.001,
        ("W-2", "lead"): 0.004,
    }
