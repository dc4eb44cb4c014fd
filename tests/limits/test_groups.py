"""Limits over several analytes, and what one analyte says of another. Limits are typed from the documents named."""

import itertools
from datetime import date

import pytest
from compared import absent, against, against_authority, amount, below, limit_line, present, table

THM = ("chloroform", "bromodichloromethane", "dibromochloromethane", "bromoform")
# 40 CFR 141.64(b): total trihalomethanes 0.080 mg/L.
TTHM = "total_trihalomethanes/mcl/from-2002-01-01"


def thm(*numbers):
    return [amount(name, number) for name, number in zip(THM, numbers, strict=False)]


class TestSum:
    @pytest.mark.parametrize(
        "results, verdict, missing",
        [
            (thm(0.02, 0.02, 0.02, 0.02), "within", ""),
            (thm(0.03, 0.02, 0.02, 0.02), "above", ""),
            (thm(0.081), "above", "bromodichloromethane,bromoform,dibromochloromethane"),
            (thm(0.01, 0.01, 0.01), "undecided", "bromoform"),
            ([*thm(0.05, 0.01, 0.01), below("bromoform", 0.005)], "within", ""),
            ([*thm(0.05, 0.01, 0.01), below("bromoform", 0.05)], "undecided", ""),
        ],
    )
    def test_total_trihalomethanes(self, results, verdict, missing):
        made = against_authority("us-epa", *results)[TTHM]
        assert made.verdict == verdict
        named = [reason.partition("=")[2] for reason in made.reasons if reason.startswith("members_missing")]
        assert named == ([missing] if missing else [])
        assert made.analyte == "total_trihalomethanes"
        assert made.results == tuple(range(len(results)))

    def test_a_printed_total_is_used_as_it_is(self):
        made = against_authority("us-epa", amount("total_trihalomethanes", 0.09), *thm(0.01))
        assert made[TTHM].verdict == "above"
        assert made[TTHM].results == (0,)

    def test_an_unusable_total_is_no_total(self):
        total = amount("total_trihalomethanes", 0.01, qualifiers=("R",))
        made = against_authority("us-epa", total, *thm(0.03, 0.02, 0.02, 0.02))
        assert made[TTHM].verdict == "above"

    def test_a_parent_among_its_own_members(self, tmp_path):
        # Health Canada: atrazine and its metabolites 0.005 mg/L, under the name of the parent.
        line = limit_line("atrazine", "0.005", combine="sum", members="atrazine;deethylatrazine")
        ours = table(tmp_path, line)
        (made,) = against(ours, amount("atrazine", 0.004))
        assert (made.verdict, made.reasons) == ("undecided", ("members_missing=deethylatrazine",))
        (made,) = against(ours, amount("atrazine", 0.004), amount("deethylatrazine", 0.002))
        assert made.verdict == "above"

    def test_two_results_of_a_member_count_by_their_outer_bounds(self):
        results = [*thm(0.02, 0.02, 0.02), amount("bromoform", 0.01), amount("bromoform", 0.03)]
        assert against_authority("us-epa", *results)[TTHM].verdict == "undecided"

    def test_of_dissolved_and_total_the_total_is_the_member(self, tmp_path):
        ours = table(tmp_path, limit_line("total_hardness", "0.5", combine="sum", members="iron;manganese"))
        results = (
            amount("iron", 0.4, fraction="total"),
            amount("iron", 0.1, fraction="dissolved"),
            amount("manganese", 0.2, fraction="total"),
        )
        (made,) = against(ours, *results)
        assert made.verdict == "above"


class TestSumOfRatios:
    # Directive (EU) 2020/2184 Annex I Part B, nitrite: [nitrate]/50 + [nitrite]/3 <= 1, in mg/L as NO3 and NO2.
    LIMIT = "nitrate_nitrite_ratio_sum/parametric-value/from-2023-01-13"

    @pytest.mark.parametrize(
        "nitrate, nitrite, verdict",
        [(25.0, 1.5, "within"), (26.0, 1.5, "above"), (25.0, 1.6, "above"), (50.0, 0.0, "within")],
    )
    def test_nitrate_and_nitrite(self, nitrate, nitrite, verdict):
        results = (
            amount("nitrate", nitrate, unit="mg/L", basis="NO3"),
            amount("nitrite", nitrite, unit="mg/L", basis="NO2"),
        )
        assert against_authority("eu", *results)[self.LIMIT].verdict == verdict

    def test_a_reporting_limit_spans_it(self):
        nitrate = amount("nitrate", 30.0, unit="mg/L", basis="NO3")
        for bound, verdict in ((1.1, "within"), (1.3, "undecided")):
            made = against_authority("eu", nitrate, below("nitrite", bound, unit="mg/L", basis="NO2"))[self.LIMIT]
            assert made.verdict == verdict

    def test_pfas_hazard_index(self):
        # 40 CFR 141.61(c)(2)(i), footnote 1: HFPO-DA/10 + PFBS/2000 + PFHxS/10 + PFNA/10 in ng/L; from 2029-04-26.
        results = [
            amount("hfpo_da", 4, unit="ng/L"),
            amount("pfbs", 400, unit="ng/L"),
            amount("pfhxs", 3, unit="ng/L"),
            below("pfna", 1, unit="ng/L"),
        ]
        made = against_authority("us-epa", *results, on=date(2030, 1, 1))
        found = made["pfas_hazard_index/mcl/from-2029-04-26"]
        assert found.verdict == "within"
        assert found.ratio.low == pytest.approx(0.9)
        assert found.ratio.high == pytest.approx(1.0)


