"""Several samples of one well, its duplicates and its blanks: each weighs on the others, and none clears another.

The expectations rest on 40 CFR 141.23(f) (a nitrate above its limit is confirmed by a second sample), 40 CFR 141.853
and 141.402 (a repeat sample that is positive makes the finding, one that is negative does not undo it), the US
Department of Defense's Data Validation Guidelines, Table A of 2022 (a result of up to five times a blank is biased by
it), Risk Assessment Guidance for Superfund, Part A, 5.5 (ten times for common laboratory contaminants; from memory),
and 20 % between duplicates (National Functional Guidelines for Inorganic Data Review, 1994; from memory).
"""

from datetime import date

import pytest
from interpretation.test_promises import ASSURANCE

import wellchem
from wellchem.errors import WellchemError
from wellchem.models.codes import Role, SamplingPoint
from wellchem.models.household import Household, WellType
from wellchem.models.sample import Explanation, Report, Sample

ON = date(2026, 5, 1)
# Without infants and pregnancy nitrate is no acute hazard, of which one sample would be enough to act on.
ADULTS = Household(infants=False, children=False, pregnancy=False)
APRIL, LATER, BEFORE = date(2026, 4, 20), date(2026, 4, 27), date(2026, 4, 6)


def sample(name, values, collected=APRIL, site="Two Elm well", **about):
    return Sample.from_values(values, id=name, key=name, site=site, collected=collected, **about)


def report(*samples, control=()):
    empty = Explanation(format="delimited")
    return Report(source="", samples=samples, quality_control=tuple(control), explanation=empty)


def alone(one):
    return wellchem.interpret(one, on=ON, household=ADULTS)


def found(one, *others, control=(), household=ADULTS):
    return wellchem.interpret(one, on=ON, household=household, reports=report(one, *others, control=control))


def problem(finding, code):
    return next((one for one in finding.problems if one.code == code), None)


def check(finding, code):
    return next(one for one in finding.checks if one.code == code)


def said(finding, code):
    return " ".join(part.text for part in problem(finding, code).evidence)


def test_a_second_sample_confirms():
    one, other = sample("W-1", {"Nitrate-N": "12.4 mg/L"}), sample("W-2", {"Nitrate-N": "11.9 mg/L"}, LATER)
    assert problem(alone(one), "nitrate").certainty == "likely"
    finding = found(one, other)
    assert problem(finding, "nitrate").certainty == "certain"
    assert "W-2" in said(finding, "nitrate")
    assert "11.9" in said(finding, "nitrate")
    assert check(finding, "other_samples").status == "pass"
    assert "confirm_nitrate" not in {one.code for one in finding.missing}


def test_a_sample_of_another_well_says_nothing():
    one = sample("W-1", {"Nitrate-N": "12.4 mg/L"})
    other = sample("W-2", {"Nitrate-N": "11.9 mg/L"}, site="Barn hydrant")
    finding = found(one, other)
    assert problem(finding, "nitrate").certainty == "likely"
    assert check(finding, "other_samples").status == "not_possible"


def test_where_no_well_is_named_it_is_a_question():
    one, other = (sample(name, {"Nitrate-N": "12 mg/L"}, site=None) for name in ("MW-1", "MW-2"))
    finding = found(one, other)
    assert problem(finding, "nitrate").certainty == "likely"
    assert check(finding, "other_samples").status == "not_possible"
    assert "same well" in check(finding, "other_samples").text


@pytest.mark.parametrize(("first", "second"), [("Well 1", "Well 2"), ("MW-1", "MW-2"), ("Bore A", "Bore B")])
def test_two_wells_of_one_property_are_two(first, second):
    one, other = sample(first, {"Iron": "1 mg/L"}), sample(second, {"Nitrate-N": "12 mg/L", "Arsenic": "1 µg/L"})
    finding = found(one, other)
    assert problem(finding, "nitrate") is None
    assert "arsenic" in {item.code for item in finding.missing}
    assert "same well" in check(finding, "other_samples").text


@pytest.mark.parametrize("site", ["House", "Private well", "unknown", "Well"])
def test_a_site_that_names_no_place_joins_no_samples(site):
    one, other = (sample(name, {"Nitrate-N": "12 mg/L"}, site=site) for name in ("26-101", "26-102"))
    assert problem(found(one, other), "nitrate").certainty == "likely"


