"""Published examples of carbonate constants, un-ionised ammonia, hydrogen sulfide: what the library makes of them."""

import re
from typing import Any

from chemistry.worked_data import Inputs, expected

from wellchem import chemistry as c
from wellchem.chemistry.tables import rows

# Printed name, constant of ours, and the sign that the printed one has against log10 K of ours.
_LOGARITHMS = {
    "pK1": ("carbonic_k1", -1),
    "pK2": ("carbonic_k2", -1),
    "pKH": ("carbon_dioxide_henry", -1),
    "logKH": ("carbon_dioxide_henry", 1),
    "pKw_sm2330": ("water_kw_sm2330", -1),
} | {
    name + mineral: (mineral, sign)
    for mineral in ("calcite", "aragonite", "vaterite")
    for name, sign in (("pKs_", -1), ("logKsp_", 1))
}
_COEFFICIENTS = {
    "logK1": "carbonic_k1",
    "logK2": "carbonic_k2",
    "logKH": "carbon_dioxide_henry",
    "logKcalcite": "calcite",
    "logKaragonite": "aragonite",
    "logKvaterite": "vaterite",
}


def constants(given: Inputs) -> dict[str, Any]:
    celsius = given["temperature"]
    return {name: sign * c.log_equilibrium_constant(ours, celsius) for name, (ours, sign) in _LOGARITHMS.items()}  # type: ignore[type-var]


def coefficients(given: Inputs) -> dict[str, Any]:
    table = {row["constant"]: row for row in rows("handbook_constants")} | {row["phase"]: row for row in rows("phases")}
    return {
        name: [float(table[ours][column] or 0) for column in ("a1", "a2", "a3", "a4", "a5")]
        for name, ours in _COEFFICIENTS.items()
    }


def _at(name: str) -> dict[str, float]:
    """Temperature and pH that a value's name states (`fraction_20C_pH7.0`, `pKa_5C`)."""
    found = re.search(r"_(\d+)C(?:_pH([\d.]+))?", name)
    assert found, name
    point = {"temperature": float(found[1])}
    return point | {"ph": float(found[2])} if found[2] else point


def ammonia_table(given: Inputs) -> dict[str, Any]:
    names = [row.name for row in expected() if row.example == "ammonia-emerson-table"]
    # The table prints four decimals.
    return {name: round(c.unionized_ammonia_fraction(**_at(name)), 4) for name in names}


def ammonia(given: Inputs) -> dict[str, Any]:
    names = [row.name for row in expected() if row.example == "ammonia-pka"]
    return {
        name: c.ammonia_pka(**_at(name)) if name.startswith("pKa") else c.unionized_ammonia_fraction(**_at(name))
        for name in names
    }


def unionized(given: Inputs) -> dict[str, Any]:
    at = {"temperature": given["temperature"], "ph": given["ph"]}
    return {"unionised_nh3_n": c.unionized_ammonia(ammonia=given["tan"], **at)}  # type: ignore[type-var]


def sulfide(given: Inputs) -> dict[str, Any]:
    names = [row.name for row in expected() if row.example == "sulfide-fraction" and row.name.startswith("h2s")]
    found: dict[str, Any] = {name: c.hydrogen_sulfide_fraction(**_at(name)) for name in names}
    pk1 = c.hydrogen_sulfide_pk1(temperature=25.0)
    return found | {"pK1_25C_phreeqc_analytic": pk1, "pK1_25C_usual": pk1}


COMPUTED = {
    "carbonate-constants-25C": constants,
    "carbonate-coefficients": coefficients,
    **{f"carbonate-constants-{celsius}C-calc": constants for celsius in (0, 5, 10, 15, 20, 25, 30)},
    "ammonia-emerson-table": ammonia_table,
    "ammonia-emerson-example": unionized,
    "ammonia-pka": ammonia,
    "sulfide-fraction": sulfide,
}
