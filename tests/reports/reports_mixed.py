"""Layouts of several countries and desks: ranges before results, marks of high and low, limits in cells, pages of control.

Headings of `provincial_wide` are those of a Canadian province's public groundwater table. Every laboratory, site and
number is invented; each meaning is typed by hand. Before the reading was mended a range before the results made every
row a statistic, H beside L was a holding time, labelled limits in a cell hid the result, and a day in a line of labels
was not heard.
"""

from __future__ import annotations

import io
import zipfile

from reportlab.lib.pagesizes import A4, letter
from reports_catalog import INF, Layout, Water
from reports_draw import absent, fill, found, less, present
from reports_exports import one
from reports_pdf import Paper
from reports_written import N_OF_NH4, N_OF_NO2, N_OF_NO3, PCI, U, lines, means

AT = (48, 230, 300, 370, 440)
HEAD = ("Analyte", "Result", "Units", "RL", "Method")


def three_springs() -> Layout:
    """A French report: the day in a sentence before the labelled point, quality limits and references, °f, MF counts."""
    paper = Paper(A4)
    paper.text("Laboratoire des Trois Sources - Rapport d'analyse n° 26-118", bold=True)
    paper.text("Prélèvement du 14/05/2026 à 10h20 - Point de prélèvement : robinet cuisine")
    at = (48, 230, 300, 370, 430)
    paper.row(at, ("Paramètre", "Résultat", "Unité", "Limite de qualité", "Référence de qualité"), bold=True, size=7)
    printed = (
        (("Température de l'eau", "12,4", "°C", "", "25"), found("temperature", 12.4)),
        (("pH", "7,35", "unité pH", "", "6,5 à 9"), found("ph", 7.35)),
        (("Conductivité à 25°C", "512", "µS/cm", "", "200 à 1100"), found("specific_conductance", 512)),
        (("Turbidité néphélométrique", "<0,30", "NFU", "", "2"), less("turbidity", 0.3)),
        (("Ammonium (en NH4)", "<0,05", "mg/L", "", "0,1"), less("ammonia", 0.05 * N_OF_NH4)),
        (("Nitrates (en NO3)", "18,6", "mg/L", "50", ""), found("nitrate", 18.6 * N_OF_NO3)),
        (("Nitrites (en NO2)", "<0,02", "mg/L", "0,5", ""), less("nitrite", 0.02 * N_OF_NO2)),
        (("Fer total", "34", "µg/L", "", "200"), found("iron", 34 * U, fraction="total")),
        (("Plomb", "1,2", "µg/L", "10", ""), found("lead", 1.2 * U)),
        (("Escherichia coli /100ml - MF", "<1", "n/(100mL)", "0", ""), absent("e_coli")),
        (("Entérocoques /100ml-MS", "2", "n/(100mL)", "0", ""), found("enterococci", 2)),
        (("Titre hydrotimétrique", "28,1", "°f", "", ""), found("total_hardness", 281)),
    )
    items = fill(paper, at, printed)
    return Layout("pdf_three_springs", "pdf", paper.done(), (Water("", "", "2026-05-14", items),))


def farmyard() -> Layout:
    """A German report of a farm's well: limits of the ordinance, degrees of hardness, an acid capacity in mmol/l."""
    paper = Paper(A4)
    paper.text("Prüfbericht Nr. 2026-0417", bold=True)
    paper.text("Probenahmedatum: 14.05.2026   Entnahmestelle: Brunnen, Hof")
    at = (48, 220, 310, 390, 450)
    paper.row(at, ("Parameter", "Messwert", "Einheit", "Grenzwert", "Verfahren"), bold=True, size=8)
    printed = (
        (("Coliforme Bakterien", "3", "KBE/100 ml", "0", "DIN EN ISO 9308-2"), found("total_coliform", 3)),
        (("Escherichia coli", "nicht nachw.", "KBE/100 ml", "0", "DIN EN ISO 9308-2"), absent("e_coli")),
        (("Gesamthärte", "18,4", "°dH", "", ""), found("total_hardness", 18.4 * 17.848)),
        (("Säurekapazität bis pH 4,3", "5,2", "mmol/l", "", ""), found("total_alkalinity", 5.2 * 50.043)),
        (("Nitrat", "48", "mg/l", "50", "DIN EN ISO 10304-1"), found("nitrate", 48 * N_OF_NO3)),
        (("Ammonium", "< 0,02", "mg/l", "0,50", ""), less("ammonia", 0.02 * N_OF_NH4)),
        (("Eisen, gesamt", "0,184", "mg/l", "0,200", ""), found("iron", 0.184, fraction="total")),
        (("Uran", "0,0034", "mg/l", "0,010", ""), found("uranium", 0.0034)),
        (("Calcitlösekapazität", "3,1", "mg/l CaCO3", "5", ""), found("calcite_dissolution_capacity", 3.1)),
    )
    items = fill(paper, at, printed)
    return Layout("pdf_farmyard", "pdf", paper.done(), (Water("", "", "2026-05-14", items),))


