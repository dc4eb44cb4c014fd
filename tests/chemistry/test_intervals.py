"""Bounds: they contain what the box holds, and are no wider than it needs."""

import inspect
import math
from collections.abc import Callable
from itertools import product
from typing import Any

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellchem import chemistry as c

# What well water may be, by argument: low and high, and whether it is spread over decades.
DOMAIN = {
    "ph": (4.0, 10.0, False),
    "saturation_ph": (6.0, 10.0, False),
    "temperature": (0.5, 60.0, False),
    "dissolved_solids": (10.0, 15000.0, True),
    "conductance": (20.0, 20000.0, True),
    "absorbance": (0.0, 3.0, False),
    "transmittance": (0.1, 100.0, False),
    "phenolphthalein_alkalinity": (0.0, 300.0, False),
    "cations": (0.01, 700.0, True),
    "anions": (0.01, 700.0, True),
}


def declared() -> list[tuple[str, str, Callable[..., Any], c.Behaviour]]:
    """Every output of a public function of which the behaviour is declared."""
    found = []
    for name in c.__all__:
        function = getattr(c, name)
        behaviour = getattr(function, "behaviour", None)
        if isinstance(behaviour, dict):
            found += [(name, field, function, known) for field, known in behaviour.items()]
        elif behaviour is not None:
            found.append((name, "", function, behaviour))
    return found


DECLARED = declared()
NAMES = [f"{name}.{field}".rstrip(".") for name, field, _, _ in DECLARED]


def arguments(function: Callable[..., Any]) -> list[str]:
    """Arguments that vary; a settled choice (a criterion, a coefficient) keeps its default or stands in FIXED."""
    return [name for name, p in inspect.signature(function).parameters.items() if "V" in str(p.annotation)]


# Functions that solve an equilibrium for every water: fewer waters are drawn of them.
SOLVED = {"calcite_saturation_index", "log_carbon_dioxide_pressure", "calcium_carbonate_precipitated"}

FIXED: dict[str, dict[str, Any]] = {
    "compensated_hardness": {"allowance": 3.0},
    "in_basis": {"source": "HCO3", "target": "CaCO3"},
    "millimoles": {"formula": "SO4"},
    "milligrams": {"formula": "SO4"},
    "milliequivalents": {"formula": "SO4"},
    "milligrams_from_milliequivalents": {"formula": "SO4"},
    "activity_from_mass": {"nuclide": "U-nat"},
    "mass_from_activity": {"nuclide": "U-nat"},
    "convert_hardness": {"source": "gpg", "target": "°dH"},
    "ion_milliequivalents": {"analyte": "nitrate"},
    "oxidant_demand": {"oxidation": "iron to ferric hydroxide", "oxidant": "chlorine"},
}


def call(name: str, field: str, function: Callable[..., Any], point: dict[str, Any]) -> np.ndarray:
    result = function(**point, **FIXED.get(name, {}))
    return np.asarray(getattr(result, field) if field else result)


def draw(argument: str, size: tuple[int, ...], rng: np.random.Generator, highest: float = 3000.0) -> np.ndarray:
    low, high, decades = DOMAIN.get(argument, (0.01, highest, True))
    return np.exp(rng.uniform(np.log(low), np.log(high), size)) if decades else rng.uniform(low, high, size)


def steps(values: np.ndarray) -> np.ndarray:
    """Differences along the last axis, rounding errors taken as nought, missing values as no step."""
    scale = np.abs(values).max(axis=-1, keepdims=True, where=np.isfinite(values), initial=0.0)
    with np.errstate(invalid="ignore"):
        change = np.diff(values, axis=-1)
    return np.where(np.isnan(change) | (np.abs(change) <= 1e-11 * scale), 0.0, change)


@pytest.mark.parametrize("name, field, function, known", DECLARED, ids=NAMES)
def test_a_declared_direction_holds(name: str, field: str, function: Any, known: c.Behaviour) -> None:
    rng = np.random.default_rng(20)
    waters, places = (60, 20) if name in SOLVED else (2000, 60)
    names, highest = arguments(function), 1000.0 if name in SOLVED else 3000.0
    assert set(known.rising + known.falling + known.peaked + known.dipped) <= set(names)
    for argument in names:
        point = {other: draw(other, (waters, 1), rng, highest) for other in names}
        values = call(
            name, field, function, {**point, argument: np.sort(draw(argument, (waters, places), rng, highest))}
        )
        finite = values[~np.isnan(values)]
        assert (finite >= known.least).all()
        assert (finite <= known.greatest).all()
        change = steps(np.broadcast_to(values, (waters, places)))
        if argument in known.rising:
            assert (change >= 0.0).all(), argument
        if argument in known.falling:
            assert (change <= 0.0).all(), argument
        if argument in known.peaked:  # never up again after it went down
            assert (np.maximum.accumulate(change < 0.0, axis=-1) & (change > 0.0)).sum() == 0, argument
        if argument in known.dipped:
            assert (np.maximum.accumulate(change > 0.0, axis=-1) & (change < 0.0)).sum() == 0, argument


