"""Further layouts of workbooks: HTML and XML saved as .xls, a hand-made .ods, merged cells down, notes, pivots.

Every laboratory, site and number is invented; each meaning is typed here by hand.
"""

from __future__ import annotations

import io
import zipfile
from datetime import datetime
from xml.sax.saxutils import escape

from openpyxl import Workbook
from openpyxl.styles import Font
from reports_catalog import INF, Layout, Water
from reports_written import N_OF_NO3, NAN, it, saved


def html() -> Layout:
    """A web page saved with the ending .xls: nested layout table, spans, entities, non-breaking blanks."""
    rows = (
        ("pH", "7.4", "S.U.", "6.5&ndash;8.5"), ("Total Dissolved Solids", "412", "mg/L", "500"),
        ("Sulfate", "&lt;&nbsp;2", "mg/L", "250"), ("Iron", "0.88", "mg/L", "0.3"), ("Arsenic", "11", "&micro;g/L", "10"),
        ("E.&nbsp;coli", "Absent", "", "Absent"),
    )  # fmt: skip
    body = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in rows)
    text = f"""<html><head><meta charset="utf-8"><style>td {{border: 1px}}</style><title>Export</title></head><body>
<table><tr><td colspan="4"><b>Saddler&#39;s Ford Laboratory</b></td></tr>
<tr><td>Sample ID</td><td>SF-902</td><td>Collected</td><td>2026-06-18</td></tr></table><br>
<table><tr><th>Analyte</th><th>Amount found</th><th>Units</th><th>Guideline</th></tr>
<tr><td colspan="4"><i>Chemistry and bacteria</i></td></tr>{body}</table><p>Call us at 555-0110.</p></body></html>"""
    items = (
        it("ph", "pH", "7.4", "S.U.", 7.4), it("total_dissolved_solids", "Total Dissolved Solids", "412", "mg/L", 412),
        it("sulfate", "Sulfate", "< 2", "mg/L", 0, 2), it("iron", "Iron", "0.88", "mg/L", 0.88),
        it("arsenic", "Arsenic", "11", "µg/L", 0.011), it("e_coli", "E. coli", "Absent", "", 0, 0),
    )  # fmt: skip
    return Layout("xls_html", "xls", text.encode(), (Water("SF-902", "", "2026-06-18", items),))


def spreadsheet_xml() -> Layout:
    """A workbook in the XML of 2003, saved with the ending .xls, with an index that skips cells."""

    def row(*cells) -> str:
        out = []
        for cell in cells:
            index, cell = cell if isinstance(cell, tuple) else (None, cell)
            at = f' ss:Index="{index}"' if index else ""
            kind = "Number" if isinstance(cell, float) else "String"
            out.append(f'<Cell{at}><Data ss:Type="{kind}">{escape(str(cell))}</Data></Cell>')
        return "<Row>" + "".join(out) + "</Row>"

    table = (
        row("Sample ID", "XM-5") + row("Parameter", "Result", "Unit", (5, "Method"))
        + row("Calcium", 66.2, "mg/L", (5, "200.7")) + row("Magnesium", 14.9, "mg/L", (5, "200.7"))
        + row("Nitrate as N", "<0.05", "mg/L", (5, "300.0")) + row("Boron", 410.0, "µg/L", (5, "200.7"))
    )  # fmt: skip
    text = (
        '<?xml version="1.0"?><?mso-application progid="Excel.Sheet"?>'
        '<Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet" xmlns:ss="urn:schemas-microsoft-com:office:spreadsheet">'
        f'<Worksheet ss:Name="Results"><Table>{table}</Table></Worksheet></Workbook>'
    )
    items = (
        it("calcium", "Calcium", "66.2", "mg/L", 66.2), it("magnesium", "Magnesium", "14.9", "mg/L", 14.9),
        it("nitrate", "Nitrate as N", "<0.05", "mg/L", 0, 0.05), it("boron", "Boron", "410", "µg/L", 0.41),
    )  # fmt: skip
    return Layout("xls_xml", "xls", text.encode(), (Water("XM-5", "", "", items),))