def spanish_sheet() -> Layout:
    """A Spanish sheet: points for thousands and commas for decimals in one column, absence and presence in words."""
    text = (
        "Muestra;P-77\nFecha de muestreo;14/05/2026\nParámetro;Resultado;Unidad;Límite\nHierro;0,12;mg/L;0,3\n"
        "Nitratos (NO3);12,5;mg/L;50\nColiformes totales;Ausencia;UFC/100 mL;0\nE. coli;Presencia;;0\n"
        "Sodio;1.234,5;mg/L;200\nArsénico;< 0,005;mg/L;0,01\n"
    )
    items = (
        means("iron", 0.12), means("nitrate", 12.5 * N_OF_NO3), means("total_coliform", 0, 0), means("e_coli", 1, INF), means("sodium", 1234.5),
        means("arsenic", 0, 0.005),
    )  # fmt: skip
    return one("csv_spanish_sheet", text, Water("P-77", "", "2026-05-14", items))


def high_and_low() -> Layout:
    """Marks of high and low against a reference range, as a clinic prints them: no qualifiers of a laboratory."""
    rows = [
        ("Test", "Result", "Flag", "Reference Range", "Units"), ("pH", "6.1", "L", "6.5-8.5", "SU"), ("Iron", "0.9", "H", "<0.3", "mg/L"),
        ("Lead", "0.002", "", "<0.015", "mg/L"), ("E. coli", "Present", "A", "Absent", "/100mL"), ("Nitrate as N", "3.1", "N", "<10", "mg/L"),
    ]  # fmt: skip
    items = (means("ph", 6.1), means("iron", 0.9), means("lead", 0.002), means("e_coli", 1, INF), means("nitrate", 3.1))
    return one("csv_high_and_low", lines(rows), Water("", "", "", items))


def range_first() -> Layout:
    """The range to be in stands before the result."""
    rows = [
        ("Parameter", "Range", "Result", "Units"), ("pH", "6.5-8.5", "7.2", "SU"), ("Iron", "0-0.3", "0.4", "mg/L"),
        ("Total Hardness", "75-150", "210", "mg/L"), ("Turbidity", "0-1", "<0.2", "NTU"),
    ]  # fmt: skip
    items = (means("ph", 7.2), means("iron", 0.4), means("total_hardness", 210), means("turbidity", 0, 0.2))
    return one("csv_range_first", lines(rows), Water("", "", "", items))


def limits_in_cells() -> Layout:
    """Amount, unit and a labelled limit in one cell; hardness in two units; a bare number in brackets behind a result is not the result."""
    rows = [
        ("Parameter", "Result"), ("Iron", "0.42 mg/L (max 0.3)"), ("Lead", "2 ug/L (AL 15)"), ("Nitrate-N", "<0.1 mg/L (MCL 10)"),
        ("Copper", "0.11 mg/L (std. 1.3)"), ("Total Hardness", "210 mg/L = 12.3 gpg"), ("TDS", "410 ppm [500]"),
    ]  # fmt: skip
    items = (
        means("iron", 0.42), means("lead", 2 * U), means("nitrate", 0, 0.1), means("copper", 0.11), means("total_hardness", 210), means("total_dissolved_solids", 410),
    )  # fmt: skip
    return one("csv_limits_in_cells", lines(rows), Water("", "", "", items))


def days_across() -> Layout:
    """The results of three years, a day over each column, and the guideline behind them."""
    text = (
        "Parameter;Unit;12.03.2019;14.05.2021;17.06.2024;Grenzwert\nNitrat;mg/l;12;14;<1;50\nEisen;mg/l;0,1;0,2;0,31;0,2\n"
        "Mangan;µg/l;;12;14;50\n"
    )
    waters = (
        Water("", "", "2019-03-12", (means("nitrate", 12 * N_OF_NO3), means("iron", 0.1))),
        Water("", "", "2021-05-14", (means("nitrate", 14 * N_OF_NO3), means("iron", 0.2), means("manganese", 12 * U))),
        Water("", "", "2024-06-17", (means("nitrate", 0, N_OF_NO3), means("iron", 0.31), means("manganese", 14 * U))),
    )
    return Layout("csv_days_across", "csv", text.encode(), waters)


