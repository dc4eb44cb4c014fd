"""Tables of limits of one's own: what is checked, and that every fault is listed with its line."""

import pytest
from compared import HEADER, against, amount, limit_line, sample, table

from wellchem.errors import LimitsError, UnknownAuthority
from wellchem.limits import compare_sample, load, lookup
from wellchem.limits.rows import table_of
from wellchem.models.sample import Result
from wellchem.vocabulary import bundled

FAULTS = {
    "analyte 'plumbum' is not in the vocabulary": limit_line("plumbum", "1"),
    "limit_term is empty": limit_line("lead", "1", term=""),
    "kind 'legal' is not one of health, aesthetic, operational, goal": limit_line("lead", "1", kind="legal"),
    "kind is empty": limit_line("lead", "1", kind=""),
    "maximum '1,5' is not a number": limit_line("lead", '"1,5"'),
    "maximum 'inf' is not finite": limit_line("lead", "inf"),
    "maximum -1 is negative": limit_line("lead", "-1"),
    "minimum 9 is not below maximum 6": limit_line("ph", "6", "1", minimum="9"),
    "unit 'mg/kg' of lead does not convert to mg/L": limit_line("lead", "1", "mg/kg"),
    "unit 'NTU' of lead does not convert": limit_line("lead", "1", "NTU"),
    "unit '' of lead does not convert": limit_line("lead", "1", ""),
    "unit 'mg/L as N' of lead does not convert": limit_line("lead", "1", basis="N"),
    "fraction 'whole' is not one of total": limit_line("lead", "1", fraction="whole"),
    "in_force_from '1 May 2020' is not a date as 2026-01-31": limit_line("lead", "1", in_force_from="1 May 2020"),
    "in_force_from 2020-01-01 is after in_force_to 2019-01-01": limit_line(
        "lead", "1", in_force_from="2020-01-01", in_force_to="2019-01-01"
    ),
    "combine 'mean' is not one of sum, difference, sum_of_ratios": limit_line("lead", "1", combine="mean"),
    "sum needs two members or more": limit_line("lead", "1", combine="sum", members="copper"),
    "member 'plumbum' is not in the vocabulary": limit_line("lead", "1", combine="sum", members="copper;plumbum"),
    "member 'copper' stands twice": limit_line("lead", "1", combine="sum", members="copper;copper"),
    "member 'copper' needs its own limit": limit_line(
        "lead", "1", combine="sum_of_ratios", members="copper;zinc:3 mg/L"
    ),
    "member 'copper:1 mg/L': only sum_of_ratios takes a number": limit_line(
        "lead", "1", combine="sum", members="copper:1 mg/L;zinc"
    ),
    "applies_when 'ph-below:low'": limit_line("lead", "1", applies_when="ph-below:low"),
    "applies_when 'ph-below' needs": limit_line("lead", "1", applies_when="ph-below"),
    "applies_when 'chlorinated:yes' takes no argument": limit_line("lead", "1", applies_when="chlorinated:yes"),
    "applies_when 'filtration:sand'": limit_line("lead", "1", applies_when="filtration:sand"),
    "applies_when 'on-sundays' is not one of": limit_line("lead", "1", applies_when="on-sundays"),
    "checked 'seen' is not one of page": limit_line("lead", "1", checked="seen"),
    "more cells than columns": limit_line("lead", "1") + ",extra",
}


@pytest.mark.parametrize("fault", FAULTS)
def test_each_fault_is_named_with_its_line(tmp_path, fault):
    with pytest.raises(LimitsError) as raised:
        table(tmp_path, limit_line("copper", "1.3"), FAULTS[fault])
    assert str(raised.value).startswith("our-own.csv has 1 fault:\n")
    assert f"line 3: {fault}" in str(raised.value)


def test_all_faults_are_listed_at_once(tmp_path):
    with pytest.raises(LimitsError) as raised:
        table(tmp_path, *FAULTS.values())
    assert all(fault in str(raised.value) for fault in FAULTS)