def open_document() -> Layout:
    """An .ods written by hand: repeated empty cells and rows, floats with their shown text, a date cell."""

    def text(value, repeat=1) -> str:
        more = f' table:number-columns-repeated="{repeat}"' if repeat > 1 else ""
        if value is None:
            return f"<table:table-cell{more}/>"
        if isinstance(value, float):
            return f'<table:table-cell office:value-type="float" office:value="{value}"><text:p>{value}</text:p></table:table-cell>'
        return f'<table:table-cell{more} office:value-type="string"><text:p>{escape(value)}</text:p></table:table-cell>'

    def row(*cells) -> str:
        return "<table:table-row>" + "".join(cells) + "</table:table-row>"

    date = '<table:table-cell office:value-type="date" office:date-value="2026-01-20"><text:p>20/01/26</text:p></table:table-cell>'
    table = (
        row(text("Échantillon"), text(None, 2), text("OD-14")) + row(text("Date de prélèvement"), text(None, 2), date)
        + '<table:table-row table:number-rows-repeated="3"><table:table-cell table:number-columns-repeated="40"/></table:table-row>'
        + row(text("Paramètre"), text("Valeur mesurée"), text("Unité"), text("Seuil"))
        + row(text("Sodium"), text(23.5), text("mg/L"), text(200.0)) + row(text("Chlorures"), text(41.0), text("mg/L"), text(250.0))
        + row(text("Fer dissous"), text("<10"), text("µg/L"), text(200.0)) + row(text("Fluorures"), text("0,31"), text("mg/L"), text("1,5"))
    )  # fmt: skip
    spaces = " ".join(
        f'xmlns:{key}="urn:oasis:names:tc:opendocument:xmlns:{key}:1.0"' for key in ("office", "table", "text")
    )
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content {spaces} office:version="1.2"><office:body>'
        f'<office:spreadsheet><table:table table:name="Feuille1">{table}</table:table></office:spreadsheet></office:body>'
        "</office:document-content>"
    )
    manifest = (
        '<?xml version="1.0" encoding="UTF-8"?><manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0">'
        '<manifest:file-entry manifest:full-path="/" manifest:media-type="application/vnd.oasis.opendocument.spreadsheet"/>'
        '<manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>'
    )
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", content)
        archive.writestr("META-INF/manifest.xml", manifest)
    items = (
        it("sodium", "Sodium", "23.5", "mg/L", 23.5), it("chloride", "Chlorures", "41", "mg/L", 41),
        it("iron", "Fer dissous", "<10", "µg/L", 0, 0.01, "dissolved"), it("fluoride", "Fluorures", "0,31", "mg/L", 0.31),
    )  # fmt: skip
    return Layout("ods_french", "ods", buffer.getvalue(), (Water("OD-14", "", "2026-01-20", items),))


def merged_down() -> Layout:
    """Sample, site and method cells merged over the rows to which they belong."""
    book = Workbook()
    sheet = book.active
    sheet.append(("Sample", "Site", "Sampled", "Method", "Analyte", "Conc.", "Unit"))
    waters = []
    kinds = (("calcium", "Calcium", "EPA 200.7", "mg/L", 1), ("iron", "Iron", "EPA 200.7", "mg/L", 1),
             ("chloride", "Chloride", "EPA 300.0", "mg/L", 1), ("arsenic", "Arsenic", "EPA 200.8", "ug/L", 0.001))  # fmt: skip
    for number, values in enumerate(((71.5, "<0.03", 12.0, 3.1), (18.0, 4.4, 160.0, "<0.5"))):
        id, top = f"MD-{number}", sheet.max_row + 1
        items = []
        for (key, name, method, unit, factor), value in zip(kinds, values, strict=True):
            first = sheet.max_row + 1 == top
            sheet.append((id if first else None, f"Field {number}" if first else None, "2026-04-02" if first else None,
                          method, name, value, unit))  # fmt: skip
            low, high = (0, float(value[1:])) if isinstance(value, str) else (value, value)
            items.append(it(key, name, str(value), unit, low * factor, high * factor))
        for column in (1, 2, 3):
            sheet.merge_cells(start_row=top, end_row=top + 3, start_column=column, end_column=column)
        sheet.merge_cells(start_row=top, end_row=top + 1, start_column=4, end_column=4)
        waters.append(Water(id, f"Field {number}", "2026-04-02", tuple(items)))
    return Layout("xlsx_merged_down", "xlsx", saved(book), tuple(waters))


