"""Consultants' and data offices' tables: samples over repeated columns, marks under headings of their own, results replaced.

Every site, laboratory and number is invented; each meaning is typed by hand. Each layout failed when first read, and its
docstring says what mended it.
"""

from __future__ import annotations

from openpyxl import Workbook
from reports_catalog import Layout, Water
from reports_written import N_OF_NO3, PCI, U, lines, means, saved


def layout(name: str, rows, *waters: Water, delimiter: str = ",", **more) -> Layout:
    return Layout(f"csv_{name}", "csv", lines(rows, delimiter).encode(), waters, **more)


def book(name: str, sheets, *waters: Water, **more) -> Layout:
    made = Workbook()
    made.remove(made.active)
    for title, rows in sheets:
        sheet = made.create_sheet(title)
        for row in rows:
            sheet.append(row)
    return Layout(f"xlsx_{name}", "xlsx", saved(made), waters, **more)


def names_and_days_above() -> Layout:
    """Result, mark and limit under each of two wells, whose names and days stand in labelled rows above.

    The second well's results were unread, and the first's were of a sample without a name: rows above a header that
    repeats its word for results now name its samples.
    """
    rows = [
        ("Location", "", "MW-1", "", "", "MW-2", "", ""),
        ("Date", "", "5/1/2026", "", "", "5/2/2026", "", ""),
        ("Analyte", "Unit", "Result", "Q", "RL", "Result", "Q", "RL"),
        ("Benzene", "ug/L", "0.50", "U", "0.50", "3.1", "", "0.50"),
        ("MTBE", "ug/L", "12", "", "1.0", "1.0", "U", "1.0"),
        ("Toluene", "ug/L", "0.31", "J", "0.50", "0.50", "U", "0.50"),
    ]
    mtbe = "methyl_tert_butyl_ether"
    one = (means("benzene", 0, 0.5 * U), means(mtbe, 12 * U), means("toluene", 0, 0.5 * U))
    two = (means("benzene", 3.1 * U), means(mtbe, 0, 1 * U), means("toluene", 0, 0.5 * U))
    waters = (Water("MW-1", "MW-1", "2026-05-01", one), Water("MW-2", "MW-2", "2026-05-02", two))
    return layout("names_and_days_above", rows, *waters, strict=True)


def two_boreholes_beside() -> Layout:
    """Two tables side by side, each under the name of its borehole and its day in words.

    Both were read as one water: tables that list the same analytes take the titles above them as their samples.
    """
    rows = [
        ("Farm supply, two boreholes",),
        ("Borehole A", None, None, None, None, "Borehole B"),
        ("Sampled 2026-03-01", None, None, None, None, "Sampled 2026-03-02"),
        ("Determinand", "Result", "Units", None, None, "Determinand", "Result", "Units"),
        ("Iron", 0.3, "mg/L", None, None, "Iron", "<0.02", "mg/L"),
        ("Nitrate as NO3", 44.3, "mg/L", None, None, "Nitrate as NO3", 12.0, "mg/L"),
        ("pH", 7.4, None, None, None, "pH", 7.0, None),
    ]
    one = (means("iron", 0.3), means("nitrate", 44.3 * N_OF_NO3), means("ph", 7.4))
    two = (means("iron", 0, 0.02), means("nitrate", 12 * N_OF_NO3), means("ph", 7.0))
    waters = (
        Water("Borehole A", "Borehole A", "2026-03-01", one),
        Water("Borehole B", "Borehole B", "2026-03-02", two),
    )
    return book("two_boreholes_beside", [("Farm", rows)], *waters, strict=True)


