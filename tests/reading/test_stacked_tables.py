"""Tables stacked beneath samples as columns: invented sheets in the shape that laboratories of universities use."""

import pytest

import wellchem

SHEET = """Metals,,,,,,,,,
,,SPRING,,,,TARN,,,
Analyte Name,DL (mg/l),F1,F2,AVG,STD,F1,F2,AVG,STD
Sc 361.383,% Concentration,98,97,97.5,0.7,101,99,100,1.4
Fe 238.204,0.003,0.41,0.43,0.42,0.014,BDL,0.005,0.005,
Mn 257.610,0.001,0.052,0.054,0.053,0.001,BDL,BDL,,
Anions,,,,,,,,,
[Anions] (ppm),,U1,U2,AVG,STD,U1,U2,AVG,STD
Cl,,12.1,12.3,12.2,0.14,30.5,30.7,30.6,0.14
NO3(-),,4.4,4.6,4.5,0.14,BDL,BDL,,
Field Data,,,,,,,,,
pH,,7.1,,,,6.8,,,
Conductivity,mS/cm,0.21,,,,0.54,,,
Carbon,,,,,,,,,
,,DOC1,TOC1,Avg,StDev,DOC1,TOC1,Avg,StDev
NPOC (ppm),,1.1,1.4,1.25,0.2,2.1,2.5,2.3,0.3
"""


@pytest.fixture(scope="module")
def report():
    return wellchem.read(SHEET.encode(), format="csv")


def _found(report, analyte):
    return sorted((s.id, r.value, str(r.fraction)) for s in report.samples for r in s.results if r.analyte == analyte)


def test_the_samples_of_the_table_above_head_the_table_beneath(report):
    assert [one[:2] for one in _found(report, "chloride")] == [
        ("SPRING U1", 12.1),
        ("SPRING U2", 12.3),
        ("TARN U1", 30.5),
        ("TARN U2", 30.7),
    ]


def test_a_deviation_is_no_result(report):
    assert not _found(report, "total_dissolved_solids")
    assert [one[1] for one in _found(report, "iron")] == [0.41, 0.43, 0.003, 0.005]  # BDL is bounded by its limit


def test_a_recovery_in_percent_is_no_concentration(report):
    assert not _found(report, "scandium")
    assert sum("Sc 361.383" in one.text and one.reason == "unit_not_of_analyte" for one in report.unread) == 4


def test_units_of_some_rows_are_read_and_the_title_unit_ends_with_its_table(report):
    assert [one[1] for one in _found(report, "specific_conductance")] == pytest.approx([210, 540])
    assert [one[1] for one in _found(report, "ph")] == [7.1, 6.8]


def test_a_heading_that_names_the_dissolved_part_gives_the_fraction(report):
    assert [one[1] for one in _found(report, "dissolved_organic_carbon")] == [1.1, 2.1]
    assert [one[1] for one in _found(report, "total_organic_carbon")] == [1.4, 2.5]


def test_every_cell_is_claimed(report):
    assert report.explanation.balanced


UNHEADED = """Metals,,,,,,,,,,,
,,SPRING,,,,TARN,,,,POND,
Analyte Name,DL (mg/l),F1,F2,AVG,STD,F1,F2,AVG,STD,F1,F2
Fe 238.204,0.003,0.41,0.43,0.42,0.014,BDL,0.005,0.005,,0.2,0.3
Mn 257.610,0.001,0.052,0.054,0.053,0.001,BDL,BDL,,,0.1,0.2
[Anions] (ppm),,U1,U2,AVG,STD,U1,U2,AVG,STD,,
Cl,,12.1,12.3,12.2,0.14,30.5,30.7,30.6,0.14,,
NO3(-),,4.4,4.6,4.5,0.14,BDL,BDL,,,,
Field Data,,,,,,,,,,,
pH,,7.1,,,,6.8,,,,-,later
Conductivity,mS/cm,0.21,,,,0.54,,,,0.33,
"""


def test_a_column_without_a_heading_belongs_to_the_sample_above_it():
    """Only the field readings of the pond are in the lower table: its columns have no heading of their own there."""
    report = wellchem.read(UNHEADED.encode(), format="csv")
    found = {one[0]: one[1] for one in _found(report, "specific_conductance")}
    assert found == pytest.approx({"SPRING U1": 210, "TARN U1": 540, "POND": 330})
    assert [(one.text, one.reason.value) for one in report.unread] == [
        ("pH -", "no_value"),
        ("pH later", "unreadable_value"),
    ]
    assert report.explanation.balanced


def test_at_most_the_limit_of_detection_is_not_detected():
    report = wellchem.read(b"Sample,Lead (ug/L),Zinc (ug/L)\nA,\xe2\x89\xa4LOD,4\nB,2,5\n", format="csv")
    lead = report.samples[0].get("lead")
    assert (lead.censoring, lead.high) == ("left", None)


def test_std_by_itself_stays_the_spanish_total_dissolved_solids():
    report = wellchem.read(b"Muestra,pH,STD (mg/L),Hierro (mg/L)\nP1,7.2,310,0.2\nP2,7.4,290,0.1\n", format="csv")
    assert [s.get("total_dissolved_solids").value for s in report.samples] == [310, 290]
