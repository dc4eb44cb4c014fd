"""Electronic deliverables and agencies' tables with coded columns; every site and number is invented, each meaning typed by hand."""

from __future__ import annotations

from reports_catalog import Layout, Water
from reports_exports import one
from reports_written import N_OF_NO3, PCI, U, lines, means


def numeric_and_text() -> Layout:
    """The result as text and as number, three columns of qualifiers, runs that are not reportable, surrogates, spikes."""
    head = (
        "#facility_id", "sys_sample_code", "sys_loc_code", "sample_date", "sample_matrix_code", "sample_type_code", "cas_rn",
        "chemical_name", "fraction", "result_text", "result_numeric", "result_unit", "detect_flag", "lab_qualifiers",
        "validator_qualifiers", "interpreted_qualifiers", "method_detection_limit", "reporting_detection_limit",
        "quantitation_limit", "detection_limit_unit", "dilution_factor", "result_type_code", "reportable_result", "lab_anl_method_name",
        "qc_original_conc", "qc_spike_added", "qc_spike_measured", "qc_spike_recovery",
    )  # fmt: skip

    def row(
        code,
        kind,
        cas,
        name,
        fraction,
        value,
        unit,
        found,
        lab,
        valid,
        mdl,
        rl,
        *,
        type_="TRG",
        keep="Yes",
        dilution="1",
        qc=("", "", "", ""),
    ):
        return (
            "4410", code, "DW-12", "05/06/2026 09:40", "WG", kind, cas, name, fraction, value, value, unit, found, lab, valid,
            valid or lab, mdl, rl, rl, unit, dilution, type_, keep, "SW6020B", *qc,
        )  # fmt: skip

    rows = [
        head,
        row("DW-12-0526", "N", "7440-38-2", "Arsenic", "T", "14.2", "ug/L", "Y", "", "", "0.08", "0.5"),
        row("DW-12-0526", "N", "7440-38-2", "Arsenic", "D", "13.7", "ug/L", "Y", "", "", "0.08", "0.5"),
        row("DW-12-0526", "N", "7439-96-5", "Manganese", "T", "0.31", "ug/L", "Y", "J", "J", "0.2", "1.0"),
        row("DW-12-0526", "N", "7439-92-1", "Lead", "T", "", "ug/L", "N", "U", "", "0.06", "0.5"),
        row("DW-12-0526", "N", "7440-66-6", "Zinc", "T", "6.4", "ug/L", "Y", "B", "U", "1.1", "5.0"),
        row("DW-12-0526", "N", "7440-23-5", "Sodium", "T", "1010", "mg/L", "Y", "E", "", "0.1", "0.5", keep="No"),
        row("DW-12-0526", "N", "7440-23-5", "Sodium", "T", "1180", "mg/L", "Y", "D", "", "1.0", "5.0", dilution="10"),
        row("DW-12-0526", "N", "460-00-4", "4-Bromofluorobenzene", "N", "48.9", "ug/L", "Y", "", "", "", "", type_="SUR", qc=("", "50", "48.9", "98")),
        row("DW-12-0526-FD", "FD", "7440-38-2", "Arsenic", "T", "14.6", "ug/L", "Y", "", "", "0.08", "0.5"),
        row("EB-0526", "EB", "7440-66-6", "Zinc", "T", "1.9", "ug/L", "Y", "J", "", "1.1", "5.0"),
        row("TB-0526", "TB", "71-43-2", "Benzene", "N", "", "ug/L", "N", "U", "", "0.2", "0.5"),
        row("MB-7718", "MB", "7440-38-2", "Arsenic", "T", "", "ug/L", "N", "U", "", "0.08", "0.5"),
        row("LCS-7718", "LCS", "7440-38-2", "Arsenic", "T", "49.1", "ug/L", "Y", "", "", "0.08", "0.5", qc=("", "50", "49.1", "98")),
        row("DW-12-0526-MS", "MS", "7440-38-2", "Arsenic", "T", "65.9", "ug/L", "Y", "", "", "0.08", "0.5", qc=("14.2", "50", "65.9", "103")),
        row("DW-12-0526-MSD", "MSD", "7440-38-2", "Arsenic", "T", "64.0", "ug/L", "Y", "", "", "0.08", "0.5", qc=("14.2", "50", "64.0", "100")),
    ]  # fmt: skip
    items = (
        means("arsenic", 14.2 * U, None, "total"), means("arsenic", 13.7 * U, None, "dissolved"),
        means("manganese", 0.2 * U, U, "total", flag="J"), means("lead", 0, 0.5 * U, "total"), means("zinc", 0, 6.4 * U, "total"),
        means("sodium", 1180, None, "total"),
    )  # fmt: skip
    return Layout(
        "txt_numeric_and_text", "txt", lines(rows, "\t").encode("cp1252"),
        (Water("DW-12-0526", "DW-12", "2026-05-06", items),), quality_control=7, unread=1, extra_ok=frozenset({"sodium"}),
    )  # fmt: skip


