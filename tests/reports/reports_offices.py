"""Sheets of county offices and rural advisers: labels beside labels over the table, short headings, samples to the right.

Every site, laboratory and number is invented; each meaning is typed by hand. Each layout failed when first read, and its
docstring says what mended it.
"""

from __future__ import annotations

from datetime import datetime
from functools import partial

import reports_crosstabs as crosstabs
from reports_catalog import Layout, Water
from reports_written import means

GRAINS = 17.118  # mg/L as CaCO3 in a grain per US gallon
NH4 = 14.007 / 18.039  # ammonia as N in ammonium


layout, book = partial(crosstabs.layout, strict=True), partial(crosstabs.book, strict=True)


def pairs_over_results() -> Layout:
    """Two labels with their texts in each row over the table, and lead twice, of the first water and after a flush.

    The labels were taken for a table of one sample that had no rows: the well and its day were lost, and the flushed
    lead was unread. Labels are pairs where another label stands behind them or the row beneath heads one result.
    """
    rows = [
        ("MARLBECK COUNTY ENVIRONMENTAL HEALTH - PRIVATE WELL RESULTS",),
        ("Printed", "11/20/2026"),
        (),
        ("Well:", "W-17 Larkspur Lane", "", "Sampled by:", "owner"),
        ("Collected:", "10/28/2026 07:40", "", "Rec'd:", "10/28/2026 10:15"),
        (),
        ("Test", "Your Result", "Health Limit", "OK?"),
        ("Total Coliform (per 100 mL)", "Present", "Absent", "NO"),
        ("E. coli (per 100 mL)", "Absent", "Absent", "YES"),
        ("Nitrate (as N), mg/L", "6.8", "10", "YES"),
        ("Arsenic, ug/L", "11.4", "10", "NO"),
        ("Lead (first draw), ug/L", "3.2", "15", "YES"),
        ("Lead (5 min flush), ug/L", "< 1", "15", "YES"),
        ("pH, units", "6.4", "6.5 to 8.5", "NO"),
        ("Hardness", "7 grains/gal", "none", ""),
        ("Iron, mg/L", "0.82", "0.3*", "NO"),
        ("* aesthetic limit",),
    ]
    items = (
        means("total_coliform", 1, float("inf")), means("e_coli", 0, 0), means("nitrate", 6.8), means("arsenic", 0.0114),
        means("lead", 0.0032), means("lead", 0, 0.001), means("ph", 6.4), means("total_hardness", 7 * GRAINS), means("iron", 0.82),
    )  # fmt: skip
    return layout("pairs_over_results", rows, Water("", "W-17 Larkspur Lane", "2026-10-28", items))


def short_heads() -> Layout:
    """Headings cut short, an uncertainty with its factor, decimal commas and a point for thousands.

    No row was read: `Res` and `U (k=2)` were not known, so that three columns of numbers could be the result.
    """
    head = ("Lab #", "Client ref", "Sampled", "Param", "Meth", "Res", "Unit", "LOQ", "U (k=2)")
    of = ("26-0411-1", "Bore 2", "04.03.26 09:20")
    rows = [
        head,
        (*of, "Iron (dissolved)", "ICP-MS", "0,38", "mg/l", "0,01", "12%"),
        (*of, "Manganese (dissolved)", "ICP-MS", "0,19", "mg/l", "0,005", "10%"),
        (*of, "Ammonium", "IC", "0,62", "mg/l", "0,02", "9%"),
        (*of, "Chloride", "IC", "<0,5", "mg/l", "0,5", ""),
        (*of, "Electrical conductivity 25°C", "Electrode", "1.240", "µS/cm", "10", "3%"),
        (*of, "Coliforms", "Tray", "0", "MPN/100 ml", "", ""),
        (*of, "HPC 22 °C", "Plate", ">300", "CFU/ml", "", ""),
    ]
    items = (
        means("iron", 0.38, fraction="dissolved"), means("manganese", 0.19, fraction="dissolved"), means("ammonia", 0.62 * NH4),
        means("chloride", 0, 0.5), means("specific_conductance", 1240), means("total_coliform", 0), means("colony_count_22", 300, float("inf")),
    )  # fmt: skip
    return layout("short_heads", rows, Water("26-0411-1", "Bore 2", "2026-03-04", items), delimiter=";")


