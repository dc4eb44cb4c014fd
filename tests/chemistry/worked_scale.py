"""Published examples of indices, oxidants, softening and most probable numbers."""

import re
from functools import partial
from typing import Any

from chemistry.worked_data import Inputs

from wellchem import chemistry as c
from wellchem.chemistry.tables import rows

CALCIUM = c.basis_factor("CaCO3", "Ca")  # calcium of a calcium hardness


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32.0) / 1.8


def short_form(*, calcium_hardness: float, alkalinity: float, temperature: float, solids: float) -> float:
    return c.saturation_ph_short_form(
        calcium=calcium_hardness * CALCIUM, alkalinity=alkalinity, temperature=temperature, dissolved_solids=solids
    )


# The terms of pHs = 9.3 + A + B - C - D: each is nought at 10 mg/L of solids, 10**0.4 mg/L of calcium hardness and
# 1 mg/L of alkalinity.
REST = {"calcium_hardness": 10.0**0.4, "alkalinity": 1.0, "temperature": 25.0, "solids": 10.0}


def term(**one: float) -> float:
    return short_form(**{**REST, **one}) - short_form(**REST)


def heat_term(temperature: float) -> float:
    return short_form(**{**REST, "temperature": temperature}) - 9.3


def langelier_manual(given: Inputs) -> dict[str, Any]:
    hardness, alkalinity = float(given["ca_hardness"]), float(given["alkalinity"])
    temperature, solids, ph = celsius(float(given["temperature"])), float(given["tds"]), float(given["ph"])
    saturation = short_form(calcium_hardness=hardness, alkalinity=alkalinity, temperature=temperature, solids=solids)
    water = {
        "ph": ph,
        "calcium": hardness * CALCIUM,
        "alkalinity": alkalinity,
        "temperature": temperature,
        "dissolved_solids": solids,
    }
    return {
        "A": term(solids=solids),
        "B": heat_term(temperature),
        "C": -term(calcium_hardness=hardness),
        "D": -term(alkalinity=alkalinity),
        "pHs": saturation,
        "lsi": c.langelier_index_short_form(**water),
        "lsi_short_form_closed": c.langelier_index_short_form(**water),
        "ryznar": c.ryznar_index(ph=ph, saturation_ph=saturation),
        "lsi_2330B": c.langelier_index(**water),
    }


def puckorius(given: Inputs) -> dict[str, Any]:
    saturation = float(given["pHs"])
    index = c.puckorius_index(alkalinity=float(given["alkalinity"]), saturation_ph=saturation)
    equilibrium = 2.0 * saturation - index
    return {"psi": index, "pHeq_table": equilibrium, "pHeq_from_1p465_logTA_plus_4p54": equilibrium}


def heat_table(given: Inputs) -> dict[str, Any]:
    found = {f"B_at_{f}F": heat_term(celsius(float(f))) for f in (40, 50, 60, 70, 86, 100, 120, 140)}
    return found | {f"B_formula_at_{f}F": heat_term(celsius(float(f))) for f in (50, 70, 86)}


def salt_table(given: Inputs) -> dict[str, Any]:
    # The older table's B is the short form's 9.3 + 0.4 + A.
    return {f"B_tds_{solids}": 9.7 + term(solids=float(solids)) for solids in (100, 200, 400, 800, 1000)}


def exponent(given: Inputs) -> dict[str, Any]:
    return {"pfm": c.activity_exponent(temperature=float(given["temperature"]), dissolved_solids=float(given["tds"]))}


def standard_methods(given: Inputs) -> dict[str, Any]:
    from wellchem.chemistry.equilibria import log_equilibrium_constant

    temperature, solids = float(given["temperature"]), float(given["tds"])
    water = {
        "ph": float(given["ph"]),
        "calcium": float(given["ca"]),
        "alkalinity": float(given["alkalinity"]),
        "temperature": temperature,
        "dissolved_solids": solids,
    }
    index = c.langelier_index(**water)
    return {
        "pK2": -log_equilibrium_constant("carbonic_k2", temperature),
        "pKs": -log_equilibrium_constant("calcite", temperature),
        "pfm": c.activity_exponent(temperature=temperature, dissolved_solids=solids),
        "pHs": c.saturation_ph(**water),
        "si_calcite_2330": index,
        "si_alk_equals_hco3": index,
    }


def printed_classes(scheme: str, text: str, renamed: dict[str, str] | None = None) -> str:
    """The printed list of classes, if every one of them is what a value inside it is classed as, ends included."""
    for part in text.split("; "):
        found = re.search(r"([<>]?)(-?[\d.]+)(?:-([\d.]+))?", part)
        assert found is not None
        sign, low, high = found.group(1), float(found.group(2)), found.group(3)
        name = (part[: found.start()] + part[found.end() :]).strip()
        name = (renamed or {}).get(name, name)
        inside = [low - 0.01] if sign == "<" else [low + 0.01] if sign == ">" else [low + 0.01, float(high) - 0.01]
        classes = {c.classify(scheme, value) for value in inside}
        if classes != {name}:
            return f"{part}: {classes}"
    return text


