"""Further text PDFs: forms, cards, pages of batches and registers. All invented; each meaning is typed by hand."""

from __future__ import annotations

import random

from reportlab.lib.pagesizes import A4, landscape, letter
from reports_catalog import Layout, Water
from reports_pdf import Paper
from reports_written import N_OF_NO3, NAN, it


def county() -> Layout:
    """A health department's page: `Found`, limits with unit and word, Pass/Fail, a paragraph with numbers, telephones."""
    paper = Paper(letter, points=10, lead=15)
    paper.text("Fenholt County Environmental Health", bold=True, size=14)
    paper.text("1200 Mill Road, Suite 300 - Phone (555) 010-4400 - Fax (555) 010-4401", size=8)
    paper.row((48, 330), ("Sample Number: 26-00931", "Date Sampled: March 3, 2026 10:15 AM"))
    paper.row((48, 330), ("Owner: R. Invented", "Sample Point: kitchen tap"))
    paper.text(
        "Of the 6 tests made on your water, 2 did not meet the standard of 40 CFR 141. Water harder than 180 mg/L"
    )
    paper.text("is very hard; 1 grain per gallon equals 17.1 mg/L. Boil water for 1 minute if bacteria were found.")
    at = (48, 200, 300, 420, 500)
    paper.row(at, ("Test", "Found", "Allowed", "Standard", "Rating"), bold=True)
    for cells in (
        ("Nitrate Nitrogen", "12.4 mg/L", "10 mg/L (MCL)", "Primary", "FAIL"), ("Total Coliform Bacteria", "ABSENT", "Absent", "Primary", "PASS"),
        ("E. coli Bacteria", "ABSENT", "Absent", "Primary", "PASS"), ("Iron", "1.1 mg/L", "0.3 mg/L (SMCL)", "Secondary", "FAIL"),
        ("Hardness", "212 mg/L (12.4 gpg)", "none", "", "-"), ("Lead", "< 0.002 mg/L", "0.015 mg/L (AL)", "Primary", "PASS"),
    ):  # fmt: skip
        paper.row(at, cells)
    paper.y = 60
    paper.text("Questions? Call (555) 010-4400, 8:00 to 4:30.  Form EH-117 (rev. 2/24)   Page 1 of 1", size=8)
    items = (
        it("nitrate", "Nitrate Nitrogen", "12.4", "mg/L", 12.4), it("total_coliform", "Total Coliform Bacteria", "ABSENT", "", 0),
        it("e_coli", "E. coli Bacteria", "ABSENT", "", 0), it("iron", "Iron", "1.1", "mg/L", 1.1),
        it("total_hardness", "Hardness", "212", "mg/L", 212), it("lead", "Lead", "< 0.002", "mg/L", 0, 0.002),
    )  # fmt: skip
    return Layout("pdf_county", "pdf", paper.done(), (Water("26-00931", "", "2026-03-03", items),))


def turned_heads() -> Layout:
    """Samples across; their names are drawn upwards (turned by 90 degrees) over the columns."""
    paper = Paper(landscape(A4))
    names = ("North barn", "South pump", "Orchard tap")
    paper.text("Well survey 2026", bold=True)
    paper.y -= 60
    for x, name in zip((250, 310, 370), names, strict=True):
        paper.page.saveState()
        paper.page.translate(x + 10, paper.y)
        paper.page.rotate(90)
        paper.page.setFont("Helvetica-Bold", 9)
        paper.page.drawString(0, 0, name)
        paper.page.restoreState()
    at = (48, 180, 250, 310, 370)
    paper.row(at, ("Parameter", "Units", "", "", ""), bold=True)
    table = (("calcium", "Calcium", "mg/L", ("41", "88", "12")), ("sodium", "Sodium", "mg/L", ("9", "31", "140")),
             ("nitrate", "Nitrate-N", "mg/L", ("<0.1", "6.2", "11.9")), ("iron", "Iron", "mg/L", ("2.1", "<0.05", "0.4")))  # fmt: skip
    for _, name, unit, values in table:
        paper.row(at, (name, unit, *values))
    waters = []
    for index, site in enumerate(names):
        items = []
        for key, name, unit, values in table:
            text = values[index]
            low, high = (0, float(text[1:])) if text[0] == "<" else (float(text),) * 2
            items.append(it(key, name, text, unit, low, high))
        waters.append(Water(site, site, "", tuple(items)))
    return Layout("pdf_turned_heads", "pdf", paper.done(), tuple(waters))


