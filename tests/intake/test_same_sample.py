"""The same invented sample as a PDF (ruled and not), a workbook (long and wide) and delimited text is one frame."""

import io

import openpyxl
import pandas as pd
import pytest
from reportlab.lib.pagesizes import letter
from reportlab.lib.styles import getSampleStyleSheet
from reportlab.platypus import Paragraph, SimpleDocTemplate, Table

import wellchem

ROWS = [
    ("Total Coliform", "<1", "MPN/100 mL", "1"),
    ("E. coli", "<1", "MPN/100 mL", "1"),
    ("pH", "7.42", "SU", ""),
    ("Conductivity @25C", "655", "µS/cm", "2"),
    ("Alkalinity, Total (as CaCO3)", "315", "mg/L", "5"),
    ("Chloride", "16.1", "mg/L", "0.5"),
    ("Nitrate-N", "<0.05", "mg/L", "0.05"),
    ("Iron, total", "2.41", "mg/L", "0.05"),
    ("Iron, dissolved", "0.37", "mg/L", "0.05"),
    ("Arsenic", "12.4", "µg/L", "1"),
    ("Calcium", "1234.5", "mg/L", "0.2"),
]
HEAD = ("Analyte", "Result", "Units", "RL")
ABOUT = [("Sample ID", "QW-1"), ("Collected", "2026-05-03 10:20"), ("Site", "Tarn Edge well")]
ORIGIN = ["sample", "source", "page", "sheet", "row", "column", "printed_name", "printed_value", "printed_unit"]


def as_pdf(ruled):
    stream = io.BytesIO()
    style = getSampleStyleSheet()["Normal"]
    lines = [("GRID", (0, 0), (-1, -1), 0.5, (0, 0, 0))] if ruled else []
    parts = [Paragraph(f"{label}: {text}", style) for label, text in ABOUT]
    parts += [Table([HEAD, *ROWS], style=lines, hAlign="LEFT")]
    SimpleDocTemplate(stream, pagesize=letter).build(parts)
    return stream.getvalue()


def as_workbook(rows):
    book = openpyxl.Workbook()
    for row in rows:
        book.active.append(row)
    stream = io.BytesIO()
    book.save(stream)
    return stream.getvalue()


def as_text(delimiter, comma):
    def cell(text):
        text = text.replace(".", ",") if comma and text.strip("<").replace(".", "").isdigit() else text
        return f'"{text}"' if delimiter in text or "," in text else text

    rows = [HEAD, *ROWS]
    head = [f"{label}:{delimiter}{text}" for label, text in ABOUT]
    return ("\n".join(head) + "\n" + "\n".join(delimiter.join(map(cell, row)) for row in rows)).encode()


def number(text):
    try:
        return float(text)
    except ValueError:
        return text


FORMS = {
    "pdf ruled": lambda: as_pdf(True),
    "pdf without rules": lambda: as_pdf(False),
    "workbook long": lambda: as_workbook([*ABOUT, (), HEAD, *[(n, number(v), u, number(r)) for n, v, u, r in ROWS]]),
    "workbook wide": lambda: as_workbook(
        [
            [label for label, _ in ABOUT] + [name for name, _, _, _ in ROWS],
            ["", "", ""] + [unit for _, _, unit, _ in ROWS],
            ["RL", "", ""] + [limit for _, _, _, limit in ROWS],
            [text for _, text in ABOUT] + [number(value) for _, value, _, _ in ROWS],
        ]
    ),
    "comma": lambda: as_text(",", False),
    "semicolon with decimal comma": lambda: as_text(";", True),
}


def frame_of(form):
    report = wellchem.read(FORMS[form](), name="report")
    assert report.explanation.balanced
    assert report.unread == ()
    return report.to_frame().drop(columns=ORIGIN).reset_index(drop=True)


@pytest.mark.parametrize("form", [form for form in FORMS if form != "comma"])
def test_equal_but_for_origin(form):
    expected, found = frame_of("comma"), frame_of(form)
    assert len(expected) == len(ROWS)
    pd.testing.assert_frame_equal(found, expected, check_categorical=False, check_exact=True)
