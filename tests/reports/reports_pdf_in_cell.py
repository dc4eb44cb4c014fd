"""Text PDFs whose cells hold more than a number: limits in brackets, marks, two units, uncertainties, words, limits of detection.

Every laboratory, household and number is invented; each meaning is typed by hand.
"""

from __future__ import annotations

from reportlab.lib.pagesizes import A4, letter
from reports_catalog import INF, Layout, Water
from reports_draw import absent, fill, found, items_of, less, present
from reports_pdf import Paper
from reports_written import N_OF_NO3, PCI, U


def limits_in_brackets() -> Layout:
    """The limit or the range stands in brackets behind the number, and the header says so.

    At first the header was unknown and nothing was read. A header now tells what stands behind a value in its cell.
    """
    paper = Paper(A4, points=9, lead=14)
    paper.text("Sample: LB-12     Date of sampling: 2026-04-08")
    at = (48, 240, 400)
    paper.row(at, ("Parameter", "Result (limit)", "Unit"), bold=True)
    lines = (
        (("pH", "6.1 (6.5 - 8.5)", ""), found("ph", 6.1)), (("Iron", "0.42 (0.3)", "mg/L"), found("iron", 0.42)),
        (("Manganese", "<0.01 (0.05)", "mg/L"), less("manganese", 0.01)), (("Total dissolved solids", "410 (500)", "mg/L"), found("total_dissolved_solids", 410)),
        (("Arsenic", "2.2 (10)", "µg/L"), found("arsenic", 2.2 * U)), (("Sodium", "61.0 (-)", "mg/L"), found("sodium", 61)),
        (("E. coli", "0 (0)", "CFU/100 mL"), absent("e_coli")),
    )  # fmt: skip
    items = fill(paper, at, lines)
    return Layout("pdf_limits_in_brackets", "pdf", paper.done(), (Water("LB-12", "", "2026-04-08", items),))


def square_brackets() -> Layout:
    """A letter's list, value and unit, the guide value in square brackets; nothing says what the brackets mean but a line above.

    At first nothing was read. A range in brackets is now one to be in, and a number behind the unit is no part of the result.
    """
    paper = Paper(letter, points=10, lead=16)
    paper.text("Your sample (Lab # 5521-P, collected June 3, 2026) was tested as follows.")
    paper.text("The number in [ ] is the recommended maximum.")
    lines = (
        (("Total Dissolved Solids", "410 ppm [500]"), found("total_dissolved_solids", 410)), (("Chloride", "33 ppm [250]"), found("chloride", 33)),
        (("Sulfate", "< 5 ppm [250]"), less("sulfate", 5)), (("Hardness", "18 grains [7]"), found("total_hardness", 18 * 17.118)),
        (("Acidity (pH)", "6.9"), found("ph", 6.9)), (("Copper", "0.07 ppm [1.3]"), found("copper", 0.07)),
    )  # fmt: skip
    items = fill(paper, (60, 240), lines)
    return Layout("pdf_square_brackets", "pdf", paper.done(), (Water("5521-P", "", "2026-06-03", items),))


def marks_at_numbers() -> Layout:
    """Exceedances marked at the number: H and L, arrows, stars, bold, `(!)`, `>>`; the legend stands at the foot.

    At first `(!)` was unreadable.
    """
    paper = Paper(letter, points=9, lead=14)
    paper.text("Accession No: M-66123     Collection date: 05/06/2026")
    at = (48, 220, 300, 370)
    paper.row(at, ("Test", "Result", "Units", "Range"), bold=True)
    lines = (
        (("Iron", "0.91 H", "mg/L", "0 - 0.3"), found("iron", 0.91)), (("pH", "6.2 L", "", "6.5 - 8.5"), found("ph", 6.2)),
        (("Manganese", "0.22 (H)", "mg/L", "0 - 0.05"), found("manganese", 0.22)), (("Sulfate", "** 310", "mg/L", "0 - 250"), found("sulfate", 310)),
        (("Sodium", "144 (!)", "mg/L", "0 - 20"), found("sodium", 144)), (("Chloride", "17", "mg/L", "0 - 250"), found("chloride", 17)),
        (("Copper", "1.9 \u2191", "mg/L", "0 - 1.3"), found("copper", 1.9)),
    )  # fmt: skip
    for cells, _ in lines:
        paper.row(at, tuple(cell.replace("\u2191", "^") for cell in cells))
    paper.text(
        "H = above the range   L = below the range   ** = exceeds   (!) = see the enclosed advice   ^ = high", size=7
    )
    return Layout("pdf_marks_at_numbers", "pdf", paper.done(), (Water("M-66123", "", "2026-05-06", items_of(lines)),))


