"""Published analyses of waters: sums, balances, hardness, dissolved solids, conductance, and the criteria for them."""

import inspect
from typing import Any

from chemistry.worked_data import Inputs

from wellchem import chemistry as c
from wellchem.chemistry.conductance import speciated_conductance
from wellchem.chemistry.speciation import speciate

CATIONS = {"ca": "calcium", "mg": "magnesium", "na": "sodium", "k": "potassium"}


def water(given: Inputs) -> dict[str, float]:
    """An analysis in the room's terms; ions in the example's own, as ions."""
    numbers = {name: value for name, value in given.items() if isinstance(value, float)}
    found = {name: numbers.get(symbol, 0.0) for symbol, name in CATIONS.items()}
    found["alkalinity"] = numbers.get(
        "alkalinity", c.total_alkalinity(bicarbonate=numbers.get("hco3", 0.0), carbonate=numbers.get("co3", 0.0))
    )
    found["sulfate"], found["chloride"] = numbers.get("so4", 0.0), numbers.get("cl", 0.0)
    found["nitrate"] = c.in_basis(numbers.get("no3", 0.0), "NO3", "N")
    found["fluoride"], found["silica"] = numbers.get("f", 0.0), numbers.get("sio2_mg_L", 0.0)
    found["bromide"], found["strontium"], found["iron"] = (numbers.get(ion, 0.0) for ion in ("br", "sr", "fe2"))
    return found


def chosen(ions: dict[str, float], function: Any) -> dict[str, float]:
    return {name: ions[name] for name in inspect.signature(function).parameters if name in ions}


def analysis(given: Inputs) -> dict[str, Any]:
    ions = water(given)
    cations = c.cation_sum(**chosen(ions, c.cation_sum))
    anions = c.anion_sum(**chosen(ions, c.anion_sum))
    permitted = c.permitted_charge_difference(cations=cations, anions=anions)
    percent = 100.0 * permitted / (cations + anions)
    residue = c.dissolved_solids_residue(**chosen(ions, c.dissolved_solids_residue))
    hardness = c.total_hardness(calcium=ions["calcium"], magnesium=ions["magnesium"])
    ratio = c.sodium_adsorption_ratio(sodium=ions["sodium"], calcium=ions["calcium"], magnesium=ions["magnesium"])
    return {
        "cation_sum": cations,
        "anion_sum": anions,
        "balance_pct": c.charge_balance(cations=cations, anions=anions),
        "hardness_ca_mg": hardness,
        "hardness_total": hardness,
        "sm1030e_criterion": "abs difference <= 0.2 meq/L" if permitted == 0.2 else f"<= {percent:.0f} %",
        "sm1030e_pass": c.charge_imbalance(cations=cations, anions=anions) <= 1.0,
        "sar": ratio,
        "sar_published": ratio,
        "tds_sum_0p6alk_no3_as_ion": residue,
        "dissolved_solids_sum": residue,
    }


def davis(given: Inputs) -> dict[str, Any]:
    ions = water(given)
    hardness = c.total_hardness(calcium=ions["calcium"], magnesium=ions["magnesium"])
    as_caco3 = {
        symbol: c.in_basis(float(given[symbol]), formula, "CaCO3")
        for symbol, formula in (
            ("ca", "Ca"),
            ("mg", "Mg"),
            ("na", "Na"),
            ("hco3", "HCO3"),
            ("so4", "SO4"),
            ("cl", "Cl"),
        )
    }
    parts = {"total_hardness": hardness, "alkalinity": ions["alkalinity"]}
    return (
        analysis(given)
        | as_caco3
        | {
            "total_hardness": hardness,
            "carbonate_hardness": c.carbonate_hardness(**parts),
            "noncarbonate_hardness": c.noncarbonate_hardness(**parts),
            "cation_total": as_caco3["ca"] + as_caco3["mg"] + as_caco3["na"],
            "anion_total": as_caco3["hco3"] + as_caco3["so4"] + as_caco3["cl"],
        }
    )


def usgs(given: Inputs) -> dict[str, Any]:
    return analysis(given) | {"bicarbonate_from_anc": c.in_basis(float(given["anc_mg_L_CaCO3"]), "CaCO3", "HCO3")}


def rivers(given: Inputs) -> dict[str, Any]:
    # Livingstone counts bicarbonate whole.
    ions = water(given)
    return analysis(given) | {"tds_published": c.dissolved_solids_sum(**chosen(ions, c.dissolved_solids_sum))}


def rain(given: Inputs) -> dict[str, Any]:
    found = analysis(given)
    return found | {"tds_published": found["dissolved_solids_sum"]}


def spring(given: Inputs) -> dict[str, Any]:
    found = analysis(given)
    calculated = found["dissolved_solids_sum"]
    return found | {
        "tds_calculated": calculated,
        "tds_ratio_measured_over_calculated": c.dissolved_solids_ratio(
            measured=float(given["tds_180"]), calculated=calculated
        ),
        "cation_anion_balance": found["balance_pct"],
        "ion_sum_as_read_by_ocr": found["cation_sum"],
    }


