"""Further layouts of text: deliverables with other column codes, fixed width, blocks, comments, foreign exports.

Every laboratory, site and number is invented; each meaning is typed here by hand.
"""

from __future__ import annotations

import csv
import io

from reports_catalog import INF, Item, Layout, Water

NAN = float("nan")  # no bound is read
N_OF_NO3 = 14.007 / 62.004  # mass of N in a mass of nitrate


def it(analyte, name, value, unit, low, high=None, fraction=None) -> Item:
    """One item; without `high` the result is quantified."""
    return Item(analyte, fraction, name, value, unit, low, low if high is None else high)


def lines(rows, delimiter=",", end="\r\n") -> str:
    buffer = io.StringIO()
    csv.writer(buffer, delimiter=delimiter, lineterminator=end).writerows(rows)
    return buffer.getvalue()


def fixed_width() -> Layout:
    """A printer's page: columns kept apart by blanks alone, a dashed rule, group titles, a footer with a telephone."""
    text = """\
                    MARLPIT WATER TESTING
          14 Weir Street   Tel. 555-0144  Fax 555-0145

 Sample No : 26-0417             Date Collected : 04/14/2026
 Site      : Fallow Acre         Date Received  : 04/15/2026

 TEST                        RESULT     UNITS        PQL    METHOD
 --------------------------- ---------- ---------- ------ ------------
 GENERAL CHEMISTRY
 pH                              6.84   SU                 SM 4500-H+ B
 Alkalinity, Total              142     mg/L as CaCO3  5.0   SM 2320 B
 Nitrate-N                       <0.10  mg/L        0.10   EPA 353.2
 Chloride                        41.7   mg/L         1.0   EPA 300.0

 METALS
 Iron                             1.92  mg/L        0.05   EPA 200.7
 Manganese                        0.247 mg/L       0.005   EPA 200.7
 Lead                            <1.0   ug/L         1.0   EPA 200.8

 Reviewed by: chemist on duty            Page 1 of 1
"""
    items = (
        it("ph", "pH", "6.84", "SU", 6.84),
        it("total_alkalinity", "Alkalinity, Total", "142", "mg/L as CaCO3", 142),
        it("nitrate", "Nitrate-N", "<0.10", "mg/L", 0, 0.1),
        it("chloride", "Chloride", "41.7", "mg/L", 41.7),
        it("iron", "Iron", "1.92", "mg/L", 1.92),
        it("manganese", "Manganese", "0.247", "mg/L", 0.247),
        it("lead", "Lead", "<1.0", "ug/L", 0, 0.001),
    )
    return Layout("txt_fixed_width", "txt", text.encode(), (Water("26-0417", "Fallow Acre", "2026-04-14", items),))


def leaders_text() -> Layout:
    """A letter typed as text: names with dot leaders, results in running lines, prose with numbers around them."""
    text = """\
Dear well owner,

we have examined 1 sample from your well (sample 8821) on 11 May 2026. Of 9 tests, 2 were outside our guide values.
Water with more than 180 mg/L of hardness is called very hard.

Total Hardness ............. 212 mg/L as CaCO3
Iron ....................... 0.42 mg/L
Manganese .................. < 0.01 mg/L
Sodium ..................... 18 mg/L
Fluoride ................... 0.2 mg/L
pH ......................... 7.6
Specific Conductance ....... 518 uS/cm
Total Coliform ............. Absent
E. coli .................... Absent

Please call 555-0190 between 9 and 12 if you have questions.
"""
    items = (
        it("total_hardness", "Total Hardness", "212", "mg/L as CaCO3", 212),
        it("iron", "Iron", "0.42", "mg/L", 0.42),
        it("manganese", "Manganese", "< 0.01", "mg/L", 0, 0.01),
        it("sodium", "Sodium", "18", "mg/L", 18),
        it("fluoride", "Fluoride", "0.2", "mg/L", 0.2),
        it("ph", "pH", "7.6", "", 7.6),
        it("specific_conductance", "Specific Conductance", "518", "uS/cm", 518),
        it("total_coliform", "Total Coliform", "Absent", "", 0, 0),
        it("e_coli", "E. coli", "Absent", "", 0, 0),
    )
    # the day printed is that of the examination
    return Layout("txt_letter", "txt", text.encode(), (Water("", "", "", items),))


