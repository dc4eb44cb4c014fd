"""Hardness and its parts. The published examples are in test_worked_examples."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellchem import chemistry as c

AMOUNTS = st.floats(0.0, 1e5)


@given(AMOUNTS, AMOUNTS)
def test_the_parts_make_the_whole(calcium: float, magnesium: float) -> None:
    whole = c.total_hardness(calcium=calcium, magnesium=magnesium)
    assert c.calcium_hardness(calcium=calcium) + c.magnesium_hardness(magnesium=magnesium) == pytest.approx(whole)


@given(AMOUNTS, AMOUNTS)
def test_carbonate_and_noncarbonate_make_the_whole(hardness: float, alkalinity: float) -> None:
    carbonate = c.carbonate_hardness(total_hardness=hardness, alkalinity=alkalinity)
    rest = c.noncarbonate_hardness(total_hardness=hardness, alkalinity=alkalinity)
    assert carbonate + rest == pytest.approx(hardness)
    assert rest >= 0.0


def test_it_broadcasts() -> None:
    grid = c.total_hardness(calcium=np.array([[10.0], [20.0]]), magnesium=np.array([1.0, 2.0, np.nan]))
    assert grid.shape == (2, 3)
    assert np.isnan(grid[:, 2]).all()
    assert grid[1, 0] == c.total_hardness(calcium=20.0, magnesium=1.0)