def pages_of_control() -> Layout:
    """A page of results and a page of blanks, controls and spikes, the household's sample named as their source."""
    paper = Paper(letter)
    paper.row((48, 300), ("Sample ID: QP-1", "Collected: 2026-05-14"))
    paper.row(AT, HEAD, bold=True)
    items = fill(
        paper, AT, (
            (("Iron", "0.1", "mg/L", "0.05", "EPA 200.7"), found("iron", 0.1)),
            (("Lead", "<0.001", "mg/L", "0.001", "EPA 200.8"), less("lead", 0.001)),
        ),
    )  # fmt: skip
    paper.y = 50
    paper.row((48, 300, 500), ("Nitrate Lane Laboratory - 26-1182", "Iron County", "3"))
    paper.new()
    paper.text("Quality Assurance Results", bold=True)
    at = (40, 150, 220, 280, 340, 400, 460, 520)
    head = ("Analyte", "Result", "Spike Level", "Source Result", "%REC", "%REC Limits", "RPD", "RPD Limit")
    paper.row(at, head, bold=True, size=7)
    paper.text("Blank (B26-100-BLK1)", 40)
    paper.row(at, ("Iron", "ND", "", "", "", "", "", ""))
    paper.row(at, ("Lead", "ND", "", "", "", "", "", ""))
    paper.text("LCS (B26-100-BS1)", 40)
    paper.row(at, ("Iron", "0.98", "1.0", "", "98", "85-115", "", ""))
    paper.row(at, ("Lead", "0.051", "0.050", "", "102", "85-115", "", ""))
    paper.text("Matrix Spike (B26-100-MS1)   Source: QP-1", 40)
    paper.row(at, ("Iron", "1.08", "1.0", "0.1", "98", "75-125", "", ""))
    paper.text("Duplicate (B26-100-DUP1)   Source: QP-1", 40)
    paper.row(at, ("Iron", "0.1", "", "0.1", "", "", "0", "20"))
    paper.row(at, ("Lead", "ND", "", "ND", "", "", "", "20"))
    paper.y = 50
    paper.row((48, 300, 500), ("Nitrate Lane Laboratory - 26-1182", "Iron County", "4"))
    return Layout(
        "pdf_pages_of_control", "pdf", paper.done(), (Water("QP-1", "", "2026-05-14", items),), quality_control=7
    )


def three_taps() -> Layout:
    """Points across without a word over the names, rows of their numbers and days beneath, a limit behind."""
    paper = Paper(A4, points=8)
    at = (40, 160, 230, 300, 370, 440)
    paper.row(at, ("", "Units", "Kitchen", "Well head", "After softener", "Limit"), bold=True)
    paper.row(at, ("Lab no.", "", "26-1", "26-2", "26-3", ""))
    paper.row(at, ("Date sampled", "", "14.05.2026", "14.05.2026", "15.05.2026", ""))
    for row in (
        ("Iron", "mg/L", "0.1", "1.4", "0.02", "0.3"),
        ("Total hardness", "mg/L", "20", "210", "12", ""),
        ("E. coli", "/100 mL", "0", "3", "<1", "0"),
        ("pH", "", "7.1", "6.9", "7.2", "6.5-8.5"),
    ):
        paper.row(at, row)

    def items(fe, hard, coli, ph):
        return (means("iron", fe), means("total_hardness", hard), means("e_coli", coli), means("ph", ph))

    waters = (
        Water("26-1", "", "2026-05-14", items(0.1, 20, 0, 7.1)),
        Water("26-2", "", "2026-05-14", items(1.4, 210, 3, 6.9)),
        Water("26-3", "", "2026-05-15", items(0.02, 12, 0, 7.2)),
    )
    return Layout("pdf_three_taps", "pdf", paper.done(), waters)


