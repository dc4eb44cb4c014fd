"""Molar masses against published tables."""

import pytest

from wellchem.chemistry import atomic_weight, atoms, equivalent_weight, molar_mass


@pytest.mark.parametrize(
    "formula, mass",
    [
        # NIST Chemistry WebBook (SRD 69) molecular weights, from memory. They rest on the single values Cl 35.453
        # and S 32.065; CIAAW now gives intervals whose conventional values are 35.45 and 32.06, so a chloride or
        # sulfate differs by up to 0.9e-4 of itself.
        ("H2O", 18.0153),
        ("CO2", 44.0095),
        ("CaCO3", 100.087),
        ("NaCl", 58.443),
        ("SiO2", 60.0843),
        ("KMnO4", 158.034),
        ("CaSO4·2H2O", 172.171),
        ("Ca(HCO3)2", 162.114),
        ("Ca(H2PO4)2·H2O", 252.07),
    ],
)
def test_molar_mass(formula: str, mass: float) -> None:
    assert molar_mass(formula) == pytest.approx(mass, rel=1e-4)


def test_standard_atomic_weights() -> None:
    # CIAAW 2013 report's revisions (Pure Appl. Chem. 88, 265-291), Cd, Mo, Se and Th unchanged since.
    assert [atomic_weight(s) for s in ("Cd", "Mo", "Se", "Th")] == [112.414, 95.95, 78.971, 232.0377]


def test_brackets_nest_and_hydrates_count() -> None:
    assert atoms("Al2(SO4)3·18H2O") == {"Al": 2, "S": 3, "O": 30, "H": 36}
    assert atoms("K(Mn(O2)2)2") == {"K": 1, "Mn": 2, "O": 8}


def test_equivalent_weight_of_calcium_carbonate() -> None:
    # Standard Methods 2340 B prints 50.04 to 50.05 in its examples (memory).
    assert equivalent_weight("CaCO3", 2) == pytest.approx(50.045, abs=0.005)


@pytest.mark.parametrize("formula", ["", "Xx", "ca", "Ca(", "Ca)", "Ca2+", "2", "Ca·", "H2O)", "()", "Ra"])
def test_what_is_no_formula_is_an_error(formula: str) -> None:
    with pytest.raises(ValueError, match=r"formula|standard atomic weight"):
        molar_mass(formula)


def test_no_charge_no_equivalent() -> None:
    with pytest.raises(ValueError, match="charge"):
        equivalent_weight("SiO2", 0)
