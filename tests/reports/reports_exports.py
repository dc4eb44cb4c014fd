"""Delimited exports: deliverables with coded columns, public agencies' tables, odd encodings and delimiters.

Column names of public standards are those of: Water Quality Portal (WQX 2 and 3), USGS NWIS RDB, England's water-quality
archive, the French SANDRE and health ministry tables, the EU's WISE SoE, US EPA's Six-Year Review and UCMR tables.
Every laboratory, site and number is invented; each meaning is typed here by hand.
"""

from __future__ import annotations

import csv
import io

from reports_catalog import INF, Item, Layout, Water

NAN = float("nan")
N_OF_NO3 = 14.007 / 62.004
N_OF_NH4 = 14.007 / 18.039


def it(analyte, low, high=None, fraction=None, name="", flag="") -> Item:
    """One item; without `high` the result is quantified."""
    return Item(analyte, fraction, name, "", "", low, low if high is None else high, flag=flag)


def lines(rows, delimiter=",", end="\r\n") -> str:
    buffer = io.StringIO()
    csv.writer(buffer, delimiter=delimiter, lineterminator=end).writerows(rows)
    return buffer.getvalue()


def one(name, text, waters, *, suffix="csv", encoding="utf-8", **more) -> Layout:
    waters = (waters,) if isinstance(waters, Water) else tuple(waters)
    return Layout(name, suffix, text.encode(encoding), waters, strict=True, **more)


def typed_deliverable() -> Layout:
    """Targets, surrogates, internal standards and spikes in one column; N, FD, LB, MS, MSD, BS, LR in another."""
    head = ("sample_name", "lab_sample_id", "sample_type", "sample_date", "matrix", "cas_number", "chemical_name", "fraction", "result_value", "result_unit",
            "detected", "lab_qual", "mdl", "rl", "dilution", "result_type", "analytical_method", "analysis_date", "percent_moisture")  # fmt: skip
    rows = [head]

    def add(name, kind, cas, chemical, fraction, value, unit, found, mark, mdl, rl, result="TRG", dilution=1):
        rows.append(
            (
                name,
                f"K7-{len(rows):03}",
                kind,
                "04/16/2026",
                "WG",
                cas,
                chemical,
                fraction,
                value,
                unit,
                found,
                mark,
                mdl,
                rl,
                dilution,
                result,
                "SW6020B",
                "04/21/2026",
                "",
            )
        )

    add("RW-14", "N", "7439-89-6", "Iron", "T", "1840", "ug/L", "Y", "", 20, 50)
    add("RW-14", "N", "7439-89-6", "Iron", "D", "50", "ug/L", "N", "U", 20, 50)
    add("RW-14", "N", "7440-38-2", "Arsenic", "T", "0.44", "ug/L", "Y", "J", 0.2, 1)
    add("RW-14", "N", "7440-38-2", "Arsenic", "D", "1", "ug/L", "N", "U", 0.2, 1)
    add("RW-14", "N", "16887-00-6", "Chloride", "N", "66.1", "mg/L", "Y", "D", 0.2, 1, dilution=5)
    add("RW-14", "N", "71-43-2", "Benzene", "N", "0.5", "ug/L", "N", "U", 0.1, 0.5)
    add("RW-14", "N", "460-00-4", "4-Bromofluorobenzene", "N", "48.8", "ug/L", "Y", "", "", "", "SUR")
    add("RW-14", "N", "462-06-6", "Fluorobenzene", "N", "50", "ug/L", "Y", "", "", "", "IS")
    add("RW-114", "FD", "7439-89-6", "Iron", "T", "1810", "ug/L", "Y", "", 20, 50)
    add("RW-14MS", "MS", "7440-38-2", "Arsenic", "T", "98", "ug/L", "Y", "", 0.2, 1, "SC")
    add("RW-14MSD", "MSD", "7440-38-2", "Arsenic", "T", "97", "ug/L", "Y", "", 0.2, 1, "SC")
    add("MB-881", "LB", "7440-38-2", "Arsenic", "T", "1", "ug/L", "N", "U", 0.2, 1)
    add("LCS-881", "BS", "7440-38-2", "Arsenic", "T", "101", "ug/L", "Y", "", 0.2, 1, "SC")
    add("RW-14DUP", "LR", "7440-38-2", "Arsenic", "T", "0.46", "ug/L", "Y", "J", 0.2, 1)
    return one("csv_typed_deliverable", lines(rows), Water("RW-14", "", "2026-04-16", (
        it("iron", 1.84, None, "total"), it("iron", 0, 0.05, "dissolved", flag="U"), it("arsenic", 0.0002, 0.001, "total", flag="J"),
        it("arsenic", 0, 0.001, "dissolved", flag="U"), it("chloride", 66.1), it("benzene", 0, 0.0005, flag="U"))), quality_control=6)  # fmt: skip


