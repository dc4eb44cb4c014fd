"""Ten waters behind single stages against balances written here in plain numbers: equivalents from IUPAC weights."""

import pytest
from treatment_waters import sample

from wellchem.interpretation.treatment import treat
from wellchem.models.finding import Stage, Treatment

# mg for each meq; nitrate as N, alkalinity as CaCO3. IUPAC 2021 atomic weights.
CATIONS = {"calcium": 20.039, "magnesium": 12.1525, "sodium": 22.990, "potassium": 39.098}
ANIONS = {"total_alkalinity": 50.043, "chloride": 35.45, "sulfate": 48.03, "nitrate": 14.007}

# Calcium, magnesium, potassium, alkalinity, chloride, sulfate, nitrate [mg/L]; sodium closes the balance.
ROWS = [
    (100, 30, 2, 250, 40, 60, 5),
    (20, 5, 1, 60, 10, 8, 1),
    (150, 60, 4, 380, 120, 200, 12),
    (8, 2, 1, 25, 6, 5, 0.5),
    (60, 25, 3, 200, 300, 80, 2),
    (45, 15, 2, 150, 25, 30, 22),
    (120, 45, 6, 310, 60, 450, 1),
    (30, 12, 2, 240, 15, 20, 0.1),
    (75, 20, 1, 190, 20, 70, 15),
    (200, 80, 5, 420, 250, 500, 8),
]


def waters():
    for row in ROWS:
        names = ("calcium", "magnesium", "potassium", *ANIONS)
        amounts = dict(zip(names, map(float, row), strict=True))
        anions = sum(amounts[name] / weight for name, weight in ANIONS.items())
        cations = sum(amounts[name] / CATIONS[name] for name in ("calcium", "magnesium", "potassium"))
        sodium = max(anions - cations, 0.0) * CATIONS["sodium"]
        amounts["chloride"] += max(cations - anions, 0.0) * ANIONS["chloride"]
        yield {**amounts, "sodium": sodium, "ph": 7.4, "total_coliform": 0.0}


def behind(code, amounts):
    treatment = Treatment(stages=(Stage(code=code, title="", where=""),))
    return {one.analyte: (one.low, one.high) for one in treat(sample(amounts), treatment).results}


@pytest.mark.parametrize("amounts", list(waters()))
def test_softening_is_equivalent_for_equivalent(amounts):
    found = behind("softening", amounts)
    taken = [
        sum((amounts[name] - found[name][end]) / CATIONS[name] for name in ("calcium", "magnesium")) for end in (1, 0)
    ]
    for end in (0, 1):
        assert found["sodium"][end] == pytest.approx(amounts["sodium"] + taken[end] * CATIONS["sodium"], rel=2e-3)
    for name in ANIONS:
        assert found[name] == pytest.approx((amounts[name], amounts[name]))


@pytest.mark.parametrize("amounts", list(waters()))
def test_anion_resin_gives_chloride_for_what_it_takes(amounts):
    found = behind("nitrate_exchange", amounts)
    names = [name for name in ANIONS if name != "chloride"]
    least, most = (sum(max(amounts[name] - found[name][end], 0.0) / ANIONS[name] for name in names) for end in (1, 0))
    raw = amounts["chloride"]
    assert found["chloride"][1] == pytest.approx(raw + most * 35.45, rel=5e-3)
    assert found["chloride"][0] <= raw + least * 35.45 * 1.005
    for name in CATIONS:
        assert found[name] == pytest.approx((amounts[name], amounts[name]))


@pytest.mark.parametrize("amounts", list(waters()))
def test_membrane_leaves_an_interval_that_charge_balance_can_be_met_in(amounts):
    found = behind("reverse_osmosis", amounts)
    cations = [sum(found[name][end] / weight for name, weight in CATIONS.items()) for end in (0, 1)]
    anions = [sum(found[name][end] / weight for name, weight in ANIONS.items()) for end in (0, 1)]
    assert cations[0] <= anions[1]
    assert anions[0] <= cations[1]
    for name in (*CATIONS, *ANIONS):
        assert found[name][1] <= amounts[name] * 1.0001


