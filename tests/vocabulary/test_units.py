"""Printed units: factors against published ones, what is not a unit of an analyte, and how often pint is asked."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st
from vocabulary_places import facts

from wellchem.chemistry.masses import molar_mass
from wellchem.vocabulary import NameMeaning, UnitProblem, bundled, units

V = bundled()

# Exact by definition of the units (SI Brochure 2019; NIST SP 811: grain 64.79891 mg, gallon 3.785411784 L, curie
# 3.7e10 Bq), or by molar masses (CIAAW 2024) where a form is named.
FACTORS = [
    ("mg/L", "iron", 1),
    ("ug/L", "iron", 1e-3),
    ("µG/L", "iron", 1e-3),
    ("μg/l", "iron", 1e-3),
    ("&mu;g/L", "iron", 1e-3),
    ("mcg/L", "iron", 1e-3),
    ("mg.L", "iron", 1),
    ("mg/l      ", "iron", 1),
    ("(mg/L)", "iron", 1),
    ("mg·L⁻¹", "iron", 1),
    ("mg L-1", "iron", 1),
    ("milligrams per liter", "iron", 1),
    ("ppm", "iron", 1),
    ("PPB", "lead", 1e-3),
    ("ppt", "pfoa", 1e-6),
    ("ng/l", "pfoa", 1e-6),
    ("PG/L", "dioxin_2_3_7_8_tcdd", 1e-9),
    ("µg/100mL", "iron", 1e-2),
    ("g/m³", "iron", 1),
    ("mg/L as N", "nitrate", 1),
    ("mgN/L", "nitrate", 1),
    ("mg/L NO3-N", "nitrate", 1),
    ("mg NO3/L", "nitrate", molar_mass("N") / molar_mass("NO3")),
    ("mg/l asNO3", "nitrate", molar_mass("N") / molar_mass("NO3")),
    ("mg/l.as.P", "phosphorus", 1),
    ("mg/l PO4", "phosphorus", molar_mass("P") / molar_mass("PO4")),
    ("mg P2O5/L", "phosphorus", 2 * molar_mass("P") / molar_mass("P2O5")),
    ("mg/L as Si", "silica", molar_mass("SiO2") / molar_mass("Si")),
    ("ug/L as As", "arsenic", 1e-3),
    ("mg/L as H2S", "sulfide", molar_mass("S") / molar_mass("H2S")),
    ("as mg/L HCO3", "total_alkalinity", molar_mass("CaCO3") / 2 / molar_mass("HCO3")),
    ("mg/l (CaCO3)", "total_hardness", 1),
    ("mg CaCO3/L", "total_alkalinity", 1),
    ("mg/L as CaCO3", "bicarbonate", molar_mass("HCO3") * 2 / molar_mass("CaCO3")),
    ("gpg", "total_hardness", 64.79891 / 3.785411784),
    ("grains/gal", "total_hardness", 64.79891 / 3.785411784),
    ("°dH", "total_hardness", 10 * molar_mass("CaCO3") / molar_mass("CaO")),
    ("°fH", "total_hardness", 10),
    ("°F", "total_hardness", 10),
    ("°e", "total_hardness", 64.79891 / 4.54609),
    ("mmol/l", "total_hardness", molar_mass("CaCO3")),
    ("mmol/l", "total_alkalinity", molar_mass("CaCO3") / 2),
    ("mmol/l", "nitrate", molar_mass("N")),
    ("meq/L", "calcium", molar_mass("Ca") / 2),
    ("mval/l", "sulfate", molar_mass("SO4") / 2),
    ("ueq/L", "total_alkalinity", molar_mass("CaCO3") / 2000),
    ("ug/L U3O8", "uranium", 3e-3 * molar_mass("U") / molar_mass("U3O8")),
    ("ppm C", "total_organic_carbon", 1),
    ("CFU/100mL", "e_coli", 1),
    ("CFU / 100 mL", "e_coli", 1),
    ("MPN/100 mL", "total_coliform", 1),
    ("/100ml", "e_coli", 1),
    ("n/100 ml", "e_coli", 1),
    ("#/100ml   ", "e_coli", 1),
    ("UFC/100 mL", "e_coli", 1),
    ("KBE/100 ml", "e_coli", 1),
    ("Anzahl/100 ml", "e_coli", 1),
    ("CFU/mL", "e_coli", 100),
    ("CFU/mL", "heterotrophic_plate_count", 1),
    ("KBE/1 ml", "colony_count_22", 1),
    ("1/(250 mL)", "e_coli", 0.4),
    ("oocysts/10L", "cryptosporidium", 10),
    ("P/A per 100 mL", "e_coli", 1),
    ("µS/cm", "specific_conductance", 1),
    ("uS/cm @25C", "specific_conductance", 1),
    ("UMHOS/CM", "specific_conductance", 1),
    ("mS/m", "specific_conductance", 10),
    ("dS/m", "specific_conductance", 1000),
    ("mS/cm", "specific_conductance", 1000),
    ("µS/cm at 20 °C", "specific_conductance", 1.116),  # ISO 7888:1985, from memory; 2500 to 2790 in TrinkwV Anlage 3
    ("NTU", "turbidity", 1),
    ("FNU", "turbidity", 1),
    ("Pt-Co", "apparent_color", 1),
    ("Hazen", "true_color", 1),
    ("mg/L Pt", "apparent_color", 1),
    ("CU", "apparent_color", 1),
    ("1/m", "spectral_absorption_436", 1),
    ("pCi/L", "gross_alpha", 0.037),
    ("PCI/L", "radium_226", 0.037),
    ("Bq/m³", "radon_222", 1e-3),
    ("mBq/L", "gross_alpha", 1e-3),
    ("Deg C", "temperature", 1),
    ("SU", "ph", 1),
    ("s.u.", "ph", 1),
    ("UNITS", "apparent_color", 1),
    ("TON", "odor", 1),
    ("MFL", "asbestos", 1),
    ("mV", "oxidation_reduction_potential", 1),
    ("%", "uv_transmittance", 1),
]


@pytest.mark.parametrize(("unit", "analyte", "factor"), FACTORS, ids=[f"{a}-{u}" for u, a, _ in FACTORS])
def test_factor(unit, analyte, factor):
    meaning = V.unit(unit, analyte)
    assert meaning.problem is None, meaning.detail
    assert meaning.factor == pytest.approx(factor, rel=1e-12)
    assert meaning.offset == 0
    assert (meaning.unit, meaning.basis) == (V.analytes[analyte].unit, V.analytes[analyte].basis)


def test_fahrenheit():
    meaning = V.unit("°F", "temperature")
    assert 212 * meaning.factor + meaning.offset == pytest.approx(100)
    assert 32 * meaning.factor + meaning.offset == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(
    ("unit", "analyte"),
    [
        ("µS/cm", "total_hardness"),
        ("mg/kg", "iron"),
        ("µg/m3", "lead"),
        ("mg/m2", "iron"),
        ("NTU", "iron"),
        ("mg/L", "turbidity"),
        ("mg/L", "ph"),
        ("ug/L", "e_coli"),
        ("CFU/100 mL", "nitrate"),
        ("pCi/L", "lead"),
        ("ppt", "chloride"),
        ("mg/L as NO3", "sulfate"),
        ("mg/L as N", "iron"),
        ("°dH", "iron"),
        ("meq/L", "atrazine"),
        ("%", "dissolved_oxygen"),
        ("1/m", "apparent_color"),
        ("tons/day", "iron"),
        ("°C", "specific_conductance"),
    ],
)
def test_unit_that_cannot_be_right(unit, analyte):
    meaning = V.unit(unit, analyte)
    assert meaning.problem in (UnitProblem.UNIT_NOT_OF_ANALYTE, UnitProblem.UNKNOWN_UNIT)
    assert meaning.detail
    if unit != "tons/day":
        assert meaning.problem is UnitProblem.UNIT_NOT_OF_ANALYTE


@pytest.mark.parametrize(
    "unit", ["furlong", "mg/", "/L", "mgL/", "xyz/L", "5", "1/2", "see note", "mg/1", "JTU", "ND", "O"]
)
def test_unknown_unit(unit):
    assert V.unit(unit, "iron").problem is not None
    assert not V.is_unit(unit) or V.unit(unit, "iron").problem is UnitProblem.UNIT_NOT_OF_ANALYTE


def test_what_is_not_printed_is_supposed_and_said():
    assert V.unit("", "iron").assumptions == ("unit=mg/L",)
    assert V.unit("None", "turbidity").assumptions == ("unit=NTU",)
    assert V.unit("", "ph").assumptions == ()
    assert V.unit("mg/L", "nitrate").assumptions == ("basis=N",)
    assert V.unit("mg/L as N", "nitrate").assumptions == ()
    assert V.unit("mg/L", "nitrate", NameMeaning("nitrate", basis="N")).assumptions == ()
    assert V.unit("CFU", "e_coli").assumptions == ("volume=100 mL",)
    assert V.unit("mg/L", "total_hardness").assumptions == ()


def test_name_and_unit_together():
    nitrate = NameMeaning("nitrate", basis="NO3")
    assert V.unit("mg/L", "nitrate", nitrate).factor == pytest.approx(0.22589665, abs=1e-4)  # N per NO3, IUPAC masses
    assert V.unit("mg/L as N", "nitrate", nitrate).problem is UnitProblem.UNIT_NOT_OF_ANALYTE
    hardness = V.name("Hardness, gpg")
    assert V.unit("", "total_hardness", hardness).factor == pytest.approx(17.118061, abs=1e-6)
    assert V.unit("gpg", "total_hardness", hardness).problem is None
    assert V.unit("mg/L", "iron", V.name("Iron, ug/L")).problem is UnitProblem.CONTRADICTORY
    conductance = V.name("Conductivité à 20 °C")
    assert V.unit("µS/cm", "specific_conductance", conductance).factor == pytest.approx(1.116)


def test_counts_keep_their_volume_and_way():
    meaning = V.unit("UFC/250 mL", "pseudomonas_aeruginosa")
    assert (meaning.factor, meaning.per_volume_ml, meaning.counted_by) == (0.4, 250.0, "CFU")
    assert V.unit("MPN/100 mL", "e_coli").counted_by == "MPN"
    assert V.unit("P/A", "e_coli").counted_by == "presence"


def test_units_that_limits_print():
    """Units of the guideline documents, in the spelling of their tables, convert for the analytes they are for."""
    for unit, analyte in [
        ("million fibers/L", "asbestos"),
        ("color units", "apparent_color"),
        ("HU", "true_color"),
        ("mg/l Pt/Co", "apparent_color"),
        ("FTN", "taste"),
        ("1/(100 L)", "cryptosporidium"),
        ("PFU/(100 mL)", "somatic_coliphages"),
        ("CFU/L", "legionella"),
        ("mSv", "indicative_dose"),
        ("mg/L as Cl2", "free_chlorine"),
        ("mg/L as O2", "permanganate_index"),
        ("mg/L as CN", "cyanogen_chloride"),
        ("1", "nitrate_nitrite_ratio_sum"),
        ("pH units", "ph"),
        ("1/m", "spectral_absorption_436"),
    ]:
        assert V.unit(unit, analyte).problem is None, unit


def test_pint_is_asked_once_for_each_distinct_conversion(monkeypatch):
    units._linear.cache_clear()
    registry = units._registry()
    calls = []
    plain = registry.parse_expression
    monkeypatch.setattr(registry, "parse_expression", lambda text: calls.append(text) or plain(text))
    fresh = V.extended(names=[])
    for _ in range(50):
        for analyte in ("iron", "lead", "zinc"):
            fresh.unit("µg/L", analyte)
            fresh.unit("ug/l", analyte)
            fresh.unit("mg/L", analyte)
    assert len(calls) == 4  # two expressions, each parsed with the canonical one


@given(st.sampled_from(FACTORS), st.sampled_from(["", " ", "  "]), st.sampled_from([str.upper, str.lower, str.strip]))
def test_case_and_blanks_change_nothing(row, blank, change):
    unit, analyte, factor = row
    if "&" in unit:
        return
    meaning = V.unit(f"{blank}{change(unit)}{blank}", analyte)
    assert meaning.problem is None
    assert meaning.factor == pytest.approx(factor)


@given(st.text(max_size=20), st.sampled_from(["iron", "ph", "e_coli", "temperature", "gross_alpha", "nitrate"]))
def test_any_text_has_an_answer(text, analyte):
    meaning = V.unit(text, analyte)
    assert meaning.problem is None or meaning.detail


@pytest.mark.parametrize("analyte", sorted(V.analytes))
def test_canonical_unit_is_itself(analyte):
    known = V.analytes[analyte]
    text = f"{known.unit} as {known.basis}" if known.basis else known.unit
    meaning = V.unit(text, analyte)
    assert meaning.problem is None, meaning.detail
    assert (meaning.factor, meaning.offset, meaning.unit) == (1.0, 0.0, known.unit)


def _examples():
    path = facts() / "worked" / "worked_examples.toml"
    if not path.exists():
        return []
    found = tomllib.loads(path.read_text(encoding="utf-8"))["example"]
    return [(e["id"], v["name"], v) for e in found if e["topic"] == "units" for v in e["expected"]]


# Which conversion a worked value is: unit, analyte, and the unit that it is expressed in.
_HARDNESS = {
    "gpg_us_mg_L": ("gpg", "mg/L as CaCO3"),
    "english_clark_degree_mg_L": ("°e", "mg/L as CaCO3"),
    "german_degree_mg_L": ("°dH", "mg/L as CaCO3"),
    "french_degree_mg_L": ("°fH", "mg/L as CaCO3"),
    "mmol_L_mg_L": ("mmol/L", "mg/L as CaCO3"),
    "meq_L_mg_L": ("meq/L", "mg/L as CaCO3"),
    "german_degree_per_mmol_L": ("mmol/L", "°dH"),
    "german_degree_mmol_L": ("°dH", "mmol/L"),
    "mg_L_CaCO3": ("meq/L", "mg/L as CaCO3"),
    "dH": ("meq/L", "°dH"),
    "fH": ("meq/L", "°fH"),
}
_FORMS = {
    "no3_per_n": ("mg/L as N", "mg/L as NO3", "nitrate"),
    "no2_per_n": ("mg/L as N", "mg/L as NO2", "nitrite"),
    "nh4_per_n": ("mg/L as N", "mg/L as NH4", "ammonia"),
    "nh3_per_n": ("mg/L as N", "mg/L as NH3", "ammonia"),
    "n_per_no3": ("mg/L as NO3", "mg/L as N", "nitrate"),
    "no3": ("mg/L as N", "mg/L as NO3", "nitrate"),
    "so4_per_s": ("mg/L as S", "mg/L as SO4", "sulfate"),
    "po4_per_p": ("mg/L as P", "mg/L as PO4", "orthophosphate"),
    "p2o5_per_p": ("mg/L as P", "mg/L as P2O5", "orthophosphate"),
    "sio2_per_si": ("mg/L as Si", "mg/L as SiO2", "silica"),
    "hco3_per_alk_caco3": ("mg/L as CaCO3", "mg/L as HCO3", "bicarbonate"),
    "co3_per_alk_caco3": ("mg/L as CaCO3", "mg/L as CO3", "carbonate"),
    "oh_per_alk_caco3": ("mg/L as CaCO3", "mg/L as OH", "hydroxide"),
}
_IONS = {
    "ca": "calcium", "mg": "magnesium", "na": "sodium", "k": "potassium", "cl": "chloride", "so4": "sulfate",
    "hco3": "bicarbonate", "co3": "carbonate", "oh": "hydroxide", "f": "fluoride", "br": "bromide", "li": "lithium",
    "sr": "strontium", "ba": "barium", "zn": "zinc", "mn2": "manganese", "fe2": "iron", "fe3": "iron_iii",
    "cu2": "copper", "pb2": "lead", "al": "aluminum",
}  # fmt: skip
_EXAMPLES = _examples()


@pytest.mark.parametrize(("source", "name", "value"), _EXAMPLES, ids=[f"{s}-{n}" for s, n, _ in _EXAMPLES])
def test_worked_values(source, name, value):
    """Published conversion factors; each id names its document in the collected examples."""
    if name in _HARDNESS and source.startswith("hardness"):
        first, second, analyte = *_HARDNESS[name], "total_hardness"
        found = V.unit(first, analyte).factor / V.unit(second, analyte).factor
    elif name in _IONS and source.startswith("meq"):
        per = V.unit("meq/L", _IONS[name]).factor
        form = V.analytes[_IONS[name]].form
        found = per if value["unit"] == "mg/meq" else V.unit(f"mg/L as {form}", _IONS[name]).factor / per
    elif name in _FORMS and source.startswith("basis") and not source.endswith("limits"):
        first, second, analyte = _FORMS[name]
        found = V.unit(first, analyte).factor / V.unit(second, analyte).factor
    elif source.endswith("limits") and value.get("basis") in ("NO3", "NO2", "N"):
        pytest.skip("a limit, not a conversion")
    else:
        pytest.skip("a form or a unit that laboratories do not report for an analyte here")
    tolerance = value.get("tol", value["value"] * value.get("tol_rel", 0))
    assert found == pytest.approx(value["value"], abs=max(tolerance, 1e-9))
