"""Layouts of spreadsheets, written with openpyxl. Every laboratory and household is invented."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import reports_catalog as catalog
from openpyxl import Workbook
from openpyxl.comments import Comment
from reports_catalog import Layout, Water
from reports_written import saved

KEYS = (
    "calcium",
    "magnesium",
    "sodium",
    "iron",
    "manganese",
    "chloride",
    "sulfate",
    "nitrate",
    "total_alkalinity",
    "ph",
)


def _number(text: str):
    return float(text) if text.replace(".", "", 1).isdigit() else text


def long() -> Layout:
    """A row a result under a block of metadata."""
    water = catalog.water(301, germs="words")
    book = Workbook()
    sheet = book.active
    for pair in (
        (catalog.LABORATORIES[0],),
        (),
        ("Sample ID", water.id),
        ("Site", water.site),
        ("Date Collected", water.day),
        (),
    ):
        sheet.append(pair)
    sheet.append(("Analyte", "Result", "Units", "Reporting Limit", "MCL", "Method"))
    for item in water.items:
        sheet.append((item.name, _number(item.value), item.unit, _number(item.rl), item.limit, item.method))
    return Layout("xlsx_long", "xlsx", saved(book), (water,))


def _set(seed: int, count: int = 4, keys=KEYS) -> tuple[Water, ...]:
    return catalog.same_printing([catalog.water(seed + n, keys, id=f"W{seed + n}") for n in range(count)])


def wide() -> Layout:
    """A row a sample, names with units in the header."""
    waters = _set(310)
    book = Workbook()
    sheet = book.active
    sheet.append(
        ("Sample ID", "Site", "Date", *(f"{i.name} ({i.unit})" if i.unit else i.name for i in waters[0].items))
    )
    for water in waters:
        sheet.append(
            (water.id, water.site, datetime.fromisoformat(water.day), *(_number(i.value) for i in water.items))
        )
    return Layout("xlsx_wide", "xlsx", saved(book), waters)


def units_row() -> Layout:
    """Names in one row, units beneath, detection limits beneath those."""
    waters = _set(320)
    book = Workbook()
    sheet = book.active
    sheet.append(("Well survey of the upper valley",))
    sheet.append(())
    sheet.append(("Code", "Date", *(i.name for i in waters[0].items)))
    sheet.append(("", "", *(i.unit for i in waters[0].items)))
    sheet.append(("LOD", "", *(0.01 for _ in waters[0].items)))
    for water in waters:
        sheet.append((water.id, water.day, *(_number(i.value) for i in water.items)))
    return Layout("xlsx_units_row", "xlsx", saved(book), waters)


def merged_header() -> Layout:
    """Two header rows: the group or sample merged over its columns."""
    waters = _set(330, 3)
    book = Workbook()
    sheet = book.active
    sheet.append(("Parameter", "Unit", *(x for w in waters for x in (w.id, None))))
    sheet.append((None, None, *("Result", "RL") * 3))
    for number in range(3):
        sheet.merge_cells(start_row=1, end_row=1, start_column=3 + 2 * number, end_column=4 + 2 * number)
    sheet.merge_cells("A1:A2")
    sheet.merge_cells("B1:B2")
    for index, item in enumerate(waters[0].items):
        cells = [x for w in waters for x in (_number(w.items[index].value), _number(w.items[index].rl))]
        sheet.append((item.name, item.unit, *cells))
    return Layout("xlsx_merged_header", "xlsx", saved(book), catalog.undated(*waters))


def transposed() -> Layout:
    """Analytes down, samples across, dates in a row of their own."""
    waters = _set(340)
    book = Workbook()
    sheet = book.active
    sheet.append(("", "", "Sample", *(w.id for w in waters)))
    sheet.append(("", "", "Collected", *(datetime.fromisoformat(w.day) for w in waters)))
    sheet.append(("Analyte", "Units", "Method"))
    for index, item in enumerate(waters[0].items):
        sheet.append((item.name, item.unit, item.method, *(_number(w.items[index].value) for w in waters)))
    return Layout("xlsx_transposed", "xlsx", saved(book), waters)


def stacked() -> Layout:
    """Two tables on one sheet: field readings, then the laboratory's, with a blank row between."""
    first = _set(350, 3, ("ph", "specific_conductance", "turbidity"))
    second = _set(350, 3, ("iron", "manganese", "chloride", "nitrate"))
    book = Workbook()
    sheet = book.active
    for part in (first, second):
        sheet.append(("Sample", *(f"{i.name} {i.unit}".strip() for i in part[0].items)))
        for water in part:
            sheet.append((water.id, *(_number(i.value) for i in water.items)))
        sheet.append(())
        sheet.append(())
    waters = tuple(replace(a, items=(*a.items, *b.items)) for a, b in zip(first, second, strict=True))
    return Layout("xlsx_stacked", "xlsx", saved(book), catalog.undated(*waters))


