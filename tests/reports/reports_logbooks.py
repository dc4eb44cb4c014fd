"""Books, boards and consultants' tables that grew over the years; everything is invented, each meaning typed by hand."""

from __future__ import annotations

import datetime

from openpyxl import Workbook
from openpyxl.comments import Comment
from reports_catalog import INF, Layout, Water
from reports_exports import one
from reports_written import N_OF_NO3, U, lines, means, saved


def book(*sheets) -> Workbook:
    """Sheets of rows by their titles."""
    made = Workbook()
    made.remove(made.active)
    for title, rows in sheets:
        sheet = made.create_sheet(title)
        for row in rows:
            sheet.append(row)
    return made


def wells_transposed() -> Layout:
    """Wells down in blocks of three rows: result, qualifier, reporting limit, named in the second column.

    Results lost their qualifiers: rows beneath each sample now speak of its results.
    """
    rows = [
        ("Well", "Row", "Arsenic (ug/L)", "Iron (mg/L)", "Nitrate as N (mg/L)"),
        ("TW-1", "Result", "0.5", "1.22", "0.31"), ("", "Qualifier", "U", "", "J"), ("", "RL", "0.5", "0.05", "0.5"),
        ("TW-2", "Result", "18.4", "0.05", "7.1"), ("", "Qualifier", "", "U", ""), ("", "RL", "0.5", "0.05", "0.5"),
    ]  # fmt: skip
    waters = (
        Water("TW-1", "", "", (means("arsenic", 0, 0.5 * U), means("iron", 1.22), means("nitrate", 0, 0.5, flag="J"))),
        Water("TW-2", "", "", (means("arsenic", 18.4 * U), means("iron", 0, 0.05), means("nitrate", 7.1))),
    )
    return one("csv_wells_transposed", lines(rows), waters)


def errors_and_serials() -> Layout:
    """Serial days in a column headed Date, a time column, error cells, a comment on a cell, a hidden column of old results."""
    made = book(
        ("Log", [
            ("Kitchen tap log",), ("Date", "Time", "Old nitrate", "Nitrate-N mg/L", "Iron mg/L", "pH", "Bacteria (total coliform)", "Remarks"),
            (45792, 0.375, 4.1, 5.2, "#N/A", 7.1, "absent", "ok"), (45992, 0.5, 5.2, 6.6, 0.11, "#REF!", "PRESENT", "well flooded"),
            ("Average", "", 4.65, 5.9, 0.11, 7.1, "", ""), ("Max", "", 5.2, 6.6, 0.11, 7.1, "", ""),
        ]),
    )  # fmt: skip
    sheet = made["Log"]
    sheet["D3"].comment = Comment("second bottle", "A")
    for row in (3, 4):
        sheet.cell(row, 1).number_format = "dd/mm/yyyy"
        sheet.cell(row, 2).number_format = "hh:mm"
    waters = (
        Water("", "", "2025-05-15", (means("nitrate", 5.2), means("ph", 7.1), means("total_coliform", 0, 0))),
        Water("", "", "2025-12-01", (means("nitrate", 6.6), means("iron", 0.11), means("total_coliform", 1, INF))),
    )
    return Layout("xlsx_errors_and_serials", "xlsx", saved(made), waters, unread=1, extra_ok=frozenset({"iron", "ph"}))


def stacked_cards() -> Layout:
    """A card a sample beneath the other, each with its own labelled head and a total line, dates in three orders."""
    card = "Sample no.;{id}\nTaken on;{day}\nWhere;{site}\nParameter;Value;Unit;Guide value\n{rows}Parameters above guide value;{n};;\n\n"
    text = (
        card.format(
            id="C-1",
            day="2026-03-31",
            site="Well house",
            rows="Nitrate as N;11,2;mg/l;10\nIron;0,05;mg/l;0,3\nLead;<0,001;mg/l;0,01\n",
            n=1,
        )
        + card.format(
            id="C-2",
            day="1 April 2026",
            site="Kitchen",
            rows="Nitrate as N;10,9;mg/l;10\nIron;0,31;mg/l;0,3\nLead;0,004;mg/l;0,01\n",
            n=2,
        )
        + card.format(
            id="C-3",
            day="02.04.2026",
            site="Stable",
            rows="Nitrate as N;0,4;mg/l;10\nIron;<0,02;mg/l;0,3\nE. coli;0;/100 ml;0\n",
            n=0,
        )
    )
    waters = (
        Water("C-1", "", "2026-03-31", (means("nitrate", 11.2), means("iron", 0.05), means("lead", 0, 0.001))),
        Water("C-2", "", "2026-04-01", (means("nitrate", 10.9), means("iron", 0.31), means("lead", 0.004))),
        Water("C-3", "", "2026-04-02", (means("nitrate", 0.4), means("iron", 0, 0.02), means("e_coli", 0, 0))),
    )
    return one("csv_stacked_cards", text, waters)


