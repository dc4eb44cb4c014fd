"""Speciation against the reference engine on random waters, and what must hold of any water."""

import math

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellchem import chemistry as c

MAJOR = {
    "temperature": 12.0,
    "ph": 7.4,
    "alkalinity": 220.0,
    "calcium": 84.0,
    "magnesium": 21.0,
    "sodium": 33.0,
    "potassium": 3.1,
    "sulfate": 61.0,
    "chloride": 48.0,
    "nitrate": 4.2,
    "fluoride": 0.3,
    "silica": 14.0,
}
# Loosest of the room's targets; minerals of many ions add up the errors of each.
MOST = {"calcite": 0.02, "aragonite": 0.02, "hydroxyapatite": 0.1}


@pytest.mark.parametrize("seed, traces", [(1, False), (2, True), (3, True)])
def test_random_waters_agree_with_the_engine(seed: int, traces: bool) -> None:
    # Source of the expected values: PHREEQC 3.7.3 itself, run here (Parkhurst & Appelo 2013).
    engine = pytest.importorskip("chemistry.reference_engine")
    waters = engine.random_waters(150, seed, traces)
    found = c.speciate(**waters)
    minerals = [name for name in engine.PHASES if found.system.phase(name) is not None]
    asked = [f'SI("{engine.PHASES[name]}")' for name in minerals] + ['SI("CO2(g)")', "MU"]
    expected = engine.ask(waters, asked)
    failed = np.isnan(expected[:, 0])
    # The engine fails where the alkalinity is taken up by other bases, and hardly anywhere else.
    assert failed.mean() < 0.1
    assert (found.reason[failed] != c.Reason.SOLVED).sum() >= failed.sum() - 1
    assert (found.reason[~failed] == c.Reason.SOLVED).all()
    # Where other bases hold nearly all of the alkalinity, carbonate is a small difference of two large numbers.
    sound = ~failed & (c.alkalinity_parts(found).carbonate > 0.1 * waters["alkalinity"])
    assert sound.mean() > 0.8
    for mineral, reference in zip(minerals, expected[sound].T, strict=False):
        off = np.abs(c.saturation_index(found, mineral)[sound] - reference).max()
        assert off <= MOST.get(mineral, 0.03), mineral
    assert np.abs(found.log_pco2[sound] - expected[sound, -2]).max() <= 0.01
    np.testing.assert_allclose(found.ionic_strength[sound], expected[sound, -1], rtol=0.02)


def test_both_doors_of_the_carbonate_system_lead_to_the_same_water() -> None:
    first = c.speciate(**MAJOR)
    rest = {name: value for name, value in MAJOR.items() if name not in ("ph", "alkalinity")}
    known = {
        "ph": MAJOR["ph"],
        "alkalinity": MAJOR["alkalinity"],
        "inorganic_carbon": first.inorganic_carbon,
        "pco2": 10**first.log_pco2,
    }
    for one in known:
        for other in list(known)[list(known).index(one) + 1 :]:
            again = c.speciate(**rest, **{one: known[one], other: known[other]})
            assert again.reason == c.Reason.SOLVED
            # Carbon as such, or as alkalinity, makes a litre's mass of water differ by some 1e-5.
            assert again.ph == pytest.approx(first.ph, abs=2e-4), (one, other)
            assert again.alkalinity == pytest.approx(first.alkalinity, rel=2e-4), (one, other)


LEVEL = st.floats(0.1, 900.0)
WATERS = st.fixed_dictionaries(
    {name: LEVEL for name in MAJOR if name not in ("temperature", "ph", "fluoride", "silica", "alkalinity")}
    | {
        "temperature": st.floats(0.0, 60.0),
        "ph": st.floats(5.0, 9.2),
        "alkalinity": st.floats(40.0, 900.0),
        "fluoride": st.floats(0.01, 8.0),
        "silica": st.floats(1.0, 80.0),
    }
)
# Charge and formula mass of what is given: as in the periodic table, but read from the room's own atomic weights.
IONS = {
    "calcium": ("Ca", 2),
    "magnesium": ("Mg", 2),
    "sodium": ("Na", 1),
    "potassium": ("K", 1),
    "sulfate": ("SO4", -2),
    "chloride": ("Cl", -1),
    "nitrate": ("N", -1),
    "fluoride": ("F", -1),
}