class TestDifference:
    # 40 CFR 141.66(c): gross alpha 15 pCi/L, excluding radon and uranium.
    LIMIT = "gross_alpha/mcl"

    @pytest.mark.parametrize(
        "results, verdict",
        [
            ([amount("gross_alpha", 22, unit="pCi/L")], "undecided"),  # while uranium is unmeasured
            ([amount("gross_alpha", 14, unit="pCi/L")], "within"),  # whatever uranium takes off
            ([amount("gross_alpha", 22, unit="pCi/L"), amount("uranium_activity", 8, unit="pCi/L")], "within"),
            ([amount("gross_alpha", 22, unit="pCi/L"), amount("uranium_activity", 6, unit="pCi/L")], "above"),
            # The worked example: 12 µg/L at 0.67 pCi/µg (40 CFR 141.25, footnote) leaves 13.96.
            ([amount("gross_alpha", 22, unit="pCi/L"), amount("uranium", 12, unit="µg/L")], "within"),
            ([amount("gross_alpha", 22, unit="pCi/L"), amount("uranium", 8, unit="µg/L")], "undecided"),
            ([amount("gross_alpha", 22, unit="pCi/L"), amount("uranium", 1, unit="µg/L")], "above"),
        ],
    )
    def test_gross_alpha(self, results, verdict):
        assert against_authority("us-epa", *results)[self.LIMIT].verdict == verdict

    def test_the_part_alone_is_no_difference(self):
        assert self.LIMIT not in against_authority("us-epa", amount("uranium", 12, unit="µg/L"))

    def test_a_negative_measurement_takes_nothing_off(self):
        results = (
            amount("gross_alpha", 15.2, unit="pCi/L"),
            amount("uranium_activity", -1.0, 0.1, unit="pCi/L", censoring="interval"),
        )
        assert against_authority("us-epa", *results)[self.LIMIT].verdict == "above"


class TestClassLimit:
    # Directive (EU) 2020/2184 Annex I Part B: each pesticide by itself 0.10 µg/L.
    def test_each_member_by_itself(self):
        made = against_authority("eu", amount("atrazine", 0.2, unit="µg/L"))
        found = [one for one in made.values() if one.limit.analyte == "individual_pesticide"]
        assert [(one.analyte, one.verdict, one.results) for one in found] == [("atrazine", "above", (0,))]
        made = against_authority("eu", amount("atrazine", 0.1, unit="µg/L"))
        assert {one.verdict for one in made.values() if one.limit.analyte == "individual_pesticide"} == {"within"}


