"""Text PDFs whose pages are drawn in unusual ways: word by word, column by column, through forms and strange fonts.

Every laboratory, household and number is invented; each meaning is typed by hand.
"""

from __future__ import annotations

import io
import random
from pathlib import Path

from reportlab.lib import colors
from reportlab.lib.pagesizes import A4, letter
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas
from reports_catalog import Layout, Water
from reports_draw import absent, fill, found, items_of, less, present
from reports_pdf import Paper
from reports_written import PCI, U

EMBEDDED = Path("/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf")


def shuffled_words() -> Layout:
    """Every word is a text of its own, and they are drawn in no order."""
    paper = Paper(letter, points=8.5, lead=12)
    lines = (
        (("Nitrogen, Nitrate (as N)", "3.9", "mg/L", "10", "EPA 300.0 Rev 2.1"), found("nitrate", 3.9)),
        (("Alkalinity, Total as CaCO3", "212", "mg/L", "", "SM 2320 B"), found("total_alkalinity", 212)),
        (("Iron, Total Recoverable", "1.07", "mg/L", "0.3", "EPA 200.7 Rev 4.4"), found("iron", 1.07, None, "total_recoverable")),
        (("Lead, First Draw", "< 0.50", "ug/L", "15", "EPA 200.8 Rev 5.4"), less("lead", 0.5 * U)),
        (("Hardness, Calculated", "241", "mg/L as CaCO3", "", "SM 2340 B"), found("total_hardness", 241)),
        (("Specific Conductance @ 25 C", "498", "umhos / cm", "", "SM 2510 B"), found("specific_conductance", 498)),
    )  # fmt: skip
    at = (50, 205, 255, 335, 400)
    rows = [
        ((50, 300), ("Client Sample ID: Pump house spigot", "Lab Sample ID: T26-3317-01")),
        ((50, 300), ("Collected: 07/08/2026 11:20 AM", "Received: 07/08/2026 3:45 PM")),
        (at, ("Parameter", "Result", "Units", "EPA Limit", "Test Method")),
        *((at, cells) for cells, *_ in lines),
    ]
    drawn = []
    for xs, cells in rows:
        for x, cell in zip(xs, cells, strict=True):
            for word in cell.split():
                drawn.append((x, paper.y, word))
                x += pdfmetrics.stringWidth(word + " ", "Helvetica", 8.5)
        paper.y -= 12
    random.Random(5).shuffle(drawn)
    for x, y, word in drawn:
        paper.page.setFont("Helvetica", 8.5)
        paper.page.drawString(x, y, word)
    return Layout(
        "pdf_shuffled_words",
        "pdf",
        paper.done(),
        (Water("T26-3317-01", "Pump house spigot", "2026-07-08", items_of(lines)),),
    )


def single_glyphs() -> Layout:
    """Every glyph by itself, whole columns from right to left, without a single blank."""
    paper = Paper(A4, points=9, lead=14)
    lines = (
        (("Arsenic", "0.0061", "mg/L", "0.0010", "0.010"), found("arsenic", 0.0061)),
        (("Cadmium", "<0.0002", "mg/L", "0.0002", "0.005"), less("cadmium", 0.0002)),
        (("Total coliforms", "7", "CFU/100 mL", "1", "0"), found("total_coliform", 7)),
        (("Fluoride", "0.63", "mg/L", "0.05", "1.5"), found("fluoride", 0.63)),
        (("True colour", "<5", "TCU", "5", "15"), less("true_color", 5)),
    )
    heads = ("Analyte", "Result", "Unit", "RDL", "Guideline")
    table = [(x, 14, (heads[n], *(cells[n] for cells, *_ in lines))) for n, x in enumerate((50, 190, 255, 345, 410))]
    columns = [*table[::-1], (330, 0, ("Sampled: 2026-03-30",)), (50, 0, ("Sample No.: G-4409",))]
    for x, down, texts in columns:
        y = 760 - 30 * bool(down)
        for text in texts:
            at = x + pdfmetrics.stringWidth(text, "Helvetica", 9)
            for letter_ in reversed(text):
                at -= pdfmetrics.stringWidth(letter_, "Helvetica", 9)
                paper.page.setFont("Helvetica", 9)
                if letter_ != " ":
                    paper.page.drawString(at, y, letter_)
            y -= 14
    return Layout("pdf_single_glyphs", "pdf", paper.done(), (Water("G-4409", "", "2026-03-30", items_of(lines)),))


