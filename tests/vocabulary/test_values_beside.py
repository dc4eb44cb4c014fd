"""What laboratories print in the cell of a value besides it: limits, ratings, temperatures, signs behind the number."""

import pytest

import wellchem
from wellchem.models.codes import Censoring
from wellchem.vocabulary import bundled

V = bundled()


@pytest.mark.parametrize(
    ("text", "number", "reporting", "detection"),
    [
        ("0.5 (RL 0.1)", 0.5, 0.1, None),
        ("0.5 [RL: 0.1]", 0.5, 0.1, None),
        ("0.5 (LOQ=0.1)", 0.5, 0.1, None),
        ("0.012 (MDL 0.005) mg/L", 0.012, None, 0.005),
        ("0.5 (RL 0.1) (MDL 0.02)", 0.5, 0.1, 0.02),
        ("3.1 +/- 0.6 (MDC 0.5)", 3.1, None, 0.5),
        ("12.4 mg/L (MCL 10)", 12.4, None, None),
        ("12.4 (limit 10)", 12.4, None, None),
        ("12.4 (max 10)", 12.4, None, None),
        ("12.4 High", 12.4, None, None),
        ("12.4 - FAIL", 12.4, None, None),
        ("↑12.4", 12.4, None, None),
        ("7.2 (21 °C)", 7.2, None, None),
        ("7.4 (field)", 7.4, None, None),
        ("0·05", 0.05, None, None),
    ],
)
def test_what_stands_beside_a_number_is_not_the_number(text, number, reporting, detection):
    made = V.value(text)
    assert (made.censoring, made.number) == (Censoring.NONE, number)
    assert (made.reporting_limit, made.detection_limit) == (reporting, detection)


@pytest.mark.parametrize(
    "text", ["0.3 (0.4)", "12 (3)", "12 (10-14)", "0.05 (ND)", "0.5 / 0.4", "1:10", "Pass", "High"]
)
def test_two_numbers_without_a_word_between_them_are_no_value(text):
    assert V.value(text) is None


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("410 ppm [500]", 410, "ppm"),
        ("12 mg/L [<200]", 12, "mg/L"),
        ("<0.02 mg/L (0.3)", 0.02, "mg/L"),
        ("6.1 SU (6.5 - 8.5)", 6.1, "SU"),
        ("44 [<200]", 44, ""),
    ],
)
def test_a_number_in_brackets_behind_a_unit_is_not_the_result(text, number, unit):
    made = V.value(text)
    assert (made.number, made.unit_text, made.note) == (number, unit, "number_behind")
    assert made.reporting_limit is made.detection_limit is made.uncertainty is None


@pytest.mark.parametrize(("text", "note"), [("ND (0.3)", "bracketed_bound"), ("ND (RL 0.3)", ""), ("ND <0.3", "")])
def test_a_bound_in_bare_brackets_is_told(text, note):
    made = V.value(text)
    assert (made.number, made.note) == (0.3, note)


def test_a_sign_behind_the_number_bounds_it():
    for text in ("0.5 <", "0.5<"):
        made = V.value(text)
        assert (made.censoring, made.low, made.high) == (Censoring.LEFT, 0.0, 0.5)


def test_a_share_of_the_number_is_its_uncertainty():
    assert V.value("3.0 ± 20 %").uncertainty == pytest.approx(0.6)


def test_limits_inside_the_cell_reach_the_result():
    text = "Parameter,Result,Unit\nIron,0.42 (RL 0.03),mg/L\nLead,2.1 (MDL 0.5),ug/L\nNitrate-N,12.4 (MCL 10),mg/L\n"
    (sample,) = wellchem.read(text.encode(), name="a.csv").samples
    told = {one.analyte: (one.value, one.reporting_limit, one.detection_limit) for one in sample.results}
    assert told["iron"] == (0.42, 0.03, None)
    assert told["lead"] == (pytest.approx(0.0021), None, pytest.approx(0.0005))
    assert told["nitrate"] == (12.4, None, None)