def notes_beside() -> Layout:
    """Notes, a telephone number and a key stand to the right of the table, level with its rows."""
    book = Workbook()
    sheet = book.active
    sheet.append(("Water test of 12 June 2026", None, None, None, None, "Notes"))
    sheet.append(("Test", "Your result", "Units", "Limit", None, "Please retest in 12 months."))
    rows = (
        ("Nitrate-N", 2.3, "mg/L", 10),
        ("Iron", 0.51, "mg/L", 0.3),
        ("Hardness", 240, "mg/L", None),
        ("pH", 7.0, None, None),
    )
    beside = ("Sampled by the owner", "Bottle 3 of 3", "Tel. 555-0167", "Values above the limit are printed bold")
    for row, note in zip(rows, beside, strict=True):
        sheet.append((*row, None, note))
    sheet["B4"].font = Font(bold=True)
    items = (
        it("nitrate", "Nitrate-N", "2.3", "mg/L", 2.3), it("iron", "Iron", "0.51", "mg/L", 0.51),
        it("total_hardness", "Hardness", "240", "mg/L", 240), it("ph", "pH", "7", "", 7),
    )  # fmt: skip
    return Layout("xlsx_notes_beside", "xlsx", saved(book), (Water("", "", "", items),))


def three_header_rows() -> Layout:
    """Wide, with the analyte, the fraction and the unit in three rows; the analyte merged over its two fractions."""
    book = Workbook()
    sheet = book.active
    sheet.append(("Well", "Date", "Iron", None, "Manganese", None, "Chloride", "Field pH"))
    sheet.append((None, None, "Total", "Dissolved", "Total", "Dissolved", None, None))
    sheet.append((None, None, "mg/L", "mg/L", "µg/L", "µg/L", "mg/L", "S.U."))
    sheet.merge_cells("C1:D1")
    sheet.merge_cells("E1:F1")
    table = (
        ("T-1", datetime(2026, 5, 4), 1.9, 0.4, 210, "<5", 31.5, 6.7),
        ("T-2", datetime(2026, 5, 5), "ND", "ND", 12, 9, 8.8, 7.2),
    )
    waters = []
    for row in table:
        sheet.append(row)
        id, _, iron, iron_d, manganese, manganese_d, chloride, ph = row
        items = []
        for key, fraction, value, factor in (("iron", "total", iron, 1), ("iron", "dissolved", iron_d, 1),
                                             ("manganese", "total", manganese, 0.001), ("manganese", "dissolved", manganese_d, 0.001)):  # fmt: skip
            low, high = (0, NAN) if value == "ND" else (0, 5) if value == "<5" else (value, value)
            items.append(it(key, key.title(), str(value), "", low * factor, high * factor, fraction))
        items += [
            it("chloride", "Chloride", str(chloride), "mg/L", chloride),
            it("ph", "Field pH", str(ph), "S.U.", ph),
        ]
        waters.append(Water(id, id, row[1].date().isoformat(), tuple(items)))
    return Layout("xlsx_three_header_rows", "xlsx", saved(book), tuple(waters))


def dates_across() -> Layout:
    """One well through the years: the dates are the columns, and are real dates; the well stands in the title block."""
    book = Workbook()
    sheet = book.active
    sheet.append(("Well", "Grebe Mere 2"))
    sheet.append(())
    days = (datetime(2023, 5, 2), datetime(2024, 5, 7), datetime(2025, 5, 6))
    sheet.append(("Parameter", "Unit", *days))
    table = (
        ("Nitrate as N", "mg/L", 6.1, 7.9, 9.4),
        ("Arsenic", "ug/L", "<1", 1.4, "<1"),
        ("Conductivity", "uS/cm", 480, 512, 530),
    )
    for row in table:
        sheet.append(row)
    waters = []
    for column, day in enumerate(days, 2):
        arsenic = table[1][column]
        bounds = (0, 0.001) if arsenic == "<1" else (0.0014,)
        items = (
            it("nitrate", "Nitrate as N", "", "mg/L", table[0][column]), it("arsenic", "Arsenic", str(arsenic), "ug/L", *bounds),
            it("specific_conductance", "Conductivity", "", "uS/cm", table[2][column]),
        )  # fmt: skip
        waters.append(Water("", "Grebe Mere 2", day.date().isoformat(), items))
    return Layout("xlsx_dates_across", "xlsx", saved(book), tuple(waters))