def labels_beside_a_site() -> Layout:
    """Samples and their days to the right of what is said of the place, over determinands, units and standards.

    Three samples were read as one: their labels stand behind another label and its text.
    """
    rows = [
        ("Report of Analysis",),
        ("Site", "Plover Farm", "", "Sample", "PF-1 (raw)", "PF-2 (treated)", "PF-3 (tap)"),
        ("", "", "", "Date", "14/05/2026", "14/05/2026", "14/05/2026"),
        ("Group", "Determinand", "Unit", "PCV"),
        ("Metals", "Aluminium", "ug/l", "200", "310", "12", "9"),
        ("", "Copper", "mg/l", "2", "0.01", "0.02", "1.8"),
        ("", "Lead", "ug/l", "10", "<0.5", "<0.5", "14"),
        ("Physical", "Turbidity", "NTU", "4", "6.1", "0.2", "0.3"),
        ("", "pH", "", "6.5-9.5", "5.6", "7.4", "7.3"),
        ("Micro", "E. coli", "no./100ml", "0", "4", "0", "0"),
    ]
    raw = (
        means("aluminum", 0.31), means("copper", 0.01), means("lead", 0, 0.0005), means("turbidity", 6.1), means("ph", 5.6),
        means("e_coli", 4),
    )  # fmt: skip
    treated = (
        means("aluminum", 0.012), means("copper", 0.02), means("lead", 0, 0.0005), means("turbidity", 0.2), means("ph", 7.4),
        means("e_coli", 0),
    )  # fmt: skip
    tap = (
        means("aluminum", 0.009), means("copper", 1.8), means("lead", 0.014), means("turbidity", 0.3), means("ph", 7.3),
        means("e_coli", 0),
    )  # fmt: skip
    waters = (("PF-1 (raw)", raw), ("PF-2 (treated)", treated), ("PF-3 (tap)", tap))
    return layout(
        "labels_beside_a_site", rows, *(Water(name, "Plover Farm", "2026-05-14", items) for name, items in waters)
    )


def orders_and_places() -> Layout:
    """Labels side by side under one that says nothing of the water, a second row of headings with the uncertainty's sign.

    The place and the day were lost: the first row was taken for a table of one sample.
    """
    rows = [
        ("Laboratory report",),
        ("Customer", "Household", "", "Order", "55-20"),
        ("Sampling location", "Kitchen", "", "Sampled", "12.03.2026 08:10"),
        ("Sampled by", "lab", "", "Arrived", "12.03.2026 13:00"),
        (),
        ("Analysis", "Result", "", "Unit", "Method", "Recommended"),
        ("", "", "±"),
        ("Iron Fe", "0.82", "0.12", "mg/l", "M 3028", "<0.4"),
        ("Manganese Mn", "0.310", "0.047", "mg/l", "M 3033", "<0.1"),
        ("Fluoride F", "1.9", "0.3", "mg/l", "ISO 10304", "<1.5"),
        ("Radon Rn-222", "640", "64", "Bq/l", "internal", "<1000"),
        ("Uranium U", "38", "6", "µg/l", "ICP-MS", "<30"),
        ("Escherichia coli", "0", "", "cfu/100 ml", "M 3016", "0"),
        ("Coliform bacteria", "12", "", "cfu/100 ml", "M 3016", "<100"),
    ]
    items = (
        means("iron", 0.82), means("manganese", 0.31), means("fluoride", 1.9), means("radon_222", 576, 704), means("uranium", 0.038),
        means("e_coli", 0), means("total_coliform", 12),
    )  # fmt: skip
    return layout("orders_and_places", rows, Water("", "Kitchen", "2026-03-12", items))


def points_of_a_letter() -> Layout:
    """A letter with a point before each result, a limit in brackets and a word about it behind one.

    Not one of the points was read: the point is taken off the line.
    """
    text = """Dear household,

Thank you for sending us a sample of your well water, taken on April 14, 2026 from the kitchen tap.
We found the following:

  - Nitrate (as N): 12.4 mg/L  (limit 10 mg/L)  ** EXCEEDS **
  - Nitrite (as N): less than 0.02 mg/L
  - Total coliform bacteria: PRESENT
  - E. coli: ABSENT
  • Lead: 2.1 ug/L
  • pH: 6.7

Hardness was 14 grains per gallon, which is considered very hard.
No pesticides were tested.
"""
    items = (
        means("nitrate", 12.4), means("nitrite", 0, 0.02), means("total_coliform", 1, float("inf")), means("e_coli", 0, 0),
        means("lead", 0.0021), means("ph", 6.7), means("total_hardness", 14 * GRAINS),
    )  # fmt: skip
    return Layout("txt_points_of_a_letter", "txt", text.encode(), (Water("", "", "2026-04-14", items),), strict=True)


