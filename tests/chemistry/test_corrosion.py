"""Indices of corrosion. The published examples are in test_worked_examples."""

import math

import numpy as np
import pytest

from wellchem import chemistry as c
from wellchem.chemistry.handbook import carbonate


def test_a_ratio_of_masses_is_not_the_larson_skold_ratio() -> None:
    # 35 IAC 604.900 has all terms as CaCO3: 50 mg/L of chloride is 70.6, 60 of sulfate 62.5 as CaCO3.
    ratio = c.larson_skold_ratio(chloride=50.0, sulfate=60.0, alkalinity=150.0)
    assert ratio == pytest.approx((70.58 + 62.51) / 150.0, rel=1e-3)


def test_the_classes_of_galvanic_corrosion_leave_open_what_alkalinity_decides() -> None:
    # USGS SIR 2016-5092 (page): high above 0.5 with alkalinity below 50, moderate above 0.2, else low.
    ratios = [0.1, 0.2, 0.3, 0.6, 0.6, 0.6, math.inf, math.nan, 0.3]
    alkalinities = [10.0, 10.0, 10.0, 49.0, 50.0, math.nan, 10.0, 10.0, math.nan]
    classes = c.galvanic_corrosion_potential(chloride_sulfate_ratio=ratios, alkalinity=alkalinities)
    assert list(classes) == ["low", "low", "moderate", "high", "moderate", "", "high", "", "moderate"]
    assert c.galvanic_corrosion_potential(chloride_sulfate_ratio=0.6, alkalinity=10.0) == "high"


def test_buffer_capacity_is_the_slope_of_alkalinity_at_constant_carbon() -> None:
    # Its definition (Stumm and Morgan 1996): dCb/dpH in a closed system, here by difference over the species.
    water = {"temperature": np.array(18.0), "dissolved_solids": np.array(300.0)}
    for ph in (6.0, 6.35, 7.5, 8.3, 9.4):
        at = carbonate(ph=np.array(ph), alkalinity=np.array(120.0), **water)
        total = at.bicarbonate * (1.0 + at.hydrogen / at.k1 + at.k2 / at.hydrogen)

        def alkalinity(x: float, total: np.ndarray = total) -> float:
            c_ = carbonate(ph=np.array(x), alkalinity=np.array(120.0), **water)
            bicarbonate = total / (1.0 + c_.hydrogen / c_.k1 + c_.k2 / c_.hydrogen)
            return float(bicarbonate * (1.0 + 2.0 * c_.k2 / c_.hydrogen) + c_.hydroxide - c_.hydrogen)

        slope = (alkalinity(ph + 1e-4) - alkalinity(ph - 1e-4)) / 2e-4 * 1000.0
        found = c.buffer_capacity(ph=ph, alkalinity=120.0, temperature=18.0, dissolved_solids=300.0)
        assert found == pytest.approx(slope, rel=1e-6)


def test_buffer_capacity_is_least_near_ph_8_3() -> None:
    # Stumm and Morgan 1996 (memory): least at the equivalence point of bicarbonate, (pK1 + pK2)/2 = 8.34 at 25 °C.
    ph = np.linspace(7.0, 9.5, 2501)
    capacity = c.buffer_capacity(ph=ph, alkalinity=100.0, temperature=25.0, dissolved_solids=0.0)
    assert ph[np.argmin(capacity)] == pytest.approx(8.34, abs=0.1)


def test_the_range_for_copper_pipe() -> None:
    # A German supplier's page (seen) quotes DIN 50930-6 and puts its water, pH 7.2 to 7.4 with 5 mg/L of TOC, outside.
    assert c.copper_pipe_range(ph=7.3, organic_carbon=5.0) == "outside"
    found = c.copper_pipe_range(ph=[7.4, 7.2, 7.2, 6.9, math.nan], organic_carbon=[9.0, 1.5, math.nan, 0.1, 1.0])
    assert list(found) == ["inside", "inside", "", "outside", ""]
    assert c.copper_pipe_range(ph=8.0) == "inside"
