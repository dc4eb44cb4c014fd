"""Nothing is read that a public file does not print: value, name and kind of sample of every result stand in its cells.

The cells come from csv, openpyxl or the workbook's XML alone. Every result of a file is looked at, quality control too.
"""

import csv
import gzip
import zipfile
from functools import cache
from xml.etree import ElementTree

import pytest
from real_counts import LISTS, files
from real_counts import results as results_of
from real_truth import FOLDER, workbook

pytestmark = pytest.mark.skipif(not FOLDER.is_dir(), reason="the public data folder is not there")

TABLES = [file for file in files() if not file.endswith((".pdf", ".rdb"))] if FOLDER.is_dir() else []
MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"


def lines(path):
    """Records of a delimited file, rows of cells."""
    opened = gzip.open if path.suffix == ".gz" else open
    with opened(path, "rt", encoding="utf-8-sig", newline="") as text:
        return list(csv.reader(text))


def damaged(path):
    """Rows of the first sheet of a workbook that openpyxl refuses, from its XML."""
    with zipfile.ZipFile(path) as archive:
        shared = ElementTree.fromstring(archive.read("xl/sharedStrings.xml"))
        texts = ["".join(part.text or "" for part in item.iter(f"{MAIN}t")) for item in shared]
        sheet = ElementTree.fromstring(archive.read("xl/worksheets/sheet1.xml"))
    made = []
    for row in sheet.iter(f"{MAIN}row"):
        cells = {}
        for cell in row.iter(f"{MAIN}c"):
            column = 0
            for letter in filter(str.isalpha, cell.get("r")):
                column = column * 26 + ord(letter) - 64
            value = cell.find(f"{MAIN}v")
            if value is not None:
                cells[column] = texts[int(value.text)] if cell.get("t") == "s" else float(value.text)
        made.append([cells.get(column, "") for column in range(1, max(cells, default=0) + 1)])
    return made


@cache
def sheets(file):
    """The rows of every sheet of a file; a delimited file is one sheet without a name."""
    path = FOLDER / file
    if path.suffix != ".xlsx":
        return {"": lines(path)}
    if file == "wide/kwale_water_samples.xlsx":
        return {"Sheet 1": damaged(path)}
    return {
        sheet.title: [list(row) for row in sheet.iter_rows(values_only=True)] for sheet in workbook(file).worksheets
    }


@cache
def results(file):
    frame = results_of(file)
    frame = frame.assign(sheet=frame["sheet"].astype(object).fillna(""))
    columns = [
        "sheet",
        "row",
        "column",
        "role",
        "printed_name",
        "printed_value",
        "value",
        "censoring",
        "analyte",
        "basis",
    ]
    return frame[columns].astype(object).where(frame[columns].notna(), "")


def same(cell, printed):
    """Whether a cell holds what is said to be printed in it; a number of a workbook is printed in its shortest form."""
    if isinstance(cell, int | float) and not isinstance(cell, bool):
        return abs(float(printed) - cell) <= 1e-12 * max(1.0, abs(cell))
    return " ".join(str(cell if cell is not None else "").split()) == " ".join(printed.split())


@pytest.mark.parametrize("file", [file for file in TABLES if file not in LISTS])
def test_every_result_is_printed_in_its_cell(file):
    wrong, seen = [], set()
    for one in results(file).itertuples(index=False):
        rows = sheets(file)[one.sheet]
        row = rows[one.row - 1]
        cell = row[one.column - 1] if one.column <= len(row) else ""
        place = (one.sheet, one.row, one.column)
        if not same(cell, one.printed_value) or place in seen:
            wrong.append((place, cell, one.printed_name, one.printed_value))
        seen.add(place)
    assert not wrong, (len(wrong), wrong[:8])


