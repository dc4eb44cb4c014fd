"""What every function of the room keeps to: floats, arrays, Series and broadcasting agree; NaN in is NaN out."""

import inspect
import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pandas as pd
import pytest

from wellchem import chemistry as c

TYPICAL = {"ph": 7.4, "saturation_ph": 7.6, "temperature": 11.0, "transmittance": 80.0, "absorbance": 0.1}
SETTLED = {"compensated_hardness": {"allowance": 3.0}}

# Where an equilibrium is solved anew, one water and many stop at slightly different iterates of the same solution.
AGREEMENT = {"calcium_carbonate_precipitated": 2e-5}


def elementwise() -> dict[str, Callable[..., Any]]:
    """Public functions whose arguments are values, as their annotations say."""
    found = {}
    for name in c.__all__:
        function = getattr(c, name)
        if inspect.isfunction(function):
            parameters = inspect.signature(function).parameters.values()
            if any("V" in str(p.annotation) and p.kind is p.KEYWORD_ONLY for p in parameters):
                found[name] = function
    return found


FUNCTIONS = elementwise()


def arguments(name: str) -> list[str]:
    return [a for a, p in inspect.signature(FUNCTIONS[name]).parameters.items() if "V" in str(p.annotation)]


def water(name: str, count: int) -> dict[str, np.ndarray]:
    rng = np.random.default_rng(len(name))
    typical = {a: TYPICAL.get(a, 40.0) for a in arguments(name)}
    typical |= {a: 10.0 for a in typical if a.startswith("phenolphthalein")}
    return {a: value * rng.uniform(0.95, 1.05, count) for a, value in typical.items()}


def columns(name: str, point: dict[str, Any]) -> list[Any]:
    found = FUNCTIONS[name](**point, **SETTLED.get(name, {}))
    return list(found) if isinstance(found, tuple) else [found]


@pytest.mark.parametrize("name", FUNCTIONS)
def test_floats_arrays_series_and_broadcasting_agree(name: str) -> None:
    many, agreement = water(name, 5), AGREEMENT.get(name, 1e-9)
    together = columns(name, many)
    for i in range(5):
        one = columns(name, {a: float(values[i]) for a, values in many.items()})
        assert all(type(value) is float for value in one)
        np.testing.assert_allclose([values[i] for values in together], one, rtol=agreement, atol=1e-12)
    for series in columns(name, {a: pd.Series(values, index=list("vwxyz")) for a, values in many.items()}):
        assert isinstance(series, np.ndarray)
    first, *rest = many
    down = columns(name, {first: many[first][:, None], **{a: many[a] for a in rest}})
    for grid, row in zip(down, together, strict=True):
        shape = (5, 5) if rest else (5, 1)
        assert grid.shape == shape or grid.shape == (5,)
        if grid.shape == (5, 5):
            np.testing.assert_allclose(np.diagonal(grid), row, rtol=agreement, atol=1e-12)


@pytest.mark.parametrize("name", FUNCTIONS)
def test_missing_in_is_missing_out(name: str) -> None:
    point = {a: float(values[0]) for a, values in water(name, 1).items()}
    for argument in point:
        found = columns(name, {**point, argument: math.nan})
        assert any(math.isnan(value) for value in found), argument


@pytest.mark.parametrize("name", FUNCTIONS)
def test_no_waters_are_no_error(name: str) -> None:
    for column in columns(name, {a: np.array([]) for a in arguments(name)}):
        assert column.shape == (0,)


@pytest.mark.parametrize("name", FUNCTIONS)
def test_every_parameter_has_its_unit_and_the_function_its_source(name: str) -> None:
    text = inspect.getdoc(FUNCTIONS[name]) or ""
    assert "References\n" in text
    section = text.split("Parameters\n----------\n")[1].split("Returns\n")[0]
    for argument in inspect.signature(FUNCTIONS[name]).parameters:
        assert argument in section, argument
    described = [line for line in section.splitlines() if line.startswith(" ")]
    assert any(line.rstrip().rstrip(".").endswith("]") or "As in" in line for line in described)
