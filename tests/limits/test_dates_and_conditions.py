"""Which limits are in force on which day, and which apply to the sample and the household."""

from datetime import date, datetime

import pytest
from compared import TODAY, against, against_authority, amount, below, limit_line, sample, table

from wellchem.limits import compare_sample, lookup
from wellchem.models.codes import SamplingPoint
from wellchem.models.household import Household


class TestDates:
    def test_lead_before_and_after_2027_11_01(self):
        # 89 FR 86418 (LCRI): action level 0.015 mg/L, from 2027-11-01 0.010 mg/L.
        lead = amount("lead", 0.012, fraction="total")
        before = against_authority("us-epa", lead, on=date(2027, 10, 31))
        assert before["lead/action-level/from-1992-12-07"].verdict == "within"
        assert "lead/action-level/from-2027-11-01" not in before
        after = against_authority("us-epa", lead, on=date(2027, 11, 1))
        assert after["lead/action-level/from-2027-11-01"].verdict == "above"
        assert "lead/action-level/from-1992-12-07" not in after

    def test_arsenic_before_and_after_2006_01_23(self):
        # 66 FR 6976: 0.010 mg/L from 2006-01-23; before that 0.05.
        arsenic = amount("arsenic", 0.02, fraction="total")
        after = against_authority("us-epa", arsenic, on=date(2006, 1, 23))
        assert after["arsenic/mcl/from-2006-01-23"].verdict == "above"
        before = against_authority("us-epa", arsenic, on=date(2006, 1, 22))
        assert "arsenic/mcl/from-2006-01-23" not in before

    def test_what_is_already_enacted_for_later(self):
        # Directive (EU) 2020/2184 Annex I Part B and Article 25: lead 5 µg/L from 2036-01-12, chromium 25 µg/L.
        made = against_authority("eu", amount("lead", 0.007, fraction="total"))
        (now,) = [one for one in made.values() if one.analyte == "lead"]
        assert now.verdict == "within"
        assert now.later == "from 2036-01-12: 5 µg/l (parametric value)"
        made = against_authority("eu", amount("lead", 0.007, fraction="total"), on=date(2036, 1, 12))
        (then,) = [one for one in made.values() if one.analyte == "lead"]
        assert (then.verdict, then.later) == ("above", "")

    def test_a_first_limit_yet_to_come_stands_beside_the_goal(self):
        # 40 CFR 141.60(a)(4), 141.61(c)(2): PFOA 4.0 ng/L from 2029-04-26.
        made = against_authority("us-epa", amount("pfoa", 5, unit="ng/L"))
        assert "from 2029-04-26" in made["pfoa/mclg/from-2024-06-25"].later

    def test_terms_not_in_force_are_not_compared(self):
        # 40 CFR 141.61(c)(1)(ii) aldicarb (postponed); 64 FR 59246 radon (proposed, never final).
        made = against_authority("us-epa", amount("aldicarb", 1.0), amount("radon_222", 100_000.0))
        assert not [one for one in made if "(" in one or "proposed" in one or "postponed" in one]

    def test_an_unknown_start(self, tmp_path):
        ours = table(tmp_path, limit_line("iron", "0.3", in_force_from=""))
        (today,) = against(ours, amount("iron", 0.5), on=None)
        assert (today.verdict, today.date_known) == ("above", True)
        (past,) = against(ours, amount("iron", 0.5), on=date(2015, 6, 1))
        assert (past.verdict, past.date_known) == ("undecided", False)
        assert "date_unknown" in past.reasons

    def test_a_document_that_has_stood_since(self):
        # 40 CFR 143.3 as amended 1991-01-30: iron 0.3 mg/L has no date of its own.
        iron = amount("iron", 0.5, fraction="total")
        assert against_authority("us-epa", iron, on=date(2015, 6, 1))["iron/smcl"].verdict == "above"
        assert against_authority("us-epa", iron, on=date(1975, 6, 1))["iron/smcl"].verdict == "undecided"

    def test_the_day_of_collection(self):
        lead = amount("lead", 0.012, fraction="total")
        for collected, limit in ((date(2020, 5, 1), "1992-12-07"), (date(2028, 5, 1), "2027-11-01")):
            made = compare_sample(sample(lead, collected=collected), ("us-epa",), on="collected")
            found = [one for one in made if one.limit.term == "action level"]
            assert [(one.on, str(one.limit.in_force_from)) for one in found] == [(collected, limit)]

    def test_a_time_of_day_is_its_day(self):
        lead = amount("lead", 0.012, fraction="total")
        evening = datetime(2027, 10, 31, 23, 30)
        assert "lead/action-level/from-1992-12-07" in against_authority("us-epa", lead, on=evening)
        (made,) = {one.on for one in compare_sample(sample(lead, collected=evening), ("us-epa",), on="collected")}
        assert made == date(2027, 10, 31)
        assert lookup("lead", "us-epa", evening) == lookup("lead", "us-epa", evening.date())

    def test_no_day_of_collection_is_today_and_says_so(self):
        made = compare_sample(sample(amount("lead", 0.2)), ("us-epa",), on="collected")
        assert {one.on for one in made} == {date.today()}
        assert all("not_dated" in one.reasons for one in made)

    def test_a_word_that_is_no_day(self):
        with pytest.raises(ValueError, match="collected"):
            compare_sample(sample(amount("lead", 0.2)), ("us-epa",), on="yesterday")


