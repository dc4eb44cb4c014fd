"""A laboratory's package of pages: custody, batches, standards, detections, results. All invented; each meaning is typed by hand."""

from __future__ import annotations

from reportlab.lib.pagesizes import landscape, letter
from reports_catalog import Layout, Water
from reports_draw import absent, fill, found, items_of, less
from reports_pdf import Paper
from reports_written import U


def method_lines() -> Layout:
    """A commercial laboratory: one heading line a method carries the fraction; columns Qualifier, RL, MDL, D; QC after it."""
    paper = Paper(landscape(letter), points=8, lead=11)
    at = (40, 220, 300, 350, 400, 450, 490, 530, 620, 710)
    head = ("Analyte", "Result", "Qualifier", "RL", "MDL", "Unit", "D", "Prepared", "Analyzed", "Dil Fac")
    paper.text("Client Sample Results", bold=True, size=12)
    paper.row((40, 500), ("Client: Example Household", "Job ID: 880-4411-1"))
    paper.text("Project/Site: Fallow Acre")
    paper.row((40, 500), ("Client Sample ID: Kitchen cold", "Lab Sample ID: 880-4411-1"), bold=True)
    paper.row((40, 500), ("Date Collected: 02/11/26 08:05", "Matrix: Drinking Water"))
    paper.text("Date Received: 02/12/26 10:30")
    items = []

    def group(title, lines):
        nonlocal items
        paper.y -= 4
        paper.text(title, bold=True)
        paper.row(at, head, bold=True)
        items += fill(paper, at, lines)

    dates = ("02/13/26 07:00", "02/14/26 11:12", "1")
    group("Method: 200.8 - Metals (ICP/MS) - Total Recoverable", (
        (("Arsenic", "4.4", "", "1.0", "0.21", "ug/L", "", *dates), found("arsenic", 4.4 * U, fraction="total_recoverable")),
        (("Lead", "0.62", "J", "1.0", "0.18", "ug/L", "", *dates), found("lead", 0.18 * U, 1.0 * U, "total_recoverable", "J")),
        (("Uranium", "ND", "", "1.0", "0.10", "ug/L", "", *dates), less("uranium", 1.0 * U, "total_recoverable")),
    ))  # fmt: skip
    group("Method: 200.8 - Metals (ICP/MS) - Dissolved", (
        (("Arsenic", "3.9", "", "1.0", "0.21", "ug/L", "", *dates), found("arsenic", 3.9 * U, fraction="dissolved")),
        (("Manganese", "118", "B", "2.0", "0.55", "ug/L", "", *dates), found("manganese", 0, 0.118, "dissolved", "B")),
    ))  # fmt: skip
    group("Method: 300.0 - Anions, Ion Chromatography", (
        (("Chloride", "210", "", "5.0", "1.1", "mg/L", "", "", "02/12/26 19:40", "5"), found("chloride", 210)),
        (("Nitrate as N", "7.7", "H", "0.10", "0.02", "mg/L", "", "", "02/12/26 18:40", "1"), found("nitrate", 7.7, flag="H")),
        (("Sulfate", "33", "", "1.0", "0.2", "mg/L", "", "", "02/12/26 18:40", "1"), found("sulfate", 33)),
    ))  # fmt: skip
    group("General Chemistry", (
        (("Alkalinity, Total as CaCO3", "188", "", "5.0", "2.0", "mg/L", "", "", "02/16/26 09:00", "1"), found("total_alkalinity", 188)),
        (("Specific Conductance", "812", "", "1.0", "1.0", "umhos/cm", "", "", "02/16/26 09:00", "1"), found("specific_conductance", 812)),
    ))  # fmt: skip
    paper.new()
    paper.text("QC Sample Results", bold=True, size=12)
    paper.text("Method: 300.0 - Anions, Ion Chromatography", bold=True)
    paper.row((40, 500), ("Lab Sample ID: MB 880-77310/4", "Client Sample ID: Method Blank"), bold=True)
    paper.text("Matrix: Water")
    paper.row(at, head, bold=True)
    paper.row(at, ("Chloride", "ND", "", "1.0", "0.2", "mg/L", "", "", "02/12/26 12:01", "1"))
    paper.row(at, ("Nitrate as N", "ND", "", "0.10", "0.02", "mg/L", "", "", "02/12/26 12:01", "1"))
    paper.y -= 6
    paper.row((40, 500), ("Lab Sample ID: LCS 880-77310/5", "Client Sample ID: Lab Control Sample"), bold=True)
    at2 = (40, 220, 290, 350, 420, 470, 510, 560)
    paper.row(at2, ("", "Spike", "LCS", "LCS", "", "", "", "%Rec"), bold=True)
    paper.row(at2, ("Analyte", "Added", "Result", "Qualifier", "Unit", "D", "%Rec", "Limits"), bold=True)
    paper.row(at2, ("Chloride", "50.0", "49.7", "", "mg/L", "", "99", "90 - 110"))
    paper.row(at2, ("Nitrate as N", "5.00", "5.11", "", "mg/L", "", "102", "90 - 110"))
    paper.y -= 6
    paper.row((40, 500), ("Lab Sample ID: 880-4411-1 MS", "Client Sample ID: Kitchen cold"), bold=True)
    at3 = (40, 190, 240, 300, 350, 400, 450, 500, 540, 580)
    paper.row(at3, ("", "Sample", "Sample", "Spike", "MS", "MS", "", "", "", "%Rec"), bold=True)
    paper.row(
        at3,
        ("Analyte", "Result", "Qualifier", "Added", "Result", "Qualifier", "Unit", "D", "%Rec", "Limits"),
        bold=True,
    )
    paper.row(at3, ("Sulfate", "33", "", "50.0", "84.1", "", "mg/L", "", "102", "80 - 120"))
    return Layout(
        "pdf_method_lines",
        "pdf",
        paper.done(),
        (Water("880-4411-1", "", "2026-02-11", tuple(items)),),
        quality_control=5,
    )


