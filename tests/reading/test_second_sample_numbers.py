"""A second column of sample numbers tells quality control; a formula before a point is no visit's prefix."""

import wellchem
from wellchem.vocabulary import bundled

LONG = """Lab ID,Field Sample ID,QC type,Analyte,Result,Units
8801,ELM 090626,1,Iron,0.31,mg/L
8802,ELM DUP 090626,5,Iron,0.33,mg/L
8803,ELMBLANK090626,3,Iron,0.01,mg/L
8804,OAK 090626,1,Iron,0.12,mg/L
"""


def test_a_code_in_the_second_column_of_sample_numbers_tells_quality_control():
    report = wellchem.read(LONG.encode(), format="csv")
    assert sorted(sample.results[0].value for sample in report.samples) == [0.12, 0.31]
    assert sorted((sample.role.value, sample.results[0].value) for sample in report.quality_control) == [
        ("blank", 0.01),
        ("duplicate", 0.33),
    ]


def test_so_it_does_in_a_wide_table():
    lines = "Lab ID,Client Sample ID,Iron,Lead\n1,Barn,0.3,0.001\n2,Barn BLNK 101826,0.01,0.001\n"
    report = wellchem.read(lines.encode(), format="csv")
    assert [len(sample.results) for sample in report.samples] == [2]
    assert [sample.role for sample in report.quality_control] == ["blank"]


def test_words_that_only_begin_like_a_code_tell_nothing():
    for text in (
        "BLANKET HILL 101618",
        "GRANDDUP",
        "LL09 100819",
        "MS Smith 4",
        "b9d657f1-5af9-4cf6-902b-90c54a040ccb",
    ):
        assert bundled().id_role(text) is None


def test_a_formula_before_a_remark_is_no_prefix_of_a_visit():
    lines = "site,CO3.rmk,CO3,HCO3.rmk,HCO3,Fluoride.rmk,Fluoride\nW-1,<,1.0,,92.0,<,0.1\nW-2,,3.0,,80.0,,0.2\n"
    report = wellchem.read(lines.encode(), format="csv")
    assert sum(len(sample.results) for sample in report.samples) == 6
    first = report.samples[0]
    assert (first.get("carbonate").censoring, first.get("fluoride").censoring) == ("left", "left")


def test_a_routine_sample_with_a_replicate_is_routine():
    """Activity types of the US Geological Survey's water-quality data."""
    role = bundled().sample_role
    assert role("Sample - Routine, with an associated replicate") == "routine"
    assert role("Sample - Time composite") == "routine"
    assert role("Sample-Field Blank") == "blank"
    assert role("Quality Control Sample-Field Replicate") == "duplicate"