def day_and_time_apart() -> Layout:
    """The time of day two blanks behind the day, in lines set out by blanks.

    The time was lost: it stands in a cell of its own.
    """
    text = """TALLGROVE WATER TESTING                                    Page 1 of 1
Owner: A. Resident          Well depth: 140 ft     Sample point: kitchen cold tap
Collected: 06/29/2026  6:55 AM   Received: 06/29/2026 11:30 AM

                              Result     Units      MCL/SMCL     RL     Method
  Arsenic                      0.0134    mg/L        0.010      0.001   200.8
  Fluoride                     2.6       mg/L        4 / 2      0.1     300.0
  Nitrate-N                    ND        mg/L        10         0.1     300.0
  Iron, total                  0.05 J    mg/L        0.3        0.1     200.7
  E. coli                      ABSENT    per 100 mL  Absent             9223
"""
    items = (
        means("arsenic", 0.0134), means("fluoride", 2.6), means("nitrate", 0, 0.1), means("iron", 0, 0.1, "total"),
        means("e_coli", 0, 0),
    )  # fmt: skip
    return Layout("txt_day_and_time_apart", "txt", text.encode(), (Water("", "", "2026-06-29", items),), strict=True)


def labels_over_units() -> Layout:
    """Labels of the samples in the column of the units; quality control that names its sample behind its kind.

    The units were lost, and the spike and the duplicate were controls.
    """
    rows = [
        ("Client:", "Household Brennock", None, "Project:", "Well check"),
        ("Lab batch", "B-2291"),
        (),
        (None, None, "Sample ID", "KB-1", "KB-2"),
        (None, None, "Date sampled", datetime(2026, 5, 4, 8, 0), datetime(2026, 5, 4, 8, 20)),
        ("Test", "Method", "Units"),
        ("Iron", "ICP", "mg/L", 3.4, 0.05),
        ("Manganese", "ICP", "ug/L", 420, 310),
        ("pH", "Meter", None, 6.6, 6.7),
        ("E. coli", "Tray", "MPN/100 mL", "<1", "<1"),
    ]
    control = [
        ("QC type", "Test", "Result", "Units", "Recovery %"),
        ("Method blank", "Iron", "<0.01", "mg/L", None),
        ("LCS", "Iron", 1.02, "mg/L", 102),
        ("Matrix spike KB-1", "Iron", 4.38, "mg/L", 98),
        ("Duplicate KB-2", "Manganese", 312, "ug/L", None),
    ]
    one = (means("iron", 3.4), means("manganese", 0.42), means("ph", 6.6), means("e_coli", 0, 0))
    two = (means("iron", 0.05), means("manganese", 0.31), means("ph", 6.7), means("e_coli", 0, 0))
    waters = (Water("KB-1", "", "2026-05-04", one), Water("KB-2", "", "2026-05-04", two))
    return book("labels_over_units", [("Summary", rows), ("QC", control)], *waters, quality_control=4)


def abbreviated() -> Layout:
    """A data file whose headings are cut to letters, the day a spreadsheet's number with its time.

    The kind of sample was not read, so that a field duplicate and an equipment blank stood among the household's
    waters; nor were fractions and days.
    """
    head = (
        "sample_no", "loc", "coll_dt", "anl", "anl_cas", "res", "res_txt", "uom", "rl", "mdl", "qual", "frac", "smp_typ", "dil",
    )  # fmt: skip
    arsenic, lead = ("Arsenic", "7440-38-2"), ("Lead", "7439-92-1")
    at, limits = ("Well 3", 46082.35), (0.001, 0.0003)
    rows = [
        ("LIMS export",),
        head,
        ("S1", *at, *arsenic, 0.0123, "0.0123", "mg/L", *limits, "", "T", "N", 1),
        ("S1", *at, *arsenic, 0.0119, "0.0119", "mg/L", *limits, "", "D", "N", 1),
        ("S1", *at, *lead, None, "ND", "mg/L", *limits, "U", "T", "N", 1),
        ("S2", *at, *arsenic, 0.0121, "0.0121", "mg/L", *limits, "", "T", "FD", 1),
        ("S3", "", 46082.35, *arsenic, None, "<0.001", "mg/L", *limits, "U", "T", "EB", 1),
        ("MB1", "", None, *lead, None, "<0.001", "mg/L", *limits, "U", "T", "MB", 1),
    ]
    items = (
        means("arsenic", 0.0123, fraction="total"), means("arsenic", 0.0119, fraction="dissolved"),
        means("lead", 0, 0.001, "total", flag="U"),
    )  # fmt: skip
    return book("abbreviated", [("Lab", rows)], Water("S1", "Well 3", "2026-03-01", items), quality_control=3)


