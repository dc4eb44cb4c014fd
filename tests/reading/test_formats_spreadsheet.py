"""Workbooks become grids: what a cell shows, what it is, and what is only known by looking behind it."""

from __future__ import annotations

import datetime
import io
import random
import re
import zipfile

import openpyxl
import pytest
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.cell.text import InlineFont
from openpyxl.comments import Comment

from wellchem.errors import CorruptFile, EmptyFile, EncryptedFile, MissingExtra, ReadError
from wellchem.reading.formats import open_source
from wellchem.reading.number_format import shown


def saved(book):
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def one_sheet(rows, formats=None):
    book = openpyxl.Workbook()
    sheet = book.active
    for row in rows:
        sheet.append(row)
    for place, code in (formats or {}).items():
        sheet[place].number_format = code
    return book, sheet


def cells(grid):
    return [grid.row(at) for at in range(grid.height)]


def marks(grid, kind):
    return [(mark.row, mark.column, mark.text) for mark in grid.marks if mark.kind == kind]


def edited(data, part, change):
    """The workbook with one part's text changed, or left out where the change gives nothing."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as archive, zipfile.ZipFile(out, "w") as to:
        for name in archive.namelist():
            content = archive.read(name)
            if name == part:
                content = change(content.decode()).encode()
            if content:
                to.writestr(name, content)
    return out.getvalue()


# Codes as ECMA-376 Part 1 section 18.8.31 describes them; what is shown follows from its rules.
@pytest.mark.parametrize(
    "code, value, expected",
    [
        ("General", 0.5, None),
        ("0.00", 0.333, None),
        ("#,##0.00", 1234.5, None),
        ("0.00E+00", 0.00012, None),
        ("#,##0.0_);(#,##0.0)", -3.0, None),
        ("[Red]0.0;[Blue]-0.0", -1.5, None),
        ('_-* #,##0.00_-;-* #,##0.00_-;_-* "-"??_-;_-@_-', 0, None),
        ("@", 5, None),
        ('"<"0.0', 0.5, "<0.5"),
        ("<0.0", 0.5, "<0.5"),
        (r"\<0.00", 0.25, "<0.25"),
        ('"> "0', 2420, "> 2420"),
        ('0.0" mg/L"', 0.3, "0.3 mg/L"),
        (r"0.0\ \m\g\/\L", 0.3, "0.3 mg/L"),
        ('0.0" J"', 1.25, "1.25 J"),
        ('[<0.005]"<0.005";0.000', 0.001, "<0.005"),
        ('[<0.005]"<0.005";0.000', 0.02, None),
        ('[=0]"ND";0.0', 0, "ND"),
        ('0.0;-0.0;"not detected"', 0, "not detected"),
        ("0%", 0.45, "45%"),
        ("0.0%", 0.0725, "7.25%"),
        ("0.0,", 1500, "1.5"),
        ("00000", 618, "00618"),
        ('"W-"000', 12, "W-012"),
        ("000-0000", 5551234, "555-1234"),
        (";;;", 5, ""),
    ],
)
def test_what_a_number_format_shows(code, value, expected):
    assert shown(code, value, repr(value)) == expected


def test_numbers_formats_and_types():
    book, _ = one_sheet(
        [
            ["Analyte", "Result"],
            ["Iron", 0.1 + 0.2],
            ["Lead", 0.5],
            ["Zinc", "0,08"],
            ["Chloride", 14.0],
            ["Absent", True],
            ["Recovery", 0.98],
            ["Code", 618],
            ["Sodium", 1e-7],
            ["Text number", "2.40"],
        ],
        {"B2": "0.00", "B3": '"<"0.0', "B7": "0%", "B8": "00000"},
    )
    (grid,) = open_source(saved(book)).grids
    assert [row[1] for row in cells(grid)] == [
        "Result", "0.3", "<0.5", "0,08", "14", "TRUE", "98%", "00618", "1e-07", "2.40",
    ]  # fmt: skip
    native = [bool(grid.columns[1].native[code]) for code in grid.columns[1].codes]
    assert native == [False, True, True, False, True, False, True, True, True, False]
    assert marks(grid, "number_format") == [(2, 1, '"<"0.0'), (6, 1, "0%"), (7, 1, "00000")]


def test_dates_are_iso_text():
    values = [
        datetime.datetime(2026, 4, 12),
        datetime.datetime(2026, 4, 12, 9, 15),
        datetime.date(2026, 4, 12),
        datetime.time(9, 15),
        datetime.timedelta(hours=30, minutes=5),
        45000,
    ]
    book, sheet = one_sheet([[value] for value in values])
    sheet["A6"].number_format = "d mmm yyyy"
    (grid,) = open_source(saved(book)).grids
    assert [row[0] for row in cells(grid)] == [
        "2026-04-12", "2026-04-12T09:15:00", "2026-04-12", "09:15:00", "30:05:00", "2023-03-15",
    ]  # fmt: skip


def test_place_of_rows_and_columns_and_what_is_left_out():
    book = openpyxl.Workbook()
    sheet = book.active
    sheet["C3"], sheet["F3"], sheet["C7"], sheet["XFD9"] = "Analyte", "Result", "Iron", "   "
    (grid,) = open_source(saved(book)).grids
    assert grid.rows.tolist() == [3, 7]
    assert grid.columns_at.tolist() == [3, 6]
    assert grid.count() == 3


def test_hidden_merged_commented_and_errors():
    book, sheet = one_sheet([["", "Limits", ""], ["Analyte", "MCL", "RL"], ["Iron", "#N/A", 0.05], ["Lead", 15, 1]])
    sheet.merge_cells("B1:C1")
    sheet["B3"].data_type = "e"
    sheet["C4"].comment = Comment("raised: matrix", "analyst")
    sheet["E9"].comment = Comment("stands alone", "analyst")
    sheet.row_dimensions[3].hidden = True
    sheet.column_dimensions.group("C", "D", hidden=True)
    hidden = book.create_sheet("Raw")
    hidden.append(["Zinc", 0.1])
    hidden.sheet_state = "veryHidden"
    book.create_sheet("Nothing")
    source = open_source(saved(book))
    grid, raw = source.grids
    assert cells(grid)[2] == ("Iron", "#N/A", "0.05")
    assert marks(grid, "merged") == [(0, 1, "1x2")]
    assert marks(grid, "error") == [(2, 1, "")]
    assert marks(grid, "hidden") == [(2, -1, ""), (-1, 2, "")]
    assert marks(grid, "comment")[0][:2] == (3, 2)
    assert any("stands alone" in note for note in grid.notes)
    assert any("1 hidden rows and 1 hidden columns" in note for note in grid.notes)
    assert raw.hidden
    assert raw.sheet == "Raw"
    assert any("'Nothing' is empty" in note for note in source.notes)


def test_raised_runs_are_kept_apart():
    book, sheet = one_sheet([["x"]])
    up, down = InlineFont(vertAlign="superscript"), InlineFont(vertAlign="subscript")
    sheet["A1"] = CellRichText("0.31", TextBlock(up, "2"))
    sheet["A2"] = CellRichText("CaCO", TextBlock(down, "3"))
    sheet["A3"] = CellRichText("Iron", TextBlock(up, "Q"))
    (grid,) = open_source(saved(book)).grids
    assert [row[0] for row in cells(grid)] == ["0.31²", "CaCO3", "Iron Q"]
    assert marks(grid, "superscript") == [(0, 0, "2"), (2, 0, "Q")]


def test_formulas():
    """With a saved value it is the value; without, the formula stands there, marked; an empty text is empty."""
    book, _ = one_sheet([["Iron", "=1+1"], ["Lead", "=A1&B1"], ["Zinc", "=2*3"], ["pH", '=""']], {"B1": '"<"0.0'})
    data = saved(book)

    def fill(sheet):
        sheet = re.sub(r'(<c r="B1"[^>]*>)<f>1\+1</f><v\s*/>', r"\1<f>1+1</f><v>2</v>", sheet)
        sheet = re.sub(
            r'<c r="B2"([^>]*)><f>A1&amp;B1</f><v\s*/>', r'<c r="B2"\1 t="str"><f>A1&amp;B1</f><v>ND</v>', sheet
        )
        return re.sub(r'<c r="B4"([^>]*)><f>""</f><v\s*/>', r'<c r="B4"\1 t="str"><f>""</f><v></v>', sheet)

    (grid,) = open_source(edited(data, "xl/worksheets/sheet1.xml", fill)).grids
    assert cells(grid) == [("Iron", "<2"), ("Lead", "ND"), ("Zinc", "=2*3"), ("pH", "")]
    assert marks(grid, "formula_without_value") == [(2, 1, "=2*3")]


def test_broken_workbooks_are_read_by_their_cells():
    from openpyxl.chart import BarChart, Reference

    book, sheet = one_sheet([["Analyte", "Result"], ["Iron", 0.5]], {"B2": '"<"0.0'})
    sheet.merge_cells("A3:B3")
    chart = BarChart()
    chart.add_data(Reference(sheet, min_col=2, min_row=1, max_row=2))
    sheet.add_chart(chart)
    data = saved(book)
    main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
    bad_name = '</sheets><definedNames><definedName name="x" localSheetId="77">#REF!</definedName></definedNames>'
    changes = {
        "drawing": ("xl/drawings/drawing1.xml", lambda text: ""),
        "styles": ("xl/styles.xml", lambda text: text.replace("<fills", "<fills><fill><no/></fill></fills><fills")),
        "names": ("xl/workbook.xml", lambda text: text.replace("</sheets>", bad_name)),
        "strict": ("xl/workbook.xml", lambda text: text.replace(main, "http://purl.oclc.org/ooxml/spreadsheetml/main")),
        "dimension": (
            "xl/worksheets/sheet1.xml",
            lambda text: re.sub(r'<dimension ref="[^"]*"', '<dimension ref="A1:A1"', text),
        ),
    }
    broken = {name: edited(data, part, change) for name, (part, change) in changes.items()}
    for name, content in broken.items():
        (grid,) = open_source(content, name=name).grids
        assert cells(grid) == [("Analyte", "Result"), ("Iron", "<0.5")], name


def test_parts_named_with_other_slashes_and_letters():
    book, _ = one_sheet([["Iron", 0.5]])
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(saved(book))) as archive, zipfile.ZipFile(out, "w") as to:
        for name in archive.namelist():
            to.writestr(name.replace("xl/worksheets/sheet1.xml", "xl\\WorkSheets\\Sheet1.xml"), archive.read(name))
    (grid,) = open_source(out.getvalue()).grids
    assert cells(grid) == [("Iron", "0.5")]


def test_what_cannot_be_read_says_so(monkeypatch):
    book, _ = one_sheet([])
    with pytest.raises(EmptyFile):
        open_source(saved(book), name="report.xlsx")
    book, _ = one_sheet([["Iron", 0.5]])
    data = saved(book)
    with pytest.raises(CorruptFile, match=r"report\.xlsx"):
        open_source(data[: len(data) // 2], name="report.xlsx")
    with pytest.raises(CorruptFile, match=r"report\.xlsx"):
        open_source(edited(data, "xl/worksheets/sheet1.xml", lambda text: "<worksheet"), name="report.xlsx")
    ole = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 500 + "EncryptedPackage\0".encode("utf-16-le")
    with pytest.raises(EncryptedFile, match=r"report\.xlsx"):
        open_source(ole, name="report.xlsx")
    monkeypatch.setitem(__import__("sys").modules, "python_calamine", None)
    old = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 500 + "Workbook\0".encode("utf-16-le")
    with pytest.raises(MissingExtra, match=r"wellchem\[legacy\]"):
        open_source(old, name="report.xls")


NAMES = " ".join(
    f'xmlns:{name}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
    for name in ("office", "table", "text", "manifest")
)
ODS = f"""<office:document-content {NAMES}><office:body><office:spreadsheet>
<table:table table:name="Results">
<table:table-row>
<table:table-cell office:value-type="string"><text:p>Iron</text:p></table:table-cell>
<table:table-cell office:value-type="float" office:value="2.4444"><text:p>2,44</text:p></table:table-cell>
</table:table-row>
<table:table-row table:number-rows-repeated="2">
<table:table-cell table:number-columns-repeated="1024"/>
</table:table-row>
<table:table-row table:visibility="collapse">
<table:table-cell office:value-type="string"><text:p>Lead</text:p>
<office:annotation><text:p>matrix</text:p></office:annotation></table:table-cell>
<table:table-cell office:value-type="float" office:value="0.5"><text:p>&lt;0,5</text:p></table:table-cell>
</table:table-row>
<table:table-row>
<table:table-cell office:value-type="string" table:number-columns-spanned="2"><text:p>Sampled</text:p>
</table:table-cell>
<table:covered-table-cell/>
<table:table-cell office:value-type="date" office:date-value="2026-04-12T00:00:00"><text:p>12.04.26</text:p>
</table:table-cell></table:table-row>
</table:table></office:spreadsheet></office:body></office:document-content>"""


def open_document(manifest):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("META-INF/manifest.xml", manifest)
        archive.writestr("content.xml", ODS)
    return out.getvalue()


def test_open_document_spreadsheets():
    """The number in full, but what is shown where that is more than the number."""
    (grid,) = open_source(open_document(f"<manifest:manifest {NAMES}/>"), name="report.ods").grids
    assert cells(grid) == [("Iron", "2.4444", ""), ("Lead", "<0,5", ""), ("Sampled", "", "2026-04-12")]
    assert grid.rows.tolist() == [1, 4, 5]
    assert grid.columns[1].native.tolist() == [True, False]
    assert marks(grid, "hidden") == [(1, -1, "")]
    assert marks(grid, "number_format") == [(1, 1, "")]
    assert marks(grid, "merged") == [(2, 0, "1x2")]
    assert marks(grid, "comment") == [(1, 0, "matrix")]
    with pytest.raises(EncryptedFile):
        open_source(open_document(f"<manifest:manifest {NAMES}><manifest:encryption-data/></manifest:manifest>"))


def test_old_workbooks_through_the_extra():
    """The extra's library reads .xlsx too, so that its values can be held against those of the usual way."""
    pytest.importorskip("python_calamine")
    from wellchem.reading.legacy import read_legacy

    book, sheet = one_sheet([["Iron", 0.25, True], ["Lead", 3.0, datetime.datetime(2026, 4, 12)], ["", "", "ND"]])
    sheet["A5"] = "merged"
    sheet.merge_cells("A5:C5")
    book.create_sheet("Raw").sheet_state = "hidden"
    book["Raw"].append(["Zinc", 0.1])
    data = saved(book)
    old, usual = read_legacy(data, "x"), open_source(data)
    for a, b in zip(old.grids, usual.grids, strict=True):
        assert cells(a) == cells(b)
        assert a.rows.tolist() == b.rows.tolist()
        assert a.hidden == b.hidden
        assert marks(a, "merged") == marks(b, "merged")
    assert any("number formats" in note for note in old.notes)


