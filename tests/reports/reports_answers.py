"""Layouts that say findings in words: detection conditions, answers, letters; records inside cells, units midway.

Words of the detection conditions are those of the WQX domain ResultDetectionCondition, remark codes those of the USGS NWIS.
Every laboratory, site and number is invented; each meaning is typed by hand. What failed first, before the reading was
mended: all but `units_at_the_foot` and `narrative` (a condition took a number at its word or lost it, records and questions vanished,
lead in µg/L was read as mg/L beneath the second row of units, paragraphs of several sentences were unread).
"""

from __future__ import annotations

from reportlab.lib.pagesizes import letter
from reports_catalog import INF, Layout, Water
from reports_exports import one
from reports_pdf import Paper
from reports_written import NAN, U, lines, means


def conditions() -> Layout:
    """Detection conditions of the water quality exchange, with and without a number and a limit beside them."""
    head = (
        "MonitoringLocationIdentifier", "ActivityStartDate", "ActivityTypeCode", "CharacteristicName", "ResultDetectionConditionText", "ResultMeasureValue",
        "ResultMeasure/MeasureUnitCode", "DetectionQuantitationLimitTypeName", "DetectionQuantitationLimitMeasure/MeasureValue", "DetectionQuantitationLimitMeasure/MeasureUnitCode",
    )  # fmt: skip
    table = (
        ("Iron", "Present Above Quantification Limit", "", "", "", "", "", means("iron", 0, INF)),
        ("Escherichia coli", "Present Above Quantification Limit", "", "", "", "", "", means("e_coli", 1, INF)),
        ("Lead", "Not Present", "", "", "", "", "", means("lead", 0, NAN)),
        ("Enterococcus", "Not Present", "", "", "", "", "", means("enterococci", 0, 0)),
        ("Copper", "Systematic Contamination", "0.2", "mg/l", "", "", "", means("copper", 0, 0.2, flag="B")),
        ("Boron", "Value affected by contamination", "30", "ug/l", "", "", "", means("boron", 0, 0.03, flag="B")),
        ("Manganese", "Detected Not Quantified", "", "", "", "", "", means("manganese", 0, NAN)),
        ("Arsenic", "Detected Not Quantified", "", "", "Lower Quantitation Limit", "5", "ug/l", means("arsenic", 0, 0.005)),
        ("Selenium", "Present Above Quantification Limit", "", "", "Lower Quantitation Limit", "5", "ug/l", means("selenium", 0.005, INF)),
        ("Barium", "Present Below Quantification Limit", "", "", "Lower Quantitation Limit", "0.05", "mg/l", means("barium", 0, 0.05)),
        ("Lithium", "Not Detected at Detection Limit", "", "", "Method Detection Level", "0.02", "mg/l", means("lithium", 0, 0.02, flag="U")),
        ("Chloride", "Value Decensored", "3", "mg/l", "", "", "", means("chloride", 3)),
    )  # fmt: skip
    rows = [head, *(("FEN-7", "2026-05-01", "Sample-Routine", *row[:7]) for row in table)]
    rows.append(("FEN-7", "2026-05-01", "Sample-Routine", "Zinc", "Systematic Contamination", "", "", "", "", ""))
    return one(
        "csv_conditions", lines(rows), Water("FEN-7", "", "2026-05-01", tuple(row[7] for row in table)), unread=1
    )


def presence_remarks() -> Layout:
    """Remark M of the national database, presence verified and not quantified, with an empty value or a zero."""
    head = ("agency_cd", "site_no", "sample_dt", "parm_cd", "remark_cd", "result_va", "rpt_lev_va")
    rows = [
        head,
        ("XX", "400199", "2020-01-02", "01045", "M", "", "10"),
        ("XX", "400199", "2020-01-02", "01049", "M", "", ""),
        ("XX", "400199", "2020-01-02", "31625", "M", "", ""),
        ("XX", "400199", "2020-01-02", "01040", "M", "0", "1.6"),
        ("XX", "400199", "2020-01-02", "00940", "", "12.1", ""),
        ("XX", "400199", "2020-01-02", "01056", "<", "4", ""),
        ("XX", "400199", "2020-01-02", "01106", "V", "22", ""),
    ]
    items = (
        means("iron", 0, NAN, "total_recoverable", name="01045"), means("lead", 0, NAN, "dissolved", name="01049"), means("fecal_coliform", 1, INF),
        means("copper", 0, NAN, "dissolved", name="01040"), means("chloride", 12.1, None, "dissolved"), means("manganese", 0, 4 * U, "dissolved"), means("aluminum", 0, 22 * U, "dissolved", flag="B"),
    )  # fmt: skip
    return one("rdb_presence_remarks", lines(rows, "\t", "\n"), Water("400199", "", "2020-01-02", items), suffix="rdb")


