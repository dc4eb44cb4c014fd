"""Further text PDFs: which column is the result, its unit, its group. All invented; each meaning is typed by hand."""

from __future__ import annotations

from reportlab.lib.pagesizes import A4, letter
from reports_catalog import Layout, Water
from reports_pdf import Paper
from reports_written import N_OF_NO3, PCI, it


def codes_and_legend() -> Layout:
    """Parameter, Results, MDL, PQL, Units, Q; codes behind and beside numbers; their legend at the end says its own."""
    paper = Paper()
    paper.text("Osprey Brook Analytical", bold=True, size=13)
    paper.text("Client ID: OB-77-1     Collected: 06/02/26 07:50     Received: 06/02/26 14:10     Matrix: Ground Water")
    at = (48, 200, 270, 330, 390, 450, 500)
    paper.row(at, ("Parameter", "Results", "MDL", "PQL", "Units", "Q", "Analyzed"), bold=True)
    for cells in (
        ("Aluminum", "0.020 U", "0.020", "0.060", "mg/L", "", "06/05/26"), ("Antimony", "0.0012", "0.0005", "0.0020", "mg/L", "J", "06/05/26"),
        ("Arsenic", "0.0094", "0.0004", "0.0020", "mg/L", "", "06/05/26"), ("Barium", "0.41", "0.001", "0.004", "mg/L", "V", "06/05/26"),
        ("Cadmium", "U", "0.0002", "0.0008", "mg/L", "", "06/05/26"), ("Chromium", "0.0007I", "0.0005", "0.0020", "mg/L", "", "06/05/26"),
        ("Nitrate as N", "3.3", "0.02", "0.10", "mg/L", "Q", "06/09/26"),
    ):  # fmt: skip
        paper.row(at, cells)
    paper.y -= 10
    for line in ("U = analyte was not detected at or above the MDL", "I, J = value between the MDL and the PQL",
                 "V = analyte was found in the method blank", "Q = holding time was exceeded"):  # fmt: skip
        paper.text(line, size=8)
    items = (
        it("aluminum", "Aluminum", "0.020 U", "mg/L", 0, 0.02), it("antimony", "Antimony", "0.0012", "mg/L", 0.0005, 0.002),
        it("arsenic", "Arsenic", "0.0094", "mg/L", 0.0094), it("barium", "Barium", "0.41", "mg/L", 0, 0.41),
        it("cadmium", "Cadmium", "U", "mg/L", 0, 0.0002), it("chromium", "Chromium", "0.0007I", "mg/L", 0.0005, 0.002),
        it("nitrate", "Nitrate as N", "3.3", "mg/L", 3.3),
    )  # fmt: skip
    return Layout("pdf_codes_and_legend", "pdf", paper.done(), (Water("OB-77-1", "", "2026-06-02", items),))


def sign_column() -> Layout:
    """The `<` stands in a column of its own, close before right-aligned numbers, without a header."""
    paper = Paper()
    paper.text("Marlpit Water Testing     Sample No. 5512     Sampled 14 May 2026")
    at = (48, 248, 300, 310, 400)
    paper.row(at, ("Determinand", "", "Value", "Units", "Max"), bold=True, right=(2,))
    for cells in (
        ("Ammonium as NH4", "<", "0.04", "mg/l", "0.5"), ("Nitrite as NO2", "<", "0.01", "mg/l", "0.5"), ("Nitrate as NO3", "", "38.2", "mg/l", "50"),
        ("Iron, total", "", "412", "µg/l", "200"), ("Manganese, total", "<", "5", "µg/l", "50"), ("Enterococci", "", "0", "cfu/100ml", "0"),
    ):  # fmt: skip
        paper.row(at, cells, right=(2,))
    items = (
        it("ammonia", "Ammonium as NH4", "0.04", "mg/l", 0, 0.04 * 14.007 / 18.039), it("nitrite", "Nitrite as NO2", "0.01", "mg/l", 0, 0.01 * 14.007 / 46.005),
        it("nitrate", "Nitrate as NO3", "38.2", "mg/l", 38.2 * N_OF_NO3), it("iron", "Iron, total", "412", "µg/l", 0.412, fraction="total"),
        it("manganese", "Manganese, total", "5", "µg/l", 0, 0.005, "total"), it("enterococci", "Enterococci", "0", "cfu/100ml", 0),
    )  # fmt: skip
    return Layout("pdf_sign_column", "pdf", paper.done(), (Water("5512", "", "2026-05-14", items),))


