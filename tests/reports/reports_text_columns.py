"""Further layouts of delimited text: deliverables with other columns, foreign exports. All invented; each meaning is typed by hand."""

from __future__ import annotations

from reports_catalog import Layout, Water
from reports_written import N_OF_NO3, NAN, it, lines


def reviewed_deliverable() -> Layout:
    """A deliverable with run-together column names, surrogates and spikes as rows, analyte type in a column."""
    header = (
        "ClientSampleID", "LabSampleID", "MatrixID", "Collected", "LabAnalysisRefMethodID", "QCType", "ClientAnalyteID",
        "AnalyteName", "AnalyteType", "Result", "ResultUnits", "LabQualifiers", "DetectionLimit", "DetectionLimitType",
        "ReportingLimit", "ReportingLimitType", "PercentRecovery", "RelativePercentDifference", "ReportableResult",
    )  # fmt: skip
    rows = [header]

    def add(sample, kind, cas, name, analyte_type, result, flags, recovery=""):
        rows.append((
            sample, "L26-1", "AQ", "05/06/2026 11:20", "8260D", kind, cas, name, analyte_type, result, "ug/L", flags,
            "0.12", "MDL", "0.50", "PQL", recovery, "", "YES",
        ))  # fmt: skip

    add("DW-7", "", "71-43-2", "Benzene", "TRG", "0.50", "U")
    add("DW-7", "", "67-66-3", "Chloroform", "TRG", "3.4", "")
    add("DW-7", "", "79-01-6", "Trichloroethene", "TRG", "0.31", "J")
    add("DW-7", "", "460-00-4", "4-Bromofluorobenzene", "SURR", "9.7", "", "97")
    add("MB-0506", "MB", "71-43-2", "Benzene", "TRG", "0.50", "U")
    add("LCS-0506", "LCS", "71-43-2", "Benzene", "SPK", "10.4", "", "104")
    add("DW-7MS", "MS", "67-66-3", "Chloroform", "SPK", "13.1", "", "97")
    items = (
        it("benzene", "Benzene", "0.50", "ug/L", 0, 0.0005),
        it("chloroform", "Chloroform", "3.4", "ug/L", 0.0034),
        it("trichloroethylene", "Trichloroethene", "0.31", "ug/L", 0.00012, 0.0005),
    )
    return Layout(
        "csv_deliverable", "csv", lines(rows).encode(), (Water("DW-7", "", "2026-05-06", items),), quality_control=3
    )


def modifier() -> Layout:
    """A state's groundwater table: result modifier in a column of its own, reporting limit, upper-case coded names."""
    header = ("WELL_ID", "APPROXIMATE_LATITUDE", "APPROXIMATE_LONGITUDE", "SAMPLE_DATE", "CHEMICAL", "RESULT_MODIFIER",
              "RESULT", "UNITS", "REPORTING_LIMIT", "SOURCE_NAME")  # fmt: skip
    rows = [header]
    waters = []
    for number, mods in enumerate((("=", "<", "="), ("<", "=", "="))):
        id = f"W060{number}"
        items = []
        for (name, key, unit, factor, value, rl), mod in zip(
            (("Nitrate as N", "nitrate", "MG/L", 1, "7.9", "0.4"), ("Arsenic", "arsenic", "UG/L", 0.001, "2", "2"),
             ("Hardness, total (as CaCO3)", "total_hardness", "MG/L", 1, "305", "5")), mods, strict=True,
        ):  # fmt: skip
            rows.append((id, "38.1", "-121.4", "8/19/2025", name, mod, value, unit, rl, "domestic well survey"))
            high = float(value) * factor
            items.append(it(key, name, value, unit, 0 if mod == "<" else high, high))
        waters.append(Water(id, id, "2025-08-19", tuple(items)))
    return Layout("csv_modifier", "csv", lines(rows).encode(), tuple(waters))


