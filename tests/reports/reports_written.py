"""Truths typed by hand, and rows and books written to bytes: what the modules of layouts share."""

from __future__ import annotations

import csv
import io

from openpyxl import Workbook
from reports_catalog import Item

NAN = float("nan")  # no bound is printed
N_OF_NO3 = 14.007 / 62.004  # mass of N in a mass of nitrate
N_OF_NO2 = 14.007 / 46.005
N_OF_NH4 = 14.007 / 18.039
PCI = 0.037  # becquerels in a picocurie
U = 0.001  # milligrams in a microgram


def it(analyte, name, value, unit, low, high=None, fraction=None) -> Item:
    """One item as it is printed; without `high` the result is quantified."""
    return Item(analyte, fraction, name, value, unit, low, low if high is None else high)


def means(analyte, low, high=None, fraction=None, name="", flag="") -> Item:
    """What one item means, however it is printed; without `high` the result is quantified."""
    return Item(analyte, fraction, name, "", "", low, low if high is None else high, flag=flag)


def lines(rows, delimiter=",", end="\r\n") -> str:
    """Rows as delimited text."""
    buffer = io.StringIO()
    csv.writer(buffer, delimiter=delimiter, lineterminator=end).writerows(rows)
    return buffer.getvalue()


def saved(book: Workbook) -> bytes:
    """A workbook's file."""
    buffer = io.BytesIO()
    book.save(buffer)
    return buffer.getvalue()
