"""What holds of every train, over the expected waters and over many drawn at random."""

import re

import pytest
from treatment_waters import EXPECTED, drawn, problem, recommended, sample, scenario

from wellchem.interpretation import practice
from wellchem.interpretation.treatment import recommend, treat
from wellchem.interpretation.treatment.prediction import predict
from wellchem.interpretation.treatment.tables import constant, plumbing_metals, rows, stages
from wellchem.limits import compare_sample
from wellchem.models.codes import Certainty
from wellchem.models.household import Household

BARRIERS = {"ultraviolet", "chlorination"}
# Membranes, carbon, softeners and other resins: no barrier, and no place for water in which organisms were found.
NO_BARRIERS = {
    "reverse_osmosis",
    "carbon",
    "softening",
    "nitrate_exchange",
    "tannin_exchange",
    "uranium_exchange",
    "certified_filter",
    "cyst_filter",
}
ASSURANCE = re.compile(
    r"\bsafe(ly)?\b|\bharmless\b|\bpotable\b|\bdrinkable\b|\bfit to drink\b|\ball clear\b|\bpure\b"
    r"|\bno (health )?(risk|danger)\b",
    re.IGNORECASE,
)
EVERY = [("expected", name) for name in EXPECTED] + [("drawn", number) for number in range(120)]


def outcome(case):
    kind, key = case
    return scenario(key) if kind == "expected" else drawn(key)


def found(water):
    return any(
        (one.low or 0) > 0
        for one in water.results
        if practice.groups()[one.analyte] == "microbiology" and one.analyte != "iron_bacteria"
    )


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_no_membrane_carbon_or_resin_gets_water_with_organisms(case):
    water, _, treatment = outcome(case)
    disinfected = not found(water)
    for stage in treatment.stages:
        assert disinfected or stage.code not in NO_BARRIERS, [one.code for one in treatment.stages]
        disinfected = disinfected or stage.code in BARRIERS


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_every_feed_condition_holds_or_cannot_be_told(case):
    _, _, treatment = outcome(case)
    for stage in treatment.stages:
        assert stage.feed, stage.code
        assert {one.status for one in stage.feed} <= {"holds", "cannot be told"}, stage.code


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_stages_keep_the_trades_order(case):
    _, _, treatment = outcome(case)
    order = [stages()[stage.code].order for stage in treatment.stages]
    assert order == sorted(set(order))
    groups = [stages()[stage.code].group for stage in treatment.stages if stages()[stage.code].group]
    assert len(groups) == len(set(groups))


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_nothing_that_is_said_assures(case):
    _, _, treatment = outcome(case)
    text = treatment.model_dump_json(exclude={"stages": {"__all__": {"sources"}}})
    assert not ASSURANCE.search(text), ASSURANCE.search(text)


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_a_prediction_asks_for_its_test(case):
    _, _, treatment = outcome(case)
    for stage in treatment.stages:
        assert stage.tests, stage.code
        assert stage.failure
        assert stage.certification
    if treatment.stages:
        assert "test of the treated water has to confirm" in treatment.text


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_metals_of_the_plumbing_are_unchanged_until_the_tap(case):
    water, _, treatment = outcome(case)
    raw = {one.analyte: (one.low, one.high) for one in water.results}
    for stage in treatment.stages:
        if stages()[stage.code].place == "entry":
            for one in stage.after:
                if one.name in plumbing_metals():
                    assert (one.low, one.high) == pytest.approx(raw[one.name])


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_lead_is_never_answered_at_the_entry(case):
    _, _, treatment = outcome(case)
    answering = [stage.code for stage in treatment.stages if "lead" in stage.answers]
    assert all(stages()[code].place == "tap" for code in answering)


def test_each_hazard_has_its_place():
    entry = {"fecal_bacteria", "coliform_bacteria", "radon", "volatile_organics", "methane", "hydrogen_sulfide", "iron"}
    places = {row["problem"]: row["place"] for row in rows("places")}
    assert all(places[code] == "entry" for code in entry)
    for row in rows("answers"):
        if row["problem"] in entry:
            assert stages()[row["stage"]].place == "entry", row
    assert all(places[code] == "tap" for code in ("nitrate", "arsenic", "uranium", "fluoride", "lead", "pfas"))


def test_ultraviolet_for_water_with_organisms_is_forty():
    assert (constant("ultraviolet_dose").low, constant("ultraviolet_dose").high) == (40, 40)
    _, _, treatment = scenario("nitrate_with_bacteria")
    lamp = next(stage for stage in treatment.stages if stage.code == "ultraviolet")
    assert "40 mJ/cm²" in lamp.certification
    assert "class A" in lamp.certification
    assert next(one for one in lamp.sizes if one.name == "dose").low == 40


def test_what_fails_silently_has_a_schedule():
    for kind in stages().values():
        if kind.silent:
            assert re.search(r"month|year|week", kind.tests), kind.code


def test_softening_for_hardness_alone_is_a_choice_and_leaves_a_hard_tap():
    _, _, treatment = scenario("hardness_only")
    (softener,) = treatment.stages
    assert "matter of choice, never urgent" in softener.why
    assert "unsoftened" in softener.why
    assert any("Sodium behind it" in text for text in softener.adds)
    assert any("diet" in text for text in softener.adds)
    assert any("infant formula" in text for text in softener.adds)
    assert any("corrosive" in text for text in softener.adds)