@settings(max_examples=60, deadline=None)
@given(WATERS)
def test_mass_and_charge_are_conserved(water: dict[str, float]) -> None:
    found = c.speciate(**water)
    assert found.reason == c.Reason.SOLVED
    molalities = np.array([found.molality(name) for name in found.species])
    totals = found.system.stoichiometry.T @ molalities * found.water
    for name, master in (("calcium", "Ca+2"), ("sulfate", "SO4-2"), ("fluoride", "F-"), ("magnesium", "Mg+2")):
        expected = water[name] / c.molar_mass(IONS[name][0]) / 1000
        assert totals[found.components.index(master)] == pytest.approx(expected, rel=1e-5)
    assert found.alkalinity == pytest.approx(water["alkalinity"], rel=1e-5)
    # Alkalinity is the charge that the strong ions leave to the weak ones (Stumm & Morgan 1996, ch. 4).
    strong = sum(charge * water[name] / c.molar_mass(formula) for name, (formula, charge) in IONS.items())
    weak = water["alkalinity"] / c.molar_mass("CaCO3") * 2
    assert found.charge_balance * found.water * 1000 == pytest.approx(strong - weak, abs=1e-5 * (abs(strong) + weak))


@settings(max_examples=60, deadline=None)
@given(WATERS, st.floats(1.02, 3.0))
def test_calcite_rises_with_calcium(water: dict[str, float], factor: float) -> None:
    more = water | {"calcium": water["calcium"] * factor}
    assert c.saturation_index(c.speciate(**more), "calcite") > c.saturation_index(c.speciate(**water), "calcite")


@settings(max_examples=60, deadline=None)
@given(WATERS, st.floats(0.01, 1.0))
def test_calcite_rises_with_ph_up_to_9_2(water: dict[str, float], step: float) -> None:
    # At ground water's temperatures: in hot water hydroxide takes the alkalinity, and the turn comes before 9.2.
    water = water | {"temperature": min(water["temperature"], 30.0)}
    more = water | {"ph": min(9.2, water["ph"] + step)}
    if more["ph"] - water["ph"] >= 0.01:  # a smaller step is lost in rounding
        assert c.saturation_index(c.speciate(**more), "calcite") > c.saturation_index(c.speciate(**water), "calcite")


def test_scalars_arrays_series_and_broadcasting_agree() -> None:
    temperature, ph = np.array([[5.0], [15.0], [40.0]]), np.array([6.0, 7.0, 8.0, 9.0])
    grid = c.speciate(**{**MAJOR, "temperature": temperature, "ph": ph})
    index, pressure = c.saturation_index(grid, "calcite"), grid.log_pco2
    assert index.shape == (3, 4)
    for i, celsius in enumerate(temperature[:, 0]):
        for j, acidity in enumerate(ph):
            one = c.speciate(**{**MAJOR, "temperature": celsius, "ph": acidity})
            assert isinstance(one.ph, float)
            assert isinstance(c.saturation_index(one, "calcite"), float)
            assert c.saturation_index(one, "calcite") == pytest.approx(index[i, j], abs=1e-6)
            assert one.log_pco2 == pytest.approx(pressure[i, j], abs=1e-6)
    series = c.speciate(**{**MAJOR, "ph": pd.Series(ph, index=list("abcd")), "temperature": 15.0})
    np.testing.assert_allclose(c.saturation_index(series, "calcite"), index[1], atol=1e-6)
    assert c.saturation_index(c.speciate(**{**MAJOR, "ph": np.array([])}), "calcite").shape == (0,)


def test_blocks_do_not_show() -> None:
    # More waters than one block holds, each with a neighbour that is hard to solve or not to be solved at all.
    count = 9001
    rng = np.random.default_rng(4)
    waters = {name: np.full(count, value) for name, value in MAJOR.items()}
    waters["sulfate"] = 10 ** rng.uniform(0, 4, count)
    waters["magnesium"] = 10 ** rng.uniform(0, 3, count)
    waters["ph"][::7] = np.nan
    whole = c.speciate(**waters)
    some = rng.integers(0, count, 40)
    part = c.speciate(**{name: values[some] for name, values in waters.items()})
    np.testing.assert_array_equal(part.reason, whole.reason[some])
    np.testing.assert_allclose(part.ionic_strength, whole.ionic_strength[some], rtol=1e-5)