def three_packed() -> Layout:
    """Three columns of tests packed on a narrow page, name and result without units; the unit stands once above."""
    paper = Paper(letter, font="Courier", points=8, lead=11)
    paper.text("GREBE MERE COOPERATIVE WATER LAB   RURAL WELL SCREEN", bold=True)
    paper.text("Sample No: 40417   Date Sampled: 07/20/2026   Owner: Example")
    paper.text("All results are in mg/L unless noted")
    paper.y -= 6
    at = (40, 130, 220, 310, 410, 510)
    paper.row(at, ("TEST", "RESULT", "TEST", "RESULT", "TEST", "RESULT"), bold=True)
    lines = (
        ("Calcium", "71.2", "Iron", "0.08", "Chloride", "12.0"),
        ("Magnesium", "22.9", "Manganese", "<0.005", "Sulfate", "31.5"),
        ("Sodium", "9.4", "Copper", "0.021", "Fluoride", "0.22"),
        ("Potassium", "1.8", "Zinc", "<0.010", "Nitrate-N", "4.1"),
    )
    for cells in lines:
        paper.row(at, cells)
    keys = {
        "Calcium": 71.2, "Magnesium": 22.9, "Sodium": 9.4, "Potassium": 1.8, "Iron": 0.08, "Manganese": (0, 0.005), "Copper": 0.021,
        "Zinc": (0, 0.01), "Chloride": 12.0, "Sulfate": 31.5, "Fluoride": 0.22,
    }  # fmt: skip
    truth = [((name,), found(name.lower(), *(v if isinstance(v, tuple) else (v,)))) for name, v in keys.items()]
    truth.append((("Nitrate-N",), found("nitrate", 4.1)))
    return Layout("pdf_three_packed", "pdf", paper.done(), (Water("40417", "", "2026-07-20", items_of(truth)),))


def statistics_beside() -> Layout:
    """This sample beside the minimum, average and maximum of the county's wells, and last year's result."""
    paper = Paper(letter)
    paper.text("Brackenfold Soil & Water District - Well Owner Report", bold=True, size=12)
    paper.row((48, 300), ("Sample ID: BW-0199", "Sample date: 3 September 2026"))
    at = (48, 190, 240, 310, 370, 420, 470, 520)
    paper.row(at, ("", "", "Your", "Last", "County", "County", "County", "Health"), bold=True, size=8)
    paper.row(at, ("Parameter", "Unit", "well", "year", "min", "average", "max", "limit"), bold=True, size=8)
    lines = (
        (("Nitrate-N", "mg/L", "8.9", "7.4", "0.1", "3.8", "41", "10"), found("nitrate", 8.9)),
        (("Chloride", "mg/L", "64", "59", "1", "28", "390", ""), found("chloride", 64)),
        (("Arsenic", "µg/L", "< 1", "< 1", "0.2", "2.4", "77", "10"), less("arsenic", 1 * U)),
        (("Iron", "mg/L", "0.11", "0.19", "0.01", "1.2", "22", ""), found("iron", 0.11)),
        (("pH", "", "7.6", "7.5", "5.2", "7.1", "9.3", ""), found("ph", 7.6)),
    )
    items = fill(paper, at, lines)
    return Layout("pdf_statistics_beside", "pdf", paper.done(), (Water("BW-0199", "", "2026-09-03", items),))