def less_than_indicator() -> Layout:
    """A state's drinking-water programme: a Y/N column for less than, the level in another, the code of it in a third."""
    head = (
        "Water System No.", "Facility ID", "Sampling Point", "Sample ID", "Collection Date", "Collection Time", "Sample Type", "Analyte Code", "Analyte Name",
        "Less Than Indicator", "Less Than Code", "Concentration", "Concentration UOM", "Reporting Level", "Reporting Level UOM", "MCL", "Method",
    )  # fmt: skip
    well = ("XX0101", "W01", "TAP 1", "AB1299", "03-FEB-2026", "0815", "RT")
    rows = [
        head,
        (*well, "1005", "ARSENIC", "Y", "MRL", "", "", "1", "UG/L", "10 UG/L", "200.8"),
        (*well, "1040", "NITRATE", "N", "", "3.4", "MG/L", "", "", "10 MG/L", "353.2"),
        (*well, "1041", "NITRITE", "Y", "MDL", "", "", "0.01", "MG/L", "1 MG/L", "353.2"),
        (*well, "4000", "GROSS ALPHA, EXCL. RADON & U", "N", "", "5.2", "PCI/L", "", "", "15 PCI/L", "900.0"),
        (*well, "1028", "IRON", "N", "", "0.88", "MG/L", "", "", "", "200.7"),
        (*well, "1927", "ALKALINITY, TOTAL", "N", "", "182", "MG/L", "", "", "", "2320B"),
    ]  # fmt: skip
    items = (
        means("arsenic", 0, U), means("nitrate", 3.4), means("nitrite", 0, 0.01),
        means("iron", 0.88), means("total_alkalinity", 182),
    )  # fmt: skip
    return one("csv_less_than_indicator", lines(rows), Water("AB1299", "", "2026-02-03", items), unread=1)


