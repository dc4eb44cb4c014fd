"""Published examples of units, bases, hardness, alkalinity, radioactivity, UV: what the library makes of them."""

from typing import Any

from chemistry.worked_data import Inputs

from wellchem import chemistry as c
from wellchem.chemistry.tables import rows

PCI = 0.037  # Bq, exact: 1 Ci = 3.7e10 Bq


def _class_of(key: str, printed: str) -> str:
    """The printed range of a class, if the class's ends and nothing beyond them fall into it."""
    name = key.replace("_", " ")
    low, _, high = printed.split(" ")[0].replace(">", "").partition("-")
    inside = [float(low) + (0.1 if printed.startswith(">") else 0.0), float(high) if high else 1e4]
    outside = [float(low) - 1.0] if float(low) else []
    outside += [float(high) + 0.5] if high else []
    classes = [c.classify("hardness USGS", value) for value in inside]
    others = [c.classify("hardness USGS", value) for value in outside]
    return printed if set(classes) == {name} and name not in others else f"{classes} inside, {others} outside"


def hardness_factors(given: Inputs) -> dict[str, Any]:
    calcium = c.total_hardness(calcium=1.0, magnesium=0.0)
    magnesium = c.total_hardness(calcium=0.0, magnesium=1.0)
    return {
        "hardness_per_ca": calcium,
        "hardness_per_mg": magnesium,
        "hardness_per_ca_exact": calcium,
        "hardness_per_mg_exact": magnesium,
        "hardness_per_fe2": c.in_basis(1.0, "Fe", "CaCO3", charge=2),
        "hardness_per_mn2": c.in_basis(1.0, "Mn", "CaCO3"),
        "hardness_per_sr": c.in_basis(1.0, "Sr", "CaCO3"),
    }


def noncarbonate_rule(given: Inputs) -> dict[str, Any]:
    return {
        "carbonate_hardness": c.carbonate_hardness(**given),  # type: ignore[arg-type]
        "noncarbonate_hardness": c.noncarbonate_hardness(**given),  # type: ignore[arg-type]
    }


def hardness_classes(given: Inputs) -> dict[str, Any]:
    printed = {"soft": "0-60 mg/L CaCO3", "moderately_hard": "61-120", "hard": "121-180", "very_hard": ">180"}
    return {key: _class_of(key, text) for key, text in printed.items()}


def hardness_units(given: Inputs) -> dict[str, Any]:
    return {
        "gpg_us_mg_L": c.hardness_factor("gpg"),
        "english_clark_degree_mg_L": c.hardness_factor("°e"),
        "german_degree_mg_L": c.hardness_factor("°dH"),
        "french_degree_mg_L": c.hardness_factor("°fH"),
        "mmol_L_mg_L": c.hardness_factor("mmol/L"),
        "meq_L_mg_L": c.hardness_factor("meq/L"),
        "german_degree_per_mmol_L": c.convert_hardness(1.0, "mmol/L", "°dH"),
        "german_degree_mmol_L": c.convert_hardness(1.0, "°dH", "mmol/L"),
        "russian_degree": c.hardness_factor("°rH"),
    }


def hardness_units_ewt(given: Inputs) -> dict[str, Any]:
    equivalents = float(given["c_eq"])
    return {
        "mg_L_CaCO3": c.convert_hardness(equivalents, "meq/L", "mg/L"),
        "dH": c.convert_hardness(equivalents, "meq/L", "°dH"),
        "fH": c.convert_hardness(equivalents, "meq/L", "°fH"),
    }


IONS = {"fe2": ("Fe", 2), "fe3": ("Fe", 3), "mn2": ("Mn", 2), "s2": ("S", 2), "cu2": ("Cu", 2), "pb2": ("Pb", 2)}
FORMULAS = ("Al", "NH4", "Ba", "Br", "Ca", "CO3", "Cl", "F", "H", "HCO3", "OH", "Li", "Mg", "NO3", "NO2", "PO4", "K")
FORMULAS += ("Na", "Sr", "SO4", "Zn")


def meq_factors(given: Inputs) -> dict[str, Any]:
    found = {key: c.milliequivalents(1.0, formula, charge=charge) for key, (formula, charge) in IONS.items()}
    return found | {formula.lower(): c.milliequivalents(1.0, formula) for formula in FORMULAS}


def meq_weights(given: Inputs) -> dict[str, Any]:
    return {
        formula.lower(): c.milligrams_from_milliequivalents(1.0, formula)
        for formula in ("Ca", "Mg", "Na", "K", "HCO3", "SO4", "Cl")
    }


def nitrogen(given: Inputs) -> dict[str, Any]:
    return {
        "no3_per_n": c.basis_factor("N", "NO3"),
        "no2_per_n": c.basis_factor("N", "NO2"),
        "nh4_per_n": c.basis_factor("N", "NH4"),
        "nh3_per_n": c.basis_factor("N", "NH3"),
        "n_per_no3": c.basis_factor("NO3", "N"),
    }


def nitrate_hach(given: Inputs) -> dict[str, Any]:
    return {"no3": c.in_basis(float(given["no3n"]), "N", "NO3")}


