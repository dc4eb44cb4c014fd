"""Layouts of delimited text. Every laboratory and household is invented."""

from __future__ import annotations

from dataclasses import replace

import reports_catalog as catalog
from reports_catalog import INF, Item, Layout, Water
from reports_written import lines

KEYS = (
    "calcium",
    "magnesium",
    "sodium",
    "iron",
    "manganese",
    "chloride",
    "sulfate",
    "nitrate",
    "total_alkalinity",
    "ph",
)


def comma() -> Layout:
    """A row a result, several samples."""
    waters = tuple(catalog.water(500 + n, id=f"K-{n}", germs="numbers") for n in range(3))
    rows = [("Lab ID", "Sample ID", "Location", "Collect Date", "Analyte", "Result", "Units", "RL", "Method")]
    rows += [("L9", w.id, w.site, w.day, i.name, i.value, i.unit, i.rl, i.method) for w in waters for i in w.items]
    return Layout("csv_comma", "csv", lines(rows).encode(), waters)


def semicolon() -> Layout:
    """Semicolon and decimal comma, cp1252."""
    water = catalog.water(510, censored=0.3)
    rows = [("Parameter", "Ergebnis", "Einheit", "Bestimmungsgrenze")]
    rows += [(i.name, i.value.replace(".", ","), i.unit.replace("μ", "µ"), i.rl.replace(".", ",")) for i in water.items]
    return Layout("csv_semicolon", "csv", lines(rows, ";").encode("cp1252"), catalog.undated(replace(water, id="")))


def utf16() -> Layout:
    """Tabs in UTF-16 with its mark, a preamble of metadata and a footer."""
    water = catalog.water(520)
    rows = [(catalog.LABORATORIES[1],), ("Sample ID:", water.id), ("Sampled:", water.day), ()]
    rows += [("Parameter", "Result", "Units", "PQL", "Guideline")]
    rows += [(i.name, i.value, i.unit, i.rl, i.limit) for i in water.items]
    rows += [(), ("End of report",), ("Results relate only to the sample as received.",)]
    return Layout("csv_utf16", "csv", lines(rows, "\t").encode("utf-16"), (water,))


def edd() -> Layout:
    """An electronic data deliverable: coded columns, CAS numbers, T/D, detect flag, QC rows."""
    cas = {
        "iron": "7439-89-6", "manganese": "7439-96-5", "lead": "7439-92-1", "copper": "7440-50-8", "zinc": "7440-66-6",
        "barium": "7440-39-3", "chloride": "16887-00-6", "sodium": "7440-23-5",
    }  # fmt: skip
    rows = [(
        "SYS_SAMPLE_CODE", "SAMPLE_TYPE_CODE", "SAMPLE_DATE", "MATRIX_CODE", "CAS_RN", "CHEMICAL_NAME", "FRACTION",
        "RESULT_VALUE", "RESULT_UNIT", "DETECT_FLAG", "LAB_QUALIFIERS", "REPORTING_DETECTION_LIMIT",
        "METHOD_DETECTION_LIMIT", "LAB_ANL_METHOD_NAME", "DILUTION_FACTOR",
    )]  # fmt: skip
    waters = []
    for number in range(2):
        water = catalog.water(530 + number, cas, id=f"MW-{number + 1}", censored=0.4)
        items = []
        for index, item in enumerate(water.items):
            code, fraction = (("T", "total"), ("D", "dissolved"))[index % 2]
            item = item._replace(name=catalog.BY_KEY[item.analyte].names[0][0], fraction=fraction)
            items.append(item)
            found = not item.value.startswith("<")
            mdl = catalog.figures(float(item.rl) / 3) if item.rl else ""
            rows.append((
                water.id, "N", water.day, "WG", cas[item.analyte], item.name, code, item.value.lstrip("<") if found else "",
                item.unit, "Y" if found else "N", "" if found else "U", item.rl, mdl, item.method, "1",
            ))  # fmt: skip
        waters.append(replace(water, items=tuple(items)))
    quality = 0
    for index, code in enumerate(("LB", "BS", "MS")):
        rows.append((
            f"QC-{index}", code, "2026-03-03", "WQ", cas["iron"], "Iron", "T", "0.98", "mg/L", "Y", "", "0.02", "0.006",
            "EPA 200.7", "1",
        ))  # fmt: skip
        quality += 1
    return Layout("csv_edd", "csv", lines(rows).encode(), tuple(waters), quality_control=quality)