def wqx_three() -> Layout:
    """The exchange's new columns: fractions, forms, conditions, two limits of different kinds, activities of many types."""
    head = (
        "Org_Identifier", "Location_Identifier", "Location_Name", "Activity_ActivityIdentifier", "Activity_TypeCode", "Activity_Media", "Activity_StartDate",
        "Activity_StartTime", "Result_Characteristic", "Result_MethodSpeciation", "Result_SampleFraction", "Result_Measure", "Result_MeasureUnit",
        "Result_MeasureQualifierCode", "Result_ResultDetectionCondition", "Result_MeasureStatusIdentifier", "Result_StatisticalBase",
        "DetectionLimit_TypeA", "DetectionLimit_MeasureA", "DetectionLimit_MeasureUnitA", "DetectionLimit_TypeB",
        "DetectionLimit_MeasureB", "DetectionLimit_MeasureUnitB", "ResultAnalyticalMethod_Identifier",
    )  # fmt: skip

    def row(
        kind,
        name,
        form,
        fraction,
        value,
        unit,
        condition="",
        *,
        mark="",
        status="Final",
        base="",
        a=("", "", ""),
        b=("", "", ""),
    ):
        return (
            "ORG", "ORG-W5", "Grebe Mere 5", f"ORG-{kind[:9]}-1", kind, "Water", "2025-11-03", "11:15:00", name, form, fraction, value, unit, mark, condition, status,
            base, *a, *b, "M1",
        )  # fmt: skip

    routine, field = "Sample-Routine", "Field Msr/Obs"
    rl, mdl = ("Laboratory Reporting Level", "0.04", "mg/L"), ("Method Detection Level", "0.01", "mg/L")
    rows = [
        head,
        row(routine, "Nitrate", "as NO3", "Dissolved", "19", "mg/L"),
        row(routine, "Nitrate", "as N", "Total", "4.4", "mg/L"),
        row(routine, "Orthophosphate", "as PO4", "Dissolved", "0.31", "mg/L"),
        row(routine, "Ammonia", "as N", "Dissolved", "", "", "Not Detected", a=mdl, b=rl),
        row(routine, "Silica", "as SiO2", "Dissolved", "21.5", "mg/L"),
        row(routine, "Iron", "", "Total Recoverable", "812", "ug/L"),
        row(routine, "Iron", "", "Suspended", "640", "ug/L"),
        row(routine, "Alkalinity, total", "as CaCO3", "Total", "201", "mg/L"),
        row(routine, "Hardness, Ca, Mg", "as CaCO3", "Dissolved", "233", "mg/L"),
        row(routine, "Escherichia coli", "", "", "", "", "Not Detected", a=("Lower Reporting Limit", "1", "MPN/100mL")),
        row(field, "pH", "", "", "7.3", "std units"),
        row(field, "Temperature, water", "", "", "11.2", "deg C"),
        row(field, "Dissolved oxygen (DO)", "", "Dissolved", "3.3", "mg/L"),
        row(routine, "Zinc", "", "Dissolved", "9", "ug/L", status="Rejected"),
        row("Quality Control Sample-Field Blank", "Iron", "", "Total Recoverable", "4", "ug/L"),
        row("Quality Control Field Replicate Msr/Obs", "pH", "", "", "7.4", "std units"),
        row("Quality Control Sample-Lab Spike", "Nitrate", "as N", "Total", "9.6", "mg/L"),
    ]  # fmt: skip
    items = (
        means("nitrate", 19 * N_OF_NO3, None, "dissolved"), means("nitrate", 4.4, None, "total"), means("orthophosphate", 0.31 * 30.974 / 94.971, None, "dissolved"),
        means("ammonia", 0, 0.04, "dissolved"), means("silica", 21.5, None, "dissolved"), means("iron", 0.812, None, "total_recoverable"),
        means("iron", 0.64, None, "suspended"), means("total_alkalinity", 201, None, "total"), means("total_hardness", 233, None, "dissolved"),
        means("e_coli", 0, 0),
    )  # fmt: skip
    measured = (
        means("ph", 7.3, flag="field"),
        means("temperature", 11.2, flag="field"),
        means("dissolved_oxygen", 3.3, flag="field"),
    )
    waters = (
        Water("ORG-Sample-Ro-1", "ORG-W5", "2025-11-03", items), Water("ORG-Field Msr-1", "ORG-W5", "2025-11-03", measured),
    )  # fmt: skip
    return one("csv_wqx_three", lines(rows), waters, quality_control=3, extra_ok=frozenset({"zinc"}))


