"""Workbooks as agencies and households keep them: crosstabs with qualifiers, number formats, formulas, side sheets.

Every laboratory, site and number is invented; each meaning is typed here by hand.
"""

from __future__ import annotations

import io
import re
import zipfile
from datetime import datetime

from openpyxl import Workbook
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.cell.text import InlineFont
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from reports_catalog import INF, Layout, Water
from reports_written import NAN, means, saved


def sheet_of(rows, title="Sheet1", book=None):
    book = book or Workbook()
    if len(book.sheetnames) == 1 and not book.active._cells:
        sheet = book.active
        sheet.title = title
    else:
        sheet = book.create_sheet(title)
    for row in rows:
        sheet.append(row)
    return book, sheet


def one(name, book, waters, **more) -> Layout:
    waters = (waters,) if isinstance(waters, Water) else tuple(waters)
    return Layout(name, "xlsx", saved(book), waters, strict=True, **more)


def symbols_and_marks() -> Layout:
    """A crosstab of element symbols, each with a column `Q` beside it; units in a row; `B` and `U` are also elements."""
    book, _ = sheet_of((
        ("Groundwater survey, table 4",),
        (),
        ("Well ID", "Sampled", "Fe", "Q", "As", "Q", "B", "Q", "U", "Q", "K", "Q"),
        (None, None, "mg/L", None, "ug/L", None, "mg/L", None, "ug/L", None, "mg/L", None),
        ("HF-1", datetime(2026, 3, 3), 0.41, None, 5, "U", 0.31, "J", 2.2, None, 3.1, None),
        ("HF-2", datetime(2026, 3, 4), 0.1, "U", 12.4, None, 0.05, "U", 1, "U", 1.9, "J"),
        ("HF-3", datetime(2026, 3, 5), 2.6, None, 8.1, "J", 0.77, None, 31, None, 4.4, None),
    ))  # fmt: skip
    return one("xlsx_symbols_and_marks", book, (
        Water("HF-1", "", "2026-03-03", (means("iron", 0.41), means("arsenic", 0, 0.005, flag="U"), means("boron", 0.31, flag="J"), means("uranium", 0.0022), means("potassium", 3.1))),
        Water("HF-2", "", "2026-03-04", (means("iron", 0, 0.1, flag="U"), means("arsenic", 0.0124), means("boron", 0, 0.05, flag="U"), means("uranium", 0, 0.001, flag="U"), means("potassium", 1.9, flag="J"))),
        Water("HF-3", "", "2026-03-05", (means("iron", 2.6), means("arsenic", 0.0081, flag="J"), means("boron", 0.77), means("uranium", 0.031), means("potassium", 4.4))),
    ))  # fmt: skip


def conditional_formats() -> Layout:
    """Formats with conditions show `<0.05` or `ND` for small numbers; others show unit, per cent or powers of ten."""
    book, sheet = sheet_of(
        (
            ("Sample ID", "CF-3"),
            ("Test", "Result", "Unit", "Reporting limit"),
            ("Iron", 0.03, "mg/L", 0.05),
            ("Manganese", 0.061, "mg/L", 0.05),
            ("Copper", 0.01, "mg/L", 0.02),
            ("Zinc", 0.0123, "mg/L", 0.005),
            ("Sodium", 44.27, None, None),
            ("Arsenic", 0.00042, "mg/L", 0.0002),
            ("Chloride", 187.46, "mg/L", 1),
        )
    )
    for cell, form in (("B3", '[<0.05]"<0.05";0.00'), ("B4", '[<0.05]"<0.05";0.000'), ("B5", '[<0.02]"ND";0.00'),
                       ("B6", "0.0000"), ("B7", '0.00" mg/L"'), ("B8", "0.00E+00"), ("B9", "#,##0")):  # fmt: skip
        sheet[cell].number_format = form
    return one("xlsx_conditional_formats", book, Water("CF-3", "", "", (
        means("iron", 0, 0.05), means("manganese", 0.061), means("copper", 0, 0.02), means("zinc", 0.0123), means("sodium", 44.27),
        means("arsenic", 0.00042), means("chloride", 187.46),
    )))  # fmt: skip


