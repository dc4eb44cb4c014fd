"""More invented wells: what guidance named in each file leads one to say of them holds in the models, text and page."""

import re

import pytest
from interpretation.test_promises import ASSURANCE
from interpretation.test_wells import BOILING
from interpretation.wells_more_reader import NAMES, TABLES, about, first_part, found, page, sample

import wellchem
from wellchem.display import words
from wellchem.interpretation import wording
from wellchem.models.codes import Certainty
from wellchem.models.sample import Sample
from wellchem.schema import results_frame

CERTAINTIES = (Certainty.POSSIBLE, Certainty.LIKELY, Certainty.CERTAIN)
BARRIERS = {"ultraviolet", "chlorination"}
NEUTRALISERS = {"neutralising_calcite", "neutralising_blend", "soda_ash_feed"}


def expecting(key):
    return [name for name in NAMES if key in TABLES[name]["expect"]]


def expected(name, key):
    return TABLES[name]["expect"][key]


def by_code(items):
    return {item.code: item for item in items}


def missing(name):
    return [item.code for item in found(name).missing]


def stages(name):
    return [stage.code for stage in found(name).treatment.stages]


def settled(name, analyte, kind):
    return {
        item.verdict.value
        for item in found(name).comparisons
        if item.analyte == analyte and item.limit.kind.value == kind and item.condition_settled
    }


def spoken(name, hazard, use):
    texts = {getattr(action, use) for action in found(name).actions if action.hazard == hazard}
    return texts - {""}


def test_there_are_sixty_with_guidance():
    assert len(NAMES) >= 60
    assert all(TABLES[name]["guidance"] for name in NAMES)


@pytest.mark.parametrize("name", expecting("verdicts"))
def test_verdicts(name):
    for key, verdict in expected(name, "verdicts").items():
        analyte, kind = key.split("/")
        verdicts = settled(name, analyte, kind)
        assert verdict in verdicts, (key, verdicts)
        if verdict in ("within", "undecided") and not TABLES[name]["expect"].get("mixed"):
            assert "above" not in verdicts


@pytest.mark.parametrize("name", expecting("mixed"))
def test_authorities_disagree(name):
    verdicts = {}
    for item in found(name).comparisons:
        if item.limit.kind == "health" and item.condition_settled:
            verdicts.setdefault(item.analyte, set()).add(item.verdict.value)
    assert any({"above", "within"} <= one for one in verdicts.values())


@pytest.mark.parametrize("name", expecting("mixed_analyte"))
def test_authorities_disagree_on(name):
    assert settled(name, expected(name, "mixed_analyte"), "health") == {"above", "within"}


@pytest.mark.parametrize("name", expecting("problems"))
def test_problems(name):
    problems = by_code(found(name).problems)
    sure = {code: problems[code].certainty.value if code in problems else None for code in expected(name, "problems")}
    assert sure == expected(name, "problems")


@pytest.mark.parametrize("name", expecting("problems_in"))
def test_problems_of_either_certainty(name):
    problems = by_code(found(name).problems)
    for code, certainties in expected(name, "problems_in").items():
        assert problems[code].certainty.value in certainties


@pytest.mark.parametrize("name", NAMES)
def test_present_and_absent(name):
    problems = set(by_code(found(name).problems))
    expect = TABLES[name]["expect"]
    assert set(expect.get("present", ())) <= problems, problems
    assert not set(expect.get("absent", ())) & problems, problems
    if expect.get("none"):
        assert not problems


@pytest.mark.parametrize("name", expecting("urgency"))
def test_urgency(name):
    problems = by_code(found(name).problems)
    wanted = expected(name, "urgency")
    assert {code: problems[code].urgency.value for code in wanted} == wanted


@pytest.mark.parametrize("name", expecting("checks"))
def test_checks(name):
    checks = by_code(found(name).checks)
    assert {code: checks[code].status.value for code in expected(name, "checks")} == expected(name, "checks")


@pytest.mark.parametrize("name", expecting("boiling"))
def test_boiling(name):
    for code, kind in expected(name, "boiling").items():
        texts = spoken(name, code, "boiling")
        assert texts, code
        assert all(text.startswith(BOILING[kind]) for text in texts), texts


@pytest.mark.parametrize(
    ("key", "use"), [("formula", "infant_formula"), ("bathing", "bathing"), ("boiling_says", "boiling")]
)
def test_other_uses(key, use):
    for name in expecting(key):
        for code, pattern in expected(name, key).items():
            texts = spoken(name, code, use)
            assert texts, (name, code)
            assert all(re.search(pattern, text) for text in texts), (name, texts)