def parameter_columns() -> Layout:
    """A national database's wide table: p and five digits, r and five digits for the remark before it."""
    text = (
        "# Retrieved: 2026-03-01\n#\n# p00618  Nitrate, water, filtered, mg/L as nitrogen\n# r00618  Remark for 00618\n#\n"
        "agency_cd\tsite_no\tsample_dt\tsample_tm\tsample_start_time_datum_cd\tmedium_cd\tr00618\tp00618\tr00400\tp00400\tr01046\tp01046\tr01045\tp01045\tr90095\tp90095\tr00904\tp00904\n"
        "5s\t15s\t10d\t4d\t3s\t3s\t1s\t12s\t1s\t12s\t1s\t12s\t1s\t12s\t1s\t12s\t1s\t12s\n"
        "XX\t410011072000101\t2014-07-08\t1010\tEDT\tWG\t\t2.61\t\t6.4\tE\t4.1\t\t210\t\t312\t\t2\n"
        "XX\t410011072000101\t2015-06-30\t0945\tEDT\tWG\t<\t.040\t\t6.6\t<\t3.2\t\t\t\t298\t\t71\n"
    )
    waters = (
        Water("410011072000101", "", "2014-07-08", (
            means("nitrate", 2.61, None, "dissolved"), means("ph", 6.4, None, "total"), means("iron", 4.1 * U, None, "dissolved"),
            means("iron", 0.21, None, "total_recoverable"), means("specific_conductance", 312, None, "total"), means("noncarbonate_hardness", 2, None, "dissolved"),
        )),
        Water("410011072000101", "", "2015-06-30", (
            means("nitrate", 0, 0.04, "dissolved"), means("ph", 6.6, None, "total"), means("iron", 0, 3.2 * U, "dissolved"), means("specific_conductance", 298, None, "total"), means("noncarbonate_hardness", 71, None, "dissolved"),
        )),
    )  # fmt: skip
    return Layout("rdb_parameter_columns", "rdb", text.encode(), waters)


def archive_labels() -> Layout:
    """England's archive as its newer service prints it: dotted names of properties, a sign within the result."""
    head = (
        "id", "samplingPoint.notation", "samplingPoint.prefLabel", "samplingPoint.easting", "samplingPoint.northing", "phenomenonTime", "samplingPurpose.prefLabel",
        "sampleMaterialType.prefLabel", "determinand.notation", "determinand.prefLabel", "determinand.altLabel", "result", "unit",
    )  # fmt: skip
    place = (
        "TH-PGWU7781",
        "FALLOW ACRE BOREHOLE",
        "461200",
        "187300",
        "2025-09-16T10:20:00",
        "MONITORING",
        "GROUNDWATER",
    )
    table = (
        ("0117", "Nitrate as N", "Nitrate-N", "7.93", "mg/l", means("nitrate", 7.93)),
        ("0118", "Nitrite as N", "Nitrite-N", "<0.004", "mg/l", means("nitrite", 0, 0.004)),
        ("0061", "pH", "pH", "7.21", "phunits", means("ph", 7.21)),
        ("0077", "Conductivity at 25 C", "Cond @ 25C", "641", "us/cm", means("specific_conductance", 641)),
        ("6460", "Iron, Dissolved", "Fe- Filtered", "<30", "ug/l", means("iron", 0, 0.03, "dissolved")),
        ("6051", "Iron", "Iron - as Fe", "112", "ug/l", means("iron", 0.112)),
        ("0162", "Alkalinity to pH 4.5 as CaCO3", "Alky pH 4.5", "244", "mg/l", means("total_alkalinity", 244)),
        ("0111", "Ammoniacal Nitrogen as N", "Ammonia(N)", "<0.03", "mg/l", means("ammonia", 0, 0.03)),
        ("0180", "Orthophosphate, reactive as P", "Orthophospht", "0.02", "mg/l", means("orthophosphate", 0.02)),
    )  # fmt: skip
    rows = [head, *((str(n), *place, *row[:5]) for n, row in enumerate(table))]
    return one(
        "csv_archive_labels",
        lines(rows),
        Water("TH-PGWU7781", "FALLOW ACRE BOREHOLE", "2025-09-16", tuple(row[5] for row in table)),
    )


