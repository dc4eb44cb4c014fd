"""Delimited text becomes one grid, whatever its encoding, delimiter, line ends and irregular rows."""

from __future__ import annotations

import csv
import gzip
import io
import random
import sys
import zipfile

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellchem.errors import CorruptFile, EmptyFile, EncryptedFile, MissingFile, NoText, UnknownFormat
from wellchem.reading.delimited import read_delimited
from wellchem.reading.formats import open_source

TABLE = (
    ("Parameter", "Wert", "Einheit"),
    ("Eisen", "0,05", "µg/l"),
    ("Härte", "12,5", "°dH"),
    ("Nitrat", "<0,5", "mg/l"),
)


def rows(source):
    (grid,) = source.grids
    return [grid.row(at) for at in range(grid.height)]


def written(table, delimiter=";", end="\r\n"):
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter, lineterminator=end).writerows(table)
    return out.getvalue()


@pytest.mark.parametrize(
    "encoding, mark, called, said",
    [
        ("utf-8", b"", "utf-8", False),
        ("utf-8", b"\xef\xbb\xbf", "utf-8", False),
        ("utf-16-le", b"\xff\xfe", "utf-16-le", False),
        ("utf-16-be", b"\xfe\xff", "utf-16-be", False),
        ("utf-16-le", b"", "utf-16-le", True),
        ("utf-16-be", b"", "utf-16-be", True),
        ("utf-32-le", b"\xff\xfe\x00\x00", "utf-32-le", False),
        ("cp1252", b"", "cp1252", True),
        ("latin-1", b"", "cp1252", True),
    ],
)
@pytest.mark.parametrize("delimiter", [";", "\t", "|"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_encodings_delimiters_line_ends(encoding, mark, called, said, delimiter, end):
    source = open_source(mark + written(TABLE, delimiter, end).encode(encoding))
    assert rows(source) == list(TABLE)
    assert (source.encoding, source.delimiter) == (called, delimiter)
    assert any(called in note for note in source.notes) == said


def test_latin_1_is_what_cp1252_cannot_be():
    source = open_source(b"a;b\nx\x81\xb5;2\n")
    assert source.encoding == "latin-1"
    assert rows(source)[1] == ("x\x81µ", "2")


def test_lines_of_two_encodings():
    data = b"".join(f"Härte {at};{at}\n".encode() for at in range(9)) + "Kohlensäure;3\n".encode("cp1252")
    source = open_source(data)
    assert rows(source)[-1] == ("Kohlensäure", "3")
    assert any("cp1252" in note for note in source.notes)


@pytest.mark.parametrize(
    "text, delimiter, second",
    [
        ("Iron,0.3,mg/L\nZinc,0.1,mg/L\n", ",", ("Zinc", "0.1", "mg/L")),
        ("Eisen;0,3;mg/l\nZink;0,1;mg/l\n", ";", ("Zink", "0,1", "mg/l")),
        ("Eisen;0,3\nZink;0,1\n", ";", ("Zink", "0,1")),
        ("Iron|0,3|0,1\nZinc|0,1|0,2\n", "|", ("Zinc", "0,1", "0,2")),
        ("sep=;\na,b;c\nd,e;f\n", ";", ("d,e", "f")),
        ("a,b\n1,2\n", ",", ("1", "2")),
        ("Iron\nZinc\n", None, ("Zinc",)),
        ('a, "b, c", d\ne, "f, g", h\n', ",", ("e", "f, g", "h")),
        ("Remark: cold, wet; windy\n\nAnalyte,Result\nIron,0.3\nZinc,0.1\nLead,1\n", ",", ("Analyte", "Result")),
    ],
)
def test_which_delimiter(text, delimiter, second):
    source = open_source(text.encode())
    assert source.delimiter == delimiter
    assert rows(source)[1] == second


def test_rows_are_numbered_as_a_spreadsheet_program_would():
    text = 'Lab, Inc\n\nname,"value\nof the sample"\nIron,"0.3\n\nor so"\n\n\nZinc,1\n,\nLead,2\n'
    (grid,) = open_source(text.encode()).grids
    assert grid.rows.tolist() == [1, 3, 4, 7, 9]
    assert grid.row(1) == ("name", "value\nof the sample")
    assert grid.row(2) == ("Iron", "0.3\n\nor so")


def test_empty_columns_are_left_out_and_counted():
    (grid,) = open_source(b"a,,b,\n1,,2, \n3,,4,\n").grids
    assert grid.columns_at.tolist() == [1, 3]
    assert grid.count() == 6


def test_comments_type_line_and_ragged_rows():
    text = '# agency "USGS\ttext\n#\n# more\nsite\tvalue\tremark\n5s\t12n\t1s\n0101\t0.5\t<\n0102\t0.7\n0103\t1\t\tE\n'
    source = open_source(text.encode())
    assert source.delimiter == "\t"
    assert rows(source)[:2] == [('# agency "USGS\ttext', "", "", ""), ("#", "", "", "")]
    assert rows(source)[3:] == [
        ("site", "value", "remark", ""),
        ("5s", "12n", "1s", ""),
        ("0101", "0.5", "<", ""),
        ("0102", "0.7", "", ""),
        ("0103", "1", "", "E"),
    ]


def test_a_header_may_begin_with_a_number_sign():
    assert rows(open_source(b"#,Analyte,Result\n1,Iron,0.3\n2,Zinc,0.1\n"))[0] == ("#", "Analyte", "Result")


def test_a_quote_that_is_never_closed_swallows_nothing():
    text = 'well,depth\nA,"5 ft\nB,6\nC,7\n'
    assert rows(open_source(text.encode())) == [("well", "depth"), ("A", '"5 ft'), ("B", "6"), ("C", "7")]


def test_packed_files():
    data = written(TABLE).encode()
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("folder/export.csv", data)
    for packed, word in ((gzip.compress(data), "gzip"), (out.getvalue(), "export.csv")):
        source = open_source(packed)
        assert rows(source) == list(TABLE)
        assert any(word in note for note in source.notes)


@pytest.mark.parametrize(
    "data, error",
    [
        (b"", EmptyFile),
        (b"\xef\xbb\xbf \r\n\t\n", EmptyFile),
        (b"\0" * 100, EmptyFile),
        (bytes(range(256)) * 40, CorruptFile),
        (random.Random(1).randbytes(5000), CorruptFile),
        (gzip.compress(b"a,b\n" * 1000, mtime=0)[:-20], CorruptFile),
        (b"PK\x03\x04broken", CorruptFile),
        (b"\x89PNG\r\n\x1a\n" + b"\0" * 50, NoText),
        (b"\xff\xd8\xff\xe0" + b"\0" * 50, NoText),
        (b"{\\rtf1 Iron 0.3}", UnknownFormat),
        (b"<?xml version='1.0'?><results/>", UnknownFormat),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + "EncryptedPackage".encode("utf-16-le"), EncryptedFile),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 600, UnknownFormat),
    ],
)
def test_what_cannot_be_read_says_so(data, error):
    with pytest.raises(error, match=r"report\.csv"):
        open_source(data, name="report.csv")