def names_alone_tell() -> Layout:
    """Only the names of the samples tell blanks, spikes and duplicates apart; a soil row is no water."""
    head = ("SampleID", "Matrix", "Collected", "Analyte", "Result", "Units", "Qual", "RL")
    ids = (("GW-1", "Groundwater", "2026-07-01"), ("MB-20260702", "Water", ""), ("LCS-20260702", "Water", ""), ("LCSD-20260702", "Water", ""), ("GW-1 MS", "Groundwater", "2026-07-01"),
           ("GW-1 MSD", "Groundwater", "2026-07-01"), ("Trip Blank", "Water", "2026-07-01"), ("Field Blank 1", "Water", "2026-07-01"), ("Equipment Rinsate", "Water", "2026-07-01"), ("GW-1 DUP", "Groundwater", "2026-07-01"))  # fmt: skip
    rows = [head]
    for number, (id, matrix, day) in enumerate(ids):
        rows += [
            (id, matrix, day, "Zinc", f"{41 + number}", "ug/L", "", "5"),
            (id, matrix, day, "Toluene", "0.5", "ug/L", "U", "0.5"),
        ]
    rows += [("SB-1 (0-2 ft)", "Soil", "2026-07-01", "Zinc", "88", "mg/kg", "", "2")]
    return one(
        "csv_names_alone_tell",
        lines(rows),
        Water("GW-1", "", "2026-07-01", (it("zinc", 0.041), it("toluene", 0, 0.0005, flag="U"))),
        quality_control=18,
        unread=1,
    )


def portal_statistics() -> Layout:
    """Water Quality Portal: estimated values, a statistic, a rejected result, a sediment row, a calculated value."""
    head = ("ActivityIdentifier", "ActivityTypeCode", "ActivityMediaName", "ActivityMediaSubdivisionName", "ActivityStartDate", "MonitoringLocationIdentifier", "ResultDetectionConditionText",
            "CharacteristicName", "ResultSampleFractionText", "ResultMeasureValue", "ResultMeasure/MeasureUnitCode", "MeasureQualifierCode", "ResultStatusIdentifier", "StatisticalBaseCode",
            "ResultValueTypeName", "DetectionQuantitationLimitTypeName", "DetectionQuantitationLimitMeasure/MeasureValue", "DetectionQuantitationLimitMeasure/MeasureUnitCode")  # fmt: skip
    rows = [head]

    def add(
        name,
        fraction,
        value,
        unit,
        mark="",
        status="Final",
        base="",
        kind="Actual",
        condition="",
        limit="",
        type_="Sample-Routine",
        media="Water",
    ):
        rows.append(("QQ-77", type_, media, "Groundwater", "2025-06-11", "QQ_WELL-3", condition, name, fraction, value, unit, mark, status, base, kind,
                     "Laboratory Reporting Level" if limit else "", limit, unit if limit else ""))  # fmt: skip

    add("Orthophosphate", "Dissolved", "0.046", "mg/l as P", "", "Final", "", "Estimated")
    add("Ammonia and ammonium", "Dissolved", "", "mg/l as N", condition="Not Detected", limit="0.04")
    add("Hardness, Ca, Mg", "Total", "212", "mg/l CaCO3", kind="Calculated")
    add("Manganese", "Dissolved", "31.5", "ug/l", base="Mean")
    add("Lithium", "Dissolved", "9.9", "ug/l", status="Rejected")
    add("Kjeldahl nitrogen", "Total", "0.33", "mg/l as N")
    add("Iron", "Total", "1210", "ug/l")
    add("Zinc", "Total", "88", "mg/kg", media="Sediment")
    add("Alkalinity, total", "Total", "*Non-detect", "mg/l", condition="Present Below Quantification Limit", limit="5")
    return one("csv_portal_statistics", lines(rows), Water("QQ-77", "QQ_WELL-3", "2025-06-11", (
        it("orthophosphate", 0.046, None, "dissolved"), it("ammonia", 0, 0.04, "dissolved"), it("total_hardness", 212, None, "total"), it("kjeldahl_nitrogen", 0.33, None, "total"),
        it("iron", 1.21, None, "total"), it("total_alkalinity", 0, 5, "total"), it("lithium", NAN, NAN, "dissolved", flag="R"))), unread=2)  # fmt: skip