def ions_three_units() -> Layout:
    """An irrigation laboratory's page: mg/L, meq/L and % of the total side by side, totals and a balance beneath."""
    paper = Paper()
    paper.text("Sample ID: IR-9      Date: 2026-02-20")
    at = (48, 200, 270, 340)
    paper.row(at, ("Ion", "mg/L", "meq/L", "% of total"), bold=True)
    paper.text("Cations", bold=True)
    for cells in (
        ("Calcium (Ca)", "80.2", "4.00", "62"),
        ("Magnesium (Mg)", "18.2", "1.50", "23"),
        ("Sodium (Na)", "22.1", "0.96", "15"),
    ):
        paper.row(at, cells)
    paper.row(at, ("Total cations", "", "6.46", "100"))
    paper.text("Anions", bold=True)
    for cells in (
        ("Chloride (Cl)", "49.6", "1.40", "22"),
        ("Sulfate (SO4)", "48.0", "1.00", "16"),
        ("Bicarbonate (HCO3)", "244", "4.00", "62"),
    ):
        paper.row(at, cells)
    paper.row(at, ("Total anions", "", "6.40", "100"))
    paper.text("Cation/anion difference 0.5 %")
    pairs = (("calcium", "Calcium (Ca)", 80.2, 4.00 * 20.039), ("magnesium", "Magnesium (Mg)", 18.2, 1.5 * 12.1525), ("sodium", "Sodium (Na)", 22.1, 0.96 * 22.990),
             ("chloride", "Chloride (Cl)", 49.6, 1.4 * 35.45), ("sulfate", "Sulfate (SO4)", 48.0, 1.0 * 48.03), ("bicarbonate", "Bicarbonate (HCO3)", 244, 4.0 * 61.016))  # fmt: skip
    # of two numbers for one analyte both are kept
    items = tuple(
        item
        for key, name, mg, meq in pairs
        for item in (it(key, name, f"{mg}", "mg/L", mg), it(key, name, "", "meq/L", meq))
    )
    return Layout("pdf_ions_three_units", "pdf", paper.done(), (Water("IR-9", "", "2026-02-20", items),))


def pairs_across() -> Layout:
    """Name and value three pairs across, without a header; units behind the numbers."""
    paper = Paper(letter)
    paper.text("Saddler's Ford Laboratory", bold=True)
    paper.text("Sample: 44-B   Collected: 05/09/2026")
    at = (48, 130, 230, 320, 410, 500)
    for cells in (
        ("pH", "7.3", "Iron", "0.08 mg/L", "Chloride", "14 mg/L"), ("Hardness", "188 mg/L", "Manganese", "<0.01 mg/L", "Sulfate", "22 mg/L"),
        ("Alkalinity", "171 mg/L", "Copper", "0.12 mg/L", "Nitrate-N", "1.4 mg/L"), ("Conductivity", "412 µS/cm", "Lead", "<1 µg/L", "Fluoride", "0.3 mg/L"),
    ):  # fmt: skip
        paper.row(at, cells)
    items = (
        it("ph", "pH", "7.3", "", 7.3), it("iron", "Iron", "0.08", "mg/L", 0.08), it("chloride", "Chloride", "14", "mg/L", 14),
        it("total_hardness", "Hardness", "188", "mg/L", 188), it("manganese", "Manganese", "<0.01", "mg/L", 0, 0.01), it("sulfate", "Sulfate", "22", "mg/L", 22),
        it("total_alkalinity", "Alkalinity", "171", "mg/L", 171), it("copper", "Copper", "0.12", "mg/L", 0.12), it("nitrate", "Nitrate-N", "1.4", "mg/L", 1.4),
        it("specific_conductance", "Conductivity", "412", "µS/cm", 412), it("lead", "Lead", "<1", "µg/L", 0, 0.001), it("fluoride", "Fluoride", "0.3", "mg/L", 0.3),
    )  # fmt: skip
    return Layout("pdf_pairs_across", "pdf", paper.done(), (Water("44-B", "", "2026-05-09", items),))


