"""The carbonate system in handbook terms, and what holds the alkalinity."""

from dataclasses import fields

import numpy as np
import pytest

from wellchem import chemistry as c

WATER = {
    "temperature": 25.0,
    "calcium": 60.0,
    "magnesium": 10.0,
    "sodium": 20.0,
    "sulfate": 30.0,
    "chloride": 20.0,
}
BASES = {"silica": 60.0, "boron": 4.0, "orthophosphate": 2.0, "ammonia": 5.0, "sulfide": 3.0}


def test_the_parts_are_the_whole() -> None:
    waters = c.speciate(**WATER, **BASES, alkalinity=150.0, ph=np.linspace(5.5, 9.5, 9))
    parts = c.alkalinity_parts(waters)
    total = sum(np.asarray(getattr(parts, field.name)) for field in fields(parts))
    np.testing.assert_allclose(total, 150.0, rtol=1e-5)
    system = c.carbonate_system(waters)
    carbon = (
        system.carbon_dioxide * c.molar_mass("C") / c.molar_mass("CO2")
        + system.bicarbonate * c.molar_mass("C") / c.molar_mass("HCO3")
        + system.carbonate * c.molar_mass("C") / c.molar_mass("CO3")
        + system.paired
    )
    # What is left is the dimer (CO2)2, 0.1 % at most here.
    np.testing.assert_allclose(carbon, system.inorganic_carbon, rtol=2e-3)
    np.testing.assert_allclose(system.inorganic_carbon, waters.inorganic_carbon)
    np.testing.assert_allclose(system.log_pco2, waters.log_pco2)


def test_each_weak_acid_takes_its_share_of_the_alkalinity() -> None:
    # Half of the acid is its base at its pK (dilute, 25 °C): boric acid 9.24, hydrogen sulfide 6.94, ammonium 9.24
    # (phreeqc.dat). The base's share in mg/L as CaCO3 is then half a mole of charge per mole.
    for analyte, part, formula, pk in (
        ("boron", "borate", "B", 9.24),
        ("sulfide", "sulfide", "S", 6.94),
        ("ammonia", "ammonia", "N", 9.24),
    ):
        water = c.speciate(temperature=25.0, alkalinity=100.0, ph=pk, **{analyte: 2.0})
        half = 2.0 / c.molar_mass(formula) / 2 * c.molar_mass("CaCO3") / 2
        assert getattr(c.alkalinity_parts(water), part) == pytest.approx(half, rel=0.1), analyte


def test_bases_left_out_are_taken_for_carbonate() -> None:
    with_bases = c.speciate(**WATER, **BASES, alkalinity=150.0, ph=9.0)
    without = c.speciate(**WATER, alkalinity=150.0, ph=9.0)
    assert c.alkalinity_parts(with_bases).carbonate < c.alkalinity_parts(without).carbonate
    assert c.saturation_index(with_bases, "calcite") < c.saturation_index(without, "calcite")


def test_carbon_dioxide_of_the_handbook() -> None:
    # Standard Methods 4500-CO2 D (from memory), dilute water at 25 °C: CO2 = 2.0 x HCO3 (as CaCO3) x 10^(6 - pH).
    water = c.speciate(temperature=25.0, alkalinity=20.0, ph=6.5)
    assert c.carbonate_system(water).carbon_dioxide == pytest.approx(2.0 * 20.0 * 10**-0.5, rel=0.05)


def test_one_water_gives_floats() -> None:
    system = c.carbonate_system(c.speciate(**WATER, alkalinity=150.0, ph=8.0))
    assert all(isinstance(getattr(system, field.name), float) for field in fields(system))