def nwis_remarks() -> Layout:
    """NWIS results, long: remark codes of every kind, two columns of qualifiers, the reporting level, a QC medium."""
    head = [
        "agency_cd",
        "site_no",
        "sample_dt",
        "sample_tm",
        "sample_end_dt",
        "tz_cd",
        "medium_cd",
        "parm_cd",
        "remark_cd",
        "result_va",
        "val_qual_tx",
        "meth_cd",
        "dqi_cd",
        "rpt_lev_va",
        "rpt_lev_cd",
        "lab_std_va",
    ]
    rows = [
        ("00940", "", "41.2", "", "0.02"), ("01106", "<", "3", "", "3"), ("01049", "E", "0.031", "n", "0.040"), ("00608", "<", "0.010", "", "0.010"),
        ("00631", "", "2.41", "", "0.040"), ("01056", "", "212", "", "0.40"), ("00300", "", "4.7", "", ""), ("00400", "", "7.2", "", "0.1"), ("00095", "", "455", "", "5"), ("31501", "M", "", "", ""),
    ]  # fmt: skip
    text = (
        "# invented\n"
        + "\t".join(head)
        + "\n"
        + "\t".join(
            ["5s", "15s", "10d", "5d", "10d", "6s", "3s", "5s", "1s", "12s", "8s", "5s", "1s", "12s", "8s", "12s"]
        )
        + "\n"
    )
    for code, remark, value, quality, level in rows:
        text += (
            "\t".join(
                (
                    "USGS",
                    "880000000000007",
                    "2025-08-19",
                    "11:30",
                    "",
                    "UTC",
                    "WG",
                    code,
                    remark,
                    value,
                    quality,
                    "XX01",
                    "A",
                    level,
                    "RLDQC",
                    "",
                )
            )
            + "\n"
        )
    text += (
        "\t".join(
            (
                "USGS",
                "880000000000007",
                "2025-08-19",
                "11:31",
                "",
                "UTC",
                "OAQ",
                "01106",
                "",
                "4",
                "",
                "XX01",
                "A",
                "3",
                "RLDQC",
                "",
            )
        )
        + "\n"
    )
    return one("rdb_remarks", text, Water("", "880000000000007", "2025-08-19", (
        it("chloride", 41.2, None, "dissolved"), it("aluminum", 0, 0.003, "dissolved"), it("lead", 0, 0.00004, "dissolved"), it("ammonia", 0, 0.01, "dissolved"),
        it("nitrate_plus_nitrite", 2.41, None, "dissolved"), it("manganese", 0.212, None, "dissolved"), it("dissolved_oxygen", 4.7, None, "total"), it("ph", 7.2, None, "total"), it("specific_conductance", 455, None, "total"),
        it("total_coliform", 1, INF))), suffix="rdb", quality_control=1)  # fmt: skip