def forms_in_header() -> Layout:
    """Wide; each header says unit and form: `Nitrate (mg/L as NO3)`, `Silica, mg/L as Si`, `TH (°fH)`, `Fe, ppb`."""
    book = Workbook()
    sheet = book.active
    sheet.append(("Borehole", "Nitrate (mg/L as NO3)", "Ammonium (mg/L as NH4)", "Silica, mg/L as Si", "Total hardness (°dH)",
                  "Fe, ppb", "Phosphate mg/l PO4", "EC [mS/m]", "HCO3 (mg/L)", "U (µg/L)"))  # fmt: skip
    sheet.append(("B-2", 40.2, "<0.05", 6.1, 14.2, 310, 0.12, 61.5, 288, 4.4))
    sheet.append(("B-5", 0.8, 1.3, 9.7, 3.1, "< 20", "<0.03", 12.2, 61, "<0.1"))
    sio2 = 60.083 / 28.085
    po4p = 30.974 / 94.970
    a = (
        it("nitrate", "", "", "", 40.2 * N_OF_NO3), it("ammonia", "", "", "", 0, 0.05 * 14.007 / 18.039), it("silica", "", "", "", 6.1 * sio2),
        it("total_hardness", "", "", "", 14.2 * 17.848), it("iron", "", "", "", 0.31), it("orthophosphate", "", "", "", 0.12 * po4p),
        it("specific_conductance", "", "", "", 615), it("bicarbonate", "", "", "", 288), it("uranium", "", "", "", 0.0044),
    )  # fmt: skip
    b = (
        it("nitrate", "", "", "", 0.8 * N_OF_NO3), it("ammonia", "", "", "", 1.3 * 14.007 / 18.039), it("silica", "", "", "", 9.7 * sio2),
        it("total_hardness", "", "", "", 3.1 * 17.848), it("iron", "", "", "", 0, 0.02), it("orthophosphate", "", "", "", 0, 0.03 * po4p),
        it("specific_conductance", "", "", "", 122), it("bicarbonate", "", "", "", 61), it("uranium", "", "", "", 0, 0.0001),
    )  # fmt: skip
    return Layout("xlsx_forms_in_header", "xlsx", saved(book), (Water("B-2", "", "", a), Water("B-5", "", "", b)))


def limit_column() -> Layout:
    """The result cell says only `Not detected` or a number; detection limits stand in a later column, `Detected?` between."""
    book = Workbook()
    sheet = book.active
    sheet.append(
        ("Contaminant", "Detected?", "Level", "Unit of measure", "Lowest level we can detect", "Federal limit")
    )
    table = (("Lead", "No", None, "ppb", 1, 15), ("Copper", "Yes", 0.14, "ppm", 0.01, 1.3), ("Arsenic", "No", "Not detected", "ppb", 1, 10),
             ("Nitrate (as nitrogen)", "Yes", 3.3, "ppm", 0.1, 10), ("Fluoride", "No", "Not detected", "ppm", 0.1, 4))  # fmt: skip
    for row in table:
        sheet.append(row)
    items = (
        it("lead", "Lead", "", "ppb", 0, 0.001), it("copper", "Copper", "0.14", "ppm", 0.14), it("arsenic", "Arsenic", "Not detected", "ppb", 0, 0.001),
        it("nitrate", "Nitrate (as nitrogen)", "3.3", "ppm", 3.3), it("fluoride", "Fluoride", "Not detected", "ppm", 0, 0.1),
    )  # fmt: skip
    return Layout("xlsx_limit_column", "xlsx", saved(book), (Water("", "", "", items),))


