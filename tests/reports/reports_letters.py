"""Text PDFs that are letters, cards, forms and amended reports rather than one table.

Every laboratory, household and number is invented; each meaning is typed by hand.
"""

from __future__ import annotations

from reportlab.lib.pagesizes import A4, landscape, letter
from reports_catalog import Layout, Water
from reports_draw import absent, fill, found, items_of, less, present
from reports_pdf import Paper
from reports_written import N_OF_NO3, PCI, U


def cards() -> Layout:
    """A frame a parameter: its name above, value and unit beside each other below, the limit in the last line.

    When first read, the limits of one row of cards went into the names of the next, whose results vanished.
    """
    paper = Paper(A4, points=9, lead=13)
    paper.text("Sample ID: CD-14     Date sampled: 2026-04-02")
    lines = (
        (("Iron", "0.62", "mg/L", "Limit: 0.3 mg/L"), found("iron", 0.62)),
        (("Manganese", "<0.005", "mg/L", "Limit: 0.05 mg/L"), less("manganese", 0.005)),
        (("Chloride", "48", "mg/L", "Limit: 250 mg/L"), found("chloride", 48)),
        (("pH", "7.3", "", "Limit: 6.5 - 8.5"), found("ph", 7.3)),
        (("Nitrate as N", "4.4", "mg/L", "Limit: 10 mg/L"), found("nitrate", 4.4)),
        (("Total coliform", "Absent", "per 100 mL", "Limit: Absent"), absent("total_coliform")),
    )
    for number, (cells, _) in enumerate(lines):
        x, y = 50 + 170 * (number % 3), 690 - 90 * (number // 3)
        paper.page.rect(x - 6, y - 40, 160, 58)
        paper.page.setFont("Helvetica-Bold", 10)
        paper.page.drawString(x, y, cells[0])
        paper.page.setFont("Helvetica", 10)
        paper.page.drawString(x, y - 16, cells[1])
        paper.page.drawString(x + 60, y - 16, cells[2])
        paper.page.setFont("Helvetica", 7)
        paper.page.drawString(x, y - 32, cells[3])
    return Layout("pdf_framed_cards", "pdf", paper.done(), (Water("CD-14", "", "2026-04-02", items_of(lines)),))


def two_column_form() -> Layout:
    """Parameter and result as labels, two to a line. When first read, all of it vanished."""
    paper = Paper(letter, points=9, lead=18)
    paper.text("WELL WATER TEST FORM", bold=True)
    paper.text("Sample ID: F-0093     Date Collected: 05/12/2026")
    lines = (
        (("Iron", "1.2 mg/L"), found("iron", 1.2)), (("Sulfate", "31 mg/L"), found("sulfate", 31)),
        (("Copper", "0.09 mg/L"), found("copper", 0.09)), (("Lead", "ND (<0.001 mg/L)"), less("lead", 0.001)),
        (("Sodium", "22 mg/L"), found("sodium", 22)), (("Fluoride", "0.4 mg/L"), found("fluoride", 0.4)),
    )  # fmt: skip
    for at in range(0, len(lines), 2):
        (left, _), (right, _) = lines[at : at + 2]
        paper.row((48, 310), (f"Parameter: {left[0]}", f"Parameter: {right[0]}"))
        paper.row((48, 310), (f"Result: {left[1]}", f"Result: {right[1]}"))
    return Layout("pdf_two_column_form", "pdf", paper.done(), (Water("F-0093", "", "2026-05-12", items_of(lines)),))


def heading_blocks() -> Layout:
    """A block an analyte: heading, method, reporting limit and result. When first read, all of it vanished."""
    paper = Paper(letter, points=9, lead=13)
    paper.text("Sample ID: HB-2     Date Collected: 2026-01-20")
    lines = (
        (("Arsenic", "0.0042 mg/L", "0.001 mg/L", "EPA 200.8"), found("arsenic", 0.0042)),
        (("Lead", "Not Detected", "0.0005 mg/L", "EPA 200.8"), less("lead", 0.0005)),
        (("Nitrate as N", "6.1 mg/L", "0.1 mg/L", "EPA 300.0"), found("nitrate", 6.1)),
        (("Sulfate", "88 mg/L", "1 mg/L", "EPA 300.0"), found("sulfate", 88)),
    )
    for (name, value, limit, method), _ in lines:
        paper.y -= 5
        paper.text(name, bold=True)
        paper.row((60, 170), ("Method:", method))
        paper.row((60, 170), ("Reporting Limit:", limit))
        paper.row((60, 170), ("Result:", value))
    return Layout("pdf_heading_blocks", "pdf", paper.done(), (Water("HB-2", "", "2026-01-20", items_of(lines)),))


def three_by_forty() -> Layout:
    """Three samples, forty rows each way over landscape pages, with the header on the first page only."""
    paper = Paper(landscape(letter), points=9, lead=24)
    at = (40, 260, 340, 450, 560)
    paper.row(at, ("Parameter", "Unit", "KT-1", "KT-2", "KT-3"), bold=True)
    keys = (
        ("Calcium", "calcium"), ("Magnesium", "magnesium"), ("Sodium", "sodium"), ("Potassium", "potassium"), ("Chloride", "chloride"), ("Sulfate", "sulfate"), ("Fluoride", "fluoride"), ("Bromide", "bromide"), ("Silica", "silica"), ("Iron", "iron"), ("Manganese", "manganese"), ("Zinc", "zinc"), ("Copper", "copper"), ("Lead", "lead"), ("Arsenic", "arsenic"), ("Barium", "barium"), ("Boron", "boron"), ("Strontium", "strontium"), ("Lithium", "lithium"), ("Uranium", "uranium"), ("Nickel", "nickel"), ("Cobalt", "cobalt"), ("Cadmium", "cadmium"), ("Chromium", "chromium"), ("Selenium", "selenium"), ("Antimony", "antimony"), ("Beryllium", "beryllium"), ("Thallium", "thallium"), ("Vanadium", "vanadium"), ("Molybdenum", "molybdenum"), ("Mercury", "mercury"), ("Silver", "silver"), ("Aluminum", "aluminum"), ("Tin", "tin"),
    )  # fmt: skip
    lines: tuple[list, list, list] = ([], [], [])
    for number, (name, key) in enumerate(keys):
        if paper.y < 60:
            paper.new()
        values = (f"{0.1 + number / 10:.1f}", f"<{0.05 + number / 100:.2f}", f"{1 + number}")
        paper.row(at, (name, "mg/L", *values))
        lines[0].append(((name,), found(key, float(values[0]))))
        lines[1].append(((name,), less(key, float(values[1][1:]))))
        lines[2].append(((name,), found(key, float(values[2]))))
    waters = tuple(Water(f"KT-{n}", "", "", items_of(own)) for n, own in enumerate(lines, 1))
    return Layout("pdf_three_by_forty", "pdf", paper.done(), waters)


def presumptive() -> Layout:
    """A bacteria form: presumptive and confirmed columns, and the final result by itself."""
    paper = Paper(letter, points=9, lead=14)
    paper.text("BACTERIOLOGICAL WATER ANALYSIS", bold=True)
    paper.text("Lab No.: B26-0188     Date Collected: 04/06/2026")
    at = (48, 190, 290, 390)
    paper.row(at, ("Test", "Result", "Units", "Method"), bold=True)
    lines = (
        (("Total Coliform", "Present", "per 100 mL", "SM 9223 B"), present("total_coliform")),
        (("E. coli", "Absent", "per 100 mL", "SM 9223 B"), absent("e_coli")),
        (("Heterotrophic Plate Count", "140", "CFU/mL", "SM 9215 B"), found("heterotrophic_plate_count", 140)),
    )
    items = fill(paper, at, lines)
    paper.text("Presumptive: 04/07/2026 Positive.  Confirmed: 04/08/2026 Positive.", size=8)
    return Layout("pdf_presumptive", "pdf", paper.done(), (Water("B26-0188", "", "2026-04-06", items),))


def radiochemistry() -> Layout:
    """Activities with ± beside them, MDC, and flags; the unit stands in its own column."""
    paper = Paper(letter, points=9, lead=14)
    paper.text("Sample ID: RD-5     Collected: 2026-03-11")
    at = (48, 180, 240, 300, 350, 410, 470)
    paper.row(at, ("Radionuclide", "Activity", "± 2σ", "MDC", "Units", "Qual", "Method"), bold=True)
    lines = (
        (("Gross Alpha", "12.4", "2.1", "1.8", "pCi/L", "", "900.0"), found("gross_alpha", 10.3 * PCI, 14.5 * PCI)),
        (("Radium-226", "1.30", "0.30", "0.40", "pCi/L", "", "903.1"), found("radium_226", 1.0 * PCI, 1.6 * PCI)),
    )
    items = fill(paper, at, lines)
    return Layout("pdf_radiochemistry", "pdf", paper.done(), (Water("RD-5", "", "2026-03-11", items),))


def amended() -> Layout:
    """An amended report: old values struck through, the new ones beside them."""
    paper = Paper(A4, points=9, lead=15)
    paper.text("AMENDED REPORT - replaces revision 0", bold=True)
    paper.text("Sample ID: AM-3     Date sampled: 2026-02-03")
    at = (48, 200, 310, 380)
    paper.row(at, ("Parameter", "Result", "Units", "Limit"), bold=True)
    lines = (
        (("Arsenic", "0.012", "mg/L", "0.01"), found("arsenic", 0.012)),
        (("Iron", "0.21", "mg/L", "0.3"), found("iron", 0.21)),
        (("Nitrate as N", "9.4", "mg/L", "10"), found("nitrate", 9.4)),
    )
    for (cells, _), old in zip(lines, ("0.0012", "", "4.9"), strict=True):
        if old:
            paper.page.setFont("Helvetica", 9)
            paper.page.drawString(200, paper.y, old)
            wide = paper.page.stringWidth(old, "Helvetica", 9)
            paper.page.line(199, paper.y + 3, 201 + wide, paper.y + 3)
            paper.row((48, 208 + wide, 310, 380), cells)
        else:
            paper.row(at, cells)
    return Layout(
        "pdf_amended", "pdf", paper.done(), (Water("AM-3", "", "2026-02-03", items_of(lines)),), unread=2, strict=True
    )


def pruefbericht() -> Layout:
    """German: Prüfbericht with Verfahren between value and limit, decimal commas."""
    paper = Paper(A4, points=8, lead=12)
    paper.text("PRÜFBERICHT Nr. 26-11873", bold=True, size=12)
    paper.text("Probenbezeichnung: Hausbrunnen Wiesengrund     Probenahme: 14.05.2026")
    at = (48, 180, 250, 310, 420)
    paper.row(at, ("Parameter", "Ergebnis", "Einheit", "Verfahren", "Grenzwert TrinkwV"), bold=True)
    lines = (
        (("Nitrat", "38,2", "mg/l", "DIN EN ISO 10304-1", "50"), found("nitrate", 38.2 * N_OF_NO3)),
        (("Eisen", "0,145", "mg/l", "DIN EN ISO 11885", "0,2"), found("iron", 0.145)),
        (("Mangan", "< 0,005", "mg/l", "DIN EN ISO 11885", "0,05"), less("manganese", 0.005)),
        (("Blei", "< 0,001", "mg/l", "DIN EN ISO 17294-2", "0,01"), less("lead", 0.001)),
        (("Escherichia coli", "0", "KBE/100 ml", "DIN EN ISO 9308-1", "0"), absent("e_coli")),
    )
    items = fill(paper, at, lines)
    return Layout("pdf_pruefbericht", "pdf", paper.done(), (Water("", "Hausbrunnen Wiesengrund", "2026-05-14", items),))


def pcv() -> Layout:
    """British: result, PCV and whether it complies; micrograms by metal."""
    paper = Paper(A4, points=9, lead=13)
    paper.text("Private water supply - certificate of analysis", bold=True)
    paper.row((48, 150), ("Sample reference:", "PWS/26/0771"))
    paper.row((48, 150), ("Date sampled:", "21/07/2026"))
    at = (48, 230, 300, 390, 450)
    paper.row(at, ("Determinand", "Result", "Units", "PCV", "Compliant"), bold=True)
    lines = (
        (("Nitrate as NO3", "61.0", "mg/l", "50", "No"), found("nitrate", 61 * N_OF_NO3)),
        (("Lead - total", "3.1", "µg/l", "10", "Yes"), found("lead", 3.1 * U, fraction="total")),
        (("Iron - total", "<10", "µg/l", "200", "Yes"), less("iron", 0.010, "total")),
        (("Coliform bacteria", "3", "cfu/100ml", "0", "No"), found("total_coliform", 3)),
        (("E. coli", "0", "cfu/100ml", "0", "Yes"), absent("e_coli")),
    )
    items = fill(paper, at, lines)
    return Layout("pdf_pcv", "pdf", paper.done(), (Water("PWS/26/0771", "", "2026-07-21", items),))


def typed_form() -> Layout:
    """A form to fill in: results, the sample's number and the boxes of the bacteria are its fields."""
    paper = Paper(letter, points=10, lead=24)
    form = paper.page.acroForm

    def field(x, text):
        form.textfield(name=f"f{x}{paper.y}", value=text, x=x, y=paper.y + 19, width=80, height=18, fontSize=9)

    paper.row((48,), ("Sample ID:",))
    field(140, "TF-1")
    paper.row((48,), ("Date collected:",))
    field(140, "2026-08-09")
    at = (48, 200, 300, 380)
    paper.row(at, ("Parameter", "Result", "Units", "Limit"))
    lines = (
        (("Arsenic", "0.0031", "mg/L", "0.010"), found("arsenic", 0.0031)),
        (("Iron", "<0.05", "mg/L", "0.3"), less("iron", 0.05)),
        (("Nitrate as N", "11.2", "mg/L", "10"), found("nitrate", 11.2)),
    )
    for (name, value, unit, limit), _ in lines:
        paper.row(at, (name, "", unit, limit))
        field(198, value)
    return Layout("pdf_typed_form", "pdf", paper.done(), (Water("TF-1", "", "2026-08-09", items_of(lines)),))


LAYOUTS = (
    cards, two_column_form, heading_blocks, three_by_forty, presumptive, radiochemistry, amended, pruefbericht, pcv,
    typed_form,
)  # fmt: skip
