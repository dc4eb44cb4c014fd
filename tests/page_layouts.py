"""Report pages of invented laboratories in many layouts, drawn word by word or flowed, as PDF bytes."""

from __future__ import annotations

import io
from collections.abc import Callable, Sequence

from reportlab.lib import colors
from reportlab.lib.pagesizes import letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Paragraph, SimpleDocTemplate, Spacer, Table, TableStyle

WIDTH, HEIGHT = letter
HEADER = ("Analyte", "Result", "Units", "RL", "Limit", "Method")
ROWS = (
    ("Iron, total", "2.4", "mg/L", "0.05", "0.3", "SM 3111B"),
    ("Manganese", "<0.01", "mg/L", "0.01", "0.05", "SM 3111B"),
    ("Nitrate + Nitrite as N", "12.6", "mg/L", "0.10", "10", "EPA 353.2"),
    ("Total Dissolved Solids (TDS)", "512", "mg/L", "10", "500", "SM 2540C"),
    ("pH", "7.1", "SU", "", "6.5-8.5", "SM 4500-H+"),
    ("Total Coliform", "Absent", "per 100 mL", "", "", "SM 9223"),
    ("Bis(2-ethylhexyl)phthalate, semivolatile", "ND", "ug/L", "2", "6", "EPA 525.2"),
)
HEAD = (
    ("Client:", "M. Hollis", "Report No.:", "RC-2219"),
    ("Site:", "Well 3, Hollow Lane", "Collected:", "04/12/2026 09:15"),
    ("Sample point:", "Kitchen tap", "Received:", "04/13/2026"),
)


class Page:
    """A canvas with short words for what the layouts draw; y is counted downwards from the top."""

    def __init__(self) -> None:
        self.out = io.BytesIO()
        self.canvas = Canvas(self.out, pagesize=letter)

    def text(
        self, x: float, y: float, words: str, *, font: str = "Helvetica", size: float = 9, align: str = "l"
    ) -> None:
        self.canvas.setFont(font, size)
        draw = {"l": self.canvas.drawString, "r": self.canvas.drawRightString, "c": self.canvas.drawCentredString}[
            align
        ]
        draw(x, HEIGHT - y, words)

    def runs(self, x: float, y: float, *runs: tuple[str, float, float], spacing: float = 0.0) -> None:
        """Runs of (text, size, rise) one after the other."""
        text = self.canvas.beginText(x, HEIGHT - y)
        text.setCharSpace(spacing)
        for words, size, rise in runs:
            text.setFont("Helvetica", size)
            text.setRise(rise)
            text.textOut(words)
        text.setRise(0)
        text.setCharSpace(0)
        self.canvas.drawText(text)

    def row(
        self, y: float, xs: Sequence[float], cells: Sequence[str], right: Sequence[int] = (), **how: object
    ) -> None:
        for at, (x, cell) in enumerate(zip(xs, cells, strict=False)):
            if cell:
                self.text(x, y, cell, align="r" if at in right else "l", **how)  # type: ignore[arg-type]

    def head(self) -> float:
        """The laboratory's name and a block of labels and what they say; where it ends."""
        self.text(WIDTH / 2, 40, "Redstone Creek Analytical Laboratory", font="Helvetica-Bold", size=14, align="c")
        self.text(WIDTH / 2, 54, "14 Mill Road, Harrow Falls", align="c")
        for at, cells in enumerate(HEAD):
            self.row(80 + 13 * at, (50, 130, 330, 420), cells)
        return 80 + 13 * len(HEAD)

    def turned(self, x: float, y: float, angle: float, words: str, size: float = 9) -> None:
        self.canvas.saveState()
        self.canvas.translate(x, HEIGHT - y)
        self.canvas.rotate(angle)
        self.canvas.setFont("Helvetica", size)
        self.canvas.drawString(0, 0, words)
        self.canvas.restoreState()

    def pdf(self) -> bytes:
        self.canvas.save()
        return self.out.getvalue()


def unruled(xs: Sequence[float] = (50, 230, 300, 370, 420, 480), *, pitch: float = 13, section: str = "") -> bytes:
    """Head, table without rules, a note below."""
    page = Page()
    y = page.head() + 20
    page.row(y, xs, HEADER, font="Helvetica-Bold")
    if section:
        y += pitch
        page.text(xs[0], y, section, font="Helvetica-Bold")
    for cells in ROWS:
        y += pitch
        page.row(y, xs, cells)
    page.text(
        50, y + 30, "ND = not detected at the reporting limit. RL = reporting limit. Results relate to the sample only."
    )
    page.text(WIDTH / 2, 760, "Page 1 of 1", align="c")
    return page.pdf()