def test_a_surface_connection_is_mended_first():
    _, _, treatment = scenario("nitrate_with_bacteria")
    assert any("neither by shock chlorination nor by ultraviolet" in text for text in treatment.steps_first)
    assert "surface_connection" in treatment.unanswered


def test_resin_and_carbon_that_gather_nuclides_say_so():
    radium = {"radium_226": 0.1, "total_hardness": 250, "total_coliform": 0}
    _, _, treatment = recommended(radium, {"hardness": "equipment"})
    assert any("regulated waste" in text for text in treatment.stages[0].adds)
    radon = {"benzene": 0.02, "radon_222": 60, "total_coliform": 0}
    _, _, treatment = recommended(radon, {"volatile_organics": "health"})
    assert treatment.stages[0].code == "carbon"
    assert any("gamma" in text for text in treatment.stages[0].adds)


def test_no_carbon_where_radon_is_high():
    _, _, treatment = recommended(
        {"benzene": 0.02, "radon_222": 500}, {"volatile_organics": "health", "radon": "health"}
    )
    assert [stage.code for stage in treatment.stages] == ["aeration"]


def test_nitrate_resin_tells_of_the_breakthrough():
    assert "gives out more nitrate than came in" in stages()["nitrate_exchange"].failure


def test_a_positive_langelier_index_lowers_no_concern():
    scaling = {"lead": 0.03, "ph": 8.3, "total_alkalinity": 300, "calcium": 120, "temperature": 25, "total_coliform": 0}
    _, _, treatment = recommended(scaling, {"lead": "health"})
    assert [stage.code for stage in treatment.stages] == ["certified_filter"]
    assert any("forms scale never lowers" in text for text in treatment.steps_first)


def test_what_is_only_possible_is_tested_first_and_gets_no_stage():
    water = sample({"arsenic": [0, 0.05], "total_hardness": 200})
    found_ = [problem("arsenic", certainty=Certainty.POSSIBLE), problem("hardness", "equipment")]
    treatment = recommend(water, found_, compare_sample(water), Household())
    assert [stage.code for stage in treatment.stages] == ["softening"]
    assert any(text.startswith("Test first") and "arsenic" in text for text in treatment.steps_first)


def test_possible_organisms_hold_the_membrane_back_from_certainty():
    water = sample({"nitrate": 20})
    found_ = [problem("nitrate"), problem("fecal_bacteria", certainty=Certainty.POSSIBLE)]
    treatment = recommend(water, found_, compare_sample(water))
    membrane = next(stage for stage in treatment.stages if stage.code == "reverse_osmosis")
    assert membrane.feed[0].status == "cannot be told"


def test_a_low_sodium_diet_drinks_behind_a_membrane():
    results = {"total_hardness": 250, "sodium": 60, "total_coliform": 0, "iron": 0.01, "manganese": 0.01}
    _, _, treatment = recommended(
        results, {"hardness": "equipment", "sodium_diet": "health"}, household={"sodium_restricted": True}
    )
    assert treatment.stages[-1].code in ("reverse_osmosis", "distillation")


@pytest.mark.parametrize("case", EVERY, ids=str)
def test_what_the_train_says_is_cleared_is_within_when_compared_again(case):
    """The comparison of the predicted sample, an independent path, never finds above what the train cleared."""
    water, _, treatment = outcome(case)
    if not treatment.stages:
        return
    after = compare_sample(treat(water, treatment))
    cleared = {code for stage in treatment.stages for code in stage.answers} - set(treatment.unanswered)
    for one in after:
        if one.limit.kind.value == "health" and one.verdict.value == "above":
            place = practice.problem_of(one.analyte, "health", "above")
            assert practice.problems()[place].code not in cleared, one.analyte


def test_water_behind_each_stage_is_that_of_the_prediction():
    water, _, treatment = scenario("iron_manganese_sulfide")
    from wellchem.interpretation.treatment.water import raw_water

    now = raw_water(water)
    for stage in treatment.stages:
        now = predict(stage.code, now)
        for one in stage.after:
            assert one.low == pytest.approx(now.amounts[one.name][0], rel=1e-5)


def test_what_a_used_up_nitrate_resin_gives_out_is_figured():
    """Equivalents: 280 mg/L of sulfate over 48.03 are 5.83 meq/L, as nitrogen 81.7 mg/L, and the water's own 22."""
    from wellchem.interpretation.treatment.effects import effects
    from wellchem.interpretation.treatment.water import raw_water

    water = raw_water(sample({"nitrate": 22, "sulfate": 280, "total_coliform": 0}))
    said = " ".join(effects("nitrate_exchange", water, water, predict("nitrate_exchange", water), Household()))
    assert "up to 104 mg/L as N" in said
    untested = raw_water(sample({"nitrate": 22, "total_coliform": 0}))
    behind = predict("nitrate_exchange", untested)
    assert "Sulfate was not measured" in " ".join(effects("nitrate_exchange", untested, untested, behind, Household()))