def form_objects() -> Layout:
    """Head and table are forms, used again on the second page at another size, the page turned by 270 degrees."""
    buffer = io.BytesIO()
    page = canvas.Canvas(buffer, pagesize=A4, invariant=True)
    pages = (
        ("X-77-A", "2026-02-16", (
            (("Sulfate", "44", "mg/L", "250"), found("sulfate", 44)), (("Chloride", "9.2", "mg/L", "250"), found("chloride", 9.2)),
            (("Manganese", "0.118", "mg/L", "0.05"), found("manganese", 0.118)),
        )),
        ("X-77-B", "2026-02-17", (
            (("Sulfate", "<1.0", "mg/L", "250"), less("sulfate", 1)), (("Chloride", "8.8", "mg/L", "250"), found("chloride", 8.8)),
            (("Manganese", "0.004", "mg/L", "0.05"), found("manganese", 0.004)),
        )),
    )  # fmt: skip
    page.beginForm("head")
    page.setFont("Helvetica-Bold", 14)
    page.drawString(0, 0, "Quillback Testing - Report of Analysis")
    page.setFont("Helvetica", 9)
    for x, text in zip((0, 150, 230, 300), ("Determination", "Found", "Units", "Standard"), strict=True):
        page.drawString(x, -60, text)
    page.endForm()
    waters = []
    for number, (id, day, lines) in enumerate(pages):
        page.beginForm(f"body{number}")
        page.setFont("Helvetica", 9)
        page.drawString(0, -25, f"Sample ID: {id}")
        page.drawString(230, -25, f"Date sampled: {day}")
        for row, (cells, _) in enumerate(lines):
            for x, text in zip((0, 150, 230, 300), cells, strict=True):
                page.drawString(x, -76 - 15 * row, text)
        page.endForm()
        if number:
            page.setPageRotation(270)
            page.translate(0, 595)
            page.rotate(-90)
            page.scale(1.3, 1.3)
            page.translate(40, 400)
        else:
            page.translate(60, 740)
        page.doForm(f"body{number}")
        page.doForm("head")
        page.showPage()
        waters.append(Water(id, "", day, items_of(lines)))
    page.save()
    return Layout("pdf_form_objects", "pdf", buffer.getvalue(), tuple(waters))


def unmapped_numbers() -> Layout:
    """The numbers are in an embedded font that does not say which letters it draws: they are unread, not guessed.

    At first the codes were taken for western letters: 0.24 mg/L of iron was read as 2345.
    """
    pdfmetrics.registerFont(TTFont("Numbers", EMBEDDED, asciiReadable=False))
    paper = Paper(A4, points=10, lead=16)
    paper.text("Sample ID: UM-5        Date sampled: 2026-05-18")
    at = (48, 220, 320)
    paper.row(at, ("Parameter", "Result", "Unit"), bold=True)
    lines = (
        (("Iron", "0.24", "mg/L"), found("iron", 0.24)), (("Copper", "0.09", "mg/L"), found("copper", 0.09)), (("Zinc", "1.31", "mg/L"), found("zinc", 1.31)),
    )  # fmt: skip
    paper.page.setFont(
        "Numbers", 4
    )  # letters before them give the figures codes that stand for other figures elsewhere
    paper.page.drawString(48, 30, "".join(map(chr, range(0x391, 0x3C2))))
    for _ in range(3):
        paper.text("This report may not be copied in part without the written consent of the laboratory.")
    for (name, value, unit), _ in lines:
        paper.page.setFont("Numbers", 10)
        paper.page.drawString(220, paper.y, value)
        paper.row(at, (name, "", unit))
    data = paper.done().replace(b"/ToUnicode", b"/NoUnicode")
    return Layout("pdf_unmapped_numbers", "pdf", data, (), unread=3)


def embedded_letters() -> Layout:
    """An embedded font with every sign of the trade: ³, ⁻, ≤, µ and μ, ₃; minus as U+2212; thin blanks between thousands."""
    pdfmetrics.registerFont(TTFont("Signs", EMBEDDED))
    paper = Paper(A4, points=8, lead=13)
    lines = (
        (("Nitrate (NO₃⁻) as N", "4.07", "mg·L⁻¹", "≤ 10"), found("nitrate", 4.07)),
        (("Total dissolved solids", "1\u2009180", "mg·L⁻¹", "≤ 500"), found("total_dissolved_solids", 1180)),
        (("Redox potential (ORP)", "\u221258", "mV", ""), found("oxidation_reduction_potential", -58)),
        (("Uranium", "≤ 0.02", "μg·L⁻¹", "≤ 30"), less("uranium", 0.02 * U)),
        (("Gross α activity", "0.11 ± 0.04", "Bq·L⁻¹", "≤ 0.5"), found("gross_alpha", 0.07, 0.15)),
        (("Conductivity (25 °C)", "1\u2009744", "µS·cm⁻¹", ""), found("specific_conductance", 1744)),
        (("Hardness (CaCO₃)", "388", "mg·L⁻¹", ""), found("total_hardness", 388)),
    )

    def line(x, cells, size=8):
        paper.page.setFont("Signs", size)
        for at, text in zip(x, cells, strict=True):
            paper.page.drawString(at, paper.y, text)
        paper.y -= 13

    line((48, 300), ("Sample reference: № 26/441", "Sampling date: 11 March 2026"))
    at = (48, 220, 300, 380)
    line(at, ("Determinand", "Value", "Unit", "Limit"))
    for cells, _ in lines:
        line(at, cells)
    return Layout("pdf_embedded_letters", "pdf", paper.done(), (Water("", "", "2026-03-11", items_of(lines)),))