WRAPPED = (
    (("Iron",), "2.4", "mg/L", "SM 3111B"),
    (("Total Dissolved", "Solids (TDS)"), "512", "mg/L", "SM 2540C"),
    (("Nitrate + Nitrite", "as N"), "12.6", "mg/L", "EPA 353.2"),
    (("Bis(2-ethylhexyl)", "phthalate"), "ND", "ug/L", "EPA 525.2"),
    (("Zinc",), "0.08", "mg/L", "EPA 200.8"),
)


def wrapped(place: str) -> bytes:
    """Names of two lines with the values on the first line, on the last or between."""
    page = Page()
    xs = (50, 170, 220, 280)
    page.row(100, xs, ("Analyte", "Result", "Units", "Method"))
    y = 122.0
    for names, *cells in WRAPPED:
        more = 10.0 * (len(names) - 1)
        for at, name in enumerate(names):
            page.text(50, y + 10 * at, name)
        page.row(y + {"first": 0.0, "last": more, "between": more / 2}[place], xs[1:], cells)
        y += more + 18
    return page.pdf()


def flowed(style: Sequence[tuple[object, ...]], rows: Sequence[Sequence[str]] = ROWS, times: int = 1) -> bytes:
    """A table of wrapping paragraphs with some style of rules, over as many pages as it needs."""
    out = io.BytesIO()
    small = ParagraphStyle("small", fontSize=8, leading=9.5)
    cells = [[Paragraph(text, small) for text in row] for row in (HEADER, *rows * times)]
    note = "ND = not detected. The results relate only to the sample as it was received by the laboratory. " * 3
    SimpleDocTemplate(out, pagesize=letter).build(
        [
            Table(cells, colWidths=(110, 50, 60, 50, 60, 90), style=TableStyle(list(style)), repeatRows=1),
            Spacer(1, 12),
            Paragraph(note, small),
        ]
    )
    return out.getvalue()


GREY = colors.grey
RULES: dict[str, list[tuple[object, ...]]] = {
    "grid": [("GRID", (0, 0), (-1, -1), 0.5, GREY)],
    "row lines": [("LINEBELOW", (0, 0), (-1, -1), 0.3, GREY)],
    "three lines": [
        ("LINEABOVE", (0, 0), (-1, 0), 1, GREY),
        ("LINEBELOW", (0, 0), (-1, 0), 0.5, GREY),
        ("LINEBELOW", (0, -1), (-1, -1), 1, GREY),
    ],
    "column lines": [
        ("BOX", (0, 0), (-1, 0), 0.5, GREY),
        ("LINEAFTER", (0, 0), (-2, -1), 0.5, GREY),
        ("BOX", (0, 0), (-1, -1), 0.5, GREY),
    ],
    "stripes": [("ROWBACKGROUNDS", (0, 0), (-1, -1), [colors.whitesmoke, colors.white])],
    "marked cells": [("BACKGROUND", (1, 1), (1, 1), colors.yellow), ("TEXTCOLOR", (1, 3), (1, 3), colors.white)],
    "frame": [("BOX", (0, 0), (-1, -1), 0.5, GREY), ("LINEBELOW", (0, 0), (-1, 0), 0.5, GREY)],
    "none": [],
}  # fmt: skip


def dotted() -> bytes:
    """Dots that lead from the name to the value: typed without blanks, and drawn one by one."""
    page = Page()
    y = 100.0
    for name, value in (("Zinc", "0.08 mg/L"), ("Total hardness as CaCO3", "212 mg/L"), ("Lead", "<0.001 mg/L")):
        dots = int((240 - page.canvas.stringWidth(name, "Helvetica", 9)) / page.canvas.stringWidth(".", "Helvetica", 9))
        page.text(50, y, f"{name} {'.' * dots} {value}")
        y += 13
    for name, value in (("Iron", "2.4 mg/L"), ("Nickel", "0.003 mg/L")):
        page.text(50, y, name)
        for x in range(120, 296, 6):
            page.text(x, y, ".")
        page.text(302, y, value)
        y += 13
    return page.pdf()


SIDE = (("Iron", "2.4", "mg/L"), ("Copper", "0.8", "mg/L"), ("Lead", "<0.001", "mg/L"), ("Zinc", "0.08", "mg/L"))
OTHER_SIDE = (("pH", "7.1", "SU"), ("Color", "5", "PCU"), ("Turbidity", "0.4", "NTU"))


def side_by_side(shift: float) -> bytes:
    """Two tables side by side, the right one lower by a shift."""
    page = Page()
    for left, rows, down in ((50, SIDE, 0.0), (330, OTHER_SIDE, shift)):
        for at, cells in enumerate((HEADER[:3], *rows)):
            page.row(100 + 13 * at + down, (left, left + 120, left + 170), cells)
    return page.pdf()


def framed() -> bytes:
    """Two tables side by side, each within the cell of a drawn frame."""
    out = io.BytesIO()
    inner = [Table([HEADER[:3], *rows], colWidths=(90, 50, 50)) for rows in (SIDE, OTHER_SIDE)]
    SimpleDocTemplate(out, pagesize=letter).build(
        [Table([inner], style=TableStyle([("GRID", (0, 0), (-1, -1), 0.5, GREY), ("VALIGN", (0, 0), (-1, -1), "TOP")]))]
    )
    return out.getvalue()