def two_pages() -> Layout:
    """Germs on one page and chemistry on the next, with different headers; the unit is the header of the germs."""
    paper = Paper(letter)
    head = "Cold Spur Laboratory    Report 2026-144    Sample: CS-144    Collected: 2026-04-06"
    paper.text(head)
    paper.text("MICROBIOLOGY", bold=True)
    at = (48, 220, 330, 440)
    paper.row(at, ("Organism", "MPN/100 mL", "Interpretation", "Method"), bold=True)
    paper.row(at, ("Total coliforms", "23.1", "Unsatisfactory", "SM 9223 B"))
    paper.row(at, ("Escherichia coli", "<1.0", "Satisfactory", "SM 9223 B"))
    paper.new()
    paper.text(head)
    paper.text("CHEMISTRY", bold=True)
    at = (48, 220, 280, 330, 440)
    paper.row(at, ("Constituent", "mg/L", "RDL", "Guideline", "Method"), bold=True)
    for cells in (
        ("Chloride", "55.1", "0.5", "250", "EPA 300.0"),
        ("Sulfate", "<0.5", "0.5", "250", "EPA 300.0"),
        ("Sodium", "28.7", "0.1", "200", "EPA 200.7"),
    ):
        paper.row(at, cells)
    items = (
        it("total_coliform", "Total coliforms", "23.1", "MPN/100 mL", 23.1), it("e_coli", "Escherichia coli", "<1.0", "MPN/100 mL", 0),
        it("chloride", "Chloride", "55.1", "mg/L", 55.1), it("sulfate", "Sulfate", "<0.5", "mg/L", 0, 0.5), it("sodium", "Sodium", "28.7", "mg/L", 28.7),
    )  # fmt: skip
    return Layout("pdf_two_pages", "pdf", paper.done(), (Water("CS-144", "", "2026-04-06", items),))


def batches() -> Layout:
    """Two samples, then the batches: blank, control sample, spike and its duplicate with source result, recovery, RPD."""
    paper = Paper(landscape(letter), points=8, lead=11)
    paper.text("Fenholt Laboratory   Work Order: 26D0112   Reported: 04/22/26 16:02", bold=True)
    at = (40, 180, 240, 300, 350, 400, 470, 540, 620)
    header = ("Analyte", "Result", "Reporting Limit", "Units", "Dilution", "Batch", "Prepared", "Analyzed", "Method")
    at = (40, 160, 230, 310, 360, 410, 470, 540, 620)
    waters = []
    for number, (id, values) in enumerate(
        (("House tap", ("21.4", "ND", "5.1")), ("Barn hydrant", ("88.0", "0.14", "ND")))
    ):
        paper.y -= 6
        paper.text(
            f"{id}   (26D0112-0{number + 1})   Water   Sampled: 04/13/26 0{number + 8}:10   Received: 04/13/26 15:00",
            bold=True,
        )
        paper.row(at, header, bold=True)
        items = []
        for (key, name, rl, method), value in zip(
            (
                ("chloride", "Chloride", "1.00", "EPA 300.0"),
                ("fluoride", "Fluoride", "0.100", "EPA 300.0"),
                ("nitrate", "Nitrate as N", "0.100", "EPA 300.0"),
            ),
            values,
            strict=True,
        ):
            paper.row(at, (name, value, rl, "mg/L", "1", "B6D0203", "04/14/26", "04/14/26 18:31", method))
            items.append(it(key, name, value, "mg/L", *((0, float(rl)) if value == "ND" else (float(value),))))
        waters.append(Water(id, id, "2026-04-13", tuple(items)))
    paper.y -= 10
    paper.text("Quality Control - Anions by Ion Chromatography", bold=True, size=10)
    paper.row((40, 160, 215, 275, 320, 375, 430, 480, 545, 590, 640),
              ("Analyte", "Result", "Reporting Limit", "Units", "Spike Level", "Source Result", "%REC", "%REC Limits", "RPD", "RPD Limit", "Notes"), bold=True, size=7)  # fmt: skip
    paper.text("Batch B6D0203 - General Preparation", bold=True)
    qc = (40, 160, 215, 275, 320, 375, 430, 480, 545, 590, 640)
    count = 0
    for title, rows in (
        ("Blank (B6D0203-BLK1)", (("Chloride", "ND", "1.00", "mg/L", "", "", "", "", "", "", ""), ("Fluoride", "ND", "0.100", "mg/L", "", "", "", "", "", "", ""))),
        ("LCS (B6D0203-BS1)", (("Chloride", "19.8", "1.00", "mg/L", "20.0", "", "99", "90-110", "", "", ""), ("Fluoride", "2.03", "0.100", "mg/L", "2.00", "", "101", "90-110", "", "", ""))),
        ("Duplicate (B6D0203-DUP1)   Source: 26D0112-01", (("Chloride", "21.6", "1.00", "mg/L", "", "21.4", "", "", "0.9", "20", ""), ("Fluoride", "ND", "0.100", "mg/L", "", "ND", "", "", "", "20", ""))),
        ("Matrix Spike (B6D0203-MS1)   Source: 26D0112-01", (("Chloride", "41.9", "1.00", "mg/L", "20.0", "21.4", "102", "80-120", "", "", ""), ("Fluoride", "1.94", "0.100", "mg/L", "2.00", "ND", "97", "80-120", "", "", "QM-07"))),
    ):  # fmt: skip
        paper.text(f"{title}   Prepared & Analyzed: 04/14/26", bold=True)
        for cells in rows:
            paper.row(qc, cells)
            count += 1
    return Layout("pdf_batches", "pdf", paper.done(), tuple(waters), quality_control=count)