@pytest.mark.parametrize("amounts", list(waters()))
def test_chlorination_turns_sulfide_into_sulfate_and_leaves_chloride(amounts):
    """HS- + 4 OCl- = SO4-- + 4 Cl- + H+: 1 mg/L as H2S gives at most 2.82 of sulfate and 4.16 of chloride."""
    found = behind("chlorination", {**amounts, "hydrogen_sulfide": 1.0})
    assert found["sulfate"][0] >= amounts["sulfate"] * 0.9999
    assert found["sulfate"][1] == pytest.approx(amounts["sulfate"] + 96.06 / 34.08, rel=0.01)
    assert found["chloride"][1] >= amounts["chloride"] + 4 * 35.45 / 34.08 * 0.99


@pytest.mark.parametrize("amounts", list(waters()))
def test_calcite_raises_calcium_hardness_and_alkalinity_alike(amounts):
    found = behind("neutralising_calcite", {**amounts, "ph": 6.3, "total_hardness": 100.0})
    gain = found["total_alkalinity"][1] - amounts["total_alkalinity"]
    assert gain > 0
    assert found["calcium"][1] - amounts["calcium"] == pytest.approx(gain / 50.043 * 20.039, rel=5e-3)
    assert found["total_hardness"][1] - 100.0 == pytest.approx(gain, rel=5e-3)


OXIDISING = ("chlorination", "oxidising_filter", "aerated_filter", "aeration")


@pytest.mark.parametrize("amounts", list(waters()))
@pytest.mark.parametrize("stage", OXIDISING)
def test_sulfide_that_becomes_sulfate_takes_the_place_of_alkalinity(stage, amounts):
    """HS- + 2 O2 = SO4-- + H+ (balanced equation): 1 mg/L as S gives at most 2.996 of sulfate, 0.0624 meq/L, and takes
    as many equivalents, 3.12 mg/L, of alkalinity."""
    found = behind(stage, {**amounts, "sulfide": 1.0})
    assert found["sulfate"] == pytest.approx((amounts["sulfate"], amounts["sulfate"] + 96.056 / 32.06), rel=1e-3)
    least = max(amounts["total_alkalinity"] - 2 / 32.06 * 50.043, 0.0)
    assert found["total_alkalinity"] == pytest.approx((least, amounts["total_alkalinity"]), rel=1e-3)


@pytest.mark.parametrize("amounts", list(waters()))
@pytest.mark.parametrize("stage", OXIDISING)
def test_behind_oxidation_the_farthest_water_is_as_balanced_as_the_raw(stage, amounts):
    """All of the sulfide to sulfate, all of the hypochlorite to salt: charge for charge."""
    found = behind(stage, {**amounts, "sulfide": 1.5})
    salts = {**{name: found[name][1] for name in (*CATIONS, *ANIONS)}, "potassium": amounts["potassium"]}
    salts["total_alkalinity"] = found["total_alkalinity"][0]
    cations = sum(salts[name] / weight for name, weight in CATIONS.items())
    anions = sum(salts[name] / weight for name, weight in ANIONS.items())
    assert cations == pytest.approx(anions, rel=1e-3)
    if stage != "aeration":
        # Nothing but bicarbonate, its two equivalents a mole, has left.
        assert found["calcium"] == pytest.approx((amounts["calcium"],) * 2)


@pytest.mark.parametrize("amounts", list(waters()))
def test_hypochlorite_leaves_its_salt(amounts):
    """NaOCl leaves NaCl, mole for mole of chlorine, and its solution as much again (Cl2 + 2 NaOH = NaOCl + NaCl + H2O).
    Sulfide as S to sulfur takes one mole, to sulfate four."""
    found = behind("chlorination", {**amounts, "sulfide": 3.206})
    sodium = [(found["sodium"][end] - amounts["sodium"]) / 22.990 for end in (0, 1)]
    chloride = [(found["chloride"][end] - amounts["chloride"]) / 35.45 for end in (0, 1)]
    assert sodium == pytest.approx(chloride, rel=1e-3)
    assert sodium[0] >= 0.1 * 0.999
    assert sodium[1] >= 2 * 0.4 * 0.999
    assert sodium[1] <= 2 * 0.4 + 2 * 5 / 70.9  # beside the sulfide a residual of a few mg/L at most


def test_chlorine_turns_nitrite_into_nitrate():
    """NO2- + OCl- = NO3- + Cl-: mole for mole, so that nitrogen is kept."""
    found = behind("chlorination", {"nitrite": 2.0, "nitrate": 1.0, "total_coliform": 0.0})
    assert found["nitrate"] == pytest.approx((1.0 + 2.0 * 0.9, 1.0 + 2.0))
    assert found["nitrite"][0] + found["nitrate"][1] == pytest.approx(3.0)
