"""Pages become grids: every word once, columns where a reader sees them, errors that say what to do."""

from __future__ import annotations

import io
import logging
import unicodedata
import warnings
from collections import Counter

import numpy as np
import page_layouts as pages
import pdfplumber
import pytest
from random_pages import random_page

from wellchem.errors import CorruptFile, EncryptedFile, NoText
from wellchem.reading.formats import open_source


def table(grids, first):
    """Rows of the grid that has a row beginning so, from that row on."""
    for grid in grids:
        rows = [grid.row(at) for at in range(grid.height)]
        for at, row in enumerate(rows):
            if row[: len(first)] == first:
                return rows[at:]
    raise AssertionError([grid.row(0) for grid in grids])


def letters(text):
    """Letters and figures of a text, raised ones as plain."""
    return Counter(unicodedata.normalize("NFKC", text).replace(" ", "").replace("−", "-"))


@pytest.mark.parametrize("name", pages.LAYOUTS)
def test_every_character_is_in_one_cell(name):
    """Against pdfplumber's characters, blanks apart; leaders and what is drawn twice are left out by intent."""
    data = pages.LAYOUTS[name]()
    source = open_source(data)
    with pdfplumber.open(io.BytesIO(data)) as document:
        drawn = letters("".join(char["text"] for page in document.pages for char in page.chars))
    if name == "letters":
        drawn -= letters("Manganese 11.00 mg/L Shadow")
    cells = [
        text
        for grid in source.grids
        for column in grid.columns
        for text in (column.text(at) for at in range(grid.height))
    ]
    found = letters("".join(cells))
    if name == "dotted":
        del drawn["."], found["."]
    assert found == drawn


@pytest.mark.parametrize("name", pages.LAYOUTS)
def test_counts_and_boxes(name):
    """Words are counted in the cell that holds them, and each cell's box lies on the page."""
    for grid in open_source(pages.LAYOUTS[name]()).grids:
        filled = np.stack([column.codes >= 0 for column in grid.columns], axis=1)
        assert ((grid.words > 0) == filled).all()
        assert (np.isnan(grid.boxes).all(axis=2) == ~filled).all()
        words = sum(
            len(grid.columns[column].text(row).split()) for row, column in zip(*np.nonzero(filled), strict=True)
        )
        assert grid.count() == words
        boxes = grid.boxes[filled]
        assert (boxes[:, 0] < boxes[:, 2]).all()
        assert (boxes[:, 1] < boxes[:, 3]).all()
        assert (boxes >= -1).all()
        assert (boxes[:, [0, 2]] <= 613).all()
        assert (boxes[:, [1, 3]] <= 793).all()
        assert (np.diff(grid.rows) >= 0).all()


@pytest.mark.parametrize(
    "name", ["unruled", "unruled, tight", "turned page", "flowed, grid", *(f"flowed, {r}" for r in pages.RULES)]
)
def test_a_table_is_read_as_it_was_drawn(name):
    rows = [
        row for row in table(open_source(pages.LAYOUTS[name]()).grids, pages.HEADER) if not row[0].startswith("Metals")
    ]
    assert rows[0] == pages.HEADER
    assert rows[1 : 1 + len(pages.ROWS)] == list(pages.ROWS)
    assert len(rows) == 1 + len(pages.ROWS)


@pytest.mark.parametrize("place", ["first", "last", "between"])
def test_a_wrapped_name_is_one_row(place):
    rows = table(open_source(pages.wrapped(place)).grids, ("Analyte",))
    assert rows[1:] == [(" ".join(names), *cells) for names, *cells in pages.WRAPPED]


def test_a_heading_inside_a_table_is_one_cell():
    source = open_source(pages.LAYOUTS["unruled, tight"]())
    row = next(row for row in table(source.grids, ("Analyte",)) if row[0].startswith("Metals"))
    assert row == ("Metals, Dissolved (filtered in the field)", "", "", "", "", "")


def test_the_head_stands_apart_from_the_table():
    rows = table(open_source(pages.unruled()).grids, ("Client:",))
    assert rows == list(pages.HEAD)