def every_form_of_nothing() -> Layout:
    """Many ways to say that nothing was found, not measured, or too much; `n/d` may be no data and stays unread."""
    rows = [
        ("Sample Ref", "Test", "Reading", "Measured in", "Lowest reportable"),
        ("N-1", "Lead", "n/d", "ug/L", "0.5"), ("N-1", "Copper", "Not found", "mg/L", "0.01"), ("N-1", "Zinc", "< LOR", "mg/L", "0.005"), ("N-1", "Cadmium", "BQL", "ug/L", "0.1"),
        ("N-1", "Arsenic", "Less than 1", "ug/L", "1"), ("N-1", "Selenium", "below 2", "ug/L", "2"), ("N-1", "Nitrite as N", "Nil", "mg/L", "0.01"), ("N-1", "Mercury", "not tested", "ug/L", ""),
        ("N-1", "Total coliforms", "TNTC", "CFU/100 mL", "1"), ("N-1", "E. coli", "None detected", "CFU/100 mL", "1"), ("N-1", "Enterococci", "<1", "CFU/100 mL", "1"), ("N-1", "Heterotrophic plate count", ">5700", "CFU/mL", "1"),
        ("N-1", "Residual chlorine, free", "0.0", "mg/L", ""), ("N-1", "Hardness, carbonate", "118", "mg/L CaCO3", ""),
    ]  # fmt: skip
    items = (
        means("copper", 0, 0.01), means("zinc", 0, 0.005), means("cadmium", 0, 0.1 * U), means("arsenic", 0, U), means("selenium", 0, 2 * U),
        means("nitrite", 0, 0.01), means("total_coliform", 1, INF), means("e_coli", 0, 0), means("enterococci", 0, 0), means("heterotrophic_plate_count", 5700, INF), means("free_chlorine", 0.0),
        means("carbonate_hardness", 118),
    )  # fmt: skip
    return one(
        "csv_every_form_of_nothing", lines(rows), Water("N-1", "", "", items), extra_ok=frozenset({"mercury"}), unread=1
    )


def two_hardnesses() -> Layout:
    """Hardness in four units one under the other, alkalinity's family, silica and phosphate in two forms, nitrogen in two."""
    rows = [
        ("Bore No.", "B77"), ("Date of Sampling", "7-Mar-2026"), ("Analyte", "Result", "Units"),
        ("Hardness, total", "11.7", "gpg"), ("Hardness, total", "200", "mg/L as CaCO3"), ("Hardness, total", "11.2", "°dH"), ("Hardness, total", "4.0", "meq/L"),
        ("Alkalinity, bicarbonate", "180", "mg/L as CaCO3"), ("Bicarbonate", "220", "mg/L as HCO3"), ("Alkalinity, carbonate", "<1", "mg/L as CaCO3"), ("Alkalinity, hydroxide", "<1", "mg/L as CaCO3"),
        ("Silica", "18", "mg/L as SiO2"), ("Silicon", "8.4", "mg/L"), ("Phosphate", "0.31", "mg/L as PO4"), ("Phosphorus, total", "0.14", "mg/L as P"), ("Nitrate", "17.7", "mg/L as NO3"),
        ("Nitrate", "4.0", "mg/L as N"), ("Ammonium", "0.13", "mg/L as NH4"), ("Sulphide, as H2S", "0.05", "mg/L"), ("Carbon dioxide, free", "14", "mg/L"), ("pH (field)", "7.1", ""), ("Langelier Index", "-0.4", ""),
    ]  # fmt: skip
    items = (
        means("total_hardness", 11.7 * 17.118), means("total_hardness", 200), means("total_hardness", 11.2 * 17.848), means("total_hardness", 4 * 50.043),
        means("bicarbonate", 180 * 61.016 / 50.043), means("bicarbonate", 220), means("carbonate", 0, 60.008 / 100.086),
        means("hydroxide", 0, 2 * 17.007 / 100.086), means("silica", 18), means("silicon", 8.4), means("orthophosphate", 0.31 * 30.974 / 94.971),
        means("phosphorus", 0.14, None, "total"), means("nitrate", 17.7 * N_OF_NO3), means("nitrate", 4.0), means("ammonia", 0.13 * 14.007 / 18.039),
        means("sulfide", 0.05 * 32.06 / 34.076), means("carbon_dioxide", 14), means("ph", 7.1, flag="field"), means("langelier_index", -0.4),
    )  # fmt: skip
    return one("csv_two_hardnesses", lines(rows), Water("B77", "", "2026-03-07", items))


