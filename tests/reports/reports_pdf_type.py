"""Layouts of text PDFs: how text is set (dots, running lines, footnotes, turned, spaced, emphasised). All invented."""

from __future__ import annotations

import io

import reports_catalog as catalog
from reportlab.lib.pagesizes import A4, landscape
from reportlab.pdfgen import canvas
from reports_catalog import Layout
from reports_pdf import AT, FULL, Paper, full, head


def dotted() -> Layout:
    """Dotted leaders from the name to the result."""
    water = catalog.water(100)
    paper = Paper(font="Courier")
    head(paper, water, catalog.LABORATORIES[3])
    for item in water.items:
        paper.text(f"{item.name} {'.' * max(3, 44 - len(item.name))} {item.value} {item.unit}")
    return Layout("pdf_dotted", "pdf", paper.done(), (water,))


def running_lines() -> Layout:
    """`Iron: 2.4 mg/L (limit 0.3)` line by line under a letter's text."""
    water = catalog.water(110)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[1])
    paper.text("Thank you for sending us your well's water. The results of our tests are as follows.")
    for item in water.items:
        tail = f" (guideline {item.limit})" if item.limit else ""
        paper.text(f"{item.name}: {item.value} {item.unit}{tail}")
    paper.text("If you have questions about these results please call the laboratory.")
    return Layout("pdf_running_lines", "pdf", paper.done(), (water,))


def wrapped_names() -> Layout:
    """Names broken over two lines, the values beside the first or between the two."""
    water = catalog.water(120)
    paper = Paper(lead=11)
    head(paper, water, catalog.LABORATORIES[2])
    at = (48, 140, 200, 260, 320, 380)
    paper.row(at, FULL, bold=True)
    paper.y -= 4
    for item in water.items:
        words = item.name.split(" ")
        cut = next((n for n in range(1, len(words) + 1) if len(" ".join(words[:n])) > 14), len(words))
        first, second = " ".join(words[:cut]), " ".join(words[cut:])
        paper.row(at, (first, *full(item)[1:]))
        if second:
            paper.row(at, (second, "", "", "", "", ""))
        paper.y -= 5
    return Layout("pdf_wrapped_names", "pdf", paper.done(), (water,))


def footnotes() -> Layout:
    """Superscript numbers and asterisks behind names and results, explained beneath."""
    water = catalog.water(140, censored=0)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[3])
    paper.row(AT[:4], ("Analyte", "Result", "Units", "RL"), bold=True)
    for number, item in enumerate(water.items):
        paper.page.setFont("Helvetica", 9)
        paper.page.drawString(AT[0], paper.y, item.name)
        paper.page.drawString(AT[1], paper.y, item.value + ("*" if number % 5 == 0 else ""))
        if number % 4 == 1:
            end = AT[1] + paper.page.stringWidth(item.value, "Helvetica", 9)
            paper.page.setFont("Helvetica", 6)
            paper.page.drawString(end, paper.y + 3.4, "2")
        paper.row(AT[:4], ("", "", item.unit, item.rl))
    paper.text("* Result exceeds the advisory level.", size=7)
    paper.text("2  Analysed by a partner laboratory.", size=7)
    return Layout("pdf_footnotes", "pdf", paper.done(), (water,))


def rotated() -> Layout:
    """A landscape table drawn on a page that is turned by its rotation entry."""
    water = catalog.water(150)
    size = landscape(A4)
    paper = Paper(size)
    paper.page.setPageRotation(0)
    head(paper, water, catalog.LABORATORIES[1])
    paper.row(AT, FULL, bold=True)
    for item in water.items:
        paper.row(AT, full(item))
    data = paper.done()
    return Layout("pdf_landscape", "pdf", data, (water,))


def turned() -> Layout:
    """The content is drawn sideways and the page carries /Rotate 90, so that it reads upright."""
    water = catalog.water(155)
    buffer = io.BytesIO()
    page = canvas.Canvas(buffer, pagesize=A4, invariant=True)
    page.setPageRotation(90)
    page.translate(A4[0], 0)
    page.rotate(90)
    page.setFont("Helvetica", 9)
    y = A4[0] - 40
    page.drawString(48, y, f"{catalog.LABORATORIES[2]}   Sample ID: {water.id}   Collected: {water.day}")
    for cells in (FULL, *map(full, water.items)):
        y -= 14
        for x, text in zip(AT, cells, strict=True):
            page.drawString(x, y, text)
    page.save()
    return Layout("pdf_turned", "pdf", buffer.getvalue(), (water,))


def emphasis() -> Layout:
    """Exceedances bold and red, false bold by overprinting, zebra shading, white text in the header band."""
    water = catalog.water(160)
    paper = Paper()
    head(paper, water, catalog.LABORATORIES[0])
    paper.page.setFillColorRGB(0.1, 0.2, 0.4)
    paper.page.rect(44, paper.y - 3, 510, 12, fill=1, stroke=0)
    paper.page.setFillColorRGB(1, 1, 1)
    paper.row(AT, FULL, bold=True)
    for number, item in enumerate(water.items):
        if number % 2:
            paper.page.setFillColorRGB(0.92, 0.92, 0.92)
            paper.page.rect(44, paper.y - 3, 510, 12, fill=1, stroke=0)
        paper.page.setFillColorRGB(*((0.8, 0, 0) if number % 3 == 0 else (0, 0, 0)))
        y = paper.y
        paper.row(AT, full(item), bold=number % 3 == 0)
        if number % 7 == 0:  # false bold: the same text again, a hair to the right
            paper.y = y
            paper.row(tuple(x + 0.3 for x in AT), full(item), bold=number % 3 == 0)
    return Layout("pdf_emphasis", "pdf", paper.done(), (water,))


def letter_spaced() -> Layout:
    """Letter-spaced header, kerned and ligature-rich text, tiny columns."""
    water = catalog.water(240)
    paper = Paper(points=8.5)
    head(paper, water, catalog.LABORATORIES[1])
    text = paper.page.beginText()
    for x, word in zip(AT, FULL, strict=True):
        text.setFont("Helvetica-Bold", 8)
        text.setCharSpace(1.6)
        text.setTextOrigin(x, paper.y)
        text.textOut(word.upper())
    text.setCharSpace(0)
    paper.page.drawText(text)
    paper.y -= paper.lead
    for item in water.items:
        paper.row(AT, full(item))
    return Layout("pdf_letter_spaced", "pdf", paper.done(), (water,))


LAYOUTS = (
    dotted,
    running_lines,
    wrapped_names,
    footnotes,
    rotated,
    turned,
    emphasis,
    letter_spaced,
)
