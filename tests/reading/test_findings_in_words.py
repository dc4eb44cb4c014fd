"""Sentences that name an analyte and a finding: results where they are certain, else unread, never a mere note."""

import pytest

import wellchem
from wellchem.errors import NothingFound

TABLE = "Analyte,Result,Units\nZinc,0.31,mg/L\n"


def read(lines, name="a.txt"):
    report = wellchem.read("\n".join(lines).encode(), name=name)
    assert report.explanation.balanced
    return {one.analyte: one for sample in report.samples for one in sample.results}, report.unread


def test_the_finding_may_stand_before_the_name():
    found, unread = read(
        [
            "No E. coli were found.",
            "We found 4.2 mg/L of fluoride in your water sample.",
            "Your water contains <0.05 mg/L of manganese.",
            "No iron was detected in the sample.",
            "Coliform bacteria: none detected in 100 mL",
        ]
    )
    assert (found["e_coli"].censoring, found["e_coli"].high) == ("absent", 0.0)
    assert (found["total_coliform"].censoring, found["total_coliform"].high) == ("absent", 0.0)
    assert (found["fluoride"].value, found["fluoride"].unit) == (4.2, "mg/L")
    assert (found["manganese"].censoring, found["manganese"].high) == ("left", 0.05)
    assert (found["iron"].censoring, found["iron"].high) == ("left", None)
    assert not unread


@pytest.mark.parametrize(
    "line",
    [
        "No E. coli were found in the method blank.",
        "No nitrate was detected above 10 mg/L.",
        "No E. coli or enterococci were found.",
        "We found 4.2 mg/L of fluoride in the field blank.",
        "We found 4.2 mg/L of fluoride in 2019.",
        "Drinking water contains 1 mg/L of fluoride in many towns.",
        "Fluoride came out at 4.2 mg/L this time",
        "There were coliform bacteria present last spring",
        "Iron <0.05 0.05 mg/L",
        "Lead 0.005 0.012 mg/L",
    ],
)
@pytest.mark.parametrize("name", ["a.txt", "a.csv"])
def test_what_is_not_certain_is_unread_with_its_words(line, name):
    if name == "a.csv":  # beneath a table, in a cell of its own
        report = wellchem.read(f'{TABLE}\n"{line}",,\n'.encode(), name=name)
        assert [one.analyte for sample in report.samples for one in sample.results] == ["zinc"]
        unread = report.unread
    else:
        with pytest.raises(NothingFound) as caught:
            wellchem.read(f"A letter\n{line}\n".encode(), name=name)
        unread = caught.value.unread
    assert any(line.rstrip(".") in one.text and one.origin.row is not None for one in unread)


@pytest.mark.parametrize("line", ["Iron is a common metal.", "See page 3 of this letter", "Reported 12 May at 14:10"])
def test_words_without_a_finding_are_notes(line):
    found, unread = read([*TABLE.splitlines(), "", f'"{line}",,'], "a.csv")
    assert set(found) == {"zinc"}
    assert not unread


@pytest.mark.parametrize(
    ("printed", "censoring", "low", "high", "code"),
    [  # the truth is that of the same code behind the number
        ("J 0.05", "none", 0.05, 0.05, "J"),
        ("J0.05", "none", 0.05, 0.05, "J"),
        ("U0.05", "left", 0.0, 0.05, "U"),
        ("U 0.05", "left", 0.0, 0.05, "U"),
        ("UJ 0.05", "left", 0.0, 0.05, "U"),
        ("< J 0.05", "left", 0.0, 0.05, "J"),
    ],
)
@pytest.mark.parametrize("separator", [",", "\t"])
def test_a_qualifier_may_stand_before_its_number(printed, censoring, low, high, code, separator):
    text = f"Analyte,Result,Units\nManganese,{printed},mg/L\nZinc,0.31,mg/L\n".replace(",", separator)
    found, unread = read(text.splitlines(), "a.csv" if separator == "," else "a.tsv")
    one = found["manganese"]
    assert (str(one.censoring), one.low, one.high) == (censoring, low, high)
    assert code in one.qualifiers
    assert not unread


@pytest.mark.parametrize("printed", ["K 1.0", "L 1.0", "E 12", "B 0.3", "QX 1.0", "J12", "M"])
def test_letters_that_another_convention_reads_differently_are_unread(printed):
    found, unread = read(["Analyte,Result,Units", f"Manganese,{printed},mg/L", "Zinc,0.31,mg/L"], "a.csv")
    assert set(found) == {"zinc"}
    assert [str(one.reason) for one in unread] == ["unreadable_value"]


def test_presence_without_a_number_is_present():
    """USGS remark code M: presence verified but not quantified (from memory)."""
    found, _ = read(
        [
            "# US Geological Survey",
            "agency_cd\tsite_no\tsample_dt\tparm_cd\tremark_cd\tresult_va",
            "5s\t15s\t10d\t5s\t1s\t12s",
            "USGS\t01234567\t2020-01-02\t01049\tM\t",
            "USGS\t01234567\t2020-01-02\t01046\t<\t3",
            "USGS\t01234567\t2020-01-02\t01056\tM\t0",
            "USGS\t01234567\t2020-01-02\t01040\tM\t0.4",
        ],
        "a.rdb",
    )
    for analyte in ("manganese", "copper"):  # what stands beside M measures nothing, a zero least of all
        one = found[analyte]
        assert (one.censoring, one.value, one.low, one.high) == ("present", None, 0, None)
    assert (found["lead"].censoring, found["lead"].value, found["lead"].high) == ("present", None, None)
    assert (found["iron"].censoring, found["iron"].high) == ("left", pytest.approx(0.003))
    said, unread = read(["Analyte,Result,Units", 'Lead,"Present, not quantified",ug/L', "Zinc,0.31,mg/L"], "a.csv")
    assert (said["lead"].censoring, said["lead"].value) == ("present", None)
    assert not unread


@pytest.mark.parametrize("row", ["Härtebereich,hart,", "Hardness class,hard,", "Iron bacteria smear,slight growth,"])
def test_a_word_where_the_results_stand_is_unread_whatever_its_name(row):
    found, unread = read(["Analyte,Result,Units", "Zinc,0.31,mg/L", row, "Copper,0.1,mg/L"], "a.csv")
    assert set(found) == {"zinc", "copper"}
    assert [row.split(",")[0] in one.text for one in unread] == [True]


@pytest.mark.parametrize("line", ["Water hardness: hard", "E. coli: see note", "Total Hardness: very hard"])
def test_a_known_name_with_words_for_its_value_is_unread(line):
    found, unread = read(["Zinc: 0.31 mg/L", line])
    assert set(found) == {"zinc"}
    assert [(one.text, one.reason) for one in unread] == [(line, "unreadable_value")]