def pipe_ragged() -> Layout:
    """Pipes at both ends, ragged rows, HTML entities in names and units, cp437's letter for micro, a rule of plus signs."""
    text = (
        "+----------+--------+------+\n| Analyte  | Amount | Unit | Flag |\n+----------+--------+------+\n| Lead | 3,2 | µg/l |\n| Nitrate (NO3) | 21,7 | mg/l | |\n"
        "| Iron &amp; compounds, total | 0,4 | mg/l | a |\n| Sulfate (SO<sub>4</sub>) | 44 | mg/l |\n| E.&nbsp;coli | &lt;1 | /100&nbsp;ml | |\n+----------+--------+------+\n"
    )
    items = (means("lead", 3.2 * U), means("nitrate", 21.7 * N_OF_NO3), means("sulfate", 44), means("e_coli", 0, 0))
    return Layout("txt_pipe_ragged", "txt", text.encode("utf-8"), (Water("", "", "", items),), unread=1)


def old_code_page() -> Layout:
    """A program of the eighties: cp437, semicolons, decimal commas, a two-digit year, capitals without accents."""
    text = "PROBE;DATUM;PARAMETER;WERT;EINHEIT\n7711;14.03.97;BLEI;3,2;µg/l\n7711;14.03.97;NITRAT;48;mg/l\n7711;14.03.97;GESAMTHÄRTE;17,9;°dH\n7711;14.03.97;EISEN;<0,02;mg/l\n7711;14.03.97;TRÜBUNG;0,3;NTU\n"
    items = (
        means("lead", 3.2 * U),
        means("nitrate", 48 * N_OF_NO3),
        means("total_hardness", 17.9 * 17.848),
        means("iron", 0, 0.02),
        means("turbidity", 0.3),
    )
    return one(
        "csv_old_code_page", text.replace("µ", "\u00b5"), Water("7711", "", "1997-03-14", items), encoding="cp850"
    )


def trend_beside() -> Layout:
    """Now, the last time, change in per cent, a trend in words, the county's median and the rank beside each result."""
    rows = [
        ("Well owner: Example", "", "", "", "", "", ""), ("Sampled 6/18/2026", "", "", "", "", "", ""),
        ("What we tested", "Your result", "Last result (6/2024)", "% change", "Trend", "County median", "Advisory level"),
        ("Nitrate-N, mg/L", "8.8", "6.1", "+44%", "rising", "3.0", "10"), ("Arsenic, ppb", "<1", "<1", "0%", "steady", "2", "10"), ("Hardness, gpg", "22", "21", "5%", "steady", "18", ""),
        ("Iron, ppm", "1.4", "0.9", "+56%", "rising", "0.2", "0.3"), ("Total coliform", "Negative", "Positive", "", "better", "", "Negative"), ("Saturation Index", "0.31", "0.2", "", "", "", ""),
    ]  # fmt: skip
    items = (
        means("nitrate", 8.8), means("arsenic", 0, U), means("total_hardness", 22 * 17.118), means("iron", 1.4), means("total_coliform", 0, 0),
    )  # fmt: skip
    return one("csv_trend_beside", lines(rows), Water("", "", "2026-06-18", items), unread=1)