def test_what_has_no_result_says_why() -> None:
    ph = np.array([7.4, math.nan, 7.4, 7.4, 7.4, 15.0, 10.5, 7.4, math.inf])
    alkalinity = np.array([220.0, 220.0, math.nan, 220.0, 220.0, 220.0, 5.0, 220.0, 220.0])
    calcium = np.array([84.0, 84.0, 84.0, -1.0, 84.0, 84.0, 84.0, 84.0, 84.0])
    temperature = np.array([12.0, 12.0, 12.0, 12.0, 130.0, 12.0, 12.0, 12.0, 12.0])
    chloride = np.array([48.0] * 7 + [60000.0, 48.0])
    found = c.speciate(
        **MAJOR
        | {
            "ph": ph,
            "alkalinity": alkalinity,
            "calcium": calcium,
            "temperature": temperature,
            "chloride": chloride,
            "sodium": np.where(chloride > 100, 40000.0, 33.0),
        }
    )
    why = c.Reason
    assert found.reason.tolist() == [
        why.SOLVED,
        why.MISSING,
        why.MISSING,
        why.OUT_OF_RANGE,
        why.OUT_OF_RANGE,
        why.OUT_OF_RANGE,
        why.NO_CARBONATE,
        why.TOO_SALINE,
        why.OUT_OF_RANGE,
    ]
    bad = found.reason != why.SOLVED
    for values in (
        found.ph,
        found.temperature,
        found.ionic_strength,
        found.water,
        found.log_pco2,
        found.alkalinity,
        found.inorganic_carbon,
        found.charge_balance,
        found.molality("HCO3-"),
        found.log_activity("Ca+2"),
        c.saturation_index(found, "calcite"),
        c.speciated_conductance(found),
    ):
        np.testing.assert_array_equal(np.isnan(values), bad)


@pytest.mark.parametrize("name", MAJOR)
def test_nan_in_is_nan_out(name: str) -> None:
    found = c.speciate(**MAJOR | {name: math.nan})
    assert found.reason == c.Reason.MISSING
    assert math.isnan(c.saturation_index(found, "calcite"))
    assert math.isnan(found.ionic_strength)


def test_absent_and_nought() -> None:
    nought = c.speciate(**MAJOR | {"fluoride": 0.0})
    rest = {name: value for name, value in MAJOR.items() if name != "fluoride"}
    absent = c.speciate(**rest)
    assert c.saturation_index(nought, "fluorite") == -math.inf
    assert math.isnan(c.saturation_index(absent, "fluorite"))
    assert absent.molality("F-") == 0.0
    assert absent.log_activity("F-") == -math.inf
    assert nought.ionic_strength == pytest.approx(absent.ionic_strength, rel=1e-9)


def test_pure_water_has_the_ph_of_its_carbon_dioxide() -> None:
    # Rain in equilibrium with 10^-3.5 atm: pH 5.66 (Stumm & Morgan 1996, ch. 4, at 25 °C).
    rain = c.speciate(temperature=25.0, alkalinity=0.0, pco2=10**-3.5)
    assert rain.reason == c.Reason.SOLVED
    assert rain.ph == pytest.approx(5.66, abs=0.02)


def test_iron_is_shared_out_by_the_electron_activity() -> None:
    waters = c.speciate(**MAJOR | {"iron": 2.0, "pe": np.array([-2.0, 12.0])})
    # Fe3+ + e- = Fe2+, log K 13.02 at 25 °C (Ball & Nordstrom 1991), less at 12 °C by its enthalpy.
    ratio = waters.log_activity("Fe+3") - waters.log_activity("Fe+2") - waters.pe
    np.testing.assert_allclose(ratio, ratio[0], atol=1e-9)
    assert ratio[0] == pytest.approx(-13.02 - 0.32, abs=0.02)
    indices = c.saturation_indices(waters)
    assert indices.ferrihydrite[1] > indices.ferrihydrite[0] + 5
    assert indices.siderite[1] < indices.siderite[0]
    assert math.isnan(c.saturation_indices(c.speciate(**MAJOR | {"iron": 2.0})).ferrihydrite)