def test_missing_files_and_wrong_names(tmp_path):
    with pytest.raises(MissingFile, match="nowhere"):
        open_source(tmp_path / "nowhere.csv")
    with pytest.raises(MissingFile):
        open_source(tmp_path)
    with pytest.raises(UnknownFormat, match="docx"):
        open_source(b"a,b\n", format="docx")
    with pytest.raises(CorruptFile):
        open_source(b"a,b\n1,2\n", format="pdf")
    path = tmp_path / "results.pdf"
    path.write_bytes(b"a,b\n1,2\n")
    with pytest.raises(CorruptFile):
        open_source(path)
    path = tmp_path / "results.xls"
    path.write_bytes(b"a\tb\n1\t2\n")
    source = open_source(path)
    assert rows(source) == [("a", "b"), ("1", "2")]
    assert any("named as a spreadsheet" in note for note in source.notes)
    with path.open("rb") as stream:
        assert rows(open_source(stream, format="csv")) == rows(source)


def test_a_page_saved_as_a_spreadsheet():
    page = (
        b"<html><head><title>x</title></head><body><h1>Lab &amp; Co</h1><table>"
        b"<tr><th rowspan=2>Analyte<th colspan=2>Result"
        b"<tr><td>Value<td>Unit"
        b"<tr><td>Iron<td>0.31<sup>2</sup><td>mg/L</table>ND = not<br>detected</body></html>"
    )
    title, table, note = open_source(page, name="results.xls").grids
    assert title.row(0) == ("Lab & Co",)
    assert [table.row(at) for at in range(3)] == [
        ("Analyte", "Result", ""),
        ("", "Value", "Unit"),
        ("Iron", "0.31²", "mg/L"),
    ]
    assert {(mark.row, mark.column, mark.kind, mark.text) for mark in table.marks} == {
        (0, 0, "merged", "2x1"),
        (0, 1, "merged", "1x2"),
    }
    assert note.height == 2


