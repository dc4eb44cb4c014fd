"""Layouts of text PDFs as laboratories of Canada, Britain, Ireland, Australia, New Zealand and the continent print them.

Every laboratory, household and number is invented; each meaning is typed by hand.
"""

from __future__ import annotations

from reportlab.lib import colors
from reportlab.lib.pagesizes import A4, landscape, letter
from reports_catalog import Layout, Water
from reports_draw import absent, fill, flowed, found, items_of, less, space, table, words
from reports_pdf import Paper
from reports_written import N_OF_NH4, N_OF_NO2, N_OF_NO3, NAN, U


def sample_in_table() -> Layout:
    """Canadian: the sample's line stands within the table, then groups; a guideline column before the RL; two samples."""
    paper = Paper(letter, points=8, lead=11)
    paper.text("TEST RESULTS", bold=True, size=12)
    paper.row((48, 330), ("REPORTED TO  Example Household", "WORK ORDER  26F0441"))
    paper.row((48, 330), ("PROJECT  Well water", "REPORTED  2026-06-19 14:12"))
    at = (40, 210, 270, 350, 410, 460, 540)
    paper.row(at, ("Analyte", "Result", "Guideline", "RL", "Units", "Analyzed", "Qualifier"), bold=True)
    waters = []
    for title, id, day, groups in (
        ("Kitchen tap (26F0441-01) | Matrix: Water | Sampled: 2026-06-02 09:15", "26F0441-01", "2026-06-02", (
            ("Anions", (
                (("Chloride", "12.1", "AO ≤ 250", "0.10", "mg/L", "2026-06-04", ""), found("chloride", 12.1)),
                (("Nitrate (as N)", "1.66", "MAC = 10", "0.010", "mg/L", "2026-06-04", "HT1"), found("nitrate", 1.66)),
            )),
            ("Calculated Parameters", (
                (("Hardness, Total (as CaCO3)", "142", "N/A", "0.500", "mg/L", "N/A", ""), found("total_hardness", 142)),
            )),
            ("Total Metals", (
                (("Arsenic, total", "0.00612", "MAC = 0.01", "0.00050", "mg/L", "2026-06-09", ""), found("arsenic", 0.00612, fraction="total")),
                (("Manganese, total", "0.131", "MAC = 0.12", "0.00020", "mg/L", "2026-06-09", ""), found("manganese", 0.131, fraction="total")),
                (("Uranium, total", "< 0.000020", "MAC = 0.02", "0.000020", "mg/L", "2026-06-09", ""), less("uranium", 0.00002, "total")),
            )),
            ("Microbiological Parameters", (
                (("Coliforms, Total", "< 1", "MAC = 0", "1", "CFU/100 mL", "2026-06-03", ""), absent("total_coliform")),
                (("E. coli", "< 1", "MAC = 0", "1", "CFU/100 mL", "2026-06-03", ""), absent("e_coli")),
            )),
        )),
        ("Well head (26F0441-02) | Matrix: Water | Sampled: 2026-06-02 09:40", "26F0441-02", "2026-06-02", (
            ("Anions", (
                (("Chloride", "12.4", "AO ≤ 250", "0.10", "mg/L", "2026-06-04", ""), found("chloride", 12.4)),
                (("Nitrate (as N)", "< 0.010", "MAC = 10", "0.010", "mg/L", "2026-06-04", "HT1"), less("nitrate", 0.01)),
            )),
        )),
    ):  # fmt: skip
        paper.y -= 3
        paper.text(title, x=40, bold=True)
        items = ()
        for group, lines in groups:
            paper.text(group, x=40, bold=True)
            items += fill(paper, at, lines)
        waters.append(Water(id, title.split(" (")[0], day, items))
    paper.y -= 6
    paper.text("HT1  The sample was prepared and/or analyzed past the recommended holding time.", size=7)
    return Layout("pdf_sample_in_table", "pdf", paper.done(), tuple(waters))