def wqx_legacy() -> Layout:
    """Water Quality Portal result export, legacy column names; fraction and detection condition in columns."""
    header = (
        "OrganizationIdentifier", "ActivityIdentifier", "ActivityTypeCode", "ActivityMediaName", "ActivityStartDate",
        "MonitoringLocationIdentifier", "ResultDetectionConditionText", "CharacteristicName", "ResultSampleFractionText",
        "ResultMeasureValue", "ResultMeasure/MeasureUnitCode", "ResultStatusIdentifier", "MethodSpecificationName",
        "ResultAnalyticalMethod/MethodIdentifier", "DetectionQuantitationLimitTypeName",
        "DetectionQuantitationLimitMeasure/MeasureValue", "DetectionQuantitationLimitMeasure/MeasureUnitCode",
    )  # fmt: skip
    rows = [header]
    waters = []
    kinds = (
        ("iron", "Iron", "Dissolved", "dissolved", "ug/l", 0.001, ""),
        ("manganese", "Manganese", "Total", "total", "ug/l", 0.001, ""),
        ("nitrate", "Nitrate", "Dissolved", "dissolved", "mg/l", 1, "as N"),
        ("chloride", "Chloride", "Dissolved", "dissolved", "mg/l", 1, ""),
        ("lead", "Lead", "Total", "total", "ug/l", 0.001, ""),
    )
    for number in range(3):
        items = []
        place = f"XYZ_WELLS-{number}"
        for index, (key, name, text, fraction, unit, factor, form) in enumerate(kinds):
            value = round(3.7 * (index + 1) * (number + 1.5), 1)
            censored = (index + number) % 4 == 0
            shown, low, high = ("", 0.0, 2 * factor) if censored else (str(value), value * factor, value * factor)
            items.append(Item(key, fraction, name, shown, unit, low, high))
            rows.append((
                "XYZ_WELLS", f"ACT-{number}", "Sample-Routine", "Water", f"2026-0{number + 1}-12", place,
                "Not Detected" if censored else "", name, text, shown, unit, "Accepted", form, "200.8",
                "Lower Reporting Limit" if censored else "", "2" if censored else "", unit if censored else "",
            ))  # fmt: skip
        waters.append(Water(f"ACT-{number}", place, f"2026-0{number + 1}-12", tuple(items)))
    rows.append((
        "XYZ_WELLS", "ACT-B", "Quality Control Sample-Field Blank", "Water", "2026-01-12", "XYZ_WELLS-0", "", "Iron",
        "Dissolved", "4.0", "ug/l", "Accepted", "", "200.8", "", "", "",
    ))  # fmt: skip
    return Layout("csv_wqx_legacy", "csv", lines(rows).encode(), tuple(waters), quality_control=1)


def nwis() -> Layout:
    """RDB with parameter codes only: the code says analyte, fraction, unit and basis."""
    codes = (
        ("00915", "calcium", "dissolved", 41.2), ("00925", "magnesium", "dissolved", 11.9),
        ("00940", "chloride", "dissolved", 8.4), ("01046", "iron", "dissolved", 310.0),
        ("00618", "nitrate", "dissolved", 2.3), ("00400", "ph", "total", 7.3),
    )  # fmt: skip
    factor = {"iron": 0.001}
    lines = [
        "# invented site, for a test",
        "#",
        "agency_cd\tsite_no\tsample_dt\tparm_cd\tremark_cd\tresult_va\trpt_lev_va",
    ]
    lines.append("5s\t15s\t10d\t5s\t1s\t12n\t12n")
    items = []
    for number, (code, key, fraction, value) in enumerate(codes):
        censored = number == 3
        lines.append(f"USGS\t990000000000001\t2026-05-06\t{code}\t{'<' if censored else ''}\t{value}\t")
        number_ = value * factor.get(key, 1)
        items.append(Item(key, fraction, code, str(value), "", 0.0 if censored else number_, number_))
    water = Water("", "990000000000001", "2026-05-06", tuple(items))
    return Layout("rdb_codes", "rdb", "\n".join(lines).encode(), (water,))