def jittered() -> Layout:
    """A page as from a scan with its text: every word a little off its line and its column."""
    rng = random.Random(5)
    paper = Paper(lead=14)

    def row(at, cells):
        for x, text in zip(at, cells, strict=True):
            end = 0.0
            for word in text.split():
                paper.page.setFont("Helvetica", 9 + rng.uniform(-0.3, 0.3))
                paper.page.drawString(x + end + rng.uniform(-1, 1), paper.y + rng.uniform(-1.3, 1.3), word)
                end += paper.page.stringWidth(word + " ", "Helvetica", 9.3)
        paper.y -= paper.lead

    row((48, 300), ("Sample ID: SC-20", "Date Collected: 01/08/2026"))
    at = (48, 220, 290, 360, 430)
    row(at, ("Analyte", "Result", "Units", "RL", "Method"))
    table = (("calcium", "Calcium", "61.2", "mg/L", 61.2, None), ("total_dissolved_solids", "Total Dissolved Solids", "355", "mg/L", 355, None), ("iron", "Iron", "<0.05", "mg/L", 0, 0.05),
             ("nitrate", "Nitrate as N", "8.71", "mg/L", 8.71, None), ("arsenic", "Arsenic", "3.4", "ug/L", 0.0034, None), ("ph", "pH", "7.55", "SU", 7.55, None),
             ("sulfate", "Sulfate", "47.0", "mg/L", 47, None))  # fmt: skip
    for _, name, value, unit, *_rest in table:
        row(at, (name, value, unit, "0.05", "EPA 200.7"))
    items = tuple(it(key, name, value, unit, low, high) for key, name, value, unit, low, high in table)
    return Layout("pdf_jittered", "pdf", paper.done(), (Water("SC-20", "", "2026-01-08", items),))