def bilingual() -> Layout:
    """Canadian, in both languages: every header word twice, units in French order, decimal points."""
    head = (
        "Paramètre<br/>Parameter", "Résultat<br/>Result", "Unité<br/>Unit", "LDR<br/>RDL", "CMA<br/>MAC", "Méthode<br/>Method",
    )  # fmt: skip
    lines = (
        (("Nitrates / Nitrate (N)", "0.84", "mg/L", "0.05", "10", "M-331"), found("nitrate", 0.84)),
        (("Plomb / Lead", "&lt;0.0005", "mg/L", "0.0005", "0.005", "M-200"), less("lead", 0.0005)),
        (("Fer / Iron", "0.42", "mg/L", "0.03", "0.3", "M-200"), found("iron", 0.42)),
        (("Dureté totale / Total hardness (CaCO3)", "96", "mg/L", "1", "", "Calc."), found("total_hardness", 96)),
        (("Coliformes totaux / Total coliforms", "0", "UFC/100 mL", "1", "0", "MF-02"), absent("total_coliform")),
    )
    story = [
        words("Certificat d'analyse / Certificate of Analysis", 13, bold=True), space(),
        words("No. d'échantillon / Sample No.: LV-0088"), words("Date de prélèvement / Date sampled: 2026-08-11"), space(),
        table([head, *(cells for cells, *_ in lines)], (150, 60, 90, 60, 60, 70), ("GRID", (0, 0), (-1, -1), 0.4, colors.grey)),
    ]  # fmt: skip
    return Layout("pdf_bilingual", "pdf", flowed(story), (Water("LV-0088", "", "2026-08-11", items_of(lines)),))


def accredited_letters() -> Layout:
    """British: a column of accreditation letters (U is accredited, N is not), prescribed values, `No abnormal change`."""
    paper = Paper(A4, points=9, lead=13)
    paper.text("CERTIFICATE OF ANALYSIS - PRIVATE WATER SUPPLY", bold=True, size=12)
    paper.row((48, 150, 330, 430), ("Laboratory Ref:", "PWS/26/00871", "Date Sampled:", "14/01/2026"))
    paper.row((48, 150, 330, 430), ("Sample Point:", "Kitchen tap", "Date Received:", "15/01/2026"))
    paper.y -= 6
    at = (48, 215, 250, 310, 390, 450)
    paper.row(at, ("Determinand", "Accr.", "Result", "Units", "PCV", "Method"), bold=True)
    lines = (
        (("Coliform bacteria", "U", "0", "No./100ml", "0", "M-12"), absent("total_coliform")),
        (("E. coli", "U", "0", "No./100ml", "0", "M-12"), absent("e_coli")),
        (("Colony count 22°C", "U", "14", "No./ml", "NAC", "M-14"), found("colony_count_22", 14)),
        (("Hydrogen ion (pH)", "U", "7.9", "pH value", "6.5 - 9.5", "W-01"), found("ph", 7.9)),
        (("Nitrate (as NO3)", "U", "18.3", "mg/l", "50", "W-07"), found("nitrate", 18.3 * N_OF_NO3)),
        (("Nitrite (as NO2)", "U", "<0.015", "mg/l", "0.5", "W-07"), less("nitrite", 0.015 * N_OF_NO2)),
        (("Ammonium (as NH4)", "U", "0.06", "mg/l", "0.5", "W-08"), found("ammonia", 0.06 * N_OF_NH4)),
        (("Iron", "U", "236", "µg/l", "200", "M-30"), found("iron", 0.236)),
        (("Manganese", "U", "<1.0", "µg/l", "50", "M-30"), less("manganese", 0.001)),
        (("Radon", "N", "48", "Bq/l", "100", "R-02"), found("radon_222", 48)),
        (("Turbidity", "U", "0.31", "NTU", "4", "W-11"), found("turbidity", 0.31)),
    )
    items = fill(paper, at, lines)
    paper.y -= 6
    paper.text("U = UKAS accredited test    N = test not accredited    NAC = no abnormal change", size=7)
    paper.text("PCV = prescribed concentration or value. Page 1 of 1. Tel. 01632 960123", size=7)
    return Layout("pdf_accredited_letters", "pdf", paper.done(), (Water("PWS/26/00871", "", "2026-01-14", items),))