def portal_three() -> Layout:
    """Water Quality Portal, names of WQX 3.0 (Result_Characteristic …), with a depth, a duplicate and a field value."""
    header = (
        "Org_Identifier", "Location_Identifier", "Activity_ActivityIdentifier", "Activity_TypeCode", "Activity_Media",
        "Activity_StartDate", "Activity_StartTime", "Activity_DepthHeightMeasure", "Activity_DepthHeightMeasureUnit",
        "Result_ResultDetectionCondition", "Result_Characteristic", "Result_SampleFraction", "Result_MethodSpeciation",
        "Result_Measure", "Result_MeasureUnit", "Result_MeasureStatusIdentifier", "ResultAnalyticalMethod_Identifier",
        "DetectionLimit_TypeA", "DetectionLimit_MeasureA", "DetectionLimit_MeasureUnitA",
    )  # fmt: skip
    rows = [header]

    def add(kind, condition, name, fraction, form, value, unit, limit=""):
        rows.append((
            "ABC", "ABC-W9", "ABC-1", kind, "Water", "2025-10-09", "13:05:00", "42", "ft", condition, name, fraction, form,
            value, unit, "Final", "353.2", "Method Detection Level" if limit else "", limit, unit if limit else "",
        ))  # fmt: skip

    add("Sample-Routine", "", "Nitrate", "Filtered, lab", "as NO3", "18.6", "mg/L")
    add("Sample-Routine", "Not Detected", "Nitrite", "Filtered, lab", "as N", "", "mg/L", "0.01")
    add("Sample-Routine", "", "Calcium", "Total", "", "77000", "ug/L")
    add("Field Msr/Obs", "", "pH", "", "", "6.9", "std units")
    add("Field Msr/Obs", "", "Specific conductance", "", "", "611", "uS/cm @25C")
    add("Quality Control Sample-Field Replicate", "", "Calcium", "Total", "", "76800", "ug/L")
    add("Quality Control Sample-Field Blank", "", "Calcium", "Total", "", "110", "ug/L")
    items = (
        it("nitrate", "Nitrate", "18.6", "mg/L", 18.6 * N_OF_NO3, fraction="dissolved"),
        it("nitrite", "Nitrite", "", "mg/L", 0, 0.01, "dissolved"),
        it("calcium", "Calcium", "77000", "ug/L", 77.0, fraction="total"),
        it("ph", "pH", "6.9", "std units", 6.9),
        it("specific_conductance", "Specific conductance", "611", "uS/cm @25C", 611),
    )
    return Layout(
        "csv_portal_three", "csv", lines(rows).encode(), (Water("ABC-1", "ABC-W9", "2025-10-09", items),),
        quality_control=2,
    )  # fmt: skip


def nwis_wide() -> Layout:
    """RDB, a row a sample: a remark column and a value column per parameter code."""
    head = "agency_cd\tsite_no\tsample_dt\tsample_tm\tmedium_cd\tr00915\tp00915\tr01046\tp01046\tr00618\tp00618"
    text = (
        "# invented sites\n# p00915 - Calcium, water, filtered, milligrams per liter\n"
        + head + "\n5s\t15s\t10d\t5d\t3s\t1s\t12s\t1s\t12s\t1s\t12s\n"
        + "USGS\t990000000000002\t2024-07-02\t10:15\tWG\t\t54.3\t<\t4.0\t\t1.62\n"
        + "USGS\t990000000000003\t2024-07-03\t12:40\tWG\t\t12.8\t\t2210\t<\t0.040\n"
    )  # fmt: skip
    one = (
        it("calcium", "p00915", "54.3", "", 54.3, fraction="dissolved"),
        it("iron", "p01046", "4.0", "", 0, 0.004, "dissolved"),
        it("nitrate", "p00618", "1.62", "", 1.62, fraction="dissolved"),
    )
    two = (
        it("calcium", "p00915", "12.8", "", 12.8, fraction="dissolved"),
        it("iron", "p01046", "2210", "", 2.21, fraction="dissolved"),
        it("nitrate", "p00618", "0.040", "", 0, 0.04, "dissolved"),
    )
    return Layout(
        "rdb_wide", "rdb", text.encode(),
        (Water("", "990000000000002", "2024-07-02", one), Water("", "990000000000003", "2024-07-03", two)),
    )  # fmt: skip


