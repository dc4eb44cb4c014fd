"""Columns in which a mark chooses the word, names with a limit beside them, results in sentences."""

import pytest

import wellchem
from wellchem.errors import ReadError


def results(text, name="a.csv"):
    report = wellchem.read(text.encode(), name=name)
    assert report.explanation.balanced
    return {one.analyte: one for sample in report.samples for one in sample.results}, report.unread


@pytest.mark.parametrize(
    ("header", "present", "absent"),
    [
        ("Test,Present,Absent", "X,", ",X"),
        ("Test,Absent,Present", ",✓", "✓,"),
        ("Organism,Positive,Negative", "●,", ",●"),
        ("Test,Method,Present,Absent,Unit", "SM 9223,x,,/100 mL", "SM 9223,,x,/100 mL"),
        ("Parameter,Detected,Not Detected", "yes,no", "no,yes"),
    ],
)
def test_a_mark_chooses_the_word_of_its_column(header, present, absent):
    read, unread = results(f"{header}\nTotal coliform,{absent}\nE. coli,{present}\n")
    assert (read["total_coliform"].low, read["total_coliform"].high) == (0.0, 0.0)
    assert read["e_coli"].censoring == "present"
    assert not unread


def test_marks_in_both_columns_or_in_none_are_unread_with_their_reason():
    read, unread = results("Test,Present,Absent\nTotal coliform,,X\nE. coli,X,X\nEnterococci,,\n")
    assert set(read) == {"total_coliform"}
    assert sorted(str(one.reason) for one in unread) == ["no_value", "unreadable_value"]


def test_a_limit_beside_a_name_is_no_part_of_it():
    read, _ = results(
        'Parameter,Result,Unit\nIron (RL 0.05),0.42,mg/L\n"Lead, ug/L (MCL 15)",3.1,\n'
        "Manganese [limit 0.05 mg/L],0.02,mg/L\nNitrate-N (MCL = 10 mg/L),ND,mg/L\n"
    )
    assert (read["iron"].value, read["manganese"].value) == (0.42, 0.02)
    assert read["lead"].value == pytest.approx(0.0031)
    assert (read["nitrate"].censoring, read["nitrate"].high) == ("left", None)


def test_sentences_give_their_result_and_never_the_limit():
    read, _ = results(
        "The detection limit for iron is 0.03 mg/L.\nIron was not detected (less than 0.03 mg/L).\n"
        "Your nitrate-nitrogen was 12.4 mg/L, above the standard of 10 mg/L.\n"
        "Manganese was found at 0.12 mg/L, which is above the guideline of 0.05 mg/L.\n"
        "The pH of your water was 6.4.\nThe chloride level in your water is 31 mg/L.\n"
        "The standard for lead is 15 ppb.\nThe maximum sulfate level is 250 mg/L.\n",
        "a.txt",
    )
    told = {analyte: (one.low, one.high) for analyte, one in read.items()}
    assert told == {
        "iron": (0.0, 0.03),
        "nitrate": (12.4, 12.4),
        "manganese": (0.12, 0.12),
        "ph": (6.4, 6.4),
        "chloride": (31.0, 31.0),
    }


@pytest.mark.parametrize(
    "line",
    [
        "The recommended level of iron is 0.3 mg/L",
        "The maximum nitrate level is 10 mg/L",
        "The lead action level is 15 ppb",
        "Lead in the water is 15 ppb maximum",
        "The county average nitrate level was 4 mg/L",
        "Nitrate was 10 mg/L in 2019",
    ],
)
def test_a_sentence_about_something_else_is_no_result(line):
    with pytest.raises(ReadError):
        wellchem.read(f"{line}.\n".encode(), name="a.txt")
