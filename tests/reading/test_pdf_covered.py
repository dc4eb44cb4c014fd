"""Text under a box that is drawn after it: not shown where the box is opaque, shown where it lets the text through."""

import io

import pytest
from reportlab.lib.colors import Color
from reportlab.pdfgen.canvas import Canvas

import wellchem


def read(fill, *, alpha=1.0, after=True):
    stream = io.BytesIO()
    canvas = Canvas(stream, pagesize=(595, 842))
    canvas.setFont("Helvetica", 11)

    def box():
        canvas.saveState()
        canvas.setFillColor(Color(*fill, alpha=alpha))
        canvas.rect(50, 690, 300, 24, stroke=0, fill=1)
        canvas.restoreState()

    if not after:
        box()
    canvas.drawString(60, 760, "Sample: W-1")
    canvas.drawString(60, 730, "Zinc: 0.1 mg/L")
    canvas.drawString(60, 700, "Arsenic: 0.05 mg/L")
    if after:
        box()
    canvas.save()
    report = wellchem.read(stream.getvalue(), name="a.pdf")
    assert report.explanation.balanced
    found = {one.analyte for sample in report.samples for one in sample.results}
    return found, [(str(one.reason), one.text) for one in report.unread]


@pytest.mark.parametrize("fill", [(1, 1, 1), (0, 0, 0)])
def test_what_an_opaque_box_covers_is_not_shown(fill):
    assert read(fill) == ({"zinc"}, [("not_shown", "Arsenic: 0.05 mg/L")])


@pytest.mark.parametrize(
    ("fill", "alpha", "after"), [((1, 1, 1), 0.4, True), ((1, 1, 1), 1.0, False), ((1, 1, 0), 0.3, True)]
)
def test_a_box_behind_the_text_or_one_that_shines_through_hides_nothing(fill, alpha, after):
    assert read(fill, alpha=alpha, after=after) == ({"zinc", "arsenic"}, [])