def test_damaged_files_raise_our_errors_alone():
    """Bytes changed at random, and files cut short: they are read, or the error is one of ours."""
    import page_layouts as pages

    rng = random.Random(5)
    book, _ = one_sheet([["Iron", 0.5, "=1+1"], ["Lead", datetime.datetime(2026, 1, 1)]])
    whole = [pages.unruled(), saved(book), open_document(f"<m {NAMES}/>"), "Eisen;0,1\n".encode("utf-16")]
    outcomes: dict[str, list[str]] = {}
    for _ in range(200):
        data = bytearray(rng.choice(whole))
        for _ in range(rng.choice((1, 3, 20, 200))):
            data[rng.randrange(len(data))] = rng.randrange(256)
        if rng.random() < 0.3:
            data = data[: rng.randrange(len(data))]
        try:
            open_source(bytes(data), name="report")
            outcomes.setdefault("read", [])
        except ReadError as error:
            outcomes.setdefault(type(error).__name__, []).append(str(error))
    assert {"read", "CorruptFile"} <= outcomes.keys()
    assert all(message.startswith("report: ") for messages in outcomes.values() for message in messages)


def test_xml_of_2003_shows_its_formats_skips_and_refuses_damage():
    text = (
        '<?xml version="1.0"?><Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet" '
        'xmlns:ss="urn:schemas-microsoft-com:office:spreadsheet"><Styles><Style ss:ID="s1"><NumberFormat '
        """ss:Format='"&lt;"0.0'/></Style></Styles><Worksheet ss:Name="A"><Table><Row ss:Index="3">"""
        '<Cell><Data ss:Type="String">Iron</Data></Cell><Cell ss:Index="4" ss:StyleID="s1"><Data ss:Type="Number">0.5'
        "</Data></Cell></Row></Table></Worksheet></Workbook>"
    )
    grid = open_source(text.encode(), name="a.xls").grids[0]
    assert grid.row(0) == ("Iron", "<0.5")
    assert (list(grid.rows), list(grid.columns_at), grid.sheet) == ([3], [1, 4], "A")
    with pytest.raises(CorruptFile):
        open_source(text[:-20].encode(), name="a.xls")