def unknown_kinds() -> Layout:
    """Codes of the kinds of samples under a heading that nobody knows.

    The duplicate and the blank were routine: a column of such codes is known by what it holds.
    """
    rows = [
        ("no", "well", "analyte", "res", "uom", "kq"),
        ("1", "W1", "Arsenic", "3.1", "ug/L", "N"),
        ("2", "W1", "Arsenic", "3.2", "ug/L", "FD"),
        ("3", "W1", "Arsenic", "<1", "ug/L", "EB"),
        ("4", "W2", "Arsenic", "<1", "ug/L", "N"),
    ]
    waters = (Water("", "W1", "", (means("arsenic", 0.0031),)), Water("", "W2", "", (means("arsenic", 0, 0.001),)))
    return layout("unknown_kinds", rows, *waters, quality_control=2)


def samples_numbered_above() -> Layout:
    """Two tables side by side under "Sample 1: Upper well" and "Sample 2: Lower well".

    They were one water: a title with a colon named none.
    """
    rows = [
        ("Sample 1: Upper well", None, None, None, "Sample 2: Lower well"),
        ("Analyte", "Result", "Units", None, "Analyte", "Result", "Units"),
        ("Chloride", 12, "mg/L", None, "Chloride", 88, "mg/L"),
        ("Nitrate-N", "<0.1", "mg/L", None, "Nitrate-N", 3.3, "mg/L"),
        ("pH", 6.8, "SU", None, "pH", 7.4, "SU"),
    ]
    one = (means("chloride", 12), means("nitrate", 0, 0.1), means("ph", 6.8))
    two = (means("chloride", 88), means("nitrate", 3.3), means("ph", 7.4))
    waters = (Water("", "Sample 1: Upper well", "", one), Water("", "Sample 2: Lower well", "", two))
    return book("samples_numbered_above", [("Report", rows)], *waters)


def remarks_behind() -> Layout:
    """A household a row, with a remark behind its results.

    The row with "advised" vanished as a row of limits: such words name a row only before its results.
    """
    rows = [
        ("Owner ID", "Sample date", "Coliform", "E.coli", "Nitrate as N (mg/L)", "Comments"),
        (1, "3/14/26", "Pos", "Neg", "5.2", "resample"),
        (2, "3/14/26", "Neg", "Neg", "11.8", "advised"),
        (3, "3/15/26", "Neg", "Neg", "<0.1", ""),
    ]
    found, none = float("inf"), (0, 0)
    waters = (
        Water(
            "1", "", "2026-03-14", (means("total_coliform", 1, found), means("e_coli", *none), means("nitrate", 5.2))
        ),
        Water("2", "", "2026-03-14", (means("total_coliform", *none), means("e_coli", *none), means("nitrate", 11.8))),
        Water(
            "3", "", "2026-03-15", (means("total_coliform", *none), means("e_coli", *none), means("nitrate", 0, 0.1))
        ),
    )
    return book("remarks_behind", [("Wells", rows)], *waters)


def surrogates_between() -> Layout:
    """Surrogates under a title of their own behind one group of results, and another group behind them.

    The second group was quality control: surrogates end with the next title.
    """
    rows = [
        ("Sample ID:", "BR-7"),
        ("Collected:", datetime(2026, 7, 1, 7, 15)),
        (),
        ("Anions (EPA 300.0)",),
        ("Analyte", "Result", "RL", "Units"),
        ("Chloride", 41.2, 1, "mg/L"),
        ("Nitrate as N", "ND", 0.1, "mg/L"),
        ("Surrogates",),
        ("Dichloroacetate", "97", "80-120", "%"),
        (),
        ("Volatile organics (EPA 524.2)",),
        ("Analyte", "Result", "RL", "Units"),
        ("Benzene", "ND", 0.5, "ug/L"),
        ("MTBE", "0.31 J", 0.5, "ug/L"),
        ("4-Bromofluorobenzene (surr.)", "101", "70-130", "% Rec"),
    ]
    items = (
        means("chloride", 41.2), means("nitrate", 0, 0.1), means("benzene", 0, 0.0005),
        means("methyl_tert_butyl_ether", 0, 0.0005, flag="J"),
    )  # fmt: skip
    return book("surrogates_between", [("Lab", rows)], Water("BR-7", "", "2026-07-01", items), unread=2)


LAYOUTS = (
    pairs_over_results,
    short_heads,
    labels_beside_a_site,
    orders_and_places,
    points_of_a_letter,
    day_and_time_apart,
    labels_over_units,
    abbreviated,
    unknown_kinds,
    samples_numbered_above,
    remarks_behind,
    surrogates_between,
)
