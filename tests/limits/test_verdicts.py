"""What bounds show against a limit. The rule for intervals: a verdict holds where it holds for every value between
the bounds (Helsel, Statistics for Censored Environmental Data, 2nd ed. 2012, ch. 1: a censored value is an interval;
from memory). The limits are typed from the documents named beside them.
"""

from math import inf

import pytest
from compared import (
    TODAY,
    absent,
    against,
    against_authority,
    amount,
    below,
    limit_line,
    over,
    present,
    sample,
    table,
)

from wellchem.limits import compare_sample
from wellchem.models.codes import Censoring, Role
from wellchem.models.sample import Result

# 40 CFR 141.62(b)(7): nitrate 10 mg/L as N.
NITRATE_MCL = 10.0


@pytest.mark.parametrize(
    "low, high, censoring, verdict",
    [
        (10.0, 10.0, "none", "within"),  # the MCL is a maximum permissible level: at it is within (SDWA § 1401(3))
        (10.1, 10.1, "none", "above"),
        (0.0, 10.0, "left", "within"),  # less than 10
        (0.0, 10.5, "left", "undecided"),  # the reporting limit is above the limit: no pass
        (10.0, inf, "right", "above"),  # more than 10 is above 10
        (9.0, inf, "right", "undecided"),
        (9.5, 10.5, "interval", "undecided"),
        (10.2, 11.0, "interval", "above"),
        (2.0, 3.0, "interval", "within"),
        (0.0, None, "left", "undecided"),  # not detected, and no limit of detection stated
        (None, None, "none", "undecided"),
        (12.0, 11.0, "interval", "undecided"),  # bounds that contradict each other
    ],
)
def test_interval_against_a_maximum(low, high, censoring, verdict):
    result = amount("nitrate", low, high, censoring=censoring)
    if high is None:
        result = result.model_copy(update={"high": None})
    assert against_authority("us-epa", result)["nitrate/mcl"].verdict == verdict


def test_why_nothing_can_be_told():
    reasons = {
        "reporting_limit_above": below("nitrate", 10.5),
        "limit_within_bounds": amount("nitrate", 9.0, 11.0, censoring="interval"),
        "no_bounds": below("nitrate", 1.0).model_copy(update={"high": None}),
        "rejected": amount("nitrate", 2.0, qualifiers=("R",)),
        "unit_missing": amount("nitrate", 2.0).model_copy(update={"unit": None}),
    }
    for reason, result in reasons.items():
        made = against_authority("us-epa", result)["nitrate/mcl"]
        assert made.verdict == "undecided"
        assert made.reasons == (reason,)


@pytest.mark.parametrize(
    "low, high, censoring, verdict",
    [
        # 40 CFR 143.3: pH 6.5 to 8.5.
        (6.5, 6.5, "none", "within"),
        (6.4, 6.4, "none", "below"),
        (8.6, 8.6, "none", "above"),
        (0.0, 6.5, "left", "below"),  # less than 6.5 is below 6.5
        (6.4, 6.6, "interval", "undecided"),
        (6.0, 9.0, "interval", "undecided"),
    ],
)
def test_interval_against_a_range(low, high, censoring, verdict):
    made = against_authority("us-epa", amount("ph", low, high, censoring=censoring))
    assert made["ph/smcl"].verdict == verdict


def test_a_number_keeps_its_verdict_in_another_unit(tmp_path):
    # 0.0096 mg/L and 9.6 µg/L differ in the last bit of a double.
    ours = table(tmp_path, limit_line("arsenic", "9.6", "µg/L"), limit_line("lead", "0.0096"))
    for analyte in ("arsenic", "lead"):
        for unit, number in (("mg/L", 0.0096), ("µg/L", 9.6), ("ng/L", 9600.0)):
            (made,) = against(ours, amount(analyte, number, unit=unit))
            assert made.verdict == "within"
            (made,) = against(ours, over(analyte, number, unit=unit))
            assert made.verdict == "above"


def test_nitrate_as_n_and_as_no3():
    # Directive (EU) 2020/2184 Annex I Part B: 50 mg/L as NO3, which is 11.3 mg/L as N.
    for unit, basis, number, verdict in (
        ("mg/L", "NO3", 50.0, "within"),
        ("mg/L", "N", 11.29, "within"),
        ("mg/L", "NO3", 50.1, "above"),
        ("mg/L", "N", 11.31, "above"),
    ):
        made = against_authority("eu", amount("nitrate", number, unit=unit, basis=basis))
        assert made["nitrate/parametric-value/from-2023-01-13"].verdict == verdict


