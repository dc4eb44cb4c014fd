"""Layouts of text PDFs, drawn with reportlab: tables. Every laboratory and household is invented."""

from __future__ import annotations

import io
import random
from dataclasses import replace

import reports_catalog as catalog
from reportlab.lib.pagesizes import A4, landscape, letter
from reportlab.pdfgen import canvas
from reports_catalog import Item, Layout, Water

FULL = ("Analyte", "Result", "Units", "RL", "MCL", "Method")


class Paper:
    """A page of text with a falling baseline."""

    def __init__(self, size=A4, font="Helvetica", points=9, lead=13):
        self.buffer = io.BytesIO()
        self.page = canvas.Canvas(self.buffer, pagesize=size, invariant=True)
        self.width, self.height = size
        self.font, self.points, self.lead = font, points, lead
        self.y = self.height - 50

    def row(self, at, cells, *, bold=False, size=None, right=()):
        self.page.setFont(self.font + ("-Bold" if bold else ""), size or self.points)
        for index, (x, text) in enumerate(zip(at, cells, strict=True)):
            if text and index in right:
                self.page.drawRightString(x, self.y, text)
            elif text:
                self.page.drawString(x, self.y, text)
        self.y -= self.lead

    def text(self, text, x=48, *, bold=False, size=None):
        self.row((x,), (text,), bold=bold, size=size)

    def rule(self, x0=48, x1=None):
        self.page.line(x0, self.y + self.lead - 3, x1 or self.width - 48, self.y + self.lead - 3)

    def new(self):
        self.page.showPage()
        self.y = self.height - 50

    def done(self) -> bytes:
        self.page.save()
        return self.buffer.getvalue()


def head(paper: Paper, water: Water, laboratory: str) -> None:
    paper.text(laboratory, bold=True, size=13)
    paper.text("Certificate of analysis", size=8)
    paper.row((48, 130, 330, 410), ("Sample ID:", water.id, "Collected:", water.day))
    paper.row((48, 130, 330, 410), ("Location:", water.site, "Matrix:", "Drinking water"))
    paper.y -= 8


def full(item: Item) -> tuple[str, ...]:
    return (item.name, item.value, item.unit, item.rl, item.limit, item.method)


AT = (48, 215, 280, 350, 400, 460)


def ruled() -> Layout:
    """Boxes around every cell."""
    water = catalog.water(1, germs="words")
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[0])
    edges = (44, 210, 276, 346, 396, 456, 550)
    rows = [FULL, *map(full, water.items)]
    top = paper.y + paper.lead - 3
    for index, cells in enumerate(rows):
        paper.row(AT, cells, bold=index == 0)
        paper.page.line(edges[0], paper.y + paper.lead - 3, edges[-1], paper.y + paper.lead - 3)
    paper.page.line(edges[0], top, edges[-1], top)
    for x in edges:
        paper.page.line(x, top, x, paper.y + paper.lead - 3)
    return Layout("pdf_ruled", "pdf", paper.done(), (water,))


def unruled() -> Layout:
    """No rules; numbers right-aligned; non-detects as ND beside the reporting limit."""
    water = catalog.water(2, nd="ND", censored=0.5)
    paper = Paper(letter, font="Times-Roman".replace("-Roman", ""), points=10)
    paper.font = "Courier"
    head(paper, water, catalog.LABORATORIES[1])
    at = (48, 290, 300, 400, 450, 500)
    paper.row(at, ("PARAMETER", "RESULT", "UNIT", "PQL", "LIMIT", ""), bold=True, right=(1, 3, 4))
    for item in water.items:
        paper.row(at, (item.name, item.value, item.unit, item.rl, item.limit, ""), right=(1, 3, 4))
    return Layout("pdf_unruled", "pdf", paper.done(), (water,))


