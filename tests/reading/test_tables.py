"""Layouts of tables, as delimited text: what becomes a result, what does not, and of which sample."""

import pytest

import wellchem


def read(text):
    report = wellchem.read(text.encode(), format="csv", name="lab.csv")
    assert report.explanation.balanced
    return report


def found(text):
    """Results by analyte as (value, unit printed); of the household's samples only."""
    report = read(text)
    return {
        (sample.id or sample.site or "", result.analyte, result.fraction): result.value
        for sample in report.samples
        for result in sample.results
    }


def test_header_wherever_it_stands():
    head = "Invented Laboratory,,\nA row of words,,\nSample ID: W-1,Collected: 2026-05-03,\n"
    report = read(head + "Test,Result,Unit\nIron,0.3,mg/L\n")
    (sample,) = report.samples
    assert (sample.id, str(sample.collected)) == ("W-1", "2026-05-03")
    assert sample.get("iron").value == 0.3


def test_header_of_two_rows():
    text = "Parameter,Result,Reporting,Analysis\n,(mg/L),Limit,Method\nIron,ND,0.05,200.7\nLead,0.004,0.001,200.8\n"
    report = read(text)
    iron, lead = report.samples[0].results
    assert (iron.high, iron.reporting_limit) == (0.05, 0.05)
    assert (lead.value, lead.printed.unit, lead.method) == (0.004, "mg/L", "200.8")


def test_a_limit_beside_the_result_is_never_the_result():
    text = "Analyte,MCL,Result,Units,RL,MDL\nArsenic,10,ND,µg/L,1,0.3\nLead,15,,µg/L,1,0.3\nCopper,1300,12,µg/L,1,0.3\n"
    report = read(text)
    assert [(r.analyte, r.value) for r in report.samples[0].results] == [
        ("arsenic", 0.001),
        ("copper", pytest.approx(0.012)),
    ]
    assert [(u.reason, u.text.split()[0]) for u in report.unread] == [("no_value", "Lead")]


def test_previous_results_and_averages_are_left():
    text = "Analyte,Units,Result,Previous Result,Average\nIron,mg/L,0.3,0.5,0.4\n"
    assert found(text) == {("", "iron", None): 0.3}


def test_two_columns_that_could_be_the_result_are_left_unread():
    report = wellchem.read_batch([b"Analyte,Units,Alpha,Omega\nIron,mg/L,0.3,0.5\nLead,mg/L,0.3,0.5\n"])
    assert len(report.results) == 0
    assert set(report.unread["reason"]) == {"ambiguous_column"}


def test_a_column_chosen_by_content_is_an_assumption():
    (result,) = read("Analyte,Units,Alpha\nIron,mg/L,0.3\n").samples[0].results
    assert "column=Alpha" in map(str, result.assumptions)


def test_headings_carry_the_fraction_and_end():
    text = (
        'Analyte,Result,Units\n"Metals, Dissolved",,\nIron,0.1,mg/L\n"Metals, Total",,\nIron,0.4,mg/L\n'
        "General Chemistry,,\nChloride,12,mg/L\n"
    )
    assert found(text) == {("", "iron", "dissolved"): 0.1, ("", "iron", "total"): 0.4, ("", "chloride", None): 12.0}


def test_quality_control_sections_and_rows_stay_apart():
    text = (
        "Sample ID: W-1,,\nAnalyte,Result,Units\nIron,0.1,mg/L\nMethod Blank: Iron,<0.05,mg/L\nQuality Control,,\n"
        "Laboratory Control Sample,,\nIron,0.98,mg/L\nMatrix Spike,,\nIron,1.1,mg/L\n"
    )
    report = read(text)
    assert [r.value for s in report.samples for r in s.results] == [0.1]
    assert sorted({str(s.role) for s in report.quality_control}) == ["blank", "control", "spike"]


def test_percent_recovery_makes_a_row_quality_control():
    text = "Analyte,Result,Units,% Recovery\nIron,0.1,mg/L,\nLead,0.98,mg/L,98\n"
    assert found(text) == {("", "iron", None): 0.1}