def boxes(name: str, function: Any, count: int, rng: np.random.Generator) -> dict[str, tuple[np.ndarray, np.ndarray]]:
    """Boxes, some sides of them narrow, some wide, some without width."""
    found = {}
    for argument in arguments(function):
        highest = 1000.0 if name in SOLVED else 3000.0
        one, other = draw(argument, (count,), rng, highest), draw(argument, (count,), rng, highest)
        share = rng.choice([0.0, 0.02, 0.3, 1.0], count)
        other = one + share * (other - one)
        found[argument] = (np.minimum(one, other), np.maximum(one, other))
    return found


@pytest.mark.parametrize("name, field, function, known", DECLARED, ids=NAMES)
def test_bounds_contain_a_dense_sampling_and_are_tight_where_monotone(
    name: str, field: str, function: Any, known: c.Behaviour
) -> None:
    rng = np.random.default_rng(7)
    count, dense, cornered = (4, 400, 2**8) if name in SOLVED else (40, 4000, 2**12)
    box = boxes(name, function, count, rng)
    names = list(box)
    result = c.bounds(function, {**box, **FIXED.get(name, {})})
    result = getattr(result, field) if field else result
    point = {
        argument: low[:, None] + rng.uniform(0.0, 1.0, (count, dense)) * (high - low)[:, None]
        for argument, (low, high) in box.items()
    }
    corners = np.array(list(product((0, 1), repeat=len(names))))
    corners = rng.permutation(corners)[:cornered].T
    ends = {n: np.stack(box[n], -1)[np.arange(count)[:, None], side] for n, side in zip(names, corners, strict=True)}
    values = np.concatenate(
        [
            np.broadcast_to(call(name, field, function, inside), (count, size))
            for inside, size in ((point, dense), (ends, corners.shape[1]))
        ],
        axis=1,
    )
    lowest, highest = np.fmin.reduce(values, axis=1), np.fmax.reduce(values, axis=1)
    lowest, highest = np.where(np.isnan(lowest), result.low, lowest), np.where(np.isnan(highest), result.high, highest)
    slack = 1e-9 * np.maximum(1.0, np.abs(values).max(axis=1, where=np.isfinite(values), initial=0.0))
    some = ~np.isnan(result.low)
    assert (result.low[some] <= (lowest + slack)[some]).all()
    assert (result.high[some] >= (highest - slack)[some]).all()
    if set(known.rising + known.falling) == set(names):
        whole = ~np.isnan(values).any(axis=1) & np.isfinite(lowest) & np.isfinite(highest)
        wide = result.high - result.low
        assert (wide[whole] <= 1.1 * (highest - lowest + slack)[whole]).all()


def plain(**point: Any) -> Any:
    """The same function as `langelier_index_short_form` with nothing declared."""
    return c.langelier_index_short_form(**point)


@settings(max_examples=30, deadline=None)
@given(
    st.fixed_dictionaries(
        {
            "ph": st.tuples(st.floats(5, 10), st.floats(0, 1)),
            "calcium": st.tuples(st.floats(1, 400), st.floats(0, 200)),
            "alkalinity": st.tuples(st.floats(5, 400), st.floats(0, 100)),
            "temperature": st.tuples(st.floats(1, 60), st.floats(0, 10)),
            "dissolved_solids": st.tuples(st.floats(20, 3000), st.floats(0, 500)),
        }
    ),
    st.floats(0, 1),
)
def test_an_undeclared_monotone_function_is_bounded_as_tightly(
    ends: dict[str, tuple[float, float]], share: float
) -> None:
    box = {name: (low, low + width) for name, (low, width) in ends.items()}
    found, exact = c.bounds(plain, box), c.bounds(c.langelier_index_short_form, box)
    width = exact.high - exact.low
    assert -1e-9 <= exact.low - found.low <= 0.02 * width + 1e-9
    assert -1e-9 <= found.high - exact.high <= 0.02 * width + 1e-9
    inside = {name: low + share * (high - low) for name, (low, high) in box.items()}
    assert found.low - 1e-9 <= plain(**inside) <= found.high + 1e-9


def test_several_turning_points_are_found() -> None:
    # The buffer capacity has a peak at pK1, a dip near pH 8.3 and rises again (Stumm and Morgan 1996).
    water = {"alkalinity": 100.0, "temperature": 25.0, "dissolved_solids": 200.0}
    found = c.bounds(c.buffer_capacity, {**water, "ph": (7.0, 9.5)})
    sampled = c.buffer_capacity(**water, ph=np.linspace(7.0, 9.5, 100001))
    assert found.low <= sampled.min() <= found.low * 1.0001
    assert found.high == pytest.approx(sampled.max(), rel=1e-9)


