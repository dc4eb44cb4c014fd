"""What holds of every interpretation: nothing assures, nothing undecided is silent, more is never fewer problems."""

import re
from datetime import date, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from interpretation.wells_reader import NAMES, Well, result

import wellchem
from wellchem.interpretation.practice import by, groups, problem_of, problems, rows
from wellchem.interpretation.wording import label
from wellchem.limits import authorities, lookup
from wellchem.models.codes import Censoring, Reason
from wellchem.models.household import Household
from wellchem.models.sample import Sample

ON = date(2026, 5, 1)
EVERYWHERE = authorities()

# Words that assure, wherever they stand; a negation before them does not matter, they are not used at all.
ASSURANCE = re.compile(
    r"\bsafe(ly)?\b|\bharmless\b|\bno (health )?(risk|danger|concern)\b|\bfit to drink\b|\bpotable\b|\ball clear\b"
    r"|\bdrinkable\b|\bmay be drunk without\b|\bnothing to worry\b|\bgood to drink\b|\bis fine\b"
    r"|\bfree (of|from) (bacteria|germs)\b",
    re.IGNORECASE,
)


def texts(model):
    """Every text that an interpretation says itself; titles of documents are quotations."""
    if isinstance(model, str):
        yield model
    elif isinstance(model, (tuple, list)):
        for item in model:
            yield from texts(item)
    elif hasattr(model, "__class__") and hasattr(type(model), "model_fields"):
        for name in type(model).model_fields:
            if name not in ("source", "citation", "sample", "printed", "origin", "note"):
                yield from texts(getattr(model, name))


@pytest.mark.parametrize("name", NAMES)
def test_no_output_assures(name):
    finding = Well(name).interpreted()
    for text in texts(finding):
        assert not ASSURANCE.search(text), text


def test_no_table_assures():
    tables = ("problems", "rules", "urgency", "care", "cautions", "missing", "questions", "checks", "signs")
    for table in (*tables, "observations", "interactions", "routine", "levels"):
        for row in rows(table):
            for column, text in row.items():
                if column not in ("source", "locator"):
                    assert not ASSURANCE.search(text), (table, text)


@pytest.mark.parametrize("name", NAMES)
def test_every_health_problem_has_its_own_caution_and_who_decides(name):
    finding = Well(name).interpreted()
    for problem in finding.problems:
        if problem.kind == "health":
            assert any(caution.hazard == problem.code for caution in finding.cautions), problem.code
            assert problem.decides


def test_every_health_problem_of_the_catalogue_has_caution_care_and_urgency():
    for problem in problems():
        assert by("urgency", "problem").get(problem.code) or problem.code == "other_aesthetic", problem.code
        if problem.kind == "health":
            assert by("cautions", "problem").get(problem.code), problem.code
            assert by("care", "problem").get(problem.code), problem.code


@pytest.mark.parametrize("authority", EVERYWHERE)
def test_every_health_limit_raises_a_problem(authority):
    for analyte in groups():
        for limit in lookup(analyte, authority=authority, on="any"):
            if limit.kind == "health":
                place = problem_of(limit.analyte, "health", "above")
                assert place >= 0, (limit.analyte, limit.term)
                assert problems()[place].kind == "health" or limit.analyte in AESTHETIC_THOUGH_CALLED_HEALTH, limit


# Authorities that call these limits health-based; what they raise is said as equipment or appearance all the same.
AESTHETIC_THOUGH_CALLED_HEALTH = {"ph", "turbidity", "chloride", "total_dissolved_solids", "specific_conductance"}


@pytest.mark.parametrize("name", NAMES)
def test_no_health_exceedance_without_a_problem(name):
    finding = Well(name).interpreted()
    rest_on = {index for problem in finding.problems for evidence in problem.evidence for index in evidence.comparisons}
    for index, item in enumerate(finding.comparisons):
        if item.limit.kind == "health" and item.condition_settled and item.verdict in ("above", "below"):
            assert index in rest_on, (item.analyte, item.limit.term)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_undecided_on_health_is_silent(name):
    finding = Well(name).interpreted()
    rest_on = {index for problem in finding.problems for evidence in problem.evidence for index in evidence.comparisons}
    asked = {test.code for test in finding.missing}
    for index, item in enumerate(finding.comparisons):
        if item.limit.kind == "health" and item.condition_settled and item.verdict == "undecided":
            codes = ("lower_limit", "again", "ask_laboratory")
            said = {f"{code}_{item.analyte}" for code in codes} & asked
            said = said or any(f" {label(item.analyte)} (" in test.decision for test in finding.missing)
            if any(reason.startswith("derived_from") for reason in item.reasons):
                # Not measured itself: asked for as a test, never said to have too high a reporting limit.
                assert f"lower_limit_{item.analyte}" not in asked
                continue
            assert index in rest_on or said, (item.analyte, item.limit.term)