def test_samples_as_columns():
    text = (
        "Sample ID,,W-1,W-2\nCollected,,2026-05-03,2026-05-04\nParameter,Units,,\nIron,mg/L,0.3,<0.05\nLead,µg/L,ND,2\n"
    )
    report = read(text)
    assert [(s.id, str(s.collected)) for s in report.samples] == [("W-1", "2026-05-03"), ("W-2", "2026-05-04")]
    assert report.samples[1].get("lead").value == pytest.approx(0.002)


def test_sections_of_samples_with_repeated_headers():
    text = (
        "Sample ID:,W-1,\nAnalyte,Result,Units\nIron,0.3,mg/L\nSample ID:,W-2,\nAnalyte,Result,Units\nIron,0.7,mg/L\n"
    )
    assert found(text) == {("W-1", "iron", None): 0.3, ("W-2", "iron", None): 0.7}


def test_tables_side_by_side():
    text = "Analyte,Result,Units,Analyte,Result,Units\nIron,0.3,mg/L,Lead,4,µg/L\nZinc,0.1,mg/L,,,\n"
    assert found(text) == {("", "iron", None): 0.3, ("", "lead", None): 0.004, ("", "zinc", None): 0.1}


def test_a_list_without_a_header():
    text = "Sample ID: W-1,,\nIron,0.3,mg/L\nLead,<1,µg/L\npH,7.2,\n"
    report = read(text)
    assert [r.analyte for r in report.samples[0].results] == ["iron", "lead", "ph"]


def test_running_lines():
    text = "Sample: W-1\nZinc ........ 0.08 mg/L\nThe nitrate-N was 4.2 mg/L\nIron: <0.05 mg/L (guideline 0.3)\n"
    assert found(text) == {("W-1", "zinc", None): 0.08, ("W-1", "nitrate", None): 4.2, ("W-1", "iron", None): 0.05}


def test_a_note_gives_the_unit():
    (result,) = read("All results in µg/L unless noted,\nAnalyte,Result\nIron,300\n").samples[0].results
    assert (result.value, result.printed.unit) == (pytest.approx(0.3), "µg/L")


def test_a_unit_that_is_not_printed_is_an_assumption():
    (result,) = read("Analyte,Result\nIron,0.3\n").samples[0].results
    assert "unit=mg/L" in map(str, result.assumptions)


@pytest.mark.parametrize(
    ("dates", "expected", "assumed"),
    [
        (("03/04/2026", "25/04/2026"), "2026-04-03", False),
        (("03/04/2026", "04/25/2026"), "2026-03-04", False),
        (("03/04/2026", "05/04/2026"), "2026-03-04", True),
        (("03.04.2026", "05.04.2026"), "2026-04-03", False),
        (("3 avril 2026", "5 mai 2026"), "2026-04-03", False),
    ],
)
def test_order_of_day_and_month(dates, expected, assumed):
    text = "Sample ID,Collected,Analyte,Result,Units\n" + "".join(f"W-{d},{d},Iron,0.3,mg/L\n" for d in dates)
    first = read(text).samples[0]
    assert str(first.collected) == expected
    assert any(a.code == "date_order" for a in first.results[0].assumptions) is assumed


def test_what_is_not_water_is_unread():
    report = read("Sample ID,Matrix,Analyte,Result,Units\nS-1,Soil,Iron,300,mg/L\nW-1,Groundwater,Iron,0.3,mg/L\n")
    assert [s.id for s in report.samples] == ["W-1"]
    assert [u.reason for u in report.unread] == ["not_water"]


def test_decimal_comma_is_decided_by_the_table():
    text = "Parameter;Ergebnis;Einheit\nEisen;0,31;mg/l\nChlorid;1.234;mg/l\n"
    assert found(text) == {("", "iron", None): 0.31, ("", "chloride", None): 1234.0}