def irish() -> Layout:
    """Irish: parametric value before the result, `None detected`, `>` counts, an `A` mark of accreditation beside the method."""
    paper = Paper(A4, points=9, lead=14)
    paper.text("Glenfern Water Laboratory - Test Report TR-26-3391 Rev 0", bold=True)
    paper.text(
        "Customer sample reference: Borehole, Invented Farm      Sampled: 19/03/2026      Received: 19/03/2026 16:05"
    )
    at = (48, 190, 280, 340, 420, 500)
    paper.row(at, ("Test", "Parametric Value", "Units", "Result", "Method", "INAB"), bold=True)
    lines = (
        (("Escherichia coli", "0", "cfu/100ml", "None detected", "CL-01", "A"), absent("e_coli")),
        (("Total Coliforms", "0", "cfu/100ml", ">100", "CL-01", "A"), found("total_coliform", 100, float("inf"))),
        (("Enterococci", "0", "cfu/100ml", "2", "CL-03", "A"), found("enterococci", 2)),
        (("Ammonium", "0.30", "mg/l NH4", "0.09", "CL-11", "A"), found("ammonia", 0.09 * N_OF_NH4)),
        (("Nitrate", "50", "mg/l NO3", "41.9", "CL-12", "A"), found("nitrate", 41.9 * N_OF_NO3)),
        (("Colour", "-", "mg/l Pt Co", "8", "CL-20", "A"), found("apparent_color", 8)),
        (("Iron", "200", "µg/l", "88", "CL-30", "A"), found("iron", 0.088)),
        (("Total Hardness", "-", "mg/l CaCO3", "301", "CL-31", ""), found("total_hardness", 301)),
    )
    items = fill(paper, at, lines)
    paper.text("A = accredited by the national body. Results apply to the sample as received.", size=7)
    return Layout("pdf_irish", "pdf", paper.done(), (Water("Borehole, Invented Farm", "", "2026-03-19", items),))