def group_headers() -> Layout:
    """Every group repeats the header, with the group's name in place of the word for analyte."""
    paper = Paper()
    paper.text("Certificate 9917     Sample ID: GH-3     Date collected: 2026-07-07")
    at = (48, 220, 300, 370, 440)
    groups = (
        ("INORGANICS", (("Fluoride", "0.8", "mg/L", "0.1", "4"), ("Nitrite-N", "ND", "mg/L", "0.05", "1"))),
        ("METALS", (("Mercury", "ND", "ug/L", "0.2", "2"), ("Nickel", "3.1", "ug/L", "1.0", ""))),
        (
            "PHYSICAL PROPERTIES",
            (("Turbidity", "0.35", "NTU", "0.1", "1"), ("Specific Conductance", "388", "umhos/cm", "1", "")),
        ),
    )
    for title, rows in groups:
        paper.row(at, (title, "Result", "Units", "MRL", "MCL"), bold=True)
        for cells in rows:
            paper.row(at, cells)
        paper.y -= 6
    items = (
        it("fluoride", "Fluoride", "0.8", "mg/L", 0.8), it("nitrite", "Nitrite-N", "ND", "mg/L", 0, 0.05), it("mercury", "Mercury", "ND", "ug/L", 0, 0.0002),
        it("nickel", "Nickel", "3.1", "ug/L", 0.0031), it("turbidity", "Turbidity", "0.35", "NTU", 0.35), it("specific_conductance", "Specific Conductance", "388", "umhos/cm", 388),
    )  # fmt: skip
    return Layout("pdf_group_headers", "pdf", paper.done(), (Water("GH-3", "", "2026-07-07", items),))


def decimal_aligned() -> Layout:
    """Numbers aligned at the point, the unit close behind each; limits in words."""
    paper = Paper(A4, points=10, lead=15)
    paper.text("Sample reference DA/6, taken on 9th February 2026")
    paper.row((48, 260, 400), ("Analysis", "Concentration", "Standard"), bold=True)
    rows = (("Aluminium", "12.5", " µg/l", "not more than 200 µg/l"), ("Sodium", "128", " mg/l", "not more than 200 mg/l"), ("Copper", "0.0071", " mg/l", "not more than 2 mg/l"),
            ("Nitrate (as NO3)", "61.3", " mg/l", "not more than 50 mg/l"), ("Hydrogen ion (pH)", "6.9", "", "between 6.5 and 9.5"), ("Turbidity", "0.6", " NTU", "not more than 4 NTU"))  # fmt: skip
    for name, value, unit, limit in rows:
        paper.page.setFont("Helvetica", 10)
        before = value.partition(".")[0]
        start = 290 - paper.page.stringWidth(before, "Helvetica", 10)
        paper.page.drawString(start, paper.y, value + unit)
        paper.row((48, 400), (name, limit))
    items = (
        it("aluminum", "Aluminium", "12.5", "µg/l", 0.0125), it("sodium", "Sodium", "128", "mg/l", 128), it("copper", "Copper", "0.0071", "mg/l", 0.0071),
        it("nitrate", "Nitrate (as NO3)", "61.3", "mg/l", 61.3 * N_OF_NO3), it("ph", "Hydrogen ion (pH)", "6.9", "", 6.9), it("turbidity", "Turbidity", "0.6", "NTU", 0.6),
    )  # fmt: skip
    return Layout("pdf_decimal_aligned", "pdf", paper.done(), (Water("DA/6", "", "2026-02-09", items),))