def nameless_result() -> Layout:
    """The result column has no header word; neither has the column of `<` before it."""
    book = Workbook()
    sheet = book.active
    sheet.append(("Sample NR-1", None, None, None, None))
    sheet.append(("Analyte", None, None, "Units", "MDL", "Max. allowed"))
    table = (("Barium", None, 0.12, "mg/L", 0.01, 2), ("Selenium", "<", 0.002, "mg/L", 0.002, 0.05), ("Zinc", None, 0.8, "mg/L", 0.005, 5),
             ("Nickel", "<", 0.004, "mg/L", 0.004, None))  # fmt: skip
    for row in table:
        sheet.append(row)
    items = (
        it("barium", "Barium", "0.12", "mg/L", 0.12), it("selenium", "Selenium", "0.002", "mg/L", 0, 0.002),
        it("zinc", "Zinc", "0.8", "mg/L", 0.8), it("nickel", "Nickel", "0.004", "mg/L", 0, 0.004),
    )  # fmt: skip
    return Layout("xlsx_nameless_result", "xlsx", saved(book), (Water("NR-1", "", "", items),))


def two_beside() -> Layout:
    """Two samples side by side on one sheet, an empty column between, each with its own little head."""
    book = Workbook()
    sheet = book.active
    left = (("Calcium", 44, "mg/L"), ("Iron", 0.6, "mg/L"), ("Nitrate-N", "<0.1", "mg/L"))
    right = (("Calcium", 12, "mg/L"), ("Iron", "<0.05", "mg/L"), ("Nitrate-N", 5.5, "mg/L"))
    sheet.append(("Sample ID:", "HOUSE", None, None, "Sample ID:", "BARN", None))
    sheet.append(("Date:", "2026-08-01", None, None, "Date:", "2026-08-02", None))
    sheet.append(("Analyte", "Result", "Unit", None, "Analyte", "Result", "Unit"))
    for a, b in zip(left, right, strict=True):
        sheet.append((*a, None, *b))
    a = (
        it("calcium", "Calcium", "44", "mg/L", 44),
        it("iron", "Iron", "0.6", "mg/L", 0.6),
        it("nitrate", "Nitrate-N", "<0.1", "mg/L", 0, 0.1),
    )
    b = (
        it("calcium", "Calcium", "12", "mg/L", 12),
        it("iron", "Iron", "<0.05", "mg/L", 0, 0.05),
        it("nitrate", "Nitrate-N", "5.5", "mg/L", 5.5),
    )
    return Layout(
        "xlsx_two_beside",
        "xlsx",
        saved(book),
        (Water("HOUSE", "", "2026-08-01", a), Water("BARN", "", "2026-08-02", b)),
    )


def key_value() -> Layout:
    """No header: label, value and unit under titles in capitals; truth values for germs; numbers as text with odd blanks."""
    book = Workbook()
    sheet = book.active
    for row in (
        ("WATER ANALYSIS",), ("Customer", "H. Invented"), ("Sample no.", "KV/0042"), ("Sampling date", datetime(2026, 3, 30, 9, 45)),
        (), ("BACTERIOLOGY",), ("Total coliforms", "not found", "in 100 ml"), ("E. coli", "not found", "in 100 ml"),
        (), ("CHEMISTRY",), ("Chloride", "\u00a045.0 ", "mg/l"), ("Sulphate", " 61 ", "mg/l"), ("Iron (total)", "1\u00a0204", "µg/l"),
        ("Manganese (dissolved)", "< 10", "µg/l"), ("Electrical conductivity 25°C", 702, "µS/cm"), ("Odour", "none", None),
        (), ("Sum of cations", 7.1, "meq/l"), ("Sum of anions", 7.0, "meq/l"), ("Balance error", 0.7, "%"),
    ):  # fmt: skip
        sheet.append(row)
    items = (
        it("total_coliform", "Total coliforms", "not found", "in 100 ml", 0), it("e_coli", "E. coli", "not found", "in 100 ml", 0),
        it("chloride", "Chloride", "45.0", "mg/l", 45), it("sulfate", "Sulphate", "61", "mg/l", 61),
        it("iron", "Iron (total)", "1 204", "µg/l", 1.204, fraction="total"),
        it("manganese", "Manganese (dissolved)", "< 10", "µg/l", 0, 0.01, "dissolved"),
        it("specific_conductance", "Electrical conductivity 25°C", "702", "µS/cm", 702),
    )  # fmt: skip
    return Layout(
        "xlsx_key_value",
        "xlsx",
        saved(book),
        (Water("KV/0042", "", "2026-03-30", items),),
        extra_ok=frozenset({"odor"}),
    )