def sub_matrix() -> Layout:
    """Australian: a column a sample under two head rows, CAS numbers, LOR, `----`, methods as group lines, dissolved and total."""
    paper = Paper(landscape(A4), points=8, lead=11)
    paper.text("Analytical Results", bold=True, size=13)
    paper.text("Page : 3 of 6     Work Order : EB2611842     Client : EXAMPLE FAMILY     Project : Bore water")
    paper.text("Sub-Matrix: WATER (Matrix: WATER)")
    at = (40, 210, 290, 340, 400, 520, 640)
    paper.row(at, ("", "", "", "Sample ID", "House bore", "Stock bore", "Rain tank"), bold=True)
    paper.row(at, ("", "", "Sampling date / time", "", "04-Feb-2026 07:30", "04-Feb-2026 08:10", "04-Feb-2026 08:25"))
    paper.row(
        at, ("Compound", "CAS Number", "LOR", "Unit", "EB2611842-001", "EB2611842-002", "EB2611842-003"), bold=True
    )
    paper.row(at, ("", "", "", "", "Result", "Result", "Result"), bold=True)
    waters: dict[int, list] = {0: [], 1: [], 2: []}
    groups = (
        ("EA005P: pH by PC Titrator", ((("pH Value", "----", "0.01", "pH Unit", "7.61", "7.88", "6.02"), "ph", (7.61, 7.88, 6.02), None),)),
        ("EA015: Total Dissolved Solids dried at 180 ± 5 °C", (
            (("Total Dissolved Solids @180°C", "----", "10", "mg/L", "1120", "1880", "----"), "total_dissolved_solids", (1120, 1880, None), None),)),
        ("ED045G: Chloride by Discrete Analyser", ((("Chloride", "16887-00-6", "1", "mg/L", "402", "711", "3"), "chloride", (402, 711, 3), None),)),
        ("EG020F: Dissolved Metals by ICP-MS", (
            (("Arsenic", "7440-38-2", "0.001", "mg/L", "<0.001", "0.002", "<0.001"), "arsenic", ((0, 0.001), 0.002, (0, 0.001)), "dissolved"),
            (("Lead", "7439-92-1", "0.001", "mg/L", "<0.001", "<0.001", "0.014"), "lead", ((0, 0.001), (0, 0.001), 0.014), "dissolved"),)),
        ("EG020T: Total Metals by ICP-MS", ((("Iron", "7439-89-6", "0.05", "mg/L", "0.77", "2.90", "<0.05"), "iron", (0.77, 2.9, (0, 0.05)), "total"),)),
        ("EK059G: Nitrite plus Nitrate as N (NOx) by Discrete Analyser", (
            (("Nitrite + Nitrate as N", "----", "0.01", "mg/L", "0.42", "3.10", "0.05"), "nitrate_plus_nitrite", (0.42, 3.1, 0.05), None),)),
    )  # fmt: skip
    for title, lines in groups:
        paper.text(title, x=40, bold=True)
        for cells, key, values, fraction in lines:
            paper.row(at, cells)
            for place, value in enumerate(values):
                if value is not None:
                    low, high = value if isinstance(value, tuple) else (value, value)
                    waters[place].append(((cells[0],), found(key, low, high, fraction)))
    made = tuple(
        Water(f"EB2611842-00{n + 1}", site, "2026-02-04", items_of(waters[n]))
        for n, site in enumerate(("House bore", "Stock bore", "Rain tank"))
    )
    return Layout("pdf_sub_matrix", "pdf", paper.done(), made, extra_ok=frozenset({"total_dissolved_solids"}))


def individual_tests() -> Layout:
    """New Zealand: sample names over columns, units behind the names, g/m3, MAV columns, a summary of methods behind it."""
    paper = Paper(A4, points=8, lead=12)
    paper.text("Certificate of Analysis", bold=True, size=13)
    paper.row((48, 120, 330, 420), ("Client:", "Example Household", "Lab No:", "3391042"))
    paper.row((48, 120, 330, 420), ("Contact:", "P. Example", "Date Received:", "22-May-2026"))
    paper.y -= 6
    paper.text("Sample Type: Aqueous", bold=True)
    at = (48, 190, 290, 380, 480)
    paper.row((48, 290, 380, 480), ("Sample Name:", "House bore", "Guideline", "Maximum"), bold=True)
    paper.row((48, 290, 380, 480), ("", "21-May-2026 9:15 am", "Value", "Acceptable"), bold=True)
    paper.row((48, 290, 480), ("Lab Number:", "3391042.1", "Values (MAV)"), bold=True)
    paper.text("Individual Tests", x=48, bold=True)
    lines = [
        (("Turbidity", "NTU", "0.53", "< 2.5", "-"), found("turbidity", 0.53)),
        (("pH", "pH Units", "6.4", "7.0 - 8.5", "-"), found("ph", 6.4)),
        (("Total Hardness", "g/m3 as CaCO3", "38", "< 200", "-"), found("total_hardness", 38)),
        (("Electrical Conductivity (EC)", "mS/m", "17.2", "-", "-"), found("specific_conductance", 172)),
        (("Total Arsenic", "g/m3", "< 0.0011", "-", "0.01"), less("arsenic", 0.0011, "total")),
        (("Total Boron", "g/m3", "0.035", "-", "2.4"), found("boron", 0.035, fraction="total")),
        (("Total Iron", "g/m3", "0.68", "< 0.2", "-"), found("iron", 0.68, fraction="total")),
        (("Nitrate-N", "g/m3", "5.6", "-", "11.3"), found("nitrate", 5.6)),
    ]  # fmt: skip
    items = fill(paper, at, lines)
    paper.text("Escherichia coli and Total Coliforms", x=48, bold=True)
    more = (
        (("Total Coliforms", "MPN / 100mL", "12", "-", "-"), found("total_coliform", 12)),
        (("Escherichia coli", "MPN / 100mL", "< 1", "-", "< 1"), absent("e_coli")),
    )
    items += fill(paper, at, more)
    paper.new()
    paper.text("Summary of Methods", bold=True, size=12)
    at = (48, 190, 400, 510)
    paper.row(at, ("Test", "Method Description", "Default Detection Limit", "Sample No"), bold=True)
    for cells in (
        ("Turbidity", "Analysis by turbidity meter. APHA 2130 B", "0.05 NTU", "1"), ("pH", "pH meter. APHA 4500-H+ B", "0.1 pH Units", "1"),
        ("Total Arsenic", "Nitric acid digestion, ICP-MS", "0.0011 g/m3", "1"), ("Total Iron", "Nitric acid digestion, ICP-MS", "0.021 g/m3", "1"),
    ):  # fmt: skip
        paper.row(at, cells)
    return Layout("pdf_individual_tests", "pdf", paper.done(), (Water("3391042.1", "House bore", "2026-05-21", items),))