def england_archive() -> Layout:
    """England's archive, all its columns: definitions rather than labels say fraction and form; an effluent row."""
    head = ("@id", "sample.samplingPoint", "sample.samplingPoint.notation", "sample.samplingPoint.label", "sample.sampleDateTime", "determinand.label", "determinand.definition", "determinand.notation",
            "resultQualifier.notation", "result", "codedResultInterpretation.interpretation", "determinand.unit.label", "sample.sampledMaterialType.label", "sample.isComplianceSample", "sample.purpose.label",
            "sample.samplingPoint.easting", "sample.samplingPoint.northing")  # fmt: skip
    table = (
        ("pH", "pH", "0061", "", "7.05", "phunits"), ("Ammonia(N)", "Ammoniacal Nitrogen as N", "0111", "<", "0.03", "mg/l"), ("N Oxidised", "Nitrogen, Total Oxidised as N", "0116", "", "11.2", "mg/l"),
        ("Nitrate-N", "Nitrate as N", "0117", "", "11.2", "mg/l"), ("Nitrite-N", "Nitrite as N", "0118", "<", "0.004", "mg/l"), ("Alky pH 4.5", "Alkalinity to pH 4.5 as CaCO3", "0162", "", "246", "mg/l"),
        ("Chloride Ion", "Chloride", "0172", "", "44", "mg/l"), ("Orthophospht", "Orthophosphate, reactive as P", "0180", "", "0.021", "mg/l"), ("Sodium Diss", "Sodium, Dissolved", "0205", "", "21.3", "mg/l"),
        ("Iron - as Fe", "Iron", "6051", "", "310", "ug/l"), ("Hardness Total", "Hardness, Total as CaCO3", "0158", "", "301", "mg/l"), ("Temp Water", "Temperature of Water", "0076", "", "10.9", "cel"),
    )  # fmt: skip
    rows = [head]
    for number, (label, definition, code, sign, value, unit) in enumerate(table):
        rows.append(
            (
                f"http://example.org/data/measurement/{number}",
                "http://example.org/id/ZZ-55",
                "ZZ-55",
                "FALLOW ACRE BOREHOLE",
                "2025-02-11T09:20:00",
                label,
                definition,
                code,
                sign,
                value,
                "",
                unit,
                "GROUNDWATER",
                "false",
                "MONITORING",
                400100,
                300200,
            )
        )
    return one("csv_england_archive", lines(rows), Water("ZZ-55", "FALLOW ACRE BOREHOLE", "2025-02-11", (
        it("ph", 7.05), it("ammonia", 0, 0.03), it("nitrate_plus_nitrite", 11.2), it("nitrate", 11.2), it("nitrite", 0, 0.004), it("total_alkalinity", 246), it("chloride", 44), it("orthophosphate", 0.021),
        it("sodium", 21.3, None, "dissolved"), it("iron", 0.31), it("total_hardness", 301), it("temperature", 10.9))))  # fmt: skip


def france_groundwater() -> Layout:
    """France's groundwater portal by SANDRE: coded remark (1 = value, 2 = below detection, 10 = below quantification)."""
    head = ("code_bss", "date_debut_prelevement", "code_param", "nom_param", "code_fraction", "nom_fraction", "resultat", "code_unite", "nom_unite", "code_remarque_analyse", "nom_remarque_analyse",
            "limite_detection", "limite_quantification", "code_qualification", "nom_qualification")  # fmt: skip
    table = (
        ("1340", "Nitrates", "42,5", "173", "mg(NO3)/L", "1", "Domaine de validité", "", "0,5"), ("1335", "Ammonium", "0,05", "169", "mg(NH4)/L", "10", "Résultat < au seuil de quantification", "", "0,05"),
        ("1337", "Chlorures", "23", "175", "mg(Cl)/L", "1", "Domaine de validité", "", "0,1"), ("1393", "Fer", "10", "133", "µg(Fe)/L", "10", "Résultat < au seuil de quantification", "3", "10"),
        ("1369", "Arsenic", "3,4", "129", "µg(As)/L", "1", "Domaine de validité", "", "0,2"), ("1107", "Atrazine", "0,005", "133", "µg/L", "2", "Résultat < seuil de détection", "0,005", "0,02"),
        ("1347", "Titre alcalimétrique complet (T.A.C.)", "21,5", "28", "°f", "1", "Domaine de validité", "", ""),
    )  # fmt: skip
    rows = [head]
    for code, name, value, unit_code, unit, remark, words, ld, lq in table:
        rows.append(
            (
                "09999X0001/F",
                "2025-10-06",
                code,
                name,
                "23",
                "Eau brute",
                value,
                unit_code,
                unit,
                remark,
                words,
                ld,
                lq,
                "1",
                "Correcte",
            )
        )
    return one("csv_france_groundwater", lines(rows, ";"), Water("", "09999X0001/F", "2025-10-06", (
        it("nitrate", 42.5 * N_OF_NO3, None, "total"), it("ammonia", 0, 0.05 * N_OF_NH4, "total"), it("chloride", 23, None, "total"), it("iron", 0, 0.01, "total"), it("arsenic", 0.0034, None, "total"), it("atrazine", 0, 0.000005, "total"), it("total_alkalinity", 215, None, "total"))))  # fmt: skip


