"""What a report prints twice is one result; two measurements of one label are two, even where some are equal."""

from io import BytesIO

import openpyxl

import wellchem


def _book(**sheets: list[tuple[str, str]]) -> bytes:
    """A workbook with a sheet for each list of (analyte, value), all of one sample."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for title, results in sheets.items():
        sheet = book.create_sheet(title)
        for row in (("Sample ID", "Parameter", "Result", "Units"), *(("Well 1", *one, "mg/L") for one in results)):
            sheet.append(row)
    out = BytesIO()
    book.save(out)
    return out.getvalue()


def _results(data: bytes) -> list[tuple[str, str]]:
    batch = wellchem.read_batch([data])
    return sorted(zip(batch.results["analyte"], batch.results["printed_value"], strict=True))


FULL = [("Iron", "0.42"), ("Chloride", "14"), ("Lead", "<0.001")]


def test_a_summary_that_says_the_same_is_no_second_result() -> None:
    assert len(_results(_book(Results=FULL, Summary=FULL[:2]))) == 3


def test_tables_that_differ_anywhere_are_two_measurements_of_everything() -> None:
    again = [("Iron", "0.51"), *FULL[1:]]
    assert len(_results(_book(First=FULL, Second=again))) == 6
