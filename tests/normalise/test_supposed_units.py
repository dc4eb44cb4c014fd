"""Units that are not printed and that the numbers rule out: invented waters, each balanced by hand within 5 %."""

import pytest

import wellchem

# Milliequivalents: Ca + Mg + Na + K = HCO3 + Cl + SO4.
EQUIVALENTS = """Sample,Ca,Mg,Na,K,HCO3,Cl,SO4,SiO2
A,4.2,3.2,0.4,0.1,7.0,0.3,0.6,12
B,3.3,1.5,0.2,0.1,4.5,0.2,0.4,11
C,2.0,1.0,1.5,0.2,3.0,1.2,0.5,15
"""
# The same waters in milligrams (20.04, 12.15, 22.99, 39.10; 61.02, 35.45, 48.03).
MILLIGRAMS = """Sample,Ca,Mg,Na,K,HCO3,Cl,SO4
A,84.2,38.9,9.2,3.9,427,10.6,28.8
B,66.1,18.2,4.6,3.9,275,7.1,19.2
C,40.1,12.2,34.5,7.8,183,42.5,24.0
"""


def _read(text):
    report = wellchem.read(text.encode(), format="csv")
    return report, {(one.sample_id, one.analyte): one for one in report.to_frame().itertuples()}


def test_numbers_that_balance_as_printed_are_equivalents():
    report, found = _read(EQUIVALENTS)
    assert found["A", "calcium"].value == pytest.approx(4.2 * 20.039, rel=1e-4)
    assert found["C", "chloride"].value == pytest.approx(1.2 * 35.45, rel=1e-3)
    assert all("unit=meq/L" in one.assumptions for one in found.values())
    assert {(one.text.split()[0], one.reason.value) for one in report.unread} == {("SiO2", "unknown_unit")}


def test_numbers_that_balance_as_milligrams_are_milligrams():
    report, found = _read(MILLIGRAMS)
    assert found["A", "calcium"].value == 84.2
    assert all("unit=mg/L" in one.assumptions for one in found.values())
    assert not report.unread


def test_two_samples_do_not_decide():
    _, found = _read("\n".join(EQUIVALENTS.splitlines()[:3]) + "\n")
    assert found["A", "calcium"].value == 4.2


def test_a_printed_unit_is_never_changed():
    head, *rows = EQUIVALENTS.splitlines()
    text = "\n".join([head.replace(",", " (mg/L),").replace("Sample (mg/L)", "Sample") + " (mg/L)", *rows]) + "\n"
    _, found = _read(text)
    assert found["A", "calcium"].value == 4.2


def test_elements_that_outweigh_the_salts_are_unread_without_a_unit():
    head, *rows = MILLIGRAMS.splitlines()
    text = "\n".join([head + ",Sr,Pb", *(f"{row},{900 + at},{at}" for at, row in enumerate(rows))]) + "\n"
    report, found = _read(text)
    assert ("A", "calcium") in found
    assert not {"strontium", "lead"} & {analyte for _, analyte in found}
    assert [one.reason.value for one in report.unread] == ["unknown_unit"] * 6


def test_elements_that_can_be_keep_their_supposed_milligrams():
    head, *rows = MILLIGRAMS.splitlines()
    text = "\n".join([head + ",Sr,Pb", *(f"{row},0.9,0.00{at}" for at, row in enumerate(rows))]) + "\n"
    report, found = _read(text)
    assert found["A", "strontium"].value == 0.9
    assert not report.unread