def england() -> Layout:
    """Columns of England's water-quality archive: determinand, qualifier, result, unit."""
    rows = [(
        "@id", "sample.samplingPoint", "sample.samplingPoint.label", "sample.sampleDateTime", "determinand.label",
        "determinand.definition", "determinand.notation", "resultQualifier.notation", "result", "determinand.unit.label",
        "sample.sampledMaterialType.label",
    )]  # fmt: skip
    kinds = (
        ("Nitrate-N", "Nitrate as N", "0117", "mg/l", "nitrate", None, 4.1, 1, ""),
        ("Chloride Ion", "Chloride", "0172", "mg/l", "chloride", None, 22.0, 1, ""),
        ("Iron - as Fe", "Iron", "6051", "ug/l", "iron", None, 30.0, 0.001, "<"),
        ("pH", "pH", "0061", "phunits", "ph", None, 7.31, 1, ""),
        ("Ammonia(N)", "Ammoniacal Nitrogen as N", "0111", "mg/l", "ammonia", None, 0.03, 1, "<"),
    )
    items = []
    for number, (label, definition, code, unit, key, fraction, value, factor, flag) in enumerate(kinds):
        rows.append((
            f"x/{number}", "x/point/9", "INVENTED BOREHOLE", "2026-02-03T10:40:00", label, definition, code, flag, value,
            unit, "GROUNDWATER",
        ))  # fmt: skip
        items.append(Item(key, fraction, label, str(value), unit, 0.0 if flag else value * factor, value * factor))
    return Layout(
        "csv_england", "csv", lines(rows).encode(), (Water("", "INVENTED BOREHOLE", "2026-02-03", tuple(items)),)
    )


def wide_remark() -> Layout:
    """A row a well, remark columns before each analyte, duplicate column names, missing as NA."""
    waters = catalog.same_printing([catalog.water(560 + n, KEYS, id=f"R{n}") for n in range(5)])
    header = ["Well ID", "Sample date"]
    for item in waters[0].items:
        name = f"{item.name} {item.unit}".strip()
        header += [f"{name}.rmk", name]
    rows = [header]
    for number, water in enumerate(waters):
        cells = [water.id, water.day]
        for index, item in enumerate(water.items):
            if (number + index) % 7 == 3:
                cells += ["", "NA"]
            else:
                cells += ["<", item.value[1:]] if item.value.startswith("<") else ["", item.value]
        rows.append(cells)
    kept = tuple(
        replace(w, items=tuple(i for index, i in enumerate(w.items) if (number + index) % 7 != 3))
        for number, w in enumerate(waters)
    )
    return Layout("csv_wide_remark", "csv", lines(rows).encode(), kept)


def no_header() -> Layout:
    """No header at all: roles follow from what the columns hold."""
    water = catalog.water(570, censored=0.3)
    rows = [(i.name, i.value, i.unit or "-") for i in water.items]
    return Layout("csv_no_header", "csv", lines(rows).encode(), catalog.undated(replace(water, id="")))


def pipes() -> Layout:
    """Pipes, quoted names with line breaks, qualifiers behind numbers, a legend, thousands separators."""
    rows = [
        ("Sample No", "Test\nname", "Result", "Unit of\nmeasure", "Reporting\nlimit"),
        ("P-1", "Calcium", "81.2", "mg/L", "0.5"),
        ("P-1", "Sodium", "1,204", "mg/L", "0.5"),
        ("P-1", "Lead", "0.4 J", "µg/L", "1.0"),
        ("P-1", "Arsenic", "1.0 U", "µg/L", "1.0"),
        ("P-1", "Manganese", "<0.002", "mg/L", "0.002"),
        ("P-1", "Total Coliform", "TNTC", "CFU/100 mL", "1"),
        ("P-1", "E. coli", "<1", "CFU/100 mL", "1"),
        ("P-1", "Enterococci", ">2419.6", "MPN/100 mL", "1"),
        ("P-1", "Bromide", "Not analysed", "mg/L", ""),
        ("", "J: estimated, between the detection limit and the reporting limit", "", "", ""),
        ("", "U: not detected at the reporting limit", "", "", ""),
    ]
    items = (
        Item("calcium", None, "Calcium", "81.2", "mg/L", 81.2, 81.2),
        Item("sodium", None, "Sodium", "1,204", "mg/L", 1204, 1204),
        Item("lead", None, "Lead", "0.4 J", "µg/L", 0.0, 0.001),
        Item("arsenic", None, "Arsenic", "1.0 U", "µg/L", 0.0, 0.001),
        Item("manganese", None, "Manganese", "<0.002", "mg/L", 0.0, 0.002),
        Item("total_coliform", None, "Total Coliform", "TNTC", "CFU/100 mL", 1.0, INF),
        Item("e_coli", None, "E. coli", "<1", "CFU/100 mL", 0.0, 0.0),
        Item("enterococci", None, "Enterococci", ">2419.6", "MPN/100 mL", 2419.6, INF),
    )
    layout = Layout("csv_pipes", "txt", lines(rows, "|").encode(), (Water("P-1", "", "", items),))
    return replace(layout, extra_ok=frozenset({"bromide"}))


LAYOUTS = (comma, semicolon, utf16, edd, wqx_legacy, nwis, england, wide_remark, no_header, pipes)
