"""Random reports of any analyte with a limit, random households and authorities: what must hold of every page."""

import random
import re
from datetime import date
from functools import cache

import pytest
from interpretation.test_promises import ASSURANCE
from interpretation.wells_more_reader import plain
from interpretation.wells_reader import result

import wellchem
from wellchem.interpretation import wording
from wellchem.interpretation.practice import problem_index, problem_of
from wellchem.limits import authorities, lookup
from wellchem.models.codes import SamplingPoint
from wellchem.models.household import Household, Nearby, Observation, WellType
from wellchem.models.sample import Sample
from wellchem.vocabulary import bundled

SEEDS = range(80)
EVERYWHERE = authorities()
COUNTS = ("absent", "present", "<1", "<10", "3", "40", ">200")
ODD = re.compile(r"\bnan\b|\bNone\b(?! (?:were )?found| beyond)|\binf\b|\bTrue\b(?! colou?r)|\bFalse\b")


@cache
def limits():
    """Maxima of each analyte that has one."""
    found = {}
    for analyte in bundled().analytes:
        maxima = [one.canonical_maximum for name in EVERYWHERE for one in lookup(analyte, authority=name, on="any")]
        if any(maxima):
            found[analyte] = [one for one in maxima if one]
    return found | {"total_coliform": [1.0], "e_coli": [1.0]}


def printed(dice, analyte):
    """A result around one of the limits, decided or censored; rejected and late ones among them."""
    if bundled().analytes[analyte].quantity == "count":
        made = result(analyte, dice.choice(COUNTS))
    else:
        amount = dice.choice(limits()[analyte]) * 10 ** dice.uniform(-2.0, 1.3)
        made = result(analyte, dice.choice(("", "", "", "<", ">")) + f"{amount:.8f}")
    return made.model_copy(update={"qualifiers": dice.choice([()] * 8 + [("J",), ("R",), ("H",)])})


def report(seed):
    """A sample and the further arguments of `interpret`."""
    dice = random.Random(seed)
    names = sorted(limits())
    three = [None, True, False]
    home = Household(
        infants=dice.choice(three),
        children=dice.choice(three),
        pregnancy=dice.choice(three),
        sodium_restricted=dice.choice(three),
        flooded=dice.choice(three),
        well_type=dice.choice([None, *WellType]),
        observations=tuple(dice.sample(list(Observation), 2)),
        nearby=tuple(dice.sample(list(Nearby), 2)),
    )
    sample = Sample(
        key="random",
        id="random",
        results=tuple(printed(dice, dice.choice(names)) for _ in range(dice.randint(1, 12))),
        collected=dice.choice([None, date(2026, 4, 20), date(2020, 1, 1)]),
        point=dice.choice([None, *SamplingPoint]),
    )
    about = {
        "authorities": tuple(dice.sample(EVERYWHERE, dice.randint(1, 3))),
        "on": dice.choice([date(2026, 5, 1), date(2015, 1, 1), date(2030, 1, 1)]),
        "household": dice.choice([None, home]),
    }
    return sample, about


@cache
def found(seed):
    sample, about = report(seed)
    return wellchem.interpret(sample, **about)


@pytest.mark.parametrize("seed", SEEDS)
def test_nothing_on_health_is_silent(seed):
    finding = found(seed)
    resting = {index for one in finding.problems for part in one.evidence for index in part.comparisons}
    asked = {one.code for one in finding.missing}
    sure = {problem_index()[one.code] for one in finding.problems if one.certainty != "possible"}
    decided = {one.analyte for one in finding.comparisons if problem_of(one.analyte, "health", "above") in sure}
    limited = {one.analyte for one in finding.comparisons if one.limit.kind == "health" and one.condition_settled}
    for index, one in enumerate(finding.comparisons):
        goal = one.limit.kind == "goal" and one.analyte not in limited
        if not one.condition_settled or not (goal or one.limit.kind == "health"):
            continue
        if one.verdict in ("above", "below"):
            assert index in resting, (one.analyte, one.limit.term)
        elif one.verdict == "undecided" and not goal and not {"rejected", "invalid_sample"} & set(one.reasons):
            if any(reason.startswith("derived_from") for reason in one.reasons) and one.analyte in decided:
                continue  # another result decides the same problem
            codes = ("lower_limit", "again", "ask_laboratory", "members")
            said = {f"{code}_{one.analyte}" for code in codes} & asked
            said = said or any(f" {wording.label(one.analyte)} (" in test.decision for test in finding.missing)
            assert index in resting or said, (one.analyte, one.reasons)


@pytest.mark.parametrize("seed", SEEDS)
def test_each_health_problem_has_evidence_action_and_caution(seed):
    for problem in found(seed).problems:
        assert problem.evidence
        if problem.kind == "health":
            assert problem.cautions
            assert problem.decides
            acted = {action.hazard for action in found(seed).actions}
            assert {problem.code, "fecal_bacteria"} & acted, problem.code


@pytest.mark.parametrize("seed", SEEDS)
def test_the_order_of_results_does_not_matter(seed):
    sample, about = report(seed)
    turned = wellchem.interpret(sample.model_copy(update={"results": sample.results[::-1]}), **about)
    for one, other in ((found(seed), turned), (turned, found(seed))):
        assert {(p.code, p.certainty, p.urgency) for p in one.problems} <= {
            (p.code, p.certainty, p.urgency) for p in other.problems
        }
        assert {m.code for m in one.missing} <= {m.code for m in other.missing}
    assert [s.code for s in turned.treatment.stages] == [s.code for s in found(seed).treatment.stages]


@pytest.mark.parametrize("seed", SEEDS)
def test_page_and_text_are_plain_and_assure_of_nothing(seed):
    for shown in (plain(found(seed).to_html()), found(seed).to_text(width=10_000)):
        for line in shown.splitlines():
            assert not ODD.search(line), line
            assert not ASSURANCE.search(line) or "Safe Drinking Water" in line, line


@pytest.mark.parametrize("seed", SEEDS)
def test_comes_back_from_json(seed):
    assert type(found(seed)).model_validate_json(found(seed).model_dump_json()) == found(seed)