def france() -> Layout:
    """French export: semicolons, decimal comma, thousands blanks, remark codes as words, cp1252."""
    rows = [
        ("Point de prélèvement", "Date de prélèvement", "Paramètre", "Teneur", "Unité", "Limite de quantification", "Référence de qualité"),
        ("Forage des Ormes", "07/04/2026", "Conductivité à 25°C", "1 046", "µS/cm", "", "1 100"),
        ("Forage des Ormes", "07/04/2026", "pH", "7,25", "unité pH", "", "6,5 à 9"),
        ("Forage des Ormes", "07/04/2026", "Titre alcalimétrique complet", "28,4", "°f", "0,5", ""),
        ("Forage des Ormes", "07/04/2026", "Titre hydrotimétrique", "36,1", "°f", "0,5", ""),
        ("Forage des Ormes", "07/04/2026", "Nitrates", "48,7", "mg(NO3)/L", "0,5", "50"),
        ("Forage des Ormes", "07/04/2026", "Nitrites", "< LQ", "mg(NO2)/L", "0,01", "0,5"),
        ("Forage des Ormes", "07/04/2026", "Ammonium", "<0,05", "mg(NH4)/L", "0,05", "0,1"),
        ("Forage des Ormes", "07/04/2026", "Fer total", "212", "µg/L", "10", "200"),
        ("Forage des Ormes", "07/04/2026", "Atrazine", "n.d.", "µg/L", "0,02", "0,1"),
        ("Forage des Ormes", "07/04/2026", "Entérocoques", "0", "n/(100mL)", "", "0"),
    ]  # fmt: skip
    items = (
        it("specific_conductance", "Conductivité à 25°C", "1 046", "µS/cm", 1046),
        it("ph", "pH", "7,25", "unité pH", 7.25),
        it("total_alkalinity", "Titre alcalimétrique complet", "28,4", "°f", 284),
        it("total_hardness", "Titre hydrotimétrique", "36,1", "°f", 361),
        it("nitrate", "Nitrates", "48,7", "mg(NO3)/L", 48.7 * N_OF_NO3),
        it("nitrite", "Nitrites", "< LQ", "mg(NO2)/L", 0, 0.01 * 14.007 / 46.005),
        it("ammonia", "Ammonium", "<0,05", "mg(NH4)/L", 0, 0.05 * 14.007 / 18.039),
        it("iron", "Fer total", "212", "µg/L", 0.212, fraction="total"),
        it("atrazine", "Atrazine", "n.d.", "µg/L", 0, 0.00002),
        it("enterococci", "Entérocoques", "0", "n/(100mL)", 0),
    )
    water = Water("", "Forage des Ormes", "2026-04-07", items)
    return Layout("csv_france", "csv", lines(rows, ";").encode("cp1252"), (water,))


