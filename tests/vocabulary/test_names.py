"""Printed names: what they are, and what they are not."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellchem.vocabulary import Companion, bundled

V = bundled()

# Spellings as laboratories print them (counted in public exports of state laboratories, the Water Quality Portal, two
# utilities' reports; the others: common practice, no source), with what they print: analyte, fraction, form, place.
PRINTED = {
    "Iron, Total (as Fe)": ("iron", "total", "Fe", None),
    "IRON TOTAL RECOVERABLE": ("iron", "total_recoverable", None, None),
    "Iron (Fe), Dissolved mg/L": ("iron", "dissolved", None, None),
    "Manganese - Total": ("manganese", "total", None, None),
    "Mn, diss.": ("manganese", "dissolved", None, None),
    "NO3-N": ("nitrate", None, "N", None),
    "Nitrate (as Nitrogen)": ("nitrate", None, "N", None),
    "Nitrate as NO3": ("nitrate", None, "NO3", None),
    "NITRATE (AS NO3)": ("nitrate", None, "NO3", None),
    "NITROGEN NO3+NO2 DISS (AS N)": ("nitrate_plus_nitrite", "dissolved", "N", None),
    "Nitrate+Nitrite as N": ("nitrate_plus_nitrite", None, "N", None),
    "Inorganic nitrogen (nitrate and nitrite)": ("nitrate_plus_nitrite", None, None, None),
    "NITROGEN NH3-N DISS": ("ammonia", "dissolved", "N", None),
    "Total nitrogen": ("total_nitrogen", None, None, None),
    "NITROGEN KJELDAHL TOTAL": ("kjeldahl_nitrogen", None, None, None),
    "Phosphorus as orthophosphate, water, unfiltered": ("phosphorus", "total", "PO4", None),
    "Ortho-phosphate as P": ("orthophosphate", None, "P", None),
    "SILICA, DISSOLVED (MG/L AS SI02)": ("silica", "dissolved", "SiO2", None),
    "Silica (SiO2)": ("silica", None, None, None),
    "Silicon": ("silicon", None, None, None),
    "SULFATE DISS, AS SO4": ("sulfate", "dissolved", "SO4", None),
    "Sulfide": ("sulfide", None, None, None),
    "Hydrogen sulfide (field)": ("hydrogen_sulfide", None, None, "field"),
    "ALKALINITY (TOTAL) AS CACO3": ("total_alkalinity", None, "CaCO3", None),
    "ALKALINITY TOTAL CACO3": ("total_alkalinity", None, "CaCO3", None),
    "Bicarbonate Alkalinity (as CaCO3)": ("bicarbonate", None, "CaCO3", None),
    "Bicarbonate (as HCO3)": ("bicarbonate", None, "HCO3", None),
    "HARDNESS TOTAL RECOVERABLE CALCULATION": ("total_hardness", "total_recoverable", None, None),
    "Hardness as CaCO3": ("total_hardness", None, "CaCO3", None),
    "Calcium hardness": ("calcium_hardness", None, None, None),
    "Calcium as CaCO3": ("calcium_hardness", None, "CaCO3", None),
    "Magnesium hardness": ("magnesium_hardness", None, None, None),
    "Total dissolved solids": ("total_dissolved_solids", None, None, None),
    "Solids, Total Dissolved (TDS)": ("total_dissolved_solids", None, None, None),
    "TDS (calc.)": ("total_dissolved_solids", None, None, None),
    "Total suspended solids": ("total_suspended_solids", None, None, None),
    "Dissolved oxygen (DO)": ("dissolved_oxygen", None, None, None),
    "DISSOLVED OXYGEN FIELD": ("dissolved_oxygen", None, None, "field"),
    "PH LAB": ("ph", None, None, "laboratory"),
    "pH, Field": ("ph", None, None, "field"),
    "Temp (°C) field": ("temperature", None, None, "field"),
    "CONDUCTIVITY, UMHOS/CM @ 25C": ("specific_conductance", None, None, None),
    "E.C.": ("specific_conductance", None, None, None),
    "Langelier Index @ 60 C": ("langelier_index", None, None, None),
    "T. Coliform P/A": ("total_coliform", None, None, None),
    "Total Coliform Bacteria {C}": ("total_coliform", None, None, None),
    "E. coli (MPN)": ("e_coli", None, None, None),
    "Iron bacteria": ("iron_bacteria", None, None, None),
    "Lead-210": ("lead_210", None, None, None),
    "²¹⁰Pb": ("lead_210", None, None, None),
    "Radium 226": ("radium_226", None, None, None),
    "Combined Radium (Ra226 + Ra228)": ("radium_226_plus_228", None, None, None),
    "Gross alpha": ("gross_alpha", None, None, None),
    "Uranium (activity)": ("uranium_activity", None, None, None),
    "CHROMIUM, HEXAVALENT": ("chromium_vi", None, None, None),
    "Hexavalent Chromium {B}": ("chromium_vi", None, None, None),
    "CHROMIUM (TOTAL)": ("chromium", "total", None, None),
    "Free Chlorine": ("free_chlorine", None, None, None),
    "Chlorine, total residual": ("total_chlorine", None, None, None),
    "Al 396.153 - A": ("aluminum", None, None, None),
    "As 188.979-A*": ("arsenic", None, None, None),
    "Arsenic, total (EPA 200.8)": ("arsenic", "total", None, None),
    "Lead (Pb) - First Draw": ("lead", None, None, None),
    "Nitrate(NO3)_+_Nitrite(NO2)_Dissolved": ("nitrate_plus_nitrite", "dissolved", None, None),
    "Alkalinity;_Phenolphthalein_(as_CaCO3)": ("phenolphthalein_alkalinity", None, "CaCO3", None),
    "Nitrogen_Kjel_Tot(N)": ("kjeldahl_nitrogen", None, None, None),
    "Phosphorus_Total_Dissolved": ("phosphorus", "dissolved", None, None),
    "Fe-T": ("iron", "total", None, None),
    "Mn_D": ("manganese", "dissolved", None, None),
    "Hardness/CaCO3": ("total_hardness", None, "CaCO3", None),
    "Temperature (oC)": ("temperature", None, None, None),
    "1,2-Dibromo-3-chloropropane (DBCP)": ("dibromochloropropane", None, None, None),
    "DICHLORODIFLUOROMETHANE (FREON 12)": ("dichlorodifluoromethane", None, None, None),
    "m,p-Xylene": ("m_p_xylene", None, None, None),
    "p,p'-DDT": ("ddt", None, None, None),
    "Perfluorooctanoic acid (PFOA)": ("pfoa", None, None, None),
    "ALCALINITÉ TOTALE CACO3": ("total_alkalinity", None, "CaCO3", None),
    "ALUMINIUM DISSOUS": ("aluminum", "dissolved", None, None),
    "Fer dissous": ("iron", "dissolved", None, None),
    "Nitrates (en NO3)": ("nitrate", None, "NO3", None),
    "Titre hydrotimétrique (TH)": ("total_hardness", None, None, None),
    "Conductivité à 25 °C": ("specific_conductance", None, None, None),
    "Bactéries coliformes": ("total_coliform", None, None, None),
    "Eisen, gesamt": ("iron", "total", None, None),
    "Mangan, gelöst": ("manganese", "dissolved", None, None),
    "Gesamthärte": ("total_hardness", None, None, None),
    "Säurekapazität bis pH 4,3": ("total_alkalinity", None, None, None),
    "Koloniezahl bei 22 °C": ("colony_count_22", None, None, None),
    "Nitrat als N": ("nitrate", None, "N", None),
    "Hierro total": ("iron", "total", None, None),
    "Dureza total (CaCO3)": ("total_hardness", None, "CaCO3", None),
    "Plomo disuelto": ("lead", "dissolved", None, None),
}

# Only similar, or something else with an analyte's word in it (common practice, no source).
NOT_ANALYTES = """
Chloride of lime dose; Sodum; Chlordne; Magnesium hardnes; Total; Dissolved; Free; Calcium carbonate; Sodium chloride;
Sodium hypochlorite; Copper sulfate; Iron oxide; Iron stain; Lead solder; Copper pipe; Potassium permanganate;
Chlorine demand; pH adjustment; pH calibration; Air temperature; AMBIENT AIR TEMPERATURE - FIELD; Cooler Temperature;
Temperature of receipt; Total metals; Silver Lake; Iron County; Mercury Lane; Carbon filter; Carbon; Nitrogen;
Hydrogen; Conductivity meter; DO Meter Calibrated?; Odor present; Iron + Manganese; Calcium and Magnesium; Na + K;
Sulfate/chloride ratio; Methyl mercury; Chromium III; Bed sediment Lead; Phosphorus as phosphorus, bed sediment;
Soil arsenic; Iron mg/kg; Iron µS/cm; Hardness NTU; pH mg/L; Iron MCL; Iron average; Iron % recovery; Toluene-d8;
4-Bromofluorobenzene; Bisphenol A-d16; Un-ionized ammonia; Free ammonia; Chlorine; Radium; Nitrate 10; Calcium 4;
Iron < 0.3; Iron 2; Dichlorobenzene; as; No; in; Sample B; Lab P; Vitamin K; Bacteria; aluminumRaw; C1Nitrate;
Nitrate as CaO as N; Nitrate as N (as NO3); Sulfate as N; Iron as CaO2; Total dissolved iron; Iron, field, lab;
CO3 + HCO3; Carbonate and Bicarbonate; Iron/Manganese; Total coliform/E. coli; Total coliforms and E. coli; Endrin (D);
WATER COLOR (VISUAL); Dissolved Oxygen (% sat); Total coliform, mg/L as N; Eisenbahn; Bleigießen; Fer forgé; Temp mg
"""


@pytest.mark.parametrize(("name", "meaning"), PRINTED.items(), ids=PRINTED)
def test_name_says_what_it_prints(name, meaning):
    found = V.name(name)
    assert found is not None, V.suggest(name)
    assert (found.analyte, found.fraction, found.basis, found.measured) == meaning


@pytest.mark.parametrize("name", [name.strip() for name in NOT_ANALYTES.replace("\n", " ").split(";")])
def test_similar_is_not_equal(name):
    assert V.name(name) is None


@pytest.mark.parametrize(
    ("name", "form"),
    [("NO3", "NO3"), ("Nitrate (NO3)", "NO3"), ("Ammonium (NH4)", "NH4"), ("CO3--", "CO3"), ("Nitrat", "NO3"),
     ("Nitratos", "NO3"), ("Ammonium", "NH4")],
)  # fmt: skip
def test_formula_or_name_of_the_ion_only_suggests_a_form(name, form):
    found = V.name(name)
    assert found.basis is None
    assert found.supposed == form
    assert f"basis={form}" in V.unit("mg/L", found.analyte, found).assumptions


def test_bicarbonate_alkalinity_is_usually_as_calcium_carbonate():
    name = V.name("BICARBONATE ALKALINITY")
    meaning = V.unit("mg/L", name.analyte, name)
    assert meaning.assumptions == ("basis=CaCO3",)
    assert meaning.factor == pytest.approx(1.2192777, abs=5e-4)  # HCO3 per CaCO3, IUPAC masses


@pytest.mark.parametrize(
    ("name", "companion"),
    [
        ("GROSS ALPHA COUNTING ERROR", Companion.UNCERTAINTY),
        ("GROSS ALPHA MDA95", Companion.DETECTION_LIMIT),
        ("Calcium.rmk", Companion.QUALIFIER),
        ("Iron RL", Companion.REPORTING_LIMIT),
    ],
)
def test_name_of_something_beside_a_result(name, companion):
    assert V.name(name).companion is companion


def test_what_stands_beside_the_name_tells_which_analyte():
    assert V.name("Uranium", unit="pCi/L").analyte == "uranium_activity"
    assert V.name("Uranium", unit="µg/L").analyte == "uranium"
    assert V.name("Solids") is None
    assert V.name("Solids", fraction="dissolved").analyte == "total_dissolved_solids"
    assert V.name("Organic carbon", fraction="dissolved").analyte == "dissolved_organic_carbon"
    assert V.name("TH", unit="°f").analyte == "total_hardness"
    assert V.name("TH", unit="µg/L") is None


def test_footnotes_and_points_are_kept():
    assert V.name("Iron¹").footnotes == ("1",)
    assert V.name("Lead (Pb) - First Draw").point == "tap_first_draw"
    assert V.name("Lead (5 min flush)").point == V.name("Lead, 2 minute flush").point == "tap_flushed"
    assert V.name("Copper (6 hr standing)").point == "tap_first_draw"
    assert V.name("Lead after 5 min") is None  # standing or running?
    assert V.name("Arsenic, total (EPA 200.8)").method == "EPA 200.8"


def test_misspelling_is_unknown_with_a_suggestion():
    assert V.name("Sodum") is None
    assert "Sodium" in V.suggest("Sodum")
    assert V.suggest("wind direction in degrees") == ()


@pytest.mark.parametrize("analyte", sorted(key for key, known in V.analytes.items() if known.printed))
def test_each_analyte_is_found_by_its_label_and_number(analyte):
    known = V.analytes[analyte]
    for text in (known.label, known.label.upper(), f"{known.label}, total" if known.fractions else known.label):
        found = V.name(text)
        assert found is not None, text
        assert found.analyte == analyte
    if known.cas:
        found = V.name(known.cas, code_list="cas")
        assert found is None or found.analyte == analyte or V.analytes[found.analyte].cas == known.cas


@pytest.mark.parametrize("analyte", sorted(key for key, known in V.analytes.items() if not known.printed))
def test_what_only_a_limit_is_on_is_no_printed_name(analyte):
    """No report measures `individual_pfas`: a limit is on each of its members. A sum of ratios has a key to compare."""
    for text in (analyte, V.analytes[analyte].label, V.analytes[analyte].label.upper()):
        assert V.name(text) is None, text
        assert V.analytes[analyte].label not in V.suggest(text)


def test_class_limits_and_sums_of_ratios_are_not_printed():
    of_limits = {key for key in V.analytes if key.startswith("individual_") or key.endswith("_ratio_sum")}
    assert of_limits == {key for key, known in V.analytes.items() if not known.printed}


def test_no_spelling_is_of_two_analytes():
    """One squash of a spelling has one analyte, but for letters that only case or the unit tell apart, and two
    analytes in one name, which is of neither."""
    both = {
        key: {spelling.analyte for spelling in spellings}
        for key, spellings in V._names._spellings.items()
        if len({spelling.analyte for spelling in spellings}) > 1
    }
    assert all(len(key) <= 3 or key.startswith("totalcoliform") for key in both), both
    assert all(V.name(key.upper()) is None for key in both)


@given(
    st.sampled_from(sorted(PRINTED)), st.sampled_from(["", " ", "\u00a0"]), st.sampled_from(["*", " *", " †", ":", ""])
)
def test_blanks_marks_and_capitals_change_nothing(name, blank, mark):
    plain = V.name(name)
    changed = V.name(f"{blank}{name}{mark}")
    assert (changed.analyte, changed.fraction, changed.basis) == (plain.analyte, plain.fraction, plain.basis)


ELEMENTS = {key: known for key, known in V.analytes.items() if known.group == "metal" and known.formula}
SAID = {
    "total": ["Total", "total", "TOT", "unfiltered"],
    "dissolved": ["Dissolved", "diss.", "filtered", "soluble"],
    "total_recoverable": ["Total Recoverable", "Tot. Rec."],
    "suspended": ["Suspended"],
}


@given(
    st.sampled_from(sorted(ELEMENTS)),
    st.sampled_from([(fraction, word) for fraction, words in SAID.items() for word in words] + [(None, "")]),
    st.sampled_from(["{f} {n}", "{n}, {f}", "{n} ({f})", "{n} - {f}", "{n} {f}", "{n};{f}"]),
    st.sampled_from(["", " as {s}", " (as {s})", " ({s})"]),
    st.sampled_from(["", " mg/L", " (µg/L)", ", ug/L", " [mg/l]"]),
    st.sampled_from(["", " by ICP-MS", " (EPA 200.8)", " SM 3125B", " - field"]),
    st.booleans(),
)
def test_grammar_of_names(key, said, shape, form, unit, method, capitals):
    """Fraction, form, unit and method may stand around a name in many ways; none changes what the others say."""
    known, (fraction, word) = ELEMENTS[key], said
    name = shape.format(n=known.label, f=word) if word else known.label
    text = name + form.format(s=known.formula) + unit + method
    found = V.name(text.upper() if capitals and not form else text)
    assert found is not None, text
    assert (found.analyte, found.fraction) == (key, fraction), text
    assert (found.measured == "field") == method.endswith("field")
    assert found.basis == (known.formula if "as" in form else None)
    assert bool(found.unit) == bool(unit)


WORDS = [word for name in PRINTED for word in re.split(r"\W+", name) if len(word) > 3]


@given(st.sampled_from(sorted(PRINTED)), st.sampled_from(["dose", "tank", "removal", "filter system", "xyz", "county"]))
def test_a_word_left_over_makes_it_unknown(name, word):
    assert V.name(f"{name} {word}") is None
    assert V.name(f"{word} {name}") is None


@given(st.sampled_from(sorted(set(WORDS))), st.integers(0, 8), st.sampled_from("bgjkqvwxz"))
def test_a_changed_letter_never_gives_another_analyte(word, place, letter):
    """A word with one letter replaced by a rare one is unknown or the same; acronyms and codes lie too close."""
    place = place % len(word)
    if not word[place].isalpha() or (word.isupper() and len(word) < 6) or "_" in word:
        return
    changed = V.name(word[:place] + letter + word[place + 1 :])
    plain = V.name(word)
    assert changed is None or plain is None or changed.analyte == plain.analyte


@given(st.text(max_size=60))
def test_any_text_has_an_answer(text):
    found = V.name(text)
    assert found is None or found.analyte in V.analytes
    assert isinstance(V.suggest(text), tuple)