def records_in_cells() -> Layout:
    """A program's export: a column of records as JSON text beside the results of some samples. They are unread, not lost."""
    rows = [
        ("sample_id", "collected", "analyte", "value", "unit", "payload"),
        ("J-1", "2026-05-02", "Iron", "0.44", "mg/L", '{"lead": {"value": 0.021, "unit": "mg/L"}}'),
        ("J-1", "2026-05-02", "Zinc", "0.12", "mg/L", ""),
        ("J-2", "2026-05-03", "Iron", "0.05", "mg/L", '[{"analyte": "copper", "value": 1.9}]'),
    ]
    waters = (
        Water("J-1", "", "2026-05-02", (means("iron", 0.44), means("zinc", 0.12))),
        Water("J-2", "", "2026-05-03", (means("iron", 0.05),)),
    )
    return one("csv_records_in_cells", lines(rows), waters, unread=2)


def units_midway() -> Layout:
    """A row of units under the header, and another one midway from which on the metals are in micrograms."""
    rows = [
        ("Well", "pH", "Calcium", "Lead", "Arsenic"), ("Unit", "", "mg/L", "mg/L", "mg/L"),
        ("M-1", "7.1", "40", "0.002", "<0.001"), ("M-2", "7.2", "41", "0.003", "0.004"),
        ("Unit", "", "mg/L", "µg/L", "µg/L"), ("M-3", "7.0", "39", "2", "<1"), ("M-4", "7.3", "44", "5", "12"),
    ]  # fmt: skip
    table = (
        ("M-1", 7.1, 40, 0.002, (0, 0.001)), ("M-2", 7.2, 41, 0.003, (0.004, 0.004)), ("M-3", 7.0, 39, 0.002, (0, 0.001)),
        ("M-4", 7.3, 44, 0.005, (0.012, 0.012)),
    )  # fmt: skip
    waters = tuple(
        Water(id, "", "", (means("ph", ph), means("calcium", ca), means("lead", pb), means("arsenic", *arsenic)))
        for id, ph, ca, pb, arsenic in table
    )
    return one("csv_units_midway", lines(rows), waters)


def units_between() -> Layout:
    """Names down a column and no column of units: a title beside its group's unit, then a unit by itself."""
    rows = [
        ("Test", "Found"), ("Major ions", "mg/L"), ("Calcium", "61"), ("Sodium", "14.2"), ("Trace metals", "µg/L"),
        ("Lead", "3.1"), ("Arsenic", "<0.5"), ("", "ng/L"), ("PFOS", "4.4"), ("PFOA", "<2"),
    ]  # fmt: skip
    items = (
        means("calcium", 61), means("sodium", 14.2), means("lead", 3.1 * U), means("arsenic", 0, 0.5 * U),
        means("pfos", 4.4e-6), means("pfoa", 0, 2e-6),
    )  # fmt: skip
    return one("csv_units_between", lines(rows), Water("", "", "", items))


def units_at_the_foot() -> Layout:
    """A sample a row and the units in the last row."""
    rows = [("Well", "Calcium", "Lead"), ("F-1", "40", "2"), ("F-2", "41", "<0.5"), ("Units", "mg/L", "µg/L")]
    waters = (
        Water("F-1", "", "", (means("calcium", 40), means("lead", 2 * U))),
        Water("F-2", "", "", (means("calcium", 41), means("lead", 0, 0.5 * U))),
    )
    return one("csv_units_at_the_foot", lines(rows), waters)


def questions() -> Layout:
    """A household's questionnaire form: questions answered yes and no, a class in words that is no result."""
    rows = [
        ("Sample ID", "Q-31"), ("Date sampled", "2026-06-02"), ("Coliforms detected?", "Yes"), ("E. coli detected?", "No"),
        ("Nitrate (mg/L as N)", "3.2"), ("Hardness class", "hard"),
    ]  # fmt: skip
    items = (means("total_coliform", 1, INF), means("e_coli", 0, 0), means("nitrate", 3.2))
    return one("csv_questions", lines(rows), Water("Q-31", "", "2026-06-02", items), unread=1)