def sandre() -> Layout:
    """France's surface-water portal: long French headings in cp1252, decimal commas, coded remarks and fractions."""
    head = (
        "CdStationMesure", "LbStationMesure", "DatePrel", "HeurePrel", "CdSupport", "LbSupport", "CdFractionAnalysee", "LbFractionAnalysee", "CdParametre",
        "LbLongParamètre", "RsAna", "CdUniteMesure", "SymUniteMesure", "CdRqAna", "MnemoRqAna", "LdAna", "LqAna", "LbQualAna", "NomLabo",
    )  # fmt: skip
    place = ("05077712", "Forage des Deux Frênes", "14/04/2025", "10:30:00", "3", "Eau")
    raw, filtered = ("23", "Eau brute"), ("3", "Phase aqueuse de l'eau (filtrée, centrifugée...)")
    rows = [
        head,
        (*place, *filtered, "1340", "Nitrates", "31,5", "162", "mg(NO3)/L", "1", "Résultat > seuil de quantification et < au seuil de saturation", "", "0,5", "Correcte", "Labo du Val"),
        (*place, *filtered, "1335", "Ammonium", "0,01", "169", "mg(NH4)/L", "10", "Résultat < au seuil de quantification", "", "0,01", "Correcte", "Labo du Val"),
        (*place, *filtered, "1369", "Arsenic", "0,2", "133", "µg(As)/L", "10", "Résultat < au seuil de quantification", "0,1", "0,2", "Correcte", "Labo du Val"),
        (*place, *raw, "1393", "Fer", "118", "133", "µg(Fe)/L", "1", "Résultat > seuil de quantification et < au seuil de saturation", "", "10", "Correcte", "Labo du Val"),
        (*place, *raw, "1302", "Potentiel en Hydrogène (pH)", "7,3", "264", "unité pH", "1", "Résultat > seuil de quantification et < au seuil de saturation", "", "", "Correcte", "Labo du Val"),
        (*place, *raw, "1449", "Escherichia coli", "4", "232", "n/(100mL)", "1", "Résultat > seuil de quantification et < au seuil de saturation", "", "1", "Correcte", "Labo du Val"),
    ]  # fmt: skip
    items = (
        means("nitrate", 31.5 * N_OF_NO3, None, "dissolved"), means("ammonia", 0, 0.01 * 14.007 / 18.039, "dissolved"),
        means("arsenic", 0, 0.2 * U, "dissolved"), means("iron", 0.118, None, "total"), means("ph", 7.3), means("e_coli", 4),
    )  # fmt: skip
    return one("csv_sandre", lines(rows, ";"), Water("05077712", "05077712", "2025-04-14", items), encoding="cp1252")


def below_limit_of_determination() -> Layout:
    """A German laboratory's table: `< BG`, `n.b.`, `n.n.`, points for thousands, the limit of determination in a column."""
    text = (
        "Auftraggeber:;Fam. Muster\nProbe-Nr.:;26-04411\nEntnahmestelle:;Hausbrunnen Küche\nProbenahmedatum:;03.06.2026 08:20\n;;\n"
        "Lfd. Nr.;Parameter;Kurzz.;Dim.;Messwert;BG;GW TrinkwV;Verfahren\n"
        "1;Nitrat;NO3;mg/l;61,2;0,5;50;DIN EN ISO 10304-1\n2;Nitrit;NO2;mg/l;< BG;0,01;0,50;DIN EN 26777\n3;Natrium;Na;mg/l;1.204;0,5;200;DIN EN ISO 11885\n"
        "4;Eisen, gesamt;Fe;mg/l;0,31;0,01;0,200;DIN EN ISO 11885\n5;Uran;U;µg/l;n.n.;0,1;10;DIN EN ISO 17294-2\n6;Arsen;As;mg/l;n.b.;0,001;0,010;\n"
        "7;pH-Wert;;;6,42;;6,5 - 9,5;DIN EN ISO 10523\n8;Elektr. Leitfähigkeit (25 °C);;µS/cm;812;;2790;DIN EN 27888\n9;Trübung;;NTU;<0,10;0,10;1,0;\n"
        "10;Koloniezahl 22 °C;;KBE/ml;12;;100;\n11;Coliforme Bakterien;;KBE/100 ml;0;;0;\n12;Enterokokken;;KBE/100 ml;n.n.;;0;\n"
        ";;;;;;;\nBG = Bestimmungsgrenze, n.b. = nicht bestimmt, n.n. = nicht nachweisbar;;;;;;;\n"
    )  # fmt: skip
    items = (
        means("nitrate", 61.2 * N_OF_NO3), means("nitrite", 0, 0.01 * 14.007 / 46.005), means("sodium", 1204), means("iron", 0.31, None, "total"),
        means("uranium", 0, 0.1 * U), means("ph", 6.42), means("specific_conductance", 812), means("turbidity", 0, 0.1),
        means("colony_count_22", 12), means("total_coliform", 0, 0), means("enterococci", 0, 0),
    )  # fmt: skip
    return one(
        "csv_below_limit_of_determination",
        text,
        Water("26-04411", "", "2026-06-03", items),
        encoding="cp1252",
        extra_ok=frozenset({"arsenic"}),
    )