def test_an_oscillating_function_is_enclosed() -> None:
    def wave(*, x: Any, y: Any) -> Any:
        return np.sin(3.0 * np.asarray(x)) * np.exp(-(np.asarray(y) ** 2))

    found = c.bounds(wave, {"x": (0.0, 2.0), "y": (-1.0, 0.5)})
    assert found.low <= -1.0 <= found.low + 0.02
    assert found.high - 0.02 <= 1.0 <= found.high
    alone = c.bounds(wave, {"x": (0.0, 2.0), "y": 0.0})
    assert alone.low <= -1.0 <= alone.low + 1e-9
    assert alone.high - 1e-9 <= 1.0 <= alone.high


def test_an_unmeasured_ion_opens_one_side_only() -> None:
    # A missing high end and an infinite one mean the same.
    for high in (math.inf, math.nan):
        found = c.bounds(c.total_hardness, {"calcium": 40.0, "magnesium": (0.0, high)})
        assert found.low == pytest.approx(c.total_hardness(calcium=40.0, magnesium=0.0))
        assert found.high == math.inf
    ratio = c.bounds(c.chloride_sulfate_mass_ratio, {"chloride": 10.0, "sulfate": (5.0, math.inf)})
    assert ratio == (0.0, 2.0)


def test_a_censored_divisor_gives_a_lower_bound() -> None:
    # Sulfate not detected below 5 mg/L: the ratio is at least chloride over 5, and has no upper end.
    ratio = c.bounds(c.chloride_sulfate_mass_ratio, {"chloride": 45.0, "sulfate": (0.0, 5.0)})
    assert ratio == (9.0, math.inf)
    # Neither detected: nothing is known, but the ratio is not negative.
    nothing = c.bounds(c.chloride_sulfate_mass_ratio, {"chloride": (0.0, 2.0), "sulfate": (0.0, 5.0)})
    assert nothing == (0.0, math.inf)


def test_without_a_value_at_the_corner_the_range_is_open() -> None:
    # P above T is no water, and the corner that hydroxide rises to is such a one.
    box = {"phenolphthalein_alkalinity": (10.0, 30.0), "alkalinity": (20.0, 40.0)}
    assert c.bounds(c.alkalinity_forms, box).hydroxide == (0.0, math.inf)


def test_a_criterion_that_jumps_is_bounded_on_both_sides_of_the_jump() -> None:
    # At 3 meq/L of anions the permitted difference falls from 0.2 meq/L to 2 % of the sum (SM 1030 E.1).
    box = {"cations": (3.1, 3.2), "anions": (2.9, 3.1)}
    found = c.bounds(c.charge_imbalance, box)
    just_above = c.charge_imbalance(cations=3.2, anions=np.nextafter(3.0, 4.0))
    assert just_above <= found.high <= just_above * 1.02
    assert found.low == 0.0


def test_missing_in_is_missing_out_and_waters_do_not_mix() -> None:
    calcium = np.array([10.0, math.nan, 30.0])
    found = c.bounds(c.total_hardness, {"calcium": (calcium, calcium + 1.0), "magnesium": 5.0})
    assert np.isnan(found.low[1])
    assert np.isnan(found.high[1])
    alone = c.bounds(c.total_hardness, {"calcium": (30.0, 31.0), "magnesium": 5.0})
    assert (found.low[2], found.high[2]) == alone
    assert type(alone.low) is float


def test_a_point_is_its_own_bounds() -> None:
    assert (
        c.bounds(c.total_hardness, {"calcium": 10.0, "magnesium": 2.0})
        == (c.total_hardness(calcium=10.0, magnesium=2.0),) * 2
    )


def test_series_are_arrays_of_ends() -> None:
    frame = pd.DataFrame({"low": [1.0, 2.0], "high": [2.0, 4.0]})
    found = c.bounds(c.calcium_hardness, {"calcium": (frame["low"], frame["high"])})
    np.testing.assert_allclose(found.high, 2.0 * found.low)


def test_words_are_passed_on() -> None:
    found = c.bounds(c.in_basis, {"value": (1.0, math.inf), "source": "NO3", "target": "N"})
    assert found == (c.basis_factor("NO3", "N"), math.inf)
    loose = {"cations": (12.1, 12.3), "anions": 12.0}
    assert c.bounds(c.charge_imbalance, {**loose, "criterion": "DVWK 128"}).high > 1.0
    assert c.bounds(c.charge_imbalance, loose).high < 1.0


def test_an_interval_upside_down_is_an_error() -> None:
    with pytest.raises(ValueError, match="calcium"):
        c.bounds(c.calcium_hardness, {"calcium": (2.0, 1.0)})