def france_tap() -> Layout:
    """France's drinking-water control: short column names, results as shown (rqana) and translated, limits beside."""
    head = (
        "referenceprel",
        "dateprel",
        "cdparametresiseeaux",
        "cdparametre",
        "libminparametre",
        "insituana",
        "rqana",
        "cdunitereference",
        "limitequal",
        "refqual",
        "valtraduite",
        "casparam",
    )
    table = (
        ("NO3", "1340", "Nitrates (en NO3)", "L", "31,2", "mg/L", "<=50 mg/L", "", "31.2", "14797-55-8"), ("NH4", "1335", "Ammonium (en NH4)", "L", "<0,03", "mg/L", "", "<=0,1 mg/L", "0", "14798-03-9"),
        ("PH", "1302", "pH", "T", "7,55", "unité pH", "", ">=6,5 et <=9 unité pH", "7.55", ""), ("CTF", "6455", "Bactéries coliformes /100ml-MS", "L", "<1", "n/(100mL)", "", "<=0 n/(100mL)", "0", ""),
        ("ECOLI", "1449", "Escherichia coli /100ml - MF", "L", "<1", "n/(100mL)", "<=0 n/(100mL)", "", "0", ""), ("CDT25", "1303", "Conductivité à 25°C", "T", "612", "µS/cm", "", ">=200 et <=1100 µS/cm", "612", ""),
        ("TH", "1345", "Titre hydrotimétrique", "L", "28,9", "°f", "", "", "28.9", ""), ("TURBNFU", "1295", "Turbidité néphélométrique NFU", "L", "<0,20", "NFU", "", "<=2 NFU", "0", ""), ("CL2LIB", "1398", "Chlore libre", "T", "0,12", "mg(Cl2)/L", "", "", "0.12", ""),
    )  # fmt: skip
    rows = [head, *(("08800123456", "2026-01-21", *row) for row in table)]
    return one("csv_france_tap", lines(rows), Water("08800123456", "", "2026-01-21", (
        it("nitrate", 31.2 * N_OF_NO3), it("ammonia", 0, 0.03 * N_OF_NH4), it("ph", 7.55), it("total_coliform", 0, 0), it("e_coli", 0, 0), it("specific_conductance", 612), it("total_hardness", 289), it("turbidity", 0, 0.2), it("free_chlorine", 0.12))))  # fmt: skip


def wise() -> Layout:
    """The European state-of-environment table: determinand label, value, below-LOQ flag, matrix W or W-DIS."""
    head = ("monitoringSiteIdentifier", "parameterWaterBodyCategory", "observedPropertyDeterminandCode", "observedPropertyDeterminandLabel", "procedureAnalysedMatrix", "resultUom", "phenomenonTimeSamplingDate",
            "resultObservedValue", "resultQualityObservedValueBelowLOQ", "procedureLOQValue", "resultObservationStatus", "parameterSampleDepth")  # fmt: skip
    table = (
        ("CAS_14797-55-8", "Nitrate", "W", "mg{NO3}/L", "18.6", "0", "0.5"), ("CAS_14798-03-9", "Ammonium", "W", "mg{NH4}/L", "0.05", "1", "0.05"), ("CAS_7439-92-1", "Lead and its compounds", "W-DIS", "ug/L", "0.2", "1", "0.2"),
        ("CAS_7440-38-2", "Arsenic and its compounds", "W-DIS", "ug/L", "4.1", "0", "0.1"), ("EEA_3142-01-6", "Electrical conductivity", "W", "uS/cm", "702", "0", "10"), ("CAS_1912-24-9", "Atrazine", "W", "ug/L", "0.03", "0", "0.01"),
    )  # fmt: skip
    rows = [
        head,
        *(
            ("XX0042", "GW", code, label, matrix, unit, "2024-11-05", value, below, loq, "A", "12")
            for code, label, matrix, unit, value, below, loq in table
        ),
    ]
    return one("csv_wise", lines(rows), Water("", "XX0042", "2024-11-05", (
        it("nitrate", 18.6 * N_OF_NO3), it("ammonia", 0, 0.05 * N_OF_NH4), it("lead", 0, 0.0002, "dissolved"), it("arsenic", 0.0041, None, "dissolved"), it("specific_conductance", 702), it("atrazine", 0.00003))))  # fmt: skip


