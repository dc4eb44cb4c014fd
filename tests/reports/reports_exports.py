"""Delimited exports: deliverables with coded columns, public agencies' tables, odd encodings and delimiters.

Column names of public standards are those of: Water Quality Portal (WQX 2 and 3), USGS NWIS RDB, England's water-quality
archive, the French SANDRE and health ministry tables, the EU's WISE SoE, US EPA's Six-Year Review and UCMR tables.
Every laboratory, site and number is invented; each meaning is typed here by hand.
"""

from __future__ import annotations

from reports_catalog import Layout, Water
from reports_written import lines, means


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
        means("iron", 1.84, None, "total"), means("iron", 0, 0.05, "dissolved", flag="U"), means("arsenic", 0.0002, 0.001, "total", flag="J"),
        means("arsenic", 0, 0.001, "dissolved", flag="U"), means("chloride", 66.1), means("benzene", 0, 0.0005, flag="U"))), quality_control=6)  # fmt: skip


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
        Water("GW-1", "", "2026-07-01", (means("zinc", 0.041), means("toluene", 0, 0.0005, flag="U"))),
        quality_control=18,
        unread=1,
    )


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
        means("arsenic", 0.0071), means("cyanide", 0, 0.02), means("nitrate", 4.05), means("atrazine", 0, 0.0001), means("uranium", 0.0039), means("radium_226_plus_228", 2.2 * 0.037))))  # fmt: skip


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
        Water("r01", "", "2025-09-30", (means("temperature", 10.2), means("ph", 6.61), means("dissolved_oxygen", 3.3), means("specific_conductance", 311), means("total_alkalinity", 88), means("nitrate", 1.7), means("ammonia", 0.02), means("iron", 0.12), means("manganese", 0.044), means("arsenic", 0, 0.001), means("silica", 14.1), means("total_dissolved_solids", 190))),
        Water("r02", "", "2025-10-01", (means("temperature", 9.8), means("ph", 7.9), means("dissolved_oxygen", 0.2), means("specific_conductance", 502), means("total_alkalinity", 210), means("nitrate", 0.05), means("ammonia", 0.61), means("iron", 0, 0.01), means("manganese", 0.31), means("arsenic", 0.041), means("silica", 19), means("total_dissolved_solids", 305))),
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
            (
                means("iron", 0.33),
                means("manganese", 0, 0.01),
                means("ph", 7.4),
                means("nitrate", 3.8),
                means("e_coli", 0, 0),
            ),
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
        (Water("", "", "", (means("total_hardness", 182.5), means("iron", 0, 0.03), means("chloride", 11.9))),),
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
            means("calcium", ca),
            means("magnesium", mg),
            means("iron", *iron, fraction="dissolved"),
            means("nitrate", *nitrate),
            means("specific_conductance", ec),
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
    typed_deliverable,
    names_alone_tell,
    review_detect,
    coded_wide,
    markdown,
    separator_line,
    two_samples_text,
)
