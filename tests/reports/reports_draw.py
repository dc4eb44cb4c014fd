"""Means to print invented reports: rows of text with their truth, flowed documents, pages printed by a browser."""

from __future__ import annotations

import io
import shutil
import subprocess
import tempfile
from collections.abc import Iterable, Sequence
from pathlib import Path

from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph, SimpleDocTemplate, Spacer, Table, TableStyle
from reports_catalog import INF, Item
from reports_pdf import Paper

BROWSER = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")

Truth = tuple[str, float] | tuple[str, float, float] | tuple[str, float, float, str]
Line = tuple[Sequence[str], *tuple[Truth, ...]]  # the cells of a row, and what each of its results means


def found(key, low, high=None, fraction=None, flag=""):
    """What one printed result means: the analyte, its bounds in canonical units, the fraction, a qualifier."""
    return key, low, low if high is None else high, fraction, flag


def less(key, high, fraction=None, flag=""):
    """Not detected below a bound."""
    return key, 0, high, fraction, flag


def present(key):
    return key, 1, INF, None, ""


def absent(key):
    return key, 0, 0, None, ""


def items_of(lines: Iterable[Line], name: int = 0) -> tuple[Item, ...]:
    """The truth of lines whose names stand in this column."""
    made = []
    for cells, *truths in lines:
        for key, low, high, fraction, flag in truths:
            made.append(Item(key, fraction, cells[name], "", "", low, high, flag=flag))
    return tuple(made)


def fill(paper: Paper, at: Sequence[float], lines: Sequence[Line], *, name: int = 0, right=()) -> tuple[Item, ...]:
    """Draw lines and give their truth."""
    for cells, *_ in lines:
        paper.row(at, cells, right=right)
    return items_of(lines, name)


def flowed(story: list, *, size=A4, margin=36, **document) -> bytes:
    """A document of flowables."""
    buffer = io.BytesIO()
    made = SimpleDocTemplate(
        buffer,
        pagesize=size,
        leftMargin=margin,
        rightMargin=margin,
        topMargin=margin,
        bottomMargin=margin,
        invariant=True,
    )
    made.build(story, **document)
    return buffer.getvalue()


def words(text: str, size: float = 9, *, bold: bool = False, **style) -> Paragraph:
    font = "Helvetica-Bold" if bold else "Helvetica"
    return Paragraph(text, ParagraphStyle("own", fontName=font, fontSize=size, leading=1.2 * size, **style))


def space(height: float = 8) -> Spacer:
    return Spacer(1, height)


def table(
    cells: Sequence[Sequence[object]], widths: Sequence[float], *styles, size: float = 8, repeat: int = 1
) -> Table:
    """A table whose texts wrap."""
    wrapped = [[words(cell, size) if isinstance(cell, str) else cell for cell in row] for row in cells]
    made = Table(wrapped, colWidths=widths, repeatRows=repeat)
    made.setStyle(TableStyle([("VALIGN", (0, 0), (-1, -1), "TOP"), *styles]))
    return made


def browser(html: str) -> bytes:
    """A page as a browser prints it."""
    with tempfile.TemporaryDirectory() as folder:
        page, out = Path(folder, "page.html"), Path(folder, "page.pdf")
        page.write_text(f"<!doctype html><meta charset=utf-8>{html}", "utf-8")
        subprocess.run(
            [BROWSER, "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder}/own",
             f"--print-to-pdf={out}", page.as_uri()],
            check=True, capture_output=True, timeout=90,
        )  # fmt: skip
        return out.read_bytes()


def html_rows(lines: Sequence[Line], tag: str = "td") -> str:
    return "".join("<tr>" + "".join(f"<{tag}>{cell}</{tag}>" for cell in cells) + "</tr>" for cells, *_ in lines)