def trailing() -> Layout:
    """UTF-8 with its mark, every line with trailing delimiters, blank lines and one-cell titles between groups."""
    rows = [
        ("Osprey Brook Analytical", "", "", "", "", "", ""),
        ("", "", "", "", "", "", ""),
        ("Client sample:", "OB-551", "", "Date sampled:", "3-Mar-26", "", ""),
        ("", "", "", "", "", "", ""),
        ("Parameter", "Conc.", "Units", "LOQ", "Guide value", "", ""),
        ("Physical", "", "", "", "", "", ""),
        ("Turbidity", "0.84", "NTU", "0.1", "5", "", ""),
        ("Apparent Color", "<5", "CU", "5", "15", "", ""),
        ("", "", "", "", "", "", ""),
        ("Dissolved metals", "", "", "", "", "", ""),
        ("Iron", "0.06", "mg/L", "0.02", "0.3", "", ""),
        ("Manganese", "<0.002", "mg/L", "0.002", "0.05", "", ""),
        ("", "", "", "", "", "", ""),
        ("Total metals", "", "", "", "", "", ""),
        ("Iron", "1.31", "mg/L", "0.02", "0.3", "", ""),
        ("Manganese", "0.011", "mg/L", "0.002", "0.05", "", ""),
        ("", "", "", "", "", "", ""),
        ("Nutrients", "", "", "", "", "", ""),
        ("Nitrate (as NO3)", "31.0", "mg/L", "0.5", "50", "", ""),
        ("Ammonia (as N)", "<0.02", "mg/L", "0.02", "", "", ""),
    ]
    items = (
        it("turbidity", "Turbidity", "0.84", "NTU", 0.84),
        it("apparent_color", "Apparent Color", "<5", "CU", 0, 5),
        it("iron", "Iron", "0.06", "mg/L", 0.06, fraction="dissolved"),
        it("manganese", "Manganese", "<0.002", "mg/L", 0, 0.002, "dissolved"),
        it("iron", "Iron", "1.31", "mg/L", 1.31, fraction="total"),
        it("manganese", "Manganese", "0.011", "mg/L", 0.011, fraction="total"),
        it("nitrate", "Nitrate (as NO3)", "31.0", "mg/L", 31.0 * N_OF_NO3),
        it("ammonia", "Ammonia (as N)", "<0.02", "mg/L", 0, 0.02),
    )
    return Layout("csv_trailing", "csv", lines(rows).encode("utf-8-sig"), (Water("OB-551", "", "2026-03-03", items),))


def comments() -> Layout:
    """Comment lines before and between, quoted cells of several lines, a unit column called `Expressed as`."""
    text = (
        "# exported 2026-06-02 14:10\n# 3 wells, 4 determinations\n"
        '"Well","Sampled","Determination","Reported value","Expressed as","Remarks"\n'
        '"A-1",2026-05-30,"Sulfate",61.5,"mg/L",\n'
        '"A-1",2026-05-30,"Total\nDissolved\nSolids",388,"mg/L","dried at 180 °C,\nweighed twice"\n'
        '"A-1",2026-05-30,"Arsenic","< 0.5","µg/L",\n'
        "# second well\n"
        '"A-2",2026-05-30,"Sulfate",12.9,"mg/L",\n'
        '"A-2",2026-05-30,"Total\nDissolved\nSolids",201,"mg/L",\n'
        '"A-2",2026-05-30,"Arsenic",17.2,"µg/L","checked by a second method, 16.8"\n'
        "\n\n# third well: pump out of order\n"
    )
    first = (
        it("sulfate", "Sulfate", "61.5", "mg/L", 61.5),
        it("total_dissolved_solids", "Total Dissolved Solids", "388", "mg/L", 388),
        it("arsenic", "Arsenic", "< 0.5", "µg/L", 0, 0.0005),
    )
    second = (
        it("sulfate", "Sulfate", "12.9", "mg/L", 12.9),
        it("total_dissolved_solids", "Total Dissolved Solids", "201", "mg/L", 201),
        it("arsenic", "Arsenic", "17.2", "µg/L", 0.0172),
    )
    waters = (Water("A-1", "A-1", "2026-05-30", first), Water("A-2", "A-2", "2026-05-30", second))
    return Layout("csv_comments", "csv", text.encode(), waters)


def blocks() -> Layout:
    """A block a sample, each with its own head lines and header; the last block is a field blank."""
    rows = []
    waters = []
    for number, (iron, chloride, germs) in enumerate((("0.31", "88", "Absent"), ("<0.02", "9.4", "Present"))):
        id = f"TF-{number + 1}"
        rows += [
            ("Sample", id), ("Location", f"Tap {number + 1}"), ("Date/Time", f"2026-02-1{number} 08:30"),
            ("Analyte", "Unit", "Result", "Reporting limit"),
            ("Iron", "mg/L", iron, "0.02"), ("Chloride", "mg/L", chloride, "1"), ("Total coliform", "P/A per 100 mL", germs, ""),
            (),
        ]  # fmt: skip
        low, high = (0.0, 0.02) if iron[0] == "<" else (float(iron),) * 2
        items = (
            it("iron", "Iron", iron, "mg/L", low, high),
            it("chloride", "Chloride", chloride, "mg/L", float(chloride)),
            it("total_coliform", "Total coliform", germs, "", *((0, 0) if germs == "Absent" else (1, INF))),
        )
        waters.append(Water(id, f"Tap {number + 1}", f"2026-02-1{number}", items))
    rows += [
        ("Sample", "Field Blank"), ("Date/Time", "2026-02-11 09:00"), ("Analyte", "Unit", "Result", "Reporting limit"),
        ("Iron", "mg/L", "0.03", "0.02"), ("Chloride", "mg/L", "<1", "1"),
    ]  # fmt: skip
    return Layout("csv_blocks", "csv", lines(rows).encode(), tuple(waters), quality_control=2)


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