def narrow() -> Layout:
    """Columns three points apart, numbers right-aligned against left-aligned units, six-point type."""
    paper = Paper(points=6, lead=8)
    paper.text("Sample ID: NW-1")
    right = (150, 178, 210, 240)
    rows = (("Dissolved Oxygen", "6.4", "mg/L", "0.1", "4500-O"), ("Total Phosphorus as P", "0.021", "mg/L", "0.005", "365.1"), ("Bromide", "<0.100", "mg/L", "0.100", "300.0"),
            ("Strontium", "1.240", "mg/L", "0.001", "200.8"), ("Lithium", "8.1", "ug/L", "1.0", "200.8"), ("Molybdenum", "<1.0", "ug/L", "1.0", "200.8"))  # fmt: skip
    for cells in (("Parameter", "Result", "Units", "MRL", "Method"), *rows):
        paper.page.setFont("Helvetica", 6)
        paper.page.drawString(48, paper.y, cells[0])
        paper.page.drawRightString(right[0], paper.y, cells[1])
        paper.page.drawString(right[0] + 3, paper.y, cells[2])
        paper.page.drawRightString(right[1] + 12, paper.y, cells[3])
        paper.page.drawString(right[1] + 15, paper.y, cells[4])
        paper.y -= paper.lead
    items = (
        it("dissolved_oxygen", "Dissolved Oxygen", "6.4", "mg/L", 6.4), it("phosphorus", "Total Phosphorus as P", "0.021", "mg/L", 0.021, fraction="total"), it("bromide", "Bromide", "<0.100", "mg/L", 0, 0.1),
        it("strontium", "Strontium", "1.240", "mg/L", 1.24), it("lithium", "Lithium", "8.1", "ug/L", 0.0081), it("molybdenum", "Molybdenum", "<1.0", "ug/L", 0, 0.001),
    )  # fmt: skip
    return Layout("pdf_narrow", "pdf", paper.done(), (Water("NW-1", "", "", items),))


def french_form() -> Layout:
    """French: method and COFRAC mark before the result, thousands blanks, `<` with blank, two limit columns, pesticides."""
    paper = Paper(points=8)
    paper.text("Laboratoire départemental des Aulnes", bold=True, size=12)
    paper.text("Référence échantillon : LA26-00871      Prélevé le : 14/04/2026 à 09h20      Reçu le : 14/04/2026")
    paper.text("Nature de l'eau : eau souterraine brute      Point : robinet cuisine, puits privé")
    at = (40, 200, 300, 370, 430, 500)
    paper.row(at, ("Analyses", "Méthode", "Résultats", "Unités", "Limite qualité", "Réf. qualité"), bold=True)
    rows = (
        ("Analyses microbiologiques", "", "", "", "", ""),
        ("Escherichia coli", "NF EN ISO 9308-3", "< 15", "NPP/100 mL", "20 000", ""), ("Entérocoques intestinaux", "NF EN ISO 7899-1", "46", "NPP/100 mL", "10 000", ""),
        ("Analyses physicochimiques", "", "", "", "", ""),
        ("Conductivité à 25 °C", "NF EN 27888", "1 120", "µS/cm", "", "200-1100"), ("Carbone organique total", "NF EN 1484", "0,9", "mg C/L", "10", ""),
        ("Chlorures", "NF EN ISO 10304-1", "71,0", "mg/L", "200", ""), ("Nitrates", "NF EN ISO 10304-1", "56", "mg NO3/L", "100", ""),
        ("Phosphore total", "NF EN ISO 6878", "< 0,05", "mg P2O5/L", "", ""), ("Hydrogénocarbonates", "Calcul", "341", "mg/L", "", ""),
        ("Atrazine déséthyl", "Méthode interne", "0,062", "µg/L", "2", ""), ("Arsenic", "NF EN ISO 17294-2", "< 2", "µg/L", "100", ""),
    )  # fmt: skip
    for cells in rows:
        paper.row(at, cells, bold=not cells[1])
    items = (
        it("e_coli", rows[1][0], "< 15", "NPP/100 mL", 0, 15), it("enterococci", rows[2][0], "46", "NPP/100 mL", 46),
        it("specific_conductance", rows[4][0], "1 120", "µS/cm", 1120), it("total_organic_carbon", rows[5][0], "0,9", "mg C/L", 0.9),
        it("chloride", "Chlorures", "71,0", "mg/L", 71), it("nitrate", "Nitrates", "56", "mg NO3/L", 56 * N_OF_NO3),
        it("phosphorus", "Phosphore total", "< 0,05", "mg P2O5/L", 0, 0.05 * 2 * 30.974 / 141.945, "total"), it("bicarbonate", "Hydrogénocarbonates", "341", "mg/L", 341),
        it("deethylatrazine", "Atrazine déséthyl", "0,062", "µg/L", 0.000062), it("arsenic", "Arsenic", "< 2", "µg/L", 0, 0.002),
    )  # fmt: skip
    return Layout("pdf_french_form", "pdf", paper.done(), (Water("LA26-00871", "", "2026-04-14", items),))