def test_a_list_of_samples_says_more_of_them():
    text = (
        "Sample ID,Site,Collected,Matrix\nL-1,Upper well,2026-05-03,Groundwater\n"
        "L-2,Lower well,2026-05-04,Groundwater\n"
        "Parameter,Units,L-1,L-2\nIron,mg/L,0.3,0.5\n"
    )
    report = read(text)
    assert [(s.id, s.site, str(s.collected)) for s in report.samples] == [
        ("L-1", "Upper well", "2026-05-03"),
        ("L-2", "Lower well", "2026-05-04"),
    ]


def test_statistics_are_no_results():
    text = "Sample,Iron (mg/L),Lead (µg/L)\nW-1,0.3,<1\nW-2,0.5,2\nAverage,0.4,1.5\nMaximum,0.5,2\nMCL,0.3,15\n"
    assert {key[0] for key in found(text)} == {"W-1", "W-2"}


def test_ranges_are_statistics():
    report = wellchem.read_batch([b"Analyte,Result,Units\nIron,0.2-0.5,mg/L\nLead,4,ug/L\n"])
    assert list(report.unread["reason"]) == ["statistic"]


def test_explanation_tells_every_column_and_why():
    explanation = read("Analyte,Result,Units,MCL,Foo\nIron,0.3,mg/L,0.3,x\n").explanation
    assert [(c.role, c.column) for c in explanation.tables[0].columns] == [
        ("name", 1),
        ("value", 2),
        ("unit", 3),
        ("limit", 4),
        ("unassigned", 5),
    ]
    assert all(column.why for column in explanation.tables[0].columns)


def test_a_list_of_abbreviations_is_no_list_of_results():
    report = wellchem.read_batch([b"ND,Not Detected\nCU,Color Units\nNR,Not Required\nNA,Not Applicable\n"])
    assert len(report.results) == 0


def test_missing_marks_are_no_sodium():
    report = wellchem.read_batch(
        [b"file,variable,type,unit,error\na,Ca,double,mg/L,0.05\na,date,text,NA,NA\nb,x,NA,NA,2\n"]
    )
    assert "sodium" not in set(report.results["analyte"])


def test_symbols_in_capitals_head_a_wide_table():
    text = "WELL,DATE,CA,MG,NA,K,U\nW-1,2026-05-03,40,12,9,1.1,0.002\n"
    assert {key[1] for key in found(text)} == {"calcium", "magnesium", "sodium", "potassium", "uranium"}


def test_a_ticked_box_tells_the_word():
    text = "Test,Result,\nTotal coliform,[ ] Present,[X] Absent\nE. coli,[x] Absent,[ ] Present\nIron,0.3 mg/L,\n"
    report = read(text)
    assert [(r.analyte, r.censoring) for r in report.samples[0].results] == [
        ("total_coliform", "absent"),
        ("e_coli", "absent"),
        ("iron", "none"),
    ]


def test_columns_that_could_be_results_beside_the_result_are_unread_not_layout():
    report = wellchem.read(
        b"Analyte,Result 1,Result 2,Units,RL,Lab calc\nIron,0.3,0.4,mg/L,0.05,7\nZinc,0.1,0.2,mg/L,0.05,8\n",
        format="delimited",
    )
    results = report.samples[0].results
    assert [(result.analyte, result.value) for result in results] == [("iron", 0.3), ("zinc", 0.1)]
    assert [(unread.reason, unread.text) for unread in report.unread] == [
        ("ambiguous_column", "0.4 | 7"),
        ("ambiguous_column", "0.2 | 8"),
    ]
    assert report.explanation.balanced


def test_of_two_columns_called_result_one_is_read_and_said_to_be_supposed():
    report = wellchem.read(b"Analyte,Result,Result,Units\nIron,0.3,0.4,mg/L\nZinc,0.1,0.2,mg/L\n", format="delimited")
    assert [result.value for result in report.samples[0].results] == [0.3, 0.1]
    assert all("column=Result" in map(str, result.assumptions) for result in report.samples[0].results)
    assert [(unread.reason, unread.text) for unread in report.unread] == [
        ("ambiguous_column", "0.4"),
        ("ambiguous_column", "0.2"),
    ]