def formulas() -> Layout:
    """Formulas: one with the value that was computed when it was saved, one without; error cells beside."""
    book, _sheet = sheet_of(
        (
            ("Site", "Old Kiln well"),
            ("Parameter", "Result", "Unit"),
            ("Calcium", 58.0, "mg/L"),
            ("Magnesium", "=B3/5", "mg/L"),
            ("Total hardness", "=2.497*B3+4.118*B4", "mg/L as CaCO3"),
            ("Potassium", "#N/A", "mg/L"),
            ("Sulfate", "=B9/0", "mg/L"),
            ("Chloride", 12.5, "mg/L"),
        )
    )
    data = saved(book)
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as source, zipfile.ZipFile(out, "w") as target:
        for entry in source.infolist():
            text = source.read(entry)
            if entry.filename == "xl/worksheets/sheet1.xml":
                xml = text.decode()
                xml = re.sub(r'(<c r="B4"[^>]*><f>[^<]*</f>)<v ?/?>(</v>)?', r"\g<1><v>11.6</v>", xml)
                xml = re.sub(
                    r'<c r="B7"[^>]*>(<f>[^<]*</f>)<v ?/?>(</v>)?', r'<c r="B7" t="e">\g<1><v>#DIV/0!</v>', xml
                )
                text = xml.encode()
            target.writestr(entry, text)
    water = Water("", "Old Kiln well", "", (means("calcium", 58), means("magnesium", 11.6), means("chloride", 12.5)))
    return Layout("xlsx_formulas", "xlsx", out.getvalue(), (water,), strict=True, unread=3)


def epoch_1904() -> Layout:
    """Dates counted from 1904; rich text in names and values."""
    book = Workbook()
    book.epoch = CALENDAR_MAC_1904
    small = InlineFont(vertAlign="subscript")
    sheet_of((
        ("Sample", "Sampled", "Determinand", "Reading", "Units"),
        ("E-4", datetime(2026, 2, 9), CellRichText("SO", TextBlock(small, "4")), 88.1, "mg/L"),
        ("E-4", datetime(2026, 2, 9), CellRichText("NO", TextBlock(small, "3"), "-N"), CellRichText(TextBlock(InlineFont(b=True), "<"), " 0.2"), "mg/L"),
        ("E-4", datetime(2026, 2, 9), "Fluoride", CellRichText("1.", TextBlock(InlineFont(b=True), "72")), "mg/L"),
    ), book=book)  # fmt: skip
    return one("xlsx_epoch_1904", book, Water("E-4", "", "2026-02-09", (
        means("sulfate", 88.1), means("nitrate", 0, 0.2), means("fluoride", 1.72))))  # fmt: skip


def three_blocks() -> Layout:
    """One sample; three little tables side by side under titles: metals, anions, bacteria."""
    book, _ = sheet_of((
        ("Report for well 7, Grebe Mere", None, None, None, None, None, None, None, None, None, None),
        ("Sample number", "TB-7", None, None, "Taken", "14 May 2026"),
        (),
        ("METALS", None, None, None, "ANIONS", None, None, None, "BACTERIA"),
        ("Test", "Result", "Unit", None, "Test", "Result", "Unit", None, "Test", "Result", "Unit"),
        ("Iron", 0.22, "mg/L", None, "Chloride", 18, "mg/L", None, "Total coliform", "Present", "P/A per 100 mL"),
        ("Manganese", "<0.01", "mg/L", None, "Nitrate-N", 6.6, "mg/L", None, "E. coli", "Absent", "P/A per 100 mL"),
        ("Lead", 2.1, "ug/L", None, "Sulfate", 31, "mg/L"),
        ("Copper", 0.19, "mg/L"),
    ))  # fmt: skip
    return one("xlsx_three_blocks", book, Water("TB-7", "", "2026-05-14", (
        means("iron", 0.22), means("manganese", 0, 0.01), means("lead", 0.0021), means("copper", 0.19), means("chloride", 18), means("nitrate", 6.6),
        means("sulfate", 31), means("total_coliform", 1, INF), means("e_coli", 0, 0),
    )))  # fmt: skip