@pytest.mark.parametrize("name", NAMES)
def test_core_tests_missing_or_undecided_are_said(name):
    finding = Well(name).interpreted()
    said = {caution.code: caution.text for caution in finding.cautions}
    assert "informs" in said
    tested = {item.analyte for item in finding.sample.results}
    for name_, analytes in (
        ("bacteria", {"total_coliform", "e_coli"}),
        ("nitrate", {"nitrate", "nitrate_plus_nitrite"}),
        ("arsenic", {"arsenic"}),
        ("lead", {"lead"}),
    ):
        if not analytes & tested:
            assert name_ in said["not_established"]


def test_one_negative_test_never_establishes_absence():
    finding = Well("everything_within").interpreted()
    assert any(caution.code == "one_negative" for caution in finding.cautions)
    assert finding.problems == ()


@pytest.mark.parametrize("name", NAMES)
def test_certain_never_rests_on_a_bound_alone(name):
    finding = Well(name).interpreted()
    for problem in finding.problems:
        if problem.certainty == "certain":
            read = {index for evidence in problem.evidence for index in evidence.results}
            shown = [finding.sample.results[index] for index in read]
            assert any(
                one.censoring in (Censoring.NONE, Censoring.PRESENT) or groups()[one.analyte] == "microbiology"
                for one in shown
            ), problem.code


@pytest.mark.parametrize("name", NAMES)
def test_every_problem_names_its_evidence(name):
    finding = Well(name).interpreted()
    for problem in finding.problems:
        assert problem.evidence, problem.code
        for evidence in problem.evidence:
            assert all(0 <= index < len(finding.sample.results) for index in evidence.results)
            assert all(0 <= index < len(finding.comparisons) for index in evidence.comparisons)


@pytest.mark.parametrize("name", NAMES)
def test_json_comes_back(name):
    finding = Well(name).interpreted()
    assert type(finding).model_validate_json(finding.model_dump_json()) == finding


RAISED = ("nitrate", "arsenic", "lead", "copper", "iron", "manganese", "fluoride", "uranium", "sulfate", "e_coli")


@settings(max_examples=60, deadline=None)
@given(
    analyte=st.sampled_from(RAISED),
    start=st.floats(0.0, 3.0),
    factor=st.floats(1.0, 50.0),
    censored=st.booleans(),
    authority=st.sampled_from(EVERYWHERE),
)
def test_raising_a_result_never_removes_a_problem(analyte, start, factor, censored, authority):
    """A rule of logic, not of a document: a limit that is passed stays passed when the amount grows."""
    amount = round(start, 4)
    found = []
    for value in (amount, amount * factor):
        text = f"{value:.6f}" if analyte != "e_coli" else str(int(value))
        sample = Sample(key="a", results=(result(analyte, text), result("ph", "7.2")))
        problems_found = wellchem.interpret(sample, [authority], on=ON).problems
        found.append({one.code: _SURE[one.certainty.value] for one in problems_found})
    for code, sure in found[0].items():
        assert found[1].get(code, 0) >= min(sure, 2), (code, found)
    if censored and analyte != "e_coli":
        sample = Sample(key="a", results=(result(analyte, f"<{amount + 0.001:.6f}"),))
        for one in wellchem.interpret(sample, [authority], on=ON).problems:
            assert one.certainty != "certain"


_SURE = {"possible": 1, "likely": 2, "certain": 3}


@pytest.mark.parametrize("text", ["<0.05", "<5", "<500"])
@pytest.mark.parametrize("analyte", ["arsenic", "lead", "nitrate", "uranium", "benzene"])
def test_not_detected_is_never_certain_or_likely(analyte, text):
    finding = wellchem.interpret(Sample(key="a", results=(result(analyte, text),)), on=ON)
    assert all(problem.certainty == "possible" for problem in finding.problems)


def test_boiling_is_not_advised_where_nitrate_or_lead_is_unknown():
    bacteria = (result("e_coli", "present"), result("total_coliform", "present"))
    low = (result("nitrate", "1"), result("lead", "<0.001"))
    for more, advised in ((), False), ((low[0],), False), ((low[1],), False), (low, True):
        finding = wellchem.interpret(Sample(key="a", collected=ON, results=(*bacteria, *more)), on=ON)
        texts_said = [action.boiling for action in finding.actions if action.boiling]
        assert any(text.startswith("A rolling boil") for text in texts_said) == advised


