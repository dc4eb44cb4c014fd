"""Water behind a stage: published ranges, equivalents, charge; held against values from outside where there are any."""

from dataclasses import replace
from math import inf

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from treatment_waters import EXPECTED, result, sample

from wellchem.chemistry.precipitation import calcium_carbonate_potential
from wellchem.chemistry.speciation import speciate
from wellchem.interpretation import practice
from wellchem.interpretation.treatment import acidity, treat
from wellchem.interpretation.treatment.prediction import predict, weights
from wellchem.interpretation.treatment.tables import plumbing_metals, removal, rows, stages
from wellchem.interpretation.treatment.water import Organisms, raw_water
from wellchem.models.codes import Censoring, Role
from wellchem.models.finding import Stage, Treatment

# A hard ground water in balance: cations 4.99 + 2.47 + 1.3 + 0.05 meq/L, anions by difference of alkalinity.
BALANCED = {"calcium": 100.0, "magnesium": 30.0, "sodium": 30.0, "potassium": 2.0, "chloride": 40.0, "sulfate": 60.0}
BALANCED |= {"nitrate": 5.0, "ph": 7.4, "total_dissolved_solids": 480.0, "specific_conductance": 800.0}


def charges(ends, end):
    """Cations and anions [meq/L] at one end of every amount."""
    cations = sum(ends[name][end] / weights()[name] for name in ("calcium", "magnesium", "sodium", "potassium"))
    anions = sum(ends[name][end] / weights()[name] for name in ("total_alkalinity", "chloride", "sulfate", "nitrate"))
    return cations, anions


def balanced():
    """The water above with the alkalinity that its charge asks for."""
    rest = {name: value / weights()[name] for name, value in BALANCED.items() if name in weights()}
    cations = sum(rest[name] for name in ("calcium", "magnesium", "sodium", "potassium"))
    alkalinity = (cations - rest["chloride"] - rest["sulfate"] - rest["nitrate"]) * weights()["total_alkalinity"]
    return raw_water(sample({**BALANCED, "total_alkalinity": alkalinity, "total_coliform": 0}))


ROWS = [
    (row["stage"], row["analyte"])
    for row in rows("removals")
    if not row["analyte"].startswith("@")
    and stages()[row["stage"]].process in ("removal", "membrane", "soften", "distil")
]
_OWN_RULE = {"ph", "arsenic", "arsenic_v", "iron", "manganese"}  # species and particles decide, tested below


@pytest.mark.parametrize("stage,analyte", ROWS)
def test_point_valued_feed_gives_the_tabulated_range(stage, analyte):
    kind = stages()[stage]
    if analyte in _OWN_RULE or practice.groups()[analyte] == "microbiology":
        pytest.skip("a rule of its own")
    if kind.place == "entry" and analyte in plumbing_metals():
        pytest.skip("metals from the plumbing pass")
    row = removal(stage, analyte)
    behind = predict(stage, raw_water(sample({analyte: 8.0})))
    low, high = behind.amounts[analyte]
    assert low == pytest.approx(8.0 * (1 - row.most))
    expected = 8.0 * (1 - row.least)
    assert high == pytest.approx(min(expected, row.leaves) if row.challenge >= 8.0 else expected)


def test_softening_gives_the_sodium_of_the_handbook():
    # 7.86 mg/L of sodium for each grain per gallon taken (stoichiometry; the figure is printed by many bulletins)
    water = raw_water(sample({"total_hardness": 171.18, "sodium": 0.0, "total_coliform": 0}))
    low, high = predict("softening", water).amounts["sodium"]
    row = removal("softening", "total_hardness")
    assert low == pytest.approx(78.6397 * row.least, rel=1e-4)
    assert high == pytest.approx(78.6397 * row.most, rel=1e-4)


@pytest.mark.parametrize("stage", ["softening", "nitrate_exchange", "tannin_exchange", "uranium_exchange"])
def test_an_exchanger_conserves_charge_exactly(stage, monkeypatch):
    """With every removal at one point the water behind an exchanger is balanced as the raw water is."""
    from wellchem.interpretation.treatment import prediction

    def pointed(code, analyte):
        row = removal(code, analyte)
        return row and type(row)(row.most, row.most, inf, -inf, row.source)

    monkeypatch.setattr(prediction, "removal", pointed)
    behind = predict(stage, balanced()).amounts
    for end in (0, 1):
        cations, anions = charges(behind, end)
        assert cations == pytest.approx(anions, rel=1e-9)


