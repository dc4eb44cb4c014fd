"""Random tables printed as delimited text, workbook and page: what is read is what was printed, each cell claimed once.

The tables are built of names, units and header words typed here; their meaning (factor to mg/L) is typed beside them.
"""

import csv
import io
from dataclasses import dataclass

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from openpyxl import Workbook
from reportlab.pdfgen import canvas

import wellchem

ANALYTES = {
    "calcium": "Calcium", "magnesium": "Magnesium", "sodium": "Sodium", "chloride": "Chloride", "sulfate": "Sulfate",
    "iron": "Iron", "manganese": "Manganese", "copper": "Copper", "zinc": "Zinc", "barium": "Barium",
    "arsenic": "Arsenic",
}  # fmt: skip
UNITS = {"mg/L": 1.0, "µg/L": 0.001, "ppm": 1.0, "ppb": 0.001, "ug/l": 0.001}
NAME_WORDS = ("Analyte", "Parameter", "Test", "Constituent", "Substance", "Determinand")
VALUE_WORDS = ("Result", "Value", "Concentration", "Your level", "Found")
UNIT_WORDS = ("Units", "Unit", "Unit of measure")
LIMIT_WORDS = ("MCL", "Guideline", "Maximum allowed")
NOISE = ("Fenholt Laboratory", "Thank you for your order.", "Page 1 of 1", "Telephone 555-0110")
SETTINGS = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@dataclass(frozen=True)
class Table:
    """Rows of printed cells; by sample name the printed results; the number of results of quality control."""

    rows: tuple[tuple[str, ...], ...]
    truth: dict[str, dict[str, tuple[float, float]]]
    quality: int


@st.composite
def tables(draw) -> Table:
    """A table of one of three orientations with a title, noise and perhaps a blank among its samples."""
    keys = draw(st.lists(st.sampled_from(list(ANALYTES)), min_size=3, max_size=7, unique=True))
    units = [draw(st.sampled_from(list(UNITS))) for _ in keys]
    samples = [f"QX-{n}" for n in range(draw(st.integers(2, 4)))]
    blank = draw(st.booleans())
    printed, truth = {}, {}
    for sample in [*samples, *(["Method Blank"] if blank else [])]:
        cells = []
        for key, unit in zip(keys, units, strict=True):
            number = draw(st.integers(1, 99_999)) / draw(st.sampled_from((10, 100, 1000)))
            left = draw(st.integers(0, 3)) == 0
            cells.append(f"<{number}" if left else f"{number}")
            bounds = (0.0 if left else number * UNITS[unit], number * UNITS[unit])
            truth.setdefault(sample, {})[key] = bounds
        printed[sample] = cells
    truth.pop("Method Blank", None)
    names = [ANALYTES[key] for key in keys]
    name, value, unit_word = (draw(st.sampled_from(words)) for words in (NAME_WORDS, VALUE_WORDS, UNIT_WORDS))
    form = draw(st.sampled_from(("long", "wide", "across")))
    if form == "long":
        limit = draw(st.one_of(st.none(), st.sampled_from(LIMIT_WORDS)))
        rows = [("Sample ID", name, value, unit_word, *((limit,) if limit else ()))]
        for sample, cells in printed.items():
            rows += [
                (sample, n, v, u, *(("250",) if limit else ())) for n, v, u in zip(names, cells, units, strict=True)
            ]
    elif form == "wide":
        rows = [("Sample ID", *(f"{n} ({u})" for n, u in zip(names, units, strict=True)))]
        rows += [(sample, *cells) for sample, cells in printed.items()]
    else:
        rows = [(name, unit_word, *printed)]
        rows += [
            (n, u, *(cells[i] for cells in printed.values())) for i, (n, u) in enumerate(zip(names, units, strict=True))
        ]
    before = draw(st.lists(st.sampled_from(NOISE), max_size=2, unique=True))
    after = draw(st.lists(st.sampled_from(NOISE), max_size=2, unique=True))
    rows = [*((line,) for line in before), *rows, *((line,) for line in after)]
    return Table(tuple(rows), truth, len(keys) if blank else 0)


def as_text(rows) -> bytes:
    buffer = io.StringIO()
    csv.writer(buffer).writerows(rows)
    return buffer.getvalue().encode()


def as_workbook(rows) -> bytes:
    book = Workbook()
    for row in rows:
        book.active.append(
            [float(cell) if cell.isascii() and cell.replace(".", "", 1).isdigit() else cell for cell in row]
        )
    buffer = io.BytesIO()
    book.save(buffer)
    return buffer.getvalue()


def as_page(rows) -> bytes:
    widest = max(len(row) for row in rows)
    widths = [max((len(row[i]) for row in rows if len(row) > max(i, 1)), default=4) * 5.5 + 14 for i in range(widest)]
    buffer = io.BytesIO()
    page = canvas.Canvas(buffer, pagesize=(sum(widths) + 300, len(rows) * 14 + 80), invariant=True)
    y = len(rows) * 14 + 40
    for row in rows:
        page.setFont("Helvetica", 9)
        x = 40.0
        for cell, width in zip(row, widths, strict=False):
            page.drawString(x, y, cell)
            x += width
        y -= 14
    page.save()
    return buffer.getvalue()


PRINTERS = {"csv": as_text, "xlsx": as_workbook, "pdf": as_page}


@pytest.mark.parametrize("suffix", PRINTERS)
@SETTINGS
@given(table=tables())
def test_what_is_read_is_what_was_printed(suffix, table):
    report = wellchem.read(PRINTERS[suffix](table.rows), name=f"random.{suffix}")
    read = {
        sample.id or sample.site: {result.analyte: (result.low, result.high) for result in sample.results}
        for sample in report.samples
    }
    assert set(read) == set(table.truth), table.rows
    for sample, results in table.truth.items():
        assert set(read[sample]) == set(results), table.rows
        for analyte, bounds in results.items():
            assert read[sample][analyte] == pytest.approx(bounds, rel=1e-9), table.rows
    assert sum(len(sample.results) for sample in report.quality_control) == table.quality
    assert report.explanation.balanced


TEXTS = st.one_of(
    st.text(st.characters(codec="utf-8", exclude_categories=("Cs", "Cc")), max_size=12),
    st.sampled_from(("Iron", "Analyte", "Result", "mg/L", "<0.5", "ND", "7", "1.2", "Sample ID", "LCS", "", "")),
)


@pytest.mark.parametrize("suffix", ("csv", "xlsx"))
@SETTINGS
@given(rows=st.lists(st.lists(TEXTS, min_size=1, max_size=6), min_size=1, max_size=10))
def test_any_grid_is_accounted_for_or_refused_in_our_words(suffix, rows):
    try:
        data = (
            as_text(rows)
            if suffix == "csv"
            else as_workbook([[c if c[:1] != "=" else f"'{c}" for c in row] for row in rows])
        )
        report = wellchem.read(data, name=f"random.{suffix}")
    except wellchem.errors.ReadError:
        return
    assert report.explanation.balanced
