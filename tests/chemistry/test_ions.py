"""Sums, missing ions, types and ratios of ions. The published analyses are in test_worked_examples."""

import math

import numpy as np
import pytest

from wellchem import chemistry as c

# Hem, USGS WSP 2254, 1985, Table 2: sea water (memory).
SEA = {
    "calcium": 410.0,
    "magnesium": 1350.0,
    "sodium": 10500.0,
    "potassium": 390.0,
    "alkalinity": 142.0 * 0.82016,
    "sulfate": 2700.0,
    "chloride": 19000.0,
}
CATIONS = ("calcium", "magnesium", "sodium", "potassium")
ANIONS = ("alkalinity", "sulfate", "chloride")


def test_sea_water_is_a_sodium_chloride_water() -> None:
    assert c.water_type(**SEA) == "sodium chloride"
    # The sea's ratio of sodium to chloride is 0.86 (Hem 1985, memory), of chloride to bromide about 290 by mass.
    assert c.sodium_chloride_ratio(sodium=10500.0, chloride=19000.0) == pytest.approx(0.86, abs=0.01)
    assert c.chloride_bromide_ratio(chloride=19000.0, bromide=67.0) == pytest.approx(290, rel=0.03)


def test_ratios_of_the_sea() -> None:
    # Amounts of substance in reference sea water (Millero and others, Deep-Sea Research I 55, 2008, Table 4; memory).
    grams = {"Ca": 0.01028 * 40.078, "Mg": 0.05282 * 24.305, "SO4": 0.02824 * 96.06, "Cl": 0.54587 * 35.453}
    assert c.calcium_magnesium_ratio(calcium=grams["Ca"], magnesium=grams["Mg"]) == pytest.approx(0.1946, rel=1e-3)
    assert c.sulfate_chloride_ratio(sulfate=grams["SO4"], chloride=grams["Cl"]) == pytest.approx(0.1035, rel=1e-3)


def test_dissolved_solids_over_conductance() -> None:
    # The conductance of 0.01 mol/L KCl is 1,412 µS/cm (Standard Methods 2510, memory) and its salt 745.5 mg/L.
    assert c.dissolved_solids_conductance_ratio(dissolved_solids=745.5, conductance=1412.0) == pytest.approx(
        0.528, abs=5e-4
    )


def test_a_water_without_a_leading_ion_is_mixed() -> None:
    mixed = {"calcium": 20.0, "magnesium": 12.0, "sodium": 23.0, "potassium": 0.0}
    anions = {"alkalinity": 60.0, "sulfate": 48.0, "chloride": 10.0}
    assert c.water_type(**mixed, **anions) == "sodium-calcium-magnesium bicarbonate-sulfate"


def test_types_of_many_waters_are_those_of_each() -> None:
    rng = np.random.default_rng(3)
    waters = {name: rng.lognormal(3, 1, 500) for name in SEA}
    waters["calcium"][7] = math.nan
    types = c.water_type(**waters)
    assert types[7] == ""
    for i in range(0, 500, 37):
        assert types[i] == c.water_type(**{name: values[i] for name, values in waters.items()})


def test_distilled_water_has_no_type() -> None:
    assert c.water_type(**dict.fromkeys(SEA, 0.0)) == ""


def test_missing_ions_are_named_per_water() -> None:
    assert c.missing_ions(**SEA, nitrate=0.0) == ""
    some = dict(SEA, potassium=np.array([1.0, math.nan]))
    assert list(c.missing_ions(**some)) == ["nitrate", "nitrate;potassium"]
    assert c.missing_ions() == "alkalinity;calcium;chloride;magnesium;nitrate;potassium;sodium;sulfate"


def test_a_missing_cation_opens_the_sum_and_the_balance_upwards() -> None:
    known = {name: SEA[name] for name in CATIONS} | {"potassium": (0.0, math.inf)}
    cations = c.bounds(c.cation_sum, known)
    assert cations.low == pytest.approx(c.cation_sum(**{**known, "potassium": 0.0}))
    assert cations.high == math.inf
    anions = c.anion_sum(**{name: SEA[name] for name in ANIONS})
    balance = c.bounds(c.charge_balance, {"cations": cations, "anions": anions})
    assert balance.low == pytest.approx(c.charge_balance(cations=cations.low, anions=anions))
    assert balance.high == 100.0


def test_difference_gives_back_the_sodium_of_a_balanced_water() -> None:
    cations = c.cation_sum(calcium=60.0, magnesium=10.0, sodium=0.0, potassium=0.0)
    anions = c.anion_sum(alkalinity=150.0, sulfate=40.0, chloride=30.0)
    sodium = c.sodium_by_difference(cations=cations, anions=anions)
    balanced = c.cation_sum(calcium=60.0, magnesium=10.0, sodium=sodium, potassium=0.0)
    assert c.charge_balance(cations=balanced, anions=anions) == pytest.approx(0.0, abs=1e-12)


def test_an_acid_water_counts_its_hydrogen() -> None:
    neutral = c.cation_sum(calcium=10.0, magnesium=1.0, sodium=5.0, potassium=1.0)
    acid = c.cation_sum(calcium=10.0, magnesium=1.0, sodium=5.0, potassium=1.0, ph=3.0)
    assert acid - neutral == pytest.approx(1.0)  # 10**-3 mol/L of a single charge, by the definition of pH


def test_an_unknown_ion_is_an_error() -> None:
    with pytest.raises(ValueError, match="no ion"):
        c.ion_milliequivalents(1.0, "silica")


def test_nitrate_counts_the_same_on_both_bases() -> None:
    as_nitrogen = c.ion_milliequivalents(10.0, "nitrate")
    assert as_nitrogen == pytest.approx(c.milliequivalents(c.in_basis(10.0, "N", "NO3"), "NO3"), rel=1e-12)
