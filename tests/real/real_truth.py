"""What public files say, worked out by code that shares nothing with the library.

Each function reads one file with pandas or openpyxl alone and states, for chosen rows, analyte, fraction and bounds in the
canonical unit, keyed by the file's own row (and column, for wide tables). Names and factors were written down from the files by
eye. The files are not part of the project: INDEX.csv beside them names their origin. Everything here skips where they are absent.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

import pandas as pd

INF = float("inf")
ANY = "any"
FOLDER = Path(os.environ.get("WELLCHEM_REAL_DATA", Path(__file__).parents[3] / "shared" / "real"))


class True_(NamedTuple):
    """One result of a file: its row from 1, its column from 1 or None, and what it means."""

    row: int
    column: int | None
    analyte: str
    fraction: str | None
    low: float
    high: float
    sheet: str | None = None


def _table(file: str, **how) -> pd.DataFrame:
    return pd.read_csv(FOLDER / file, dtype=str, keep_default_na=False, **how)


def _is_number(text: str) -> bool:
    try:
        float(text)
    except ValueError:
        return False
    return True


NO3 = 14.007 / 62.004
NO2_AS_N = 14.007 / 46.005
HCO3 = 50.043 / 61.016
PO4 = 30.974 / 94.970

LDES = {
    "PH LAB": ("ph", None, 1),
    "ALKALINITY TOTAL CACO3": ("total_alkalinity", ANY, 1),
    "CONDUCTIVITY, UMHOS/CM @ 25C": ("specific_conductance", None, 1),
    "HARDNESS TOTAL RECOVERABLE CALCULATION": ("total_hardness", ANY, 1),
    "MAGNESIUM TOTAL RECOVERABLE": ("magnesium", "total_recoverable", 1),
    "CALCIUM TOTAL RECOVERABLE": ("calcium", "total_recoverable", 1),
    "POTASSIUM TOTAL RECOVERABLE": ("potassium", "total_recoverable", 1),
    "SODIUM TOTAL RECOVERABLE": ("sodium", "total_recoverable", 1),
    "SILICA, DISSOLVED (MG/L AS SI02)": ("silica", "dissolved", 1),
    "PHOSPHORUS TOTAL": ("phosphorus", "total", 1),
    "CHLORIDE": ("chloride", None, 1),
    "ALUMINUM,TOTAL RECOVERABLE": ("aluminum", "total_recoverable", 0.001),
    "SULFATE TOTAL": ("sulfate", "total", 1),
    "NITROGEN NO3+NO2 DISS (AS N)": ("nitrate_plus_nitrite", "dissolved", 1),
    "NITROGEN NH3-N DISS": ("ammonia", "dissolved", 1),
    "MANGANESE, TOTAL RECOVERABLE": ("manganese", "total_recoverable", 0.001),
    "IRON TOTAL RECOVERABLE": ("iron", "total_recoverable", 1),
    "SULFATE DISS, AS SO4": ("sulfate", "dissolved", 1),
    "CARBON DISS ORGANIC": ("dissolved_organic_carbon", ANY, 1),
    "TURBIDITY, LAB NEPHELOMETRIC NTU": ("turbidity", None, 1),
    "PH FIELD": ("ph", None, 1),
    "CONDUCTIVITY FIELD": ("specific_conductance", None, 1),
    "DISSOLVED OXYGEN FIELD": ("dissolved_oxygen", None, 1),
}


def canada(file: str = "lab/canada_testdata.csv") -> Iterator[True_]:
    """Bilingual header; MG/L and micrograms with the micro sign."""
    names = {
        "ALKALINITY TOTAL CACO3": ("total_alkalinity", ANY),
        "ALUMINUM DISSOLVED": ("aluminum", "dissolved"),
        "ALUMINUM TOTAL": ("aluminum", "total"),
        "ANTIMONY DISSOLVED": ("antimony", "dissolved"),
    }
    data = _table(file, encoding="utf-8-sig")
    unit = next(name for name in data.columns if name.startswith("UNIT"))
    for index, cells in enumerate(data.to_dict("records")):
        if cells["VARIABLE"] in names:
            analyte, fraction = names[cells["VARIABLE"]]
            value = float(cells["VALUE_VALEUR"]) * (1 if cells[unit] == "MG/L" else 0.001)
            yield True_(index + 2, None, analyte, fraction, value, value)


PORTAL = {
    "Turbidity": ("turbidity", 1, ANY),
    "pH": ("ph", 1, ANY),
    "Phosphorus": ("phosphorus", 1, None),
    "Temperature, water": ("temperature", 1, ANY),
    "Inorganic nitrogen (nitrate and nitrite)": ("nitrate_plus_nitrite", 1, None),
    "Conductivity": ("specific_conductance", 1, ANY),
    "Total suspended solids": ("total_suspended_solids", 1, ANY),
    "Dissolved oxygen (DO)": ("dissolved_oxygen", 1, ANY),
    "Kjeldahl nitrogen": ("kjeldahl_nitrogen", 1, ANY),
    "Escherichia coli": ("e_coli", 1, ANY),
    "Organic carbon": ("total_organic_carbon", 1, ANY),
    "Suspended Sediment Concentration (SSC)": ("suspended_sediment", 1, ANY),
    "Total volatile solids": ("total_volatile_solids", 1, ANY),
    "Orthophosphate": ("orthophosphate", 1, "dissolved"),
    "Ammonia": ("ammonia", 1, "dissolved"),
    "Indeno[1,2,3-cd]pyrene": ("indeno_1_2_3_cd_pyrene", 0.001, ANY),
    "Isophorone": ("isophorone", 0.001, ANY),
    "m-Dichlorobenzene": ("1_3_dichlorobenzene", 0.001, ANY),
    "m-Nitroaniline": ("3_nitroaniline", 0.001, ANY),
    "Naphthalene": ("naphthalene", 0.001, ANY),
}
WQX_FRACTION = {"Total": "total", "Dissolved": "dissolved", "": None}


def portal(file: str) -> Iterator[True_]:
    """Legacy portal columns; the censored value stands in the detection-condition column as `< 2`."""
    data = _table(file)
    for index, cells in enumerate(data.to_dict("records")):
        name = cells["CharacteristicName"]
        if name not in PORTAL:
            continue
        analyte, factor, fraction = PORTAL[name]
        fraction = fraction or WQX_FRACTION[cells["ResultSampleFractionText"]]
        value = cells["ResultMeasureValue"]
        condition = cells["ResultDetectionConditionText"]
        if _is_number(value):
            yield True_(index + 2, None, analyte, fraction, float(value) * factor, float(value) * factor)
        elif condition.startswith("<"):
            bound = float(condition[1:]) * factor
            bound = (
                bound - 1 if name == "Escherichia coli" else bound
            )  # whole organisms: fewer than two are one or none
            yield True_(index + 2, None, analyte, fraction, 0.0, bound)
        elif condition == "Not Detected":
            bound = float(cells["DetectionQuantitationLimitMeasure/MeasureValue"]) * factor
            yield True_(index + 2, None, analyte, fraction, 0.0, bound)


def narrow() -> Iterator[True_]:
    """WQX 3.0 narrow columns; not detected is bounded by the reporting level in limit B, else by limit A.

    A zero, which is what the portal makes of "present, not quantified", is bounded by its limit too.
    """
    names = {
        "Benzo[a]pyrene": "benzo_a_pyrene",
        "Anthracene": "anthracene",
        "Bromacil": "bromacil",
        "Tribromomethane": "bromoform",
    }
    data = _table("wqp/dr_wqpData_wqx3narrow.csv")
    for index, cells in enumerate(data.to_dict("records")):
        analyte = names[cells["Result_Characteristic"]]
        if cells["Result_ResultDetectionCondition"] == "Not Detected":
            bound = float(cells["DetectionLimit_MeasureB"] or cells["DetectionLimit_MeasureA"]) * 0.001
            yield True_(index + 2, None, analyte, ANY, 0.0, bound)
        else:
            value, limit = float(cells["Result_Measure"]) * 0.001, float(cells["DetectionLimit_MeasureB"]) * 0.001
            yield True_(index + 2, None, analyte, ANY, value, value or limit)


def phosphorus_legacy() -> Iterator[True_]:
    """Legacy columns with dots for slashes; the basis is in the unit."""
    units = {"mg/l as P": 1, "ug/l": 0.001, "mg/l PO4": PO4, "mg/l": 1}
    data = _table("wqp/dr_phosData_legacy_84k.csv.gz")
    for index, cells in enumerate(data.to_dict("records")):
        unit, fraction = cells["ResultMeasure.MeasureUnitCode"], cells["ResultSampleFractionText"]
        value, condition = cells["ResultMeasureValue"], cells["ResultDetectionConditionText"]
        if fraction not in ("Total", "Dissolved") or cells["ActivityTypeCode"].startswith("Quality"):
            continue
        if (
            _is_number(value)
            and unit in units
            and not condition
            and not cells["MeasureQualifierCode"]
            and unit != "ug/l"
        ):
            number = float(value) * units[unit]
            limit = cells["DetectionQuantitationLimitMeasure.MeasureValue"]
            if limit and float(value) < float(limit):
                continue
            yield True_(index + 2, None, "phosphorus", fraction.lower(), number, number)
        elif condition == "Not Detected" and cells["DetectionQuantitationLimitMeasure.MeasureUnitCode"] == "mg/l as P":
            bound = float(cells["DetectionQuantitationLimitMeasure.MeasureValue"])
            yield True_(index + 2, None, "phosphorus", fraction.lower(), 0.0, bound)


def phosphorus_narrow() -> Iterator[True_]:
    """WQX 3.0 columns; the method speciation gives the form."""
    forms = {"as P": 1, "as PO4": PO4}
    data = _table("wqp/dr_wi_phos_data_wqx3narrow_55k.csv.gz")
    for index, cells in enumerate(data.to_dict("records")):
        form, value = cells["Result_MethodSpeciation"], cells["Result_Measure"]
        if form in forms and cells["Result_SampleFraction"] == "Unfiltered" and cells["Result_MeasureUnit"] == "mg/L":
            limits = [cells[k] for k in ("DetectionLimit_MeasureA", "DetectionLimit_MeasureB") if cells[k]]
            if (
                _is_number(value)
                and not cells["Result_MeasureQualifierCode"]
                and not any(float(x) > float(value) for x in limits)
            ):
                number = float(value) * forms[form]
                yield True_(index + 2, None, "phosphorus", "total", number, number)


def nwis(file: str, names: dict[str, tuple[str, float]]) -> Iterator[True_]:
    """Parameter codes with a remark column; an estimate below the reporting level lies between nothing and that level."""
    data = _table(file)
    for index, cells in enumerate(data.to_dict("records")):
        if (
            cells["parm_cd"] not in names
            or not _is_number(cells["result_va"])
            or cells["remark_cd"] not in ("", "<", "E")
        ):
            continue
        analyte, factor = names[cells["parm_cd"]]
        value = float(cells["result_va"]) * factor
        level = float(cells["rpt_lev_va"] or 0) * factor
        if cells["remark_cd"] == "E" and value < level:
            yield True_(index + 2, None, analyte, ANY, 0.0, level)
        else:
            yield True_(index + 2, None, analyte, ANY, 0.0 if cells["remark_cd"] == "<" else value, value)


@cache
def workbook(file: str, values: bool = True):
    """A workbook with the values that were saved for its formulas, or with the formulas."""
    import openpyxl

    return openpyxl.load_workbook(FOLDER / file, data_only=values)


FILES: dict[str, Callable[[], Iterator[True_]]] = {
    "lab/canada_testdata.csv": canada,
    "lab/canada_testdata_accent.csv": lambda: canada("lab/canada_testdata_accent.csv"),
    "wqp/ugs_sample_chemistry.csv": lambda: portal("wqp/ugs_sample_chemistry.csv"),
    "wqp/ugs_sample_chemistry2.csv": lambda: portal("wqp/ugs_sample_chemistry2.csv"),
    "wqp/dr_wqpData_wqx3narrow.csv": narrow,
    "wqp/dr_phosData_legacy_84k.csv.gz": phosphorus_legacy,
    "wqp/dr_wi_phos_data_wqx3narrow_55k.csv.gz": phosphorus_narrow,
    "nwis/smwr_QWstacked.csv": lambda: nwis(
        "nwis/smwr_QWstacked.csv", {"00665": ("phosphorus", 1), "00666": ("phosphorus", 1)}
    ),
}