@pytest.mark.parametrize("named", ["site", "point"])
def test_points_of_one_house_are_one_well(named):
    points = ("Well head", "Kitchen tap") if named == "site" else (None, None)
    one = sample("A", {"Nitrate-N": "12.4 mg/L"}, site=points[0], point=None if points[0] else SamplingPoint.WELL_HEAD)
    other = sample("B", {"Nitrate-N": "12.0 mg/L"}, site=points[1], point=None if points[1] else SamplingPoint.TAP)
    assert problem(found(one, other), "nitrate").certainty == "certain"


def test_the_same_sample_twice_confirms_nothing():
    one = sample("W-1", {"Nitrate-N": "12.4 mg/L"})
    again = one.model_copy(update={"key": "other file#1", "source": "other file"})
    assert problem(found(one, again), "nitrate").certainty == "likely"


def test_a_bound_or_an_estimate_confirms_nothing():
    one = sample("W-1", {"Nitrate-N": "12.4 mg/L"})
    assert problem(found(one, sample("W-2", {"Nitrate-N": ">11 mg/L"})), "nitrate").certainty == "likely"
    other = sample("W-2", {"Nitrate-N": "12 mg/L"})
    estimated = tuple(result.model_copy(update={"qualifiers": ("J",)}) for result in other.results)
    assert problem(found(one, other.model_copy(update={"results": estimated})), "nitrate").certainty == "likely"


def test_two_pesticides_do_not_confirm_each_other():
    one, other = sample("W-1", {"Atrazine": "9 µg/L"}), sample("W-2", {"Simazine": "9 µg/L"})
    assert problem(found(one, other), "pesticides").certainty == "likely"


def test_a_contradiction_is_said_and_removes_nothing():
    one, other = sample("W-1", {"Arsenic": "14 µg/L"}), sample("W-2", {"Arsenic": "3 µg/L"}, LATER)
    finding = found(one, other)
    assert problem(finding, "arsenic").certainty == "likely"
    assert "within" in said(finding, "arsenic")
    assert check(finding, "other_samples").status == "warn"


def test_what_another_sample_found_is_never_silent():
    """A later positive sample makes the finding for the well; an earlier one keeps it open: a negative undoes none."""
    none, some = {"Total coliform": "Absent", "E. coli": "Absent"}, {"Total coliform": "Present", "E. coli": "Present"}
    head, tap = sample("W-1", none), sample("W-2", some, LATER)
    later = found(head, tap)
    assert problem(later, "fecal_bacteria").certainty == "likely"
    assert problem(later, "fecal_bacteria").urgency == "now"
    assert any(action.hazard == "fecal_bacteria" and action.urgency == "now" for action in later.actions)
    assert "another sample" in problem(later, "fecal_bacteria").title
    earlier = found(head, sample("W-0", some, BEFORE))
    assert problem(earlier, "fecal_bacteria").certainty == "possible"
    assert problem(earlier, "fecal_bacteria").urgency == "soon"
    assert found(tap, head).problems[0].certainty == "certain"


def test_what_only_another_bottle_was_tested_for_counts_here():
    one, other = sample("W-1", {"Iron": "0.1 mg/L"}), sample("W-2", {"Nitrate-N": "25 mg/L", "Arsenic": "2 µg/L"})
    finding = found(one, other)
    assert problem(finding, "nitrate").certainty == "likely"
    asked = {item.code for item in finding.missing}
    assert "arsenic" not in asked
    assert "bacteria" in asked
    open_ones = next(caution.text for caution in finding.cautions if caution.code == "not_established")
    assert "arsenic" not in open_ones
    assert "bacteria" in open_ones


def test_water_behind_treatment_tells_nothing_certain_of_the_well():
    raw = sample("W-1", {"Nitrate-N": "3 mg/L"}, point=SamplingPoint.WELL_HEAD)
    treated = sample("W-2", {"Nitrate-N": "12 mg/L"}, LATER, point=SamplingPoint.AFTER_TREATMENT)
    assert problem(found(raw, treated), "nitrate").certainty == "possible"


