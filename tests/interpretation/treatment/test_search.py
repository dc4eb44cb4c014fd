"""The search against trying every set of candidates, and what it says of the runner-up."""

from itertools import combinations

import pytest
from treatment_waters import EXPECTED, problem, random_water, sample, scenario

from wellchem.interpretation.treatment import feed, treat
from wellchem.interpretation.treatment.aims import Outcome, aims, kept, outcome
from wellchem.interpretation.treatment.prediction import predict
from wellchem.interpretation.treatment.search import candidates, search
from wellchem.interpretation.treatment.tables import ENTRY, TAP, stages
from wellchem.interpretation.treatment.water import raw_water
from wellchem.limits import compare_sample
from wellchem.models.codes import Verdict
from wellchem.models.household import Household


def sought(name):
    row = EXPECTED[name]
    water = sample(row["results"])
    raw = raw_water(water, suspect=bool({"fecal_bacteria", "coliform_bacteria"} & set(row["problems"])))
    comparisons = compare_sample(water, authorities=tuple(row.get("authorities", ("us-epa",))))
    found = [problem(code, kind) for code, kind in row["problems"].items()]
    return water, raw, aims(found, comparisons, Household(), raw)


def every_train(wanted, raw):
    """What each admissible set of candidates makes of the problems: counts by weight, and how much equipment it is."""
    kinds = candidates(wanted, raw)
    by_choice = {code for aim in wanted if aim.optional for code in aim.stages}
    for size in range(len(kinds) + 1):
        for chosen in combinations(kinds, size):
            groups = [kind.group for kind in chosen if kind.group]
            if len(groups) != len(set(groups)):
                continue
            water, at_entry, admitted = raw, raw, True
            for kind in chosen:
                admitted = admitted and feed.untold(kind.code, water) is not None
                water = predict(kind.code, water)
                at_entry = water if kind.place == ENTRY else at_entry
            if not admitted:
                continue
            codes = [kind.code for kind in chosen]
            states = [outcome(aim, codes, raw, {ENTRY: at_entry, TAP: water}) for aim in wanted]
            left = tuple(
                sum(
                    aim.health is health and state is which and not aim.optional
                    for aim, state in zip(wanted, states, strict=True)
                )
                for health in (True, False)
                for which in (Outcome.UNANSWERED, Outcome.UNTOLD)
            )
            yield (*left, sum(kind.pieces for kind in chosen if kind.code not in by_choice)), tuple(codes)


@pytest.mark.parametrize("name", EXPECTED)
def test_no_set_of_candidates_is_better(name):
    _, raw, wanted = sought(name)
    best, _ = search(wanted, raw)
    least = min(every_train(wanted, raw))[0]
    assert (*best.score.answered, best.score.pieces) == least


@pytest.mark.parametrize("number", range(40))
def test_no_set_of_candidates_is_better_for_random_waters(number):
    results, problems, household = random_water(number)
    raw = raw_water(sample(results), found=bool({"fecal_bacteria", "coliform_bacteria"} & set(problems)))
    found = [problem(code, kind) for code, kind in problems.items()]
    wanted = aims(found, compare_sample(sample(results)), Household(**household), raw)
    if len(candidates(wanted, raw)) > 11:
        pytest.skip("too many sets to try them all")
    best, _ = search(wanted, raw)
    assert (*best.score.answered, best.score.pieces) == min(every_train(wanted, raw))[0]


@pytest.mark.parametrize("name", EXPECTED)
def test_what_is_cleared_is_within_its_limits_when_the_predicted_sample_is_compared(name):
    """The worst end decides: the comparison of the predicted sample, an independent path, says within."""
    water, raw, wanted = sought(name)
    best, _ = search(wanted, raw)
    _, _, treatment = scenario(name)
    after = compare_sample(treat(water, treatment), authorities=tuple(EXPECTED[name].get("authorities", ("us-epa",))))
    targets = {
        (target.analyte, target.maximum)
        for aim in best.left(wanted, Outcome.CLEARED)
        if aim.place == TAP
        for target in aim.targets
    }
    for one in after:
        if (one.analyte, one.limit.canonical_maximum) in targets and one.condition_settled:
            assert one.verdict in (Verdict.WITHIN, Verdict.UNDECIDED), one
            assert one.amount.high <= one.limit.canonical_maximum * (1 + 1e-9)


def test_the_runner_up_says_why_it_lost():
    for name in EXPECTED:
        _, _, treatment = scenario(name)
        if treatment.runner_up:
            assert treatment.runner_up_why
            assert treatment.runner_up != tuple(stage.code for stage in treatment.stages)


def test_a_membrane_alone_loses_to_oxidation_ahead_where_arsenic_is_reduced():
    _, raw, wanted = sought("arsenic_reducing")
    alone = predict("reverse_osmosis", raw)
    (aim,) = [aim for aim in wanted if aim.code == "arsenic"]
    assert kept(aim.targets[0], raw, alone) is None


def test_where_no_train_exists_that_is_the_answer():
    _, _, treatment = scenario("nothing_answers")
    assert treatment.stages == ()
    assert treatment.unanswered == ("gross_alpha",)
    assert "that is the answer" in treatment.text


def test_fluoride_beyond_any_membrane_is_not_answered():
    water = sample({"fluoride": 400.0, "total_coliform": 0})
    raw = raw_water(water)
    wanted = aims([problem("fluoride")], compare_sample(water), Household(), raw)
    best, _ = search(wanted, raw)
    assert best.outcomes == (Outcome.UNANSWERED,) or best.outcomes == (Outcome.UNTOLD,)


def test_stages_of_one_group_are_alternatives():
    _, raw, wanted = sought("soft_acid_corrosive")
    assert sum(kind.group == "neutralising" for kind in candidates(wanted, raw)) > 1
    best, _ = search(wanted, raw)
    assert sum(stages()[code].group == "neutralising" for code in best.stages) == 1


def test_two_disinfections_stand_in_one_train_where_parasites_need_the_second():
    """Without a filter for cysts the lamp takes them: chlorine, filter and softener ahead make the water fit for it."""
    _, _, treatment = scenario("parasites_in_hard_iron_water_nothing_else_asked")
    assert treatment.runner_up == ("chlorination", "softening", "fine_filter", "ultraviolet")
    assert treatment.runner_up_why == "It takes more equipment (7 pieces against 5)."


def test_a_filter_for_cysts_alone_never_takes_water_with_bacteria():
    raw = raw_water(sample({"e_coli": 3, "total_coliform": 5}))
    assert feed.untold("cyst_filter", raw) is None
    assert feed.untold("cyst_filter", predict("chlorination", raw)) is not None