def nitrate_limits(given: Inputs) -> dict[str, Any]:
    return {
        "us_mcl_as_no3": c.in_basis(10.0, "N", "NO3"),
        "who_eu_as_n": c.in_basis(50.0, "NO3", "N"),
        "us_mcl_no2_as_no2": c.in_basis(1.0, "N", "NO2"),
    }


def other_bases(given: Inputs) -> dict[str, Any]:
    return {
        "so4_per_s": c.basis_factor("S", "SO4"),
        "po4_per_p": c.basis_factor("P", "PO4"),
        "p2o5_per_p": c.basis_factor("P", "P2O5"),
        "sio2_per_si": c.basis_factor("Si", "SiO2"),
        "h4sio4_per_sio2": c.basis_factor("SiO2", "H4SiO4"),
        "hco3_per_alk_caco3": c.basis_factor("CaCO3", "HCO3"),
        "co3_per_alk_caco3": c.basis_factor("CaCO3", "CO3"),
        "oh_per_alk_caco3": c.basis_factor("CaCO3", "OH"),
        "h2s_per_s": c.basis_factor("S", "H2S"),
        "nacl_per_cl": c.basis_factor("Cl", "NaCl"),
        "kmno4_mass": c.molar_mass("KMnO4"),
        "hco3_per_c": c.basis_factor("C", "HCO3"),
    }


def residue_factors(given: Inputs) -> dict[str, Any]:
    return {
        "residue_factor": c.basis_factor("HCO3", "CO3"),
        "residue_factor_exact": c.basis_factor("HCO3", "CO3"),
        "alk_caco3_to_co3": c.basis_factor("CaCO3", "CO3"),
        "hco3_per_alk_caco3": c.basis_factor("CaCO3", "HCO3"),
        "alk_caco3_per_hco3": c.basis_factor("HCO3", "CaCO3"),
    }


def alkalinity_forms(given: Inputs) -> dict[str, Any]:
    forms = c.alkalinity_forms(phenolphthalein_alkalinity=float(given["P"]), alkalinity=float(given["T"]))
    return dict(forms._asdict())


def carbon_dioxide(given: Inputs) -> dict[str, Any]:
    water = {"alkalinity": float(given["alkalinity"]), "ph": float(given["ph"])}
    forms = c.handbook_alkalinity_forms(**water)
    return {
        "bicarbonate_alk": forms.bicarbonate,
        "carbonate_alk": forms.carbonate,
        "hydroxide_alk": forms.hydroxide,
        "free_co2": c.handbook_carbon_dioxide(**water),
    }


def uranium(given: Inputs) -> dict[str, Any]:
    milligrams = float(given["uranium"]) / 1000.0
    return {
        "pci_per_ug_regulatory": c.specific_activity("U-EPA") / 1000.0 / PCI,
        "activity_at_mcl": c.activity_from_mass(milligrams, "U-EPA") / PCI,
        "bq_per_ug_natural": c.specific_activity("U-nat") / 1000.0,
        "pci_per_ug_natural": c.specific_activity("U-nat") / 1000.0 / PCI,
        "pci_per_ug_u238_only": c.specific_activity("U-238") / 1000.0 / PCI,
    }


def net_alpha(given: Inputs) -> dict[str, Any]:
    uranium_activity = c.activity_from_mass(float(given["uranium"]) / 1000.0, "U-EPA") / PCI
    adjusted = float(given["gross_alpha"]) - uranium_activity
    return {"adjusted_gross_alpha": adjusted, "exceeds": adjusted > 15.0}


def uv(given: Inputs) -> dict[str, Any]:
    printed = ("0.0", "0.022", "0.05", "0.1", "0.125", "0.2", "0.3", "0.5", "1.0")
    path = float(given["path"])
    return {f"uvt_at_a254_{text}": c.uv_transmittance(float(text) * path, path=path) for text in printed}


def equivalent_conductances(given: Inputs) -> dict[str, Any]:
    table = {row["ion"]: float(row["equivalent_conductance"]) for row in rows("equivalent_conductances")}
    return {("lambda_" + ion.lower()).replace("_fe", "_fe2"): value for ion, value in table.items()}


COMPUTED = {
    "hardness-factors": hardness_factors,
    "hardness-noncarbonate-rule": noncarbonate_rule,
    "hardness-class-usgs": hardness_classes,
    "hardness-units-exact": hardness_units,
    "hardness-units-ewt": hardness_units_ewt,
    "meq-factors-hem": meq_factors,
    "meq-weights-mato": meq_weights,
    "basis-nitrogen": nitrogen,
    "basis-nitrate-hach": nitrate_hach,
    "basis-nitrate-limits": nitrate_limits,
    "basis-other": other_bases,
    "hco3-to-co3-residue": residue_factors,
    **{f"alk-pt-{i}": alkalinity_forms for i in range(1, 6)},
    **{f"co2-sm4500-{i}": carbon_dioxide for i in range(1, 5)},
    "uranium-mass-activity": uranium,
    "radio-net-alpha": net_alpha,
    "uvt-from-uva": uv,
    "ec-equivalent-conductance": equivalent_conductances,
}