def custody_first() -> Layout:
    """A chain of custody and a cover letter that quotes a result before the table, a page of terms behind it."""
    paper = Paper(letter)
    paper.text("CHAIN OF CUSTODY RECORD", bold=True, size=13)
    at = (48, 150, 230, 300, 350, 400, 450, 500)
    paper.row(
        at,
        ("Sample Identification", "Date", "Time", "Bottles", "Metals", "Anions", "Coliform", "Temp °C"),
        bold=True,
        size=8,
    )
    paper.row(at, ("Barn hydrant", "10/06/26", "14:20", "3", "X", "X", "X", "4.2"))
    paper.text(
        "Relinquished by: J. Nobody   10/06/26 16:00     Received by: lab   10/06/26 16:05     Cooler temp: 4.2 C"
    )
    paper.text("Preservative: HNO3 pH<2 (1), none (1), Na2S2O3 (1)     Turnaround: 10 days     PO # 99120")
    paper.new()
    paper.text("Tarn Hollow Laboratory, 14 Weir Street, Fenholt 01234-5678", bold=True)
    paper.text("October 20, 2026")
    paper.text("Dear Well Owner:")
    paper.text(
        "We tested the water from your barn hydrant. The nitrate result of 12.2 mg/L is above the limit of 10 mg/L that"
    )
    paper.text(
        "applies to public supplies; infants under 6 months should not drink it. Lead was 0.8 ppb, below the action level of"
    )
    paper.text(
        "15 ppb. Please call (555) 010-7700 ext. 12 between 9:00 and 4:30 with questions. Enclosed are 2 pages of results."
    )
    paper.new()
    paper.text("Tarn Hollow Laboratory     Certificate 26-5519     Accreditation No. 40177", bold=True)
    paper.row((48, 300), ("Sample: Barn hydrant", "Collected: 10/06/2026 14:20"))
    at = (48, 200, 270, 340, 410)
    paper.row(at, ("Analyte", "Result", "Unit", "Limit", "Analyzed"), bold=True)
    lines = (
        (("Nitrate as N", "12.2", "mg/L", "10", "10/07/26"), found("nitrate", 12.2)),
        (("Lead", "0.8", "ug/L", "15", "10/09/26"), found("lead", 0.8 * U)),
        (("Chloride", "44", "mg/L", "250", "10/07/26"), found("chloride", 44)),
        (("Total Coliform", "Absent", "/100 mL", "Absent", "10/06/26"), absent("total_coliform")),
    )
    items = fill(paper, at, lines)
    paper.new()
    paper.text("Understanding your report", bold=True)
    paper.text(
        "Iron above 0.3 mg/L stains. Manganese above 0.05 mg/L blackens laundry. Hardness over 180 mg/L is very hard."
    )
    paper.text(
        "1 mg/L = 1 ppm. 1 grain per gallon = 17.1 mg/L. Samples are kept 30 days. Sulfate over 500 mg/L is laxative."
    )
    return Layout("pdf_custody_first", "pdf", paper.done(), (Water("Barn hydrant", "", "2026-10-06", items),))