def test_columns_aligned_by_blanks():
    text = """
        REDSTONE CREEK LABORATORY, HARROW FALLS

Client:  M. Hollis                     Report:    RC-2219

Parameter                    Result     Units       RL
---------------------------  ---------  ----------  ------
Iron, total                       2.4   mg/L        0.05
Nitrate + Nitrite as N           12.6   mg/L        0.10
Total Coliform                 Absent   per 100 mL
pH ......................         7.1   SU

ND = not detected, RL = reporting limit
"""
    source = open_source(text.encode(), name="report.txt")
    found = [(int(number), grid.row(at)) for grid in source.grids for at, number in enumerate(grid.rows)]
    assert (8, ("Iron, total", "2.4", "mg/L", "0.05")) in found
    assert (9, ("Nitrate + Nitrite as N", "12.6", "mg/L", "0.10")) in found
    assert (10, ("Total Coliform", "Absent", "per 100 mL", "")) in found
    assert (11, ("pH", "7.1", "SU", "")) in found
    assert "columns aligned by blanks" in source.notes


def same(first, second):
    """Two readings of one file are equal cell by cell."""
    (one,), (other,) = first.grids, second.grids
    assert one.rows.tolist() == other.rows.tolist()
    assert one.columns_at.tolist() == other.columns_at.tolist()
    for a, b in zip(one.columns, other.columns, strict=True):
        assert [a.text(at) for at in range(one.height)] == [b.text(at) for at in range(other.height)]
        assert len(set(a.texts)) == len(a.texts)
        assert all(a.texts)


CELLS = st.one_of(
    st.sampled_from(
        ["Iron", "0.3", "<0.5", "mg/L", "", " ", " padded ", "a\nb", 'say "so"', "x,y;z", "µg/L", "\t", "#"]
    ),
    st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc", "Zl", "Zp"]), max_size=6),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.lists(CELLS, min_size=1, max_size=5), min_size=3, max_size=12), st.sampled_from([",", ";", "\t"]))
def test_by_pyarrow_as_by_the_csv_module(table, delimiter):
    pytest.importorskip("pyarrow")
    data = written([*table, *[("one", "more", "row")] * len(table)], delimiter, "\n").encode()
    same(read_delimited(data, "x", arrow=True), read_delimited(data, "x", arrow=False))


@pytest.mark.parametrize("quoted", [True, False])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_large_irregular_files_by_pyarrow_as_by_the_csv_module(quoted, end):
    """Preamble, blank lines, short and long rows, line breaks in quotes, a footer, over several blocks."""
    pytest.importorskip("pyarrow")
    rng = random.Random(3)
    lines = ["Laboratory report", "", "Client;Hollis", "sample;analyte;value;unit"]
    for at in range(60_000):
        text = rng.choice(["Iron", "Zinc", " Lead ", "", "Nitrat als N"])
        if quoted and at % 9000 == 17:
            text = f'"two{end}lines ""of"" {at}"'
        lines.append(f"S-{at};{text};{rng.random():.3f};mg/L")
        if at % 7001 == 3:
            lines += ["", "short;row", "a;row;with;too;many;cells", ";;;"]
    data = end.join([*lines, "", "end of report"]).encode()
    fast = read_delimited(data, "x", arrow=True)
    same(fast, read_delimited(data, "x", arrow=False))
    assert fast.grids[0].row(fast.grids[0].height - 1)[0] == "end of report"


def test_without_pyarrow_the_csv_module_reads(monkeypatch):
    data = written(TABLE).encode()
    monkeypatch.setitem(sys.modules, "pyarrow", None)
    same(read_delimited(data, "x", arrow=True), read_delimited(data, "x", arrow=False))


def test_codes_are_compact():
    (grid,) = open_source(b"a,b\n" + b"Iron,mg/L\n" * 1000).grids
    assert [len(column.texts) for column in grid.columns] == [2, 2]
    assert grid.columns[0].codes.dtype == np.int32
