"""Specific conductance of the speciated ions."""

import numpy as np
import pytest

from wellchem import chemistry as c


def test_random_waters_agree_with_the_engine() -> None:
    # Source of the expected values: PHREEQC 3.7.3 itself, the closed water brought to 25 °C, run here.
    engine = pytest.importorskip("chemistry.reference_engine")
    waters = engine.random_waters(120, 8, traces=False)
    found = c.speciated_conductance(c.speciate(**waters))
    expected = engine.ask(waters, ["SC"], "REACTION_TEMPERATURE 1\n 25\n")[:, 0]
    known = ~np.isnan(expected) & ~np.isnan(found)
    assert known.mean() > 0.95
    np.testing.assert_allclose(found[known], expected[known], rtol=0.03)


@pytest.mark.parametrize("molality, published", [(0.0005, 73.9), (0.001, 147.0)])
def test_potassium_chloride(molality: float, published: float) -> None:
    # Conductance of KCl at 25 °C: Standard Methods 2510, Table 2510:I (from memory). Stronger solutions of this one
    # salt come out too low, as they do from the engine: see the worked examples.
    water = c.speciate(
        temperature=25.0,
        alkalinity=0.0,
        pco2=10**-3.4,
        potassium=molality * c.molar_mass("K") * 1000,
        chloride=molality * c.molar_mass("Cl") * 1000,
    )
    # Carbonic acid of the air adds about 1 µS/cm.
    assert c.speciated_conductance(water) == pytest.approx(published + 0.9, abs=0.7)


def test_conductance_does_not_ask_at_which_temperature_the_water_was_analysed() -> None:
    water = {"alkalinity": 180.0, "calcium": 60.0, "sodium": 30.0, "sulfate": 40.0, "chloride": 25.0}
    cold = c.speciate(temperature=4.0, ph=7.6, **water)
    warm = c.change_temperature(cold, 35.0)
    assert c.speciated_conductance(warm) == pytest.approx(c.speciated_conductance(cold), rel=1e-6)
