"""Layouts of text PDFs as state, county and commercial laboratories of the United States print them.

Every laboratory, household and number is invented; each meaning is typed by hand.
"""

from __future__ import annotations

from reportlab.lib import colors
from reportlab.lib.pagesizes import A4, letter
from reports_catalog import Layout, Water
from reports_draw import absent, fill, flowed, found, items_of, less, present, space, table, words
from reports_pdf import Paper
from reports_written import N_OF_NO3, PCI, U


def satisfactory() -> Layout:
    """A state laboratory's private-well panel: verdict letters S and U that are no qualifiers, a two-column head, a key."""
    paper = Paper(letter, points=9, lead=13)
    paper.text("STATE LABORATORY OF PUBLIC HEALTH - ENVIRONMENTAL SCIENCES", bold=True, size=11)
    paper.text("Inorganic Chemistry: Private Well Water Analysis", size=9)
    paper.row((48, 130, 320, 410), ("Logged-in ID:", "EW260417-0031", "Date Collected:", "04/15/2026"))
    paper.row((48, 130, 320, 410), ("Well Permit #:", "5521-07", "Time Collected:", "9:40 AM"))
    paper.row((48, 130, 320, 410), ("Name of Owner:", "P. Example", "Date Received:", "04/17/2026"))
    paper.row((48, 130, 320, 410), ("Sample Source:", "New Well", "Collected By:", "J. Nobody"))
    paper.y -= 8
    at = (48, 190, 260, 330, 420, 490)
    paper.row(at, ("Analyte", "Results", "Units", "Allowable Limit", "Rating", "Reporting Limit"), bold=True, size=8)
    lines = (
        (("Arsenic", "0.013", "mg/L", "0.010", "U", "0.005"), found("arsenic", 0.013)),
        (("Barium", "< 0.1", "mg/L", "2.00", "S", "0.1"), less("barium", 0.1)),
        (("Cadmium", "< 0.001", "mg/L", "0.005", "S", "0.001"), less("cadmium", 0.001)),
        (("Calcium", "14", "mg/L", "", "", "1"), found("calcium", 14)),
        (("Copper", "0.06", "mg/L", "1.3", "S", "0.05"), found("copper", 0.06)),
        (("Fluoride", "0.34", "mg/L", "4.00", "S", "0.20"), found("fluoride", 0.34)),
        (("Iron", "1.85", "mg/L", "0.30", "U", "0.10"), found("iron", 1.85)),
        (("Lead", "< 0.005", "mg/L", "0.015", "S", "0.005"), less("lead", 0.005)),
        (("pH", "6.2", "", "6.5 - 8.5", "U", "N/A"), found("ph", 6.2)),
        (("Total Alkalinity", "31", "mg/L", "", "", "1"), found("total_alkalinity", 31)),
        (("Total Hardness", "46", "mg/L", "", "", "2"), found("total_hardness", 46)),
    )
    items = fill(paper, at, lines)
    paper.y -= 8
    paper.text("S = Satisfactory     U = Unsatisfactory", size=8)
    paper.text("Report Date: 05/01/2026     Reported By: A. Person     Page 1 of 1", size=8)
    return Layout("pdf_satisfactory", "pdf", paper.done(), (Water("EW260417-0031", "", "2026-04-15", items),))


def units_in_heading() -> Layout:
    """Two tables with the unit in the result's heading, in brackets and on a line of its own; limits in another unit."""
    paper = Paper(A4)
    paper.text("Two Ash Water Works Laboratory", bold=True)
    paper.text("Sample no.: TA 318 / 26      Sampled on: 08.06.2026")
    at = (48, 200, 300, 400)
    paper.row(at, ("Parameter", "Result [µg/L]", "Limit [mg/L]", "Method"), bold=True)
    lines = (
        (("Arsenic", "2.6", "0.010", "ISO 17294-2"), found("arsenic", 2.6 * U)),
        (("Lead", "<0.5", "0.010", "ISO 17294-2"), less("lead", 0.5 * U)),
        (("Nickel", "4.0", "0.020", "ISO 17294-2"), found("nickel", 4.0 * U)),
    )
    items = fill(paper, at, lines)
    paper.y -= 14
    paper.row(at, ("Parameter", "Result", "Limit", "Method"), bold=True)
    paper.row(at, ("", "mg/L", "mg/L", ""), bold=True)
    lines = (
        (("Chloride", "27", "250", "ISO 10304-1"), found("chloride", 27)),
        (("Nitrate (NO3)", "31", "50", "ISO 10304-1"), found("nitrate", 31 * N_OF_NO3)),
        (("Sulfate", "44", "250", "ISO 10304-1"), found("sulfate", 44)),
    )
    items += fill(paper, at, lines)
    return Layout("pdf_units_in_heading", "pdf", paper.done(), (Water("TA 318 / 26", "", "2026-06-08", items),))


