"""A group's title that gives a unit gives it to the rows beneath, until the next title."""

import pytest

import wellchem


def values(text):
    (sample,) = wellchem.read(text.encode(), name="groups.csv").samples
    return {result.analyte: (result.value, result.printed.unit) for result in sample.results}


def test_the_unit_of_a_title_holds_for_its_group():
    read = values("Analyte,Result\nMetals (ug/L),\nIron,1100\nLead,2\nAnions (mg/L),\nChloride,44\nOther,\nSodium,4\n")
    assert read["iron"] == (pytest.approx(1.1), "ug/L")
    assert read["lead"] == (pytest.approx(0.002), "ug/L")
    assert read["chloride"] == (44, "mg/L")
    assert read["sodium"] == (4, "")


def test_a_printed_unit_comes_before_the_title_s():
    read = values("Analyte,Result,Units\nMetals (ug/L),,\nIron,3,mg/L\nLead,2,\n")
    assert read["iron"] == (3, "mg/L")
    assert read["lead"] == (pytest.approx(0.002), "ug/L")