def germany() -> Layout:
    """German export: sign column, value column, quantification limit, several wells, thousands points."""
    rows = [("Messstelle", "Datum", "Parameter", "Vorzeichen", "Wert", "Einheit", "BG", "Verfahren")]
    one = (("Elektrische Leitfähigkeit (25 °C)", "", "1.284", "µS/cm", ""), ("Calcium", "", "148,2", "mg/l", "1"),
           ("Nitrat", "", "72,0", "mg/l", "0,5"), ("Ammonium", "<", "0,02", "mg/l", "0,02"),
           ("Eisen, gesamt", "", "0,071", "mg/l", "0,01"), ("Arsen", "<", "1,0", "µg/l", "1,0"))  # fmt: skip
    two = (("Elektrische Leitfähigkeit (25 °C)", "", "312", "µS/cm", ""), ("Calcium", "", "24,9", "mg/l", "1"),
           ("Nitrat", "<", "0,5", "mg/l", "0,5"), ("Ammonium", "", "0,44", "mg/l", "0,02"),
           ("Eisen, gesamt", "", "2,310", "mg/l", "0,01"), ("Arsen", "", "6,3", "µg/l", "1,0"))  # fmt: skip
    for well, day, values in (("Brunnen Hagenau", "03.02.2026", one), ("Brunnen Lohe", "04.02.2026", two)):
        rows += [
            (well, day, name, sign, value, unit, limit, "DIN EN ISO 17294-2")
            for name, sign, value, unit, limit in values
        ]
    n3, n4 = N_OF_NO3, 14.007 / 18.039
    a = (
        it("specific_conductance", one[0][0], "1.284", "µS/cm", 1284), it("calcium", "Calcium", "148,2", "mg/l", 148.2),
        it("nitrate", "Nitrat", "72,0", "mg/l", 72 * n3), it("ammonia", "Ammonium", "0,02", "mg/l", 0, 0.02 * n4),
        it("iron", "Eisen, gesamt", "0,071", "mg/l", 0.071, fraction="total"), it("arsenic", "Arsen", "1,0", "µg/l", 0, 0.001),
    )  # fmt: skip
    b = (
        it("specific_conductance", one[0][0], "312", "µS/cm", 312), it("calcium", "Calcium", "24,9", "mg/l", 24.9),
        it("nitrate", "Nitrat", "0,5", "mg/l", 0, 0.5 * n3), it("ammonia", "Ammonium", "0,44", "mg/l", 0.44 * n4),
        it("iron", "Eisen, gesamt", "2,310", "mg/l", 2.31, fraction="total"), it("arsenic", "Arsen", "6,3", "µg/l", 0.0063),
    )  # fmt: skip
    waters = (Water("", "Brunnen Hagenau", "2026-02-03", a), Water("", "Brunnen Lohe", "2026-02-04", b))
    return Layout("csv_germany", "csv", lines(rows, ";").encode("utf-8"), waters)


def nondetect_true() -> Layout:
    """A logical column says what was not detected; the value column then holds the limit; T-prefixed totals."""
    rows = [("station", "datetime", "variable", "value", "nondetect", "units", "lab_batch", "comments")]
    rows += [
        ("SP-3", "2026-01-09T07:45", "Total Iron", "0.05", "TRUE", "mg/L", "B881", ""),
        ("SP-3", "2026-01-09T07:45", "Dissolved Iron", "0.05", "TRUE", "mg/L", "B881", ""),
        ("SP-3", "2026-01-09T07:45", "Total Manganese", "0.120", "FALSE", "mg/L", "B881", "diluted 2x"),
        ("SP-3", "2026-01-09T07:45", "Sodium", "212", "FALSE", "mg/L", "B882", ""),
        ("SP-3", "2026-01-09T07:45", "Uranium", "0.5", "TRUE", "ug/L", "B882", ""),
    ]
    items = (
        it("iron", "Total Iron", "0.05", "mg/L", 0, 0.05, "total"),
        it("iron", "Dissolved Iron", "0.05", "mg/L", 0, 0.05, "dissolved"),
        it("manganese", "Total Manganese", "0.120", "mg/L", 0.12, fraction="total"),
        it("sodium", "Sodium", "212", "mg/L", 212),
        it("uranium", "Uranium", "0.5", "ug/L", 0, 0.0005),
    )
    return Layout("csv_nondetect_true", "csv", lines(rows).encode(), (Water("", "SP-3", "2026-01-09", items),))


