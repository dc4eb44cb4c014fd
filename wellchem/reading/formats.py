"""The one way into a file: its content tells its format, and the format's module turns it into grids."""

from __future__ import annotations

import dataclasses
import gzip
import zipfile
import zlib
from io import BytesIO
from pathlib import Path
from typing import BinaryIO

from wellchem.errors import CorruptFile, EmptyFile, EncryptedFile, MissingFile, NoText, UnknownFormat
from wellchem.reading.grid import Source
from wellchem.reading.structured import records_apart

# What each ending promises; `format=` takes these and the formats' own names.
ENDINGS = {
    "csv": "delimited", "tsv": "delimited", "tab": "delimited", "txt": "delimited", "rdb": "delimited",
    "xlsx": "spreadsheet", "xlsm": "spreadsheet", "xls": "spreadsheet", "xlsb": "spreadsheet", "ods": "spreadsheet",
    "pdf": "pdf",
}  # fmt: skip
FORMATS = ("delimited", "spreadsheet", "pdf")
HEAD = 1 << 16  # bytes looked at before all of them are
BLANK = b"\0 \t\r\n\xef\xbb\xbf\xff\xfe"  # blanks, line ends, byte-order marks
BROKEN_ZIP = (zipfile.BadZipFile, zlib.error, EOFError, OSError, NotImplementedError, RuntimeError, ValueError)
OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
PICTURES = (b"\x89PNG", b"\xff\xd8\xff", b"GIF8", b"II*\0", b"MM\0*")
# Content that is plainly something else: how it begins and what to call it.
OTHERS = ((b"{\\rtf", "a word processor's document"), (b"%!PS", "a PostScript file"), (b"PAR1", "a Parquet file"))


def open_source(source: str | Path | bytes | BinaryIO, *, format: str | None = None, name: str | None = None) -> Source:
    """Grids of a file, of bytes or of a stream.

    `format` (delimited, spreadsheet, pdf, or a usual file ending) says what the content must be. `name` stands for
    the source in messages and origins. Raises the kinds of `ReadError`.
    """
    data, name = _content(source, name)
    wanted = (format or "").lower().lstrip(".")
    wanted = ENDINGS.get(wanted, wanted)
    if wanted and wanted not in FORMATS:
        raise UnknownFormat(name, f"format={format!r}")
    data, notes = _unpacked(data, name)
    if not data[:HEAD].strip(BLANK) and not data.strip(BLANK):
        raise EmptyFile(name)
    kind = _kind(data, name)
    ending = ENDINGS.get(Path(name).suffix.lower().lstrip("."), "")
    promised = wanted or (ending if ending == "pdf" else "")
    found = "spreadsheet" if kind in ("legacy", "open document", "spreadsheet xml", "html") else kind
    if promised and promised != found:
        raise CorruptFile(name, f"it is no {promised} file: its content is that of a {found} file")
    if ending and ending != found:
        notes = (*notes, f"named as a {ending} file; its content is {'an HTML page' if kind == 'html' else found}")
    read = _read(kind, data, name)
    grids = tuple(part for grid in read.grids for part in records_apart(grid))
    return dataclasses.replace(read, grids=grids, notes=notes + read.notes)


def _read(kind: str, data: bytes, name: str) -> Source:
    """The format's own module, loaded when it is needed."""
    if kind == "pdf":
        from wellchem.reading.pdf.document import read_pdf

        return read_pdf(data, name)
    if kind == "spreadsheet":
        from wellchem.reading.spreadsheet import read_spreadsheet

        return read_spreadsheet(data, name)
    if kind == "legacy":
        from wellchem.reading.legacy import read_legacy

        return read_legacy(data, name)
    if kind == "open document":
        from wellchem.reading.open_document import read_open_document

        return read_open_document(data, name)
    if kind == "spreadsheet xml":
        from wellchem.reading.spreadsheet_xml import read_spreadsheet_xml

        return read_spreadsheet_xml(data, name)
    if kind == "html":
        from wellchem.reading.html import read_html

        return read_html(data, name)
    from wellchem.reading.delimited import read_delimited

    return read_delimited(data, name)


