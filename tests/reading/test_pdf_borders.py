"""Borders of tables as browsers draw them: sides with mitred ends, and tables whose outer sides are not drawn."""

import io

import pytest
from reportlab.pdfgen.canvas import Canvas

import wellchem

ROWS = (
    ("Analyte", "Result", "Units", "RL", "MCL"), ("Iron", "0.42", "mg/L", "0.05", "0.3"),
    ("Manganese", "ND", "mg/L", "0.005", "0.05"), ("Nitrate as N", "4.2", "mg/L", "0.1", "10"),
    ("pH", "7.1", "", "", "6.5-8.5"), ("Fluoride", "0.3", "mg/L", "0.1", "4"),
)  # fmt: skip
XS, TOP, STEP = (34, 141, 182, 226, 260, 302), 700, 15.7


def mitred(canvas, x0, y0, x1, y1):
    """One side of a border as a filled shape whose ends are cut aslant."""
    path = canvas.beginPath()
    if x1 - x0 > y1 - y0:
        points = [(x0, y0), (x1, y0), (x1 - 0.8, y1), (x0 + 0.8, y1)]
    else:
        points = [(x0, y0), (x0, y1), (x1, y1 - 0.8), (x1, y0 + 0.8)]
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    path.close()
    canvas.drawPath(path, stroke=0, fill=1)


def page(border):
    stream = io.BytesIO()
    canvas = Canvas(stream, pagesize=(595, 842))
    canvas.setFont("Helvetica-Bold", 16)
    canvas.drawString(34, 760, "Harbor Hill Laboratory")
    canvas.setFont("Helvetica", 8.5)
    canvas.drawString(34, 735, "Sample ID: W-17")
    canvas.drawString(111, 735, "Collected: 2026-05-03")
    for row, cells in enumerate(ROWS):
        for column, text in enumerate(cells):
            canvas.drawString(XS[column] + 6, TOP - STEP * row + 4, text)
    bottom = TOP - STEP * (len(ROWS) - 1)
    if border == "mitred":
        for x in XS:
            mitred(canvas, x, bottom, x + 0.75, TOP + STEP)
        for row in range(len(ROWS) + 1):
            mitred(canvas, XS[0], TOP + STEP * (1 - row), XS[-1], TOP + STEP * (1 - row) + 0.75)
    elif border == "open sides":
        for x in XS[1:-1]:
            canvas.line(x, bottom, x, TOP + STEP)
        for row in range(1, len(ROWS) + 1):
            canvas.line(XS[0], TOP + STEP * (1 - row), XS[-1], TOP + STEP * (1 - row))
    canvas.save()
    return stream.getvalue()


@pytest.mark.parametrize("border", ["none", "mitred", "open sides"])
def test_every_column_is_read_whatever_the_border(border):
    report = wellchem.read(page(border), name="a.pdf")
    assert report.explanation.balanced
    (sample,) = report.samples
    assert (sample.id, str(sample.collected)) == ("W-17", "2026-05-03")
    assert {one.analyte: (one.high, one.reporting_limit) for one in sample.results} == {
        "iron": (0.42, 0.05), "manganese": (0.005, 0.005), "nitrate": (4.2, 0.1), "ph": (7.1, None),
        "fluoride": (0.3, 0.1),
    }  # fmt: skip
    assert not report.unread


def test_not_detected_with_a_unit_is_no_neodymium():
    report = wellchem.read(b"Sample: W-1\nIron,ND mg/L,0.05\nND mg/L,0.005,0.3\nZinc: 0.1 mg/L\n", name="a.csv")
    assert "neodymium" not in {one.analyte for sample in report.samples for one in sample.results}


@pytest.mark.parametrize("spacing", [0, 1, 2, 3, 4])
def test_lowered_figures_of_letters_spaced_out_stay_in_their_name(spacing):
    stream = io.BytesIO()
    canvas = Canvas(stream, pagesize=(595, 842))
    rows = (("Analyte", "Result", "Units"), ("Total Hardness (CaCO", "210", "mg/L"), ("Sodium", "31", "mg/L"),
            ("Chloride", "12", "mg/L"))  # fmt: skip
    for row, cells in enumerate(rows):
        y = 760 - 18 * row
        for column, text in enumerate(cells):
            line = canvas.beginText(40 + 250 * column, y)
            line.setFont("Helvetica", 9)
            line.setCharSpace(spacing)
            line.textOut(text)
            if text.endswith("CaCO"):
                line.setFont("Helvetica", 6.5)
                line.setRise(-2)
                line.textOut("3")
                line.setFont("Helvetica", 9)
                line.setRise(0)
                line.textOut(")")
            canvas.drawText(line)
    canvas.save()
    report = wellchem.read(stream.getvalue(), name="a.pdf")
    found = {one.analyte: one.value for sample in report.samples for one in sample.results}
    if spacing > 2 and "total_hardness" not in found:  # letters a third of their size apart: the name may be unread
        assert any("210" in one.text for one in report.unread)
        found["total_hardness"] = 210.0
    assert found == {"total_hardness": 210.0, "sodium": 31.0, "chloride": 12.0}