def test_leaders_part_cells_and_are_said():
    source = open_source(pages.dotted())
    rows = [tuple(cell for cell in grid.row(at) if cell) for grid in source.grids for at in range(grid.height)]
    assert ("Total hardness as CaCO3", "212 mg/L") in rows
    assert ("Nickel", "0.003 mg/L") in rows
    assert any("leaders" in note for note in source.notes)


def test_tables_side_by_side():
    """On common baselines they are one grid with repeated header words; on others they are two."""
    (together,) = open_source(pages.side_by_side(0)).grids
    assert together.row(0) == pages.HEADER[:3] * 2
    for data in (pages.side_by_side(5), pages.framed()):
        left, right = open_source(data).grids
        assert [left.row(at) for at in range(left.height)] == [pages.HEADER[:3], *pages.SIDE]
        assert [right.row(at) for at in range(right.height)] == [pages.HEADER[:3], *pages.OTHER_SIDE]


def test_running_text_beside_a_table():
    source = open_source(pages.beside_text())
    assert [grid.width for grid in source.grids] == [1, 1, 3]  # title, text, table
    assert table(source.grids, ("Analyte",)) == [pages.HEADER[:3], *pages.SIDE]


def test_raised_figures_never_join_a_number():
    source = open_source(pages.raised())
    values = [cell for grid in source.grids for at in range(grid.height) for cell in grid.row(at)]
    assert [value for value in values if value[:1] in "<01"][:5] == ["0.31²", "1.2", "12ᵃ", "<0.05*", "0.0021¹,²"]
    assert "CaCO3 in g/m³/d" in values
    assert "1.2 x 10⁻³" in values
    assert "²²⁶Ra" in values
    marks = [mark.text for grid in source.grids for mark in grid.marks if mark.kind == "superscript"]
    assert marks == ["2", "a", "*", "1,2", "3", "-3", "226"]


def test_letters_are_put_together():
    source = open_source(pages.letters())
    lines = [" ".join(cell for cell in grid.row(at) if cell) for grid in source.grids for at in range(grid.height)]
    assert lines == [
        "CERTIFICATE OF ANALYSIS",
        "SAMPLE RESULTS",
        "Manganese 11.00 mg/L",
        "Shadow",
        "no blanks drawn",
        "white text",
    ]
    assert [grid.aside for grid in source.grids][-1] == "not_shown"  # white on the bare page


def test_turned_headers_are_the_header_row():
    source = open_source(pages.turned_header())
    rows = table(source.grids, ("Sample",))
    assert rows[0] == ("Sample", "Iron (mg/L)", "Manganese (mg/L)", "Nitrate as N", "pH")
    assert rows[2] == ("Well 2", "<0.05", "0.01", "4.8", "6.9")
    (stamp,) = [grid for grid in source.grids if "slanted text across the page" in grid.notes]
    assert stamp.row(0) == ("DRAFT",)


def test_boxes_of_a_turned_page_are_in_the_pages_own_points():
    data = pages.turned_page()
    with pdfplumber.open(io.BytesIO(data)) as document:
        chars = [char for char in document.pages[0].chars if char["text"] == "B" and char["fontname"] == "Helvetica"]
    (grid,) = open_source(data).grids
    at = next(at for at in range(grid.height) if grid.row(at)[0].startswith("Bis"))
    x0, top, x1, bottom = grid.boxes[at, 0]
    assert any(
        x0 - 1 <= char["x0"] and char["x1"] <= x1 + 1 and top - 1 <= char["top"] and char["bottom"] <= bottom + 1
        for char in chars
    )
    assert bottom - top > x1 - x0


@pytest.mark.parametrize("rules", ["grid", "none", "row lines"])
def test_a_table_over_pages(rules):
    source = open_source(pages.LAYOUTS[f"long, {rules}"]())
    assert {grid.page for grid in source.grids} == set(range(1, max(grid.page for grid in source.grids) + 1))
    rows = [grid.row(at) for grid in source.grids if grid.width == 6 for at in range(grid.height)]
    assert [row for row in rows if row != pages.HEADER] == list(pages.ROWS) * 12


def test_pages_without_text():
    with pytest.raises(NoText, match="pictures without text"):
        open_source(pages.picture_page(False))
    source = open_source(pages.picture_page(True))
    assert [grid.page for grid in source.grids] == [2]
    assert any("without text" in note and note.endswith("1") for note in source.notes)


