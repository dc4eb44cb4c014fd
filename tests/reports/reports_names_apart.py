"""Layouts whose difficulty is who and what is meant: names over two lines, names of samples, units left out.

Every laboratory, site and number is invented; each meaning is typed by hand. Before the reading was mended eleven of
these failed: "Nitrite as N" beneath "Nitrate plus" was read as nitrite, a fraction in a row of its own was lost and
passed to the next analyte, triplets under "Name" took one another's units, PFAS without a unit was read as mg/L.
"""

from __future__ import annotations

from reportlab.lib.pagesizes import letter
from reports_catalog import INF, Layout, Water
from reports_draw import absent, fill, found, less, present
from reports_exports import one
from reports_pdf import Paper
from reports_written import NAN, U, lines, means

AT = (48, 230, 300, 370, 440)
HEAD = ("Analyte", "Result", "Units", "RL", "Method")


def names_over_lines() -> Layout:
    """No rules, and every line as far from the next: names, fractions and methods go on where a new row could stand."""
    paper = Paper(letter)
    paper.row((48, 300), ("Sample ID: NW-118", "Collected: 2026-05-04"))
    paper.row(AT, HEAD, bold=True)
    printed = (
        (("Nitrogen, Nitrate plus", "", "", "", "EPA"),),
        (("Nitrite as N", "3.1", "mg/L", "0.1", "353.2"),),
        (("Iron, total", "0.42", "mg/L", "0.05", "EPA"), found("iron", 0.42, fraction="total_recoverable")),
        (("recoverable", "", "", "", "200.7"),),
        (("Lead", "", "", "", ""),),
        (("(dissolved)", "0.002", "mg/L", "0.001", "EPA 200.8"), found("lead", 0.002, fraction="dissolved")),
        (("Zinc", "0.02", "mg/L", "0.01", "EPA 200.7"), found("zinc", 0.02)),
    )
    items = (means("nitrate_plus_nitrite", 3.1), *fill(paper, AT, printed))
    return Layout("pdf_names_over_lines", "pdf", paper.done(), (Water("NW-118", "", "2026-05-04", items),))


def units_over_lines() -> Layout:
    """A narrow column of units: "per" on one line and "100 mL" on the next, without a name beside it."""
    paper = Paper(letter)
    paper.row((48, 300), ("Sample ID: NW-119", "Collected: 2026-05-04"))
    paper.row(AT, HEAD, bold=True)
    printed = (
        (("Total Coliform", "Present", "per", "1", "SM"), present("total_coliform")),
        (("Bacteria", "", "100 mL", "", "9223 B"),),
        (("E. coli", "Absent", "per", "1", "SM"), absent("e_coli")),
        (("", "", "100 mL", "", "9223 B"),),
        (("Nitrate as N", "<0.1", "mg/L", "0.1", "EPA 300.0"), less("nitrate", 0.1)),
    )
    items = fill(paper, AT, printed)
    return Layout("pdf_units_over_lines", "pdf", paper.done(), (Water("NW-119", "", "2026-05-04", items),))


def fractions_under_names() -> Layout:
    """Rows of "total" and "dissolved" under a row that has the analyte's name alone."""
    rows = [
        ("Analyte", "Result", "Unit"), ("Iron", "", ""), ("Total", "0.42", "mg/L"), ("Dissolved", "0.05", "mg/L"),
        ("Zinc", "0.1", "mg/L"), ("Manganese", "", ""), ("- total", "0.2", "mg/L"), ("- dissolved", "<0.01", "mg/L"),
        ("Chloride", "31", "mg/L"),
    ]  # fmt: skip
    items = (
        means("iron", 0.42, None, "total"), means("iron", 0.05, None, "dissolved"), means("zinc", 0.1), means("manganese", 0.2, None, "total"),
        means("manganese", 0, 0.01, "dissolved"), means("chloride", 31),
    )  # fmt: skip
    return one("csv_fractions_under_names", lines(rows), Water("", "", "", items))


TRIPLETS = (
    ("pH", "7.1", "", "Iron", "0.4", "mg/L", "Lead", "2", "µg/L"),
    ("Calcium", "40", "mg/L", "Manganese", "0.02", "mg/L", "Arsenic", "<1", "µg/L"),
    ("Sodium", "14", "mg/L", "Zinc", "0.1", "mg/L", "", "", ""),
)
IN_TRIPLETS = (
    means("ph", 7.1), means("iron", 0.4), means("lead", 2 * U), means("calcium", 40), means("manganese", 0.02),
    means("arsenic", 0, U), means("sodium", 14), means("zinc", 0.1),
)  # fmt: skip


