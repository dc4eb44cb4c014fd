"""Three hundred waters of 32 to 5956 mg/L, speciated by the reference engine, against the library, row by row."""

import csv
import os
from pathlib import Path

import numpy as np
import pytest

from wellchem import chemistry as c

FACTS = Path(os.environ.get("WELLCHEM_FACTS", Path(__file__).parents[3] / "shared" / "facts"))
GRID = FACTS / "worked" / "phreeqc_grid.csv"
pytestmark = pytest.mark.skipif(not GRID.exists(), reason="the grid of speciated waters is not here")

COLUMNS = {
    "temperature": "temp_C",
    "ph": "pH",
    "alkalinity": "alk_mg_L_CaCO3",
    "calcium": "ca_mg_L",
    "magnesium": "mg_mg_L",
    "sodium": "na_mg_L",
    "potassium": "k_mg_L",
    "sulfate": "so4_mg_L",
    "chloride": "cl_mg_L",
    "nitrate": "no3n_mg_L_N",
    "fluoride": "f_mg_L",
    "silica": "sio2_mg_L",
}


@pytest.fixture(scope="module")
def grid() -> dict[str, np.ndarray]:
    with GRID.open(encoding="utf-8", newline="") as lines:
        table = list(csv.DictReader(lines))
    numbers = [name for name in table[0] if name not in ("id", "water_type", "balanced_with")]
    return {name: np.array([float(row[name]) for row in table]) for name in numbers}


@pytest.fixture(scope="module")
def waters(grid: dict[str, np.ndarray]) -> c.Speciation:
    found = c.speciate(**{name: grid[column] for name, column in COLUMNS.items()})
    assert (found.reason == c.Reason.SOLVED).all()
    return found


# The targets are of this project; what the model reaches is a tenth of them.
@pytest.mark.parametrize(
    "mineral, most",
    [
        ("calcite", 0.02),
        ("aragonite", 0.02),
        ("dolomite", 0.03),
        ("gypsum", 0.03),
        ("fluorite", 0.03),
        ("chalcedony", 0.03),
    ],
)
def test_saturation_indices(mineral: str, most: float, grid: dict[str, np.ndarray], waters: c.Speciation) -> None:
    assert np.abs(c.saturation_index(waters, mineral) - grid[f"si_{mineral}"]).max() <= most


def test_carbon_dioxide_and_the_carbonate_ions(grid: dict[str, np.ndarray], waters: c.Speciation) -> None:
    assert np.abs(waters.log_pco2 - grid["log10_pCO2_atm"]).max() <= 0.01
    for species, column in (("HCO3-", "m_HCO3"), ("CO3-2", "m_CO3"), ("CO2", "m_CO2aq")):
        np.testing.assert_allclose(waters.molality(species), grid[f"{column}_mol_kgw"], rtol=0.01)


def test_ionic_strength_and_conductance(grid: dict[str, np.ndarray], waters: c.Speciation) -> None:
    np.testing.assert_allclose(waters.ionic_strength, grid["ionic_strength_mol_kgw"], rtol=0.02)
    np.testing.assert_allclose(c.speciated_conductance(waters), grid["sc25_uS_cm"], rtol=0.03)


def test_precipitated_calcite(grid: dict[str, np.ndarray], waters: c.Speciation) -> None:
    found = c.calcium_carbonate_potential(waters)
    assert (found.reason == c.Reason.SOLVED).all()
    expected = grid["calcite_ppt_mg_L_CaCO3"]
    off = np.abs(found.precipitated - expected)
    assert (off <= np.maximum(0.02 * np.abs(expected), 0.5)).all()
    assert np.abs(found.ph_after - grid["pH_after"]).max() <= 0.005