def both_languages() -> Layout:
    """Canadian: every heading in two languages with a slash, the sample's names across, the guideline and the limit before."""
    text = (
        "Certificate of Analysis / Certificat d'analyse,,,,,\nClient: Example / Exemple,,,,,\n"
        "Parameter / Paramètre,Units / Unités,MAC or AO / CMA ou OE,RDL / LDR,KITCHEN / CUISINE,WELLHEAD / PUITS\n"
        "Sampling Date / Date d'échantillonnage,,,,2026/04/20,2026/04/20\nLab ID / No labo,,,,QX7701,QX7702\n"
        "Metals - Total / Métaux - totaux,,,,,\nArsenic / Arsenic,µg/L,10,0.5,<0.5,12.2\nIron / Fer,mg/L,0.1,0.02,0.09,1.44\n"
        "Inorganics / Inorganiques,,,,,\nNitrate (N) / Nitrate (N),mg/L,10,0.05,6.1,ND\nHardness (CaCO3) / Dureté (CaCO3),mg/L,,1,18,241\n"
        "pH,pH,7.0-10.5,,7.4,6.9\nMicrobiology / Microbiologie,,,,,\nE. coli,CFU/100 mL / UFC/100 mL,0,1,0,0\n"
        "Total coliforms / Coliformes totaux,CFU/100 mL / UFC/100 mL,0,1,<1,OVERGROWN\n"
        "ND = Not detected / Non détecté,,,,,\nRDL = Reportable Detection Limit / LDR = Limite de détection rapportée,,,,,\n"
    )
    waters = (
        Water("KITCHEN / CUISINE", "", "2026-04-20", (
            means("arsenic", 0, 0.5 * U, "total"), means("iron", 0.09, None, "total"), means("nitrate", 6.1), means("total_hardness", 18), means("ph", 7.4),
            means("e_coli", 0, 0), means("total_coliform", 0, 0),
        )),
        Water("WELLHEAD / PUITS", "", "2026-04-20", (
            means("arsenic", 12.2 * U, None, "total"), means("iron", 1.44, None, "total"), means("nitrate", 0, 0.05), means("total_hardness", 241), means("ph", 6.9),
            means("e_coli", 0, 0),
        )),
    )  # fmt: skip
    return one("csv_both_languages", text, waters, encoding="utf-8-sig", extra_ok=frozenset({"total_coliform"}))