class TestPartAndWhole:
    def test_nitrate_and_nitrite_together_bound_each(self):
        # 40 CFR 141.62(b)(7), (8): nitrate 10, nitrite 1 mg/L as N.
        made = against_authority("us-epa", amount("nitrate_plus_nitrite", 0.8))
        for limit in ("nitrate/mcl", "nitrite/mcl/from-1992-07-30"):
            assert made[limit].verdict == "within"
            assert made[limit].reasons[0] == "derived_from=nitrate_plus_nitrite"
            assert made[limit].results == (0,)
        made = against_authority("us-epa", amount("nitrate_plus_nitrite", 12.0))
        assert made["nitrate/mcl"].verdict == "undecided"
        assert made["nitrate_plus_nitrite/mcl/from-1992-07-30"].verdict == "above"

    def test_nitrate_by_difference(self):
        # EPA method 353.2: nitrate is the sum less the nitrite.
        both = (amount("nitrate_plus_nitrite", 12.0), amount("nitrite", 0.1))
        made = against_authority("us-epa", *both)["nitrate/mcl"]
        assert made.verdict == "above"
        assert made.amount.low == pytest.approx(11.9)
        assert made.results == (0, 1)
        made = against_authority("us-epa", both[0], below("nitrite", 3.0))["nitrate/mcl"]
        assert made.verdict == "undecided"

    def test_what_holds_of_the_part_holds_of_what_follows(self):
        late = absent("total_coliform", qualifiers=("H",))
        assert "e_coli/mcl/from-2016-04-01" not in against_authority("us-epa", late)
        # 40 CFR 141.66(e): uranium 30 µg/L, of the water unfiltered.
        limit = "uranium/mcl/from-2003-12-08"
        for fraction, verdict in (("dissolved", "undecided"), ("total", "within")):
            activity = amount("uranium_activity", 5.0, unit="pCi/L", fraction=fraction)
            assert against_authority("us-epa", activity)[limit].verdict == verdict
        supposed = amount("nitrate_plus_nitrite", 9.0, assumptions={"basis": "N"})
        assert "basis_assumed" in against_authority("us-epa", supposed)["nitrate/mcl"].reasons

    def test_a_result_of_its_own_goes_before(self):
        made = against_authority("us-epa", amount("nitrate_plus_nitrite", 12.0), amount("nitrate", 9.0))
        assert made["nitrate/mcl"].verdict == "within"
        assert made["nitrate/mcl"].results == (1,)

    def test_no_coliforms_no_e_coli(self):
        limit = "e_coli/mcl/from-2016-04-01"
        assert against_authority("us-epa", absent("total_coliform"))[limit].verdict == "within"
        # What nobody measured and nothing decides is not told.
        assert limit not in against_authority("us-epa", present("total_coliform"))
        made = against_authority("australia", present("total_coliform"), absent("e_coli"))
        assert not [one for one in made.values() if one.analyte == "fecal_coliform"]

    def test_e_coli_are_coliforms(self):
        made = against_authority("us-epa", present("e_coli"))
        trigger = "total_coliform/treatment-technique-trigger/from-2016-04-01"
        assert made[trigger].verdict == "above"
        assert trigger not in against_authority("us-epa", absent("e_coli"))

    def test_total_cyanide_bounds_the_free(self):
        # 40 CFR 141.62(b)(13): 0.2 mg/L as free cyanide.
        limit = "free_cyanide/mcl/from-1994-01-17"
        assert against_authority("us-epa", amount("cyanide", 0.1))[limit].verdict == "within"
        assert against_authority("us-epa", amount("cyanide", 0.3))[limit].verdict == "undecided"

    def test_uranium_by_activity(self):
        # 40 CFR 141.66(e): 30 µg/L; 0.67 pCi/µg at equilibrium, up to 1.5 in ground water (65 FR 76708, memory).
        limit = "uranium/mcl/from-2003-12-08"
        for activity, verdict in ((20.0, "within"), (30.0, "undecided"), (46.0, "above")):
            made = against_authority("us-epa", amount("uranium_activity", activity, unit="pCi/L"))
            assert made[limit].verdict == verdict

    def test_hardness_from_calcium_and_magnesium(self, tmp_path):
        # Standard Methods 2340 B: 2.497 [Ca] + 4.118 [Mg].
        ours = table(tmp_path, limit_line("total_hardness", "200", basis="CaCO3", kind="aesthetic"))
        (made,) = against(ours, amount("calcium", 60.0), amount("magnesium", 12.0))
        assert made.amount.low == pytest.approx(2.497 * 60 + 4.118 * 12)
        assert made.verdict == "within"
        (made,) = against(ours, amount("calcium", 90.0))
        assert made.verdict == "above"
        assert made.reasons == ("derived_from=calcium", "members_missing=magnesium")
        assert not against(ours, amount("calcium", 60.0))


def test_the_order_of_results_and_of_members_never_matters(tmp_path):
    # 0.1 + 0.2 + 0.3 depends on its order in the last bit.
    members = ("chloroform", "bromoform", "dibromochloromethane")
    results = [amount(name, number) for name, number in zip(members, (0.1, 0.2, 0.3), strict=True)]
    seen = set()
    for number, order in enumerate(itertools.permutations(members)):
        line = limit_line("total_trihalomethanes", "0.6", combine="sum", members=";".join(order))
        ours = table(tmp_path, line, authority=f"county-{number}")
        for permuted in itertools.permutations(results):
            (made,) = against(ours, *permuted)
            seen.add((made.verdict, made.amount.low, made.amount.high))
    assert len(seen) == 1
    assert seen.pop()[0] == "within"