def review_detect() -> Layout:
    """US EPA's review of compliance data: DETECT is 1 or 0, the value is empty at 0 and the limit stands beside."""
    head = (
        "ANALYTE_CODE",
        "ANALYTE_NAME",
        "STATE_CODE",
        "PWSID",
        "SYSTEM_NAME",
        "SAMPLING_POINT_ID",
        "WATER_FACILITY_TYPE",
        "SAMPLE_ID",
        "SAMPLE_COLLECTION_DATE",
        "DETECTION_LIMIT_VALUE",
        "DETECTION_LIMIT_UNIT",
        "DETECT",
        "VALUE",
        "UNIT",
    )
    table = (("1005", "ARSENIC", "0.5", "UG/L", 1, "7.1", "UG/L"), ("1024", "CYANIDE", "0.02", "MG/L", 0, "", "MG/L"), ("1040", "NITRATE", "0.1", "MG/L", 1, "4.05", "MG/L"), ("2050", "ATRAZINE", "0.1", "UG/L", 0, "", "UG/L"),
             ("4006", "COMBINED URANIUM", "1", "UG/L", 1, "3.9", "UG/L"), ("4010", "COMBINED RADIUM (-226 & -228)", "1", "PCI/L", 1, "2.2", "PCI/L"))  # fmt: skip
    rows = [
        head,
        *(
            (
                code,
                name,
                "ZZ",
                "ZZ0000012",
                "EXAMPLE SYSTEM",
                "SP-1",
                "WL",
                "Z-901",
                "12-MAY-24",
                limit,
                limit_unit,
                detect,
                value,
                unit,
            )
            for code, name, limit, limit_unit, detect, value, unit in table
        ),
    ]
    return one("csv_review_detect", lines(rows), Water("Z-901", "", "2024-05-12", (
        it("arsenic", 0.0071), it("cyanide", 0, 0.02), it("nitrate", 4.05), it("atrazine", 0, 0.0001), it("uranium", 0.0039), it("radium_226_plus_228", 2.2 * 0.037))))  # fmt: skip


def unregulated() -> Layout:
    """US EPA's monitoring of unregulated contaminants: sign column, minimum reporting level, value empty at `<`."""
    head = (
        "PWSID",
        "PWSName",
        "FacilityID",
        "FacilityWaterType",
        "SamplePointID",
        "CollectionDate",
        "SampleID",
        "Contaminant",
        "MRL",
        "Units",
        "MethodID",
        "AnalyticalResultsSign",
        "AnalyticalResultValue",
        "SampleEventCode",
    )
    table = (
        ("PFOA", "0.004", "µg/L", "533", "=", "0.0113"),
        ("PFOS", "0.004", "µg/L", "533", "<", ""),
        ("HFPO-DA", "0.005", "µg/L", "533", "<", ""),
        ("lithium", "9", "µg/L", "EPA 200.7", "=", "22.6"),
        ("PFBS", "0.003", "µg/L", "533", "=", "0.0051"),
    )
    rows = [
        head,
        *(("ZZ0000012", "Example system", "10001", "GW", "EP1", "3/14/2024", "7788", *row, "SE1") for row in table),
    ]
    return one("tsv_unregulated", lines(rows, "\t"), Water("7788", "", "2024-03-14", (
        it("pfoa", 0.0000113), it("pfos", 0, 0.000004), it("hfpo_da", 0, 0.000005), it("lithium", 0.0226), it("pfbs", 0.0000051))), suffix="txt", encoding="cp1252")  # fmt: skip


def coded_wide() -> Layout:
    """A research table: names and units run together with underscores, LOD columns, flags, coordinates."""
    head = (
        "well_id",
        "lat",
        "lon",
        "sampled_on",
        "depth_m",
        "Temp_C",
        "pH",
        "DO_mgL",
        "EC_uScm",
        "Alk_mgL_CaCO3",
        "NO3_N_mgL",
        "NH4_N_mgL",
        "Fe_mgL",
        "Fe_flag",
        "Mn_ugL",
        "Mn_flag",
        "As_ugL",
        "As_flag",
        "SiO2_mgL",
        "TDS_mgL",
    )
    rows = [
        head,
        (
            "r01",
            44.1,
            -71.2,
            "2025-09-30",
            31,
            10.2,
            6.61,
            3.3,
            311,
            88,
            1.7,
            0.02,
            0.12,
            "",
            44,
            "",
            1,
            "<",
            14.1,
            190,
        ),
        (
            "r02",
            44.2,
            -71.4,
            "2025-10-01",
            55,
            9.8,
            7.9,
            0.2,
            502,
            210,
            0.05,
            0.61,
            0.01,
            "<",
            310,
            "",
            41,
            "",
            19,
            305,
        ),
    ]
    return one("csv_coded_wide", lines(rows), (
        Water("r01", "", "2025-09-30", (it("temperature", 10.2), it("ph", 6.61), it("dissolved_oxygen", 3.3), it("specific_conductance", 311), it("total_alkalinity", 88), it("nitrate", 1.7), it("ammonia", 0.02), it("iron", 0.12), it("manganese", 0.044), it("arsenic", 0, 0.001), it("silica", 14.1), it("total_dissolved_solids", 190))),
        Water("r02", "", "2025-10-01", (it("temperature", 9.8), it("ph", 7.9), it("dissolved_oxygen", 0.2), it("specific_conductance", 502), it("total_alkalinity", 210), it("nitrate", 0.05), it("ammonia", 0.61), it("iron", 0, 0.01), it("manganese", 0.31), it("arsenic", 0.041), it("silica", 19), it("total_dissolved_solids", 305))),
    ))  # fmt: skip


