"""Checks of the report against published acceptance ranges, and against slips that were put in on purpose."""

from datetime import date, datetime

import numpy as np
import pytest
from interpretation.wells_reader import result

import wellchem
from wellchem.interpretation import amounts
from wellchem.models.codes import Fraction, SamplingPoint
from wellchem.models.household import Household, Observation
from wellchem.models.sample import Sample

ON = date(2026, 5, 1)


def finding(*results, household=None, **about):
    return wellchem.interpret(Sample(key="a", results=results, **about), on=ON, household=household)


def status(given, code):
    return {check.code: check.status.value for check in given.checks}[code]


def water(**amounts):
    return [result(analyte, str(amount)) for analyte, amount in amounts.items()]


# Hem, USGS Water-Supply Paper 2254, 1985: an analysis in balance has cations and anions within a few percent.
IONS = {
    "calcium": 58.0,
    "magnesium": 13.0,
    "sodium": 23.0,
    "potassium": 2.4,
    "total_alkalinity": 172.0,
    "sulfate": 36.0,
    "chloride": 28.0,
    "nitrate": 1.5,
}


def test_a_balanced_analysis_passes_and_every_slip_of_an_ion_fails():
    """SM 1030 E.1: between 3 and 10 meq/L of anions the difference is at most 2 % of the sum."""
    assert status(finding(*water(**IONS)), "ion_balance") == "pass"
    for ion in ("calcium", "sodium", "total_alkalinity", "chloride"):
        slipped = IONS | {ion: IONS[ion] * 2.0}
        assert status(finding(*water(**slipped)), "ion_balance") == "fail", ion


def test_a_missing_ion_is_not_possible_and_a_wide_bound_is_not_told():
    lacking = {name: amount for name, amount in IONS.items() if name != "sodium"}
    assert status(finding(*water(**lacking)), "ion_balance") == "not_possible"
    assert status(finding(*water(**lacking), result("sodium", "<100")), "ion_balance") == "warn"


@pytest.mark.parametrize("solids, expected", [(245, "pass"), (290, "pass"), (150, "fail"), (400, "fail")])
def test_dissolved_solids(solids, expected):
    """SM 1030 E.2: measured over calculated 1.0 to 1.2; calculated here 0.6 x 172 + the other ions = 270."""
    calculated = 0.6 * 172 + 58 + 13 + 23 + 2.4 + 36 + 28 + 1.5 * 62.0 / 14.007
    scaled = solids * calculated / 245
    assert status(finding(*water(**IONS, total_dissolved_solids=round(scaled, 1))), "dissolved_solids") == expected


@pytest.mark.parametrize("conductance, expected", [(500, "pass"), (250, "fail"), (1000, "fail")])
def test_conductance(conductance, expected):
    """SM 1030 E.4: 100 times the sum of cations is 0.9 to 1.1 times the conductance."""
    assert status(finding(*water(**IONS, specific_conductance=conductance)), "conductance") == expected


def test_hardness_against_calcium_and_magnesium():
    """SM 2340 B: 2.497 Ca + 4.118 Mg = 198 mg/L as CaCO3."""
    assert status(finding(*water(**IONS, total_hardness=198)), "hardness") == "pass"
    assert status(finding(*water(**IONS, total_hardness=11.6)), "hardness") == "fail"  # grains per gallon printed


@pytest.mark.parametrize("dissolved, expected", [("0.9", "pass"), ("1.05", "pass"), ("1.5", "fail"), ("<2", "pass")])
def test_dissolved_against_total(dissolved, expected):
    pair = result("iron", "1.0", fraction=Fraction.TOTAL), result("iron", dissolved, fraction=Fraction.DISSOLVED)
    assert status(finding(*pair), "dissolved_total") == expected


def test_nitrogen_sums():
    assert status(finding(*water(nitrate=3, nitrite=0.1, nitrate_plus_nitrite=3.1)), "nitrogen") == "pass"
    assert status(finding(*water(nitrate=3, nitrite=0.1, nitrate_plus_nitrite=1.0)), "nitrogen") == "fail"
    assert status(finding(*water(ammonia=2, kjeldahl_nitrogen=1)), "nitrogen") == "fail"


def test_carbonate_needs_a_high_ph():
    """SM 2320 B, Table 2320:II: phenolphthalein alkalinity only above about pH 8.3."""
    assert status(finding(*water(ph=7.0, carbonate=20)), "alkalinity_ph") == "fail"
    assert status(finding(*water(ph=9.0, carbonate=20)), "alkalinity_ph") == "pass"


@pytest.mark.parametrize(
    "collected, analysed, expected",
    [
        (datetime(2026, 4, 20, 8), datetime(2026, 4, 21, 13), "pass"),  # 29 h
        (datetime(2026, 4, 20, 8), datetime(2026, 4, 21, 15), "fail"),  # 31 h
        (date(2026, 4, 20), date(2026, 4, 21), "warn"),  # 0 to 48 h: cannot be told
        (date(2026, 4, 20), date(2026, 4, 23), "fail"),
        (date(2026, 4, 20), None, "not_possible"),
    ],
)
def test_thirty_hours_for_coliforms(collected, analysed, expected):
    """40 CFR 141.852(a)(3)."""
    given = finding(result("total_coliform", "absent"), collected=collected, analysed=analysed)
    assert status(given, "holding_time") == expected
    if expected == "fail":
        assert "bacteria" in {test.code for test in given.missing}