def test_lead_of_the_first_draw_is_of_the_plumbing():
    """Water that stood in the pipes against water after some minutes of running: 40 CFR 141.86(b)."""
    first = sample("FD", {"Lead": "21 µg/L"}, point=SamplingPoint.TAP_FIRST_DRAW)
    flushed = sample("FL", {"Lead": "1.1 µg/L"}, point=SamplingPoint.TAP_FLUSHED)
    assert "from the plumbing" in said(found(first, flushed), "lead")
    assert problem(found(flushed, first), "lead").certainty in ("likely", "certain")
    alike = sample("FL", {"Lead": "19 µg/L"}, point=SamplingPoint.TAP_FLUSHED)
    assert "running does not help" in said(found(first, alike), "lead")


def test_a_blank_puts_a_low_result_in_doubt():
    one = sample("W-1", {"Lead": "4 µg/L", "Nitrate-N": "12 mg/L"})
    blank = sample("MB", {"Lead": "1.5 µg/L", "Nitrate-N": "<0.1 mg/L"}, role=Role.BLANK, site=None)
    finding = found(one, control=[blank], household=Household())
    assert check(finding, "blanks").status == "fail"
    assert "lead" in check(finding, "blanks").text
    assert "blank" in said(finding, "lead")
    assert problem(finding, "lead").certainty == "likely"  # nothing is taken back
    confirmed = found(one, sample("W-2", {"Lead": "5 µg/L"}, LATER), control=[blank], household=Household())
    assert problem(confirmed, "lead").certainty == "likely"


def test_far_above_the_blank_a_result_stands():
    one = sample("W-1", {"Lead": "22 µg/L"})
    blank = sample("MB", {"Lead": "1.5 µg/L"}, role=Role.BLANK, site=None)
    assert check(found(one, control=[blank]), "blanks").status == "warn"
    assert check(found(one, control=[sample("MB", {"Lead": "<1 µg/L"}, role=Role.BLANK)]), "blanks").status == "pass"
    assert check(found(one), "blanks").status == "not_possible"


@pytest.mark.parametrize(("name", "status"), [("Methylene chloride", "fail"), ("Benzene", "warn")])
def test_ten_times_for_what_laboratories_hold_themselves(name, status):
    one = sample("W-1", {name: "12 µg/L"})
    blank = sample("MB", {name: "1.5 µg/L"}, role=Role.BLANK, site=None)
    assert check(found(one, control=[blank]), "blanks").status == status


def test_a_blank_with_bacteria_spoils_the_test_and_clears_nothing():
    one = sample("W-1", {"Total coliform": "Present"})
    blank = sample("MB", {"Total coliform": "Present"}, role=Role.BLANK, site=None)
    finding = found(one, control=[blank])
    assert check(finding, "blanks").status == "fail"
    assert problem(finding, "coliform_bacteria").certainty == "likely"


@pytest.mark.parametrize(("other", "status"), [("11.5", "pass"), ("9.3", "warn"), ("8.1", "fail")])
def test_duplicates(other, status):
    """RPD of 12.4 with 11.5, 9.3, 8.1: 7.5 %, 28.6 %, 42.0 %."""
    one = sample("W-1", {"Nitrate-N": "12.4 mg/L"})
    twin = sample("W-1D", {"Nitrate-N": f"{other} mg/L"}, role=Role.DUPLICATE)
    finding = found(one, control=[twin])
    assert check(finding, "other_samples").status == "not_possible"
    assert check(finding, "duplicates").status == status
    assert other in check(finding, "duplicates").text


def test_a_duplicate_of_another_sample_says_nothing():
    one = sample("W-1", {"Nitrate-N": "12.4 mg/L"})
    twin = sample("X-9D", {"Nitrate-N": "2 mg/L"}, role=Role.DUPLICATE, site="Barn hydrant")
    assert check(found(one, control=[twin]), "duplicates").status == "not_possible"


def test_near_the_reporting_limit_duplicates_may_differ_by_it():
    """National Functional Guidelines: below five times the limit of quantitation, plus or minus that limit."""
    given = {"reporting_limit": 0.001}
    one, twin = (sample(name, {"Lead": value}) for name, value in (("W-1", "2 µg/L"), ("W-1D", "3 µg/L")))
    results = [tuple(one.model_copy(update=given) for one in made.results) for made in (one, twin)]
    one = one.model_copy(update={"results": results[0]})
    twin = twin.model_copy(update={"results": results[1], "role": Role.DUPLICATE})
    assert check(found(one, control=[twin]), "duplicates").status == "pass"


