"""Sheets that are named for their days hold different samples, whatever their columns are called."""

import openpyxl
import pytest

import wellchem
from wellchem.reading.dates import visit_in


@pytest.mark.parametrize("title", ["3.9.17", "2026-04-14 metals", "20260414", "Dec_2025", "14 Mar 26", "juin 2020"])
def test_a_title_names_a_day_or_a_month(title):
    assert visit_in(title)


@pytest.mark.parametrize(
    "title", ["", "Sheet1", "Metals", "MW-12-3-4", "SM 4500-NO3", "EPA 200.8", "May well", "Omar 20"]
)
def test_a_title_names_none(title):
    assert visit_in(title) == ""


def _book(path, titles):
    book = openpyxl.Workbook()
    book.remove(book.active)
    for title in titles:
        sheet = book.create_sheet(title)
        sheet.append(["Sample ID", "Analyte", "Result", "Unit"])
        for row in (["W1", "Arsenic", "<0.005", "mg/L"], ["W1", "Iron", 0.2, "mg/L"], ["W2", "Arsenic", 0.012, "mg/L"]):
            sheet.append(row)
    book.save(path)
    return wellchem.read_batch([path]).results


def test_equal_results_of_two_days_are_two_results(tmp_path):
    frame = _book(tmp_path / "days.xlsx", ["3.9.25", "4.5.25"])
    assert len(frame) == 6
    assert frame["sample"].nunique() == 4


def test_equal_results_of_a_summary_are_one(tmp_path):
    frame = _book(tmp_path / "report.xlsx", ["Summary", "Results"])
    assert frame["sample"].nunique() == 2
    assert len(frame) == 3