def _content(source: str | Path | bytes | BinaryIO, name: str | None) -> tuple[bytes, str]:
    """The bytes of a source and its name."""
    if isinstance(source, bytes | bytearray | memoryview):
        return bytes(source), name or "bytes"
    if isinstance(source, str | Path):
        try:
            return Path(source).read_bytes(), name or str(source)
        except FileNotFoundError:
            raise MissingFile(name or str(source)) from None
        except (OSError, ValueError) as error:
            raise MissingFile(name or str(source), str(error), "Give a file that you may read.") from None
    data = source.read()
    if isinstance(data, str):
        data = data.encode("utf-8")
    return data, name or str(getattr(source, "name", "stream"))


def _unpacked(data: bytes, name: str) -> tuple[bytes, tuple[str, ...]]:
    """Content of a gzip file, or of a zip archive that holds one file alone."""
    if data.startswith(b"\x1f\x8b"):
        try:
            return gzip.decompress(data), ("unpacked from gzip",)
        except (OSError, EOFError, zlib.error) as error:
            raise CorruptFile(name, str(error)) from None
    if data.startswith(b"PK"):
        try:
            with zipfile.ZipFile(BytesIO(data)) as archive:
                members = [member for member in archive.infolist() if not member.is_dir()]
                names = {member.filename for member in members}
                if len(members) == 1 and not names & {"[Content_Types].xml", "mimetype"}:
                    if members[0].flag_bits & 1:
                        raise EncryptedFile(name)
                    return archive.read(members[0]), (f"unpacked {members[0].filename} from zip",)
        except BROKEN_ZIP as error:
            raise CorruptFile(name, str(error)) from None
    return data, ()


def _kind(data: bytes, name: str) -> str:
    """The module that reads this content; an error where none does."""
    if b"%PDF-" in data[:1024]:
        return "pdf"
    if data.startswith(b"PK"):
        try:
            return _kind_of_zip(data, name)
        except BROKEN_ZIP as error:
            raise CorruptFile(name, str(error)) from None
    if data.startswith(OLE):
        if "EncryptedPackage".encode("utf-16-le") in data:
            raise EncryptedFile(name)
        if any(f"{stream}\0".encode("utf-16-le") in data for stream in ("Workbook", "Book")):
            return "legacy"
        raise UnknownFormat(name, "an old office document that is no workbook")
    if data.startswith(PICTURES):
        raise NoText(name, "a picture")
    for begin, called in OTHERS:
        if data.startswith(begin):
            raise UnknownFormat(name, called)
    head = data[:2048].replace(b"\0", b"").lstrip(b"\xef\xbb\xbf\xff\xfe \t\r\n").lower()
    if head.startswith((b"<!doctype html", b"<html", b"<table", b"<head", b"<body", b"<meta")) or (
        head.startswith(b"<?xml") and b"<html" in head
    ):
        return "html"
    if head.startswith((b"<?xml", b"<workbook")) and b"urn:schemas-microsoft-com:office:spreadsheet" in head:
        return "spreadsheet xml"
    if head.startswith(b"<?xml"):
        raise UnknownFormat(name, "an XML file")
    return "delimited"


def _kind_of_zip(data: bytes, name: str) -> str:
    """A workbook's kind by the parts of its archive."""
    with zipfile.ZipFile(BytesIO(data)) as archive:
        names = archive.namelist()
        if any(part.endswith("workbook.bin") for part in names):
            return "legacy"
        if "mimetype" in names:
            if b"spreadsheet" in archive.read("mimetype"):
                return "open document"
            raise UnknownFormat(name, "an OpenDocument file that is no spreadsheet")
        if any(part.startswith("xl/") for part in names) or any(part.endswith("workbook.xml") for part in names):
            return "spreadsheet"
        if any(part.startswith("word/") for part in names):
            raise UnknownFormat(name, "a word processor's document")
        if "[Content_Types].xml" in names:
            raise CorruptFile(name, "an office file without a workbook")
    raise UnknownFormat(name, f"an archive of {len(names)} files; unpack it and read them one by one")
