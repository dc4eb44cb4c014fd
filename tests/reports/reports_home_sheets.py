"""Sheets that households keep of their own well, with words of their own for what a laboratory calls otherwise.

Everything is invented; each meaning is typed by hand. Each layout failed when first read, and its docstring says what
mended it.
"""

from __future__ import annotations

from openpyxl import Workbook
from reports_catalog import INF, Layout, Water
from reports_written import NAN, U, lines, means, saved

GRAIN = 17.118  # mg/L as CaCO3 in a grain per US gallon


def ten_years() -> Layout:
    """Months as columns, blanks where nothing was tested, units in the names, a column `Rule of thumb` before them all.

    The guide values were read as a sample's, and grains as mg/L: a bare word among columns of days is no day's results,
    and the unit in brackets is no longer part of a spelling.
    """
    rows = [
        ("Our well - test results since 2014",),
        ("What was tested", "Rule of thumb", "June 2014", "May 2016", "Aug 2019", "Oct 2022", "Apr 2025"),
        ("pH", "6.5-8.5", 7.1, 7.2, None, 7.0, 7.3),
        ("Hardness (grains)", "", 14, None, 15, 14.5, None),
        ("Iron (ppm)", "0.3", 0.8, 1.1, None, 0.02, "nd"),
        ("Nitrate (ppm as N)", "10", 2.2, 2.9, 3.3, None, 5.1),
        ("Arsenic (ppb)", "10", None, None, 6, None, "<1"),
        ("Coliform", "0", "neg", "pos", "neg", "neg", "neg"),
    ]
    clean, found = means("total_coliform", 0, 0), means("total_coliform", 1, INF)
    told = {
        "June 2014": (means("ph", 7.1), means("total_hardness", 14 * GRAIN), means("iron", 0.8), means("nitrate", 2.2), clean),
        "May 2016": (means("ph", 7.2), means("iron", 1.1), means("nitrate", 2.9), found),
        "Aug 2019": (means("total_hardness", 15 * GRAIN), means("nitrate", 3.3), means("arsenic", 6 * U), clean),
        "Oct 2022": (means("ph", 7.0), means("total_hardness", 14.5 * GRAIN), means("iron", 0.02), clean),
        "Apr 2025": (means("ph", 7.3), means("iron", 0, NAN), means("nitrate", 5.1), means("arsenic", 0, U), clean),
    }  # fmt: skip
    book = Workbook()
    for row in rows:
        book.active.append(row)
    waters = tuple(Water(day, day, "", items) for day, items in told.items())
    return Layout("xlsx_ten_years", "xlsx", saved(book), waters)


def what_we_looked_for() -> Layout:
    """Plain words for headings: the unit's is `Expressed here as`, which no row of the vocabulary knows.

    Lead in ppb was read as mg/L: a column of nothing but units is the units'.
    """
    rows = [
        ("Name of customer:", "B. Quill"),
        ("Bottle no:", "7731"),
        (),
        ("We looked for", "Level found", "Expressed here as", "Action level", "How you compare"),
        ("Lead", "0.8", "ppb", "15", "Below"),
        ("Copper", "0.95", "ppm", "1.3", "Below"),
        ("Nitrate (as nitrogen)", "12", "ppm", "10", "ABOVE"),
        ("Bacteria (total coliform)", "Found", "", "None", ""),
        ("E. coli", "Not found", "", "None", ""),
    ]
    items = (
        means("lead", 0.8 * U), means("copper", 0.95), means("nitrate", 12), means("total_coliform", 1, INF),
        means("e_coli", 0, 0),
    )  # fmt: skip
    return Layout("csv_what_we_looked_for", "csv", lines(rows).encode(), (Water("7731", "", "", items),))


def years_of_germs() -> Layout:
    """A log of one tap by days, A and P for absent and present, most chemistry left blank.

    It was no table at all: under names of organisms, letters are values too.
    """
    rows = [
        ("Date", "Where", "Lab", "Total coliform", "E. coli", "Nitrate-N mg/L", "Notes"),
        ("4/12/24", "Kitchen", "County", "A", "A", "2.1", "after rain"),
        ("4/20/25", "Kitchen", "County", "P", "A", "2.4", "shocked the well after, 100 ppm chlorine"),
        ("5/2/25", "Kitchen", "County", "A", "A", "", "retest"),
        ("4/19/26", "Kitchen", "County", "A", "A", "3.0", ""),
    ]
    told = (
        ("2024-04-12", 0, 2.1), ("2025-04-20", 1, 2.4), ("2025-05-02", 0, None), ("2026-04-19", 0, 3.0),
    )  # fmt: skip
    waters = [
        Water(
            "", "", day,
            (
                means("total_coliform", found, INF if found else 0), means("e_coli", 0, 0),
                *((means("nitrate", nitrate),) if nitrate is not None else ()),
            ),
            "County",
        )
        for day, found, nitrate in told
    ]  # fmt: skip
    return Layout("csv_years_of_germs", "csv", lines(rows).encode(), tuple(waters))


def neighbours_averages() -> Layout:
    """Wells down the side with the standard, the county's and the neighbours' averages as rows among them.

    The neighbours' average was read as a sample: words of places go with averages and limits in a label.
    """
    rows = [
        ("", "Nitrate-N (mg/L)", "Iron (mg/L)", "pH"),
        ("Standard", "10", "0.3", "6.5-8.5"),
        ("County average", "2.2", "0.4", "7.3"),
        ("Your well", "5.5", "0.1", "6.9"),
        ("Neighbour avg", "3.1", "0.2", "7.0"),
    ]
    items = (means("nitrate", 5.5), means("iron", 0.1), means("ph", 6.9))
    return Layout("csv_neighbours_averages", "csv", lines(rows).encode(), (Water("Your well", "", "", items),))


def readings_and_last_time() -> Layout:
    """The reading before dilution and the last time's result beside this time's.

    The raw readings were read as results at a point called raw: such readings are the laboratory's own.
    """
    rows = [
        ("Sample", "Analyte", "Raw reading", "Dilution", "Final result", "Last time", "Units"),
        ("D1", "Nitrate as N", "0.82", "10", "8.2", "7.7", "mg/L"),
        ("D1", "Chloride", "2.2", "20", "44", "40", "mg/L"),
        ("D1", "Sulfate", "5.1", "5", "25.5", "30", "mg/L"),
    ]
    items = (means("nitrate", 8.2), means("chloride", 44), means("sulfate", 25.5))
    return Layout("csv_readings_and_last_time", "csv", lines(rows).encode(), (Water("D1", "", "", items),))


LAYOUTS = (ten_years, what_we_looked_for, years_of_germs, neighbours_averages, readings_and_last_time)