def glued() -> Layout:
    """Two columns only: name, and a cell with number, qualifier and unit glued to each other; a legend line beneath."""
    rows = [
        ("Determinand", "Finding"), ("Iron", "0.31mg/L"), ("Manganese", "<0.005mg/L"), ("Copper", "0.021J mg/L"),
        ("Lead", "1.0U ug/L"), ("Nitrate as N", "4.4 mg/L (as N)"), ("Hardness", "118 mg/L CaCO3 (6.9 gpg)"), ("pH", "7.12 @ 19.5 C"),
        ("Turbidity", "1.2NTU"), ("Total coliforms", "12 CFU/100mL"), ("E. coli", "<1 CFU/100mL"),
        ("J = estimated value, U = not detected at the limit shown",),
    ]  # fmt: skip
    items = (
        it("iron", "Iron", "0.31", "mg/L", 0.31), it("manganese", "Manganese", "<0.005", "mg/L", 0, 0.005),
        it("copper", "Copper", "0.021J", "mg/L", 0.021), it("lead", "Lead", "1.0U", "ug/L", 0, 0.001),
        it("nitrate", "Nitrate as N", "4.4", "mg/L", 4.4), it("total_hardness", "Hardness", "118", "mg/L CaCO3", 118),
        it("ph", "pH", "7.12", "", 7.12), it("turbidity", "Turbidity", "1.2", "NTU", 1.2),
        it("total_coliform", "Total coliforms", "12", "CFU/100mL", 12), it("e_coli", "E. coli", "<1", "CFU/100mL", 0, 0),
    )  # fmt: skip
    return Layout("csv_glued", "csv", lines(rows).encode(), (Water("", "", "", items),))


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


def permissions() -> Layout:
    """Long list without units column: the unit is in the name, unusual header words, dates of three kinds, zeros."""
    rows = [
        ("Lab Ref", "Description", "Your Level", "Health Limit", "Taken", "In lab", "Tested"),
        ("Q7/1", "Nitrate (mg/L as NO3)", "63", "50", "1 Jul 2026", "2 Jul 2026", "4 Jul 2026"),
        ("Q7/1", "Nitrite (mg/L as NO2)", "0.03", "0.5", "1 Jul 2026", "2 Jul 2026", "4 Jul 2026"),
        ("Q7/1", "Lead (ug/L)", "<0.5", "10", "1 Jul 2026", "2 Jul 2026", "9 Jul 2026"),
        ("Q7/1", "Sodium (mg/L Na)", "33", "200", "1 Jul 2026", "2 Jul 2026", "9 Jul 2026"),
        ("Q7/1", "E. coli (number/100ml)", "0", "0", "1 Jul 2026", "2 Jul 2026", "3 Jul 2026"),
        ("Q7/1", "Coliform bacteria (number/100ml)", "3", "0", "1 Jul 2026", "2 Jul 2026", "3 Jul 2026"),
        ("Q7/1", "Colony count 22°C (number/ml)", "140", "", "1 Jul 2026", "2 Jul 2026", "5 Jul 2026"),
        ("Q7/1", "Conductivity (uS/cm at 20°C)", "540", "2500", "1 Jul 2026", "2 Jul 2026", "2 Jul 2026"),
    ]
    items = (
        it("nitrate", rows[1][1], "63", "", 63 * N_OF_NO3), it("nitrite", rows[2][1], "0.03", "", 0.03 * 14.007 / 46.005),
        it("lead", rows[3][1], "<0.5", "", 0, 0.0005), it("sodium", rows[4][1], "33", "", 33), it("e_coli", rows[5][1], "0", "", 0),
        it("total_coliform", rows[6][1], "3", "", 3), it("colony_count_22", rows[7][1], "140", "", 140),
        it("specific_conductance", rows[8][1], "540", "", 540 * 1.116),  # 20 to 25 °C by ISO 7888
    )  # fmt: skip
    return Layout(
        "csv_unit_in_name", "csv", lines(rows).encode(), (Water("Q7/1", "", "2026-07-01", items),),
    )  # fmt: skip


LAYOUTS = (
    fixed_width, leaders_text, trailing, comments, blocks, reviewed_deliverable, modifier, portal_three, nwis_wide, france,
    germany, glued, nondetect_true, transposed_tab, wide_limits, permissions,
)  # fmt: skip