def ryznar(given: Inputs) -> dict[str, Any]:
    text = "<5.5 heavy scale; 5.5-6.2 some scale; 6.2-6.8 neutral; 6.8-8.5 aggressive; >8.5 very aggressive"
    return {
        "ryznar": c.ryznar_index(ph=float(given["ph"]), saturation_ph=float(given["pHs"])),
        "classes": printed_classes("Ryznar", text),
    }


def aggressive(given: Inputs) -> dict[str, Any]:
    begins = {row["class"]: row["minimum"] for row in rows("classes") if row["scheme"] == "aggressive index"}
    index = c.aggressive_index(
        ph=float(given["ph"]),
        calcium=float(given["ca_hardness"]) * CALCIUM,
        alkalinity=float(given["alkalinity"]),
    )
    return {
        "aggressive_index": index,
        "nonaggressive_min": float(begins["nonaggressive"]),
        "highly_aggressive_max": float(begins["moderately aggressive"]),
    }


def larson(given: Inputs) -> dict[str, Any]:
    ratio = c.larson_skold_ratio(
        chloride=float(given["cl"]), sulfate=float(given["so4"]), alkalinity=float(given["alkalinity"])
    )
    return {
        "larson_skold": ratio,
        "classes": printed_classes("Larson-Skold", "<0.8 low; 0.8-1.2 medium; >1.2 high"),
    }


def galvanic(given: Inputs) -> dict[str, Any]:
    def at(ratio: float, alkalinity: float) -> Any:
        return c.galvanic_corrosion_potential(chloride_sulfate_ratio=ratio, alkalinity=alkalinity)

    ratio = c.chloride_sulfate_mass_ratio(chloride=float(given["cl"]), sulfate=float(given["so4"]))
    low = {at(0.19, 10.0), at(0.19, 90.0)} == {"low"}
    moderate = {at(0.21, 10.0), at(0.5, 90.0), at(0.51, 50.0)} == {"moderate"}
    high = at(0.51, 49.9) == "high"
    return {
        "csmr": ratio,
        "ppgc_low": "CSMR < 0.2" if low else "otherwise",
        "ppgc_moderate": "0.2-0.5, or > 0.5 with alkalinity >= 50" if moderate else "otherwise",
        "ppgc_high": "> 0.5 with alkalinity < 50" if high else "otherwise",
        "ppgc_of_inputs": at(ratio, float(given["alkalinity"])),
    }


def marble(given: Inputs) -> dict[str, Any]:
    potential = c.marble_test_potential(
        initial_alkalinity=float(given["initial_alk"]), final_alkalinity=float(given["final_alk"])
    )
    return {"illinois_value_final_minus_initial": -potential, "ccpp_usual_sign": potential}


def irrigation(given: Inputs) -> dict[str, Any]:
    printed = {"S1": "0-10", "S2": "10-18", "S3": "18-26", "S4": ">26"}
    found = {
        name: text if printed_classes("sodium hazard", f"{text} {name}").endswith(name) else "otherwise"
        for name, text in printed.items()
    }
    conductance = "C1 100-250; C2 250-750; C3 750-2250; C4 >2250"
    return found | {"C_classes_uS_cm": _named_first("salinity hazard", conductance)}


def _named_first(scheme: str, text: str) -> str:
    turned = "; ".join(" ".join(reversed(part.split(" "))) for part in text.split("; "))
    return text if printed_classes(scheme, turned) == turned else printed_classes(scheme, turned)


def residual_classes() -> str:
    text = "<1.25 safe; 1.25-2.5 marginal; >2.5 unsuitable"
    return printed_classes("residual sodium carbonate", text, {"safe": "low"})


def softener(given: Inputs) -> dict[str, Any]:
    hardness = c.compensated_hardness(
        total_hardness=c.convert_hardness(float(given["hardness"]), "gpg", "mg/L"),
        iron=float(given["iron"]),
        allowance=2.0,
    )
    gallons = float(given["persons"]) * float(given["gal_per_person_day"])
    load = c.hardness_load(total_hardness=hardness, volume=gallons * 3.785411784)
    return {
        "compensated_hardness": c.convert_hardness(hardness, "mg/L", "gpg"),
        "grains_per_day": load,
        "three_day_capacity": 3.0 * load,
    }


def sodium(given: Inputs) -> dict[str, Any]:
    removed = float(given["hardness_removed"])

    def grains(count: float) -> float:
        return c.sodium_added(hardness_removed=c.convert_hardness(count, "gpg", "mg/L"))

    return {
        "na_per_caco3": c.sodium_added(hardness_removed=removed),
        "na_per_gpg": grains(1.0),
        "k_per_caco3": c.potassium_added(hardness_removed=removed),
        "na_10gpg": grains(10.0),
        "na_20gpg_8floz_glass": grains(20.0) * 0.2365882365,  # 8 US fluid ounces in litres, exact
    }


