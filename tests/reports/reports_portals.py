"""Exports of public data portals, with invented sites and numbers; each meaning is typed by hand."""

from __future__ import annotations

from reports_catalog import INF, Layout, Water
from reports_written import N_OF_NH4, N_OF_NO3, NAN, lines, means


def one(name, text, waters, *, suffix="csv", encoding="utf-8", **more) -> Layout:
    waters = (waters,) if isinstance(waters, Water) else tuple(waters)
    return Layout(name, suffix, text.encode(encoding), waters, strict=True, **more)


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
        means("orthophosphate", 0.046, None, "dissolved"), means("ammonia", 0, 0.04, "dissolved"), means("total_hardness", 212, None, "total"), means("kjeldahl_nitrogen", 0.33, None, "total"),
        means("iron", 1.21, None, "total"), means("total_alkalinity", 0, 5, "total"), means("lithium", NAN, NAN, "dissolved", flag="R"))), unread=2)  # fmt: skip


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
        means("chloride", 41.2, None, "dissolved"), means("aluminum", 0, 0.003, "dissolved"), means("lead", 0, 0.00004, "dissolved"), means("ammonia", 0, 0.01, "dissolved"),
        means("nitrate_plus_nitrite", 2.41, None, "dissolved"), means("manganese", 0.212, None, "dissolved"), means("dissolved_oxygen", 4.7, None, "total"), means("ph", 7.2, None, "total"), means("specific_conductance", 455, None, "total"),
        means("total_coliform", 1, INF))), suffix="rdb", quality_control=1)  # fmt: skip


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
        means("ph", 7.05), means("ammonia", 0, 0.03), means("nitrate_plus_nitrite", 11.2), means("nitrate", 11.2), means("nitrite", 0, 0.004), means("total_alkalinity", 246), means("chloride", 44), means("orthophosphate", 0.021),
        means("sodium", 21.3, None, "dissolved"), means("iron", 0.31), means("total_hardness", 301), means("temperature", 10.9))))  # fmt: skip


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
        means("nitrate", 42.5 * N_OF_NO3, None, "total"), means("ammonia", 0, 0.05 * N_OF_NH4, "total"), means("chloride", 23, None, "total"), means("iron", 0, 0.01, "total"), means("arsenic", 0.0034, None, "total"), means("atrazine", 0, 0.000005, "total"), means("total_alkalinity", 215, None, "total"))))  # fmt: skip


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
        means("nitrate", 31.2 * N_OF_NO3), means("ammonia", 0, 0.03 * N_OF_NH4), means("ph", 7.55), means("total_coliform", 0, 0), means("e_coli", 0, 0), means("specific_conductance", 612), means("total_hardness", 289), means("turbidity", 0, 0.2), means("free_chlorine", 0.12))))  # fmt: skip


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
        means("nitrate", 18.6 * N_OF_NO3), means("ammonia", 0, 0.05 * N_OF_NH4), means("lead", 0, 0.0002, "dissolved"), means("arsenic", 0.0041, None, "dissolved"), means("specific_conductance", 702), means("atrazine", 0.00003))))  # fmt: skip


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
        means("pfoa", 0.0000113), means("pfos", 0, 0.000004), means("hfpo_da", 0, 0.000005), means("lithium", 0.0226), means("pfbs", 0.0000051))), suffix="txt", encoding="cp1252")  # fmt: skip


LAYOUTS = (
    portal_statistics,
    nwis_remarks,
    england_archive,
    france_groundwater,
    france_tap,
    wise,
    unregulated,
)