def test_wrong_questions_are_refused() -> None:
    with pytest.raises(ValueError, match="two of ph, alkalinity"):
        c.speciate(temperature=10.0, ph=7.0)
    with pytest.raises(ValueError, match="two of ph, alkalinity"):
        c.speciate(temperature=10.0, ph=7.0, alkalinity=100.0, pco2=0.01)
    with pytest.raises(ValueError, match="shape"):
        c.speciate(temperature=np.zeros(2), ph=np.zeros(3), alkalinity=100.0)
    water = c.speciate(**MAJOR)
    with pytest.raises(ValueError, match="no aqueous species"):
        water.molality("CaX")
    with pytest.raises(ValueError, match="no aqueous species"):
        water.log_activity("CaX")
    with pytest.raises(ValueError, match="no mineral"):
        c.saturation_index(water, "kryptonite")


def test_bounds_over_an_uncertain_ph_contain_the_point() -> None:
    def index(**water: float) -> float:
        return c.saturation_index(c.speciate(**water), "calcite")

    found = c.bounds(index, MAJOR | {"ph": (7.1, 7.7)})
    assert found.low == pytest.approx(index(**MAJOR | {"ph": 7.1}), abs=1e-6)
    assert found.high == pytest.approx(index(**MAJOR | {"ph": 7.7}), abs=1e-6)
    assert found.low < index(**MAJOR) < found.high


CLOSURES = [
    ("ph", "alkalinity"),
    ("ph", "inorganic_carbon"),
    ("ph", "pco2"),
    ("alkalinity", "inorganic_carbon"),
    ("alkalinity", "pco2"),
    ("inorganic_carbon", "pco2"),
]


@pytest.mark.filterwarnings("error")
@pytest.mark.parametrize("pair", CLOSURES, ids=" and ".join)
def test_any_numbers_whatever_give_a_result_or_a_reason(pair: tuple[str, str]) -> None:
    rng = np.random.default_rng(CLOSURES.index(pair))
    count = 600
    solutes = set(MAJOR) - {"temperature", "ph", "alkalinity"} | {
        "iron",
        "sulfide",
        "ammonia",
        "boron",
        "orthophosphate",
    }
    waters = {name: 10 ** rng.uniform(-8, 4, count) * (rng.random(count) > 0.15) for name in sorted(solutes)}
    for values in waters.values():
        values[rng.random(count) < 0.02] = rng.choice([math.nan, math.inf, -1.0])
    waters["temperature"] = rng.uniform(-5, 105, count)
    closing = {
        "ph": rng.uniform(1, 13, count),
        "alkalinity": rng.choice([-1, 1], count, p=[0.1, 0.9]) * 10 ** rng.uniform(-4, 4, count),
        "inorganic_carbon": 10 ** rng.uniform(-5, 3.5, count) * (rng.random(count) > 0.05),
        "pco2": 10 ** rng.uniform(-8, 1, count),
    }
    waters |= {name: closing[name] for name in pair}
    for extra in ({}, {"pe": rng.uniform(-12, 25, count)}):
        found = c.speciate(**waters, **extra)
        solved = found.reason == c.Reason.SOLVED
        assert solved.sum() > 0.2 * count
        assert (found.reason == c.Reason.NOT_CONVERGED).mean() < 0.02
        for values in (found.ph, found.ionic_strength, found.water, found.alkalinity, found.inorganic_carbon):
            np.testing.assert_array_equal(np.isfinite(values), solved)
        indices = c.saturation_index(found, "calcite")
        assert not np.isnan(indices[solved]).any()
        # What solved waters say of themselves is what was given.
        if "alkalinity" in pair:
            # Alkalinity may be a small difference between acids and bases: it is as sure as these are.
            weights = np.abs(found.system.alkalinity)
            gross = found.each(lambda block, weights=weights: weights @ block.molalities() * block.water)
            allowed = 1e-5 * np.abs(waters["alkalinity"]) + 3e-6 * gross * c.molar_mass("CaCO3") / 2 * 1000
            assert (np.abs(found.alkalinity - waters["alkalinity"]) <= allowed)[solved].all()
        if "inorganic_carbon" in pair:
            np.testing.assert_allclose(
                found.inorganic_carbon[solved], waters["inorganic_carbon"][solved], rtol=1e-4, atol=1e-6
            )
        if "pco2" in pair:
            np.testing.assert_allclose(found.log_pco2[solved], np.log10(waters["pco2"][solved]), atol=1e-5)
        potential = c.calcium_carbonate_potential(found)
        np.testing.assert_array_equal(np.isfinite(potential.precipitated), potential.reason == c.Reason.SOLVED)
        warm = c.change_temperature(found, 60.0)
        np.testing.assert_array_equal(np.isfinite(warm.ph), warm.reason == c.Reason.SOLVED)