def side_sheets() -> Layout:
    """A sheet a sample, and sheets of quality control, of guideline values and of a summary."""
    book = Workbook()
    waters = []
    values = {"Kitchen tap": ((0.05, 7.2, 3.3), "SS-1"), "Barn hydrant": ((1.9, 6.4, 14.0), "SS-2")}
    for place, ((iron, ph, nitrate), id) in values.items():
        sheet_of((
            ("Laboratory number", id), ("Location", place), ("Date sampled", datetime(2026, 8, 3)), (),
            ("Analysis", "Found", "Unit", "RL"),
            ("Iron", iron, "mg/L", 0.02), ("pH", ph, "pH units", None), ("Nitrate as N", nitrate, "mg/L", 0.1),
        ), place, book)  # fmt: skip
        waters.append(Water(id, place, "2026-08-03", (means("iron", iron), means("ph", ph), means("nitrate", nitrate))))
    sheet_of((
        ("Quality control",),
        ("QC sample", "Analysis", "Found", "Expected", "Recovery %", "Limits"),
        ("Method blank", "Iron", "<0.02", None, None, None), ("LCS", "Iron", 1.02, 1.0, 102, "85-115"),
        ("Matrix spike", "Iron", 1.11, 1.05, 105, "70-130"), ("LCS", "Nitrate as N", 4.9, 5.0, 98, "90-110"),
    ), "QC", book)  # fmt: skip
    sheet_of((
        ("Guideline values",), ("Analysis", "Unit", "Maximum contaminant level", "Secondary level"),
        ("Iron", "mg/L", None, 0.3), ("pH", "pH units", None, "6.5-8.5"), ("Nitrate as N", "mg/L", 10, None),
    ), "Guidelines", book)  # fmt: skip
    sheet_of((
        ("Analysis", "Unit", "Number of samples", "Minimum", "Maximum", "Mean"),
        ("Iron", "mg/L", 2, 0.05, 1.9, 0.975), ("pH", "pH units", 2, 6.4, 7.2, 6.8), ("Nitrate as N", "mg/L", 2, 3.3, 14, 8.65),
    ), "Summary", book)  # fmt: skip
    return one("xlsx_side_sheets", book, waters, quality_control=4)


def marks_between_samples() -> Layout:
    """Analytes down, wells across; a column of marks after each well; the reporting limit before them all."""
    book, _ = sheet_of((
        ("Analyte", "Units", "RL", "MW-21", "Q", "MW-22", "Q", "MW-22 DUP", "Q"),
        (None, None, None, datetime(2026, 6, 1), None, datetime(2026, 6, 2), None, datetime(2026, 6, 2), None),
        ("Benzene", "ug/L", 0.5, "ND", None, 3.1, None, 3.0, None),
        ("Toluene", "ug/L", 0.5, 0.5, "U", 0.31, "J", 0.29, "J"),
        ("Lead, dissolved", "ug/L", 1, 1, "U", 4.4, None, 4.6, None),
        ("Lead, total", "ug/L", 1, 2.2, "B", 9.7, None, 9.5, None),
    ))  # fmt: skip
    return one("xlsx_marks_between_samples", book, (
        Water("MW-21", "", "2026-06-01", (means("benzene", 0, 0.0005), means("toluene", 0, 0.0005, flag="U"), means("lead", 0, 0.001, "dissolved", flag="U"),
                                          means("lead", 0, 0.0022, "total", flag="B"))),
        Water("MW-22", "", "2026-06-02", (means("benzene", 0.0031), means("toluene", 0, 0.0005, flag="J"), means("lead", 0.0044, None, "dissolved"), means("lead", 0.0097, None, "total"))),
    ), quality_control=4)  # fmt: skip


