"""Tables in which a cell, a row or a heading carries more than one thing; everything is invented, each meaning typed by hand."""

from __future__ import annotations

from openpyxl import Workbook
from reports_catalog import INF, Layout, Water
from reports_exports import one
from reports_written import N_OF_NO3, NAN, U, lines, means, saved


def range_behind_value() -> Layout:
    """The guideline stands in brackets behind each value, under a heading that says so."""
    rows = [
        ("Parameter", "Unit", "Result (Guideline)", "Status"), ("pH", "", "6.1 (6.5 - 8.5)", "Low"), ("TDS", "mg/L", "410 (500)", "OK"),
        ("Iron", "mg/L", "1.9 (0.3)", "High"), ("Manganese", "mg/L", "<0.01 (0.05)", "OK"), ("Nitrate as N", "mg/L", "8.25 (10)", "OK"),
        ("E. coli", "CFU/100 mL", "0 (0)", "OK"), ("Total coliforms", "CFU/100 mL", "4 (0)", "High"),
    ]  # fmt: skip
    items = (
        means("ph", 6.1), means("total_dissolved_solids", 410), means("iron", 1.9), means("manganese", 0, 0.01), means("nitrate", 8.25),
        means("e_coli", 0, 0), means("total_coliform", 4),
    )  # fmt: skip
    return one("csv_range_behind_value", lines(rows), Water("", "", "", items))


def limits_show_themselves() -> Layout:
    """No word says that the brackets hold limits: pH outside of its range does; `ND` is bounded by none of them."""
    rows = [
        ("Client sample", "WB-3"), ("Test", "Result"), ("pH", "6.1 (6.5 - 8.5)"), ("TDS, mg/L", "410 (500)"), ("Iron, mg/L", "ND (0.3)"),
        ("Chloride, mg/L", "12.2 (250)"), ("Turbidity, NTU", "0.7 (<5)"),
    ]  # fmt: skip
    items = (
        means("ph", 6.1), means("total_dissolved_solids", 410), means("iron", 0, NAN), means("chloride", 12.2), means("turbidity", 0.7),
    )  # fmt: skip
    return one("csv_limits_show_themselves", lines(rows), Water("WB-3", "", "", items))


def unexplained_brackets() -> Layout:
    """Nothing tells what the brackets hold, deviations perhaps: only results with their unit are sure."""
    rows = [
        ("Client sample", "WB-4"), ("Test", "Result"), ("TDS", "410 ppm [500]"), ("Chloride", "12.2 (1.1)"), ("Iron", "ND [0.3]"), ("Sodium", "9 mg/L"),
    ]  # fmt: skip
    items = (means("total_dissolved_solids", 410), means("iron", 0, NAN), means("sodium", 9))
    return one("csv_unexplained_brackets", lines(rows), Water("WB-4", "", "", items), unread=1)


def guideline_in_brackets() -> Layout:
    """Unit and a limit in square brackets behind every value of two wells across; the line above says what they are."""
    rows = [
        ("Results with the guideline in brackets",), ("Test", "Barn well", "House well"), ("TDS", "410 ppm [500]", "620 ppm [500]"),
        ("Iron", "0.12 mg/L [0.3]", "<0.02 mg/L [0.3]"), ("pH", "6.1 [6.5-8.5]", "7.0 [6.5-8.5]"), ("Sodium", "12 mg/L [<200]", "44 mg/L [<200]"),
        ("Arsenic", "2.2 ppb [10]", "11 ppb [10]"),
    ]  # fmt: skip
    waters = (
        Water("Barn well", "", "", (means("total_dissolved_solids", 410), means("iron", 0.12), means("ph", 6.1), means("sodium", 12), means("arsenic", 2.2 * U))),
        Water("House well", "", "", (means("total_dissolved_solids", 620), means("iron", 0, 0.02), means("ph", 7.0), means("sodium", 44), means("arsenic", 11 * U))),
    )  # fmt: skip
    return one("csv_guideline_in_brackets", lines(rows), waters)