def spanned_method() -> Layout:
    """Ruled; one tall cell names the method for several rows and stands in their middle; a tall cell for the unit too."""
    paper = Paper(lead=14)
    paper.text("Sample ID: SM-8    Collected: 2026-03-19")
    edges = (44, 170, 240, 300, 400)
    rows = (("Calcium", "71.0"), ("Magnesium", "16.4"), ("Sodium", "8.9"), ("Chloride", "12.2"), ("Sulfate", "<2.0"))
    top = paper.y + 10
    paper.row((48, 174, 244, 304), ("Element", "Amount", "Unit", "Method"), bold=True)
    base = paper.y + 10
    for name, value in rows:
        paper.row((48, 174), (name, value))
        paper.page.line(edges[0], paper.y + 10, edges[2], paper.y + 10)
    paper.page.setFont("Helvetica", 9)
    paper.page.drawString(244, base - 2.5 * 14 - 3, "mg/L")
    paper.page.drawString(304, base - 1.5 * 14 - 3, "ICP, 200.7")
    paper.page.drawString(304, base - 4 * 14 - 3, "IC, 300.0")
    for y in (top, base, paper.y + 10):
        paper.page.line(edges[0], y, edges[-1], y)
    paper.page.line(edges[3], base - 3 * 14, edges[4], base - 3 * 14)
    for x in edges:
        paper.page.line(x, top, x, paper.y + 10)
    items = (
        it("calcium", "Calcium", "71.0", "mg/L", 71), it("magnesium", "Magnesium", "16.4", "mg/L", 16.4), it("sodium", "Sodium", "8.9", "mg/L", 8.9),
        it("chloride", "Chloride", "12.2", "mg/L", 12.2), it("sulfate", "Sulfate", "<2.0", "mg/L", 0, 2),
    )  # fmt: skip
    return Layout("pdf_spanned_method", "pdf", paper.done(), (Water("SM-8", "", "2026-03-19", items),))


def perfluorinated() -> Layout:
    """Long wrapped names with their short form, ng/L, isotope standards with recoveries among the results' pages."""
    paper = Paper(letter, points=8, lead=10)
    paper.text("Client Sample ID: PF-2        Date Collected: 05/27/26")
    at = (48, 250, 310, 360, 420, 480)
    paper.row(at, ("Analyte", "Result", "RL", "MDL", "Unit", "D"), bold=True)
    rows = (
        ("Perfluorobutanesulfonic acid (PFBS)", "", "2.2", "1.8", "0.44", "pfbs", 2.2, None), ("Perfluorohexanesulfonic acid", "(PFHxS)", "1.1 J", "1.8", "0.35", "pfhxs", 0.35, 1.8),
        ("Perfluorooctanoic acid (PFOA)", "", "8.4", "1.8", "0.50", "pfoa", 8.4, None), ("Perfluorooctanesulfonic acid", "(PFOS)", "16", "1.8", "0.48", "pfos", 16, None),
        ("Hexafluoropropylene oxide dimer", "acid (HFPO-DA)", "ND", "3.6", "0.77", "hfpo_da", 0, 3.6), ("Perfluorononanoic acid (PFNA)", "", "ND", "1.8", "0.27", "pfna", 0, 1.8),
    )  # fmt: skip
    items = []
    for first, second, value, rl, mdl, key, low, high in rows:
        paper.row(at, (first, value, rl, mdl, "ng/L", "1"))
        if second:
            paper.row(at, (second, "", "", "", "", ""))
        paper.y -= 3
        items.append(
            it(key, f"{first} {second}".strip(), value, "ng/L", low * 1e-6, None if high is None else high * 1e-6)
        )
    paper.y -= 6
    paper.row((48, 250, 310, 420), ("Isotope Dilution", "%Recovery", "Qualifier", "Limits"), bold=True)
    paper.row((48, 250, 310, 420), ("13C4 PFOA", "88", "", "50 - 150"))
    paper.row((48, 250, 310, 420), ("13C4 PFOS", "91", "", "50 - 150"))
    return Layout("pdf_perfluorinated", "pdf", paper.done(), (Water("PF-2", "", "2026-05-27", tuple(items)),))


