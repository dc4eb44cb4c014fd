"""Calcium carbonate potential and temperature changes of closed waters, against the reference engine."""

import math

import numpy as np
import pytest

from wellchem import chemistry as c

WATER = {
    "temperature": 11.0,
    "ph": 7.5,
    "alkalinity": 260.0,
    "calcium": 96.0,
    "magnesium": 24.0,
    "sodium": 18.0,
    "potassium": 2.0,
    "sulfate": 40.0,
    "chloride": 30.0,
    "silica": 12.0,
}
EQUILIBRIUM = "EQUILIBRIUM_PHASES 1\n {} 0 10\n"
PRECIPITATED = ['EQUI("{}")', '-LA("H+")', 'TOT("water")']


def potential(engine, waters, mineral="Calcite", heating=""):
    """The engine's precipitate as CaCO3 [mg/L] and pH after (the engine keeps a litre's kilogram of water)."""
    after = EQUILIBRIUM.format(mineral) + heating
    wanted = [word.format(mineral) for word in PRECIPITATED]
    expected = engine.ask(waters, wanted, after)
    litre = c.speciate(**waters).water
    return (expected[:, 0] - 10) / expected[:, 2] * litre * c.molar_mass("CaCO3") * 1000, expected[:, 1]


@pytest.mark.parametrize("mineral", ["calcite", "aragonite"])
def test_random_waters_agree_with_the_engine(mineral: str) -> None:
    engine = pytest.importorskip("chemistry.reference_engine")
    waters = engine.random_waters(120, 5, traces=False)
    start = c.speciate(**waters)
    found = c.calcium_carbonate_potential(start, mineral=mineral)
    expected, ph = potential(engine, waters, mineral.title())
    assert (found.reason == start.reason).all()
    # Carbon dioxide of more than an atmosphere leaves a water in the open, and buffers it so that a potential near
    # nought hangs on the fourth digit of the litre's mass.
    known = ~np.isnan(expected) & (found.reason == c.Reason.SOLVED) & (start.log_pco2 < 0)
    assert known.mean() > 0.85
    off = np.abs(found.precipitated - expected)[known]
    assert (off <= np.maximum(0.02 * np.abs(expected[known]), 0.5)).all()
    assert np.abs(found.ph_after - ph)[known].max() <= 0.01


def test_heated_waters_agree_with_the_engine() -> None:
    # A water heater: closed, brought to 60 °C, then equilibrated.
    engine = pytest.importorskip("chemistry.reference_engine")
    waters = engine.random_waters(80, 6, traces=False)
    found = c.calcium_carbonate_potential(c.speciate(**waters), temperature=60.0)
    expected, ph = potential(engine, waters, heating="REACTION_TEMPERATURE 1\n 60\n")
    known = ~np.isnan(expected) & (found.reason == c.Reason.SOLVED)
    assert known.mean() > 0.9
    off = np.abs(found.precipitated - expected)[known]
    assert (off <= np.maximum(0.02 * np.abs(expected[known]), 0.5)).all()
    assert np.abs(found.ph_after - ph)[known].max() <= 0.01


def test_a_temperature_change_agrees_with_the_engine() -> None:
    engine = pytest.importorskip("chemistry.reference_engine")
    waters = engine.random_waters(80, 7, traces=False)
    found = c.change_temperature(c.speciate(**waters), 45.0)
    expected = engine.ask(waters, ['-LA("H+")', 'SI("Calcite")', "MU"], "REACTION_TEMPERATURE 1\n 45\n")
    known = ~np.isnan(expected[:, 0]) & (found.reason == c.Reason.SOLVED)
    assert known.mean() > 0.95
    assert np.abs(found.ph - expected[:, 0])[known].max() <= 0.01
    assert np.abs(c.saturation_index(found, "calcite") - expected[:, 1])[known].max() <= 0.02
    np.testing.assert_allclose(found.ionic_strength[known], expected[known, 2], rtol=0.02)


def test_the_sign_is_that_of_the_saturation_index_and_what_is_left_is_saturated() -> None:
    rng = np.random.default_rng(3)
    ph, calcium = rng.uniform(6, 9, 400), 10 ** rng.uniform(0, 2.7, 400)
    waters = c.speciate(**WATER | {"ph": ph, "calcium": calcium})
    found = c.calcium_carbonate_potential(waters)
    np.testing.assert_array_equal(found.precipitated > 0, c.saturation_index(waters, "calcite") > 0)
    # Precipitation acidifies, dissolution the other way round.
    np.testing.assert_array_equal(found.ph_after < found.ph_before, found.precipitated > 0)
    # Taken out by hand, the precipitate leaves a water at equilibrium, with the pH that was told.
    rest = WATER | {
        "ph": found.ph_after,
        "alkalinity": WATER["alkalinity"] - found.precipitated,
        "calcium": calcium - found.precipitated * c.molar_mass("Ca") / c.molar_mass("CaCO3"),
    }
    settled = c.speciate(**rest)
    assert np.abs(c.saturation_index(settled, "calcite")).max() < 2e-4


def test_heating_a_hard_water_scales() -> None:
    cold = c.speciate(**WATER)
    at = [c.calcium_carbonate_potential(cold, temperature=celsius).precipitated for celsius in (11.0, 40.0, 60.0, 80.0)]
    assert at == sorted(at)
    assert at[0] == pytest.approx(c.calcium_carbonate_potential(cold).precipitated, abs=1e-3)


def test_a_change_there_and_back_changes_nothing() -> None:
    cold = c.speciate(**WATER)
    back = c.change_temperature(c.change_temperature(cold, 70.0), 11.0)
    assert back.ph == pytest.approx(cold.ph, abs=1e-5)
    assert back.alkalinity == pytest.approx(cold.alkalinity, rel=1e-5)
    assert back.water == pytest.approx(cold.water, rel=1e-12)


def test_what_has_no_result_says_why() -> None:
    waters = c.speciate(**WATER | {"ph": np.array([7.5, math.nan, 7.5, 7.5])})
    found = c.calcium_carbonate_potential(waters, temperature=np.array([60.0, 60.0, math.nan, 140.0]))
    assert found.reason.tolist() == [c.Reason.SOLVED, c.Reason.MISSING, c.Reason.MISSING, c.Reason.OUT_OF_RANGE]
    for values in (found.precipitated, found.ph_after, found.ph_before, found.saturation_index):
        np.testing.assert_array_equal(np.isnan(values), found.reason != c.Reason.SOLVED)


def test_wrong_questions_are_refused() -> None:
    soft = {name: value for name, value in WATER.items() if name != "calcium"}
    with pytest.raises(ValueError, match="with calcium"):
        c.calcium_carbonate_potential(c.speciate(**soft))
    with pytest.raises(ValueError, match="calcite, aragonite"):
        c.calcium_carbonate_potential(c.speciate(**WATER), mineral="dolomite")
    with pytest.raises(ValueError, match="broadcast"):
        c.change_temperature(c.speciate(**WATER), np.zeros(3))


def test_a_water_without_any_calcium_dissolves_some() -> None:
    found = c.calcium_carbonate_potential(c.speciate(**WATER | {"calcium": 0.0}))
    assert found.reason == c.Reason.SOLVED
    assert found.saturation_index == -math.inf
    assert found.precipitated < 0