def two_reports() -> Layout:
    """Two reports bound into one file: each has its own head, its own first page."""
    paper = Paper(letter)
    waters = []
    for number, (iron, day) in enumerate((("0.4", "2026-05-14"), ("<0.05", "2026-06-16")), 1):
        paper.text(f"Report No. R-{number}   Page 1 of 1", bold=True)
        paper.row((48, 300), (f"Sample ID: TR-{number}", f"Collected: {day}"))
        paper.row(AT, HEAD, bold=True)
        bound = less("iron", 0.05) if iron[0] == "<" else found("iron", float(iron))
        items = fill(
            paper, AT, (
                (("Iron", iron, "mg/L", "0.05", "EPA 200.7"), bound),
                (("Lead", f"{number}", "ug/L", "1", "EPA 200.8"), found("lead", number * U)),
            ),
        )  # fmt: skip
        paper.text("End of report")
        waters.append(Water(f"TR-{number}", "", day, items))
        if number == 1:
            paper.new()
    return Layout("pdf_two_reports", "pdf", paper.done(), tuple(waters))


def drawn_crosses() -> Layout:
    """Boxes and crosses drawn as lines beside both words: which one is crossed is no text, and is told to be unread."""
    paper = Paper(letter, points=10, lead=18)
    paper.row((48, 300), ("Sample ID: DC-9", "Collected: 2026-05-14"))
    paper.row(AT, HEAD, bold=True)
    items = fill(paper, AT, ((("Nitrate as N", "2.2", "mg/L", "0.1", "EPA 300.0"), found("nitrate", 2.2)),))
    paper.y -= 20
    for name, there in (("Total coliform", True), ("E. coli", False)):
        for x, ticked in ((200, there), (290, not there)):
            paper.page.rect(x, paper.y - 1, 8, 8)
            if ticked:
                paper.page.line(x, paper.y - 1, x + 8, paper.y + 7)
                paper.page.line(x, paper.y + 7, x + 8, paper.y - 1)
        paper.row((48, 212, 302), (name, "Present", "Absent"))
    return Layout("pdf_drawn_crosses", "pdf", paper.done(), (Water("DC-9", "", "2026-05-14", items),), unread=2)


def written_values() -> Layout:
    """Ways to write a value that one desk uses beside each other."""
    table = (
        ("Iron", "ND@0.5", "mg/L", means("iron", 0, 0.5)), ("Lead", "0.5 U", "µg/L", means("lead", 0, 0.5 * U)), ("Arsenic", "<0.5 UJ", "µg/L", means("arsenic", 0, 0.5 * U)),
        ("Total coliform", "TNTC", "CFU/100 mL", means("total_coliform", 1, INF)), ("E. coli", ">200.5", "MPN/100 mL", means("e_coli", 200.5, INF)),
        ("Enterococci", "Absent/100mL", "", means("enterococci", 0, 0)), ("Barium", "1.2E-3", "mg/L", means("barium", 0.0012)), ("Sodium", "1 200", "mg/L", means("sodium", 1200)),
        ("Chloride", "12*", "mg/L", means("chloride", 12)), ("Langelier Index", "‑0.6", "", means("langelier_index", -0.6)), ("Sulfate", "1'250", "mg/L", means("sulfate", 1250)),
        ("Selenium", "< .005", "mg/L", means("selenium", 0, 0.005)), ("Cadmium", "BDL(0.001)", "mg/L", means("cadmium", 0, 0.001)), ("Silver", "nd<0.2", "µg/L", means("silver", 0, 0.2 * U)),
    )  # fmt: skip
    rows = [
        ("Parameter", "Result", "Unit"),
        *(row[:3] for row in table),
        ("Zinc", "*", "mg/L"),
        ("Turbidity", "0.3‑0.5", "NTU"),
    ]
    return one("csv_written_values", lines(rows), Water("", "", "", tuple(row[3] for row in table)), unread=2)


def provincial_wide() -> Layout:
    """A province's groundwater table, a sample a row: oxidation states, measured alkalinity, fractions behind names."""
    head = (
        "SampleID", "StationID", "Sample_Date", "Well_Depth", "Temp", "As_diss", "As_tot", "Cr_VI_diss", "Fe_diss", "Fe_tot", "HCO3", "Meas_Alk", "Meas_Hardness", "NO3", "Na",
        "pH_field", "pH_lab", "Nitrogen_Kjel_Tot(N)", "Phosphorus_Total", "Silica_Reactive_Diss", "Turbidity",
    )  # fmt: skip
    units = ("", "", "", "m", "°C", "µg/L", "µg/L", "µg/L", "µg/L", "µg/L", "mg/L", "mg/L", "mg/L", "mg/L", "mg/L", "", "", "mg/L", "mg/L", "mg/L", "NTU")  # fmt: skip
    row = ("S-9", "E20-1", "2024-05-22", "31", "9.1", "2.1", "2.4", "<0.5", "12", "140", "180", "150", "160", "2.2", "14", "7.4", "7.6", "0.3", "0.04", "11", "0.3")  # fmt: skip
    items = (
        means("temperature", 9.1), means("arsenic", 2.1 * U, None, "dissolved"), means("arsenic", 2.4 * U, None, "total"), means("chromium_vi", 0, 0.5 * U, "dissolved"),
        means("iron", 0.012, None, "dissolved"), means("iron", 0.14, None, "total"), means("bicarbonate", 180), means("total_alkalinity", 150), means("total_hardness", 160),
        means("nitrate", 2.2 * N_OF_NO3), means("sodium", 14), means("ph", 7.4, flag="field"), means("ph", 7.6, flag="laboratory"), means("kjeldahl_nitrogen", 0.3),
        means("phosphorus", 0.04, None, "total"), means("silica", 11, None, "dissolved"), means("turbidity", 0.3),
    )  # fmt: skip
    return one("csv_provincial_wide", lines([head, units, row]), Water("S-9", "E20-1", "2024-05-22", items))