def limits_beneath() -> Layout:
    """Wide, non-detects as `ND`; rows of detection limit, of reporting limit, of the guideline stand beneath."""
    book, _ = sheet_of((
        ("Sample", "Date", "Arsenic", "Selenium", "Nitrate-N", "Sulphate"),
        (None, None, "µg/L", "µg/L", "mg/L", "mg/L"),
        ("LB-1", "2026-04-20", "ND", 4.4, 1.2, 30), ("LB-2", "2026-04-20", 13, "ND", "ND", 212),
        (),
        ("Detection limit", None, 0.3, 0.3, 0.02, 0.5), ("Reporting limit", None, 1, 1, 0.05, 1),
        ("Guideline", None, 10, 40, 11.3, 500),
        ("n", None, 2, 2, 2, 2), ("95th percentile", None, 13, 4.4, 1.2, 212), ("Std. dev.", None, 1.1, 0.7, 0.2, 128),
    ))  # fmt: skip
    return one("xlsx_limits_beneath", book, (
        Water("LB-1", "", "2026-04-20", (means("arsenic", 0, 0.001), means("selenium", 0.0044), means("nitrate", 1.2), means("sulfate", 30))),
        Water("LB-2", "", "2026-04-20", (means("arsenic", 0.013), means("selenium", 0, 0.001), means("nitrate", 0, 0.05), means("sulfate", 212))),
    ))  # fmt: skip


def sheet_per_parameter() -> Layout:
    """A sheet a parameter; its name and unit stand in the sheet's title line alone."""
    book = Workbook()
    table = {
        "Iron": ("mg/L", "iron", 1, (0.3, 1.4)),
        "Arsenic": ("µg/L", "arsenic", 0.001, (2.5, 18)),
        "Chloride": ("mg/L", "chloride", 1, (9, 77)),
    }
    items = {"SP-A": [], "SP-B": []}
    for name, (unit, key, factor, values) in table.items():
        sheet_of((
            (f"{name} ({unit})",), (), ("Well", "Date sampled", "Result"),
            *((well, datetime(2026, 1, 12), value) for well, value in zip(items, values, strict=True)),
        ), name, book)  # fmt: skip
        for well, value in zip(items, values, strict=True):
            items[well].append(means(key, value * factor))
    return one(
        "xlsx_sheet_per_parameter", book, [Water(well, "", "2026-01-12", tuple(found)) for well, found in items.items()]
    )


def odd_blanks() -> Layout:
    """Numbers as text with non-breaking and thin blanks, apostrophes, wide signs; blanks around everything."""
    book, _ = sheet_of((
        (" Sample name ", "\u00a0OB-9\u00a0"),
        (" Parameter\u00a0", "Result ", " Units"),
        ("Total\u00a0Dissolved\u00a0Solids", "1\u202f204", "mg/L "), ("\u00a0Sodium", "'231", "\u00a0mg/L"),
        ("Iron  ", "\uff1c0.05", "mg/L"), ("Manganese", "\u2264 0.01", "mg/L"), ("Lead", "< 1\u00a0", "\u03bcg/L"),
        ("Zinc", " 0.084 ", "mg\u00a0/\u00a0L"), ("Boron", "\u2014", "mg/L"), ("Copper", "n/a", "mg/L"),
    ))  # fmt: skip
    return one("xlsx_odd_blanks", book, Water("OB-9", "", "", (
        means("total_dissolved_solids", 1204), means("sodium", 231), means("iron", 0, 0.05), means("manganese", 0, 0.01), means("lead", 0, 0.001), means("zinc", 0.084),
    )), extra_ok=frozenset({"boron", "copper"}))  # fmt: skip