def test_encrypted_and_damaged(capsys, caplog):
    from reportlab.lib.pdfencrypt import StandardEncryption
    from reportlab.pdfgen.canvas import Canvas

    out = io.BytesIO()
    canvas = Canvas(out, encrypt=StandardEncryption("secret", ownerPassword="owner"))
    canvas.drawString(50, 700, "Iron 2.4 mg/L")
    canvas.save()
    data = pages.unruled()
    with warnings.catch_warnings(), caplog.at_level(logging.DEBUG):
        warnings.simplefilter("error")
        with pytest.raises(EncryptedFile):
            open_source(out.getvalue(), name="report.pdf")
        for broken in (b"%PDF-1.4\n", data[:400], data[: len(data) // 2], b"%PDF-1.7\n" + b"\x00garbage" * 200):
            with pytest.raises((CorruptFile, NoText), match=r"report\.pdf"):
                open_source(broken, name="report.pdf")
    assert capsys.readouterr() == ("", "")
    assert not [
        record for record in caplog.records if record.name.startswith("pdfminer") and record.levelno >= logging.INFO
    ]


def test_a_file_without_the_owners_password_only_is_read():
    """A report that may be opened but not changed has an empty user password."""
    from reportlab.lib.pdfencrypt import StandardEncryption
    from reportlab.pdfgen.canvas import Canvas

    out = io.BytesIO()
    canvas = Canvas(out, encrypt=StandardEncryption("", ownerPassword="owner", canModify=0))
    canvas.drawString(50, 700, "Iron 2.4 mg/L")
    canvas.save()
    (grid,) = open_source(out.getvalue()).grids
    assert grid.row(0) == ("Iron 2.4 mg/L",)


def test_random_tables_without_rules():
    """Of the rows drawn at least 995 in 1,000 come back cell by cell, and none with another number in it."""
    drawn, whole = 0, 0
    for seed in range(120):
        page = random_page(seed)
        if page is None:
            continue
        rows, data = page
        read = {
            tuple(cell for cell in grid.row(at) if cell)
            for grid in open_source(data).grids
            for at in range(grid.height)
        }
        drawn += len(rows)
        whole += sum(tuple(cell for cell in row if cell) in read for row in rows)
    assert drawn > 1000
    assert whole >= 0.995 * drawn


def test_signs_of_symbol_fonts():
    """A mu drawn as the letter m of Symbol is no milligram."""
    page = pages.Page()
    page.text(50, 60, "Arsenic 4.2 \u03bcg/L")  # Helvetica has no Greek letters: the mu is drawn in Symbol
    (grid,) = open_source(page.pdf()).grids
    assert " ".join(cell for cell in grid.row(0)) == "Arsenic 4.2 µg/L"


def test_symbol_table_against_other_tables():
    """Glyph names of the encoding by reportlab, what they mean by pdfminer's glyph list (Adobe's)."""
    from pdfminer.encodingdb import name2unicode
    from reportlab.pdfbase._fontdata import encodings

    from wellchem.reading.pdf.symbol_fonts import SYMBOL

    compared = 0
    for code, glyph in enumerate(encodings["SymbolEncoding"]):
        if not glyph or code not in SYMBOL or code == 0xF0:
            continue
        try:
            meant = name2unicode(glyph)
        except KeyError:
            continue
        if 0xE000 <= ord(meant[0]) <= 0xF8FF:
            continue  # pieces of large brackets, and serif marks, which Adobe put into the private area
        compared += 1
        same = str.maketrans("∆μ⟨⟩", "Δμ〈〉")
        ours, theirs = (unicodedata.normalize("NFKC", sign).translate(same) for sign in (SYMBOL[code], meant))
        assert ours == theirs, glyph
    assert compared > 140


def test_lines_to_write_on_and_texts_that_overlap():
    page = pages.Page()
    page.text(50, 60, "Date taken __9/14/2026__")
    page.text(50, 90, "mg/L as CaCO3")
    page.text(50 + page.canvas.stringWidth("mg/L as CaCO", "Helvetica", 9) + 1, 90, "30.9")
    cells = [
        cell for grid in open_source(page.pdf()).grids for at in range(grid.height) for cell in grid.row(at) if cell
    ]
    assert " ".join(cells) == "Date taken 9/14/2026 mg/L as CaCO3 30.9"