def cofrac() -> Layout:
    """French: ruled platypus table, sections, limits and references of quality, `<`, `Absence`, uncertainty, bacteria counts."""
    head = (
        "Paramètres analytiques",
        "",
        "Résultats",
        "Unités",
        "Incertitude",
        "Limites de qualité",
        "Références de qualité",
        "Méthodes",
    )
    lines = (
        (("Température de l'eau", "*", "12,4", "°C", "", "", "25", "NF EN ISO 10523"), found("temperature", 12.4)),
        (("pH", "*", "7,35", "unités pH", "±0,1", "", "6,5 à 9", "NF EN ISO 10523"), found("ph", 7.35)),
        (
            ("Conductivité à 25°C", "*", "612", "µS/cm", "±3%", "", "200 à 1100", "NF EN 27888"),
            found("specific_conductance", 612),
        ),
        (("Titre hydrotimétrique", "", "28,4", "°f", "", "", "", "NF T 90-003"), found("total_hardness", 284)),
        (
            ("Titre alcalimétrique complet", "", "22,1", "°f", "", "", "", "NF EN ISO 9963-1"),
            found("total_alkalinity", 221),
        ),
        (
            ("Nitrates (en NO3)", "*", "36,2", "mg/L", "±8%", "50", "", "NF EN ISO 13395"),
            found("nitrate", 36.2 * N_OF_NO3),
        ),
        (
            ("Nitrites (en NO2)", "*", "&lt;0,02", "mg/L", "", "0,5", "", "NF EN ISO 13395"),
            less("nitrite", 0.02 * N_OF_NO2),
        ),
        (
            ("Ammonium (en NH4)", "*", "&lt;0,05", "mg/L", "", "", "0,1", "NF T 90-015-2"),
            less("ammonia", 0.05 * N_OF_NH4),
        ),
        (
            ("Fer total", "*", "141", "µg/L", "±12%", "", "200", "NF EN ISO 17294-2"),
            found("iron", 0.141, fraction="total"),
        ),
        (("Escherichia coli", "*", "Absence", "/100 mL", "", "0", "", "NF EN ISO 9308-1"), absent("e_coli")),
        (
            ("Entérocoques intestinaux", "*", "3", "UFC/100 mL", "", "0", "", "NF EN ISO 7899-2"),
            found("enterococci", 3),
        ),
    )
    story = [
        words("Rapport d'analyse n° 26-ROS-7719", 13, bold=True), space(4),
        words("Prélèvement effectué le : 24/02/2026 à 10h20 &nbsp;&nbsp; Réception le : 24/02/2026"),
        words("Échantillon : PUITS-MARTELET &nbsp;&nbsp; Nature de l'eau : eau de puits privé"), space(),
        table([head, *(cells for cells, *_ in lines)], (105, 14, 52, 58, 56, 60, 62, 110), ("LINEBELOW", (0, 0), (-1, -1), 0.3, colors.black),
              ("BACKGROUND", (0, 0), (-1, 0), colors.lightgrey), size=7),
        space(), words("* : paramètre couvert par l'accréditation. N.M. : non mesuré.", 7),
    ]  # fmt: skip
    return Layout("pdf_cofrac", "pdf", flowed(story), (Water("PUITS-MARTELET", "", "2026-02-24", items_of(lines)),))


