"""Sizes against worked examples from outside, unit arithmetic, and the order of ranges."""

from math import pi

import pytest
from treatment_waters import EXPECTED, recommended, sample, scenario

from wellchem.interpretation.treatment import devices, figures, sizes
from wellchem.interpretation.treatment.tables import constant
from wellchem.interpretation.treatment.water import raw_water
from wellchem.models.household import Household

GALLON = 3.785411784  # L, exact: NIST Handbook 44, Appendix C


def by_name(found):
    return {one.name: one for one in found}


def softener(results, **household):
    use = figures.use_of(Household(**household))
    return by_name(sizes.softener(raw_water(sample({**results, "total_coliform": 0})), use))


def test_softener_load_of_a_worked_example():
    """Softecks chemical engineering notes, Sizing conventional water softeners (2015): 4 persons at 60 gal, 18 gpg and
    1.5 mg/L of iron at 2 gpg each: 21 gpg, 5,040 grains a day. Our allowance is 3 to 5 gpg: 22.5 to 25.5 gpg."""
    found = softener({"total_hardness": 18 * 17.118061, "iron": 1.5}, daily_use=240 * GALLON)
    hardness, load = found["compensated_hardness"], found["daily_load"]
    assert hardness.low_us == pytest.approx(22.5, rel=1e-4)
    assert hardness.high_us == pytest.approx(25.5, rel=1e-4)
    assert load.low == pytest.approx(22.5 * 240, rel=1e-4)
    assert load.high == pytest.approx(25.5 * 240, rel=1e-4)
    # the example's own allowance gives the example's own load
    assert load.low + (2 - 3) * 1.5 * 240 == pytest.approx(5040, rel=1e-4)


def test_iron_is_in_the_sizing_and_not_in_the_sodium():
    plain = softener({"total_hardness": 200}, people=4)
    with_iron = softener({"total_hardness": 200, "iron": 1.0}, people=4)
    assert with_iron["daily_load"].low > plain["daily_load"].low
    from wellchem.interpretation.treatment.prediction import predict

    sodium = [
        predict("softening", raw_water(sample({"total_hardness": 200, "sodium": 0, **iron}))).amounts["sodium"][1]
        for iron in ({}, {"iron_dissolved": 1.0})
    ]
    # one mg/L of ferrous iron is 0.82 mg/L of sodium, not the 20 to 40 that the allowance for sizing would give
    assert sodium[1] - sodium[0] == pytest.approx(0.95 * 2 * 22.99 / 55.845, rel=1e-3)


def test_salt_by_the_rule_of_virginia():
    # 12VAC5-590-900 D: 0.3 lb of salt for each 1,000 grains
    found = softener({"total_hardness": 171.18061}, daily_use=100 * GALLON)
    assert found["daily_load"].low == pytest.approx(1000, rel=1e-4)
    assert found["salt_per_year"].low_us == pytest.approx(0.3 * 365, rel=1e-4)
    # a cubic foot at 20,000 grains lasts 20 days
    assert found["regeneration_days"].low == pytest.approx(20, rel=1e-4)


def test_oxidant_demand_by_the_balanced_equations():
    # mg for each mg: chlorine 0.635 of Fe(II), 1.29 of Mn(II), 2.08 to 8.32 of H2S; permanganate 0.943, 1.92, 3.09
    water = raw_water(sample({"iron_dissolved": 2.0, "manganese_dissolved": 0.5, "hydrogen_sulfide": 1.0}))
    use = figures.use_of(Household(daily_use=1000))
    chlorine = by_name(sizes.demand(water, use, "chlorine"))["chlorine_demand"]
    assert chlorine.low == pytest.approx(2 * 0.635 + 0.5 * 1.29 + 2.08, rel=2e-3)
    assert chlorine.high == pytest.approx(2 * 0.635 + 0.5 * 1.29 + 8.32, rel=2e-3)
    permanganate = by_name(sizes.demand(water, use, "permanganate"))["permanganate_demand"]
    assert permanganate.low == pytest.approx(2 * 0.943 + 0.5 * 1.92 + 3.09, rel=2e-3)
    assert by_name(sizes.demand(water, use, "chlorine"))["chlorine_a_day"].low == pytest.approx(chlorine.low)