def field_and_laboratory() -> Layout:
    """Two result columns: `Field` and `Laboratory`; a second table has `Total` and `Dissolved`."""
    book, _ = sheet_of((
        ("Sample ID", "FL-2", None, None), (),
        ("Parameter", "Units", "Field", "Laboratory"), ("pH", "s.u.", 6.81, 7.24), ("Conductivity", "µS/cm", 512, 498), ("Temperature", "°C", 11.3, None),
        (), ("Metal", "Units", "Total", "Dissolved"), ("Iron", "mg/L", 2.9, 0.31), ("Manganese", "mg/L", 0.41, "<0.02"), ("Zinc", "mg/L", "ND", "ND"),
    ))  # fmt: skip
    return one("xlsx_field_and_laboratory", book, Water("FL-2", "", "", (
        means("ph", 6.81, flag="field"), means("ph", 7.24, flag="laboratory"), means("specific_conductance", 512, flag="field"), means("specific_conductance", 498, flag="laboratory"),
        means("temperature", 11.3, flag="field"), means("iron", 2.9, None, "total"), means("iron", 0.31, None, "dissolved"),
        means("manganese", 0.41, None, "total"), means("manganese", 0, 0.02, "dissolved"), means("zinc", 0, NAN, "total"), means("zinc", 0, NAN, "dissolved"),
    )))  # fmt: skip


def pairs_across() -> Layout:
    """A form: name, number and unit twice across, no header at all."""
    book, _ = sheet_of((
        ("Saddler's Ford Laboratory",), ("Customer sample", "PA-31"), (),
        ("pH", 7.6, None, None, "Iron", "<0.02", "mg/L"), ("Hardness", 14, "gpg", None, "Manganese", 0.07, "mg/L"),
        ("TDS", 340, "ppm", None, "Nitrate (NO3-N)", 2.2, "ppm"), ("Chloride", 21, "ppm", None, "Copper", 0.4, "ppm"),
    ))  # fmt: skip
    return one("xlsx_pairs_across", book, Water("PA-31", "", "", (
        means("ph", 7.6), means("total_hardness", 14 * 17.118), means("total_dissolved_solids", 340), means("chloride", 21), means("iron", 0, 0.02),
        means("manganese", 0.07), means("nitrate", 2.2), means("copper", 0.4),
    )))  # fmt: skip


def raw_and_treated() -> Layout:
    """Columns of one house: raw water and after the softener, with a limit column and a percent removed."""
    book, _ = sheet_of((
        ("Parameter", "Unit", "Raw water", "After softener", "Removal %", "Limit"),
        ("Hardness", "mg/L as CaCO3", 312, 8, 97, None), ("Iron", "mg/L", 1.4, 0.05, 96, 0.3), ("Sodium", "mg/L", 12, 151, None, 200), ("pH", None, 7.3, 7.4, None, "6.5-8.5"),
    ))  # fmt: skip
    return one("xlsx_raw_and_treated", book, (
        Water("Raw water", "", "", (means("total_hardness", 312), means("iron", 1.4), means("sodium", 12), means("ph", 7.3))),
        Water("After softener", "", "", (means("total_hardness", 8), means("iron", 0.05), means("sodium", 151), means("ph", 7.4))),
    ))  # fmt: skip


def numbers_everywhere() -> Layout:
    """Running number, bench number, method number, dilution and initials beside the result."""
    book, _ = sheet_of((
        ("No.", "Lab No.", "Test", "Method", "Dilution", "MDL", "PQL", "Result", "Unit", "Analyst", "Page"),
        (1, 88231, "Cobalt", 200.8, 1, 0.1, 0.5, 0.7, "ug/L", "CO", 3), (2, 88231, "Nitrate as N", 300.0, 10, 0.02, 0.1, 14.2, "mg/L", "NO", 3),
        (3, 88231, "Lead", 200.8, 1, 0.1, 0.5, "ND", "ug/L", "PB", 3), (4, 88231, "Tin", 200.8, 1, 0.2, 1, "<1", "ug/L", "AS", 4),
    ))  # fmt: skip
    return one("xlsx_numbers_everywhere", book, Water("88231", "", "", (
        means("cobalt", 0.0007), means("nitrate", 14.2), means("lead", 0, 0.0005), means("tin", 0, 0.001))))  # fmt: skip