def dark_zebra() -> Layout:
    """White type on dark bands for head and groups, grey bands behind every other row, bars of the limit's share at the side.

    At first a band and the bar within it made a ruled table of one full column, and the table fell to pieces.
    """
    paper = Paper(letter, points=8, lead=15)
    paper.text("Well owner's summary - Lab ID 26W-0552 - sampled on 08/19/2026")
    at = (48, 220, 285, 345)
    groups = (
        ("HEALTH", (
            (("Arsenic", "4.4", "ppb", "10"), found("arsenic", 4.4 * U)), (("Nitrate-Nitrogen", "11.6", "ppm", "10"), found("nitrate", 11.6)),
            (("Lead", "ND", "ppb", "15"), less("lead", float("nan"))),
        )),
        ("NUISANCE", (
            (("Iron", "2.31", "ppm", "0.3"), found("iron", 2.31)), (("Hardness", "14.2", "gpg", "7"), found("total_hardness", 14.2 * 17.118)),
            (("Total Dissolved Solids", "355", "ppm", "500"), found("total_dissolved_solids", 355)),
        )),
    )  # fmt: skip

    def band(color):
        paper.page.setFillColor(color)
        paper.page.rect(44, paper.y - 4, 520, 15, stroke=0, fill=1)

    band(colors.navy)
    paper.page.setFillColor(colors.white)
    paper.row((*at, 420), ("What we tested", "Your water", "Unit", "Limit", "Share of limit"), bold=True)
    items = ()
    for title, lines in groups:
        band(colors.teal)
        paper.page.setFillColor(colors.white)
        paper.text(title, bold=True)
        for number, line in enumerate(lines):
            if number % 2:
                band(colors.whitesmoke)
            paper.page.setFillColor(colors.firebrick)
            paper.page.rect(420, paper.y - 1, 20 + 30 * number, 7, stroke=0, fill=1)
            paper.page.setFillColor(colors.black)
            items += fill(paper, at, (line,))
    return Layout("pdf_dark_zebra", "pdf", paper.done(), (Water("26W-0552", "", "2026-08-19", items),))


def three_points() -> Layout:
    """Nine columns in small narrow type with three points between them, numbers aligned right, a ruled line under each row."""
    paper = Paper(letter, points=6, lead=9.5)
    paper.text("Lab Sample: 260711-004A    Collected: 2026-07-09 08:05    Matrix: Groundwater")
    right = {1, 2, 3}
    at = (40, 175, 205, 232, 236, 262, 274, 330, 372)
    paper.row(
        at, ("Analyte", "Result", "RL", "MDL", "Units", "Qual", "Method", "Analyzed", "Batch"), bold=True, right=right
    )
    lines = (
        (("1,2-Dichloroethane", "0.500", "0.500", "0.112", "ug/L", "U", "EPA 524.2", "07/11/26", "B6G11"), less("1_2_dichloroethane", 0.5 * U)),
        (("Methyl tert-butyl ether", "13.4", "0.500", "0.090", "ug/L", "", "EPA 524.2", "07/11/26", "B6G11"), found("methyl_tert_butyl_ether", 13.4 * U)),
        (("Benzene", "0.310", "0.500", "0.080", "ug/L", "J", "EPA 524.2", "07/11/26", "B6G11"), found("benzene", 0.08 * U, 0.5 * U)),
        (("Tetrachloroethene", "0.500", "0.500", "0.130", "ug/L", "U", "EPA 524.2", "07/11/26", "B6G11"), less("tetrachloroethylene", 0.5 * U)),
        (("Chloroform", "101", "0.500", "0.100", "ug/L", "E", "EPA 524.2", "07/11/26", "B6G11"), found("chloroform", 101 * U, float("inf"))),
        (("Toluene", "2.27", "0.500", "0.105", "ug/L", "B", "EPA 524.2", "07/11/26", "B6G11"), found("toluene", 0, 2.27 * U)),
    )  # fmt: skip
    items = fill(paper, at, lines, right=right)
    return Layout("pdf_three_points", "pdf", paper.done(), (Water("260711-004A", "", "2026-07-09", items),))


