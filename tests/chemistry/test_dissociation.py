"""Un-ionised ammonia and hydrogen sulfide; the published values are among the worked examples."""

import math

import numpy as np
import pandas as pd
import pytest

from wellchem import chemistry as c


def test_half_is_un_ionised_at_the_pk() -> None:
    celsius = np.array([0.0, 12.0, 25.0])
    ammonia = c.unionized_ammonia_fraction(ph=c.ammonia_pka(temperature=celsius), temperature=celsius)
    sulfide = c.hydrogen_sulfide_fraction(ph=c.hydrogen_sulfide_pk1(temperature=celsius), temperature=celsius)
    np.testing.assert_allclose(ammonia, 0.5)
    np.testing.assert_allclose(sulfide, 0.5)


def test_the_handbook_forms_agree_with_the_speciation_of_dilute_water() -> None:
    ph, celsius = np.meshgrid([6.0, 7.0, 8.0, 9.0], [5.0, 15.0, 25.0])
    water = c.speciate(temperature=celsius, ph=ph, alkalinity=20.0, ammonia=0.01, sulfide=0.01)
    total = 0.01 / c.molar_mass("N") / 1000 / water.water
    np.testing.assert_allclose(
        water.molality("NH3") / total, c.unionized_ammonia_fraction(ph=ph, temperature=celsius), rtol=0.08
    )
    total = 0.01 / c.molar_mass("S") / 1000 / water.water
    # The ions' activity coefficients at 20 mg/L of alkalinity.
    np.testing.assert_allclose(
        water.molality("H2S") / total, c.hydrogen_sulfide_fraction(ph=ph, temperature=celsius), rtol=0.03
    )


def test_electron_activity() -> None:
    # 59.16 mV per unit of pe at 25 °C (2.303 RT/F).
    assert c.electron_activity(redox_potential=59.16, temperature=25.0) == pytest.approx(1.0, abs=1e-4)
    # O2 + 4 H+ + 4 e- = 2 H2O: 1.229 V is pe 20.77 (Stumm & Morgan 1996, from memory).
    assert c.electron_activity(redox_potential=1229.0, temperature=25.0) == pytest.approx(20.77, abs=0.01)


def test_floats_arrays_series_and_nan() -> None:
    assert isinstance(c.unionized_ammonia(ammonia=1.0, ph=8.0, temperature=20.0), float)
    series = pd.Series([7.0, math.nan])
    found = c.hydrogen_sulfide_fraction(ph=series, temperature=10.0)
    assert np.isnan(found).tolist() == [False, True]
    assert found[0] == c.hydrogen_sulfide_fraction(ph=7.0, temperature=10.0)