def history() -> Layout:
    """This year's result beside last year's, the change and the trend."""
    book, _ = sheet_of((
        ("Well", "Cold Spur"), ("Date", "2026-05-20"), (),
        ("Analyte", "Units", "Previous result", "Previous date", "Current result", "Change", "Trend", "MCL"),
        ("Nitrate-N", "mg/L", 7.7, "2025-05-21", 9.2, 1.5, "rising", 10), ("Arsenic", "ug/L", "<1", "2025-05-21", "<1", None, "steady", 10), ("Chloride", "mg/L", 31, "2025-05-21", 29, -2, "falling", 250),
    ))  # fmt: skip
    return one(
        "xlsx_history",
        book,
        Water(
            "", "Cold Spur", "2026-05-20", (means("nitrate", 9.2), means("arsenic", 0, 0.001), means("chloride", 29))
        ),
    )


def statistics_only() -> Layout:
    """A table of minima, maxima and means is nobody's sample."""
    book, _ = sheet_of((
        ("Parameter", "Unit", "n", "Minimum", "Median", "Mean", "Maximum", "Standard"),
        ("Nitrate-N", "mg/L", 31, 0.1, 2.2, 3.9, 17, 10), ("Arsenic", "ug/L", 31, 0.5, 1.1, 2.4, 19, 10),
    ))  # fmt: skip
    return one("xlsx_statistics_only", book, (), unread=2)


def blanks_across() -> Layout:
    """Wells across, and among them a duplicate, a trip blank and an equipment blank; a recovery column at the end."""
    book, _ = sheet_of((
        (None, "Unit", "Pond Field 1", "Pond Field 1 duplicate", "Trip blank", "Equipment blank", "LCS recovery (%)"),
        ("Sodium", "mg/L", 18.1, 18.3, "<0.5", "<0.5", 101), ("Chloride", "mg/L", 33, 32, "<1", 1.2, 98), ("Bromide", "mg/L", 0.21, 0.2, "<0.05", "<0.05", 96),
    ))  # fmt: skip
    return one(
        "xlsx_blanks_across",
        book,
        Water("Pond Field 1", "", "", (means("sodium", 18.1), means("chloride", 33), means("bromide", 0.21))),
        quality_control=9,
    )


def repeated_headers() -> Layout:
    """The header comes again every four rows, with a page title; blank columns between."""
    rows = [("Laboratory report 4471", None, None, None, None, "page 1")]
    table = (("Calcium", 61, "mg/L", 1), ("Magnesium", 9.9, "mg/L", 1), ("Sodium", 14, "mg/L", 1), ("Potassium", 2.1, "mg/L", 1), ("Iron", "<0.05", "mg/L", 1),
             ("Manganese", 0.02, "mg/L", 1), ("Zinc", 41, "µg/L", 0.001), ("Nickel", "< 2", "µg/L", 0.001))  # fmt: skip
    names = ("calcium", "magnesium", "sodium", "potassium", "iron", "manganese", "zinc", "nickel")
    items = []
    for number, ((name, value, unit, factor), key) in enumerate(zip(table, names, strict=True)):
        if number % 4 == 0:
            rows += [(), ("Analyte", None, "Result", None, "Unit", None), ()]
        rows.append((name, None, value, None, unit, None))
        if number == 3:
            rows += [(), ("Laboratory report 4471", None, None, None, None, "page 2")]
        low, high = (0, float(value[1:])) if isinstance(value, str) else (value, value)
        items.append(means(key, low * factor, high * factor))
    book, _ = sheet_of(rows)
    return one("xlsx_repeated_headers", book, Water("", "", "", tuple(items)))


