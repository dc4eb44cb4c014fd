"""Bicarbonate alkalinity whose form is not printed: the whole alkalinity of the sample can rule one form out."""

import pytest

import wellchem

HEAD = "Sample,Analyte,Result,Units\n"


def _read(text):
    found = wellchem.read((HEAD + text).encode(), format="csv").to_frame()
    return {(one.sample_id, one.analyte): (one.value, one.assumptions) for one in found.itertuples()}


def test_a_part_above_the_whole_is_as_the_ion():
    """280 mg/L of bicarbonate is 230 as CaCO3 (50.043 / 61.016), which is the whole; 280 as CaCO3 would exceed it."""
    found = _read(
        "A,Total alkalinity as CaCO3,230,mg/L\nA,Bicarbonate alkalinity,280,mg/L\nA,Carbonate alkalinity,6,mg/L\n"
        "B,Bicarbonate alkalinity,100,mg/L\n"
    )
    assert found["A", "bicarbonate"] == (pytest.approx(280), "basis=HCO3")
    assert found["A", "carbonate"] == (pytest.approx(6), "basis=CO3")
    assert found["B", "bicarbonate"] == (pytest.approx(100), "basis=HCO3")  # the same laboratory prints the same form


def test_a_part_within_the_whole_stays_as_calcium_carbonate():
    found = _read("A,Total alkalinity as CaCO3,230,mg/L\nA,Bicarbonate alkalinity,228,mg/L\n")
    assert found["A", "bicarbonate"] == (pytest.approx(228 * 61.016 / 50.043, rel=1e-3), "basis=CaCO3")


def test_another_sample_s_whole_says_nothing():
    found = _read("A,Total alkalinity as CaCO3,100,mg/L\nB,Bicarbonate alkalinity,228,mg/L\n")
    assert found["B", "bicarbonate"][1] == "basis=CaCO3"


def test_a_printed_form_is_never_changed():
    found = _read("A,Total alkalinity as CaCO3,100,mg/L\nA,Bicarbonate alkalinity as CaCO3,228,mg/L\n")
    assert found["A", "bicarbonate"][0] == pytest.approx(228 * 61.016 / 50.043, rel=1e-3)