def german_form() -> Layout:
    """German: numbered parameters, quantification limit, `n.n.`, `nicht nachweisbar`, limit of the ordinance, method norm."""
    paper = Paper(points=8)
    paper.text("Prüfbericht 2026/0815", bold=True, size=12)
    paper.text("Probenbezeichnung: Hausbrunnen Talweg 3     Probenahme am: 02.06.2026 08:40     Labornummer: 26-4471")
    at = (40, 70, 220, 280, 350, 410, 470)
    paper.row(at, ("Nr.", "Parameter", "Ergebnis", "Einheit", "BG", "Grenzwert", "Verfahren"), bold=True)
    rows = (
        ("1", "Koloniezahl bei 22 °C", "12", "KBE/ml", "0", "100", "TrinkwV"), ("2", "Coliforme Bakterien", "nicht nachweisbar", "KBE/100ml", "0", "0", "ISO 9308-1"),
        ("3", "Escherichia coli", "0", "KBE/100ml", "0", "0", "ISO 9308-1"), ("4", "Nitrat (als NO3)", "61,0", "mg/l", "0,5", "50", "ISO 10304-1"),
        ("5", "Nitrit (als NO2)", "< 0,02", "mg/l", "0,02", "0,50", "ISO 10304-1"), ("6", "Eisen", "1,43", "mg/l", "0,02", "0,200", "ISO 11885"),
        ("7", "Blei", "n.n.", "mg/l", "0,001", "0,010", "ISO 17294-2"), ("8", "Säurekapazität KS 4,3", "5,12", "mmol/l", "0,05", "", "DIN 38409-7"),
        ("9", "Gesamthärte", "17,9", "°dH", "0,1", "", "berechnet"), ("10", "pH-Wert bei 12,4 °C", "7,31", "", "", "6,5-9,5", "ISO 10523"),
    )  # fmt: skip
    for cells in rows:
        paper.row(at, cells)
    items = (
        it("colony_count_22", rows[0][1], "12", "KBE/ml", 12), it("total_coliform", rows[1][1], "nicht nachweisbar", "", 0), it("e_coli", rows[2][1], "0", "", 0),
        it("nitrate", rows[3][1], "61,0", "mg/l", 61 * N_OF_NO3), it("nitrite", rows[4][1], "< 0,02", "mg/l", 0, 0.02 * 14.007 / 46.005), it("iron", "Eisen", "1,43", "mg/l", 1.43),
        it("lead", "Blei", "n.n.", "mg/l", 0, 0.001), it("total_alkalinity", rows[7][1], "5,12", "mmol/l", 5.12 * 50.043), it("total_hardness", "Gesamthärte", "17,9", "°dH", 17.9 * 17.848),
        it("ph", rows[9][1], "7,31", "", 7.31),
    )  # fmt: skip
    return Layout("pdf_german_form", "pdf", paper.done(), (Water("26-4471", "", "2026-06-02", items),))


def lights() -> Layout:
    """A householder's leaflet: check marks and crosses (a symbol font), coloured discs, a scale of words, text between rows."""
    paper = Paper(letter, points=10, lead=16)
    paper.text("Your water at a glance", bold=True, size=16)
    paper.text("Sample GL-4 taken June 5, 2026")
    at = (48, 70, 220, 330, 440)
    paper.row(at, ("", "What we tested", "Your level", "Advised at most", "What it means"), bold=True)
    rows = (("good", "Lead", "Not detected (less than 1 ppb)", "10 ppb"), ("bad", "Nitrate (as N)", "14 ppm", "10 ppm"), ("good", "Fluoride", "0.5 ppm", "1.5 ppm"), ("bad", "Iron", "0.9 ppm", "0.3 ppm"))  # fmt: skip
    for kind, name, value, limit in rows:
        paper.page.setFont("ZapfDingbats", 11)
        paper.page.drawString(48, paper.y, "4" if kind == "good" else "8")
        paper.page.circle(430, paper.y + 3, 4, fill=1)
        paper.row(at, ("", name, value, "", ""))
        paper.y += paper.lead
        paper.row((390, 450), (limit, "fine" if kind == "good" else "see page 2"))
    items = (
        it("lead", "Lead", "Not detected (less than 1 ppb)", "ppb", 0, 0.001), it("nitrate", "Nitrate (as N)", "14", "ppm", 14),
        it("fluoride", "Fluoride", "0.5", "ppm", 0.5), it("iron", "Iron", "0.9", "ppm", 0.9),
    )  # fmt: skip
    return Layout("pdf_lights", "pdf", paper.done(), (Water("GL-4", "", "2026-06-05", items),))