class TestConditions:
    SODIUM = "sodium/drinking-water-advisory/sodium-restricted-diet"

    @pytest.mark.parametrize(
        "household, settled, verdict",
        [
            (None, False, "undecided"),
            (Household(sodium_restricted=True), True, "above"),
            (Household(sodium_restricted=False), None, None),
        ],
    )
    def test_sodium_for_a_restricted_diet(self, household, settled, verdict):
        # EPA Drinking Water Advisory on sodium, EPA 822-R-03-006: 20 mg/L for a diet restricted to 500 mg a day.
        made = against_authority("us-epa", amount("sodium", 50.0), household=household)
        if settled is None:
            assert self.SODIUM not in made
        else:
            one = made[self.SODIUM]
            assert (one.condition_settled, one.verdict) == (settled, verdict)
            assert ("condition_unsettled" in one.reasons) is not settled

    @pytest.mark.parametrize(
        "condition, results, about, household, expected",
        [
            ("ph-below:7.0", [amount("ph", 6.5)], {}, None, "settled"),
            ("ph-below:7.0", [amount("ph", 7.0)], {}, None, "not compared"),
            ("ph-below:7.0", [], {}, None, "unsettled"),
            ("ph-below:7.0", [amount("ph", 6.9, 7.1, censoring="interval")], {}, None, "unsettled"),
            # Field pH goes before laboratory pH.
            ("ph-below:7.0", [amount("ph", 7.3), amount("ph", 6.5, measured="field")], {}, None, "settled"),
            ("!ph-below:7.0", [amount("ph", 6.5)], {}, None, "not compared"),
            ("ph-above:7.0", [amount("ph", 7.0)], {}, None, "not compared"),
            ("ph-above:7.0", [amount("ph", 7.1)], {}, None, "settled"),
            ("hardness-below:100", [amount("calcium", 10.0), amount("magnesium", 2.0)], {}, None, "settled"),
            ("hardness-below:100", [amount("total_hardness", 33.0)], {}, None, "settled"),
            ("first-draw", [], {"point": SamplingPoint.TAP_FIRST_DRAW}, None, "settled"),
            ("first-draw", [], {"point": SamplingPoint.WELL_HEAD}, None, "not compared"),
            ("first-draw", [], {"point": SamplingPoint.TAP}, None, "unsettled"),
            ("flushed", [], {"point": SamplingPoint.TAP_FLUSHED}, None, "settled"),
            ("chlorinated", [amount("free_chlorine", 0.4)], {}, None, "settled"),
            ("chlorinated", [below("free_chlorine", 0.1)], {}, None, "unsettled"),
            ("chlorinated", [], {}, Household(chlorinated=False), "not compared"),
            ("disinfected", [], {}, Household(treatment=()), "not compared"),
            ("disinfected", [], {}, Household(chlorinated=True), "settled"),
            ("disinfected", [], {}, Household(treatment=("softening", "ultraviolet")), "settled"),
            ("disinfected", [], {}, Household(treatment=("softening", "carbon")), "not compared"),
            ("disinfected", [], {}, Household(treatment=("something in the shed",)), "unsettled"),
            ("chlorinated", [], {}, Household(treatment=("chlorination",)), "settled"),
            ("chlorate-forming-disinfection", [], {}, Household(treatment=("ultraviolet",)), "not compared"),
            ("chlorite-forming-disinfection", [], {}, Household(chlorinated=True), "not compared"),
            ("chlorate-forming-disinfection", [], {}, Household(chlorinated=True), "settled"),
            ("surface-influenced", [], {}, Household(surface_influenced=True), "settled"),
            ("!surface-influenced", [], {}, Household(surface_influenced=True), "not compared"),
            ("surface-influenced;chlorinated", [], {}, Household(surface_influenced=False), "not compared"),
            ("surface-influenced;chlorinated", [], {}, Household(surface_influenced=True), "unsettled"),
            ("young-children", [], {}, Household(infants=False), "unsettled"),
            ("young-children", [], {}, Household(children=True), "settled"),
            ("young-children", [], {}, Household(infants=False, children=False), "not compared"),
            ("bottle-fed-infants", [], {}, Household(infants=True), "settled"),
            ("aluminum-coagulant", [], {}, Household(treatment=("softening",)), "not compared"),
            ("aluminum-coagulant", [], {}, None, "unsettled"),
            ("private-well", [], {}, None, "settled"),
            ("!private-well", [], {}, None, "not compared"),
            ("bottled", [], {}, None, "not compared"),
            ("authority-allowance", [], {}, Household(), "unsettled"),
            ("in-operation-before:2028-01-12", [], {}, None, "settled"),
            ("in-operation-before:2020-01-12", [], {"collected": date(2019, 5, 1)}, None, "settled"),
            ("in-operation-before:2020-01-12", [], {}, Household(well_age=3), "not compared"),
            ("in-operation-before:2020-01-12", [], {}, None, "unsettled"),
            ("filtration:none", [], {}, Household(treatment=()), "settled"),
            ("filtration:conventional", [], {}, Household(treatment=()), "not compared"),
        ],
    )
    def test_each_predicate(self, tmp_path, condition, results, about, household, expected):
        ours = table(tmp_path, limit_line("fluoride", "1.5", applies_when=condition))
        made = against(ours, amount("fluoride", 2.0), *results, household=household, **about)
        found = [(one.condition_settled, str(one.verdict)) for one in made]
        assert (
            found
            == {
                "settled": [(True, "above")],
                "unsettled": [(False, "undecided")],
                "not compared": [],
            }[expected]
        )

    @pytest.mark.parametrize(
        "number, verdicts", [(0.2, ["within"] * 2), (0.5, ["undecided"] * 2), (0.9, ["above"] * 2)]
    )
    def test_a_condition_that_changes_nothing(self, tmp_path, number, verdicts):
        # Directive (EU) 2020/2184, chlorate: 0.25 mg/L, 0.70 where the disinfection forms chlorate.
        condition = "chlorate-forming-disinfection"
        ours = table(
            tmp_path,
            limit_line("chlorate", "0.25", applies_when=f"!{condition}"),
            limit_line("chlorate", "0.70", applies_when=condition),
        )
        made = against(ours, amount("chlorate", number))
        assert [one.verdict for one in made] == verdicts
        assert [one.condition_settled for one in made] == [verdicts[0] != "undecided"] * 2

    def test_today_is_in_the_output(self):
        made = against_authority("us-epa", amount("lead", 0.2))
        assert {one.on for one in made.values()} == {TODAY}