def uncertainty_within() -> Layout:
    """Value, uncertainty and unit in one cell, several notations beside each other.

    At first an uncertainty in brackets with its number, or behind the unit, was unreadable.
    """
    paper = Paper(A4, points=9, lead=14)
    paper.text("Sample code: UW-3    Sampled on: 14.02.2026    Laboratory code: 26-00187")
    at = (48, 230, 400)
    paper.row(at, ("Parameter", "Result ± U (k = 2)", "Method"), bold=True)
    lines = (
        (("Nitrate (NO3)", "(38.4 ± 2.9) mg/L", "ISO 10304-1"), found("nitrate", 38.4 * N_OF_NO3)),
        (("Arsenic", "4.1 ± 0.6 µg/L", "ISO 17294-2"), found("arsenic", 4.1 * U)),
        (("Chloride", "57 mg/L ± 5 %", "ISO 10304-1"), found("chloride", 57)),
        (("Lead", "< 0.5 µg/L", "ISO 17294-2"), less("lead", 0.5 * U)),
        (("Gross beta", "0.31 +/- 0.08 Bq/L", "ISO 9697"), found("gross_beta", 0.23, 0.39)),
        (("Radon-222", "74 ± 9 Bq/L", "ISO 13164-4"), found("radon_222", 65, 83)),
        (("Conductivity (25 °C)", "612 ± 12 µS/cm", "EN 27888"), found("specific_conductance", 612)),
    )  # fmt: skip
    items = fill(paper, at, lines)
    return Layout("pdf_uncertainty_within", "pdf", paper.done(), (Water("UW-3", "", "2026-02-14", items),))


def limits_of_detection_within() -> Layout:
    """`ND (0.5)`, `<0.5 (LOD 0.2)`, `BRL`, `ND @ 1.0`, `0.3 J (RL 0.5)`, `1.8 [MDL = 0.4]`: the bound stands in the cell."""
    paper = Paper(letter, points=8.5, lead=13)
    paper.text("Lab ID: 44-118-W     Client ID: Barn hydrant     Sampled: 06/22/26 14:05")
    at = (48, 230, 360, 430)
    paper.row(at, ("Compound", "Concentration", "Units", "Analysis Method"), bold=True)
    lines = (
        (("Benzene", "ND (0.50)", "ug/L", "8260D"), less("benzene", 0.5 * U)),
        (("Toluene", "<0.50 (LOD 0.20)", "ug/L", "8260D"), less("toluene", 0.5 * U)),
        (("Ethylbenzene", "ND @ 1.0", "ug/L", "8260D"), less("ethylbenzene", 1.0 * U)),
        (("Chloroform", "1.8 [MDL = 0.4]", "ug/L", "8260D"), found("chloroform", 1.8 * U)),
        (("Trichloroethene", "0.3 J (RL 0.5)", "ug/L", "8260D"), found("trichloroethylene", 0.0, 0.5 * U)),
        (("Carbon tetrachloride", "U (0.5)", "ug/L", "8260D"), less("carbon_tetrachloride", 0.5 * U)),
        (("Vinyl chloride", "not detected at 0.2", "ug/L", "8260D"), less("vinyl_chloride", 0.2 * U)),
    )  # fmt: skip
    items = fill(paper, at, lines)
    return Layout(
        "pdf_limits_of_detection_within", "pdf", paper.done(), (Water("44-118-W", "Barn hydrant", "2026-06-22", items),)
    )


def two_units_within() -> Layout:
    """The same result twice in a cell, in two units; counts with their volume in the cell."""
    paper = Paper(A4, points=9, lead=14)
    paper.text("Report for sample 26/TU/0418, taken 18/05/2026 from the kitchen tap")
    at = (48, 210, 400)
    paper.row(at, ("Analysis", "Finding", "Recommended"), bold=True)
    lines = (
        (("Total hardness", "298 mg/l CaCO3 (20.9 °Clark)", "-"), found("total_hardness", 298)),
        (("Nitrate", "31 mg/l as NO3 (7.0 mg/l as N)", "50 mg/l"), found("nitrate", 31 * N_OF_NO3)),
        (("Iron", "240 µg/l = 0.24 mg/l", "200 µg/l"), found("iron", 0.24)),
        (("Coliform bacteria", "4 per 100 ml", "0 per 100 ml"), found("total_coliform", 4)),
        (("E. coli", "none in 100 ml", "0 per 100 ml"), absent("e_coli")),
        (("Enterococci", "not found in 100 ml", "0 per 100 ml"), absent("enterococci")),
        (("Conductivity", "601 µS/cm at 20 °C", "2500 µS/cm"), found("specific_conductance", 601 * 1.116)),
    )  # fmt: skip
    items = fill(paper, at, lines)
    return Layout("pdf_two_units_within", "pdf", paper.done(), (Water("26/TU/0418", "", "2026-05-18", items),))


def result_over_limit() -> Layout:
    """`Result / Limit` in one cell, with a stroke between, and per cent of the limit in brackets in the next column.

    At first nothing was read.
    """
    paper = Paper(A4, points=9, lead=14)
    paper.text("Sample ID: RL-9     Sampling date: 21 January 2026")
    at = (48, 220, 320, 400)
    paper.row(at, ("Substance", "Result / Limit", "Unit", "% of limit"), bold=True)
    lines = (
        (("Fluoride", "0.9 / 1.5", "mg/L", "60 %"), found("fluoride", 0.9)), (("Boron", "0.11 / 2.4", "mg/L", "5 %"), found("boron", 0.11)),
        (("Barium", "<0.05 / 1.3", "mg/L", "-"), less("barium", 0.05)), (("Uranium", "21 / 30", "µg/L", "70 %"), found("uranium", 0.021)),
    )  # fmt: skip
    items = fill(paper, at, lines)
    return Layout("pdf_result_over_limit", "pdf", paper.done(), (Water("RL-9", "", "2026-01-21", items),))