@pytest.mark.parametrize("more", [{}, {"sulfide": 4.0, "ammonia": 2.0}], ids=["plain", "reduced"])
@pytest.mark.parametrize("stage", [code for code, kind in stages().items() if kind.process != "distil"])
def test_the_box_behind_a_stage_holds_a_balanced_water(stage, more):
    water = balanced()
    behind = predict(stage, replace(water, amounts={**water.amounts, **{k: (v, v) for k, v in more.items()}})).amounts
    (least_cations, least_anions), (most_cations, most_anions) = charges(behind, 0), charges(behind, 1)
    assert least_cations <= most_anions * (1 + 1e-9)
    assert least_anions <= most_cations * (1 + 1e-9)


def test_a_membrane_lets_more_pass_where_the_single_rejections_cannot_hold_charge():
    # Calcium is rejected to 94 % and more, chloride to 92 % and less: of calcium chloride the ranges do not balance.
    water = {
        "calcium": 200.4,
        "magnesium": 0.0,
        "sodium": 0.0,
        "chloride": 354.5,
        "sulfate": 0.0,
        "total_alkalinity": 0.0,
    }
    behind = predict("reverse_osmosis", raw_water(sample(water))).amounts
    assert behind["chloride"] == pytest.approx((354.5 * 0.08, 354.5 * 0.15))
    assert behind["calcium"][1] / weights()["calcium"] >= behind["chloride"][0] / weights()["chloride"] * (1 - 1e-9)


@pytest.mark.parametrize("end", [0, 1])
def test_membrane_ph_is_that_of_the_same_carbon_dioxide_with_less_alkalinity(end):
    """Against the full speciation at the carbon dioxide pressure of the raw water, in a dilute water."""
    water = raw_water(sample({"ph": 7.0, "total_alkalinity": 60.0}))
    left = predict("reverse_osmosis", water).amounts
    raw = speciate(temperature=15.0, ph=7.0, alkalinity=60.0, sodium=27.6)
    exact = speciate(temperature=15.0, alkalinity=left["total_alkalinity"][end], pco2=10.0**raw.log_pco2, sodium=0.5)
    assert left["ph"][end] == pytest.approx(exact.ph, abs=0.05)


@pytest.mark.parametrize(
    "ph,alkalinity,calcium,solids", [(5.8, 12, 4.0, 60), (6.2, 40, 12.0, 120), (6.6, 90, 30.0, 220), (5.2, 5, 2.0, 40)]
)
def test_equilibrium_with_calcite_agrees_with_the_full_speciation(ph, alkalinity, calcium, solids):
    """Handbook constants against `calcium_carbonate_potential`, which is held against a reference engine elsewhere.

    The handbook leaves out ion pairs: 3 % of what dissolves and 0.06 of pH in such dilute waters.
    """
    results = {"ph": ph, "total_alkalinity": alkalinity, "calcium": calcium, "temperature": 10.0}
    highest, gain = acidity.beside_calcite(raw_water(sample({**results, "total_dissolved_solids": solids})))
    speciated = speciate(temperature=10.0, ph=ph, alkalinity=alkalinity, calcium=calcium, chloride=2.0)
    exact = calcium_carbonate_potential(speciated)
    assert gain == pytest.approx(-exact.precipitated, rel=0.03)
    assert highest == pytest.approx(exact.ph_after, abs=0.06)


