"""The checks of an analysis. The published examples are in test_worked_examples."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellchem import chemistry as c

SUMS = st.floats(1e-3, 790.0)


@given(SUMS, SUMS)
def test_the_balance_is_antisymmetric_and_within_a_hundred(cations: float, anions: float) -> None:
    balance = c.charge_balance(cations=cations, anions=anions)
    assert -100.0 <= balance <= 100.0
    assert c.charge_balance(cations=anions, anions=cations) == pytest.approx(-balance)
    assert c.charge_balance_of_mean(cations=cations, anions=anions) == pytest.approx(2.0 * balance)


# Standard Methods 1030 E.1 (memory): 0.2 meq/L to 3, 2 % to 10, 5 % to 800 meq/L of anions.
@pytest.mark.parametrize(
    "cations, anions, permitted",
    [
        (0.1, 0.05, 0.2),
        (3.1, 3.0, 0.2),
        (3.1, 3.001, 0.06101 * 2.0),
        (10.0, 10.0, 0.4),
        (10.1, 10.1, 1.01),
        (800.0, 800.0, 80.0),
    ],
)
def test_permitted_difference_by_class(cations: float, anions: float, permitted: float) -> None:
    assert c.permitted_charge_difference(cations=cations, anions=anions) == pytest.approx(permitted, rel=1e-3)


def test_beyond_the_criterion_there_is_no_verdict() -> None:
    assert math.isnan(c.permitted_charge_difference(cations=900.0, anions=900.0))
    assert math.isnan(c.charge_imbalance(cations=math.nan, anions=3.0))
    assert math.isnan(c.charge_imbalance(cations=-1.0, anions=3.0))
    with pytest.raises(ValueError, match="criterion"):
        c.charge_imbalance(cations=1.0, anions=1.0, criterion="mine")


def test_criteria_of_two_countries_disagree_on_one_water() -> None:
    # DVWK 128 (via Wilke): 2 % of the mean above 2 meq/L. 12.3 and 12.0 meq/L: 1.2 % of the sum, 2.5 % of the mean.
    assert c.charge_imbalance(cations=12.3, anions=12.0) < 1.0
    assert c.charge_imbalance(cations=12.3, anions=12.0, criterion="DVWK 128") > 1.0


def test_arrays_agree_with_scalars() -> None:
    cations, anions = np.array([0.5, 4.0, 50.0, np.nan]), np.array([0.6, 4.2, 49.0, 1.0])
    together = c.charge_imbalance(cations=cations, anions=anions)
    alone = [c.charge_imbalance(cations=x, anions=y) for x, y in zip(cations, anions, strict=True)]
    np.testing.assert_array_equal(together, alone)


def test_an_unknown_check_is_an_error() -> None:
    with pytest.raises(ValueError, match="acceptance"):
        c.acceptance("colour")