def units_over_groups() -> Layout:
    """One unit over each group of symbols, uranium's among them.

    Uranium's micrograms were read as milligrams: a heading that is only a letter takes the unit over its group too.
    """
    rows = [
        (None, None, "mg/L", None, None, "µg/L", None, None, "CFU/100 mL", None),
        ("Site", "Date", "Ca", "Cl", "NO3-N", "As", "Pb", "U", "TC", "E. coli"),
        ("Tap A", "2026-05-05", 44, 12, 1.2, "<1", 2.2, 5.5, "<1", "<1"),
        ("Tap B", "2026-05-06", 61, 8, "<0.1", 14, "<1", 31, 12, "<1"),
    ]
    keys = ("calcium", "chloride", "nitrate", "arsenic", "lead", "uranium", "total_coliform", "e_coli")
    one = ((44,), (12,), (1.2,), (0, U), (2.2 * U,), (5.5 * U,), (0, 0), (0, 0))
    two = ((61,), (8,), (0, 0.1), (14 * U,), (0, U), (31 * U,), (12,), (0, 0))
    waters = [
        Water(id, id, day, tuple(means(key, *bounds) for key, bounds in zip(keys, told, strict=True)))
        for id, day, told in (("Tap A", "2026-05-05", one), ("Tap B", "2026-05-06", two))
    ]
    return book("units_over_groups", [("W", rows)], *waters, strict=True)


def marks_under_another_word() -> Layout:
    """Signs and letters in a column headed `Code 2`, which no row of the vocabulary knows.

    `<` beside 10 was passed over, so that 10 was read as found: a column of nothing but signs and marks is one of marks,
    whatever its heading.
    """
    rows = [
        ("station", "date", "parameter", "value", "unit", "code 2"),
        ("K-40", "2026-03-09", "Sulfate", "31.2", "mg/L", ""),
        ("K-40", "2026-03-09", "Iron, dissolved", "10", "ug/L", "<"),
        ("K-40", "2026-03-09", "Arsenic, dissolved", "1.4", "ug/L", "E"),
        ("K-40", "2026-03-09", "E. coli", "2420", "MPN/100 mL", ">"),
    ]
    items = (
        means("sulfate", 31.2), means("iron", 0, 0.01, "dissolved"), means("arsenic", 1.4 * U, fraction="dissolved"),
        means("e_coli", 2420, float("inf")),
    )  # fmt: skip
    return layout("marks_under_another_word", rows, Water("K-40", "K-40", "2026-03-09", items))


def which_is_reportable() -> Layout:
    """One analyte run twice, and a column says which of the two is to be reported.

    Both were read as results: the other one is now rejected, as is a result that its status calls superseded.
    """
    head = (
        "FIELD_ID", "SAMP_DATE", "SAMP_TYPE", "FRACTION", "DILUTION", "CAS", "CHEM_NAME", "RESULT_NUM", "UNITS", "DETECT_FLAG",
        "LAB_QUAL", "RPT_LIMIT", "MDL", "REPORTABLE",
    )  # fmt: skip
    sample = ("PW-12-0426", "04/14/2026", "N", "T")
    rows = [
        head,
        (*sample, "1", "7440-38-2", "Arsenic", "12.4", "ug/L", "Y", "", "1.0", "0.25", "Y"),
        (*sample, "1", "7439-92-1", "Lead", "1.0", "ug/L", "N", "U", "1.0", "0.18", "Y"),
        (*sample, "1", "7439-96-5", "Manganese", "1840", "ug/L", "Y", "E", "2.0", "0.5", "N"),
        (*sample, "20", "7439-96-5", "Manganese", "2110", "ug/L", "Y", "D", "40", "10", "Y"),
        ("MB-22", "04/14/2026", "MB", "T", "1", "7440-38-2", "Arsenic", "1.0", "ug/L", "N", "U", "1.0", "0.25", "Y"),
    ]
    items = (
        means("arsenic", 12.4 * U, fraction="total"), means("lead", 0, 1 * U, "total"),
        means("manganese", 2.11, fraction="total"),
    )  # fmt: skip
    return layout(
        "which_is_reportable", rows, Water("PW-12-0426", "", "2026-04-14", items), quality_control=1,
        extra_ok=frozenset({"manganese"}),
    )  # fmt: skip


def superseded() -> Layout:
    """A result that another one replaced, and one that was cancelled (see `which_is_reportable`)."""
    rows = [
        ("sample_number", "collected", "component", "result", "result_status", "unit", "reporting_limit"),
        ("771", "2026-02-02", "Nitrate as N", "3.1", "Final", "mg/L", "0.1"),
        ("771", "2026-02-02", "Nitrate as N", "9.9", "Superseded", "mg/L", "0.1"),
        ("771", "2026-02-02", "Chloride", "8", "Final", "mg/L", "1"),
    ]
    items = (means("nitrate", 3.1), means("chloride", 8))
    return layout("superseded", rows, Water("771", "", "2026-02-02", items), extra_ok=frozenset({"nitrate"}))