def triplets() -> Layout:
    """Name, value and unit three times across, and the word over the names could head anything."""
    text = lines([("Name", "Value", "Unit") * 3, *TRIPLETS])
    return one("csv_triplets", text, Water("", "", "", IN_TRIPLETS))


def triplets_on_paper() -> Layout:
    """The same on a page, nothing over the names."""
    paper = Paper(letter, points=8)
    paper.text("Sample ID: TR-3   Collected: 2026-05-04")
    at = (40, 120, 160, 220, 300, 340, 400, 480, 520)
    paper.row(at, ("", "Conc.", "Unit") * 3, bold=True)
    for row in TRIPLETS:
        paper.row(at, row)
    return Layout("pdf_triplets", "pdf", paper.done(), (Water("TR-3", "", "2026-05-04", IN_TRIPLETS),))


def coded_headings() -> Layout:
    """A data file's headings: analyte, form or fraction, and the unit without its stroke."""
    head = ("WELL_ID", "SAMP_DATE", "PH", "HARD_MGL", "NO3_N_MGL", "FE_TOT_UGL", "MN_DISS_UGL", "CL_MGL", "COND_USCM", "TURB_NTU", "TOTALK_MGL", "RN_PCIL")  # fmt: skip
    rows = [
        head,
        ("A1", "2024-03-22", "7.2", "210", "3.1", "340", "25", "12", "480", "0.4", "180", "1400"),
        ("A2", "2024-03-22", "7.0", "180", "<0.1", "20", "<5", "9", "400", "0.2", "150", "<100"),
    ]

    def items(ph, hard, n, fe, mn, cl, cond, turb, alk, rn):
        return (
            means("ph", ph), means("total_hardness", hard), means("nitrate", *n), means("iron", fe, None, "total"), means("manganese", *mn, "dissolved"),
            means("chloride", cl), means("specific_conductance", cond), means("turbidity", turb), means("total_alkalinity", alk), means("radon_222", *rn),
        )  # fmt: skip

    first = items(7.2, 210, (3.1, None), 0.34, (0.025, None), 12, 480, 0.4, 180, (1400 * 0.037, None))
    second = items(7.0, 180, (0, 0.1), 0.02, (0, 0.005), 9, 400, 0.2, 150, (0, 100 * 0.037))
    waters = (Water("A1", "", "2024-03-22", first), Water("A2", "", "2024-03-22", second))
    return one("csv_coded_headings", lines(rows), waters)


def duplicates_beside() -> Layout:
    """A small laboratory's sheet: the result, its duplicate, their difference and the method's recovery in one row."""
    rows = [
        ("Analyte", "Result", "Duplicate", "RPD", "% Rec", "RL", "Units"),
        ("Iron", "0.42", "0.43", "2.4", "98", "0.05", "mg/L"),
        ("Lead", "2.1", "2.0", "4.9", "101", "1", "µg/L"),
        ("Zinc", "<0.01", "<0.01", "NC", "95", "0.01", "mg/L"),
    ]
    items = (means("iron", 0.42), means("lead", 2.1 * U), means("zinc", 0, 0.01))
    return one("csv_duplicates_beside", lines(rows), Water("", "", "", items), unread=3)


def numbered_places() -> Layout:
    """Columns of points of sampling with the laboratory's number behind each."""
    rows = [
        ("Analyte", "Unit", "Raw water 7781-A", "Treated water 7781-B"), ("Iron", "mg/L", "1.4", "0.02"),
        ("Manganese", "mg/L", "0.31", "<0.01"),
    ]  # fmt: skip
    waters = (
        Water("7781-A", "", "", (means("iron", 1.4), means("manganese", 0.31))),
        Water("7781-B", "", "", (means("iron", 0.02), means("manganese", 0, 0.01))),
    )
    return one("csv_numbered_places", lines(rows), waters)


def number_in_brackets() -> Layout:
    """A site with the laboratory's labelled number in brackets behind it."""
    text = "Source: House well (Lab no. 5501-1)\nSampled: 2026-06-03\nAnalyte,Result,Unit\nIron,0.4,mg/L\nLead,2,µg/L\n"
    items = (means("iron", 0.4), means("lead", 2 * U))
    return one("csv_number_in_brackets", text, Water("5501-1", "House well", "2026-06-03", items))