def beside_text() -> bytes:
    """Running text in a column beside a table, below a title across both."""
    page = Page()
    page.text(WIDTH / 2, 50, "A plain guide to the results for the wells of Hollow Lane in 2026", size=14, align="c")
    line = "Water from a private well is tested by nobody else"
    for at in range(14):
        page.text(50, 80 + 12 * at, line)
    for at, cells in enumerate((HEADER[:3], *SIDE)):
        page.row(80 + 15 * at, (330, 420, 470), cells)
    return page.pdf()


def raised() -> bytes:
    """Figures raised behind values and units, lowered ones within formulas."""
    page = Page()
    for at, (value, mark) in enumerate((("0.31", "2"), ("1.2", ""), ("12", "a"), ("<0.05", "*"), ("0.0021", "1,2"))):
        page.text(50, 60 + 14 * at, ("Iron", "Radium", "Colour", "Zinc", "Lead")[at])
        page.runs(200, 60 + 14 * at, (value, 9, 0), (mark, 6, 3.5))
        page.text(300, 60 + 14 * at, "mg/L")
    page.runs(50, 160, ("CaCO", 9, 0), ("3", 6, -2), (" in g/m", 9, 0), ("3", 6, 3.5), ("/d", 9, 0))
    page.runs(50, 180, ("1.2 x 10", 9, 0), ("-3", 6, 3.5))
    page.runs(50, 200, ("226", 6, 3.5), ("Ra", 9, 0))
    return page.pdf()


def letters() -> bytes:
    """Text that is spaced out, doubled to look bold, shadowed, white, kerned without blanks."""
    page = Page()
    page.runs(50, 60, ("CERTIFICATE OF ANALYSIS", 11, 0), spacing=4)
    page.text(50, 90, "S A M P L E   R E S U L T S")
    for by in (0, 0.3):
        page.text(50 + by, 120, "Manganese 11.00 mg/L")
    for by in (0, 1.0):
        page.text(50 + by, 150 + by, "Shadow")
    page.canvas.setFillColorRGB(1, 1, 1)
    page.text(50, 180, "white text")
    page.canvas.setFillColorRGB(0, 0, 0)
    x = 50.0
    for word in ("no", "blanks", "drawn"):
        page.text(x, 210, word)
        x += page.canvas.stringWidth(word, "Helvetica", 9) + 2.4
    return page.pdf()


def turned_page() -> bytes:
    """A landscape table drawn sideways on an upright page."""
    page = Page()
    page.canvas.translate(WIDTH, 0)
    page.canvas.rotate(90)
    for at, cells in enumerate((HEADER, *ROWS)):
        page.row(242 + 14 * at, (50, 300, 370, 450, 520, 600), cells)
    return page.pdf()


def turned_header() -> bytes:
    """Column headers written upwards."""
    page = Page()
    for at, name in enumerate(("Iron (mg/L)", "Manganese (mg/L)", "Nitrate as N", "pH")):
        page.turned(180 + 60 * at, 160, 90, name)
    page.text(50, 160, "Sample")
    for at, cells in enumerate((("Well 1", "0.3", "0.05", "1.2", "7.1"), ("Well 2", "<0.05", "0.01", "4.8", "6.9"))):
        page.row(176 + 16 * at, (50, 170, 230, 290, 350), cells)
    page.turned(300, 500, 45, "DRAFT", 60)
    return page.pdf()


def picture_page(also_text: bool) -> bytes:
    """A page with a drawing and no text; behind it one with text, if wanted."""
    page = Page()
    page.canvas.rect(100, 100, 200, 300, fill=1)
    page.canvas.showPage()
    if also_text:
        page.text(50, 60, "Iron 2.4 mg/L")
        page.canvas.showPage()
    return page.pdf()


SECTION = "Metals, Dissolved (filtered in the field)"
LONG = ("grid", "none", "row lines")
LAYOUTS: dict[str, Callable[[], bytes]] = {
    "unruled": unruled,
    "unruled, tight": lambda: unruled((50, 226, 258, 298, 322, 352), section=SECTION),
    "dotted": dotted,
    "side by side": lambda: side_by_side(0),
    "side by side, shifted": lambda: side_by_side(5),
    "framed": framed,
    "beside text": beside_text,
    "raised": raised,
    "letters": letters,
    "turned page": turned_page,
    "turned header": turned_header,
    **{f"wrapped, values {place}": (lambda place=place: wrapped(place)) for place in ("first", "last", "between")},
    **{f"flowed, {rules}": (lambda rules=rules: flowed(RULES[rules])) for rules in RULES},
    **{f"long, {rules}": (lambda rules=rules: flowed(RULES[rules], times=12)) for rules in LONG},
}  # fmt: skip