def spanish_bulletin() -> Layout:
    """A Spanish bulletin: groups in capitals, results with the comma, `<LQ`, `No detectado`, the method's uncertainty beside."""
    text = (
        "BOLETÍN DE ANÁLISIS DE AGUA DE POZO\nCódigo de muestra|PZ-0093|Fecha de toma|09/03/2026\nPunto de toma|Grifo de cocina\n\n"
        "Determinación|Resultado|Unidades|LQ|Incertidumbre|V. paramétrico|Método\nPARÁMETROS FÍSICO-QUÍMICOS\n"
        "pH|7,8|Ud. pH|1|± 0,1|6,5-9,5|PNT-01\nConductividad a 20 °C|933|µS/cm|50|± 5 %|2500|PNT-02\nTurbidez|<LQ|UNF|0,2||4|PNT-03\n"
        "Nitratos|58|mg NO3/L|1|± 6 %|50|PNT-10\nAmonio|<0,05|mg NH4/L|0,05||0,50|PNT-11\nDureza total|41,2|°F|1|||PNT-12\nHierro total|1.250|µg/L|10|± 12 %|200|PNT-20\n"
        "Manganeso|<LQ|µg/L|5||50|PNT-20\nPARÁMETROS MICROBIOLÓGICOS\nEscherichia coli|No detectado|UFC/100 ml|1||0|PNT-30\nBacterias coliformes|3|UFC/100 ml|1||0|PNT-30\n"
        "Calificación: NO APTA para el consumo\n"
    )
    items = (
        means("ph", 7.8), means("specific_conductance", 933 * 1.116), means("turbidity", 0, 0.2), means("nitrate", 58 * N_OF_NO3), means("ammonia", 0, 0.05 * 14.007 / 18.039),
        means("total_hardness", 412), means("iron", 1.25, None, "total"), means("manganese", 0, 5 * U), means("e_coli", 0, 0), means("total_coliform", 3),
    )  # fmt: skip
    return one("txt_spanish_bulletin", text, Water("PZ-0093", "", "2026-03-09", items), suffix="txt")


def radionuclide_counts() -> Layout:
    """Radionuclides with a counting error at one and two sigma, the minimum detectable activity, `U` and a negative count."""
    rows = [
        (
            "Client ID",
            "Lab ID",
            "Sampled",
            "Parameter",
            "Activity",
            "Unc. (2s)",
            "TPU (1s)",
            "MDC",
            "RL",
            "Qual",
            "Units",
            "Yield %",
        ),
        ("HOUSE", "R-1", "1/14/26", "Gross Alpha", "9.1", "2.2", "1.4", "1.9", "3", "", "pCi/L", ""),
        ("HOUSE", "R-1", "1/14/26", "Gross Beta", "1.1", "1.6", "0.9", "2.6", "4", "U", "pCi/L", ""),
        ("HOUSE", "R-1", "1/14/26", "Radium-226", "-0.08", "0.15", "0.09", "0.41", "1", "U", "pCi/L", "88"),
        ("HOUSE", "R-1", "1/14/26", "Radium-228", "1.31", "0.52", "0.31", "0.60", "1", "", "pCi/L", "91"),
        ("HOUSE", "R-1", "1/14/26", "Uranium (mass)", "14.9", "", "", "", "0.5", "", "ug/L", ""),
        ("HOUSE", "R-1", "1/14/26", "Radon-222", "4120", "210", "120", "45", "100", "", "pCi/L", ""),
    ]
    items = (
        means("gross_alpha", 6.9 * PCI, 11.3 * PCI), means("gross_beta", -0.5 * PCI, 2.7 * PCI), means("radium_226", -0.23 * PCI, 0.41 * PCI),
        means("radium_228", 0.79 * PCI, 1.83 * PCI), means("uranium", 14.9 * U), means("radon_222", 3910 * PCI, 4330 * PCI),
    )  # fmt: skip
    return one("csv_radionuclide_counts", lines(rows), Water("R-1", "", "2026-01-14", items))


LAYOUTS = (
    numeric_and_text, less_than_indicator, wqx_three, parameter_columns, archive_labels, sandre, below_limit_of_determination,
    both_languages, spanish_bulletin, radionuclide_counts,
)  # fmt: skip