def volatiles() -> Layout:
    """Volatile organics, mostly not detected, in two columns of names on one page; surrogates at the end."""
    names = (
        ("benzene", "Benzene"), ("bromodichloromethane", "Bromodichloromethane"), ("bromoform", "Bromoform"), ("carbon_tetrachloride", "Carbon tetrachloride"),
        ("chlorobenzene", "Chlorobenzene"), ("chloroform", "Chloroform"), ("dibromochloromethane", "Dibromochloromethane"), ("1_2_dichloroethane", "1,2-Dichloroethane"),
        ("1_1_dichloroethylene", "1,1-Dichloroethene"), ("cis_1_2_dichloroethylene", "cis-1,2-Dichloroethene"), ("ethylbenzene", "Ethylbenzene"), ("methyl_tert_butyl_ether", "MTBE"),
        ("styrene", "Styrene"), ("tetrachloroethylene", "Tetrachloroethene"), ("toluene", "Toluene"), ("trichloroethylene", "Trichloroethene"), ("vinyl_chloride", "Vinyl chloride"),
        ("1_1_1_trichloroethane", "1,1,1-Trichloroethane"),
    )  # fmt: skip
    found = {"chloroform": "2.7", "toluene": "0.81", "tetrachloroethylene": "6.0"}
    paper = Paper(letter, points=8, lead=11)
    paper.text("Volatile Organic Compounds by EPA 524.2        Sample ID: VO-19        Sampled: 2026-01-30")
    paper.text("All results in µg/L; ND = not detected at 0.50 µg/L", size=8)
    at = (48, 180, 300, 430)
    paper.row(at, ("Compound", "Result", "Compound", "Result"), bold=True)
    half = len(names) // 2
    for left, right in zip(names[:half], names[half:], strict=True):
        paper.row(at, (left[1], found.get(left[0], "ND"), right[1], found.get(right[0], "ND")))
    paper.text("Surrogate Recovery", bold=True)
    paper.row(at, ("1,2-Dichlorobenzene-d4", "98 %", "4-Bromofluorobenzene", "102 %"))
    items = tuple(
        it(key, name, found.get(key, "ND"), "µg/L", *((float(found[key]) / 1000,) if key in found else (0, 0.0005)))
        for key, name in names
    )
    return Layout("pdf_volatiles", "pdf", paper.done(), (Water("VO-19", "", "2026-01-30", items),))


def activity_columns() -> Layout:
    """Radioactivity: result, ± uncertainty, MDC, flag in columns of their own; negative and undetected values; isotopes as symbols."""
    paper = Paper()
    paper.text("Sample ID: RA-3       Collected: 2026-05-12 08:00       Matrix: Groundwater")
    at = (48, 180, 230, 250, 310, 360, 420)
    paper.row(at, ("Radionuclide", "Activity", "", "2s Uncert.", "MDC", "Units", "Flag"), bold=True)
    rows = (("Gross Alpha", "11.2", "±", "2.8", "1.9", "pCi/L", ""), ("Gross Beta", "-0.4", "±", "1.1", "1.8", "pCi/L", "U"), ("Ra-226", "1.30", "±", "0.28", "0.21", "pCi/L", ""),
            ("Ra-228", "0.35", "±", "0.41", "0.66", "pCi/L", "U"), ("Rn-222", "1450", "±", "60", "22", "pCi/L", ""))  # fmt: skip
    for cells in rows:
        paper.row(at, cells)
    items = (
        it("gross_alpha", "Gross Alpha", "11.2", "pCi/L", 8.4 * PCI, 14.0 * PCI), it("gross_beta", "Gross Beta", "-0.4", "pCi/L", -1.5 * PCI, 1.8 * PCI),
        it("radium_226", "Ra-226", "1.30", "pCi/L", 1.02 * PCI, 1.58 * PCI), it("radium_228", "Ra-228", "0.35", "pCi/L", -0.06 * PCI, 0.76 * PCI),
        it("radon_222", "Rn-222", "1450", "pCi/L", 1390 * PCI, 1510 * PCI),
    )  # fmt: skip
    return Layout("pdf_activity_columns", "pdf", paper.done(), (Water("RA-3", "", "2026-05-12", items),))