def dates_d_m() -> Layout:
    """Days before months told by one row alone; results as text with a comma for thousands; a row of totals and a legend."""
    rows = [
        ("Borehole", "Sampling date", "EC (uS/cm)", "TDS (mg/L)", "Fluoride (mg/L)", "Nitrate (mg/L NO3)", "Faecal coliforms (cfu/100ml)"),
        ("KB-1", "04/05/2026", "1,420", "923", "3.4", "12", "0"), ("KB-2", "05/05/2026", "880", "572", "0.7", "<0.5", "TNTC"), ("KB-3", "17/05/2026", "2,310", "1,502", "1.1", "88", "6"),
        ("Mean", "", "1,537", "999", "1.7", "", ""), ("No. above guideline", "", "", "1", "1", "1", "2"), ("WHO guideline", "", "", "1000", "1.5", "50", "0"),
        ("TNTC = too numerous to count",),
    ]  # fmt: skip
    table = (
        ("KB-1", "2026-05-04", 1420, 923, 3.4, 12, (0, 0)),
        ("KB-2", "2026-05-05", 880, 572, 0.7, None, (1, INF)),
        ("KB-3", "2026-05-17", 2310, 1502, 1.1, 88, (6, 6)),
    )
    waters = tuple(
        Water(id, "", day, (
            means("specific_conductance", ec), means("total_dissolved_solids", tds), means("fluoride", f),
            means("nitrate", n * N_OF_NO3) if n else means("nitrate", 0, 0.5 * N_OF_NO3), means("fecal_coliform", *fc),
        ))
        for id, day, ec, tds, f, n, fc in table
    )  # fmt: skip
    return one("csv_dates_d_m", lines(rows), waters)


def formulas_between() -> Layout:
    """A converter's workbook: raw readings, dilution, and formulas for the result, some of them never computed."""
    made = book(
        ("Bench", [
            ("Lab ID", "Client", "Parameter", "Instrument reading", "DF", "Final conc.", "Units", "Analyst"),
            ("26-1", "Well 1", "Chloride", 4.1, 10, 41, "mg/L", "AB"), ("26-1", "Well 1", "Nitrate-N", 0.55, 5, "=D3*E3", "mg/L", "AB"), ("26-2", "Well 2", "Chloride", 2.2, 1, 2.2, "mg/L", "AB"),
            ("CCV-1", "", "Chloride", 5.02, 1, 5.02, "mg/L", "AB"), ("BLK-1", "", "Chloride", 0.01, 1, "<0.1", "mg/L", "AB"), ("26-2 DUP", "Well 2", "Chloride", 2.3, 1, 2.3, "mg/L", "AB"), ("26-2 SPK", "Well 2", "Chloride", 12.0, 1, 12.0, "mg/L", "AB"),
        ]),
    )  # fmt: skip
    waters = (Water("26-1", "", "", (means("chloride", 41),)), Water("26-2", "", "", (means("chloride", 2.2),)))
    return Layout("xlsx_formulas_between", "xlsx", saved(made), waters, quality_control=4, unread=1)


def radiation_rows() -> Layout:
    """Radionuclides: result, uncertainty and MDA as rows of their own beneath the name; Bq/L; a screening verdict."""
    rows = [
        ("Prøve", "Sample", "Parameter", "Result", "Unit"), ("1", "RA-9", "Gross alpha", "0.21 ± 0.05", "Bq/L"), ("1", "RA-9", "Gross beta", "<0.1", "Bq/L"), ("1", "RA-9", "Radon-222", "480 +/- 40", "Bq/L"),
        ("1", "RA-9", "Radium-226", "12 ± 4", "mBq/L"), ("1", "RA-9", "Uranium-238", "35", "mBq/L"), ("1", "RA-9", "Uranium", "2.8", "µg/L"), ("1", "RA-9", "Lead-210", "< 15", "mBq/L"), ("1", "RA-9", "Tritium", "<3.1", "Bq/L"),
    ]  # fmt: skip
    items = (
        means("gross_alpha", 0.16, 0.26), means("gross_beta", 0, 0.1), means("radon_222", 440, 520), means("radium_226", 0.008, 0.016), means("uranium_238", 0.035),
        means("uranium", 2.8 * U), means("lead_210", 0, 0.015), means("tritium", 0, 3.1),
    )  # fmt: skip
    return one("csv_radiation_rows", lines(rows), Water("RA-9", "", "", items))


