"""Alkalinity's forms. The published examples are in test_worked_examples."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellchem import chemistry as c


@given(st.floats(0.0, 1e4), st.floats(0.0, 1.0))
def test_the_forms_make_the_whole(total: float, share: float) -> None:
    forms = c.alkalinity_forms(phenolphthalein_alkalinity=share * total, alkalinity=total)
    assert sum(forms) == pytest.approx(total)
    assert min(forms) >= 0.0
    assert forms.hydroxide == 0.0 or forms.bicarbonate == pytest.approx(0.0, abs=1e-9 * total)


def test_more_to_the_first_end_point_than_to_the_second_is_no_water() -> None:
    assert all(map(math.isnan, c.alkalinity_forms(phenolphthalein_alkalinity=30.0, alkalinity=20.0)))
    assert all(map(math.isnan, c.alkalinity_forms(phenolphthalein_alkalinity=math.nan, alkalinity=20.0)))
    assert all(map(math.isnan, c.handbook_alkalinity_forms(alkalinity=math.nan, ph=7.0)))


def test_a_thousand_waters_at_once() -> None:
    ends = np.linspace(0.0, 100.0, 1000)
    forms = c.alkalinity_forms(phenolphthalein_alkalinity=ends, alkalinity=100.0)
    for i in (0, 499, 999):
        one = c.alkalinity_forms(phenolphthalein_alkalinity=ends[i], alkalinity=100.0)
        assert [column[i] for column in forms] == list(one)


@given(st.floats(0.0, 500.0), st.floats(0.0, 100.0), st.floats(0.0, 50.0))
def test_anions_to_alkalinity_is_linear(bicarbonate: float, carbonate: float, hydroxide: float) -> None:
    alone = (
        c.total_alkalinity(bicarbonate=bicarbonate)
        + c.total_alkalinity(bicarbonate=0.0, carbonate=carbonate)
        + c.total_alkalinity(bicarbonate=0.0, hydroxide=hydroxide)
    )
    together = c.total_alkalinity(bicarbonate=bicarbonate, carbonate=carbonate, hydroxide=hydroxide)
    assert together == pytest.approx(alone)