def test_ammonia_takes_chlorine_to_the_breakpoint_and_no_permanganate():
    water = raw_water(sample({"ammonia": 1.0}))
    use = figures.use_of(Household())
    assert by_name(sizes.demand(water, use, "chlorine"))["chlorine_demand"].low == pytest.approx(7.59, rel=2e-3)
    assert by_name(sizes.demand(water, use, "permanganate"))["permanganate_demand"].high == 0


def test_contact_tank_is_flow_times_time():
    found = by_name(sizes.chlorinator(raw_water(sample({"iron": 1.0})), figures.use_of(Household(peak_demand=30))))
    assert (found["contact_tank"].low, found["contact_tank"].high) == (600, 900)


def test_bed_by_service_flow_and_backwash_against_the_pump():
    # 3 gpm/ft2: 30 L/min (7.93 gpm) needs 2.64 ft2; washing at 8 to 10 gpm/ft2 takes 21 to 26 gpm
    use = figures.use_of(Household(peak_demand=30, pump_flow=60))
    found = by_name(figures.bed(use, "oxidising"))
    area = pi / 4 * (found["bed_diameter"].low_us / 12) ** 2
    assert area == pytest.approx(30 / GALLON / 3, rel=1e-4)
    assert found["backwash_flow"].low_us == pytest.approx(30 / GALLON / 3 * 8, rel=1e-4)
    assert found["backwash_flow"].high_us == pytest.approx(30 / GALLON / 3 * 10, rel=1e-4)
    assert "does not give" in found["backwash_flow"].label
    enough = by_name(figures.bed(figures.use_of(Household(peak_demand=30, pump_flow=120)), "oxidising"))
    assert "the pump gives it" in enough["backwash_flow"].label


def test_membrane_waste_by_the_bulletin():
    # UMass: four gallons in, one gallon treated (75 % wasted)
    found = by_name(devices.membrane(raw_water(sample({})), figures.use_of(Household(people=1))))
    assert found["waste"].high == pytest.approx(3 * found["production"].high)
    assert constant("membrane_waste_share").high == 75


def test_what_is_unknown_makes_a_range_and_what_is_said_narrows_it():
    wide = softener({"total_hardness": 200})["daily_load"]
    people = softener({"total_hardness": 200}, people=3)["daily_load"]
    said = softener({"total_hardness": 200}, daily_use=600)["daily_load"]
    assert said.low == said.high
    assert wide.high - wide.low > said.high - said.low
    assert people.low < people.high
    tripled = softener({"total_hardness": [100, 300]}, daily_use=600)["daily_load"]
    single = softener({"total_hardness": 100}, daily_use=600)["daily_load"]
    assert tripled.high == pytest.approx(3 * single.high, rel=1e-5)


@pytest.mark.parametrize("name", EXPECTED)
def test_every_figure_is_a_range_with_units_and_its_formula(name):
    _, _, treatment = scenario(name)
    for stage in treatment.stages:
        for one in stage.sizes:
            assert one.low is not None
            assert one.high is None or one.low <= one.high
            assert one.unit
            assert one.unit_us
            assert one.source or one.formula


def test_sizes_follow_the_water_where_the_stage_stands():
    results = {"total_hardness": 300, "iron": 4.0, "manganese": 0.1, "ph": 7.4, "total_coliform": 0}
    _, _, treatment = recommended(results, {"iron": "aesthetic", "hardness": "equipment"}, household={"people": 2})
    softening = next(stage for stage in treatment.stages if stage.code == "softening")
    hardness = by_name(softening.sizes)["compensated_hardness"]
    assert hardness.high < 300 + 5 * 17.2 * 0.5  # the iron was filtered out ahead