def office_signs() -> Layout:
    """An open document in which a format puts the sign of "less than" before the number and the unit behind it."""
    shown = (
        ("Iron", "0.05", "&lt;0.05"),
        ("Lead", "2", "2 µg/L"),
        ("Nitrate as N", "3.1", "3.1 mg/L"),
        ("Zinc", "0.4", "0.4"),
    )
    head = "".join(
        f'<table:table-cell office:value-type="string"><text:p>{text}</text:p></table:table-cell>'
        for text in ("Analyte", "Result (mg/L)")
    )
    body = "".join(
        f'<table:table-row><table:table-cell office:value-type="string"><text:p>{name}</text:p></table:table-cell>'
        f'<table:table-cell office:value-type="float" office:value="{value}"><text:p>{text}</text:p></table:table-cell></table:table-row>'
        for name, value, text in shown
        if name != "Lead"
    )
    names = " ".join(
        f'xmlns:{name}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"' for name in ("office", "table", "text")
    )
    content = (
        f'<?xml version="1.0"?><office:document-content {names}><office:body><office:spreadsheet><table:table table:name="A">'
        f"<table:table-row>{head}</table:table-row>{body}</table:table></office:spreadsheet></office:body></office:document-content>"
    )
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", content)
    items = (means("iron", 0, 0.05), means("nitrate", 3.1), means("zinc", 0.4))
    return Layout("ods_office_signs", "ods", buffer.getvalue(), (Water("", "", "", items),))


def expressed_as() -> Layout:
    """Calcium and magnesium as CaCO3 are hardness and no calcium; radon and alpha in picocuries beside them."""
    rows = [
        ("Parameter", "Result", "Unit"), ("Calcium (as CaCO3)", "120", "mg/L"), ("Magnesium as CaCO3", "60", "mg/L"),
        ("Total Hardness as CaCO3", "180", "mg/L"), ("Calcium", "48", "mg/L"), ("Radon", "1400", "pCi/L"), ("E. coli (membrane)", "0", "CFU/100 mL"),
    ]  # fmt: skip
    items = (
        means("calcium_hardness", 120), means("magnesium_hardness", 60), means("total_hardness", 180), means("calcium", 48), means("radon_222", 1400 * PCI),
        means("e_coli", 0, 0),
    )  # fmt: skip
    return one("csv_expressed_as", lines(rows), Water("", "", "", items))


def verdict_letters() -> Layout:
    """A page of bacteria with verdicts in words, and the sample named in a sentence of labels."""
    paper = Paper(letter)
    paper.text("Sample No. VB-12   Well: Alder Farm   Sampled 14 May 2026 by the owner")
    at = (48, 230, 330, 430)
    paper.row(at, ("Test", "Result", "Meets Standard", "Method"), bold=True)
    printed = (
        (("Total coliform bacteria", "Present", "No", "SM 9223 B"), present("total_coliform")),
        (("E. coli", "Absent", "Yes", "SM 9223 B"), absent("e_coli")),
        (("Heterotrophic plate count", "57 CFU/mL", "Yes", "SM 9215 B"), found("heterotrophic_plate_count", 57)),
    )
    items = fill(paper, at, printed)
    return Layout("pdf_verdict_letters", "pdf", paper.done(), (Water("VB-12", "", "2026-05-14", items),))


LAYOUTS = (
    three_springs, farmyard, spanish_sheet, high_and_low, range_first, limits_in_cells, days_across, pages_of_control,
    three_taps, two_reports, drawn_crosses, written_values, provincial_wide, office_signs, expressed_as, verdict_letters,
)  # fmt: skip
