"""Whole truths of files with a result a row: every row is a result, stands beside one, or is named as none, from csv alone.

Names, units and what they are in the library's words were written down from the files by eye. A zero beside a limit of reporting
is no measured zero: California's documentation of its database says of 0.000 that it and "less than the limit" are the same.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterator
from typing import NamedTuple

from real_stream import ELEMENTS
from real_truth import ANY, FOLDER, INF, LDES, NO3, True_

EQUIVALENT = 50.043 / 1000  # milligrams of CaCO3 in a microequivalent
BECQUEREL = 0.037  # in a picocurie

# California: names by their unit, and the factor of the unit; forms that differ from the canonical one by name.
CALIFORNIA = {
    "": {
        "AGGRSSIVE INDEX (CORROSIVITY)": "aggressive_index", "LANGELIER INDEX @ 60 C": "langelier_index",
        "PH, LABORATORY": "ph",
    },
    "MFL": {
        "ASBESTOS": "asbestos",
    },
    "MG/L": {
        "ALKALINITY (TOTAL) AS CACO3": "total_alkalinity", "BICARBONATE ALKALINITY": "bicarbonate",
        "BROMIDE": "bromide", "CALCIUM": "calcium", "CARBONATE ALKALINITY": "carbonate", "CHLORIDE": "chloride",
        "FLUORIDE (F) (NATURAL-SOURCE)": "fluoride", "FOAMING AGENTS (MBAS)": "anionic_surfactants",
        "HARDNESS (TOTAL) AS CACO3": "total_hardness", "HYDROXIDE ALKALINITY": "hydroxide", "MAGNESIUM": "magnesium",
        "NITRATE (AS N)": "nitrate", "NITRATE (AS NO3)": "nitrate",
        "NITRATE + NITRITE (AS N)": "nitrate_plus_nitrite", "NITRITE (AS N)": "nitrite", "POTASSIUM": "potassium",
        "SODIUM": "sodium", "SULFATE": "sulfate", "TOTAL DISSOLVED SOLIDS": "total_dissolved_solids",
    },
    "NTU": {
        "TURBIDITY, LABORATORY": "turbidity",
    },
    "PCI/L": {
        "COMBINED RA 226 + RA 228": "radium_226_plus_228", "GROSS ALPHA": "gross_alpha", "GROSS BETA": "gross_beta",
        "RADIUM 226": "radium_226", "RADIUM 228": "radium_228", "URANIUM (PCI/L)": "uranium_activity",
    },
    "PG/L": {
        "2,3,7,8-TCDD (DIOXIN)": "dioxin_2_3_7_8_tcdd",
    },
    "TON": {
        "ODOR THRESHOLD @ 60 C": "odor",
    },
    "UG/L": {
        "1,1,1,2-TETRACHLOROETHANE": "1_1_1_2_tetrachloroethane", "1,1,1-TRICHLOROETHANE": "1_1_1_trichloroethane",
        "1,1,2,2-TETRACHLOROETHANE": "1_1_2_2_tetrachloroethane",
        "1,1,2-TRICHLORO-1,2,2-TRIFLUOROETHANE": "1_1_2_trichlorotrifluoroethane",
        "1,1,2-TRICHLOROETHANE": "1_1_2_trichloroethane", "1,1-DICHLOROETHANE": "1_1_dichloroethane",
        "1,1-DICHLOROETHYLENE": "1_1_dichloroethylene", "1,1-DICHLOROPROPANE": "1_1_dichloropropane",
        "1,1-DICHLOROPROPENE": "1_1_dichloropropene", "1,2,3-TRICHLOROBENZENE": "1_2_3_trichlorobenzene",
        "1,2,3-TRICHLOROPROPANE": "1_2_3_trichloropropane", "1,2,4-TRICHLOROBENZENE": "1_2_4_trichlorobenzene",
        "1,2,4-TRIMETHYLBENZENE": "1_2_4_trimethylbenzene", "1,2-DICHLOROBENZENE": "1_2_dichlorobenzene",
        "1,2-DICHLOROETHANE": "1_2_dichloroethane", "1,2-DICHLOROPROPANE": "1_2_dichloropropane",
        "1,3,5-TRIMETHYLBENZENE": "1_3_5_trimethylbenzene", "1,3-DICHLOROBENZENE": "1_3_dichlorobenzene",
        "1,3-DICHLOROPROPANE": "1_3_dichloropropane", "1,3-DICHLOROPROPENE (TOTAL)": "1_3_dichloropropene",
        "1,4-DICHLOROBENZENE": "1_4_dichlorobenzene", "2,2-DICHLOROPROPANE": "2_2_dichloropropane",
        "2,4,5-T": "2_4_5_t", "2,4,5-TP (SILVEX)": "silvex", "2,4-D": "2_4_d", "2-CHLOROTOLUENE": "2_chlorotoluene",
        "3-HYDROXYCARBOFURAN": "3_hydroxycarbofuran", "4-CHLOROTOLUENE": "4_chlorotoluene", "ACETONE": "acetone",
        "ACRYLONITRILE": "acrylonitrile", "ALACHLOR": "alachlor", "ALDICARB": "aldicarb",
        "ALDICARB SULFONE": "aldicarb_sulfone", "ALDICARB SULFOXIDE": "aldicarb_sulfoxide", "ALDRIN": "aldrin",
        "ALUMINUM": "aluminum", "ANTIMONY": "antimony", "ARSENIC": "arsenic", "ATRAZINE": "atrazine",
        "BARIUM": "barium", "BENTAZON": "bentazon", "BENZENE": "benzene", "BENZO (A) PYRENE": "benzo_a_pyrene",
        "BERYLLIUM": "beryllium", "BORON": "boron", "BROMACIL": "bromacil", "BROMOBENZENE": "bromobenzene",
        "BROMOCHLOROMETHANE": "bromochloromethane", "BROMODICHLOROMETHANE (THM)": "bromodichloromethane",
        "BROMOFORM (THM)": "bromoform", "BROMOMETHANE": "bromomethane", "BUTACHLOR": "butachlor",
        "CADMIUM": "cadmium", "CARBARYL": "carbaryl", "CARBOFURAN": "carbofuran",
        "CARBON DISULFIDE": "carbon_disulfide", "CARBON TETRACHLORIDE": "carbon_tetrachloride",
        "CHLORDANE": "chlordane", "CHLOROETHANE": "chloroethane", "CHLOROFORM (THM)": "chloroform",
        "CHLOROMETHANE": "chloromethane", "CHROMIUM (TOTAL)": "chromium", "CHROMIUM, HEXAVALENT": "chromium_vi",
        "CIS-1,2-DICHLOROETHYLENE": "cis_1_2_dichloroethylene", "CIS-1,3-DICHLOROPROPENE": "cis_1_3_dichloropropene",
        "COPPER": "copper", "CYANIDE": "cyanide", "DACTHAL": "dcpa", "DALAPON": "dalapon",
        "DI(2-ETHYLHEXYL)ADIPATE": "bis_2_ethylhexyl_adipate",
        "DI(2-ETHYLHEXYL)PHTHALATE": "bis_2_ethylhexyl_phthalate", "DIAZINON": "diazinon",
        "DIBROMOACETIC ACID (DBAA)": "dibromoacetic_acid", "DIBROMOCHLOROMETHANE (THM)": "dibromochloromethane",
        "DIBROMOCHLOROPROPANE (DBCP)": "dibromochloropropane", "DIBROMOMETHANE": "dibromomethane",
        "DICAMBA": "dicamba", "DICHLOROACETIC ACID (DCAA)": "dichloroacetic_acid",
        "DICHLORODIFLUOROMETHANE (FREON 12)": "dichlorodifluoromethane", "DICHLOROMETHANE": "dichloromethane",
        "DIELDRIN": "dieldrin", "DIISOPROPYL ETHER": "diisopropyl_ether", "DIMETHOATE": "dimethoate",
        "DINOSEB": "dinoseb", "DIQUAT": "diquat", "ENDOTHALL": "endothall", "ENDRIN": "endrin",
        "ETHYL-TERT-BUTYL ETHER": "ethyl_tert_butyl_ether", "ETHYLBENZENE": "ethylbenzene",
        "ETHYLENE DIBROMIDE (EDB)": "ethylene_dibromide", "GLYPHOSATE": "glyphosate",
        "HALOACETIC ACIDS (5) (HAA5)": "haloacetic_acids_5", "HEPTACHLOR": "heptachlor",
        "HEPTACHLOR EPOXIDE": "heptachlor_epoxide", "HEXACHLOROBENZENE": "hexachlorobenzene",
        "HEXACHLOROBUTADIENE": "hexachlorobutadiene", "HEXACHLOROCYCLOPENTADIENE": "hexachlorocyclopentadiene",
        "IRON": "iron", "ISOPROPYLBENZENE": "isopropylbenzene", "LEAD": "lead", "LINDANE": "lindane",
        "M,P-XYLENE": "m_p_xylene", "MANGANESE": "manganese", "MERCURY": "mercury", "METHIOCARB": "methiocarb",
        "METHOMYL": "methomyl", "METHOXYCHLOR": "methoxychlor", "METHYL ETHYL KETONE": "methyl_ethyl_ketone",
        "METHYL ISOBUTYL KETONE": "methyl_isobutyl_ketone",
        "METHYL-TERT-BUTYL-ETHER (MTBE)": "methyl_tert_butyl_ether", "METOLACHLOR": "metolachlor",
        "METRIBUZIN": "metribuzin", "MOLINATE": "molinate", "MONOBROMOACETIC ACID (MBAA)": "bromoacetic_acid",
        "MONOCHLOROACETIC ACID (MCAA)": "monochloroacetic_acid", "MONOCHLOROBENZENE": "chlorobenzene",
        "N-BUTYLBENZENE": "n_butylbenzene", "N-PROPYLBENZENE (1-PHENYLPROPANE)": "n_propylbenzene",
        "NAPHTHALENE": "naphthalene", "NICKEL": "nickel", "O-XYLENE": "o_xylene", "OXAMYL": "oxamyl",
        "P-ISOPROPYLTOLUENE": "4_isopropyltoluene", "P-XYLENE": "p_xylene", "PARAQUAT": "paraquat",
        "PCB-1016 (AS DECACHLOROBIPHENYL (DCB))": "aroclor_1016", "PCB-1221 (AS DCB)": "aroclor_1221",
        "PCB-1232 (AS DCB)": "aroclor_1232", "PCB-1242 (AS DCB)": "aroclor_1242", "PCB-1248 (AS DCB)": "aroclor_1248",
        "PCB-1254 (AS DCB)": "aroclor_1254", "PCB-1260 (AS DCB)": "aroclor_1260",
        "PENTACHLOROPHENOL": "pentachlorophenol", "PERCHLORATE": "perchlorate", "PICLORAM": "picloram",
        "POLYCHLORINATED BIPHENYLS, TOTAL, AS DCB": "polychlorinated_biphenyls", "PROPACHLOR": "propachlor",
        "PROPOXUR": "propoxur", "SEC-BUTYLBENZENE": "sec_butylbenzene", "SELENIUM": "selenium", "SILVER": "silver",
        "SIMAZINE": "simazine", "STYRENE": "styrene", "TERT-AMYL-METHYL ETHER": "tert_amyl_methyl_ether",
        "TERT-BUTYL ALCOHOL": "tert_butyl_alcohol", "TERT-BUTYLBENZENE": "tert_butylbenzene",
        "TETRACHLOROETHYLENE": "tetrachloroethylene", "THALLIUM": "thallium", "THIOBENCARB": "thiobencarb",
        "TOLUENE": "toluene", "TOTAL TRIHALOMETHANES": "total_trihalomethanes", "TOXAPHENE": "toxaphene",
        "TRANS-1,2-DICHLOROETHYLENE": "trans_1_2_dichloroethylene",
        "TRANS-1,3-DICHLOROPROPENE": "trans_1_3_dichloropropene",
        "TRICHLOROACETIC ACID (TCAA)": "trichloroacetic_acid", "TRICHLOROETHYLENE": "trichloroethylene",
        "TRICHLOROFLUOROMETHANE": "trichlorofluoromethane", "VINYL CHLORIDE": "vinyl_chloride",
        "XYLENES (TOTAL)": "total_xylenes", "ZINC": "zinc",
    },
    "UNITS": {
        "COLOR": "apparent_color",
    },
    "US": {
        "SPECIFIC CONDUCTANCE": "specific_conductance",
    },
}  # fmt: skip
FACTORS = {
    "": 1,
    "MFL": 1,
    "MG/L": 1,
    "NTU": 1,
    "PCI/L": BECQUEREL,
    "PG/L": 1e-9,
    "TON": 1,
    "UG/L": 1e-3,
    "UNITS": 1,
    "US": 1,
}
FORMS = {"NITRATE (AS NO3)": NO3}
COUNTING_ERROR, DETECTABLE = " COUNTING ERROR", " MDA95"
# What is printed for a result of another row, and names of radium by a method that counts its isotopes together.
URANIUM = {"URANIUM": "URANIUM (PCI/L)"}
CALIFORNIA_NAMELESS = {
    "RA-226 OR TOTAL RA BY 903.0 C.E.",
    "RADIUM, TOTAL, MDA95-NTNC ONLY, BY 903.0",
    "DCPA (TOTAL DI & MONO ACID DEGRADATES)",
}

WISCONSIN = {
    **LDES,
    "ALKALINITY TOTAL GRAN AVAL UEQ/L": ("total_alkalinity", ANY, EQUIVALENT),
    "CHLORIDE DISS": ("chloride", "dissolved", 1),
    "CHLOROPHYLL A, FLUORESCENCE (WELSCHMAYER 1994)": ("chlorophyll_a", ANY, 0.001),
    "NITROGEN KJELDAHL TOTAL": ("kjeldahl_nitrogen", ANY, 1),
    "NITROGEN TOTAL": ("total_nitrogen", ANY, 1),
    "TEMPERATURE FIELD": ("temperature", ANY, 1),
}
# What field sheets say of the air, the lake and the meters; and a color in "SU", which is no unit of color that is known.
WISCONSIN_NAMELESS = {
    "AMBIENT AIR TEMPERATURE - FIELD", "CLOUD COVER", "DEPTH OF BOTTOM OF WATER BODY @ SAMPLE SITE, FEET",
    "DO Meter Calibrated?", "Multiparameter Meter Type", "SECCHI DEPTH - FEET", "SECCHI DEPTH HIT BOTTOM",
    "Specific Conductance (ECTestr) meter calibrated?", "USER PERCEPTION OF WATER QUALITY", "WATER COLOR (VISUAL)",
    "WATER COLUMN APPEARANCE", "WATER LEVEL (VISUAL)", "WIND DIRECTION IN DEGREES FROM TRUE N (CLOCKWISE)",
    "WIND VELOCITY (MILES PER HOUR)", "pH meter calibrated?", "COLOR",
}  # fmt: skip
QW = {
    "34247": "benzo_a_pyrene",
    "34220": "anthracene",
    "30234": "bromacil",
    "32104": "bromoform",
}


class Rows(NamedTuple):
    """What becomes of every row of a file: results, rows that print something of a result of another row, and the unread."""

    results: list[True_]
    beside: dict[int, tuple[str, str, float]]  # row: analyte, column of the results' frame, number
    unread: set[int]


def records(file: str) -> Iterator[tuple[int, dict[str, str]]]:
    """The records of a file with their rows."""
    with open(FOLDER / file, encoding="utf-8-sig", newline="") as lines:
        head, *rows = list(csv.reader(lines))
    for row, cells in enumerate(rows, 2):
        yield row, dict(zip(head, cells, strict=True))


def california() -> Rows:
    """XMOD `<` makes the finding a bound, or the limit where the finding is zero; `-` is the sign of the finding.

    An activity has the counting error of its own sample's row on either side.
    """
    made = Rows([], {}, set())
    known = {name: (analyte, unit) for unit, names in CALIFORNIA.items() for name, analyte in names.items()}
    table = list(records("lab/ca_waterboards_chem_sub.csv"))
    errors = {}
    for row, cells in table:
        name = cells["CHEMICAL__"]
        for ending, column in ((COUNTING_ERROR, "uncertainty"), (DETECTABLE, "detection_limit")):
            base = name.removesuffix(ending)
            if base != name:
                base = URANIUM.get(base, base)
                amount = float(cells["FINDING"]) * BECQUEREL
                made.beside[row] = (known[base][0], column, amount)
                if column == "uncertainty":
                    errors[cells["PRIM_STA_C"], cells["SAMP_DATE"], cells["SAMP_TIME"], base] = amount
    for row, cells in table:
        name = cells["CHEMICAL__"]
        if name in CALIFORNIA_NAMELESS:
            made.unread.add(row)
        elif row not in made.beside:
            analyte, unit = known[name]
            assert unit == cells["RPT_UNIT"]
            factor = FACTORS[unit] * FORMS.get(name, 1)
            value, limit = float(cells["FINDING"]) * factor, float(cells["DLR"] or 0) * factor
            error = errors.get((cells["PRIM_STA_C"], cells["SAMP_DATE"], cells["SAMP_TIME"], name), 0.0)
            assert cells["XMOD"] in ("", "<", "-")
            if cells["XMOD"] == "<" or (value == 0 and limit > 0 and unit != "PCI/L"):
                low, high = 0.0, value or limit or INF
            else:
                value = -value if cells["XMOD"] == "-" else value
                low, high = value - error, value + error
            made.results.append(True_(row, None, analyte, ANY, low, high))
    return made


def _wisconsin(file: str, name: str, result: str, unit: str, comment: str) -> Rows:
    """ND lies below the limit of quantification; a number is printed as it is, between the limits too.

    One comment says that the instrument measures no more than the number: it is a least.
    """
    made = Rows([], {}, set())
    for row, cells in records(file):
        text, value = cells[name].strip(), cells[result]
        if text in WISCONSIN_NAMELESS or value == "DEGREES C":  # a unit where the number belongs
            made.unread.add(row)
            continue
        analyte, fraction, factor = WISCONSIN[text]
        if value == "ND":
            made.results.append(True_(row, None, analyte, fraction, 0.0, float(cells["LOQ"]) * factor))
            continue
        number = float(value) * factor
        if cells[unit] == "DEGREES F":
            number = (number - 32) / 1.8
            if number < -5:  # no water: a number in °C under the other unit
                made.unread.add(row)
                continue
        high = INF if "actual alkalinity result is greater than" in cells[comment] else number
        made.results.append(True_(row, None, analyte, fraction, number, high))
    return made


def ldes() -> Rows:
    """The laboratory's own file."""
    file = "lab/wi_LDES_csls_2020_01_28.csv"
    with open(FOLDER / file, encoding="utf-8-sig", newline="") as lines:
        assert len(list(csv.reader(lines))) == 2889
    return _wisconsin(file, "DNR Parameter Description", "Result value", "Units", "Result Comment")