def small_units_beneath() -> Layout:
    """The unit stands in small type beneath its number, the symbol beneath the name.

    At first the units were lost and milligrams supposed: arsenic a thousand times too high. A unit beneath most of the
    numbers is now theirs.
    """
    paper = Paper(letter, points=10, lead=26)
    paper.text("Sample 7-0031   collected 2026-08-02")
    paper.row((60, 200, 300), ("Mineral", "Amount", "Advised"), bold=True)
    lines = (
        (("Calcium", "Ca", "88.1", "mg/L", "none"), found("calcium", 88.1)), (("Magnesium", "Mg", "23.6", "mg/L", "none"), found("magnesium", 23.6)),
        (("Arsenic", "As", "3.1", "µg/L", "< 10"), found("arsenic", 3.1 * U)), (("Hardness", "CaCO3", "18.5", "gpg", "< 7"), found("total_hardness", 18.5 * 17.118)),
    )  # fmt: skip
    for (name, symbol, value, unit, advised), _ in lines:
        for x, top, beneath in ((60, name, symbol), (200, value, unit), (300, advised, "")):
            paper.page.setFont("Helvetica", 10)
            paper.page.drawString(x, paper.y, top)
            paper.page.setFont("Helvetica", 6.5)
            paper.page.drawString(x, paper.y - 8, beneath)
        paper.y -= 26
    return Layout("pdf_small_units_beneath", "pdf", paper.done(), (Water("7-0031", "", "2026-08-02", items_of(lines)),))


def words_for_counts() -> Layout:
    """Counts in words: TNTC, `> 200.5`, `Confluent growth`, `A`, `P`, `+`, `Neg.`, `Absent / 100 mL`, `<1 (absent)`."""
    paper = Paper(letter, points=9, lead=14)
    paper.text("MICROBIOLOGY    Lab No. MB-2-26-118    Collected 02/18/2026 07:50")
    at = (48, 230, 370, 450)
    paper.row(at, ("Organism", "Result", "Unit", "Technique"), bold=True)
    lines = (
        (("Total Coliform", "> 2419.6", "MPN/100 mL", "Enzyme substrate"), found("total_coliform", 2419.6, INF)),
        (("E. coli", "<1 (absent)", "MPN/100 mL", "Enzyme substrate"), absent("e_coli")),
        (("Fecal coliform", "TNTC", "CFU/100 mL", "Membrane filter"), found("fecal_coliform", 1, INF)),
        (("Fecal streptococci", "Neg.", "per 100 mL", "Membrane filter"), absent("enterococci")),
        (("Heterotrophic plate count", "> 5,700", "CFU/mL", "Pour plate"), found("heterotrophic_plate_count", 5700, INF)),
        (("Pseudomonas aeruginosa", "Present", "per 100 mL", "Membrane filter"), present("pseudomonas_aeruginosa")),
    )  # fmt: skip
    items = fill(paper, at, lines)
    return Layout("pdf_words_for_counts", "pdf", paper.done(), (Water("MB-2-26-118", "", "2026-02-18", items),))


def activities_with_errors() -> Layout:
    """Radionuclides: `1.72 ± 0.41 (MDC 0.62)` in one cell, negative results, `U` behind, the header tells the order.

    At first nothing was read.
    """
    paper = Paper(letter, points=8.5, lead=14)
    paper.text("Sample ID: RDN-08     Date/Time Collected: 03/17/2026 12:40")
    at = (48, 200, 370, 440)
    paper.row(at, ("Radionuclide", "Activity ± Uncertainty (MDC)", "Units", "Method"), bold=True)
    lines = (
        (("Gross Alpha", "14.2 ± 3.1 (2.4)", "pCi/L", "EPA 900.0"), found("gross_alpha", 11.1 * PCI, 17.3 * PCI)),
        (("Radium-226", "1.72 ± 0.41 (0.62)", "pCi/L", "EPA 903.0"), found("radium_226", 1.31 * PCI, 2.13 * PCI)),
        (("Radium-228", "-0.12 ± 0.44 (0.91) U", "pCi/L", "EPA 904.0"), found("radium_228", -0.56 * PCI, 0.91 * PCI)),
        (("Uranium-238", "6.80 ± 0.72 (0.10)", "pCi/L", "HASL U-02"), found("uranium_238", 6.08 * PCI, 7.52 * PCI)),
    )  # fmt: skip
    items = fill(paper, at, lines)
    return Layout("pdf_activities_with_errors", "pdf", paper.done(), (Water("RDN-08", "", "2026-03-17", items),))


LAYOUTS = (
    limits_in_brackets, square_brackets, marks_at_numbers, uncertainty_within, limits_of_detection_within, two_units_within,
    result_over_limit, small_units_beneath, words_for_counts, activities_with_errors,
)  # fmt: skip