def markdown() -> Layout:
    """A table in Markdown with its rule of dashes, under a heading and above a note."""
    text = ("# Well water, June\n\nSample: MD-6\nSampled: 2026-06-06\n\n| Analyte | Result | Units | Limit |\n|:--------|-------:|-------|------:|\n| Iron | 0.33 | mg/L | 0.3 |\n| Manganese | <0.01 | mg/L | 0.05 |\n"
            "| pH | 7.4 |  | 6.5–8.5 |\n| Nitrate-N | 3.8 | mg/L | 10 |\n| E. coli | Not detected | per 100 mL | 0 |\n\nResults are for the sample as received.\n")  # fmt: skip
    return one(
        "txt_markdown",
        text,
        Water(
            "MD-6",
            "",
            "2026-06-06",
            (it("iron", 0.33), it("manganese", 0, 0.01), it("ph", 7.4), it("nitrate", 3.8), it("e_coli", 0, 0)),
        ),
        suffix="txt",
    )


def separator_line() -> Layout:
    """`sep=;` on the first line, decimal commas, quoted names over two lines, a footer of notes, UTF-16 little-endian."""
    text = "sep=;\r\n" + lines([
        ("Sample;no", "AB 12"), ("Parameter", "Result", "Uncertainty", "Unit", "Method"), ("Total\nhardness", "182,5", "± 9,1", "mg/L CaCO3", "SM 2340"), ("Iron", "< 0,03", "", "mg/L", "200.7"),
        ("Chloride", "11,9", "± 0,6", "mg/L", "300.0"), ("Uncertainty is expanded with k = 2.",), ("This report shall not be copied in part.",)], ";")  # fmt: skip
    return Layout(
        "csv_separator_line",
        "csv",
        text.encode("utf-16"),
        (Water("", "", "", (it("total_hardness", 182.5), it("iron", 0, 0.03), it("chloride", 11.9))),),
        strict=True,
    )


def two_samples_text() -> Layout:
    """A typed table: columns kept apart by blanks, two samples across with their dates beneath, limits last."""
    text = """
  FENHOLT LABORATORY
  Results of analysis

  Parameter               Units       WELL-A       WELL-B     Standard
                                    21/06/2026   22/06/2026
  -------------------------------------------------------------------
  Calcium                 mg/L          48.2         101       -
  Magnesium               mg/L           7.7        22.4       -
  Iron, dissolved         mg/L         <0.02         0.9      0.3
  Nitrate as N            mg/L           5.5        <0.1      10
  Conductivity            uS/cm          310         688       -
  -------------------------------------------------------------------
  < : less than
"""

    def items(ca, mg, iron, nitrate, ec):
        return (
            it("calcium", ca),
            it("magnesium", mg),
            it("iron", *iron, fraction="dissolved"),
            it("nitrate", *nitrate),
            it("specific_conductance", ec),
        )

    return one(
        "txt_two_samples",
        text,
        (
            Water("WELL-A", "", "2026-06-21", items(48.2, 7.7, (0, 0.02), (5.5,), 310)),
            Water("WELL-B", "", "2026-06-22", items(101, 22.4, (0.9, 0.9), (0, 0.1), 688)),
        ),
        suffix="txt",
    )


LAYOUTS = (
    typed_deliverable, names_alone_tell, portal_statistics, nwis_remarks, england_archive, france_groundwater, france_tap, wise,
    review_detect, unregulated, coded_wide, markdown, separator_line, two_samples_text,
)  # fmt: skip