def cards() -> Layout:
    """Cards: the name above, the number with its unit beneath in large type, three across."""
    paper = Paper(letter)
    paper.text("Sample ID: CD-6", bold=True)
    cells = (
        ("Hardness", "212 mg/L"),
        ("Iron", "0.41 mg/L"),
        ("pH", "7.2"),
        ("Nitrate-N", "<0.1 mg/L"),
        ("Sodium", "31 mg/L"),
        ("Manganese", "88 µg/L"),
    )
    for line in range(2):
        paper.y -= 20
        top = paper.y
        for column in range(3):
            name, value = cells[3 * line + column]
            x = 60 + 170 * column
            paper.page.roundRect(x - 10, top - 34, 150, 56, 6)
            paper.page.setFont("Helvetica", 9)
            paper.page.drawString(x, top + 6, name)
            paper.page.setFont("Helvetica-Bold", 16)
            paper.page.drawString(x, top - 18, value)
        paper.y -= 60
    items = (
        it("total_hardness", "Hardness", "212", "mg/L", 212), it("iron", "Iron", "0.41", "mg/L", 0.41), it("ph", "pH", "7.2", "", 7.2),
        it("nitrate", "Nitrate-N", "<0.1", "mg/L", 0, 0.1), it("sodium", "Sodium", "31", "mg/L", 31), it("manganese", "Manganese", "88", "µg/L", 0.088),
    )  # fmt: skip
    return Layout("pdf_cards", "pdf", paper.done(), (Water("CD-6", "", "", items),))


def utility() -> Layout:
    """A utility's leaflet: goal and limit before the level, range, year, Yes/No, long wrapped sources; ND without a bound."""
    paper = Paper(landscape(letter), points=8, lead=10)
    paper.text("Water quality table 2025", bold=True, size=12)
    at = (40, 180, 240, 300, 370, 430, 490, 560)
    paper.row(
        at,
        ("Substance (unit)", "MCLG", "MCL", "Level Detected", "Range Low", "Range High", "Violation", "Typical Source"),
        bold=True,
    )
    rows = (
        ("Arsenic (ppb)", "0", "10", "3.2", "ND", "5.1", "No", "Erosion of natural deposits;", "runoff from orchards since 1990", "arsenic", 0.0032, None),
        ("Barium (ppm)", "2", "2", "0.04", "0.02", "0.06", "No", "Erosion of natural deposits", "", "barium", 0.04, None),
        ("Nitrate (as N) (ppm)", "10", "10", "2.9", "0.4", "4.4", "No", "Runoff from fertilizer use; leaking", "from septic tanks, sewage", "nitrate", 2.9, None),
        ("Selenium (ppb)", "50", "50", "ND", "ND", "ND", "No", "Erosion of natural deposits", "", "selenium", 0, NAN),
    )  # fmt: skip
    items = []
    for name, goal, limit, level, low, high, broken, source, more, key, a, b in rows:
        paper.row(at, (name, goal, limit, level, low, high, broken, source))
        if more:
            paper.row(at, ("", "", "", "", "", "", "", more))
        paper.y -= 4
        items.append(it(key, name, level, "", a, b))
    return Layout("pdf_utility", "pdf", paper.done(), (Water("", "", "", tuple(items)),))