def test_urgency_follows_the_table_not_the_word_above():
    """Copper, sulfate and nitrate are not arsenic at 11 µg/L (sources in the urgency table)."""
    home = Household(infants=False, children=False, pregnancy=False)
    slow = wellchem.interpret(Sample(key="a", results=(result("arsenic", "0.011"),)), on=ON, household=home)
    fast = wellchem.interpret(Sample(key="a", results=(result("e_coli", "1"),)), on=ON, household=home)
    assert {problem.urgency.value for problem in slow.problems} == {"soon"}
    assert fast.problems[0].urgency == "now"
    baby = wellchem.interpret(
        Sample(key="a", results=(result("nitrate", "11"),)), on=ON, household=Household(infants=True)
    )
    assert baby.problems[0].urgency == "now"


def test_a_duplicate_confirms():
    once = Sample(key="a", results=(result("arsenic", "0.02"),))
    twice = Sample(key="a", results=(result("arsenic", "0.02"), result("arsenic", "0.021", method="other")))
    assert wellchem.interpret(once, on=ON).problems[0].certainty == "likely"
    assert wellchem.interpret(twice, on=ON).problems[0].certainty == "certain"
    doubtful = Sample(key="a", results=(result("arsenic", "0.02"), result("arsenic", "0.021", qualifiers=("J",))))
    assert wellchem.interpret(doubtful, on=ON).problems[0].certainty == "likely"


def test_rejected_results_are_not_used():
    sample = Sample(key="a", results=(result("arsenic", "0.5", qualifiers=("R",)),))
    finding = wellchem.interpret(sample, on=ON)
    assert not [problem for problem in finding.problems if problem.certainty != "possible"]
    assert any(test.code == "arsenic" for test in finding.missing)
    assert {check.code: check.status.value for check in finding.checks}["qualifiers"] == "fail"


def test_empty_and_odd_samples():
    assert wellchem.interpret(Sample(key="a"), on=ON).problems == ()
    odd = Sample(
        key="a",
        collected=datetime(2026, 4, 1, 8, 0),
        results=(
            result("ph", "7"),
            result("lead", "1").model_copy(update={"censoring": Censoring.NOT_REPORTED, "low": None, "high": None}),
            result("iron", "1").model_copy(update={"low": None, "high": None, "censoring": Censoring.LEFT}),
        ),
    )
    finding = wellchem.interpret(odd, EVERYWHERE, on=ON)
    assert finding.to_text()
    assert "lead" in {test.code for test in finding.missing}


def test_coliforms_without_e_coli_are_no_fecal_problem():
    """What an analyte that was not measured may be is asked for, not held against a reporting limit."""
    for more in ((result("e_coli", "absent"),), ()):
        sample = Sample(key="a", collected=ON, results=(result("total_coliform", "present"), *more))
        finding = wellchem.interpret(sample, EVERYWHERE, on=ON)
        assert {problem.code for problem in finding.problems} == {"coliform_bacteria"}
        asked = {test.code for test in finding.missing}
        assert not {code for code in asked if code.startswith("lower_limit")}
        assert ("bacteria" in asked) == (not more)
        assert "confirm_coliform_bacteria" in asked


def test_what_is_enacted_for_later_counts_already():
    """40 CFR 141.80(c) as revised: lead 0.010 mg/L from 2027-11-01; before that 0.015."""
    adults = Household(infants=False, children=False, pregnancy=False)
    sample = Sample(key="a", results=(result("lead", "0.012"),))
    now = wellchem.interpret(sample, on=ON, household=adults)
    assert [(problem.code, problem.certainty.value) for problem in now.problems] == [("lead", "likely")]
    assert "2027-11-01" in now.problems[0].evidence[0].text
    assert not wellchem.interpret(Sample(key="a", results=(result("lead", "0.009"),)), on=ON, household=adults).problems
    frame = wellchem.problems(wellchem.schema.results_frame([sample]), on=ON, household=adults)
    assert list(frame["code"]) == ["lead"]
    assert "lead" in frame["evidence"].iloc[0]


def test_what_cannot_be_judged_says_why():
    """Each reason of a comparison asks for what would settle it."""
    told = {row["reason"] for row in rows("reasons")}
    late = result("total_coliform", "absent", qualifiers=("H",))
    finding = wellchem.interpret(Sample(key="a", results=(late, result("e_coli", "absent", qualifiers=("H",)))), on=ON)
    asked = {test.code: test.decision for test in finding.missing}
    assert "too late" in asked["bacteria"]
    assert not {code for code in asked if code.startswith("lower_limit")}
    assert told <= {reason.value for reason in Reason}