def two_units() -> Layout:
    """Hardness and alkalinity twice in neighbouring columns (mg/L and grains per gallon), the others once."""
    paper = Paper()
    paper.text("Sample: TU-2     Date Collected: 2026-10-01")
    at = (48, 200, 270, 360, 430)
    paper.row(at, ("Analysis", "mg/L", "grains/gal", "Desired", "Rating"), bold=True)
    for cells in (
        ("Total Hardness", "291", "17.0", "< 120 mg/L", "Very hard"),
        ("Alkalinity", "240", "14.0", "", ""),
        ("Iron", "0.12", "", "< 0.3 mg/L", "OK"),
        ("Chloride", "33", "", "< 250 mg/L", "OK"),
    ):
        paper.row(at, cells)
    items = (
        it("total_hardness", "Total Hardness", "291", "mg/L", 291), it("total_hardness", "Total Hardness", "17.0", "grains/gal", 17 * 17.118),
        it("total_alkalinity", "Alkalinity", "240", "mg/L", 240), it("total_alkalinity", "Alkalinity", "14.0", "grains/gal", 14 * 17.118),
        it("iron", "Iron", "0.12", "mg/L", 0.12), it("chloride", "Chloride", "33", "mg/L", 33),
    )  # fmt: skip
    return Layout("pdf_two_units", "pdf", paper.done(), (Water("TU-2", "", "2026-10-01", items),))


def totals() -> Layout:
    """Sums among the results (trihalomethanes, haloacetic acids), calculated rows, group fraction in brackets, `Less than` in words."""
    paper = Paper()
    paper.text("Sample ID: TT-5   Date Collected: 22-Feb-2026")
    at = (48, 240, 330, 400)
    paper.row(at, ("Compound", "Reported value", "Units", "Quant. limit"), bold=True)
    paper.text("Disinfection by-products", bold=True)
    rows = (("Chloroform", "21.0", "µg/L", "0.5"), ("Bromodichloromethane", "6.4", "µg/L", "0.5"), ("Dibromochloromethane", "1.1", "µg/L", "0.5"), ("Bromoform", "less than 0.5", "µg/L", "0.5"),
            ("Total Trihalomethanes", "28.5", "µg/L", "0.5"))  # fmt: skip
    for cells in rows:
        paper.row(at, cells)
    paper.text("Metals (dissolved)", bold=True)
    paper.row(at, ("Iron", "less than 0.02", "mg/L", "0.02"))
    paper.text("Metals (total)", bold=True)
    paper.row(at, ("Iron", "0.77", "mg/L", "0.02"))
    items = (
        it("chloroform", "Chloroform", "21.0", "µg/L", 0.021), it("bromodichloromethane", "Bromodichloromethane", "6.4", "µg/L", 0.0064), it("dibromochloromethane", "Dibromochloromethane", "1.1", "µg/L", 0.0011),
        it("bromoform", "Bromoform", "less than 0.5", "µg/L", 0, 0.0005), it("total_trihalomethanes", "Total Trihalomethanes", "28.5", "µg/L", 0.0285),
        it("iron", "Iron", "less than 0.02", "mg/L", 0, 0.02, "dissolved"), it("iron", "Iron", "0.77", "mg/L", 0.77, fraction="total"),
    )  # fmt: skip
    return Layout("pdf_totals", "pdf", paper.done(), (Water("TT-5", "", "2026-02-22", items),))


LAYOUTS = (
    codes_and_legend,
    sign_column,
    ions_three_units,
    pairs_across,
    group_headers,
    decimal_aligned,
    spanned_method,
    perfluorinated,
    volatiles,
    activity_columns,
    two_units,
    totals,
)