def blank_form() -> Layout:
    """A printed form filled in: numbered lines, underscores, results typed between name and unit, boxes ticked."""
    paper = Paper(letter, font="Courier", points=10, lead=16)
    paper.text("PRIVATE WELL SAMPLE RECORD")
    paper.text("Sample I.D. ___FM-61___   Date taken __9/14/2026__   Well depth __180 ft__")
    rows = (
        ("Iron (Fe)", "0.31", "mg/L"),
        ("Manganese (Mn)", "0.06", "mg/L"),
        ("Chloride (Cl)", "18", "mg/L"),
        ("Nitrate-Nitrogen", "<0.2", "mg/L"),
        ("Total Hardness", "154", "mg/L as CaCO3"),
    )
    for number, (name, value, unit) in enumerate(rows, 1):
        paper.text(f"{number}. {name} {'_' * (26 - len(name))}{value}{'_' * 6} {unit}")
    paper.text("Coliform bacteria:  [ ] Present  [X] Absent")
    items = (
        it("iron", "Iron (Fe)", "0.31", "mg/L", 0.31), it("manganese", "Manganese (Mn)", "0.06", "mg/L", 0.06), it("chloride", "Chloride (Cl)", "18", "mg/L", 18),
        it("nitrate", "Nitrate-Nitrogen", "<0.2", "mg/L", 0, 0.2), it("total_hardness", "Total Hardness", "154", "mg/L", 154),
        it("total_coliform", "Coliform bacteria", "Absent", "", 0),
    )  # fmt: skip
    return Layout("pdf_blank_form", "pdf", paper.done(), (Water("FM-61", "", "2026-09-14", items),))


def registers() -> Layout:
    """Samples across under laboratory numbers, with a table of the samples on the page before and QC columns behind."""
    paper = Paper(landscape(A4))
    paper.text("Marlpit Water Testing - sample register", bold=True)
    at = (48, 160, 300, 420)
    paper.row(at, ("Lab ID", "Client ID", "Date sampled", "Matrix"), bold=True)
    paper.row(at, ("M26-001", "Upper well", "2026-11-02", "Groundwater"))
    paper.row(at, ("M26-002", "Lower well", "2026-11-03", "Groundwater"))
    paper.new()
    at = (48, 200, 270, 330, 420, 510, 600)
    paper.row(at, ("Parameter", "Units", "RDL", "M26-001", "M26-002", "Method Blank", "LCS % Recovery"), bold=True)
    for cells in (
        ("Calcium", "mg/L", "0.1", "44.1", "51.9", "<0.1", "101"),
        ("Fluoride", "mg/L", "0.05", "<0.05", "1.7", "<0.05", "97"),
        ("Uranium", "µg/L", "0.1", "3.3", "18.8", "<0.1", "99"),
    ):
        paper.row(at, cells)
    a = (
        it("calcium", "Calcium", "44.1", "mg/L", 44.1),
        it("fluoride", "Fluoride", "<0.05", "mg/L", 0, 0.05),
        it("uranium", "Uranium", "3.3", "µg/L", 0.0033),
    )
    b = (
        it("calcium", "Calcium", "51.9", "mg/L", 51.9),
        it("fluoride", "Fluoride", "1.7", "mg/L", 1.7),
        it("uranium", "Uranium", "18.8", "µg/L", 0.0188),
    )
    waters = (Water("M26-001", "Upper well", "2026-11-02", a), Water("M26-002", "Lower well", "2026-11-03", b))
    return Layout("pdf_registers", "pdf", paper.done(), waters, quality_control=3)


def first_draw() -> Layout:
    """Lead and copper at one tap, first draw and flushed, as columns `First draw` and `After 5 minutes`."""
    paper = Paper()
    paper.text("Report for tap study 77    Date of samples: 2026-12-01")
    at = (48, 180, 300, 420)
    paper.row(at, ("Metal", "First draw (mg/L)", "Flushed 5 min (mg/L)", "Action level"), bold=True)
    for cells in (("Lead", "0.021", "<0.001", "0.015"), ("Copper", "1.9", "0.3", "1.3")):
        paper.row(at, cells)
    a = (it("lead", "Lead", "0.021", "mg/L", 0.021), it("copper", "Copper", "1.9", "mg/L", 1.9))
    b = (it("lead", "Lead", "<0.001", "mg/L", 0, 0.001), it("copper", "Copper", "0.3", "mg/L", 0.3))
    return Layout(
        "pdf_first_draw",
        "pdf",
        paper.done(),
        (Water("First draw", "First draw", "2026-12-01", a), Water("Flushed 5 min", "Flushed 5 min", "2026-12-01", b)),
    )


LAYOUTS = (
    county,
    turned_heads,
    two_pages,
    batches,
    jittered,
    narrow,
    french_form,
    german_form,
    lights,
    cards,
    utility,
    blank_form,
    registers,
    first_draw,
)