def two_names() -> Layout:
    """The laboratory's number and the field's name of each sample, both called an identification."""
    rows = [
        ("Lab ID", "Field ID", "Analyte", "Result", "Units"), ("L26-100-1", "House tap", "Iron", "0.4", "mg/L"),
        ("L26-100-1", "House tap", "Lead", "3", "ug/L"), ("L26-100-2", "Barn well", "Iron", "1.5", "mg/L"),
    ]  # fmt: skip
    waters = (
        Water("L26-100-1", "House tap", "", (means("iron", 0.4), means("lead", 3 * U))),
        Water("L26-100-2", "Barn well", "", (means("iron", 1.5),)),
    )
    return one("csv_two_names", lines(rows), waters)


def numbered_rows() -> Layout:
    """Three rows, numbered under a word that could be the sample's."""
    rows = [
        ("ID", "Test", "Result", "Unit"), ("1", "Iron", "0.4", "mg/L"), ("2", "Lead", "2", "µg/L"),
        ("3", "Nitrate as N", "3.3", "mg/L"),
    ]  # fmt: skip
    return one(
        "csv_numbered_rows",
        lines(rows),
        Water("", "", "", (means("iron", 0.4), means("lead", 2 * U), means("nitrate", 3.3))),
    )


def traces_without_unit() -> Layout:
    """No unit is printed: of PFAS and benzene no number can be read; a non-detect and the major ions can."""
    rows = [("Analyte", "Result"), ("PFOA", "4.2"), ("PFOS", "ND"), ("Benzene", "0.5"), ("Sodium", "14")]
    return one(
        "csv_traces_without_unit",
        lines(rows),
        Water("", "", "", (means("pfos", 0, NAN), means("sodium", 14))),
        unread=2,
    )


def per_cubic_metre() -> Layout:
    """Milligrams in a cubic metre of water, which are micrograms in a litre, and grams in one."""
    rows = [
        ("Parameter;Wert;Einheit",), ("Blei;2,1;mg/m³",), ("Arsen;<1;mg/m3",), ("Eisen;0,12;g/m3",),
    ]  # fmt: skip
    text = "\n".join(row[0] for row in rows) + "\n"
    return one(
        "csv_per_cubic_metre",
        text,
        Water("", "", "", (means("lead", 2.1 * U), means("arsenic", 0, U), means("iron", 0.12))),
    )


def abbreviations() -> Layout:
    """A German sheet whose legend says what its abbreviations mean: not quantifiable, not done."""
    text = (
        "Parameter;Ergebnis;Einheit;BG\nEisen;0,12;mg/l;0,02\nBlei;n.b.;mg/l;0,001\nArsen;n.n.;mg/l;0,002\n"
        "Kupfer;n.a.;mg/l;0,01\nn.b. = nicht bestimmbar (unterhalb der Bestimmungsgrenze), n.a. = nicht analysiert\n"
    )
    items = (means("iron", 0.12), means("lead", 0, 0.001), means("arsenic", 0, 0.002))
    return one("csv_abbreviations", text, Water("", "", "", items), extra_ok=frozenset({"copper"}))


def boxes_in_cells() -> Layout:
    """Both words in one cell, a cross typed before one of them; one form was left blank."""
    paper = Paper(letter)
    paper.text("Sample ID: BX-7   Collected: 2026-05-04")
    at = (48, 230, 400)
    paper.row(at, ("Test", "Result", "Method"), bold=True)
    printed = (
        (("Total coliform", "[x] present  [ ] absent", "SM 9223 B"), present("total_coliform")),
        (("E. coli", "[ ] present  [x] absent", "SM 9223 B"), absent("e_coli")),
        (("Fecal coliform", "[ ] present  [ ] absent", "SM 9222 D"),),
        (("Enterococci", ">200.5 MPN/100 mL", "D6503"), found("enterococci", 200.5, INF)),
    )
    items = fill(paper, at, printed)
    return Layout("pdf_boxes_in_cells", "pdf", paper.done(), (Water("BX-7", "", "2026-05-04", items),), unread=1)


LAYOUTS = (
    names_over_lines, units_over_lines, fractions_under_names, triplets, triplets_on_paper, coded_headings,
    duplicates_beside, numbered_places, number_in_brackets, two_names, numbered_rows, traces_without_unit,
    per_cubic_metre, abbreviations, boxes_in_cells,
)  # fmt: skip