def unit_bands() -> Layout:
    """Wide; a merged unit stands above a band of analytes; statistics and a limit close the table."""
    book = Workbook()
    sheet = book.active
    sheet.append((None, "mg/L", None, None, "µg/L", None, None))
    sheet.append(("ID", "Ca", "Na", "Cl", "As", "Pb", "Cu"))
    sheet.merge_cells("B1:D1")
    sheet.merge_cells("E1:G1")
    sheet.append(("U-1", 52, 11, 20, 4.2, "<0.5", 33))
    sheet.append(("U-2", 17, 140, 210, "<1", 2.2, 610))
    sheet.append(("Mean", 34.5, 75.5, 115, 2.4, 1.2, 321.5))
    sheet.append(("SD", 24.7, 91.2, 134, 2.6, 1.4, 408))
    sheet.append(("Guideline", None, 200, 250, 10, 10, 2000))
    a = (
        it("calcium", "Ca", "52", "mg/L", 52), it("sodium", "Na", "11", "mg/L", 11), it("chloride", "Cl", "20", "mg/L", 20),
        it("arsenic", "As", "4.2", "µg/L", 0.0042), it("lead", "Pb", "<0.5", "µg/L", 0, 0.0005), it("copper", "Cu", "33", "µg/L", 0.033),
    )  # fmt: skip
    b = (
        it("calcium", "Ca", "17", "mg/L", 17), it("sodium", "Na", "140", "mg/L", 140), it("chloride", "Cl", "210", "mg/L", 210),
        it("arsenic", "As", "<1", "µg/L", 0, 0.001), it("lead", "Pb", "2.2", "µg/L", 0.0022), it("copper", "Cu", "610", "µg/L", 0.61),
    )  # fmt: skip
    return Layout("xlsx_unit_bands", "xlsx", saved(book), (Water("U-1", "", "", a), Water("U-2", "", "", b)))


def germs_as_logical() -> Layout:
    """Rows a visit of one site; presence as words, counts with `>`; columns for sampler and weather between."""
    book = Workbook()
    sheet = book.active
    sheet.append(
        (
            "Site",
            "Date",
            "Sampler",
            "Weather",
            "Water temp (°C)",
            "E. coli (MPN/100mL)",
            "Total coliform (P/A)",
            "Enterococci CFU per 100 mL",
        )
    )
    sheet.append(("Spring house", datetime(2026, 6, 1), "R.T.", "rain 12 mm", 11.2, ">2419.6", "P", 41))
    sheet.append(("Spring house", datetime(2026, 6, 8), "R.T.", "dry", 11.9, "<1", "A", 0))
    a = (
        it("temperature", "", "", "", 11.2),
        it("e_coli", "", "", "", 2419.6, INF),
        it("total_coliform", "", "", "", 1, INF),
        it("enterococci", "", "", "", 41),
    )
    b = (
        it("temperature", "", "", "", 11.9),
        it("e_coli", "", "", "", 0),
        it("total_coliform", "", "", "", 0),
        it("enterococci", "", "", "", 0),
    )
    waters = (Water("", "Spring house", "2026-06-01", a), Water("", "Spring house", "2026-06-08", b))
    return Layout("xlsx_visits", "xlsx", saved(book), waters)


LAYOUTS = (
    html, spreadsheet_xml, open_document, merged_down, notes_beside, three_header_rows, dates_across, forms_in_header,
    limit_column, nameless_result, two_beside, key_value, unit_bands, germs_as_logical,
)  # fmt: skip