def sample_rows() -> Layout:
    """A merged row names the sample over its results; serial numbers stand for dates in one column."""
    book, sheet = sheet_of((
        ("Analyte", "Analysed on", "Amount", "Unit"),
        ("Sample: SR-1 Kitchen", None, None, None), ("Lead", 46100, 7.7, "ug/L"), ("Copper", 46100, 0.9, "mg/L"),
        ("Sample: SR-2 Bathroom", None, None, None), ("Lead", 46101, "<1", "ug/L"), ("Copper", 46101, 0.2, "mg/L"),
    ))  # fmt: skip
    sheet.merge_cells("A2:D2")
    sheet.merge_cells("A5:D5")
    return one("xlsx_sample_rows", book, (
        Water("SR-1 Kitchen", "", "", (means("lead", 0.0077), means("copper", 0.9))), Water("SR-2 Bathroom", "", "", (means("lead", 0, 0.001), means("copper", 0.2))),
    ))  # fmt: skip


def units_above() -> Layout:
    """The units stand above the names, and the fraction beneath; a serial date without a date format."""
    book, _ = sheet_of((
        (None, None, "mg/L", "mg/L", "µg/L", "µS/cm", None), ("Borehole", "Date sampled", "Iron", "Iron", "Nickel", "Conductivity", "pH"), (None, None, "Dissolved", "Total", "Dissolved", None, None),
        ("UA-1", 46082, 0.2, 0.5, "<1", 702, 7.0), ("UA-2", 46083, "<0.01", 0.04, 3.3, 233, 6.1),
    ))  # fmt: skip
    return one("xlsx_units_above", book, (
        Water("UA-1", "", "2026-03-01", (means("iron", 0.2, None, "dissolved"), means("iron", 0.5, None, "total"), means("nickel", 0, 0.001, "dissolved"), means("specific_conductance", 702), means("ph", 7.0))),
        Water("UA-2", "", "2026-03-02", (means("iron", 0, 0.01, "dissolved"), means("iron", 0.04, None, "total"), means("nickel", 0.0033, None, "dissolved"), means("specific_conductance", 233), means("ph", 6.1))),
    ))  # fmt: skip


def titled_limits() -> Layout:
    """Sheets of limits whose tables look like results: a column `Value`, rows of authorities; statistics on a third."""
    book = Workbook()
    sheet_of((
        ("Site", "Date", "Lead (ug/L)", "Nitrate as N (mg/L)"),
        ("Fallow Acre", datetime(2026, 3, 9), 3.1, 6.2), ("Two Ash", datetime(2026, 3, 9), "<1", 12.4),
    ), "Results", book)  # fmt: skip
    sheet_of((("Parameter", "Unit", "Value"), ("Lead", "ug/L", 15), ("Nitrate as N", "mg/L", 10)), "Guidelines", book)
    sheet_of(
        (
            ("Drinking water limits",),
            ("Authority", "Lead (ug/L)", "Nitrate as N (mg/L)"),
            ("WHO", 10, 11.3),
            ("US EPA", 15, 10),
        ),
        "Sheet3",
        book,
    )
    sheet_of(
        (("Parameter", "Unit", "All wells"), ("Lead", "ug/L", 2.2), ("Nitrate as N", "mg/L", 9.3)),
        "Summary statistics",
        book,
    )
    return one("xlsx_titled_limits", book, (
        Water("Fallow Acre", "Fallow Acre", "2026-03-09", (means("lead", 0.0031), means("nitrate", 6.2))), Water("Two Ash", "Two Ash", "2026-03-09", (means("lead", 0, 0.001), means("nitrate", 12.4))),
    ), unread=4)  # fmt: skip


LAYOUTS = (
    symbols_and_marks, conditional_formats, formulas, epoch_1904, three_blocks, side_sheets, marks_between_samples, limits_beneath,
    titled_limits,
    sheet_per_parameter,
    odd_blanks, field_and_laboratory, pairs_across, raw_and_treated, numbers_everywhere, history, statistics_only,
    blanks_across, repeated_headers, sample_rows, units_above,
)  # fmt: skip
