"""Classes, most probable numbers, oxidants and softening: their edges. Published examples: test_worked_examples."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellchem import chemistry as c


def test_an_end_belongs_to_the_class_that_the_document_says() -> None:
    # USGS WSP 1812 (memory): 0-60, 61-120, 121-180, above 180 mg/L.
    values = [0.0, 60.0, 60.1, 120.0, 120.1, 180.0, 1e5, math.nan, -1.0]
    names = ["soft", "soft", "moderately hard", "moderately hard", "hard", "hard", "very hard", "", ""]
    assert list(c.classify("hardness USGS", values)) == names
    # AWWA C400 (memory): 12 and more is nonaggressive, below 10 highly aggressive.
    assert c.classify("aggressive index", 12.0) == "nonaggressive"
    assert c.classify("aggressive index", 10.0) == "moderately aggressive"
    assert c.classify("aggressive index", -math.inf) == "highly aggressive"


def test_documents_disagree_on_one_hardness() -> None:
    assert c.classify("hardness USGS", 150.0) == "hard"
    assert c.classify("hardness TM 5-813-1", 150.0) == "soft to moderately hard"
    with pytest.raises(ValueError, match="classes"):
        c.classify("hardness of mine", 150.0)


@given(st.integers(1, 20), st.floats(1.0, 50.0), st.data())
def test_one_dilution_has_a_closed_form(portions: int, volume: float, data: st.DataObject) -> None:
    # Cochran 1950: (1/V) ln(n/(n - p)) for a single dilution.
    positives = data.draw(st.integers(1, portions - 1)) if portions > 1 else 0
    expected = 100.0 / volume * math.log(portions / (portions - positives))
    assert c.most_probable_number([volume], [portions], [positives]) == pytest.approx(expected, rel=1e-9, abs=1e-12)


def test_the_most_probable_number_is_of_the_greatest_likelihood() -> None:
    volumes, portions, positives = np.array([10.0, 1.0, 0.1]), np.array([5, 5, 5]), np.array([5, 3, 1])

    def likelihood(number: float) -> float:
        none = np.exp(-number / 100.0 * volumes)
        return float((positives * np.log1p(-none) + (portions - positives) * np.log(none)).sum())

    best = c.most_probable_number(list(volumes), list(portions), list(positives))
    assert likelihood(best) > max(likelihood(best * 0.999), likelihood(best * 1.001))


def test_the_ends_of_a_table_are_bounds() -> None:
    # SM 9221 (memory): ten tubes of 10 mL, none positive < 1.1, all positive > 23.
    assert c.tabulated_mpn("ten tubes of 10 mL", 0) == (0.0, 1.1)
    assert c.tabulated_mpn("ten tubes of 10 mL", 10) == (23.0, math.inf)
    assert c.most_probable_number([10.0], [10], [0]) == 0.0
    assert c.most_probable_number([10.0], [10], [10]) == math.inf


@pytest.mark.parametrize("call", [([10.0], [5], [6]), ([10.0, 1.0], [5], [2]), ([10.0], [5], [-1])])
def test_impossible_positives_are_an_error(call: tuple[list[float], list[int], list[int]]) -> None:
    with pytest.raises(ValueError, match=r"positive|same dilutions"):
        c.most_probable_number(*call)
    with pytest.raises(ValueError, match="most probable number"):
        c.tabulated_mpn("ten tubes of 10 mL", 11)


def test_electrons_are_conserved_between_oxidants() -> None:
    # 1 mol of chlorine takes two electrons, 1 mol of oxygen four (any textbook): 70.9 against 32.0 / 2.
    chlorine = c.oxidant_demand(1.0, "iron to ferric hydroxide", "chlorine")
    oxygen = c.oxidant_demand(1.0, "iron to ferric hydroxide", "oxygen")
    assert chlorine / oxygen == pytest.approx(70.90 / (31.998 / 2.0), rel=1e-9)
    # Breakpoint chlorination takes 14.3 mg/L of alkalinity per mg/L of ammonia N (EPA Nitrogen Control manual, memory).
    assert c.alkalinity_consumed(1.0, "ammonia to nitrogen", "chlorine") == pytest.approx(14.3, abs=0.05)


def test_what_cannot_be_oxidised_is_an_error() -> None:
    with pytest.raises(ValueError, match="no oxidant"):
        c.oxidant_demand(1.0, "iron to ferric hydroxide", "bleach")
    with pytest.raises(ValueError, match="no oxidation"):
        c.oxidant_demand(1.0, "iron", "chlorine")
    with pytest.raises(ValueError, match="has no S"):
        c.oxidant_demand(1.0, "sulfide to sulfate", "chlorine", basis="Fe")


@given(st.floats(0.0, 2000.0), st.floats(0.0, 5000.0))
def test_a_softener_exchanges_equivalents(hardness: float, litres: float) -> None:
    sodium = c.sodium_added(hardness_removed=hardness)
    assert c.milliequivalents(sodium, "Na") == pytest.approx(c.milliequivalents(hardness, "CaCO3"))
    grains = c.hardness_load(total_hardness=hardness, volume=litres)
    gallons, per_gallon = litres / 3.785411784, c.convert_hardness(hardness, "mg/L", "gpg")
    assert grains == pytest.approx(gallons * per_gallon, rel=1e-9)