def test_nitrate_keeps_longer_where_chlorinated():
    """40 CFR 141.23(k): 48 hours, 14 days if chlorinated."""
    times = {"collected": datetime(2026, 4, 20, 8), "analysed": datetime(2026, 4, 24, 8)}
    assert status(finding(result("nitrate", "1"), **times), "holding_time") == "warn"
    chlorinated = Household(chlorinated=True)
    assert status(finding(result("nitrate", "1"), household=chlorinated, **times), "holding_time") == "pass"


@pytest.mark.parametrize("pair, expected", [(("1.0", "1.1"), "pass"), (("1.0", "1.3"), "warn"), (("1.0", "9"), "fail")])
def test_repeated_results(pair, expected):
    assert status(finding(*(result("iron", text) for text in pair)), "duplicates") == expected


@pytest.mark.parametrize(
    "analyte, text, expected",
    [
        ("ph", "15", "fail"),
        ("ph", "2", "warn"),
        ("lead", "4", "warn"),
        ("arsenic", "12", "warn"),
        ("iron", "3", "pass"),
        ("calcium", "-3", "fail"),
        ("gross_alpha", "-0.1", "pass"),
        ("delta_oxygen_18", "-8.1", "pass"),
    ],
)
def test_plausible(analyte, text, expected):
    given = result(analyte, "1").model_copy(update={"value": float(text), "low": float(text), "high": float(text)})
    assert status(finding(given), "plausible") == expected


def test_an_implausible_value_is_not_mended():
    given = finding(result("lead", "4"))
    assert given.sample.results[0].value == 4.0
    assert given.problems[0].code == "lead"


@pytest.mark.parametrize("days, expected", [(10, "pass"), (500, "warn"), (1500, "fail")])
def test_age(days, expected):
    collected = date.fromordinal(ON.toordinal() - days)
    assert status(finding(result("ph", "7"), collected=collected), "age") == expected


def test_point_of_metals():
    assert status(finding(result("lead", "0.001")), "sampling_point") == "warn"
    flushed = finding(result("lead", "0.001"), point=SamplingPoint.TAP_FLUSHED)
    assert status(flushed, "sampling_point") == "pass"


def test_natural_soda_water_is_only_a_question():
    given = finding(*water(total_hardness=4, sodium=220, total_alkalinity=420))
    sign = {sign.code: sign for sign in given.signs}["softened"]
    assert sign.certainty == "possible"
    assert sign.question
    assert all(one.value is not None for one in given.sample.results)


@pytest.mark.parametrize(
    "observation, results, sign",
    [
        (Observation.ORANGE_STAINING, {"iron": "0.02"}, "disagrees_orange_staining"),
        (Observation.ROTTEN_EGG_BOTH, {"sulfide": "<0.02"}, "disagrees_rotten_egg_both"),
        (Observation.SCALE, {"total_hardness": "20"}, "disagrees_scale"),
    ],
)
def test_observations_that_disagree_are_said(observation, results, sign):
    given = finding(
        *(result(name, text) for name, text in results.items()), household=Household(observations=(observation,))
    )
    assert sign in {one.code for one in given.signs}
    assert not given.problems


@pytest.mark.parametrize("function", [amounts.fresh_langelier, amounts.fresh_ryznar])
def test_indices_of_fresh_water_are_monotone_where_that_is_declared(function):
    """What the bounds rely on, by steps along each input through a sampled box."""
    random = np.random.default_rng(7)
    ends = {
        "ph": (4.0, 9.0),
        "calcium": (1.0, 600.0),
        "alkalinity": (2.0, 600.0),
        "temperature": (0.0, 40.0),
        "dissolved_solids": (10.0, 3000.0),
    }
    point = {name: random.uniform(low, high, 400) for name, (low, high) in ends.items()}
    known = function.behaviour
    for name, (low, high) in ends.items():
        if name in known.dipped:
            continue  # one turning point, which the bounds look for
        steps = [function(**(point | {name: np.full(400, value)})) for value in np.linspace(low, high, 40)]
        change = np.diff(np.stack(steps), axis=0)
        assert np.all(change > -1e-9 if name in known.rising else change < 1e-9), name
        assert name in (*known.rising, *known.falling)


def test_computed_values_carry_bounds_source_and_inputs():
    given = finding(*water(ph=7.4, **IONS, total_dissolved_solids=280))
    hardness = given.hardness[0]
    assert hardness.low == pytest.approx(2.497 * 58 + 4.118 * 13, rel=2e-3)  # SM 2340 B
    assert {one.name for one in given.scaling} >= {"langelier", "ryznar", "calcite", "heater_scale"}
    for one in (*given.hardness, *given.ion_balance, *given.scaling, *given.corrosion):
        assert one.source is not None
        assert one.inputs
        assert one.low <= one.high
