"""Further layouts of text: fixed width, leaders, blocks, comments. All invented; each meaning is typed by hand."""

from __future__ import annotations

from reports_catalog import INF, Layout, Water
from reports_written import N_OF_NO3, it, lines


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
    fixed_width,
    leaders_text,
    trailing,
    comments,
    blocks,
    glued,
    permissions,
)