class TestCounts:
    """40 CFR 141.63(c), 141.852: E. coli by presence or absence in 100 mL; design of the library, third promise."""

    LIMIT = "e_coli/mcl/from-2016-04-01"

    @pytest.mark.parametrize(
        "result, verdict",
        [
            (absent("e_coli"), "within"),
            (amount("e_coli", 0.0), "within"),
            (below("e_coli", 1.0), "within"),
            (below("e_coli", 1.1), "within"),  # ten tubes of 10 mL, none positive: Standard Methods 9221 C (memory)
            (below("e_coli", 1.8), "undecided"),  # fewer tubes: none positive does not exclude one in 100 mL
            (below("e_coli", 2.0), "undecided"),
            (below("e_coli", 10.0), "undecided"),
            (present("e_coli"), "above"),
            (amount("e_coli", 1.0), "above"),
            (amount("e_coli", 0.5), "above"),  # one organism in 200 mL was found
            (over("e_coli", 2419.6), "above"),
            (over("e_coli", None), "above"),  # too numerous to count, without a number
            (amount("e_coli", 5.0, qualifiers=("E",)), "above"),
        ],
    )
    def test_absence_limit(self, result, verdict):
        assert against_authority("us-epa", result)[self.LIMIT].verdict == verdict

    def test_confluent_growth_without_the_organism_asks_for_another_sample(self):
        for result in (absent("e_coli", qualifiers=("CG",)), below("e_coli", 1.0, qualifiers=("CG",))):
            made = against_authority("us-epa", result)[self.LIMIT]
            assert (made.verdict, made.reasons) == ("undecided", ("invalid_sample",))
        made = against_authority("us-epa", present("e_coli", qualifiers=("CG",)))[self.LIMIT]
        assert made.verdict == "above"

    def test_none_found_after_the_holding_time_is_no_pass(self):
        # 40 CFR 141.852(a)(1): 30 hours from collection to incubation.
        made = against_authority("us-epa", absent("e_coli", qualifiers=("H",)))[self.LIMIT]
        assert (made.verdict, made.reasons) == ("undecided", ("holding_time",))
        made = against_authority("us-epa", present("e_coli", qualifiers=("H",)))[self.LIMIT]
        assert (made.verdict, made.reasons) == ("above", ("holding_time",))

    def test_chemistry_past_its_time_keeps_its_verdict_and_says_so(self):
        made = against_authority("us-epa", amount("nitrate", 2.0, qualifiers=("H",)))["nitrate/mcl"]
        assert (made.verdict, made.reasons) == ("within", ("holding_time",))

    def test_a_count_with_a_limit_above_none(self, tmp_path):
        ours = table(tmp_path, limit_line("heterotrophic_plate_count", "500", "1/mL", kind="operational"))
        for result, verdict in (
            (amount("heterotrophic_plate_count", 500.0), "within"),
            (over("heterotrophic_plate_count", 300.0), "undecided"),
            (over("heterotrophic_plate_count", 738.0), "above"),
            (absent("heterotrophic_plate_count"), "within"),
        ):
            (made,) = against(ours, result)
            assert made.verdict == verdict


class TestActivity:
    """40 CFR 141.66(b), (c): radium 5 pCi/L, gross alpha 15 pCi/L; 1 pCi = 0.037 Bq."""

    def test_the_uncertainty_is_the_interval(self):
        for low, high, verdict in ((4.0, 5.5, "undecided"), (5.1, 6.0, "above"), (-0.1, 0.7, "within")):
            result = amount("radium_226_plus_228", low, high, unit="pCi/L", censoring="interval")
            assert against_authority("us-epa", result)["radium_226_plus_228/mcl"].verdict == verdict

    def test_nothing_detected_is_bounded_by_what_could_have_been(self):
        # 0.3 ± 0.4 U with a minimum detectable activity of 6 pCi/L says nothing of a limit of 5.
        result = amount("radium_226_plus_228", -0.1, 6.0, unit="pCi/L", censoring="interval", qualifiers=("U",))
        assert against_authority("us-epa", result)["radium_226_plus_228/mcl"].verdict == "undecided"


class TestFraction:
    """A part is at most the whole: dissolved arsenic is part of the total, 40 CFR 141.62(b)(16): 0.010 mg/L."""

    LIMIT = "arsenic/mcl/from-2006-01-23"

    @pytest.mark.parametrize(
        "fraction, number, verdict, reasons",
        [
            ("total", 0.009, "within", ()),
            ("total_recoverable", 0.009, "within", ()),
            ("dissolved", 0.011, "above", ("dissolved_measured",)),
            ("dissolved", 0.009, "undecided", ("dissolved_measured",)),
            ("suspended", 0.011, "above", ("dissolved_measured",)),
            (None, 0.009, "within", ("fraction_not_printed",)),
            (None, 0.011, "above", ("fraction_not_printed",)),
        ],
    )
    def test_total_limit(self, fraction, number, verdict, reasons):
        made = against_authority("us-epa", amount("arsenic", number, fraction=fraction))[self.LIMIT]
        assert (made.verdict, made.reasons) == (verdict, reasons)

    @pytest.mark.parametrize(
        "fraction, number, verdict",
        [
            ("dissolved", 0.4, "above"),
            ("total", 0.2, "within"),
            ("total", 0.4, "undecided"),
            ("suspended", 1, "undecided"),
        ],
    )
    def test_dissolved_limit(self, tmp_path, fraction, number, verdict):
        ours = table(tmp_path, limit_line("iron", "0.3", fraction="dissolved", kind="aesthetic"))
        (made,) = against(ours, amount("iron", number, fraction=fraction))
        assert made.verdict == verdict

    def test_two_results_are_both_compared(self):
        results = (amount("arsenic", 0.02, fraction="total"), amount("arsenic", 0.004, fraction="dissolved"))
        made = [
            one for one in compare_sample(sample(*results), ("us-epa",), on=TODAY) if one.limit.id.endswith("01-23")
        ]
        found = [(one.results, one.verdict) for one in made if one.limit.term == "MCL"]
        assert found == [((0,), "above"), ((1,), "undecided")]