def swims() -> Rows:
    """The same results in the agency's export, with field readings."""
    return _wisconsin("lab/wi_SWIMS_csls_2020_06_01.csv", "Description", "Result", "Units", "Result Comments")


def qwdata() -> Rows:
    """Parameter codes of the US Geological Survey in µg/L: `<`, an estimate (E) and one that is present (M).

    An estimate below the reporting level lies between nothing and that level.
    """
    made = Rows([], {}, set())
    for row, cells in records("nwis/dr_nwisData_qw.csv"):
        analyte, remark = QW[cells["parm_cd"]], cells["remark_cd"]
        value = float(cells["result_va"]) * 0.001 if cells["result_va"] else None
        level = float(cells["rpt_lev_va"]) * 0.001 if cells["rpt_lev_va"] else 0.0
        if remark == "M":
            low, high = 0.0, INF
        elif remark == "<":
            low, high = 0.0, value
        elif remark == "E" and value < level:
            low, high = 0.0, level
        else:
            low, high = value, value
        made.results.append(True_(row, None, analyte, ANY, low, high))
    return made


def stream_table() -> Rows:
    """The ICP table alone: replicates are results, averages and deviations none; argon and scandium are standards in percent.

    An empty cell is below the limit in the sheet that this was made from, and here it is nothing.
    """
    made = Rows([], {}, set())
    for row, cells in records("lab/csm_20170829_icp_aes.csv"):
        if cells["dl_mg_l"].startswith("%") or not any(list(cells.values())[2:]):
            made.unread.add(row)
            continue
        analyte = ELEMENTS[cells["measurement"].split()[0]]
        for column, (name, text) in enumerate(cells.items(), 1):
            if text and name.rsplit("_", 1)[-1] in ("fa", "ra", "fa1", "fa2", "ra1", "ra2"):
                made.results.append(True_(row, column, analyte, ANY, float(text), float(text)))
    return made


ROWS: dict[str, Callable[[], Rows]] = {
    "lab/ca_waterboards_chem_sub.csv": california,
    "lab/wi_LDES_csls_2020_01_28.csv": ldes,
    "lab/wi_SWIMS_csls_2020_06_01.csv": swims,
    "nwis/dr_nwisData_qw.csv": qwdata,
    "lab/csm_20170829_icp_aes.csv": stream_table,
}
