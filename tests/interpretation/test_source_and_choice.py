"""The source before equipment, choices that are no needs, and samples that are not the raw water.

Expectations: Wisconsin DNR, Bacteriological Contamination of Drinking Water Wells (PUB-DG-003): bacteria that come back
enter by cap, casing, grout or fractured rock near the surface; US EPA, Private Drinking Water Wells (from memory): dug
and driven wells of up to 50 feet are shallow; US EPA, Drinking Water Advisory: Sodium (taste 30 to 60 mg/L, 20 mg/L for
diets of 500 mg a day: advice, no limit); 40 CFR 141.135(a)(2) (organic carbon of 2 mg/L and more is taken out ahead of
chlorine where it can be; from memory); WHO Guidelines, chapter 8 (disinfection is not given up for its by-products;
from memory).
"""

from datetime import date

import pytest

import wellchem
from wellchem.models.codes import SamplingPoint
from wellchem.models.household import Household, Observation, WellType
from wellchem.models.sample import Sample

ON, DAY = date(2026, 5, 1), date(2026, 4, 20)
NONE = {"Total coliform": "Absent", "E. coli": "Absent"}
SOME = {"Total coliform": "Present", "E. coli": "Absent"}


def found(values, household=None, **about):
    return wellchem.interpret(Sample.from_values(values, collected=DAY, **about), on=ON, household=household)


def sure(finding, code):
    return {one.code: one.certainty.value for one in finding.problems}.get(code)


def stages(finding):
    return [stage.code for stage in finding.treatment.stages]


@pytest.mark.parametrize("field", ["bacteria_return", "bacteria_after_rain"])
@pytest.mark.parametrize("values", [NONE, SOME, {"Nitrate-N": "3 mg/L"}])
def test_bacteria_that_come_back_or_follow_rain_point_to_the_surface(field, values):
    finding = found(values, Household(**{field: True}))
    assert sure(finding, "surface_connection") == "likely"
    assert any("neither by shock chlorination nor by ultraviolet" in step for step in finding.treatment.steps_first)
    assert sure(found(values, Household(**{field: False})), "surface_connection") is None


def test_each_is_asked_for():
    asked = {one.field for one in found(SOME).missing}
    assert {"bacteria_return", "bacteria_after_rain"} <= asked
    known = Household(bacteria_return=False, bacteria_after_rain=False)
    assert not {"bacteria_return", "bacteria_after_rain"} & {one.field for one in found(SOME, known).missing}


@pytest.mark.parametrize(("depth", "certainty"), [(6.0, "possible"), (15.0, "possible"), (60.0, None)])
def test_a_shallow_well_with_coliforms(depth, certainty):
    assert sure(found(SOME, Household(well_depth=depth)), "surface_connection") == certainty
    assert sure(found(SOME, well_depth=depth), "surface_connection") == certainty  # as the report prints it
    assert sure(found(NONE, Household(well_depth=depth)), "surface_connection") is None


def test_a_shallow_well_with_fecal_bacteria_is_likely_open():
    fecal = {"Total coliform": "Present", "E. coli": "Present"}
    assert sure(found(fecal, Household(well_depth=8)), "surface_connection") == "likely"
    assert sure(found(fecal, Household(well_type=WellType.SPRING)), "surface_connection") == "likely"
    assert "surface_connection" in found(fecal, Household(well_depth=8)).treatment.unanswered


def test_what_changes_after_rain_is_noticed():
    finding = found({"Turbidity": "2 NTU"}, Household(observations=(Observation.CHANGES_AFTER_RAIN,)))
    assert sure(finding, "surface_connection") == "possible"


TANNIN_IRON = {"Iron": "3.0 mg/L", "Manganese": "0.02 mg/L", "Tannin": "2.5 mg/L", "pH": "7.0", "Total hardness": "60"}


def test_no_chlorine_for_iron_in_water_with_tannin():
    finding = found(TANNIN_IRON | NONE)
    assert "chlorination" not in stages(finding)
    assert "by-products" in finding.treatment.text
    assert "iron" in finding.treatment.unanswered


def test_tannin_with_a_little_iron_goes_to_resin():
    finding = found({"Iron": "0.2 mg/L", "Manganese": "0.02", "Tannin": "2", "Total hardness": "60", "pH": "7"} | NONE)
    assert stages(finding) == ["tannin_exchange"]


def test_organisms_go_before_by_products():
    """Where organisms are found the barrier stands, and the by-products are said."""
    finding = found(TANNIN_IRON | {"Total coliform": "Present", "E. coli": "Present"})
    assert "chlorination" in stages(finding)
    (chlorine,) = [stage for stage in finding.treatment.stages if stage.code == "chlorination"]
    assert any("trihalomethanes" in text and "2.5 mg/L" in text for text in chlorine.adds)


SODIUM = {"Sodium": "230 mg/L", "pH": "7.8", "Total hardness": "60", "Total dissolved solids": "480"} | NONE


