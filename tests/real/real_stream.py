"""A university laboratory's stream sheets, taken apart cell by cell with openpyxl and csv alone.

Each sheet stacks an ICP table (`DL (mg/l)` beside the name; BDL lies below it), anions in ppm, field readings and organic carbon.
Averages and deviations of the replicates to their left are no results; argon, scandium and yttrium in `% Concentration` are
internal standards; pH stands merged over two rows, one for each who measured it, and averages of theirs between (formulas of
the workbook). A number below the limit is printed all the same, and a blank's column has no heading of its own over the anions.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Iterator

from real_truth import ANY, FOLDER, INF, NO2_AS_N, NO3, PO4, True_, workbook

ELEMENTS = {
    "Al": "aluminum", "As": "arsenic", "Au": "gold", "B": "boron", "Ba": "barium", "Be": "beryllium", "Ca": "calcium",
    "Cd": "cadmium", "Co": "cobalt", "Cr": "chromium", "Cu": "copper", "Fe": "iron", "K": "potassium", "Li": "lithium",
    "Mg": "magnesium", "Mn": "manganese", "Mo": "molybdenum", "Na": "sodium", "Ni": "nickel", "P": "phosphorus", "Pb": "lead",
    "S": "sulfur", "Sb": "antimony", "Se": "selenium", "Si": "silicon", "Sn": "tin", "Sr": "strontium", "Ti": "titanium",
    "Tl": "thallium", "V": "vanadium", "Zn": "zinc",
}  # fmt: skip
ANIONS = {
    "F": ("fluoride", 1), "Cl": ("chloride", 1), "Br(-)": ("bromide", 1), "SO4(2-)": ("sulfate", 1),
    "NO2(-)": ("nitrite", NO2_AS_N), "NO3(-)": ("nitrate", NO3), "PO4(3-)": ("orthophosphate", PO4),
}  # fmt: skip
FIELD = {
    "pH*": "ph", "Conductivity": "specific_conductance", "Ferrous": "iron_ii", "Alkalinity": "total_alkalinity",
    "Temp": "temperature", "Stream Temp": "temperature", "Stream Temperature": "temperature", "Ammonia": "ammonia",
    "DO": "dissolved_oxygen",
}  # fmt: skip
STATISTIC_FORMULA = re.compile(r"=(IFERROR\()?(AVERAGE|_xlfn\.STDEV|STDEV)")
STATISTIC = re.compile(r"avg|std|stdev", re.IGNORECASE)


def _text(cell) -> str:
    return "" if cell is None else str(cell).strip()


def stream(rows: Iterable[Iterable], title: str | None = None) -> Iterator[True_]:
    """The results of one sheet, given as rows of cells."""
    part, heads = "", []
    for number, cells in enumerate(rows, 1):
        row = [_text(cell) for cell in cells]
        row += [""] * (3 - len(row))
        if row[0] in ("ICP-AES", "IC", "Field Data", "DOC/TOC"):
            part, heads = row[0], []
        elif row[0] in ("Analyte Name", "[Anions] (ppm)") or (part == "DOC/TOC" and not row[0]):
            part = {"Analyte Name": "ICP-AES", "[Anions] (ppm)": "IC"}.get(row[0], part)
            heads = row
        else:
            yield from _row(part, heads, row, number, title)


def _row(part: str, heads: list[str], row: list[str], number: int, title: str | None) -> Iterator[True_]:
    for column, text in enumerate(row[2:], 3):
        head = heads[column - 1] if column <= len(heads) else ""
        if not text or (part != "Field Data" and STATISTIC.search(head)):
            continue
        analyte, factor, limit = "", 1.0, None
        if part == "ICP-AES" and (name := re.match(r"[A-Z][a-z]?(?= \d)", row[0])):
            analyte = "" if row[1].startswith("%") else ELEMENTS.get(name[0], "")
            limit = row[1]
        elif part == "IC" and row[0] in ANIONS:
            analyte, factor = ANIONS[row[0]]
        elif part == "Field Data":
            analyte = FIELD.get(row[0], "")
        elif part == "DOC/TOC" and row[0].startswith("NPOC"):
            analyte = "dissolved_organic_carbon" if head.startswith("DOC") else "total_organic_carbon"
        if not analyte:
            continue
        text = text.replace(",", "")  # thousands
        if text == "BDL":  # a limit printed as 0, or none, is no bound
            yield True_(number, column, analyte, ANY, 0.0, float(limit or 0) or INF, title)
        elif text.startswith("<"):
            yield True_(number, column, analyte, ANY, 0.0, float(text[1:]), title)
        elif re.fullmatch(r"-?\d*\.?\d+(e-?\d+)?", text) and float(text) >= 0:
            value = float(text) * factor
            yield True_(number, column, analyte, ANY, value, value, title)


def sheet_csv(file: str) -> Iterator[True_]:
    with open(FOLDER / file, encoding="utf-8-sig", newline="") as lines:
        yield from stream(csv.reader(lines))


def book() -> Iterator[True_]:
    formulas = workbook("lab/csm_water.xlsx", values=False)
    for sheet in workbook("lab/csm_water.xlsx").worksheets:
        rows = [list(row) for row in sheet.iter_rows(values_only=True)]
        for span in sheet.merged_cells.ranges:
            for row in range(span.min_row, span.max_row) if span.min_col == 1 else ():
                rows[row][0] = rows[span.min_row - 1][0]
        for row in formulas[sheet.title].iter_rows():
            for cell in row:
                if isinstance(cell.value, str) and STATISTIC_FORMULA.match(cell.value):
                    rows[cell.row - 1][cell.column - 1] = None
        yield from stream(rows, sheet.title)
