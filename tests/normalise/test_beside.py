"""What stands beside a number: limits and uncertainties in units of their own, marks; by hand from what is printed."""

import pytest

import wellchem


def frame(text):
    return wellchem.read(text.encode()).to_frame().set_index("analyte")


def test_limits_are_in_the_unit_of_their_heading():
    """A limit of 5 under "RL (ug/L)" bounds a result in mg/L at 0.005."""
    found = frame("Parameter,Result (mg/L),RL (ug/L),MDL (ug/L)\nIron,2.0,50,10\nZinc,ND,5,1\n")
    assert found.loc["iron", "reporting_limit"] == pytest.approx(0.05)
    assert found.loc["zinc", "high"] == pytest.approx(0.005)
    assert found.loc["zinc", "detection_limit"] == pytest.approx(0.001)


def test_a_limit_that_prints_its_own_unit_keeps_it():
    found = frame("Parameter,Result (mg/L),RL (ug/L)\nIron,2.0,50\nZinc,ND,0.02 mg/L\n")
    assert found.loc["zinc", "high"] == pytest.approx(0.02)


@pytest.mark.parametrize(
    ("heading", "printed", "spread"),
    [
        ("Uncertainty (%)", "12", 0.24),
        ("Uncertainty", "12%", 0.24),
        ("U (k=2)", "12 %", 0.24),
        ("Uncertainty (ug/L)", "300", 0.3),
        ("Uncertainty", "0.3", 0.3),
        ("Uncertainty", "300 ug/L", 0.3),
    ],
)
def test_uncertainty_in_per_cent_is_of_the_result(heading, printed, spread):
    """12 % of 2.0 mg/L is 0.24 mg/L; what stands in another unit is converted."""
    found = frame(f"Parameter,Result,Unit,{heading}\nIron,2.0,mg/L,{printed}\nSulfate,20,mg/L,\n")
    assert found.loc["iron", "uncertainty"] == pytest.approx(spread)


def test_uncertainty_in_per_cent_of_an_activity_bounds_it():
    """20 % of 5.0 pCi/L is 1.0 pCi/L, 0.037 Bq/L to the picocurie: 0.148 to 0.222 Bq/L."""
    found = frame("Parameter,Result,Unit,Uncertainty (%)\nGross alpha,5.0,pCi/L,20\nRadium-226,0.5,pCi/L,20\n")
    assert found.loc["gross_alpha", "low"] == pytest.approx(0.148)
    assert found.loc["gross_alpha", "high"] == pytest.approx(0.222)


def test_a_number_below_nought_that_is_marked_not_detected_is_bounded_by_its_limit():
    found = frame("Analyte,Symbol,Conc.,Units,Flag,Det. Lim.\nLead,Pb,-0.00003,mg/L,U,0.0002\nZinc,Zn,0.3,mg/L,,0.01\n")
    assert (found.loc["lead", "low"], found.loc["lead", "high"]) == (0.0, pytest.approx(0.0002))
    assert found.loc["lead", "qualifiers"] == "U"  # the symbol beside the name is no mark