def ticked_bacteria() -> Layout:
    """A bacteriological form: boxes ticked beside words, the method ticked too, a count in most probable number."""
    paper = Paper(letter, points=10, lead=18)
    paper.text("BACTERIOLOGICAL ANALYSIS OF DRINKING WATER", bold=True, size=12)
    paper.text("Lab Number: B-77120        Collected: 05/19/2026 11:15 AM")
    paper.text("Source:  [X] Private well   [ ] Spring   [ ] Public supply")
    paper.text("Method:  [ ] Membrane filter   [X] Enzyme substrate (SM 9223B)")
    paper.row((48, 220, 330), ("Total Coliform Bacteria:", "[X] PRESENT", "[ ] ABSENT"))
    paper.row((48, 220, 330), ("E. coli Bacteria:", "[ ] PRESENT", "[X] ABSENT"))
    paper.row((48, 220), ("Fecal Coliform:", "[ ] PRESENT   [ ] ABSENT   [X] NOT TESTED"))
    paper.text("A sample with coliform bacteria is not fit to drink without boiling for 1 minute.")
    items = items_of((
        (("Total Coliform Bacteria",), present("total_coliform")), (("E. coli Bacteria",), absent("e_coli")),
    ))  # fmt: skip
    return Layout(
        "pdf_ticked_bacteria", "pdf", paper.done(), (Water("B-77120", "", "2026-05-19", items),),
        extra_ok=frozenset({"fecal_coliform"}),
    )  # fmt: skip


def wrapped_everything() -> Layout:
    """Ruled, with headers over three lines, wrapped names and wrapped methods, a footer on each of two pages."""
    head = (
        "Analyte / Test<br/>Description", "Reported<br/>Result of<br/>Analysis", "Unit of<br/>Measure", "Practical<br/>Quantitation<br/>Limit (PQL)",
        "Maximum<br/>Contaminant<br/>Level", "Analytical Method<br/>Reference", "Date / Time<br/>Analyzed",
    )  # fmt: skip
    date = "06/03/2026<br/>14:22"
    lines = (
        (("Nitrogen, Nitrate (NO3) as N", "2.18", "mg/L", "0.10", "10", "EPA 300.0 Rev 2.1 (1993)", date), found("nitrate", 2.18)),
        (("Nitrogen, Nitrite (NO2) as N", "&lt; 0.05", "mg/L", "0.05", "1", "EPA 300.0 Rev 2.1 (1993)", date), less("nitrite", 0.05)),
        (("Total Dissolved Solids (Residue, Filterable)", "322", "mg/L", "10", "500", "Standard Methods 2540 C-2015", date), found("total_dissolved_solids", 322)),
        (("Calcium, Total Recoverable", "58.8", "mg/L", "0.20", "", "EPA 200.7 Rev 4.4 (1994)", date), found("calcium", 58.8, fraction="total_recoverable")),
        (("Alkalinity, Total (as CaCO3) to pH 4.5", "171", "mg/L", "5", "", "Standard Methods 2320 B-2011", date), found("total_alkalinity", 171)),
        (("Fluoride", "0.62", "mg/L", "0.05", "4.0", "EPA 300.0 Rev 2.1 (1993)", date), found("fluoride", 0.62)),
        (("Selenium, Total", "3.1", "µg/L", "1.0", "50", "EPA 200.8 Rev 5.4 (1994)", date), found("selenium", 3.1 * U, fraction="total")),
        (("Turbidity, Nephelometric", "0.44", "NTU", "0.10", "", "EPA 180.1 Rev 2.0 (1993)", date), found("turbidity", 0.44)),
    )  # fmt: skip

    def foot(canvas, document):
        canvas.setFont("Helvetica", 7)
        canvas.drawString(40, 20, "Cold Spur Environmental Labs, 8 Quarry Rd, Suite 100 - certificate 11-0042")
        canvas.drawRightString(560, 20, f"Page {document.page}")

    story = [
        words("Report of Analysis", 14, bold=True), space(),
        words("Sample ID: CS-4410 &nbsp;&nbsp; Date Collected: 06/02/2026 07:30 &nbsp;&nbsp; Date Received: 06/02/2026"), space(),
        table([head, *(cells for cells, *_ in lines)], (110, 60, 50, 68, 68, 110, 62), ("GRID", (0, 0), (-1, -1), 0.5, colors.black)),
    ]  # fmt: skip
    items = tuple(item._replace(name=item.name) for item in items_of(lines))
    data = flowed(story, size=(letter[0], 420), onFirstPage=foot, onLaterPages=foot)
    return Layout("pdf_wrapped_everything", "pdf", data, (Water("CS-4410", "", "2026-06-02", items),))