def detections_first() -> Layout:
    """A summary of detections before the full results: the same numbers printed twice are one result each."""
    paper = Paper(letter)
    paper.text("Quillmere Analytical - Detection Summary", bold=True)
    paper.row((48, 300), ("Sample ID: Q26-71A", "Date collected: 2026-03-18"))
    at = (48, 200, 270, 340, 410)
    paper.row(at, ("Analyte", "Result", "Units", "RL", "Method"), bold=True)
    detected = (
        (("Copper", "0.314", "mg/L", "0.010", "EPA 200.8"), found("copper", 0.314)),
        (("Sodium", "18.6", "mg/L", "0.50", "EPA 200.7"), found("sodium", 18.6)),
    )
    fill(paper, at, detected)
    paper.new()
    paper.text("Quillmere Analytical - Analytical Results", bold=True)
    paper.row((48, 300), ("Sample ID: Q26-71A", "Date collected: 2026-03-18"))
    paper.row(at, ("Analyte", "Result", "Units", "RL", "Method"), bold=True)
    lines = (
        (("Cadmium", "ND", "mg/L", "0.0005", "EPA 200.8"), less("cadmium", 0.0005)),
        (("Copper", "0.314", "mg/L", "0.010", "EPA 200.8"), found("copper", 0.314)),
        (("Lead", "ND", "mg/L", "0.0010", "EPA 200.8"), less("lead", 0.001)),
        (("Sodium", "18.6", "mg/L", "0.50", "EPA 200.7"), found("sodium", 18.6)),
    )
    items = fill(paper, at, lines)
    return Layout("pdf_detections_first", "pdf", paper.done(), (Water("Q26-71A", "", "2026-03-18", items),))


def standards_only() -> Layout:
    """A leaflet of standards and typical values: nothing of it is a result of anybody's water."""
    paper = Paper(letter)
    paper.text("Drinking water standards for your reference", bold=True, size=13)
    at = (48, 200, 280, 370, 460)
    paper.row(at, ("Contaminant", "MCL", "MCLG", "Typical range", "Units"), bold=True)
    for cells in (
        ("Arsenic", "0.010", "0", "0.001 - 0.005", "mg/L"), ("Nitrate (as N)", "10", "10", "0.1 - 3", "mg/L"),
        ("Lead", "0.015", "0", "< 0.002", "mg/L"), ("Iron", "0.3", "none", "0.05 - 2", "mg/L"), ("pH", "6.5 - 8.5", "none", "6 - 8", "SU"),
    ):  # fmt: skip
        paper.row(at, cells)
    paper.y -= 10
    paper.text("Hardness classes", bold=True)
    at = (48, 200, 300)
    paper.row(at, ("Class", "mg/L", "grains/gal"), bold=True)
    for cells in (
        ("Soft", "0 - 60", "0 - 3.5"),
        ("Moderately hard", "61 - 120", "3.6 - 7"),
        ("Hard", "121 - 180", "7.1 - 10.5"),
    ):
        paper.row(at, cells)
    return Layout("pdf_standards_only", "pdf", paper.done(), ())


def spikes_by_household() -> Layout:
    """Duplicates and spikes of the household's own sample number as rows of the same table and in sections behind it."""
    paper = Paper(letter, points=8, lead=12)
    paper.text("Saddler's Ford Laboratory - Quality Control Included", bold=True)
    at = (40, 140, 230, 310, 370, 430, 500)
    paper.row(at, ("Lab ID", "Sample Type", "Analyte", "Result", "Units", "% Recovery", "RPD"), bold=True)
    good = []
    for cells, *truth in (
        (("6617-01", "Sample", "Iron", "0.44", "mg/L", "", ""), found("iron", 0.44)),
        (("6617-01", "Sample", "Zinc", "<0.02", "mg/L", "", ""), less("zinc", 0.02)),
        (("6617-01 DUP", "Duplicate", "Iron", "0.45", "mg/L", "", "2.2"),),
        (("6617-01 MS", "Matrix Spike", "Iron", "1.42", "mg/L", "98", ""),),
        (("6617-01 MSD", "Matrix Spike Dup", "Iron", "1.40", "mg/L", "96", "1.4"),),
        (("MB-118", "Method Blank", "Iron", "<0.02", "mg/L", "", ""),),
        (("LCS-118", "LCS", "Iron", "0.99", "mg/L", "99", ""),),
        (("CCV-118", "Cont. Calib. Verification", "Zinc", "1.01", "mg/L", "101", ""),),
    ):
        paper.row(at, cells)
        good += [(cells, *truth)] if truth else []
    items = items_of(good, 2)
    return Layout("pdf_spikes_by_household", "pdf", paper.done(), (Water("6617-01", "", "", items),), quality_control=6)


LAYOUTS = (
    method_lines,
    three_packed,
    statistics_beside,
    custody_first,
    detections_first,
    standards_only,
    spikes_by_household,
)
