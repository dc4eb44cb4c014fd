"""Forms, places and words of presence behind a number or in the cell of its unit."""

import pytest

import wellchem

SHARE = {"N of NO3": 14.007 / 62.004, "NO2": 14.007 / 46.005, "P": 94.971 / 30.974, "S": 96.06 / 32.06}


def read(name, value, unit):
    """Iron stands beside it so that the table has a result in any case. Molar masses: CIAAW 2024, rounded."""
    text = f'Analyte,Result,Units\n"{name}","{value}","{unit}"\nIron,0.3,mg/L\n'
    report = wellchem.read(text.encode(), name="a.csv")
    assert report.explanation.balanced
    found = [one for sample in report.samples for one in sample.results if one.printed.name != "Iron"]
    return (found[0] if found else None), report.unread


@pytest.mark.parametrize(
    ("name", "value", "unit", "number"),
    [
        ("Nitrate", "12.4 as N", "mg/L", 12.4),
        ("Nitrate", "45 as NO3", "mg/L", 45 * SHARE["N of NO3"]),
        ("Nitrate", "45 (NO3)", "mg/L", 45 * SHARE["N of NO3"]),
        ("Nitrite", "0.1 as NO2-N", "mg/L", 0.1),
        ("Nitrite", "0.1 mg/L as NO2", "", 0.1 * SHARE["NO2"]),
        ("Nitrate", "<0.05 as N", "mg/L", 0.05),
        ("Phosphate", "0.5 as P", "mg/L", 0.5),
        ("Sulfate", "12 as S", "mg/L", 12 * SHARE["S"]),
        ("Sulfate", "12 (as SO4)", "mg/L", 12),
        ("Alkalinity", "210 (as CaCO3)", "mg/L", 210),
        ("Hardness", "190 mg/L (as CaCO3)", "", 190),
        ("Hardness", "190", "as CaCO3", 190),
        ("Hardness", "190", "(as CaCO3)", 190),
        ("Nitrate", "45", "as NO3", 45 * SHARE["N of NO3"]),
        ("Silica", "14", "as SiO2", 14),
    ],
)
def test_a_chemical_form_behind_the_number_or_instead_of_a_unit(name, value, unit, number):
    one, unread = read(name, value, unit)
    assert one is not None
    assert one.high == pytest.approx(number, rel=2e-4)
    assert not any("basis=" in str(code) for code in one.assumptions)
    assert not unread


@pytest.mark.parametrize(
    ("name", "value", "unit"),
    [
        ("Nitrate", "12.4 as N", "mg/L as NO3"),
        ("Nitrate as N", "45 as NO3", "mg/L"),
        ("Nitrate as N", "45", "as NO3"),
        ("Lead", "4 as N", "ug/L"),
        ("Lead", "4 as", "ug/L"),
    ],
)
def test_forms_that_contradict_each_other_are_unread(name, value, unit):
    one, unread = read(name, value, unit)
    assert one is None
    assert len(unread) == 1


@pytest.mark.parametrize(
    ("value", "place"),
    [
        ("7.1 (field)", "field"), ("7.1 field", "field"), ("7.1 (in situ)", "field"), ("7.1 (Lab)", "laboratory"),
        ("7.1 lab", "laboratory"), ("7,1 (terrain)", "field"), ("7,1 (Labor)", "laboratory"), ("7.1", None),
        ("7.1 (high)", None), ("7.1 (21 °C)", None),
    ],
)  # fmt: skip
def test_the_place_of_measuring_behind_the_number(value, place):
    one, unread = read("pH", value, "")
    assert (one.value, one.measured) == (7.1, place)
    assert not unread


@pytest.mark.parametrize(
    ("value", "low", "high"),
    [
        ("0 (absence)", 0, 0), ("0 (absent)", 0, 0), ("0 - not detected", 0, 0), ("< 1 (absent)", 0, 0),
        ("12 (present)", 12, 12), ("incontables", 1, float("inf")), ("numerous", 1, float("inf")),
        ("nombreuses", 1, float("inf")), ("< 1 ufc", 0, 0), ("< 1 UFC/100 mL", 0, 0), ("< 1 KBE", 0, 0),
    ],
)  # fmt: skip
def test_words_of_presence_with_counts(value, low, high):
    one, unread = read("E. coli", value, "/100 mL" if "/" not in value else "")
    assert (one.low, one.high) == (low, high)
    assert not unread


@pytest.mark.parametrize("value", ["0 (present)", "12 (absent)", "5 (absence)"])
def test_a_number_and_a_word_that_contradict_each_other_are_unread(value):
    one, unread = read("E. coli", value, "/100 mL")
    assert one is None
    assert len(unread) == 1