OXIDANTS = {
    "cl2": "chlorine",
    "clo2": "chlorine dioxide",
    "kmno4": "permanganate",
    "o2": "oxygen",
    "h2o2": "hydrogen peroxide",
}


def metal_oxidation(oxidation: str, given: Inputs) -> dict[str, Any]:
    found = {key: c.oxidant_demand(1.0, oxidation, oxidant) for key, oxidant in OXIDANTS.items()}
    found |= {f"{key}_exact": value for key, value in found.items()}
    return found | {f"alk_used_{key}": c.alkalinity_consumed(1.0, oxidation, OXIDANTS[key]) for key in ("o2", "cl2")}


def sulfide_oxidation(given: Inputs) -> dict[str, Any]:
    found = {
        f"{key}_to_{product}": c.oxidant_demand(1.0, f"sulfide to {product}", oxidant, basis="H2S")
        for key, oxidant in OXIDANTS.items()
        for product in ("sulfur", "sulfate")
    }
    return found | {"cl2_to_sulfate_per_mg_S": c.oxidant_demand(1.0, "sulfide to sulfate", "chlorine")}


def other_oxidation(given: Inputs) -> dict[str, Any]:
    return {
        "cl2_per_no2n": c.oxidant_demand(1.0, "nitrite to nitrate", "chlorine"),
        "cl2_per_nh3n_breakpoint": c.oxidant_demand(1.0, "ammonia to nitrogen", "chlorine"),
        "cl2_per_as3": c.oxidant_demand(1.0, "arsenite to arsenate", "chlorine"),
    }


def tubes(table: str, given: Inputs) -> dict[str, Any]:
    count = int(float(given["tubes"]))
    found: dict[str, Any] = {}
    for positives in range(count + 1):
        low, high = c.tabulated_mpn(table, positives)
        printed = f"<{high}" if low < high < float("inf") else f">{low}" if high == float("inf") else high
        found[f"positive_{positives}"] = printed
    return found


def wells(given: Inputs) -> dict[str, Any]:
    count = int(float(given["wells"]))

    def number(positives: int) -> float:
        return c.most_probable_number([float(given["volume"]) / count], [count], [positives])

    found: dict[str, Any] = {f"positive_{p}": number(p) for p in range(1, count)}
    # None positive is below what one would give, all positive above what all but one give.
    return found | {"positive_0": f"<{number(1):.1f}", f"positive_{count}": f">{number(count - 1):.1f}"}


def dilutions(given: Inputs) -> dict[str, Any]:
    def number(*positives: int) -> float:
        return c.most_probable_number([10.0, 1.0, 0.1], [5, 5, 5], positives)

    printed = "0-0-1 0-1-0 1-0-0 2-1-0 3-1-0 4-2-1 5-0-0 5-2-0 5-2-1 5-3-2 5-5-0 5-5-4"
    found: dict[str, Any] = {f"comb_{text}": number(*map(int, text.split("-"))) for text in printed.split()}
    return found | {
        "comb_0-0-0": f"<{number(0, 0, 1):.1f}",
        "comb_5-5-5": f">{number(5, 5, 4):.2g}".replace("1.6e+03", "1600"),
    }


def tray(given: Inputs) -> dict[str, Any]:
    def number(large: int, small: int) -> float:
        return c.most_probable_number([1.86, 0.186], [49, 48], [large, small])

    return {
        "none_positive": f"<{number(1, 0):.1f}",
        "1_large_0_small": number(1, 0),
        "highest_printed": number(49, 47),
    }


COMPUTED = {
    "lsi-ufc-b1": langelier_manual,
    "psi-ufc-b2": puckorius,
    "lsi-ufc-tableB2": heat_table,
    "lsi-constantB-tm5813": salt_table,
    "pfm-2330": exponent,
    **{f"lsi-2330-calc{i}": standard_methods for i in range(1, 6)},
    "index-ryznar": ryznar,
    "index-aggressive": aggressive,
    "index-larson": larson,
    "index-csmr": galvanic,
    "ccpp-sign": marble,
    "sar-classes": irrigation,
    "softener-softecks": softener,
    "softener-sodium-added": sodium,
    "oxidant-iron": partial(metal_oxidation, "iron to ferric hydroxide"),
    "oxidant-manganese": partial(metal_oxidation, "manganese to dioxide"),
    "oxidant-sulfide": sulfide_oxidation,
    "oxidant-other": other_oxidation,
    "mpn-5x10mL": partial(tubes, "five tubes of 10 mL"),
    "mpn-5x20mL": partial(tubes, "five tubes of 20 mL"),
    "mpn-10x10mL": partial(tubes, "ten tubes of 10 mL"),
    "mpn-51well": wells,
    "mpn-3dilutions-5tubes": dilutions,
    "mpn-97well": tray,
}
