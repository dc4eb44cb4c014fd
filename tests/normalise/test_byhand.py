"""Single values, names and units, and a sample from values."""

from datetime import date

import pytest

import wellchem
from wellchem.errors import AmbiguousResult, UnitError, UnknownAnalyte, ValueUnread


def test_convert_grains_per_gallon():
    # 1 grain = 64.79891 mg exactly; 1 US gallon = 3.785411784 L exactly (NIST Handbook 44, Appendix C).
    assert wellchem.convert(12.6, "gpg", "mg/L", analyte="total_hardness") == pytest.approx(
        12.6 * 64.79891 / 3.785411784
    )


def test_convert_nitrate_between_its_forms():
    # Atomic weights N 14.007, O 15.999 (CIAAW 2024, abridged): NO3 62.004.
    assert wellchem.convert(50, "mg/L as NO3", "mg/L as N", analyte="nitrate") == pytest.approx(50 * 14.007 / 62.004)


def test_convert_there_and_back():
    there = wellchem.convert(68.0, "°F", "°C", analyte="temperature")
    assert there == pytest.approx(20.0)
    assert wellchem.convert(there, "°C", "°F", analyte="temperature") == pytest.approx(68.0)


def test_convert_refuses_what_cannot_be():
    with pytest.raises(UnitError):
        wellchem.convert(1, "µS/cm", "mg/L", analyte="total_hardness")
    with pytest.raises(UnknownAnalyte):
        wellchem.convert(1, "mg/L", "µg/L", analyte="unobtainium")


def test_resolve():
    meaning = wellchem.resolve("NO3-N")
    assert (meaning.analyte, meaning.basis) == ("nitrate", "N")
    with pytest.raises(UnknownAnalyte, match="Nearest"):
        wellchem.resolve("Chlorid3")


def test_sample_from_values():
    sample = wellchem.Sample.from_values(
        {"Iron": "2.4 mg/L", "pH": 7.1, "Arsenic": "<0.5 µg/L", "E. coli": "Absent"},
        id="W-1",
        collected=date(2026, 5, 1),
    )
    assert sample.id == "W-1"
    assert sample.get("iron").value == 2.4
    assert sample.get("arsenic").high == pytest.approx(0.0005)
    assert sample.get("e_coli").high == 0
    assert [str(a) for a in sample.get("iron").assumptions] == []


@pytest.mark.parametrize(
    ("values", "error"),
    [
        ({"Mystery": "1 mg/L"}, UnknownAnalyte),
        ({"Hardness": "300 µS/cm"}, UnitError),
        ({"Iron": "plenty"}, ValueUnread),
        ({"pH": "71"}, ValueUnread),
    ],
)
def test_sample_from_values_refuses(values, error):
    with pytest.raises(error):
        wellchem.Sample.from_values(values)


def test_two_results_of_one_analyte_must_be_told_apart():
    sample = wellchem.Sample.from_values({"Iron, total": "2.4 mg/L", "Iron, dissolved": "0.4 mg/L"})
    assert sample.get("iron", fraction="total").value == 2.4
    with pytest.raises(AmbiguousResult):
        sample.get("iron")
