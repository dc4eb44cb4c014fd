"""Conversions against exact definitions, and their round trips."""

import math

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellchem import chemistry as c

AMOUNTS = st.floats(1e-9, 1e9)
BASES = [
    ("NO3", "N"),
    ("NO2", "N"),
    ("NH4", "NH3"),
    ("PO4", "P"),
    ("P2O5", "PO4"),
    ("SiO2", "Si"),
    ("H4SiO4", "SiO2"),
    ("SO4", "S"),
    ("H2S", "S"),
    ("HCO3", "CaCO3"),
    ("CO3", "HCO3"),
    ("CaCO3", "OH"),
    ("Ca", "CaCO3"),
    ("Mg", "CaCO3"),
    ("CaO", "CaCO3"),
    ("NaCl", "Cl"),
    ("H3BO3", "B"),
    ("U3O8", "U"),
]


@given(AMOUNTS, st.sampled_from(BASES))
def test_bases_round_trip(amount: float, pair: tuple[str, str]) -> None:
    there = c.in_basis(amount, *pair)
    assert c.in_basis(there, *reversed(pair)) == pytest.approx(amount, rel=1e-12)


@given(AMOUNTS, st.sampled_from(["Ca", "SO4", "HCO3", "CaCO3", "NO3"]))
def test_moles_and_equivalents_round_trip(amount: float, formula: str) -> None:
    assert c.milligrams(c.millimoles(amount, formula), formula) == pytest.approx(amount, rel=1e-12)
    back = c.milligrams_from_milliequivalents(c.milliequivalents(amount, formula), formula)
    assert back == pytest.approx(amount, rel=1e-12)
    ratio = c.milliequivalents(amount, formula) / c.millimoles(amount, formula)
    assert ratio == pytest.approx(c.equivalents_per_mole(formula), rel=1e-12)


HARDNESS_UNITS = ["mg/L", "mmol/L", "meq/L", "gpg", "°e", "°dH", "°fH", "°rH"]


@given(AMOUNTS, st.sampled_from(HARDNESS_UNITS), st.sampled_from(HARDNESS_UNITS))
def test_hardness_units_round_trip(amount: float, source: str, target: str) -> None:
    there = c.convert_hardness(amount, source, target)
    assert c.convert_hardness(there, target, source) == pytest.approx(amount, rel=1e-12)


@given(AMOUNTS, st.sampled_from(["U-nat", "U-EPA", "U-238", "Ra-226", "H-3"]))
def test_activity_round_trips(amount: float, nuclide: str) -> None:
    there = c.activity_from_mass(amount, nuclide)
    assert c.mass_from_activity(there, nuclide) == pytest.approx(amount, rel=1e-12)


@given(st.floats(0.0, 3.0), st.sampled_from([0.5, 1.0, 4.0, 5.0]))
def test_absorbance_round_trips(absorbance: float, path: float) -> None:
    per_centimetre = c.uv_absorbance(c.uv_transmittance(absorbance, path=path))
    assert per_centimetre * path == pytest.approx(absorbance, rel=1e-12, abs=1e-12)


def test_alkalinity_goes_by_equivalents_not_by_carbon() -> None:
    # Hem WSP 2254, 1985, p. 57 (memory): HCO3 x 0.8202 = CaCO3; SM 1030 E (memory): HCO3 x 0.4917 = CO3.
    assert c.basis_factor("HCO3", "CaCO3") == pytest.approx(0.8202, abs=1e-4)
    assert c.basis_factor("HCO3", "CO3") == pytest.approx(0.4917, abs=1e-4)
    # A carbon basis, on the other hand, counts atoms: 61.017 / 12.011.
    assert c.basis_factor("HCO3", "C") == pytest.approx(12.011 / 61.016, rel=1e-9)


def test_radium_defines_the_curie() -> None:
    # The curie was the activity of 1 g of radium-226, 3.7e10 Bq; modern half-lives give 0.989 of it (NIST).
    assert c.specific_activity("Ra-226") == pytest.approx(0.989 * 3.7e7, rel=2e-3)
    # Tritium: 3.56e14 Bq/g (IAEA Radioisotopes data, from memory).
    assert c.specific_activity("H-3") == pytest.approx(3.56e11, rel=5e-3)


@pytest.mark.parametrize("pair", [("Fe", "CaCO3"), ("SO4", "N"), ("CO2", "CaCO3"), ("SiO2", "CaCO3"), ("O2", "H2O")])
def test_what_nothing_links_is_an_error(pair: tuple[str, str]) -> None:
    with pytest.raises(ValueError, match=r"links|equivalents"):
        c.basis_factor(*pair)


def test_an_ambiguous_charge_is_the_callers_to_choose() -> None:
    ferrous = c.basis_factor("Fe", "CaCO3", charge=2)
    assert ferrous == pytest.approx(100.086 / 55.845, rel=1e-9)
    assert c.basis_factor("Fe", "CaCO3", charge=3) == pytest.approx(1.5 * ferrous, rel=1e-12)


@pytest.mark.parametrize("call", [lambda: c.hardness_factor("ppm"), lambda: c.specific_activity("Cs-999")])
def test_an_unknown_unit_or_nuclide_is_an_error(call: object) -> None:
    with pytest.raises(ValueError, match=r"unit of hardness|half-life"):
        call()  # type: ignore[operator]


def test_scalars_arrays_and_series_agree() -> None:
    values = [0.0, 1.5, math.nan, 44.3]
    one_by_one = [c.in_basis(value, "NO3", "N") for value in values]
    assert all(type(value) is float for value in one_by_one)
    for many in (np.array(values), pd.Series(values), values):
        result = c.in_basis(many, "NO3", "N")  # type: ignore[type-var]
        assert isinstance(result, np.ndarray)
        np.testing.assert_array_equal(result, one_by_one)
    assert c.in_basis(3, "NO3", "N") == c.in_basis(3.0, "NO3", "N")