def side_by_side() -> Layout:
    """Two tables side by side, each with its own header."""
    water = catalog.water(3, censored=0.3)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[2])
    left, right = water.items[: len(water.items) // 2], water.items[len(water.items) // 2 :]
    at = (40, 165, 215, 305, 440, 495)
    paper.row(at, ("Parameter", "Result", "Unit") * 2, bold=True, size=8)
    for index in range(max(len(left), len(right))):
        pair = [[part[index][i] for i in (2, 3, 4)] if index < len(part) else ["", "", ""] for part in (left, right)]
        paper.row(at, (*pair[0], *pair[1]), size=8)
    return Layout("pdf_side_by_side", "pdf", paper.done(), (water,))


def many_pages() -> Layout:
    """A long table over pages with header and footer repeated in its middle."""
    water = catalog.water(4, germs="numbers")
    paper = Paper()
    number = 1
    head(paper, water, catalog.LABORATORIES[3])
    paper.row(AT, FULL, bold=True)
    for index, item in enumerate(water.items):
        if index and index % 9 == 0:
            paper.y = 40
            paper.text(f"This report may be reproduced only in full.     Page {number} of 4", size=7)
            paper.new()
            number += 1
            paper.text(f"{catalog.LABORATORIES[3]}   Sample ID: {water.id}", size=8)
            paper.row(AT, FULL, bold=True)
        paper.row(AT, full(item))
    return Layout("pdf_many_pages", "pdf", paper.done(), (water,))


def samples_as_columns() -> Layout:
    """Analytes down, three samples across."""
    keys = (
        "calcium",
        "magnesium",
        "sodium",
        "iron",
        "manganese",
        "chloride",
        "sulfate",
        "nitrate",
        "ph",
        "total_hardness",
    )
    waters = catalog.same_printing([catalog.water(50 + n, keys, id=f"FA-{n + 1}") for n in range(3)])
    paper = Paper(landscape(A4))
    paper.text(catalog.LABORATORIES[0], bold=True, size=12)
    paper.text("Results by sample")
    at = (48, 230, 320, 420, 520)
    paper.row(at, ("Analyte", "Units", *(water.id for water in waters)), bold=True)
    paper.row(at, ("Date collected", "", *(water.day for water in waters)))
    for index, item in enumerate(waters[0].items):
        paper.row(at, (item.name, item.unit, *(water.items[index].value for water in waters)))
    return Layout("pdf_samples_as_columns", "pdf", paper.done(), waters)


def sections() -> Layout:
    """One section a sample, each with its own head line and table."""
    keys = ("iron", "manganese", "nitrate", "chloride", "ph", "arsenic")
    waters = [catalog.water(60 + n, keys, id=f"SF26-{110 + n}") for n in range(4)]
    paper = Paper()
    paper.text(catalog.LABORATORIES[3], bold=True, size=12)
    for water in waters:
        paper.y -= 8
        paper.text(f"Sample: {water.id}    Site: {water.site}    Date sampled: {water.day}", bold=True)
        paper.row(AT[:4], ("Test", "Result", "Units", "RL"), bold=True)
        for item in water.items:
            paper.row(AT[:4], (item.name, item.value, item.unit, item.rl))
    return Layout("pdf_sections", "pdf", paper.done(), tuple(waters))


def fraction_headings() -> Layout:
    """Group headings carry the fraction; the same metals appear under both."""
    plain = [
        (key, (catalog.BY_KEY[key].names[0][0], None)) for key in ("iron", "manganese", "lead", "arsenic", "copper")
    ]
    rng = random.Random(70)
    items = []
    paper = Paper()
    water = catalog.water(70, ("chloride", "ph", "sulfate"))
    head(paper, water, catalog.LABORATORIES[1])
    paper.row(AT[:4], ("Analyte", "Result", "Units", "RL"), bold=True)
    for title, fraction in (("Metals, dissolved", "dissolved"), ("Metals, total", "total")):
        paper.text(title, bold=True)
        for key, name in plain:
            item = catalog.pick(rng, catalog.BY_KEY[key], name=name)._replace(fraction=fraction)
            items.append(item)
            paper.row(AT[:4], (item.name, item.value, item.unit, item.rl))
    paper.text("General chemistry", bold=True)
    for item in water.items:
        paper.row(AT[:4], (item.name, item.value, item.unit, item.rl))
    return Layout("pdf_fraction_headings", "pdf", paper.done(), (replace(water, items=(*items, *water.items)),))


def many_columns() -> Layout:
    """RL, MDL, DF, Q, method, laboratory number and dates beside the result."""
    water = catalog.water(80, nd="U", censored=0.4)
    paper = Paper(landscape(letter), points=8, lead=12)
    head(paper, water, catalog.LABORATORIES[2])
    at = (40, 190, 240, 290, 330, 370, 410, 450, 520, 590, 670)
    header = ("Analyte", "Result", "Qual", "Units", "MDL", "RL", "DF", "Lab No.", "Method", "Prepared", "Analyzed")
    paper.row(at, header, bold=True)
    items = []
    for number, item in enumerate(water.items):
        value, _, flag = item.value.partition(" ")
        mdl = catalog.figures(float(item.rl) / 4) if item.rl else ""
        cells = (
            item.name,
            value,
            flag,
            item.unit,
            mdl,
            item.rl,
            "1",
            f"26-{4400 + number}",
            item.method,
            "02/03/26",
            "02/04/26",
        )
        paper.row(at, cells)
        items.append(item)
    return Layout("pdf_many_columns", "pdf", paper.done(), (replace(water, items=tuple(items)),))


def previous_result() -> Layout:
    """A previous result and an average beside the present one."""
    water = catalog.water(90)
    other = catalog.water(91)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[0])
    at = (48, 215, 275, 345, 415, 480)
    paper.row(at, ("Parameter", "Unit", "Result", "Previous result", "Average", "Guideline"), bold=True, size=8)
    for item, old in zip(water.items, other.items, strict=True):
        paper.row(at, (item.name, item.unit, item.value, old.value.lstrip("<"), catalog.figures(3.3), item.limit))
    return Layout("pdf_previous_result", "pdf", paper.done(), (water,))