def mine_report(given: Inputs) -> dict[str, Any]:
    cations, anions = float(given["cations"]), float(given["anions"])
    return {
        "hardness": c.total_hardness(calcium=float(given["ca"]), magnesium=float(given["mg"])),
        "balance_pct": c.charge_balance(cations=cations, anions=anions),
        "alk_sum_of_species": c.total_alkalinity(
            bicarbonate=c.in_basis(float(given["bicarbonate"]), "CaCO3", "HCO3"),
            carbonate=c.in_basis(float(given["carbonate"]), "CaCO3", "CO3"),
        ),
        "ion_sum_x100_over_ec": c.ion_conductance_ratio(ion_sum=cations, conductance=float(given["ec"])),
    }


def duplicates(given: Inputs) -> dict[str, Any]:
    def rpd(ion: str) -> float:
        return c.relative_percent_difference(
            first=float(given[f"{ion}_normal"]), second=float(given[f"{ion}_replicate"])
        )

    return {"rpd_ca": rpd("ca"), "rpd_na_correct": rpd("na")}


def criteria(given: Inputs) -> dict[str, Any]:
    # Anions in the middle of each class, balanced: what is permitted of them.
    def permitted(anions: float) -> float:
        return c.permitted_charge_difference(cations=anions, anions=anions)

    return {
        "limit_0_to_3_meq_L": permitted(1.5),
        "limit_3_to_10_meq_L": 100.0 * permitted(6.0) / 12.0,
        "limit_10_to_800_meq_L": 100.0 * permitted(100.0) / 200.0,
    }


def criteria_dvwk(given: Inputs) -> dict[str, Any]:
    def percent_of_mean(anions: float) -> float:
        return 100.0 * c.permitted_charge_difference(cations=anions, anions=anions, criterion="DVWK 128") / anions

    return {"limit_sum_le_2_meq_L": percent_of_mean(0.9), "limit_sum_gt_2_meq_L": percent_of_mean(1.1)}


def acceptance(given: Inputs) -> dict[str, Any]:
    names = {
        "measured_over_calculated_tds": "measured_over_calculated_solids",
        "ion_sum_x100_over_ec": "ion_sum_x100_over_conductance",
        "calculated_tds_over_ec": "calculated_solids_over_conductance",
        "measured_tds_over_ec": "measured_solids_over_conductance",
    }
    found: dict[str, Any] = {}
    for key, check in names.items():
        found[f"{key}_min"], found[f"{key}_max"] = c.acceptance(check)
    return found


def conductance(given: Inputs) -> dict[str, Any]:
    ions = water(given)
    found = c.handbook_conductance(**chosen(ions, c.handbook_conductance))
    return {
        "k_infinite_dilution": found.infinite_dilution,
        "sum_z2_mmol": 2000.0 * found.ionic_strength,
        "ionic_strength": found.ionic_strength,
        "y_monovalent": found.activity_coefficient,
        "k_calculated_unrounded_y": found.conductance,
    }


def potassium_chloride(given: Inputs) -> dict[str, Any]:
    found = {}
    for text in ("0.0001", "0.0005", "0.001", "0.005", "0.01", "0.02", "0.1"):
        salt = {
            "potassium": c.milligrams(1000.0 * float(text), "K"),
            "chloride": c.milligrams(1000.0 * float(text), "Cl"),
        }
        waters = speciate(ph=7.0, inorganic_carbon=0.0, temperature=float(given["temperature"]), **salt)
        found[f"kcl_{text}"] = speciated_conductance(waters)
    return found


def conductance_temperature(given: Inputs) -> dict[str, Any]:
    return {
        "k25": c.conductance_at_25(conductance=float(given["k_T"]), temperature=float(given["t"])),
        "coefficient": inspect.signature(c.conductance_at_25).parameters["coefficient"].default,
    }


def ratio_with_an_error(given: Inputs) -> dict[str, Any]:
    ratio = c.sodium_adsorption_ratio(
        sodium=float(given["na"]), calcium=float(given["ca"]), magnesium=float(given["mg"])
    )
    return {"sar_correct": ratio, "sar_with_page_rounding": ratio}


def residual(given: Inputs) -> dict[str, Any]:
    alkalinity = c.milligrams_from_milliequivalents(float(given["hco3"]) + float(given["co3"]), "CaCO3")
    calcium = c.milligrams_from_milliequivalents(float(given["ca"]), "Ca")
    magnesium = c.milligrams_from_milliequivalents(float(given["mg"]), "Mg")
    return {"rsc": c.residual_sodium_carbonate(alkalinity=alkalinity, calcium=calcium, magnesium=magnesium)}


COMPUTED = {
    "hardness-davis-7-1": davis,
    "usgs-wri024045-s1": usgs,
    "usgs-wri024045-s2": usgs,
    **{f"hem-kehew-row{i}": analysis for i in range(1, 9)},
    "world-mean-river": rivers,
    "sea-water-goldberg": analysis,
    "rain-menlo-park": rain,
    "acz-spring-73-4": spring,
    "acz-som-3-e-2007": mine_report,
    "acz-spring-j-2-2007": mine_report,
    "rpd-usgs-wri024045": duplicates,
    "balance-criteria-sm1030e": criteria,
    "balance-criteria-dvwk": criteria_dvwk,
    "tds-formula-sm1030e": acceptance,
    "ec-calc-sm2510": conductance,
    "ec-kcl-standards": potassium_chloride,
    "ec-temperature": conductance_temperature,
    "sar-published-error": ratio_with_an_error,
    "rsc": residual,
}
