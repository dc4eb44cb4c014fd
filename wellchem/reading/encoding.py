"""Bytes of a text file turned into UTF-8, and the encoding that was read or supposed."""

from __future__ import annotations

import codecs
import re

import numpy as np

from wellchem.errors import CorruptFile

MARKS = (  # the longer marks first: a UTF-32 mark begins with a UTF-16 one
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
# Letters of cp850 within words that are signs in cp1252 (ü é ä à ç ê ë ö), its micro and degree sign before units; and
# letters and those signs of cp1252 (ä ö ü ß é è à ç °C µg).
_OF_DOS = re.compile(rb"[A-Za-z][\x81\x82\x84\x85\x87\x88\x89\x94][A-Za-z]|\xe6[gSm]|\xf8 ?(?:C|d[HG]|f?H)\b")
_OF_WINDOWS = re.compile(rb"[A-Za-z][\xe0\xe4\xe7\xe8\xe9\xf6\xfc\xdf][A-Za-z]|\xb5[gSm]|\xb0 ?(?:C|d[HG]|f?H)\b")
HEAD = 1 << 16
LARGE = 1 << 21  # bytes from which a text is pyarrow's work, where it is installed
CONTROLS = bytes(set(range(32)) - {9, 10, 11, 12, 13, 26, 27})  # 26 ends an old DOS file, 27 begins a printer command


def to_utf8(data: bytes, name: str) -> tuple[bytes, str, tuple[str, ...]]:
    """Text as UTF-8 with one kind of line end and without NUL bytes; its encoding; notes on what was supposed.

    Raises `CorruptFile` where the bytes are no text.
    """
    notes: list[str] = []
    encoding = ""
    for mark, marked in MARKS:
        if data.startswith(mark):
            data, encoding = data[len(mark) :], marked
            break
    else:
        encoding = _utf16_without_mark(data)
        if encoding:
            notes.append(f"no byte-order mark; read as {encoding}")
    if encoding and encoding != "utf-8":
        data = data[: len(data) - len(data) % (4 if "32" in encoding else 2)]
        data = data.decode(encoding, errors="replace").encode("utf-8", errors="replace")
    if b"\0" in data[:HEAD] or _controls(data):
        if _controls(data.replace(b"\0", b"")) or data.count(b"\0") > len(data) // 4:
            raise CorruptFile(name, "it holds bytes that are no text")
        notes.append("NUL bytes left out")
    data = data.replace(b"\0", b"")
    if not encoding:
        data, encoding, supposed = _eight_bit(data)
        notes += supposed
    elif not _valid(data):
        data = data.decode("utf-8", errors="replace").encode("utf-8")
        notes.append("bytes that are no UTF-8 were replaced")
    if b"\r" in data:
        data = data.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    return data, encoding, tuple(notes)


def _controls(data: bytes) -> bool:
    """Whether more than one byte in a hundred is a control character that no text has."""
    head = data[:HEAD]
    return len(head) - len(head.translate(None, CONTROLS)) > max(1, len(head) // 100)


def _utf16_without_mark(data: bytes) -> str:
    """UTF-16 told by its zero bytes: western text has one in nearly every second place."""
    head = data[:4096]
    half = len(head) // 2
    if half < 4:
        return ""
    if head[1::2].count(0) > 0.7 * half and head[0::2].count(0) < 0.1 * half:
        return "utf-16-le"
    if head[0::2].count(0) > 0.7 * half and head[1::2].count(0) < 0.1 * half:
        return "utf-16-be"
    return ""


def _valid(data: bytes) -> bool:
    """Whether bytes are UTF-8; pyarrow, where it is installed, looks through a large file without decoding it."""
    if data.isascii():
        return True
    if len(data) > LARGE:
        try:
            import pyarrow as pa
        except ImportError:
            pass
        else:
            text = pa.Array.from_buffers(
                pa.large_binary(), 1, [None, pa.py_buffer(np.array([0, len(data)])), pa.py_buffer(data)]
            )
            try:
                text.cast(pa.large_string())
            except pa.ArrowInvalid:
                return False
            return True
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return True


def _eight_bit(data: bytes) -> tuple[bytes, str, list[str]]:
    """UTF-8 where it is valid; else cp1252, latin-1 where a byte has no meaning in it, or cp850 as its words tell."""
    if _valid(data):
        return data, "utf-8", []
    lines = data.split(b"\n")
    foreign = [line for line in lines if not line.isascii()]
    valid = sum(_valid(line) for line in foreign)
    # Files put together from several sources mix encodings line by line.
    if valid > len(foreign) - valid:
        fixed = [line if _valid(line) else _single(line)[0] for line in lines]
        return b"\n".join(fixed), "utf-8", [f"{len(foreign) - valid} lines that are no UTF-8 were read as cp1252"]
    text, encoding = _single(data)
    return text, encoding, [f"no UTF-8; read as {encoding}"]


def _single(data: bytes) -> tuple[bytes, str]:
    if len(_OF_DOS.findall(data)) > len(_OF_WINDOWS.findall(data)):
        return data.decode("cp850").encode("utf-8"), "cp850"
    try:
        return data.decode("cp1252").encode("utf-8"), "cp1252"
    except UnicodeDecodeError:
        return data.decode("latin-1").encode("utf-8"), "latin-1"
