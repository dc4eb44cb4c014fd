"""Columns that a word of their heading would hide: replicates whose mean stands beside them, and filtered water."""

import pytest

import wellchem

# "2S" calls an uncertainty of two sigma elsewhere; here two bottles of a site, beside their mean.
REPLICATES = """,,TARN,,,,POND,,,,FELL,
Analyte Name,DL (mg/l),R1,R2,AVG,STDEV,POND 2S,POND 2S,AVG,STDEV,0.45F1,0.45F2
Ca 317.933,0.01,10.2,10.4,10.3,0.14,20.1,20.5,20.3,0.28,#VALUE!,9.1
Mg 285.213,0.01,1.2,1.4,1.3,0.14,2.1,2.2,2.15,0.07,#VALUE!,#VALUE!
Na 589.592,0.1,5.5,5.7,5.6,0.14,6.2,6.6,6.4,0.28,#VALUE!,#VALUE!
Fe 238.204,0.003,0.41,0.43,0.42,0.014,BDL,0.5,0.5,,7.3,#VALUE!
"""


def test_columns_whose_mean_stands_beside_them_are_results():
    report = wellchem.read(REPLICATES.encode(), format="csv")
    found = [(s.id, r.value) for s in report.samples for r in s.results if r.analyte == "calcium"]
    assert found == [
        ("TARN R1", 10.2),
        ("TARN R2", 10.4),
        ("POND 2S", 20.1),
        ("POND 2S", 20.5),
        ("FELL 0.45F2", 9.1),
    ]
    assert {one.reason.value for one in report.unread} == {"unreadable_value"}
    assert sorted(one.text.split()[0] for one in report.unread) == ["Ca", "Fe", "Mg", "Mg", "Na", "Na"]
    assert report.explanation.balanced


def test_without_their_mean_such_a_word_leaves_the_columns_unread():
    text = "\n".join(",".join(line.split(",")[:2] + line.split(",")[6:8]) for line in REPLICATES.splitlines())
    with pytest.raises(wellchem.errors.NothingFound) as nothing:
        wellchem.read(text.encode(), format="csv")
    assert len(nothing.value.unread) >= 4


@pytest.mark.parametrize("title", ["Unfiltered", "Total"])
def test_filtered_beside_unfiltered_is_the_dissolved_part(title):
    text = f"Analyte,Unit,{title},Filtered\nIron,mg/L,0.2,0.1\nZinc,mg/L,0.3,0.25\nLead,mg/L,0.004,0.003\n"
    found = wellchem.read(text.encode(), format="csv").to_frame()
    dissolved = found[found["fraction"] == "dissolved"]
    assert sorted(dissolved["value"]) == [0.003, 0.1, 0.25]
    assert sorted(found[found["fraction"] == "total"]["value"]) == [0.004, 0.2, 0.3]


def test_filtered_over_words_says_the_fraction_of_each_result():
    text = "Analyte,Unit,Result,Filtered\nIron,mg/L,0.2,Y\nZinc,mg/L,0.3,N\n"
    found = wellchem.read(text.encode(), format="csv").to_frame()
    assert found["fraction"].isna().tolist() == [False, True]
    assert found["fraction"][0] == "dissolved"


def test_a_number_among_words_under_an_unknown_heading_is_unread():
    text = "Analyte,Unit,Result,Odd words\nIron,mg/L,0.2,fine\nZinc,mg/L,0.3,0.5\nLead,mg/L,0.004,good\n"
    report = wellchem.read(text.encode(), format="csv")
    assert [(one.text, one.reason.value, one.detail) for one in report.unread] == [
        ("0.5", "ambiguous_column", "Odd words")
    ]
    assert report.explanation.balanced