def brunnen() -> Layout:
    """German: groups by the ordinance's annexes, `Messwert`, `Grenzwert`, mmol/l and °dH, `u.d.B.`, KBE counts, remarks."""
    paper = Paper(A4, points=9, lead=13)
    paper.text("Prüfbericht 26-08814", bold=True, size=13)
    paper.row(
        (48, 160, 330, 430), ("Probenbezeichnung:", "Hausbrunnen Erlengrund", "Probenahme am:", "17.06.2026 08:45")
    )
    paper.row((48, 160, 330, 430), ("Labornummer:", "26-08814-001", "Probeneingang:", "17.06.2026"))
    paper.y -= 6
    at = (48, 200, 270, 350, 430)
    paper.row(at, ("Untersuchungsparameter", "Messwert", "Einheit", "Grenzwert", "Verfahren"), bold=True)
    paper.text("Mikrobiologische Parameter", bold=True)
    one = (
        (("Koloniezahl bei 22 °C", "23", "KBE/ml", "100", "TrinkwV § 43"), found("colony_count_22", 23)),
        (("Coliforme Bakterien", "0", "KBE/100 ml", "0", "ISO 9308-1"), absent("total_coliform")),
        (("Escherichia coli", "0", "KBE/100 ml", "0", "ISO 9308-1"), absent("e_coli")),
    )
    items = fill(paper, at, one)
    paper.text("Chemische Parameter", bold=True)
    two = (
        (("Nitrat", "62,4", "mg/l", "50", "ISO 10304-1"), found("nitrate", 62.4 * N_OF_NO3)),
        (("Nitrit", "< 0,02", "mg/l", "0,50", "EN 26777"), less("nitrite", 0.02 * N_OF_NO2)),
        (("Blei", "< 0,001", "mg/l", "0,010", "ISO 17294-2"), less("lead", 0.001)),
        (("Uran", "0,0041", "mg/l", "0,010", "ISO 17294-2"), found("uranium", 0.0041)),
    )
    items += fill(paper, at, two)
    paper.text("Indikatorparameter", bold=True)
    three = (
        (("Eisen, gesamt", "0,318", "mg/l", "0,200", "ISO 11885"), found("iron", 0.318, fraction="total")),
        (("Mangan", "u.d.B.", "mg/l", "0,050", "ISO 11885"), less("manganese", NAN)),
        (("pH-Wert", "7,12", "", "6,5 - 9,5", "ISO 10523"), found("ph", 7.12)),
        (("Gesamthärte", "19,6", "°dH", "", "Berechnung"), found("total_hardness", 19.6 * 17.848)),
        (("Calcium", "112", "mg/l", "", "ISO 11885"), found("calcium", 112)),
    )
    items += fill(paper, at, three)
    paper.text("u.d.B. = unter der Bestimmungsgrenze", size=7)
    return Layout(
        "pdf_brunnen", "pdf", paper.done(), (Water("26-08814-001", "Hausbrunnen Erlengrund", "2026-06-17", items),)
    )