def test_the_same_limit_twice(tmp_path):
    with pytest.raises(LimitsError, match="line 3: the same limit as another row"):
        table(tmp_path, limit_line("lead", "0.01"), limit_line("lead", "0.02"))
    with pytest.raises(LimitsError, match="line 3: in force at the same time as line 2"):
        table(
            tmp_path,
            limit_line("lead", "0.01", in_force_to="2020-06-01"),
            limit_line("lead", "0.02", in_force_from="2020-06-01"),
        )
    made = table(
        tmp_path,
        limit_line("lead", "0.01", in_force_to="2020-05-31"),
        limit_line("lead", "0.02", in_force_from="2020-06-01"),
    )
    assert len({row.id for row in made.rows}) == 2


@pytest.mark.parametrize("text", ["", "analyte,limit_term\nlead,x\n", HEADER.replace("kind", "sort") + "\n"])
def test_columns(tmp_path, text):
    path = tmp_path / "county.csv"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(LimitsError, match="column"):
        load(path)


def test_what_is_no_table(tmp_path):
    with pytest.raises(LimitsError, match="could not be read"):
        load(tmp_path / "nowhere.csv")
    (tmp_path / "noise.csv").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(LimitsError, match="UTF-8"):
        load(tmp_path / "noise.csv")


def test_a_few_columns_are_enough(tmp_path):
    path = tmp_path / "household.csv"
    path.write_text("analyte,limit_term,kind,maximum,unit,source\nlead,our wish,health,1,µg/L,our own choice\n")
    ours = load(path, "household")
    (made,) = against(ours, amount("lead", 2, unit="µg/L", fraction="total"), on=None)
    assert (made.verdict, made.limit.authority) == ("above", "household")
    assert str(made.limit.citation).startswith("our own choice")
    assert "memory" in str(made.limit.citation)


def test_own_limits_beside_an_authority(tmp_path):
    ours = table(tmp_path, limit_line("lead", "0.001"))
    made = compare_sample(sample(amount("lead", 0.002)), ("eu", "our-own"), limits=ours)
    assert {one.limit.authority for one in made} == {"eu", "our-own"}
    assert [limit.authority for limit in lookup("lead", "our-own", limits=ours)] == ["our-own"]
    assert not compare_sample(sample(amount("lead", 0.002)), ())


def test_an_analyte_of_ones_own(tmp_path):
    columns = ("analyte", "group", "formula", "charge", "cas", "canonical_unit", "canonical_basis")
    rows = [dict(zip(columns, ("polonium_209", "radiological", "", "", "", "Bq/L", ""), strict=True))]
    vocabulary = bundled().extended(analytes=rows)
    path = tmp_path / "county.csv"
    path.write_text("analyte,limit_term,kind,maximum,unit\npolonium_209,trigger,health,1,pCi/L\n")
    with pytest.raises(LimitsError, match="polonium_209"):
        load(path)
    ours = load(path, vocabulary=vocabulary)
    result = Result(analyte="polonium_209", low=0.1, high=0.1, unit="Bq/L")
    (made,) = compare_sample(sample(result), (), limits=ours, vocabulary=vocabulary)
    assert made.verdict == "above"
    assert [limit.canonical_maximum for limit in lookup("polonium_209", limits=ours)] == [pytest.approx(0.037)]
    with pytest.raises(LimitsError, match="polonium_209"):
        compare_sample(sample(result), (), limits=ours)


def test_an_unknown_authority():
    with pytest.raises(UnknownAuthority, match="us-epa"):
        lookup("lead", "atlantis")
    with pytest.raises(UnknownAuthority, match="health-canada"):
        table_of("atlantis")


def test_printed_unit_and_canonical_bounds(tmp_path):
    # Molar masses of the CIAAW 2024: N 14.007, O 15.999: 50 mg/L of NO3 is 11.295 mg/L of N.
    ours = table(tmp_path, limit_line("nitrate", "50", "mg/L", basis="NO3"), limit_line("gross_alpha", "15", "pCi/L"))
    nitrate, alpha = (row for row in ours.rows)
    assert (nitrate.maximum, nitrate.unit, nitrate.basis, nitrate.canonical_unit) == (50.0, "mg/L", "NO3", "mg/L")
    assert nitrate.canonical_maximum == pytest.approx(50 * 14.007 / (14.007 + 3 * 15.999), rel=1e-6)
    assert alpha.canonical_maximum == pytest.approx(0.555)
