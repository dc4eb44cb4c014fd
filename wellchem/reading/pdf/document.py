"""A PDF with text turned into the grids of its pages."""

from __future__ import annotations

import logging
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from io import BytesIO
from typing import Any

import numpy as np

from wellchem.errors import CorruptFile, EncryptedFile, NoText
from wellchem.models.codes import UnreadReason
from wellchem.reading.grid import Grid, Source
from wellchem.reading.pdf.fields import typed
from wellchem.reading.pdf.grid import page_grids
from wellchem.reading.pdf.objects import PageObjects, page_objects
from wellchem.reading.pdf.rules import page_rules
from wellchem.reading.pdf.seen import beyond, covered, struck, unseen
from wellchem.reading.pdf.words import page_words


@dataclass(frozen=True)
class _Texts:
    """Characters and shapes of a page; the characters that are no part of its text, by what they are."""

    shown: list[Any]
    aside: dict[UnreadReason, list[Any]]
    shapes: list[Any]
    recognised: bool


ASIDE = {
    UnreadReason.NOT_SHOWN: "text that the page does not show (background's colour, off the page, hidden, a comment)",
    UnreadReason.STRUCK_OUT: "text that is struck out",
}
RECOGNISED = "its text is a layer that a machine has recognised in a picture; compare the results with the picture"


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
                texts = _texts(page)
            except Exception as error:
                raise _why(error, name, page.page_number) from None
            left, top = float(page.mediabox[0]), float(page.mediabox[1])
            size = float(page.width), float(page.height), left, top
            words = page_words(texts.shown, *size)
            if not words.words and not words.slanted:
                silent.append(page.page_number)
            elif words.unmapped > 0.3 * len(texts.shown):
                unmapped.append(page.page_number)
            rules = page_rules(texts.shapes, words.frame, left, top)
            grids += page_grids(words, rules, page.page_number)
            for reason, characters in texts.aside.items():
                apart = page_words(characters, *size)
                found = page_grids(apart, page_rules((), apart.frame, left, top), page.page_number)
                grids += [replace(grid, aside=reason) for grid in found]
                notes.append(f"page {page.page_number}: {ASIDE[reason]}, not read")
            if texts.recognised:
                notes.append(f"page {page.page_number}: {RECOGNISED}")
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


def _texts(page: Any) -> _Texts:
    """What a page says, what it hides and what is struck out."""
    objects: PageObjects = page_objects(page)
    written, strokes = typed(page, objects.characters)
    printed = np.array(objects.characters, dtype=object)
    hidden = beyond(objects.characters, objects.visible)
    hidden |= covered(objects.characters, objects.shapes, (float(page.width), float(page.height)))
    if not objects.shaded:
        hidden |= unseen(objects.characters, objects.shapes, objects.pictures)
    out = struck(objects.characters, objects.shapes, strokes) & ~hidden
    aside = {
        UnreadReason.NOT_SHOWN: [*printed[hidden], *(char for char in written if not char.seen)],
        UnreadReason.STRUCK_OUT: list(printed[out]),
    }
    aside = {reason: chars for reason, chars in aside.items() if any(char._text.strip() for char in chars)}
    shown = [*printed[~hidden & ~out], *(char for char in written if char.seen)]
    recognised = any(getattr(char, "unpainted", False) for char in shown)
    return _Texts(shown, aside, objects.shapes, recognised)


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