def uncertainty_es() -> Layout:
    """Spanish: result with its uncertainty in a column, parametric value, `< LC`, sections, counts `<1`."""
    paper = Paper(A4, points=9, lead=13)
    paper.text("INFORME DE ENSAYO Nº 26/1187", bold=True, size=12)
    paper.row((48, 160, 330, 440), ("Referencia muestra:", "POZO-LAS-ERAS", "Fecha de toma:", "05/05/2026"))
    paper.row((48, 160, 330, 440), ("Tipo de muestra:", "Agua de pozo", "Fecha recepción:", "05/05/2026"))
    at = (48, 195, 255, 320, 400, 470)
    paper.row(at, ("Parámetro", "Resultado", "Incertidumbre", "Unidades", "Valor param.", "Método"), bold=True)
    lines = (
        (("Arsénico", "8,4", "± 1,1", "µg/L", "10", "PE-201"), found("arsenic", 8.4 * U)),
        (("Nitratos", "71", "± 6", "mg/L", "50", "PE-110"), found("nitrate", 71 * N_OF_NO3)),
        (("Cloruros", "118", "± 9", "mg/L", "250", "PE-110"), found("chloride", 118)),
        (("Plomo", "<2", "", "µg/L", "10", "PE-201"), less("lead", 2 * U)),
        (("Escherichia coli", "<1", "", "UFC/100 mL", "0", "PE-301"), absent("e_coli")),
        (("Turbidez", "0,45", "± 0,08", "UNF", "4", "PE-005"), found("turbidity", 0.45)),
    )
    items = fill(paper, at, lines)
    return Layout("pdf_uncertainty_es", "pdf", paper.done(), (Water("POZO-LAS-ERAS", "", "2026-05-05", items),))


def wide_rows() -> Layout:
    """Samples in rows on a landscape page, analytes across with symbols, the unit in the row beneath, limits in the last row."""
    paper = Paper(landscape(A4), points=8, lead=13)
    paper.text("Groundwater monitoring, domestic bores - laboratory report 7719", bold=True)
    at = (40, 120, 190, 250, 310, 370, 430, 490, 550, 610, 680)
    paper.row(at, ("Sample", "Date", "pH", "EC", "Na", "Ca", "Mg", "Cl", "SO4", "NO3-N", "Fe"), bold=True)
    paper.row(at, ("", "sampled", "", "µS/cm", "mg/L", "mg/L", "mg/L", "mg/L", "mg/L", "mg/L", "mg/L"))
    rows = (
        ("Bore 1", "02/03/2026", "7.1", "940", "88", "61", "30", "140", "52", "6.3", "<0.05"),
        ("Bore 2", "15/03/2026", "6.8", "410", "35", "22", "14", "61", "18", "<0.1", "1.9"),
        ("Bore 3", "16/03/2026", "7.4", "1630", "190", "98", "55", "310", "120", "11.8", "<0.05"),
    )
    for cells in rows:
        paper.row(at, cells)
    paper.row(at, ("Guideline", "", "6.5-8.5", "", "180", "", "", "250", "250", "11.3", "0.3"))
    keys = ("ph", "specific_conductance", "sodium", "calcium", "magnesium", "chloride", "sulfate", "nitrate", "iron")
    names = ("pH", "EC", "Na", "Ca", "Mg", "Cl", "SO4", "NO3-N", "Fe")
    waters = []
    for cells in rows:
        truths = [
            ((name,), less(key, float(text[1:])) if text[0] == "<" else found(key, float(text)))
            for name, key, text in zip(names, keys, cells[2:], strict=True)
        ]
        day, month, year = cells[1].split("/")
        waters.append(Water(cells[0], "", f"{year}-{month}-{day}", items_of(truths)))
    return Layout("pdf_wide_rows", "pdf", paper.done(), tuple(waters))