def test_duplicates_that_disagree_confirm_nothing():
    one = sample("W-1", {"Nitrate-N": "22 mg/L"})
    other = sample("W-2", {"Nitrate-N": "21 mg/L"}, LATER)
    twin = sample("W-1D", {"Nitrate-N": "11 mg/L"}, role=Role.DUPLICATE)
    assert problem(found(one, other), "nitrate").certainty == "certain"
    assert problem(found(one, other, control=[twin]), "nitrate").certainty == "likely"


def test_bacteria_in_a_duplicate_alone_are_said():
    one = sample("W-1", {"E. coli": "Absent"})
    twin = sample("W-1D", {"E. coli": "Present"}, role=Role.DUPLICATE)
    finding = found(one, control=[twin])
    assert check(finding, "duplicates").status == "fail"
    assert problem(finding, "fecal_bacteria").certainty == "likely"


def test_a_dug_well_where_another_sample_found_bacteria():
    dug = ADULTS.model_copy(update={"well_type": WellType.DUG})
    one, other = sample("W-1", {"Iron": "0.1 mg/L"}), sample("W-2", {"E. coli": "Present"})
    assert problem(found(one, other, household=dug), "surface_connection") is not None


def test_reports_of_two_files_belong_together_by_the_site():
    one = sample("W-1", {"Nitrate-N": "12.4 mg/L"})
    other = sample("W-2", {"Nitrate-N": "11.9 mg/L"}, date(2025, 4, 27))
    both = wellchem.interpret(one, on=ON, household=ADULTS, reports=[report(one), report(other)])
    assert problem(both, "nitrate").certainty == "certain"


def test_others_never_take_a_problem_away():
    one = sample("W-1", {"Nitrate-N": "12.4 mg/L", "E. coli": "Present", "Lead": "20 µg/L", "pH": "6.0"})
    rest = [
        sample(f"W-{n}", {"Nitrate-N": "1", "E. coli": "Absent", "Lead": "<0.5 µg/L", "pH": "7.4"}, LATER)
        for n in (2, 3)
    ]
    by_itself, beside = alone(one), found(one, *rest)
    assert {p.code for p in by_itself.problems} <= {p.code for p in beside.problems}
    for before in by_itself.problems:
        after = problem(beside, before.code)
        assert (after.certainty, after.urgency) == (before.certainty, before.urgency)


def test_something_else_than_a_report_is_told():
    with pytest.raises(WellchemError):
        wellchem.interpret(sample("W-1", {"Lead": "4 µg/L"}), reports="report.pdf")


def test_pages_of_several_samples_are_plain_and_assure_of_nothing():
    some = sample("W-1", {"E. coli": "Absent", "Total coliform": "Absent", "Lead": "4 µg/L", "Nitrate-N": "12.4 mg/L"})
    rest = [
        sample("W-2", {"E. coli": "Present", "Lead": "<1 µg/L"}, LATER),
        sample("W-3", {"Nitrate-N": "11 mg/L"}, None),
    ]
    blank = sample("MB", {"Lead": "1.5 µg/L"}, role=Role.BLANK, site=None)
    twin = sample("W-1D", {"Nitrate-N": "8 mg/L"}, role=Role.DUPLICATE)
    finding = found(some, *rest, control=[blank, twin])
    assert type(finding).model_validate_json(finding.model_dump_json()) == finding
    for shown in (finding.to_text(width=10_000), finding.to_html()):
        assert "another sample" in shown
        for line in shown.splitlines():
            assert not ASSURANCE.search(line) or "Safe Drinking Water" in line, line
    turned = found(some, *rest[::-1], control=[twin, blank])
    for one, other in ((finding, turned), (turned, finding)):
        assert {(p.code, p.certainty, p.urgency) for p in one.problems} <= {
            (p.code, p.certainty, p.urgency) for p in other.problems
        }
        assert [item.code for item in one.missing] == [item.code for item in other.missing]