def equivalents_beside() -> Layout:
    """Each ion in mg/L and in meq/L, the share of the ions behind it, sums of cations and anions, and the balance."""
    rows = [
        ("Ion", "mg/L", "meq/L", "% meq"), ("Calcium", "80.2", "4.002", "55.1"), ("Magnesium", "24.3", "2.000", "27.5"), ("Sodium", "23.0", "1.000", "13.8"),
        ("Potassium", "10.1", "0.258", "3.6"), ("Sum of cations", "", "7.26", "100"), ("Bicarbonate", "305", "4.999", "68.9"), ("Chloride", "35.5", "1.001", "13.8"),
        ("Sulfate", "48.0", "0.999", "13.8"), ("Nitrate", "16.0", "0.258", "3.5"), ("Sum of anions", "", "7.257", "100"), ("Ion balance error", "0.02 %", "", ""),
    ]  # fmt: skip
    table = (
        ("calcium", 80.2),
        ("magnesium", 24.3),
        ("sodium", 23.0),
        ("potassium", 10.1),
        ("bicarbonate", 305),
        ("chloride", 35.5),
        ("sulfate", 48.0),
    )
    both = [
        ("calcium", 4.002 * 20.039),
        ("magnesium", 2 * 12.1525),
        ("sodium", 22.99),
        ("potassium", 0.258 * 39.098),
        ("bicarbonate", 4.999 * 61.016),
        ("chloride", 1.001 * 35.453),
        ("sulfate", 0.999 * 48.03),
    ]
    items = tuple(means(key, value) for key, value in (*table, *both))
    nitrates = (means("nitrate", 16.0), means("nitrate", 0.258 * 14.007))
    return one("csv_equivalents_beside", lines(rows), Water("", "", "", items + nitrates))


def units_for_some() -> Layout:
    """Names down, results without a column of units; a unit alone starts each part, pH and bacteria stand under it."""
    rows = [
        ("Lab No. 2231", ""), ("Collected 2026-03-04", ""), ("Analysis", "Result"), ("", "mg/L"), ("Calcium", "44"), ("pH", "7.4"), ("Chloride", "18.5"), ("", "µg/L"), ("Lead", "1.2"),
        ("Conductivity (µS/cm)", "412"), ("Copper", "<5"), ("Turbidity", "0.4 NTU"), ("", "per 100 mL"), ("E. coli", "0"), ("Total coliforms", "12"),
    ]  # fmt: skip
    items = (
        means("calcium", 44), means("ph", 7.4), means("chloride", 18.5), means("lead", 1.2 * U), means("specific_conductance", 412), means("copper", 0, 5 * U),
        means("turbidity", 0.4), means("e_coli", 0, 0), means("total_coliform", 12),
    )  # fmt: skip
    return one("csv_units_for_some", lines(rows), Water("2231", "", "2026-03-04", items))


def wells_with_statistics() -> Layout:
    """Three rows of heads for the wells, criteria before them, minimum, maximum, mean, count and exceedances behind."""
    book = Workbook()
    sheet = book.active
    sheet.title = "Table 2 - Inorganics"
    rows = [
        ("Table 2. Summary of Groundwater Analytical Results",),
        ("Fenholt Farm, Example County",),
        (),
        (
            "Analyte",
            "Units",
            "Standard",
            "",
            "DW-1",
            "",
            "DW-2",
            "",
            "DUP-1",
            "",
            "Min",
            "Max",
            "Mean",
            "No. of samples",
            "No. exceeding",
        ),
        ("", "", "MCL", "SMCL", "7/14/2025", "Q", "7/15/2025", "Q", "7/15/2025", "Q", "", "", "", "", ""),
        ("", "", "", "", "L25-001", "", "L25-002", "", "L25-003", "", "", "", "", "", ""),
        ("Arsenic, total", "µg/L", 10, "--", 2.2, "", 11.4, "", 11.9, "", 2.2, 11.9, 8.5, 3, 2),
        ("Iron, total", "mg/L", "--", 0.3, 0.05, "U", 1.31, "", 1.28, "", 0.05, 1.31, 0.88, 3, 2),
        ("Iron, dissolved", "mg/L", "--", 0.3, 0.05, "U", 0.94, "", "NA", "", 0.05, 0.94, 0.5, 2, 1),
        ("Manganese, total", "mg/L", "--", 0.05, 0.012, "J", 0.21, "", 0.2, "", 0.012, 0.21, 0.14, 3, 2),
        ("Chloride", "mg/L", "--", 250, 33, "", 41, "", 40, "", 33, 41, 38, 3, 0),
        (),
        ("Notes: U = not detected at the value shown; J = estimated; NA = not analyzed; bold exceeds the standard",),
    ]
    for row in rows:
        sheet.append(row)
    for merged in ("C4:D4", "E4:F4", "G4:H4", "I4:J4", "A1:O1"):
        sheet.merge_cells(merged)
    waters = (
        Water("DW-1", "", "2025-07-14", (
            means("arsenic", 2.2 * U, None, "total"), means("iron", 0, 0.05, "total"), means("iron", 0, 0.05, "dissolved"), means("manganese", 0.012, None, "total", flag="J"), means("chloride", 33),
        )),
        Water("DW-2", "", "2025-07-15", (
            means("arsenic", 11.4 * U, None, "total"), means("iron", 1.31, None, "total"), means("iron", 0.94, None, "dissolved"), means("manganese", 0.21, None, "total"), means("chloride", 41),
        )),
    )  # fmt: skip
    return Layout("xlsx_wells_with_statistics", "xlsx", saved(book), waters, quality_control=4)