def value_with_unit() -> Layout:
    """Result and unit in one cell."""
    water = catalog.water(130, germs="numbers")
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[0])
    at = (48, 230, 350, 430)
    paper.row(at, ("Test performed", "Your result", "Advisory level", "Method"), bold=True)
    for item in water.items:
        advisory = (
            f"{item.limit} {item.unit}"
            if item.limit and item.analyte not in ("ph", "e_coli", "total_coliform")
            else item.limit
        )
        paper.row(at, (item.name, f"{item.value} {item.unit}".strip(), advisory, item.method))
    return Layout("pdf_value_with_unit", "pdf", paper.done(), (water,))


def quality_control() -> Layout:
    """Blanks, control samples, spikes and duplicates in sections of the same form behind the results."""
    keys = ("iron", "manganese", "lead", "chloride", "nitrate", "sulfate")
    water = catalog.water(170, keys)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[3])
    header = ("Analyte", "Result", "Units", "RL")
    paper.row(AT[:4], header, bold=True)
    for item in water.items:
        paper.row(AT[:4], (item.name, item.value, item.unit, item.rl))
    paper.new()
    count = 0
    paper.text("QUALITY CONTROL", bold=True, size=11)
    for title, value in (("Method Blank (MB-8812)", "<{rl}"), ("Laboratory Control Sample (LCS-8812)", "1.02")):
        paper.text(title, bold=True)
        paper.row(AT[:4], header, bold=True)
        for item in water.items:
            paper.row(AT[:4], (item.name, value.format(rl=item.rl), item.unit, item.rl))
            count += 1
    paper.text("Matrix Spike", bold=True)
    spike = (48, 200, 260, 320, 380, 440)
    paper.row(spike, ("Analyte", "Result", "Units", "Spike Level", "% Rec", "Limits"), bold=True)
    for item in water.items:
        paper.row(spike, (item.name, "5.11", item.unit, "5.00", "102", "80-120"))
        count += 1
    return Layout("pdf_quality_control", "pdf", paper.done(), (water,), quality_control=count)