def test_soda_ash_by_the_equation():
    """Na2CO3 + CO2 + H2O = 2 NaHCO3: 106 mg for each 44 mg of carbon dioxide. At the pH where bicarbonate stands alone
    (about 8.3) the dose is the acidity; Standard Methods 4500-CO2 D: free CO2 = 2.0 x bicarbonate x 10^(6-pH)."""
    alkalinity, ph = 30.0, 6.2
    dioxide = 2.0 * alkalinity * 10 ** (6 - ph)
    water = {"ph": ph, "total_alkalinity": alkalinity, "temperature": 20.0, "total_dissolved_solids": 60.0}
    found = by_name(devices.soda_ash(raw_water(sample(water)), figures.use_of(Household(daily_use=1000))))
    dose = found["soda_ash_dose"]
    assert dose.low < dioxide * 105.99 / 44.01 < dose.high * 1.05
    assert dose.high == pytest.approx(dioxide * 105.99 / 44.01, rel=0.15)
    assert found["soda_ash_a_day"].high == pytest.approx(dose.high, rel=1e-5)
    assert found["soda_ash_per_year"].high_us == pytest.approx(dose.high * 0.365 / 0.45359237, rel=1e-5)


def test_air_follows_the_pump_and_holds_a_stripping_balance():
    """One well mixed tank leaves 1/(1 + H x ratio); H of radon is about 3 at 10 °C (from memory): 95 %, the least of
    the removal table, asks for 19/3 = 6.3 volumes, inside the range."""
    use = figures.use_of(Household(pump_flow=40, peak_demand=30))
    found = by_name(devices.aerator(raw_water(sample({})), use))
    assert (found["air_flow"].low, found["air_flow"].high) == (200, 1000)
    assert found["air_flow"].low_us == pytest.approx(200 / 28.316846592, rel=1e-5)
    assert found["air_flow"].low < 40 * 19 / 3 < found["air_flow"].high
    assert found["flow"].low == found["flow"].high == 30


def test_cartridge_at_the_tap_lasts_its_capacity_or_six_months():
    found = by_name(devices.tap_filter(raw_water(sample({})), figures.use_of(Household(people=4))))["cartridge_days"]
    assert found.low == pytest.approx(150 / (4 * 4), rel=1e-5)
    assert found.high == 182


def test_chlorine_a_day_and_contact():
    use = figures.use_of(Household(daily_use=1000, peak_demand=30))
    found = by_name(sizes.chlorinator(raw_water(sample({"iron_dissolved": 2.0})), use))
    assert found["chlorine_a_day"].low == pytest.approx(2 * 0.635 + 0.3, rel=2e-3)
    assert (found["contact"].low, found["contact"].high) == (pytest.approx(6), pytest.approx(15))


def test_every_stage_has_a_size():
    from wellchem.interpretation.treatment.tables import stages

    use = figures.use_of(Household())
    for code in stages():
        assert sizes.SIZED[code](raw_water(sample({})), use), code


def test_no_tannin_resin_for_color_that_iron_explains():
    """Color 25 with iron 2.4 mg/L and turbidity: tannin is tested first, no resin chosen without it."""
    results = {
        "apparent_color": 25,
        "iron": 2.4,
        "turbidity": 6.0,
        "ph": 7.2,
        "total_hardness": 180,
        "total_coliform": 0,
    }
    problems = {"iron": "aesthetic", "color": "aesthetic", "turbidity": "health"}
    _, _, treatment = recommended(results, problems)
    assert "tannin_exchange" not in {stage.code for stage in treatment.stages}
    with_tannin = {"tannin": 2.0, "true_color": 40, "ph": 7.2, "total_hardness": 80, "iron": 0.05, "manganese": 0.01}
    _, _, treatment = recommended({**with_tannin, "total_coliform": 0}, {"tannin": "aesthetic"})
    assert "tannin_exchange" in {stage.code for stage in treatment.stages}