def flags_left() -> Layout:
    """Marks before the name and before the result, explained beneath; results right-aligned; an exponent; a range of limits."""
    paper = Paper(letter)
    paper.text("Larkspur Lane Laboratory LLC", bold=True)
    paper.text("Sample Identification: LL-92 East     Sampled: Jul 7, 2026 6:45 am")
    at = (40, 56, 210, 260, 270, 330, 400)
    paper.row(at, ("", "Constituent", "", "Result", "Units", "MRL", "Standard"), bold=True, right=(3,))
    lines = (
        (("*", "Aluminum", "", "0.31", "mg/L", "0.02", "0.05 - 0.2"), found("aluminum", 0.31)),
        (("", "Antimony", "ND", "", "mg/L", "0.001", "0.006"), less("antimony", 0.001)),
        (("", "Beryllium", "<", "0.0005", "mg/L", "0.0005", "0.004"), less("beryllium", 0.0005)),
        (("*", "Manganese", "", "0.29", "mg/L", "0.005", "0.05"), found("manganese", 0.29)),
        (("", "Silver", "", "1.2E-03", "mg/L", "0.0005", "0.1"), found("silver", 0.0012)),
        (("**", "Radium 228", "", "5.6", "pCi/L", "1.0", "5"), found("radium_228", 5.6 * PCI)),
    )
    items = fill(paper, at, lines, name=1, right=(3,))
    paper.y -= 6
    paper.text(
        "*  exceeds a secondary standard     ** exceeds a primary standard     ND none detected at the MRL", size=8
    )
    return Layout("pdf_flags_left", "pdf", paper.done(), (Water("LL-92 East", "", "2026-07-07", items),))


def scales() -> Layout:
    """A leaflet with a scale under each result: the figures of the axis and of the classes are no results."""
    paper = Paper(letter, points=10, lead=14)
    paper.text("My water report", bold=True, size=16)
    paper.text("Sample number 55-1182, collected 8/30/2026")
    lines = (
        (("Hardness", "14", "grains per gallon"), ("0", "5", "10", "15", "20+"), found("total_hardness", 14 * 17.118)),
        (("Iron", "0.6", "ppm"), ("0", "0.3", "1", "3", "10"), found("iron", 0.6)),
        (("pH", "6.8", ""), ("5", "6", "7", "8", "9"), found("ph", 6.8)),
        (("Nitrate as N", "3", "ppm"), ("0", "5", "10", "20", "50"), found("nitrate", 3)),
    )
    for cells, ticks, _ in lines:
        paper.y -= 10
        paper.page.setFont("Helvetica-Bold", 12)
        paper.page.drawString(60, paper.y, cells[0])
        paper.page.drawRightString(330, paper.y, f"{cells[1]} {cells[2]}".strip())
        paper.y -= 16
        paper.page.rect(60, paper.y, 400, 6, fill=1)
        paper.y -= 12
        paper.row((60, 158, 256, 354, 452), ticks, size=7)
        paper.row((60, 220, 400), ("Low", "Medium", "High"), size=7)
    items = items_of([(cells, truth) for cells, _, truth in lines])
    return Layout("pdf_scales", "pdf", paper.done(), (Water("55-1182", "", "2026-08-30", items),))


def before_and_after() -> Layout:
    """One well before and after a softener: two columns of results under one date."""
    paper = Paper(letter)
    paper.text("Treatment check     Order 3391     Date collected: 11/30/2026", bold=True)
    at = (48, 200, 260, 350, 440)
    paper.row(at, ("Test", "Units", "Before softener", "After softener", "Guideline"), bold=True)
    lines = (
        ("Total Hardness", "mg/L", "288", "4", ""), ("Sodium", "mg/L", "11", "142", "20"),
        ("Iron", "mg/L", "1.3", "<0.05", "0.3"), ("pH", "s.u.", "7.1", "7.2", "6.5-8.5"),
    )  # fmt: skip
    for cells in lines:
        paper.row(at, cells)
    one = items_of(
        [
            ((line[0],), found(key, v))
            for line, key, v in zip(lines, ("total_hardness", "sodium", "iron", "ph"), (288, 11, 1.3, 7.1), strict=True)
        ]
    )
    two = items_of((
        (("Total Hardness",), found("total_hardness", 4)), (("Sodium",), found("sodium", 142)), (("Iron",), less("iron", 0.05)), (("pH",), found("ph", 7.2)),
    ))  # fmt: skip
    return Layout(
        "pdf_before_and_after", "pdf", paper.done(),
        (Water("Before softener", "", "2026-11-30", one), Water("After softener", "", "2026-11-30", two)),
    )  # fmt: skip


LAYOUTS = (
    satisfactory,
    units_in_heading,
    ticked_bacteria,
    wrapped_everything,
    flags_left,
    scales,
    before_and_after,
)