@pytest.mark.parametrize("file", [file for file in TABLES if file not in LISTS])
def test_every_name_is_printed_in_the_row_or_over_the_column(file):
    """For wide tables the heading, for the others a cell of the row or one that is merged over it."""
    wrong = []
    heads = {}
    for one in results(file).itertuples(index=False):
        rows = sheets(file)[one.sheet]
        row = [" ".join(str(cell).split()) for cell in rows[one.row - 1] if cell not in (None, "")]
        key = (one.sheet, one.column)
        if key not in heads:
            over = [rows[at][one.column - 1] for at in range(min(6, len(rows))) if one.column <= len(rows[at])]
            heads[key] = " ".join(str(cell) for cell in over if cell).casefold()
        name = " ".join(one.printed_name.split())
        if name not in row and name.casefold() not in heads[key] and name not in merged_above(file, one):
            wrong.append((one.row, one.column, name, row[:3]))
    assert not wrong, (len(wrong), wrong[:8])


def merged_above(file, one):
    """The cell of the first column above, which is merged over this row."""
    above = sheets(file)[one.sheet][one.row - 2][0]
    return (str(above or "").strip(),)


# Which rows (and columns) are quality control, by what the file itself says of them.
def of_type(column, control):
    def roles(file):
        head, *rows = sheets(file)[""]
        at = head.index(column)
        return {("", number): control(row[at]) for number, row in enumerate(rows, 2) if row}

    return roles


CONTROL = {
    "wqp/dr_phosData_legacy_84k.csv.gz": of_type("ActivityTypeCode", lambda text: text.startswith("Quality Control")),
    "wqp/dr_wi_phos_data_wqx3narrow_55k.csv.gz": of_type("Activity_TypeCode", lambda text: text.startswith("Quality")),
    "wqp/dr_wqpData_wqx3narrow.csv": of_type("Activity_TypeCode", lambda text: text.startswith("Quality")),
    "wqp/ugs_sample_chemistry.csv": of_type("ActivityTypeCode", lambda text: text.startswith("Quality")),
    "wqp/ugs_sample_chemistry2.csv": of_type("ActivityTypeCode", lambda text: text.startswith("Quality")),
    "wide/gardenroots_water.csv": of_type("type", lambda text: text == "Field Blank"),
    "lab/wi_LDES_csls_2020_01_28.csv": lambda file: of_state(file),
}


def of_state(file):
    """Blanks and duplicates by the file's code, and two that only the field number calls so (LONG082719BLANK, …DUP)."""
    by_code = of_type("Type of Sample (QC)", lambda text: text != "1")(file)
    by_number = of_type("Field #", lambda text: any(word in text for word in ("BLANK", "BLNK", "DUP")))(file)
    assert sum(by_code.values()) == 195
    assert {at for at in by_code if by_number[at] and not by_code[at]} != set()
    return {at: by_code[at] or by_number[at] for at in by_code}


@pytest.mark.parametrize("file", sorted(CONTROL))
def test_quality_control_is_told_apart(file):
    expected = CONTROL[file](file)
    wrong = [
        (one.row, one.role)
        for one in results(file).itertuples(index=False)
        if (one.role != "routine") != expected[one.sheet, one.row]
    ]
    assert not wrong, (len(wrong), wrong[:8])


@pytest.mark.parametrize("file", sorted(file for file in TABLES if file.startswith("lab/csm") and "icp" not in file))
def test_blanks_of_the_stream_sheets_are_quality_control(file):
    """The site's name stands over its columns, in the row above the replicates' headings; or in that of the carbon."""
    wrong, controls = [], 0
    for one in results(file).itertuples(index=False):
        sites = sheets(file)[one.sheet][1]
        over = [str(cell) for cell in sites[: one.column] if cell not in (None, "")]
        own = str(sheets(file)[one.sheet][one.row - 2][one.column - 1] or "")
        blank = (bool(over) and "blank" in over[-1].casefold()) or "blank" in own.casefold()
        controls += blank
        if (one.role == "blank") != blank:
            wrong.append((one.sheet, one.row, one.column, over[-1:], one.role))
    assert controls
    assert not wrong, (len(wrong), wrong[:8])