@pytest.mark.parametrize("name", expecting("action_groups"))
def test_groups_are_spoken_to(name):
    for code, groups in expected(name, "action_groups").items():
        assert set(groups) <= {action.group for action in found(name).actions if action.hazard == code}


@pytest.mark.parametrize("name", NAMES)
def test_missing(name):
    expect, codes = TABLES[name]["expect"], missing(name)
    assert set(expect.get("missing", ())) <= set(codes), codes
    assert not set(expect.get("not_missing", ())) & set(codes)
    for pattern in expect.get("missing_matching", ()):
        assert any(re.search(pattern, code) for code in codes), (pattern, codes)
    if first := expect.get("first_missing"):
        assert codes[0] == first
    if first_of := expect.get("first_missing_of"):
        assert codes[0] in first_of
    if pattern := expect.get("first_missing_matching"):
        assert re.search(pattern, codes[0]), codes
    places = [codes.index(code) for code in expect.get("order", ())]
    assert places == sorted(places)
    for code, pattern in expect.get("missing_says", {}).items():
        item = by_code(found(name).missing)[code]
        assert re.search(pattern, f"{item.title} {item.decision}")


@pytest.mark.parametrize("name", expecting("open"))
def test_core_tests_not_established(name):
    said = by_code(found(name).cautions)["not_established"].text
    assert all(re.search(rf"\b{core}\b", said) for core in expected(name, "open")), said


@pytest.mark.parametrize("name", NAMES)
def test_signs(name):
    signs = set(by_code(found(name).signs))
    assert set(TABLES[name]["expect"].get("signs", ())) <= signs, signs
    assert not set(TABLES[name]["expect"].get("no_signs", ())) & signs


@pytest.mark.parametrize("name", NAMES)
def test_train(name):
    expect, train = TABLES[name]["expect"], stages(name)
    if "stages" in expect:
        assert train == expect["stages"]
    assert set(expect.get("stages_have", ())) <= set(train), train
    assert not set(expect.get("never_stages", ())) & set(train), train
    for ordered in expect.get("ordered_stages", ()):
        places = [train.index(code) for code in ordered]
        assert places == sorted(places)
    if expect.get("barrier_before"):
        first = min((train.index(code) for code in BARRIERS & set(train)), default=len(train))
        assert all(train.index(code) > first for code in expect["barrier_before"] if code in train), train


@pytest.mark.parametrize("name", expecting("first_stage_of"))
def test_first_stage(name):
    assert stages(name)[0] in expected(name, "first_stage_of")


@pytest.mark.parametrize("name", expecting("neutraliser_before"))
def test_neutraliser_stands_ahead(name):
    train = stages(name)
    first = min(train.index(code) for code in NEUTRALISERS & set(train))
    assert all(train.index(code) > first for code in expected(name, "neutraliser_before") if code in train), train


@pytest.mark.parametrize("name", expecting("feed"))
def test_feed_conditions(name):
    for stage, wanted in expected(name, "feed").items():
        feed = by_code(found(name).treatment.stages)[stage].feed
        for pattern, status in wanted.items():
            said = {one.status for one in feed if re.search(pattern, one.text)}
            assert said == {status}, (stage, pattern, said)


@pytest.mark.parametrize("name", expecting("sizes"))
def test_sizes(name):
    for stage, wanted in expected(name, "sizes").items():
        sizes = {one.label: one for one in by_code(found(name).treatment.stages)[stage].sizes}
        for label, (low, high, unit) in wanted.items():
            one = sizes[label]
            assert one.unit == unit
            assert (one.low, one.high) == (pytest.approx(low, rel=0.03), pytest.approx(high, rel=0.03))


@pytest.mark.parametrize("name", expecting("treated"))
def test_treated_water(name):
    treated = wellchem.treat(sample(name), found(name).treatment)
    for analyte, (low, high) in expected(name, "treated").items():
        result = treated.get(analyte)
        assert (result.low, result.high) == (pytest.approx(low, rel=0.03), pytest.approx(high, rel=0.03))


@pytest.mark.parametrize("name", NAMES)
def test_text_and_page(name):
    expect = TABLES[name]["expect"]
    flat = " ".join(page(name).split())
    text = " ".join(found(name).to_text(width=10_000).split())
    for pattern in expect.get("says", ()):
        assert re.search(pattern, flat), pattern
        assert re.search(pattern, text), pattern
    for pattern in expect.get("never", ()):
        for shown in (flat, text):
            hit = re.search(pattern, shown)
            assert not hit, shown[max(0, hit.start() - 100) : hit.end() + 100]
    for pattern in expect.get("household_first_says", ()):
        assert re.search(pattern, first_part(name)), first_part(name)