def vertical_middle() -> Layout:
    """Names and methods wrapped over three lines; the other cells stand in the middle, between the lines' baselines.

    At first two of the names were unknown.
    """
    paper = Paper(A4, points=8, lead=10)
    paper.text("Sample name: Orchard bore    Sampling date: 2026-09-02")
    paper.y -= 8
    at = (48, 200, 260, 330, 390)
    paper.row(at, ("Test", "Result", "Units", "Guide", "Method"), bold=True)
    rows = (
        (
            ("Nitrogen as", "nitrate and nitrite", "(total oxidised nitrogen)"),
            "2.85",
            ("mg/L",),
            "11.3",
            ("APHA 4500-NO3", "I, flow injection"),
        ),
        (("Sodium",), "77", ("mg/L",), "180", ("APHA 3125 B,", "ICP-MS, filtered in", "the laboratory")),
        (("Alkalinity to", "pH 4.5"), "144", ("mg/L as", "CaCO3"), "", ("APHA 2320 B",)),
        (("Iron (acid soluble)",), "0.08", ("mg/L",), "0.3", ("APHA 3125 B,", "ICP-MS")),
    )
    for name, value, unit, guide, method in rows:
        deep = max(len(name), len(method), len(unit))
        paper.page.line(46, paper.y + 9, 540, paper.y + 9)
        for x, texts in ((48, name), (200, (value,)), (260, unit), (330, (guide,)), (390, method)):
            y = paper.y - 5 * (deep - len(texts))
            for text in texts:
                paper.page.setFont("Helvetica", 8)
                paper.page.drawString(x, y, text)
                y -= 10
        paper.y -= 10 * deep + 4
    truths = (
        (("",), found("nitrate_plus_nitrite", 2.85)), (("",), found("sodium", 77)),
        (("",), found("total_alkalinity", 144)), (("",), found("iron", 0.08, None, "total_recoverable")),
    )  # fmt: skip
    return Layout(
        "pdf_vertical_middle", "pdf", paper.done(), (Water("", "Orchard bore", "2026-09-02", items_of(truths)),)
    )


def overlapping_boxes() -> Layout:
    """Text boxes of a word processor: each row's cells a point or two off each other, the unit smaller and lower.

    At first a box a little lower was another line, name and result came into one cell, and the column of limits beside them was
    read: a limit `Absent` for coliforms that are present. Lines are now as tolerant as forms are filled in, and a column in
    which limits are called so is theirs.
    """
    paper = Paper(letter, points=10, lead=22)
    paper.text("Sample No. TB-808, taken 04/21/2026")
    lines = (
        (("Lead", "6.2", "µg/L", "MCL 15"), found("lead", 6.2 * U)), (("Copper", "0.45", "mg/L", "MCL 1.3"), found("copper", 0.45)),
        (("pH", "6.3", "", "6.5 - 8.5"), found("ph", 6.3)), (("Radon", "1,850", "pCi/L", "none"), found("radon_222", 1850 * PCI)),
        (("E. coli", "Absent", "/100 mL", "Absent"), absent("e_coli")), (("Total Coliform", "Present", "/100 mL", "Absent"), present("total_coliform")),
    )  # fmt: skip
    rng = random.Random(3)
    for (name, value, unit, limit), _ in lines:
        for x, text, size, down in (
            (55, name, 11, 0),
            (190, value, 13, 1.5),
            (192 + pdfmetrics.stringWidth(value, "Helvetica-Bold", 13), unit, 6.5, 3.0),
            (330, limit, 9, -1.2),
        ):
            paper.page.roundRect(x - 4, paper.y - 6, 60, 18, 3, stroke=0)
            paper.page.setFont("Helvetica-Bold" if size == 13 else "Helvetica", size)
            paper.page.drawString(x, paper.y - down + rng.uniform(-0.6, 0.6), text)
        paper.y -= 22
    return Layout("pdf_overlapping_boxes", "pdf", paper.done(), (Water("TB-808", "", "2026-04-21", items_of(lines)),))


LAYOUTS = (
    shuffled_words, single_glyphs, form_objects, unmapped_numbers, embedded_letters, dark_zebra, three_points, vertical_middle, overlapping_boxes,
)  # fmt: skip