def sheet_per_well() -> Layout:
    """A sheet a well, named by it, all with the same rows; a first sheet of notes, a last one that compares them all with limits."""
    rows = [
        ("Determinand", "Units", "23/06/2025", "09/12/2025"),
        ("pH", "pH units", 7.2, 7.1),
        ("Nitrate", "mg/l as NO3", 44.1, 51.3),
        ("Iron (total)", "µg/l", "<20", 36),
        ("Clostridium perfringens", "number/100ml", 0, 0),
    ]
    other = [
        ("Determinand", "Units", "23/06/2025", "09/12/2025"),
        ("pH", "pH units", 6.4, 6.5),
        ("Nitrate", "mg/l as NO3", 3.3, "<2"),
        ("Iron (total)", "µg/l", 410, 395),
        ("Clostridium perfringens", "number/100ml", 1, 0),
    ]
    made = book(
        ("Notes", [("Prepared for the estate",), ("Contains 2 wells",)]), ("Well Farm", rows), ("Lodge Spring", other),
        ("Compare", [("Determinand", "PCV", "Well Farm max", "Lodge Spring max"), ("Nitrate", 50, 51.3, 3.3), ("Iron (total)", 200, 36, 410)]),
    )  # fmt: skip
    told = (
        ("Well Farm", (7.2, 7.1), (44.1, 51.3), ((0, 0.02), (0.036, 0.036)), (0, 0)),
        ("Lodge Spring", (6.4, 6.5), (3.3, (0, 2)), ((0.41, 0.41), (0.395, 0.395)), (1, 0)),
    )
    waters = tuple(
        Water("", well, day, (
            means("ph", ph[i]), means("nitrate", *((n * N_OF_NO3 for n in no3[i]) if isinstance(no3[i], tuple) else (no3[i] * N_OF_NO3,))), means("iron", *fe[i], "total"), means("clostridium_perfringens", cp[i]),
        ))
        for well, ph, no3, fe, cp in told
        for i, day in enumerate(("2025-06-23", "2025-12-09"))
    )  # fmt: skip
    return Layout("xlsx_sheet_per_well", "xlsx", saved(made), waters)


def real_dates_across() -> Layout:
    """Real dates as headings under each of two points, the limit first, an empty column between the points."""
    day = datetime.datetime
    made = book(
        ("Monitoring", [
            ("", "", "", "Raw water", "", "", "Treated water", ""), ("Parameter", "Unit", "Limit", day(2026, 1, 5), day(2026, 4, 6), None, day(2026, 1, 5), day(2026, 4, 6)),
            ("Iron", "mg/L", 0.3, 1.8, 2.1, None, 0.04, "<0.02"), ("Manganese", "mg/L", 0.05, 0.21, 0.25, None, 0.03, 0.02), ("Hardness", "mg/L CaCO3", "", 310, 305, None, 12, 15),
        ]),
    )  # fmt: skip
    told = (
        ("Raw water", (1.8, 2.1), (0.21, 0.25), (310, 305)),
        ("Treated water", (0.04, (0, 0.02)), (0.03, 0.02), (12, 15)),
    )
    waters = tuple(
        Water(
            point,
            "",
            date,
            (
                means("iron", *(fe[i] if isinstance(fe[i], tuple) else (fe[i],))),
                means("manganese", mn[i]),
                means("total_hardness", th[i]),
            ),
        )
        for point, fe, mn, th in told
        for i, date in enumerate(("2026-01-05", "2026-04-06"))
    )
    return Layout("xlsx_real_dates_across", "xlsx", saved(made), waters)


LAYOUTS = (
    wells_transposed, errors_and_serials, stacked_cards, every_form_of_nothing, two_hardnesses, pipe_ragged, old_code_page,
    trend_beside, dates_d_m, formulas_between, radiation_rows, sheet_per_well, real_dates_across,
)  # fmt: skip