def resting(finding):
    """Comparisons that a problem of the interpretation rests on."""
    return {index for problem in finding.problems for part in problem.evidence for index in part.comparisons}


def outline(finding):
    """What must not turn on the order of results: problems, actions, tests, checks, signs, train."""
    return (
        {(one.code, one.title, one.certainty, one.urgency) for one in finding.problems},
        {(one.hazard, one.group, one.text, one.boiling, one.infant_formula) for one in finding.actions},
        {(one.code, one.decision) for one in finding.missing},
        {(one.code, one.status) for one in finding.checks},
        {one.code for one in finding.signs},
        [stage.code for stage in finding.treatment.stages],
        {one.text for one in finding.cautions},
    )


@pytest.mark.parametrize("name", NAMES)
def test_nothing_assures(name):
    quoted = " ".join(words.documents(found(name)))
    for shown in (page(name), found(name).to_text()):
        for line in shown.splitlines():
            hit = ASSURANCE.search(line)
            assert not hit or "Safe Drinking Water" in line or line.strip() in quoted, line


@pytest.mark.parametrize("name", NAMES)
def test_nothing_on_health_is_silent(name):
    finding = found(name)
    asked = {one.code for one in finding.missing}
    whys = [one.decision for one in finding.missing]
    beyond_goal = {"above", "below"}
    limited = {one.analyte for one in finding.comparisons if one.limit.kind == "health" and one.condition_settled}
    for index, one in enumerate(finding.comparisons):
        if not one.condition_settled or (one.limit.kind == "goal" and one.analyte in limited):
            continue
        if one.limit.kind in ("health", "goal") and one.verdict in beyond_goal:
            assert index in resting(finding), (one.analyte, one.limit.term)
        if one.limit.kind == "health" and one.verdict == "undecided":
            said = {f"{code}_{one.analyte}" for code in ("lower_limit", "again", "ask_laboratory")} & asked
            said = said or any(f" {wording.label(one.analyte)} (" in why for why in whys)
            assert index in resting(finding) or said, (one.analyte, one.limit.term)


@pytest.mark.parametrize("name", NAMES)
def test_each_health_problem_is_acted_on_and_warned_of(name):
    finding, shown = found(name), " ".join(page(name).split())
    for problem in finding.problems:
        if problem.kind == "health":
            assert problem.decides
            assert f"Who decides: {problem.decides}" in shown
            assert problem.cautions
            assert all(" ".join(one.text.split()) in shown for one in problem.cautions)
            if problem.code != "coliform_bacteria":
                assert any(action.hazard == problem.code for action in finding.actions), problem.code


@pytest.mark.parametrize("name", NAMES)
def test_comes_back_from_json(name):
    assert type(found(name)).model_validate_json(found(name).model_dump_json()) == found(name)


@pytest.mark.parametrize("name", NAMES)
def test_order_of_results_does_not_matter(name):
    given = sample(name)
    turned = given.model_copy(update={"results": given.results[::-1]})
    assert outline(wellchem.interpret(turned, **about(name))) == outline(found(name))


WITHIN = {
    "Barium": "0.05 mg/L",
    "Nitrate-N": "0.4 mg/L",
    "E. coli": "Absent",
    "Chloride": "12 mg/L",
    "Lead": "<0.2 µg/L",
}


@pytest.mark.parametrize("name", NAMES)
def test_a_further_result_within_removes_no_problem(name):
    given = sample(name)
    tested = {one.analyte for one in given.results}
    more = tuple(one for one in Sample.from_values(WITHIN).results if one.analyte not in tested)
    added = wellchem.interpret(given.model_copy(update={"results": given.results + more}), **about(name))
    before = {one.code: CERTAINTIES.index(one.certainty) for one in found(name).problems}
    after = {one.code: CERTAINTIES.index(one.certainty) for one in added.problems}
    assert all(after.get(code, -1) >= sure for code, sure in before.items())


@pytest.mark.parametrize("name", NAMES)
def test_the_frames_tell_the_same(name):
    frame = results_frame((sample(name),))
    told = wellchem.problems(frame, **about(name))
    wanted = {(one.code, one.certainty.value, one.urgency.value) for one in found(name).problems}
    columns = zip(told["code"].astype(str), told["certainty"].astype(str), told["urgency"].astype(str), strict=True)
    assert set(columns) == wanted
