"""Limits looked up with their citations; the numbers are typed from the documents named beside them."""

from datetime import date

import pytest

from wellchem import limits
from wellchem.errors import UnknownAnalyte, UnknownAuthority
from wellchem.models.codes import Checked


def test_all_eight_authorities():
    assert limits.authorities() == (
        *("us-epa", "health-canada", "who", "eu"),
        *("germany", "england-private", "australia", "new-zealand"),
    )


def test_a_limit_with_its_citation():
    # 40 CFR 141.62(b)(16).
    (mcl,) = [one for one in limits.lookup("arsenic", "us-epa", date(2026, 5, 1)) if one.term == "MCL"]
    assert (mcl.maximum, mcl.unit, mcl.fraction) == (0.010, "mg/L", "total")
    assert "§ 141.62(b)(16)" in str(mcl.citation)
    assert "40 CFR" in str(mcl.citation)
    assert mcl.citation.url.startswith("https://www.ecfr.gov/")


def test_every_citation_says_how_it_was_checked():
    said = {
        Checked.PAGE: "[seen in the document]",
        Checked.TRANSPOSITION: "in a law that takes it over]",
        Checked.MEMORY: "[from memory, not seen in the document]",
    }
    found = [one for authority in limits.authorities() for one in limits.lookup("nitrate", authority, "any")]
    assert len(found) >= 8
    for one in found:
        assert said[one.citation.checked] in str(one.citation)
        assert one.citation.locator


def test_a_printed_name_and_a_key_are_one():
    assert limits.lookup("NO3-N", "who") == limits.lookup("nitrate", "who")


def test_an_unknown_name_gets_the_nearest():
    with pytest.raises(UnknownAnalyte, match="nitrate"):
        limits.lookup("nitratee")


def test_an_unknown_authority():
    with pytest.raises(UnknownAuthority, match="australia"):
        limits.lookup("nitrate", "atlantis")
    with pytest.raises(UnknownAuthority, match="australia"):
        limits.standing("atlantis")


def test_old_and_new_law():
    # Directive (EU) 2020/2184: lead 10 µg/L until 2036-01-11, then 5.
    def maximum(day):
        return [one.maximum for one in limits.lookup("lead", "eu", day) if one.kind == "health" and one.compared]

    assert maximum(date(2030, 1, 1)) == [10.0]
    assert maximum(date(2036, 1, 12)) == [5.0]
    assert set(maximum("any")) >= {10.0, 5.0}


def test_what_is_shown_and_not_compared():
    # 40 CFR 141.61(c)(1)(ii): printed, its effective date postponed.
    found = [one for one in limits.lookup("aldicarb", "us-epa") if one.term == "MCL (postponed)"]
    assert [one.compared for one in found] == [False]


def test_groups_are_found_by_their_members():
    # 40 CFR 141.64(b).
    found = [one for one in limits.lookup("bromoform", "us-epa") if one.analyte == "total_trihalomethanes"]
    assert [one.maximum for one in found] == [0.080]


def test_table_over_authorities():
    frame = limits.table(["nitrate", "lead"], ["who", "eu"], date(2026, 5, 1))
    assert set(frame["authority"]) == {"who", "eu"}
    assert set(frame["analyte"]) == {"nitrate", "lead"}
    # WHO, Guidelines 4th ed. 2022, Annex 3: nitrate 50 mg/L as NO3.
    row = frame[(frame["authority"] == "who") & (frame["limit"].str.startswith("who/nitrate/"))].iloc[0]
    assert (row["maximum"], row["basis"]) == (50.0, "NO3")
    assert frame["citation"].str.contains("]", regex=False).all()
    assert limits.table([]).empty


def test_standing_says_what_was_not_checked():
    for authority in limits.authorities():
        assert "not checked" in limits.standing(authority)
        assert "safe" not in limits.standing(authority).lower().replace("safe drinking water act", "")


def test_version_is_of_the_data():
    assert len(limits.version()) == 12
    assert set(limits.version()) <= set("0123456789abcdef")


def test_ids_are_unique():
    ids = [row.id for authority in limits.authorities() for row in limits.rows.table_of(authority).rows]
    assert len(ids) == len(set(ids)) > 1500