def shires() -> Layout:
    """British, many short pages: each a sample with the same furniture, the table's header only on the first of a sample."""
    paper = Paper((420, 300), points=8, lead=12)
    waters = []
    number = 0
    for id, site, day, lines in (
        ("L-501", "Pump house", "2026-07-01", (
            (("Sodium", "22", "mg/l", "200"), found("sodium", 22)), (("Potassium", "3.1", "mg/l", ""), found("potassium", 3.1)),
            (("Sulphate", "<5", "mg/l", "250"), less("sulfate", 5)), (("Boron", "0.04", "mg/l", "1.0"), found("boron", 0.04)),
            (("Copper", "0.61", "mg/l", "2.0"), found("copper", 0.61)), (("Zinc", "0.11", "mg/l", ""), found("zinc", 0.11)),
        )),
        ("L-502", "Dairy", "2026-07-02", (
            (("Sodium", "23", "mg/l", "200"), found("sodium", 23)), (("Potassium", "3.0", "mg/l", ""), found("potassium", 3.0)),
            (("Sulphate", "6", "mg/l", "250"), found("sulfate", 6)), (("Boron", "<0.02", "mg/l", "1.0"), less("boron", 0.02)),
            (("Copper", "0.09", "mg/l", "2.0"), found("copper", 0.09)), (("Zinc", "<0.01", "mg/l", ""), less("zinc", 0.01)),
        )),
    ):  # fmt: skip
        at = (48, 190, 250, 310)
        for part, chunk in enumerate((lines[:3], lines[3:])):
            number += 1
            if number > 1:
                paper.new()
            paper.y = 270
            paper.row((48, 250), ("Shire Scientific Services", f"Report 88-26   Page {number} of 4"), size=7)
            if part == 0:
                paper.text(f"Sample ref: {id}    Location: {site}    Sampled: {day}")
                paper.row(at, ("Test", "Result", "Units", "Max."), bold=True)
            fill(paper, at, chunk)
            paper.y = 30
            paper.text("This report shall not be reproduced except in full. Unit 4, Mill Lane.", size=6)
        waters.append(Water(id, site, day, items_of(lines)))
    return Layout("pdf_shires", "pdf", paper.done(), tuple(waters))


def limits_first() -> Layout:
    """German letterhead of an authority: number, limit, unit, then result at the far right, right-aligned with signs apart."""
    paper = Paper(A4, points=9, lead=13)
    paper.text("Untersuchungsbefund Eigenwasserversorgung", bold=True)
    paper.row((48, 330), ("Entnahmestelle: Küche, Zapfhahn", "Entnahmedatum: 3. September 2026"))
    at = (48, 75, 260, 330, 440)
    paper.row(at, ("Nr.", "Parameter", "Grenzwert", "Einheit", "Ergebnis"), bold=True)
    lines = (
        (("1", "Arsen", "0,010", "mg/l", "0,0032"), found("arsenic", 0.0032)), (("2", "Nickel", "0,020", "mg/l", "<0,002"), less("nickel", 0.002)),
        (("3", "Fluorid", "1,5", "mg/l", "0,21"), found("fluoride", 0.21)), (("4", "Sulfat", "250", "mg/l", "1.140"), found("sulfate", 1140)),
        (("5", "Natrium", "200", "mg/l", "48,0"), found("sodium", 48)), (("6", "Ammonium", "0,50", "mg/l", "0,07"), found("ammonia", 0.07 * N_OF_NH4)),
        (("7", "Färbung (SAK 436 nm)", "0,5", "1/m", "0,1"), found("spectral_absorption_436", 0.1)),
        (("8", "TOC", "-", "mg/l", "1,9"), found("total_organic_carbon", 1.9)),
    )  # fmt: skip
    items = fill(paper, at, lines, name=1, right=(4,))
    return Layout("pdf_limits_first", "pdf", paper.done(), (Water("", "Küche, Zapfhahn", "2026-09-03", items),))


LAYOUTS = (
    sample_in_table, bilingual, accredited_letters, irish, sub_matrix, individual_tests, cofrac, brunnen, uncertainty_es, wide_rows, shires,
    limits_first,
)  # fmt: skip