def answers_in_lines() -> Layout:
    """Labels and answers in lines of text."""
    text = (
        "Sample ID: Q-32\nDate collected: 2026-06-03\nHardness class: hard\nIron: 0.3 mg/L\nColiform bacteria present: yes\n"
        "E. coli present: no\nEnterococci: none\n"
    )
    items = (means("iron", 0.3), means("total_coliform", 1, INF), means("e_coli", 0, 0), means("enterococci", 0, 0))
    return one("txt_answers_in_lines", text, Water("Q-32", "", "2026-06-03", items), suffix="txt", unread=1)


LETTER = """\
We have finished the tests of the sample from your well, which we numbered L-204. Your nitrate
result was 4.2 mg/L as N, which is below the standard of 10 mg/L.
Your arsenic level was 12 µg/L. This is above the limit of
10 µg/L. Lead was not detected (reporting limit 1 µg/L). The iron was 0.8 mg/L and the
manganese was 0.12 mg/L. Your water has a pH of 6.4. Your sample
tested negative for E. coli. Nitrate in most wells of the county is 2 mg/L.
Last year your arsenic was 11 µg/L.
"""
TOLD = (
    means("nitrate", 4.2), means("arsenic", 0.012), means("lead", 0, 0.001), means("iron", 0.8), means("manganese", 0.12),
    means("ph", 6.4), means("e_coli", 0, 0),
)  # fmt: skip


def letter_of_sentences() -> Layout:
    """A letter whose sentences run over the lines; what others' water has and last year's result are no results."""
    text = f"Dear well owner\n\n{LETTER}\nYours, the laboratory\n"
    return Layout("txt_letter_of_sentences", "txt", text.encode(), (Water("", "", "", TOLD),), unread=2)


def letter_on_paper() -> Layout:
    """The same sentences on a page."""
    paper = Paper(letter, points=11, lead=15)
    paper.text("Harl Brook Laboratory", bold=True)
    paper.y -= 20
    for line in LETTER.splitlines():
        paper.text(line)
    paper.y -= 20
    paper.text("Yours, the laboratory")
    return Layout("pdf_letter_on_paper", "pdf", paper.done(), (Water("", "", "", TOLD),), unread=2)


def answers_across() -> Layout:
    """A sample a row, and of the organisms "yes" and "no"; a well that has both absent is a sample too."""
    rows = [
        ("Well", "Total coliform", "E. coli", "Nitrate-N mg/L"), ("A-1", "Yes", "No", "3"), ("A-2", "No", "No", "<0.1"),
        ("A-3", "Present", "Absent", "2"),
    ]  # fmt: skip
    waters = (
        Water("A-1", "", "", (means("total_coliform", 1, INF), means("e_coli", 0, 0), means("nitrate", 3))),
        Water("A-2", "", "", (means("total_coliform", 0, 0), means("e_coli", 0, 0), means("nitrate", 0, 0.1))),
        Water("A-3", "", "", (means("total_coliform", 1, INF), means("e_coli", 0, 0), means("nitrate", 2))),
    )
    return one("csv_answers_across", lines(rows), waters)


def detected_flags() -> Layout:
    """A column that says whether something was detected, of organisms without a number."""
    rows = [
        ("Analyte", "Detected?", "Result", "Units"), ("Iron", "Yes", "0.4", "mg/L"), ("Lead", "No", "0.001", "mg/L"),
        ("E. coli", "No", "", ""), ("Total coliform", "Yes", "", ""),
    ]  # fmt: skip
    items = (means("iron", 0.4), means("lead", 0, 0.001), means("e_coli", 0, 0), means("total_coliform", 1, INF))
    return one("csv_detected_flags", lines(rows), Water("", "", "", items))


def narrative() -> Layout:
    """A narrative on blanks and recoveries before the table, in sentences: none of it is the household's."""
    text = (
        "Case Narrative\nThe recovery of lead in the laboratory control sample was 112 percent. The method blank for zinc was\n"
        "0.02 mg/L. Iron in the field blank was 0.1 mg/L and copper was 0.3 mg/L in the rinsate. Results follow.\n\n"
        "Sample ID: NV-6\nAnalyte,Result,Units\nIron,0.4,mg/L\nLead,0.002,mg/L\n"
    )
    return one(
        "txt_narrative", text, Water("NV-6", "", "", (means("iron", 0.4), means("lead", 0.002))), suffix="txt", unread=1
    )


LAYOUTS = (
    answers_across, detected_flags, narrative,
    conditions, presence_remarks, records_in_cells, units_midway, units_between, units_at_the_foot, questions,
    answers_in_lines, letter_of_sentences, letter_on_paper,
)  # fmt: skip
