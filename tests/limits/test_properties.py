"""What must hold for any numbers: verdicts follow the bounds, and nothing but the bounds."""

from math import inf

import pytest
from compared import against_authority, amount
from hypothesis import given, settings
from hypothesis import strategies as st

from wellchem.vocabulary import bundled

# Factors that matter: on the limit, just off it, and far from it.
SHARES = st.one_of(st.sampled_from([0.0, 0.5, 0.8, 1.0, 1.0000001, 1.2, 50.0]), st.floats(0, 100))
WIDTHS = st.one_of(st.sampled_from([0.0, 0.1, 1.0, inf]), st.floats(0, 10))
CENSORINGS = st.sampled_from(["none", "left", "right", "interval"])

# Limit (from its document) and the analyte: 40 CFR 141.62(b)(7), (16); 143.3; 141.63(c); 141.66(c).
ONE = {
    "nitrate": ("nitrate/mcl", 10.0),
    "arsenic": ("arsenic/mcl/from-2006-01-23", 0.010),
    "ph": ("ph/smcl", 8.5),
    "e_coli": ("e_coli/mcl/from-2016-04-01", 1.0),
    "gross_alpha": ("gross_alpha/mcl", 0.555),
}
RANK = {"below": 0, "within": 1, "undecided": 1, "above": 2}


def verdict(analyte, low, high, censoring="interval", *more):
    limit, _ = ONE[analyte]
    return str(against_authority("us-epa", amount(analyte, low, high, censoring=censoring), *more)[limit].verdict)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(sorted(ONE)), SHARES, WIDTHS, SHARES, CENSORINGS)
def test_raising_a_value_never_makes_above_within(analyte, share, width, more, censoring):
    scale = ONE[analyte][1]
    low, high = share * scale, (share + width) * scale
    before = verdict(analyte, low, high, censoring)
    after = verdict(analyte, low + more * scale, high + more * scale, censoring)
    assert RANK[after] >= RANK[before]
    if before == "above":
        assert after == "above"


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(sorted(ONE)), SHARES, WIDTHS, st.floats(0, 1), WIDTHS)
def test_widening_never_decides(analyte, share, width, lower, higher):
    scale = ONE[analyte][1]
    low, high = share * scale, (share + width) * scale
    narrow, wide = verdict(analyte, low, high), verdict(analyte, low * lower, high + higher * scale)
    assert wide in (narrow, "undecided")


MEMBERS = ("chloroform", "bromodichloromethane", "dibromochloromethane", "bromoform")
TTHM = "total_trihalomethanes/mcl/from-2002-01-01"


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.floats(0, 0.1), st.floats(0, 0.05)), min_size=4, max_size=4), st.integers(0, 4), st.data())
def test_a_sum_with_less_known_of_it_is_never_more_decided(bounds, known, data):
    # 40 CFR 141.64(b): 0.080 mg/L.
    results = [
        amount(name, low, low + width, censoring="interval") for name, (low, width) in zip(MEMBERS, bounds, strict=True)
    ]
    whole = against_authority("us-epa", *results)[TTHM].verdict
    some = data.draw(st.permutations(results))[:known]
    made = against_authority("us-epa", *some).get(TTHM)
    assert made is None or made.verdict in (whole, "undecided")
    assert whole == against_authority("us-epa", *data.draw(st.permutations(results)))[TTHM].verdict


@pytest.mark.parametrize(
    "analyte, limit, printed",
    [
        ("nitrate", "nitrate/mcl", [("mg/L", "N"), ("mg/L", "NO3"), ("µg/L", "N"), ("mmol/L", "NO3"), ("ppm", "N")]),
        ("arsenic", "arsenic/mcl/from-2006-01-23", [("mg/L", ""), ("µg/L", ""), ("ppb", ""), ("ng/L", "")]),
        ("radium_226_plus_228", "radium_226_plus_228/mcl", [("Bq/L", ""), ("pCi/L", "")]),
    ],
)
@settings(max_examples=25, deadline=None)
@given(share=st.one_of(st.just(1.0), st.floats(0.5, 2.0)))
def test_any_printed_unit_and_form_gives_the_same_verdict(analyte, limit, printed, share):
    (maximum,) = {one.limit.canonical_maximum for one in [against_authority("us-epa", amount(analyte, 1))[limit]]}
    seen = set()
    for unit, basis in printed:
        factor = bundled().unit(f"{unit} as {basis}" if basis else unit, analyte).factor
        number = share * maximum / factor
        seen.add(against_authority("us-epa", amount(analyte, number, unit=unit, basis=basis))[limit].verdict)
    assert len(seen) == 1
    assert seen == {"above" if share > 1 + 1e-9 else "within"}