def test_neutralised_water_gains_hardness_by_its_carbon_dioxide():
    # 1 mg/L of carbon dioxide that calcite neutralises adds 2.27 mg/L of hardness (balanced equation)
    results = {"ph": 5.8, "total_alkalinity": 12, "calcium": 4.0, "temperature": 10.0, "total_dissolved_solids": 60}
    water = raw_water(sample(results))
    _, gain = acidity.beside_calcite(water)
    # pK1 of carbonic acid at 10 °C 6.464 (Plummer and Busenberg 1982), less 0.019 by Debye and Hückel at I = 0.0015
    dioxide = 12 / 50.04 * 10 ** (6.464 - 0.019 - 5.8) * 44.01
    assert 0.9 < gain / (2.27 * dioxide) <= 1.0
    behind = predict("neutralising_calcite", water).amounts
    assert behind["ph"][0] == 5.8
    assert behind["total_alkalinity"] == pytest.approx((12.0, 12.0 + gain))
    assert behind["calcium"][1] == pytest.approx(4.0 + gain / 2.497, rel=1e-3)


def test_water_in_open_air_reaches_the_ph_of_the_textbook():
    # Alkalinity of 1 meq/L (50 mg/L) in equilibrium with air at 25 °C: pH about 8.3 (Stumm and Morgan, memory)
    results = {"ph": 7.0, "total_alkalinity": 50, "temperature": 25, "total_dissolved_solids": 80}
    assert acidity.in_air(raw_water(sample(results))) == pytest.approx(8.2, abs=0.2)


def test_metals_of_the_plumbing_pass_every_stage_at_the_entry():
    metals = dict.fromkeys(plumbing_metals(), 0.5)
    for code, kind in stages().items():
        if kind.place == "entry":
            behind = predict(code, raw_water(sample({**metals, "ph": 6.4, "total_alkalinity": 30, "calcium": 10})))
            assert all(behind.amounts[name] == (0.5, 0.5) for name in metals), code


def test_arsenic_passes_a_membrane_unless_it_is_known_to_be_oxidised():
    unknown = raw_water(sample({"arsenic": 0.05}))
    reducing = raw_water(sample({"arsenic": 0.05, "iron": 3.0, "nitrate": [0, 0.05]}))
    oxic = raw_water(sample({"arsenic": 0.05, "iron": 0.01, "dissolved_oxygen": 6.0}))
    fifth = raw_water(sample({"arsenic": 0.05, "arsenic_v": 0.05}))
    for water, high in ((unknown, 0.05), (reducing, 0.05), (oxic, 0.004), (fifth, 0.004)):
        assert predict("reverse_osmosis", water).amounts["arsenic"] == pytest.approx((0.002, high))
    oxidised = predict("chlorination", reducing)
    assert predict("reverse_osmosis", oxidised).amounts["arsenic"][1] == pytest.approx(0.004)
    aerated = predict("aerated_filter", reducing)
    assert predict("reverse_osmosis", aerated).amounts["arsenic"][1] == pytest.approx(0.05)


def test_rust_passes_a_softener():
    total = raw_water(sample({"iron": 0.8, "total_hardness": 200, "total_coliform": 0}))
    assert predict("softening", total).amounts["iron"][1] == pytest.approx(0.8)
    dissolved = raw_water(sample({"iron_dissolved": 0.8, "total_hardness": 200, "total_coliform": 0}))
    assert predict("softening", dissolved).amounts["iron"] == pytest.approx((0.8 * 0.05, 0.8 * 0.25))


def test_tannin_holds_iron_against_oxidation():
    # common practice, no source: tannin binds iron so that oxidation misses it
    bound = raw_water(sample({"iron": 2.0, "tannin": 2.0, "ph": 7.2}))
    assert predict("chlorination", bound).amounts["iron"][1] == 2.0
    free = raw_water(sample({"iron": 2.0, "tannin": 0.1, "ph": 7.2}))
    assert predict("chlorination", free).amounts["iron"][1] == pytest.approx(0.2)


def test_no_count_of_organisms_is_predicted_behind_a_barrier():
    water = raw_water(sample({"e_coli": 40, "total_coliform": "present"}))
    assert water.organisms is Organisms.FOUND
    behind = predict("ultraviolet", water)
    assert behind.organisms is Organisms.DISINFECTED
    assert behind.amounts["e_coli"] == (0.0, 40.0)
    assert behind.amounts["total_coliform"] == (0.0, inf)
    for code in ("reverse_osmosis", "carbon", "softening", "certified_filter", "nitrate_exchange"):
        assert predict(code, water).organisms is Organisms.FOUND
        assert predict(code, water).amounts["e_coli"] == (40.0, 40.0)