def name_unit_limit_rows() -> Layout:
    """Wide: names, units, methods and detection limits in four rows, the limit for drinking water in the last row, `BDL` and text numbers."""
    rows = [
        ("", "", "pH", "EC", "TDS", "Ca", "Fe", "F", "NO3", "As", "E. coli"), ("Village", "Date", "-", "µS/cm", "mg/l", "mg/l", "mg/l", "mg/l", "mg/l as NO3", "µg/l", "MPN/100ml"),
        ("", "Method", "4500-H", "2510", "2540", "3111", "3111", "4500-F", "4500-NO3", "3114", "9221"), ("", "LOD", "", "1", "5", "0.1", "0.02", "0.05", "0.5", "0.5", "1.8"),
        ("Handpump A", "05-Jan-26", "7.9", "1,210", "774", "61", "BDL", "1.9", "38", "BDL", "<1.8"), ("Handpump B", "06-Jan-26", "7.2", "880", "563", "88", "1.10", "0.4", "BDL", "14", "23"),
        ("Permissible limit", "", "6.5-8.5", "", "2000", "200", "1.0", "1.5", "45", "10", "0"),
    ]  # fmt: skip
    waters = (
        Water("Handpump A", "", "2026-01-05", (
            means("ph", 7.9), means("specific_conductance", 1210), means("total_dissolved_solids", 774), means("calcium", 61), means("iron", 0, 0.02), means("fluoride", 1.9),
            means("nitrate", 38 * N_OF_NO3), means("arsenic", 0, 0.5 * U), means("e_coli", 0, 1.8),
        )),
        Water("Handpump B", "", "2026-01-06", (
            means("ph", 7.2), means("specific_conductance", 880), means("total_dissolved_solids", 563), means("calcium", 88), means("iron", 1.1), means("fluoride", 0.4),
            means("nitrate", 0, 0.5 * N_OF_NO3), means("arsenic", 14 * U), means("e_coli", 23),
        )),
    )  # fmt: skip
    return one("csv_name_unit_limit_rows", lines(rows), waters)


def typed_pages() -> Layout:
    """Fixed width with a page heading repeated, a ruler of equals signs, units in brackets behind the name, wide gaps."""
    page = (
        "MARLPIT WATER TESTING                                   PAGE {n}\n"
        "Sample: MW-4410      Taken: 12 Feb 2026     Point: kitchen tap\n\n"
        "Determinand                      Result     Limit      Method\n"
        "=============================================================\n"
    )
    text = (
        page.format(n=1)
        + "Hydrogen ion (pH units)            7.6      6.5-9.5    M01\nConductivity @ 20C (uS/cm)         501      2500       M02\n"
        "Nitrate (mg/l NO3)                33.1      50         M03\nAmmonium (mg/l NH4)              <0.03      0.50       M04\n"
        + page.format(n=2)
        + "Iron, total (ug/l Fe)              212 *    200        M05\nManganese, total (ug/l Mn)          <2      50         M05\n"
        "Coliform bacteria (No./100ml)        0      0          M06\nEscherichia coli (No./100ml)         0      0          M06\n"
        "=============================================================\n* exceeds the limit\n*** END OF REPORT ***\n"
    )
    items = (
        means("ph", 7.6), means("specific_conductance", 501 * 1.116), means("nitrate", 33.1 * N_OF_NO3), means("ammonia", 0, 0.03 * 14.007 / 18.039),
        means("iron", 0.212, None, "total"), means("manganese", 0, 2 * U, "total"), means("total_coliform", 0, 0), means("e_coli", 0, 0),
    )  # fmt: skip
    return one("txt_typed_pages", text, Water("MW-4410", "", "2026-02-12", items), suffix="txt")