def test_sodium_taste_alone_forces_no_equipment():
    finding = found(SODIUM, point=SamplingPoint.WELL_HEAD)
    assert sure(finding, "sodium_taste") == "likely"
    assert stages(finding) == []
    assert any("choice" in step and "Sodium" in step for step in finding.treatment.steps_first)


def test_a_low_sodium_diet_is_the_physicians_and_equipment_is_a_choice():
    finding = found(SODIUM, Household(sodium_restricted=True), point=SamplingPoint.WELL_HEAD)
    assert any(one.hazard == "sodium_diet" and "physician" in one.text for one in finding.actions)
    assert all("matter of choice" in stage.why for stage in finding.treatment.stages if stage.answers)


SOFTENED = {"Total hardness": "3 mg/L", "Sodium": "165 mg/L", "Arsenic": "25 µg/L", "pH": "7.6"} | NONE


def test_a_sample_that_looks_treated_gives_a_conditional_train():
    finding = found(SOFTENED)
    assert "softened" in {sign.code for sign in finding.signs}
    assert finding.treatment.steps_first[0].startswith("This sample is, or may be, from behind treatment")
    assert stages(finding)
    assert finding.treatment.text.startswith("Conditional")


def test_natural_soft_water_of_the_well_head_is_not_conditional():
    finding = found(SOFTENED, point=SamplingPoint.WELL_HEAD)
    assert not finding.treatment.text.startswith("Conditional")


def test_said_treatment_without_a_point_is_conditional_and_behind_it_none_is_chosen():
    values = {"Arsenic": "25 µg/L", "pH": "7.6"} | NONE
    home = Household(treatment=("softener",))
    assert found(values, home).treatment.text.startswith("Conditional")
    assert not found(values, home, point=SamplingPoint.BEFORE_TREATMENT).treatment.text.startswith("Conditional")
    behind = found(values, home, point=SamplingPoint.AFTER_TREATMENT)
    assert stages(behind) == []
    assert behind.treatment.text.startswith("No train is chosen from this sample")


def test_by_products_of_a_chlorinated_sample_call_for_no_carbon():
    finding = found({"Free chlorine": "0.8 mg/L", "Total trihalomethanes": "120 µg/L", "Tannin": "1 mg/L"})
    assert "carbon" not in stages(finding)
    assert any("ahead of the chlorine" in step for step in finding.treatment.steps_first)


def test_where_the_sample_was_taken_can_be_answered():
    values = {"Lead": "9 µg/L", "Copper": "0.4 mg/L"}
    assert "sampling_point" in {one.field for one in found(values).missing}
    said = found(values, Household(sampling_point=SamplingPoint.TAP_FIRST_DRAW))
    assert "sampling_point" not in {one.field for one in said.missing}
    assert {one.code: one.status.value for one in said.checks}["sampling_point"] == "pass"
    printed = found(values, Household(sampling_point=SamplingPoint.TAP), point=SamplingPoint.AFTER_TREATMENT)
    assert printed.sample.point is SamplingPoint.AFTER_TREATMENT  # the report goes before what is remembered


def test_arsenic_in_reducing_water_speaks_of_its_species():
    """Oregon Drinking Water Program: arsenic III passes a membrane; oxidise ahead."""
    values = {"Arsenic": "25 µg/L", "Manganese": "0.2 mg/L", "Ammonia": "1.2 mg/L", "Iron": "0.05 mg/L"}
    (arsenic,) = [one for one in found(values).problems if one.code == "arsenic"]
    assert any("arsenic III" in part.text for part in arsenic.evidence)


def test_the_filter_of_the_lamp_stands_behind_the_iron_filter():
    """Extension leaflets on household ultraviolet: a 5 µm filter just ahead of the lamp (from memory)."""
    values = {"Iron": "2 mg/L", "Manganese": "0.02", "Total hardness": "60", "pH": "7.3", "Turbidity": "0.5 NTU"}
    train = stages(found(values | {"Total coliform": "20", "E. coli": "Absent"}))
    assert train == ["oxidising_filter", "fine_filter", "ultraviolet"]


def test_nothing_is_built_on_a_likely_slip_of_units():
    """Hem 1985: copper of ground water; the finding stands, and the laboratory is asked first."""
    finding = found({"Copper": "300 mg/L"})
    assert any("ask the laboratory for its unit" in step for step in finding.treatment.steps_first)
    (copper,) = [one for one in finding.problems if one.code == "copper"]
    assert any("slip of units" in part.text for part in copper.evidence)
    plain = found({"Copper": "2 mg/L"})
    assert not any("for its unit" in step for step in plain.treatment.steps_first)


def test_the_odor_of_a_heater_asks_for_no_train():
    finding = found({"Sulfate": "60 mg/L"}, Household(observations=(Observation.ROTTEN_EGG_HOT,)))
    assert stages(finding) == []
    assert finding.treatment.unanswered == ()
    assert any("heater" in step for step in finding.treatment.steps_first)