class TestSuppositions:
    """Where the other usual form would change the verdict, it is undecided."""

    def test_form(self):
        # 12 mg/L as N is above 10; 12 mg/L as NO3 is 2.7 as N.
        for number, verdict in ((12.0, "undecided"), (9.0, "within"), (50.0, "above")):
            made = against_authority("us-epa", amount("nitrate", number, assumptions={"basis": "N"}))["nitrate/mcl"]
            assert made.verdict == verdict
            assert "basis_assumed" in made.reasons

    def test_unit(self):
        # 5 without a unit, taken for mg/L of lead: 5 µg/L would be within the action level.
        limit = "lead/action-level/from-1992-12-07"
        for number, verdict in ((5.0, "undecided"), (0.001, "within"), (50.0, "above")):
            result = amount("lead", number, fraction="total", assumptions={"unit": "mg/L"})
            made = against_authority("us-epa", result)[limit]
            assert made.verdict == verdict
            assert "unit_assumed" in made.reasons

    def test_a_unit_without_another_usual_one(self):
        made = against_authority("us-epa", amount("chloride", 300.0, assumptions={"unit": "mg/L"}))["chloride/smcl"]
        assert made.verdict == "above"


class TestNear:
    """Decided, and from 80 % of a health limit on, or the limit lies within the printed uncertainty (design)."""

    @pytest.mark.parametrize(
        "result, near",
        [
            (amount("nitrate", 7.9), False),
            (amount("nitrate", 8.0), True),
            (amount("nitrate", 10.0), True),
            (amount("nitrate", 10.4), False),
            (amount("nitrate", 10.4, uncertainty=0.5), True),
            (amount("nitrate", 9.5, uncertainty=0.1), True),
            (below("nitrate", 9.0), False),
            (amount("nitrate", 9.0, 11.0, censoring="interval"), False),
        ],
    )
    def test_health(self, result, near):
        assert against_authority("us-epa", result)["nitrate/mcl"].near is near

    def test_not_for_taste_nor_at_nothing(self):
        assert not against_authority("us-epa", amount("chloride", 240.0))["chloride/smcl"].near
        assert not against_authority("us-epa", amount("lead", 0.0, fraction="total"))["lead/mclg"].near


def test_a_public_systems_way_of_judging_never_blocks():
    # 40 CFR 141.80(c): the action level is judged by the 90th percentile of a system; 0.2 mg/L at one tap is above it.
    made = against_authority("us-epa", amount("lead", 0.2, fraction="total"))["lead/action-level/from-1992-12-07"]
    assert made.verdict == "above"
    assert "90th percentile" in made.limit.compliance


def test_goal_of_zero():
    # 40 CFR 141.51(b): the goal for lead is zero; any quantified lead is above it, none detected cannot be told.
    assert against_authority("us-epa", amount("lead", 0.001, fraction="total"))["lead/mclg"].verdict == "above"
    made = against_authority("us-epa", below("lead", 0.001, fraction="total"))["lead/mclg"]
    assert made.verdict == "undecided"
    assert made.limit.kind == "goal"
    assert made.ratio is None
    # An estimate below the reporting limit is a detection (US EPA National Functional Guidelines, memory).
    for codes, verdict in ((("J",), "above"), (("J", "U"), "undecided"), ((), "undecided")):
        result = amount("lead", 0.0, 0.001, fraction="total", censoring="interval", qualifiers=codes)
        assert against_authority("us-epa", result)["lead/mclg"].verdict == verdict


def test_quality_control_and_what_was_not_reported_give_nothing():
    lead = amount("lead", 0.2)
    for role in (Role.BLANK, Role.SPIKE, Role.CONTROL):
        assert not against_authority("us-epa", lead, role=role)
    for role in (Role.ROUTINE, Role.DUPLICATE, Role.PREDICTED):
        assert against_authority("us-epa", lead, role=role)
    assert not against_authority("us-epa", Result(analyte="lead", censoring=Censoring.NOT_REPORTED))


def test_an_open_bound_comes_back_from_json():
    made = against_authority("us-epa", over("nitrate", 9.0))["nitrate/mcl"]
    again = type(made).model_validate_json(made.model_dump_json())
    assert again == made
    assert made.ratio.high == inf
    assert made.ratio.low == pytest.approx(0.9)
