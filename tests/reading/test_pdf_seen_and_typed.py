"""What is typed into a page is read; what nobody sees on it, or what is struck out, is told and not read."""

from __future__ import annotations

import io

import pytest
from reportlab.lib.pagesizes import letter
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen import canvas

import wellchem
from wellchem.models.codes import UnreadReason

AT = (50, 200, 280, 360)
HEAD = ("Parameter", "Result", "Units", "MCL")


def drawn(lines, *, rotate=0, crop=None, before=None, mode=0, after=None):
    """A page of a header and rows 24 points apart from y = 640."""
    buffer = io.BytesIO()
    page = canvas.Canvas(buffer, pagesize=letter[::-1] if rotate % 180 else letter, invariant=True)
    page.setPageRotation(rotate)
    if crop:
        page.setCropBox(crop)
    if before:
        before(page)
    page.setFont("Helvetica", 10)
    for y, cells in zip((660, 640, 616, 592, 568), (HEAD, *lines), strict=False):
        for x, cell in zip(AT, cells, strict=True):
            text = page.beginText(x, y)
            text.setTextRenderMode(mode)
            text.textOut(cell)
            page.drawText(text)
    if after:
        after(page)
    page.save()
    return buffer.getvalue()


def values(data):
    report = wellchem.read(data, name="page.pdf")
    assert report.explanation.balanced
    results = [result for sample in report.samples for result in sample.results]
    return {result.analyte: (result.low, result.high) for result in results}, report


LINES = (("Lead", "0.004", "mg/L", "0.015"), ("Nitrate as N", "12.1", "mg/L", "10"), ("Iron", "", "mg/L", "0.3"))
PRINTED = {"lead": (0.004, 0.004), "nitrate": (12.1, 12.1)}


def test_form_fields_are_read_where_they_stand():
    def fields(page):
        page.acroForm.textfield(name="iron", value="<0.05", x=198, y=587, width=70, height=18, fontSize=10)
        page.drawString(50, 568, "Total coliform")
        for x, word, ticked in ((200, "Present", False), (280, "Absent", True)):
            page.acroForm.checkbox(name=word, checked=ticked, x=x, y=564, size=14)
            page.drawString(x + 20, 568, word)

    read, report = values(drawn(LINES, after=fields))
    assert read == {**PRINTED, "iron": (0, 0.05), "total_coliform": (0, 0)}
    assert not report.unread


@pytest.mark.parametrize("rotate", [0, 90, 180, 270])
def test_free_text_is_read_and_a_comment_is_told(rotate):
    def comments(page):
        page.freeTextAnnotation("0.75", "/Helv 10 Tf 0 g", Rect=[198, 588, 260, 604])
        page.textAnnotation("Iron 0.9 was resampled", Rect=[400, 588, 420, 604])

    read, report = values(drawn(LINES, rotate=rotate, after=comments))
    assert read == {**PRINTED, "iron": (0.75, 0.75)}
    assert [(one.reason, one.text) for one in report.unread] == [(UnreadReason.NOT_SHOWN, "Iron 0.9 was resampled")]


def test_white_text_is_read_only_on_a_band():
    def band(page):
        page.setFillColorRGB(0.1, 0.2, 0.5)
        page.rect(45, 655, 400, 16, fill=1, stroke=0)
        page.rect(45, 612, 400, 16, fill=1, stroke=0)
        page.setFillColorRGB(1, 1, 1)

    read, report = values(drawn(LINES[:2], before=band))
    assert read == {"nitrate": (12.1, 12.1)}
    assert [(one.reason, one.text) for one in report.unread] == [
        (UnreadReason.NOT_SHOWN, "Lead | 0.004 | mg/L | 0.015")
    ]


def test_unpainted_text_is_read_only_over_a_picture_and_it_is_said():
    with pytest.raises(wellchem.errors.NothingFound):
        wellchem.read(drawn(LINES[:2], mode=3), name="page.pdf")

    def picture(page):
        page.drawImage(ImageReader(io.BytesIO(PIXEL)), 0, 0, *letter)

    read, report = values(drawn(LINES[:2], mode=3, before=picture))
    assert read == PRINTED
    assert any("recognised in a picture" in note for note in report.explanation.notes)


def test_text_off_the_shown_page_is_told():
    read, report = values(drawn(LINES[:2], crop=(0, 625, 612, 792)))
    assert read == {"lead": (0.004, 0.004)}
    assert [one.reason for one in report.unread] == [UnreadReason.NOT_SHOWN]


def test_a_value_struck_out_is_not_the_result():
    def amended(page):
        page.line(199, 643, 226, 643)
        page.drawString(232, 640, "0.021")

    read, report = values(drawn(LINES[:2], after=amended))
    assert read == {**PRINTED, "lead": (0.021, 0.021)}
    assert [(one.reason, one.text) for one in report.unread] == [(UnreadReason.STRUCK_OUT, "0.004")]


PIXEL = b"P6 1 1 255 \xfa\xfa\xfa"