def two_laboratories() -> Layout:
    """The same sample at two laboratories, a column each; both were unread, for `Lab A` named no sample."""
    rows = [
        ("Parameter", "Units", "Lab A", "Lab B"),
        ("Nitrate as N", "mg/L", "4.1", "4.4"),
        ("Arsenic", "ug/L", "<1", "0.6"),
        ("Gross alpha", "pCi/L", "3.0", "<2"),
    ]
    one = (means("nitrate", 4.1), means("arsenic", 0, U), means("gross_alpha", 3 * PCI))
    two = (means("nitrate", 4.4), means("arsenic", 0.6 * U), means("gross_alpha", 0, 2 * PCI))
    return layout("two_laboratories", rows, Water("Lab A", "", "", one), Water("Lab B", "", "", two))


def wells_and_summary() -> Layout:
    """A sheet for each well, a summary that prints the same results with the units in its headings, standards, a legend.

    Each result was read twice: a unit in brackets behind a name is the unit beside it, so that the two are one.
    """

    def well(id, day, *results):
        return [("Well", id), ("Sampled", day), ("Analyte", "Result", "Unit", "RL"), *results]

    first = (("Calcium", 55, "mg/L", 0.5), ("Iron", 0.31, "mg/L", 0.02), ("Nitrate-N", "<0.1", "mg/L", 0.1))
    second = (("Calcium", 81, "mg/L", 0.5), ("Iron", "<0.02", "mg/L", 0.02), ("Nitrate-N", 12.4, "mg/L", 0.1))
    summary = [
        ("Well", "Sampled", "Calcium (mg/L)", "Iron (mg/L)", "Nitrate-N (mg/L)"),
        ("BX-1", "2026-05-01", 55, 0.31, "<0.1"),
        ("BX-2", "2026-05-02", 81, "<0.02", 12.4),
    ]
    limits = [("Parameter", "Unit", "Health limit", "Aesthetic objective"), ("Nitrate-N", "mg/L", 10, ""), ("Iron", "mg/L", "", 0.3)]  # fmt: skip
    sheets = [
        ("Summary", summary), ("BX-1", well("BX-1", "2026-05-01", *first)), ("BX-2", well("BX-2", "2026-05-02", *second)),
        ("Standards", limits), ("Legend", [("Code", "Meaning"), ("<", "less than reporting limit"), ("RL", "reporting limit")]),
    ]  # fmt: skip
    one = (means("calcium", 55), means("iron", 0.31), means("nitrate", 0, 0.1))
    two = (means("calcium", 81), means("iron", 0, 0.02), means("nitrate", 12.4))
    waters = (Water("BX-1", "BX-1", "2026-05-01", one), Water("BX-2", "BX-2", "2026-05-02", two))
    return book("wells_and_summary", sheets, *waters)


def codes_in_capitals() -> Layout:
    """A serial list with parameter codes in capitals as headings, remarks before or behind: nothing of it was read."""
    rows = [
        ("RECORD_NO", "STAID", "DATES", "TIMES", "P00945", "R01046", "P01046", "R01000", "P01000"),
        ("42600101", "412233070112201", "20260309", "1010", "31", "<", "4", "", "2.2"),
        ("42600102", "412233070112202", "20260310", "0930", "12", "", "61", "<", "1"),
    ]
    one = (means("sulfate", 31, fraction="dissolved"), means("iron", 0, 4 * U, "dissolved"), means("arsenic", 2.2 * U, fraction="dissolved"))  # fmt: skip
    two = (means("sulfate", 12, fraction="dissolved"), means("iron", 61 * U, fraction="dissolved"), means("arsenic", 0, U, "dissolved"))  # fmt: skip
    waters = (
        Water("42600101", "412233070112201", "2026-03-09", one),
        Water("42600102", "412233070112202", "2026-03-10", two),
    )
    return layout("codes_in_capitals", rows, *waters)


