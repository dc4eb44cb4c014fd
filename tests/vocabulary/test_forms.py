"""Forms that a concentration is expressed in: the same factors as chemistry's, and none where nobody counts so."""

import pytest

from wellchem.vocabulary import bundled, form_factor


@pytest.mark.parametrize(
    ("analyte", "form", "factor"),
    [
        # Standard Methods, 24th ed., 2320 B.5 (from memory): bicarbonate as CaCO3 is 0.8202 of itself, carbonate 1.668.
        ("bicarbonate", "CaCO3", 1 / 0.8202),
        ("carbonate", "CaCO3", 1 / 1.668),
        # Alkalinity is counted in equivalents whatever its form: 61.017 / 30.004 and its reverse (Hem, USGS WSP 2254,
        # Table 9, from memory), never one carbon atom for another.
        ("bicarbonate", "CO3", 2.0336),
        ("carbonate", "HCO3", 1 / 2.0336),
        # DIN 38409-6 (from memory): 1 German degree is 10 mg/L CaO, 7.19 mg/L MgO or 17.85 mg/L CaCO3.
        ("total_hardness", "CaO", 17.85 / 10),
        ("magnesium_hardness", "MgO", 17.85 / 7.19),
        ("nitrate", "NO3", 1 / 4.4268),
        ("silica", "Si", 2.1393),
    ],
)
def test_factor(analyte: str, form: str, factor: float) -> None:
    assert form_factor(bundled().analytes[analyte], form) == pytest.approx(factor, rel=1e-3)


@pytest.mark.parametrize(
    ("analyte", "form"), [("total_alkalinity", "Cl"), ("total_hardness", "SO4"), ("silica", "CaCO3")]
)
def test_nobody_counts_so(analyte: str, form: str) -> None:
    assert form_factor(bundled().analytes[analyte], form) is None


def test_an_organic_is_not_counted_as_cyanide() -> None:
    assert form_factor(bundled().analytes["n_nitrosodimethylamine"], "CN") is None