def radiological() -> Layout:
    """Activities with their uncertainty and minimum detectable concentration."""
    rows = [
        Item("gross_alpha", None, "Gross Alpha", "7.2 ± 1.9", "pCi/L", 5.3 * 0.037, 9.1 * 0.037, "1.4"),
        Item("radium_226", None, "Radium-226", "0.81 +/- 0.22", "pCi/L", 0.59 * 0.037, 1.03 * 0.037, "0.30"),
        Item("radium_228", None, "Radium-228", "1.4 ± 0.5", "pCi/L", 0.9 * 0.037, 1.9 * 0.037, "0.70"),
        Item("radon_222", None, "Radon-222", "3120 ± 140", "pCi/L", 2980 * 0.037, 3260 * 0.037, "25"),
    ]
    water = Water("RX-26-08", "Cold Spur well", "2026-04-11", tuple(rows))
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[2])
    at = (48, 180, 290, 350, 420)
    paper.row(at, ("Analyte", "Activity ± Unc.", "Units", "MDC", "Method"), bold=True)
    for item in rows:
        paper.row(at, (item.name, item.value, item.unit, item.rl, "EPA 900.0"))
    return Layout("pdf_radiological", "pdf", paper.done(), (water,))


def result_last() -> Layout:
    """Unit and limit before the result; a pass/fail word behind it."""
    water = catalog.water(250)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[0])
    at = (48, 200, 270, 340, 420, 490)
    paper.row(at, ("Contaminant", "Units", "EPA limit", "Detection level", "Level found", "Status"), bold=True, size=8)
    for item in water.items:
        paper.row(at, (item.name, item.unit, item.limit, item.rl, item.value, "OK" if item.low == 0 else "see note"))
    return Layout("pdf_result_last", "pdf", paper.done(), (water,))


def both_nitrates() -> Layout:
    """Nitrate as N beside nitrate as NO3, alkalinity beside bicarbonate, two pH, lead beside lead-210."""
    rows = (
        Item("nitrate", None, "Nitrate as N", "6.1", "mg/L", 6.1, 6.1),
        Item("nitrate", None, "Nitrate as NO3", "27.0", "mg/L", 27.0 * 14.007 / 62.004, 27.0 * 14.007 / 62.004),
        Item("total_alkalinity", None, "Alkalinity, Total (as CaCO3)", "210", "mg/L", 210, 210),
        Item("bicarbonate", None, "Bicarbonate (HCO3)", "256", "mg/L", 256, 256),
        Item("ph", None, "pH, Field", "6.91", "SU", 6.91, 6.91),
        Item("ph", None, "pH, Lab", "7.20", "SU", 7.20, 7.20),
        Item("lead", None, "Lead", "2.2", "µg/L", 0.0022, 0.0022),
        Item("lead_210", None, "Lead-210", "0.9 ± 0.4", "pCi/L", 0.5 * 0.037, 1.3 * 0.037),
        Item("chromium", None, "Chromium", "3.1", "µg/L", 0.0031, 0.0031),
        Item("chromium_vi", None, "Chromium, Hexavalent", "1.9", "µg/L", 0.0019, 0.0019),
        Item("silica", None, "Silica (SiO2)", "17.1", "mg/L", 17.1, 17.1),
    )
    water = Water("TA-77", "Two Ash well", "2026-05-20", rows)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[3])
    paper.row(AT[:3], ("Analyte", "Result", "Units"), bold=True)
    for item in rows:
        paper.row(AT[:3], (item.name, item.value, item.unit))
    return Layout("pdf_both_forms", "pdf", paper.done(), (water,))


LAYOUTS = (
    ruled,
    unruled,
    side_by_side,
    many_pages,
    samples_as_columns,
    sections,
    fraction_headings,
    many_columns,
    previous_result,
    value_with_unit,
    quality_control,
    radiological,
    result_last,
    both_nitrates,
)