def sheet_each() -> Layout:
    """A sheet a sample; the sheet's name is the sample's."""
    waters = [catalog.water(360 + n, KEYS, id=f"BH{n + 1}") for n in range(3)]
    book = Workbook()
    book.remove(book.active)
    for water in waters:
        sheet = book.create_sheet(water.id)
        sheet.append(("Sample", water.id))
        sheet.append(("Sampled on", water.day))
        sheet.append(("Test", "Value", "Unit"))
        for item in water.items:
            sheet.append((item.name, _number(item.value), item.unit))
    return Layout("xlsx_sheet_each", "xlsx", saved(book), tuple(waters))


def hidden() -> Layout:
    """Hidden sheet, row and column: all are read, and said to be hidden."""
    first, second = (catalog.water(370 + n, KEYS, id=f"HID-{n}") for n in range(2))
    book = Workbook()
    for number, (sheet, water) in enumerate(
        zip((book.active, book.create_sheet("archive")), (first, second), strict=True)
    ):
        sheet.append(("Sample ID", water.id))
        sheet.append(("Analyte", "Method", "Result", "Units"))
        for item in water.items:
            sheet.append((item.name, item.method, _number(item.value), item.unit))
        sheet.row_dimensions[5].hidden = True
        sheet.column_dimensions["B"].hidden = True
        sheet.sheet_state = "hidden" if number else "visible"
    return Layout("xlsx_hidden", "xlsx", saved(book), catalog.undated(first, second))


def shown_by_format() -> Layout:
    """Non-detects are numbers whose format prints the `<`; others are only rounded by theirs; a comment on one."""
    water = catalog.water(380, censored=0.5)
    book = Workbook()
    sheet = book.active
    sheet.append(("Sample ID", water.id))
    sheet.append(("Analyte", "Result", "Units"))
    for item in water.items:
        sheet.append((item.name, float(item.value.lstrip("<")), item.unit))
        cell = sheet.cell(sheet.max_row, 2)
        decimals = len(item.value.partition(".")[2])
        pattern = "0" + ("." + "0" * decimals if decimals else "")
        cell.number_format = f'"<"{pattern}' if item.value.startswith("<") else "0.0"
    sheet.cell(4, 2).comment = Comment("checked twice", "bench 3")
    return Layout("xlsx_shown_by_format", "xlsx", saved(book), catalog.undated(water))


def flag_columns() -> Layout:
    """A flag column beside each analyte's column."""
    waters = _set(390)
    book = Workbook()
    sheet = book.active
    sheet.append(("Well", *(x for i in waters[0].items for x in (f"{i.name} {i.unit}".strip(), f"{i.name} flag"))))
    for water in waters:
        cells = [
            x for i in water.items for x in (_number(i.value.lstrip("<")), "<" if i.value.startswith("<") else None)
        ]
        sheet.append((water.id, *cells))
    return Layout("xlsx_flag_columns", "xlsx", saved(book), catalog.undated(*waters))


def text_numbers() -> Layout:
    """Numbers as text, serial dates, an offset table, several samples in rows, QC rows among them."""
    waters = [catalog.water(400 + n, KEYS[:6], id=f"TN-{n}") for n in range(3)]
    blank = catalog.water(404, KEYS[:6], id="Method Blank")
    book = Workbook()
    sheet = book.active
    for _ in range(3):
        sheet.append(())
    sheet.append((None, None, "Sample ID", "Sample Type", "Collected", "Parameter", "Result", "Qualifier", "Unit"))
    for water, kind in (*((w, "N") for w in waters), (blank, "Method Blank")):
        for item in water.items:
            flag = "U" if item.value.startswith("<") else None
            day = datetime.fromisoformat(water.day)
            sheet.append((None, None, water.id, kind, day, item.name, item.value.lstrip("<"), flag, item.unit))
    return Layout("xlsx_text_numbers", "xlsx", saved(book), tuple(waters), quality_control=6)


def detect_flags() -> Layout:
    """Detect flag Y/N, a column of basis and a column of fraction T/D."""
    water = catalog.water(410, ("iron", "manganese", "lead", "copper", "zinc", "barium"), censored=0.4)
    plain = []
    book = Workbook()
    sheet = book.active
    sheet.append(("SAMPLE_ID", "ANALYTE", "FRACTION", "RESULT", "DETECT_FLAG", "UNITS", "RL"))
    for number, item in enumerate(water.items):
        entry = catalog.BY_KEY[item.analyte]
        code, fraction = (("T", "total"), ("D", "dissolved"))[number % 2]
        item = item._replace(name=entry.names[0][0], fraction=fraction)
        plain.append(item)
        found = not item.value.startswith("<")
        sheet.append(
            (
                water.id,
                item.name,
                code,
                _number(item.value.lstrip("<")),
                "Y" if found else "N",
                item.unit,
                _number(item.rl),
            )
        )
    return Layout("xlsx_detect_flags", "xlsx", saved(book), catalog.undated(replace(water, items=tuple(plain))))


LAYOUTS = (
    long, wide, units_row, merged_header, transposed, stacked, sheet_each, hidden, shown_by_format, flag_columns,
    text_numbers, detect_flags,
)  # fmt: skip
