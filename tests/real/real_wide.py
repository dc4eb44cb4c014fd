"""Whole truths of the wide tables: every column, every row, cell by cell with csv and openpyxl alone.

Names, units and forms were written down from the files' own rows of headings. Where a file prints no unit the number is taken as
it stands, and the test beside them asks that this was said.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator

from real_truth import ANY, FOLDER, HCO3, INF, NO3, PO4, True_, workbook

NH4 = 14.007 / 18.039
ELEMENTS = {
    "Li": "lithium", "Be": "beryllium", "B": "boron", "Sc": "scandium", "Ti": "titanium", "V": "vanadium", "Cr": "chromium",
    "Mn": "manganese", "Co": "cobalt", "Ni": "nickel", "Cu": "copper", "Zn": "zinc", "Ga": "gallium", "Ge": "germanium",
    "As": "arsenic", "Se": "selenium", "Rb": "rubidium", "Sr": "strontium", "Y": "yttrium", "Zr": "zirconium", "Nb": "niobium",
    "Mo": "molybdenum", "Cd": "cadmium", "Sn": "tin", "Sb": "antimony", "Cs": "cesium", "Ba": "barium", "La": "lanthanum",
    "Ce": "cerium", "Pr": "praseodymium", "Nd": "neodymium", "Sm": "samarium", "Eu": "europium", "Gd": "gadolinium",
    "Tb": "terbium", "Dy": "dysprosium", "Ho": "holmium", "Er": "erbium", "Tm": "thulium", "Yb": "ytterbium", "Lu": "lutetium",
    "Hf": "hafnium", "Ta": "tantalum", "W": "tungsten", "Tl": "thallium", "Pb": "lead", "Bi": "bismuth", "Th": "thorium",
    "U": "uranium",
}  # fmt: skip
# Heading: analyte, the factor to its canonical form, the least that it can be.
KWALE = {
    "Cond.": ("specific_conductance", 1, 0), "Tª": ("temperature", 1, -5), "pH": ("ph", 1, -1),
    "TOC": ("total_organic_carbon", 1, 0), "Alkalinity": ("total_alkalinity", HCO3, 0), "DO": ("dissolved_oxygen", 1, 0),
    "ORP": ("oxidation_reduction_potential", 1, -INF), "eH": ("oxidation_reduction_potential", 1, -INF),
    "NH4": ("ammonia", NH4, 0), "Cl": ("chloride", 1, 0), "SO4": ("sulfate", 1, 0), "NO3": ("nitrate", NO3, 0),
    "PO4": ("orthophosphate", PO4, 0), "Br": ("bromide", 1, 0), "F": ("fluoride", 1, 0), "Ca": ("calcium", 1, 0),
    "Mg": ("magnesium", 1, 0), "Na": ("sodium", 1, 0), "K": ("potassium", 1, 0), "Fe": ("iron", 1, 0),
    "Si": ("silicon", 1, 0), "Al": ("aluminum", 1, 0), "S": ("sulfur", 1, 0), "P": ("phosphorus", 1, 0),
    "d 18O": ("delta_oxygen_18", 1, -1000), "d2H": ("delta_hydrogen_2", 1, -1000),
}  # fmt: skip
METALS = ("Fe", "Al", "Si", "S")
# The authors' cleaned file: other headings, no units, and a limit of "<0,8" that became the number 0.7999.
CLEANED = {
    "conductivity": "Cond.", "alkalinity": "Alkalinity", "delta_O_18": "d 18O", "delta_H_2": "d2H",
}  # fmt: skip


def kwale_whole() -> Iterator[True_]:
    """The three sheets: names, units and detection limits in rows 1 to 3; metals in ppb behind the repeated Code column.

    A number without a mark is what is printed, below the detection limit too, as the authors give it; a zero is not detected,
    and bounded by that limit. `<LOQ` has no bound: a limit of quantification lies above the limit that is printed. What is
    below zero where it cannot be is no result.
    """
    for sheet in workbook("wide/kwale_samples_raw.xlsx").worksheets:
        heads, units, limits, *rows = list(sheet.iter_rows(values_only=True))
        for column, head in enumerate(heads, 1):
            name = str(head or "").strip()
            unit = str(units[column - 1] or "")
            if unit == "ppb" and name in ELEMENTS:
                analyte, factor, least = ELEMENTS[name], 0.001, 0
            elif name in KWALE and unit != "ppb":
                analyte, factor, least = KWALE[name]
            else:
                continue
            for number, row in enumerate(rows, 4):
                bounds = _bounds(row[column - 1], factor, least)
                limit = re.match(r"[\d.,]+", str(limits[column - 1] or ""))
                if bounds == (0, 0) and limit and least == 0:
                    bounds = 0.0, float(limit[0].replace(",", ".")) * factor
                if bounds is not None:
                    yield True_(number, column, analyte, ANY, *bounds, sheet.title)


def _bounds(cell, factor: float, least: float) -> tuple[float, float] | None:
    if isinstance(cell, str) and cell.startswith("<") and cell[1:2].isdigit():
        return 0.0, float(cell[1:].replace(",", ".")) * factor
    if isinstance(cell, str) and cell.startswith(">"):
        return float(cell[1:]) * factor, INF
    if isinstance(cell, str) and cell.strip() == "<LOQ":
        return 0.0, INF
    if not isinstance(cell, int | float) or isinstance(cell, bool) or cell * factor < least:
        return None
    return cell * factor, cell * factor


def kwale_cleaned() -> Iterator[True_]:
    """The cleaned file as CSV: no unit is printed, and every number of an ion is taken as it stands.

    Of elements some columns are in mg/L and most in µg/L, as the raw file shows and this one does not: they are unread.
    """
    with open(FOLDER / "wide/kwale_water_samples.csv", encoding="utf-8", newline="") as lines:
        head, *rows = list(csv.reader(lines))
    yield from _cleaned(head, rows, None)


def kwale_cleaned_book() -> Iterator[True_]:
    """The same as a workbook that openpyxl refuses, from its XML."""
    from test_real_printed import damaged

    head, *rows = damaged(FOLDER / "wide/kwale_water_samples.xlsx")
    yield from _cleaned(head, rows, "Sheet 1")


def _cleaned(head, rows, sheet: str | None) -> Iterator[True_]:
    for column, name in enumerate(head, 1):
        if name in CLEANED or (name in KWALE and name not in ("Cond.", *METALS)):
            analyte, factor, least = KWALE[CLEANED.get(name, name)]
            factor = 1 if name == "alkalinity" else factor  # its form stands in the raw file alone
        else:
            continue
        for number, row in enumerate(rows, 2):
            cell = row[column - 1] if column <= len(row) else ""
            if cell in ("", "NA") or float(cell) * factor < least:
                continue
            yield True_(number, column, analyte, ANY, float(cell) * factor, float(cell) * factor, sheet)


def gardenroots() -> Iterator[True_]:
    """Two columns for each metal: where one says `<LOD` (or `≤LOD`) the number of the other was put in its place."""
    with open(FOLDER / "wide/gardenroots_water.csv", encoding="utf-8", newline="") as lines:
        head, *rows = list(csv.reader(lines))
    for column, name in enumerate(head, 1):
        if not name.endswith("Raw"):
            continue
        metal = name.removesuffix("Raw")
        other = head.index(metal) + 1
        undetected = {at: sum("LOD" in row[at - 1] for row in rows) for at in (other, column)}
        kept = column if undetected[column] > undetected[other] else other
        for number, row in enumerate(rows, 2):
            cell = row[kept - 1]
            if "LOD" in cell:
                yield True_(number, kept, metal, ANY, 0.0, INF)
            elif cell:
                yield True_(number, kept, metal, ANY, float(cell) * 0.001, float(cell) * 0.001)


def plain(file: str, columns: dict[str, tuple[str, float]], remark: str = "") -> Iterator[True_]:
    """Every column of an analyte, every row; `remark` is what the columns of `<` are called behind the name."""
    with open(FOLDER / file, encoding="utf-8-sig", newline="") as lines:
        head, *rows = list(csv.reader(lines))
    for name, (analyte, factor) in columns.items():
        at = head.index(name)
        for number, row in enumerate(rows, 2):
            if row[at] in ("", "NA"):
                continue
            value = float(row[at]) * factor
            censored = bool(remark) and row[head.index(name + remark)].strip() == "<"
            yield True_(number, at + 1, analyte, ANY, 0.0 if censored else value, value)


SPELLED = {
    name: (name.lower(), 1.0)
    for name in (
        "Calcium",
        "Magnesium",
        "Sodium",
        "Potassium",
        "Carbonate",
        "Bicarbonate",
        "Sulfate",
        "Chloride",
        "Fluoride",
    )
} | {"Nitrate": ("nitrate", 1.0)}
MENOMINEE = {name: of for name, of in SPELLED.items() if name not in ("Carbonate", "Bicarbonate")} | {
    "CO3": ("carbonate", 1.0), "HCO3": ("bicarbonate", 1.0),
}  # fmt: skip
CONDAMINE = {
    "Ca": ("calcium", 1.0), "Mg": ("magnesium", 1.0), "Na": ("sodium", 1.0), "K": ("potassium", 1.0),
    "HCO3": ("bicarbonate", 1.0), "CO3": ("carbonate", 1.0), "Cl": ("chloride", 1.0), "SO4": ("sulfate", 1.0),
}  # fmt: skip

# Milligrams in a milliequivalent.
EQUIVALENTS = {
    "Ca": ("calcium", 20.039), "Mg": ("magnesium", 12.153), "Na": ("sodium", 22.990), "K": ("potassium", 39.098),
    "Alk": ("total_alkalinity", 50.043), "Cl": ("chloride", 35.453), "SO4": ("sulfate", 48.030), "F": ("fluoride", 18.998),
}  # fmt: skip

WIDE = {
    "nwis/smwr_IonBalance.csv": lambda: plain("nwis/smwr_IonBalance.csv", EQUIVALENTS),
    "wide/kwale_samples_raw.xlsx": kwale_whole,
    "wide/kwale_water_samples.csv": kwale_cleaned,
    "wide/kwale_water_samples.xlsx": kwale_cleaned_book,
    "wide/gardenroots_water.csv": gardenroots,
    "wide/smwr_MiscGW.csv": lambda: plain("wide/smwr_MiscGW.csv", SPELLED),
    "wide/condamine_peeters_s02.csv": lambda: plain("wide/condamine_peeters_s02.csv", CONDAMINE),
    "nwis/smwr_MenomineeMajorIons.csv": lambda: plain("nwis/smwr_MenomineeMajorIons.csv", MENOMINEE, ".rmk"),
    "nwis/smwr_PugetNitrate.csv": lambda: plain("nwis/smwr_PugetNitrate.csv", {"nitrate": ("nitrate", 1.0)}),
    "nwis/smwr_EasternIowaNO3.csv": lambda: plain(
        "nwis/smwr_EasternIowaNO3.csv", {"C1Nitrate": ("nitrate", 1.0), "C2Nitrate": ("nitrate", 1.0)}, ".rmk"
    ),
}