def purposes_in_codes() -> Layout:
    """Purposes of samples in a data office's own codes.

    The field duplicate (FDUP) and the trip blank (TRIP) were routine: their codes are rows of words now.
    """
    head = (
        "Sample ID",
        "Location",
        "Sample Date",
        "Parameter",
        "CAS",
        "Result",
        "Lab Flag",
        "Units",
        "RDL",
        "MDL",
        "Fraction",
        "Sample Purpose",
    )
    well, manganese, nitrate = ("Barn well", "8/14/2026"), ("Manganese", "7439-96-5"), ("Nitrate (as N)", "14797-55-8")
    rows = [
        head,
        ("GW-7", *well, *manganese, "412", "", "ug/L", "5", "1.2", "Dissolved", "REG"),
        ("GW-7", *well, *manganese, "430", "", "ug/L", "5", "1.2", "Total", "REG"),
        ("GW-7", *well, *nitrate, "3.3", "", "mg/L", "0.1", "0.02", "", "REG"),
        ("GW-7-D", *well, *nitrate, "3.4", "", "mg/L", "0.1", "0.02", "", "FDUP"),
        ("TB-0814", "", "8/14/2026", "Benzene", "71-43-2", "0.5", "U", "ug/L", "0.5", "0.1", "", "TRIP"),
    ]
    items = (
        means("manganese", 0.412, fraction="dissolved"), means("manganese", 0.43, fraction="total"), means("nitrate", 3.3),
    )  # fmt: skip
    return layout(
        "purposes_in_codes", rows, Water("GW-7", "Barn well", "2026-08-14", items), strict=True, quality_control=2
    )


def bench_sheet() -> Layout:
    """A chemist's own sheet: samples among a standard, a recovery, differences, limits of detection.

    The standard, the differences and the limits were waters of the household.
    """
    rows = [
        ("Sample Name", "Chloride mg/L", "Nitrate-N mg/L", "pH"),
        ("Well 4", "22", "3.1", "7.0"), ("Well 4 (duplicate)", "22", "3.0", "7.0"), ("Blank", "<1", "<0.1", "5.8"),
        ("Check std 25 ppm", "24.8", "", ""), ("Spike rec. %", "98", "101", ""), ("RPD %", "0.0", "3.3", "0.0"),
        ("Well 5", "61", "<0.1", "7.4"), ("Tap, 50% blend", "40", "1.5", "7.2"), ("Average", "42", "1.6", "7.2"), ("Method LOD", "1", "0.1", ""), ("MCL", "250", "10", ""),
    ]  # fmt: skip
    four = (means("chloride", 22), means("nitrate", 3.1), means("ph", 7.0))
    five = (means("chloride", 61), means("nitrate", 0, 0.1), means("ph", 7.4))
    blend = (means("chloride", 40), means("nitrate", 1.5), means("ph", 7.2))
    waters = (Water("Well 4", "", "", four), Water("Well 5", "", "", five), Water("Tap, 50% blend", "", "", blend))
    return layout("bench_sheet", rows, *waters, strict=True, quality_control=7)


def control_before_samples() -> Layout:
    """Quality control in running lines before the household's results, under titles.

    The household's lead was the blank's, and the blank's numbers vanished with its title.
    """
    text = """QUALITY ASSURANCE
Method Blank:   Lead < 0.5 ug/L    Copper < 1 ug/L
Lab control:    Lead 20.4 ug/L (102 %)

SAMPLE RESULTS   Tap 1, drawn 11/25/2026 06:10, first draw
Lead            7.7 ug/L
Copper          410 ug/L
"""
    items = (means("lead", 0.0077), means("copper", 0.41))
    return Layout(
        "txt_control_before_samples", "txt", text.encode(), (Water("", "", "2026-11-25", items),), strict=True, unread=2
    )


LAYOUTS = (
    bench_sheet,
    control_before_samples,
    purposes_in_codes,
    names_and_days_above,
    two_boreholes_beside,
    units_over_groups,
    marks_under_another_word,
    which_is_reportable,
    superseded,
    two_laboratories,
    wells_and_summary,
    codes_in_capitals,
)
