"""A PDF with text turned into the grids of its pages."""

from __future__ import annotations

import logging
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from typing import Any

from wellchem.errors import CorruptFile, EncryptedFile, NoText
from wellchem.reading.grid import Grid, Source
from wellchem.reading.pdf_grid import page_grids
from wellchem.reading.pdf_rules import page_rules
from wellchem.reading.pdf_words import page_words


def read_pdf(data: bytes, name: str) -> Source:
    """Grids of every page with text. Raises `EncryptedFile`, `NoText` and `CorruptFile`."""
    import pdfplumber

    grids: list[Grid] = []
    notes: list[str] = []
    silent: list[int] = []
    unmapped: list[int] = []
    with _quiet():
        try:
            document = pdfplumber.open(BytesIO(data))
            pages = document.pages
        except Exception as error:  # the library raises whatever its parsers meet
            raise _why(error, name) from None
        for page in pages:
            try:
                characters, shapes = _objects(page)
            except Exception as error:
                raise _why(error, name, page.page_number) from None
            left, top = float(page.mediabox[0]), float(page.mediabox[1])
            words = page_words(characters, float(page.width), float(page.height), left, top)
            if not words.words and not words.slanted:
                silent.append(page.page_number)
            elif words.unmapped > 0.3 * len(characters):
                unmapped.append(page.page_number)
            rules = page_rules(shapes, words.frame, left, top)
            grids += page_grids(words, rules, page.page_number)
            if words.leaders:
                notes.append(f"page {page.page_number}: {words.leaders} leaders (dots or lines of signs) left out")
            page.close()
        document.close()
    if not grids:
        raise NoText(name, f"{len(pages)} pages" if len(pages) != 1 else "1 page")
    if len(unmapped) == len(pages):
        raise NoText(name, "its fonts do not say which letters they draw")
    if silent:
        notes.append(f"pages without text (pictures or empty): {', '.join(map(str, silent))}")
    if unmapped:
        notes.append(f"pages whose fonts do not say which letters they draw: {', '.join(map(str, unmapped))}")
    return Source(name, "pdf", tuple(grids), notes=tuple(notes))


def _objects(page: Any) -> tuple[list[Any], list[Any]]:
    """Characters and shapes of a page as pdfminer gives them; pdfplumber's own dictionaries cost as much again."""
    from pdfminer.layout import LTChar, LTContainer, LTCurve

    characters: list[Any] = []
    shapes: list[Any] = []
    waiting = [iter(page.layout)]
    while waiting:
        for item in waiting[-1]:
            if isinstance(item, LTChar):
                characters.append(item)
            elif isinstance(item, LTCurve):
                shapes.append(item)
            elif isinstance(item, LTContainer):
                waiting.append(iter(item))
                break
        else:
            waiting.pop()
    return characters, shapes


def _why(error: Exception, name: str, page: int | None = None) -> CorruptFile | EncryptedFile:
    """The library's error as one of ours."""
    from pdfminer.pdfdocument import PDFEncryptionError, PDFPasswordIncorrect

    causes = [error, *error.args, error.__cause__, error.__context__]
    if any(isinstance(cause, PDFPasswordIncorrect | PDFEncryptionError) for cause in causes):
        return EncryptedFile(name)
    detail = next((str(cause) for cause in causes if isinstance(cause, Exception) and str(cause)), type(error).__name__)
    return CorruptFile(name, (f"page {page}: " if page else "") + detail.splitlines()[0][:200])


@contextmanager
def _quiet() -> Iterator[None]:
    """Neither warnings nor log lines of the PDF libraries reach the user."""
    logger = logging.getLogger("pdfminer")
    level = logger.level
    logger.setLevel(logging.CRITICAL + 1)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    finally:
        logger.setLevel(level)