def sheets_of_groups() -> Layout:
    """A cover, a sheet for each group, a sheet of quality control, a hidden sheet of limits; formats show signs and per cent."""
    book = Workbook()
    cover = book.active
    cover.title = "Cover"
    for row in (
        ("Osprey Brook Analytical",),
        ("Report No.", "OB-26-118"),
        ("Sample ID", "OB-118-1"),
        ("Date sampled", "11/05/2026"),
        ("Date received", "13/05/2026"),
        ("Signed", "A. Example"),
    ):
        cover.append(row)
    metals = book.create_sheet("Metals")
    for row in (
        ("Parameter", "Result", "Units", "LOR"),
        ("Arsenic", 0.001, "mg/L", 0.001),
        ("Lead", 0.004, "mg/L", 0.001),
        ("Copper", "'0.21", "mg/L", 0.001),
        ("Zinc", "#N/A", "mg/L", 0.005),
    ):
        metals.append(row)
    metals["B2"].number_format = '"<"0.000'
    metals["B3"].number_format = "0.00E+00"
    general = book.create_sheet("General")
    for row in (
        ("Parameter", "Result", "Units", "LOR"),
        ("pH", 7.44, "pH units", None),
        ("Alkalinity as CaCO3", 212, "mg/L", 1),
        ("Ion Balance", 0.021, "%", None),
        ("Hardness as CaCO3", 1234.5, "mg/L", 1),
    ):
        general.append(row)
    general["B4"].number_format = "0.0%"
    general["B5"].number_format = "# ##0"
    general.row_dimensions[3].hidden = True
    control = book.create_sheet("QC")
    for row in (
        ("QC type", "Parameter", "Result", "Units", "% Recovery"),
        ("Method blank", "Lead", "<0.001", "mg/L", ""),
        ("LCS", "Lead", 0.051, "mg/L", 102),
    ):
        control.append(row)
    limits = book.create_sheet("Guidelines")
    for row in (("Parameter", "Value", "Units"), ("Arsenic", 0.01, "mg/L"), ("Lead", 0.005, "mg/L")):
        limits.append(row)
    limits.sheet_state = "hidden"
    items = (
        means("arsenic", 0, 0.001), means("lead", 0.004), means("copper", 0.21), means("ph", 7.44), means("total_alkalinity", 212), means("total_hardness", 1234.5),
    )  # fmt: skip
    return Layout(
        "xlsx_sheets_of_groups",
        "xlsx",
        saved(book),
        (Water("OB-118-1", "", "2026-05-11", items),),
        quality_control=2,
        unread=1,
    )


def names_over_two_lines() -> Layout:
    """Tabs, UTF-16 with a mark, headings and names broken over lines inside quotes, trailing tabs, thousands with apostrophes."""
    text = (
        'Échantillon\t"Date de\nprélèvement"\tParamètre\tRésultat\t"Unité\n(SI)"\t"Limite de\nquantification"\t\t\r\n'
        '2026-77\t03.02.2026\t"Sulfate\n(SO4)"\t1\'204\tmg/L\t1\t\t\r\n2026-77\t03.02.2026\t"Dureté\ntotale"\t38.2\t°fH\t0.1\t\t\r\n'
        "2026-77\t03.02.2026\tNitrates (NO3)\t18\tmg/L\t0.5\t\t\r\n2026-77\t03.02.2026\tArsenic\t< LQ\tµg/L\t0.2\t\t\r\n2026-77\t03.02.2026\tEntérocoques\tn.d.\tUFC/100 mL\t\t\t\r\n"
    )
    items = (
        means("sulfate", 1204),
        means("total_hardness", 382),
        means("nitrate", 18 * N_OF_NO3),
        means("arsenic", 0, 0.2 * U),
        means("enterococci", 0, 0),
    )
    return one(
        "tsv_names_over_two_lines", text, Water("2026-77", "", "2026-02-03", items), suffix="tsv", encoding="utf-16"
    )


def flags_lead() -> Layout:
    """A sample a row; before each value a column of its flag, named by the analyte and `_flag`; `ND` flags an empty value."""
    rows = [
        (
            "well",
            "sampled",
            "as_flag",
            "as_ugl",
            "fe_flag",
            "fe_mgl",
            "no3n_flag",
            "no3n_mgl",
            "ecoli_flag",
            "ecoli_mpn100ml",
            "rl_as",
            "comment",
        ),
        ("A1", "2024-08-01", "<", "0.5", "", "0.44", "", "12.1", "<", "1", "0.5", "ok"),
        ("A2", "2024-08-02", "", "31.0", "<", "0.02", "J", "0.07", ">", "2419.6", "0.5", ""),
    ]
    waters = (
        Water(
            "A1",
            "",
            "2024-08-01",
            (means("arsenic", 0, 0.5 * U), means("iron", 0.44), means("nitrate", 12.1), means("e_coli", 0, 0)),
        ),
        Water(
            "A2",
            "",
            "2024-08-02",
            (
                means("arsenic", 31 * U),
                means("iron", 0, 0.02),
                means("nitrate", 0.07, flag="J"),
                means("e_coli", 2420, INF),
            ),
        ),
    )
    return one("csv_flags_lead", lines(rows), waters)


LAYOUTS = (
    range_behind_value, limits_show_themselves, unexplained_brackets, guideline_in_brackets, equivalents_beside, units_for_some, wells_with_statistics, name_unit_limit_rows, typed_pages,
    sheets_of_groups, names_over_two_lines, flags_lead,
)  # fmt: skip