def test_oxidation_takes_alkalinity_by_stoichiometry():
    # 1.79 mg/L of alkalinity for each mg/L of ferrous iron that is oxidised and falls out (balanced equation)
    water = raw_water(sample({"iron_dissolved": 4.0, "total_alkalinity": 200.0}))
    low, high = predict("aerated_filter", water).amounts["total_alkalinity"]
    assert high == 200.0
    assert 200.0 - low == pytest.approx(4.0 * 0.99 * 1.792, rel=1e-3)


POSITIVE = st.floats(0.0, 500.0)


@settings(max_examples=60, deadline=None)
@given(
    stage=st.sampled_from(sorted(stages())),
    ends=st.fixed_dictionaries(
        {name: st.tuples(POSITIVE, POSITIVE) for name in ("calcium", "magnesium", "sodium", "chloride")}
    ),
    share=st.floats(0.0, 1.0),
)
def test_bounds_go_through(stage, ends, share):
    """What is predicted of a water inside a box lies inside what is predicted of the box."""
    box = {name: sorted(pair) for name, pair in ends.items()} | {"total_alkalinity": [50.0, 150.0], "ph": [6.5, 7.5]}
    inside = {name: low + share * (high - low) for name, (low, high) in box.items()}
    wide = predict(stage, raw_water(sample({**box, "temperature": 10}))).amounts
    narrow = predict(stage, raw_water(sample({**inside, "temperature": 10}))).amounts
    for name, (low, high) in narrow.items():
        assert wide[name][0] <= low + 1e-6 + 1e-9 * abs(low), name
        assert wide[name][1] >= high - 1e-6 - 1e-9 * abs(high) or (name == "ph" and high - wide[name][1] < 0.02), name


def train(*codes):
    return Treatment(stages=tuple(Stage(code=code, title=code, where="") for code in codes))


def test_treat_gives_a_predicted_sample():
    water = sample({**BALANCED, "arsenic": [0, 0.001], "e_coli": 3, "total_coliform": 8})
    treated = treat(water, train("ultraviolet", "softening"))
    assert treated.role is Role.PREDICTED
    assert {one.analyte for one in water.results} <= {one.analyte for one in treated.results}
    assert treated.get("calcium").censoring is Censoring.INTERVAL
    assert treated.get("arsenic").high == pytest.approx(0.001)
    assert treated.get("e_coli").low == 0
    assert treated.get("nitrate").value == 5.0
    assert type(treated).model_validate_json(treated.model_dump_json()) == treated


def test_treat_adds_what_was_not_measured_with_an_open_end():
    treated = treat(sample({"total_hardness": 200, "total_coliform": 0}), train("softening"))
    sodium = treated.get("sodium")
    assert sodium.high is None
    assert sodium.low == pytest.approx(200 * 0.95 * 0.4594, rel=1e-3)


def test_an_unknown_stage_is_an_error_that_names_the_known_ones():
    from wellchem.errors import WellchemError

    with pytest.raises(WellchemError, match="softening"):
        treat(sample({"iron": 1.0}), train("wishing"))


@pytest.mark.parametrize("name", EXPECTED)
def test_no_bound_turns_round(name):
    from treatment_waters import scenario

    water, _, treatment = scenario(name)
    for one in treat(water, treatment).results:
        assert one.low is not None
        assert one.high is None or one.low <= one.high
        assert not (one.high is not None and np.isnan(one.high))


def test_a_late_negative_coliform_tells_nothing():
    from datetime import datetime

    water = sample({"total_coliform": 0, "e_coli": 0})
    assert raw_water(water).organisms is Organisms.NONE_FOUND
    late = water.model_copy(update={"collected": datetime(2026, 4, 20, 8), "analysed": datetime(2026, 4, 22, 10)})
    assert raw_water(late).organisms is Organisms.UNTOLD
    held = result("total_coliform", 0).model_copy(update={"qualifiers": ("H",)})
    assert raw_water(water.model_copy(update={"results": (held,)})).organisms is Organisms.UNTOLD