def transposed_tab() -> Layout:
    """Tabs; a column a well, heads as rows (well, town, date, depth), guideline and unit columns between."""
    rows = [
        ("Well number", "", "", "W-11", "W-12", "W-13"),
        ("Town", "", "", "Ashby", "Ashby", "Corl"),
        ("Date of sampling", "", "", "05-12-2025", "06-12-2025", "13-12-2025"),
        ("Depth of well (m)", "", "", "31", "44", "58"),
        ("Parameters", "Units", "Guideline", "", "", ""),
        ("Chloride", "mg/L", "250", "14", "31", "602"),
        ("Fluoride", "mg/L", "1.5", "0.3", "<0.1", "2.7"),
        ("Iron", "mg/L", "0.3", "ND", "0.9", "0.12"),
        ("Detection limit for iron 0.03 mg/L", "", "", "", "", ""),
    ]
    values = (("14", "0.3", "ND"), ("31", "<0.1", "0.9"), ("602", "2.7", "0.12"))
    waters = []
    for id, day, (chloride, fluoride, iron) in zip(
        ("W-11", "W-12", "W-13"), ("2025-12-05", "2025-12-06", "2025-12-13"), values, strict=True
    ):
        f = (0.0, 0.1) if fluoride[0] == "<" else (float(fluoride),) * 2
        items = [
            it("chloride", "Chloride", chloride, "mg/L", float(chloride)),
            it("fluoride", "Fluoride", fluoride, "mg/L", *f),
        ]
        # the bound of the non-detect stands in a sentence of its own: without it nothing is concluded
        items.append(it("iron", "Iron", iron, "mg/L", *((0, NAN) if iron == "ND" else (float(iron),))))
        waters.append(Water(id, id, day, tuple(items)))
    return Layout("tsv_transposed", "tsv", lines(rows, "\t").encode(), tuple(waters))


def wide_limits() -> Layout:
    """Wide: row of units, then samples, then rows of statistics and of the standard that are nobody's water."""
    rows = [
        ("Sample", "Collected", "pH", "Iron", "Manganese", "Nitrate-N", "Hardness"),
        ("", "", "", "(mg/L)", "(mg/L)", "(mg/L)", "(mg/L as CaCO3)"),
        ("K1", "2026-03-02", "6.6", "0.44", "0.091", "<0.05", "88"), ("K2", "2026-03-02", "7.1", "<0.02", "<0.005", "11.3", "240"),
        ("K2 Dup", "2026-03-02", "7.1", "<0.02", "<0.005", "11.2", "241"), ("Trip Blank", "2026-03-02", "", "<0.02", "<0.005", "<0.05", "<2"),
        ("Minimum", "", "6.6", "<0.02", "<0.005", "<0.05", "88"), ("Maximum", "", "7.1", "0.44", "0.091", "11.3", "240"),
        ("Average", "", "6.85", "0.23", "0.047", "5.66", "164"), ("Number of samples", "", "2", "2", "2", "2", "2"),
        ("MCL", "", "6.5-8.5", "0.3", "0.05", "10", ""),
    ]  # fmt: skip
    one = (
        it("ph", "pH", "6.6", "", 6.6), it("iron", "Iron", "0.44", "mg/L", 0.44), it("manganese", "Manganese", "0.091", "mg/L", 0.091),
        it("nitrate", "Nitrate-N", "<0.05", "mg/L", 0, 0.05), it("total_hardness", "Hardness", "88", "mg/L", 88),
    )  # fmt: skip
    two = (
        it("ph", "pH", "7.1", "", 7.1), it("iron", "Iron", "<0.02", "mg/L", 0, 0.02), it("manganese", "Manganese", "<0.005", "mg/L", 0, 0.005),
        it("nitrate", "Nitrate-N", "11.3", "mg/L", 11.3), it("total_hardness", "Hardness", "240", "mg/L", 240),
    )  # fmt: skip
    waters = (Water("K1", "", "2026-03-02", one), Water("K2", "", "2026-03-02", two))
    return Layout("csv_wide_limits", "csv", lines(rows).encode(), waters, quality_control=9)


LAYOUTS = (
    reviewed_deliverable,
    modifier,
    portal_three,
    nwis_wide,
    france,
    germany,
    nondetect_true,
    transposed_tab,
    wide_limits,
)
