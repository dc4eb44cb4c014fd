"""The far end of a bed of calcite against PHREEQC (phreeqc.dat): raw waters come to equilibrium with calcite, closed.

The handbook's equations (Standard Methods 2330) leave out ion pairs; in waters as dilute as those that are neutralised
that is worth a few hundredths of pH and a few per cent of what dissolves.
"""

import pytest
from treatment_waters import sample

from wellchem.interpretation.treatment import acidity
from wellchem.interpretation.treatment.prediction import predict
from wellchem.interpretation.treatment.water import raw_water

phreeqpython = pytest.importorskip("phreeqpython")

# pH, alkalinity [mg/L as CaCO3], calcium, sodium, chloride, sulfate [mg/L], temperature [°C]
WATERS = [
    (5.4, 6.0, 2.0, 3.0, 5.0, 2.0, 8.0),
    (5.8, 12.0, 4.0, 5.0, 8.0, 4.0, 10.0),
    (6.2, 40.0, 12.0, 10.0, 12.0, 10.0, 10.0),
    (6.5, 25.0, 6.0, 30.0, 40.0, 8.0, 12.0),
    (6.6, 90.0, 30.0, 25.0, 17.0, 15.0, 15.0),
    (6.8, 60.0, 20.0, 30.0, 17.0, 30.0, 20.0),
    (7.0, 150.0, 45.0, 50.0, 32.0, 25.0, 11.0),
]


@pytest.fixture(scope="module")
def engine():
    return phreeqpython.PhreeqPython(database="phreeqc.dat")


def beside_calcite(engine, ph, alkalinity, calcium, sodium, chloride, sulfate, temperature):
    """pH and calcium carbonate dissolved [mg/L] by the engine; chloride closes the charge."""
    solution = engine.add_solution(
        {
            "units": "mg/l",
            "temp": temperature,
            "pH": ph,
            "Alkalinity": f"{alkalinity} as CaCO3",
            "Ca": calcium,
            "Na": sodium,
            "Cl": f"{chloride} charge",
            "S(6)": f"{sulfate} as SO4",
        }
    )
    before = solution.total("Ca", units="mmol")
    solution.saturate("Calcite", 0.0)
    return solution.pH, (solution.total("Ca", units="mmol") - before) * 100.086


@pytest.mark.parametrize("water", WATERS, ids=str)
def test_the_upper_end_is_equilibrium_with_calcite(engine, water):
    ph, alkalinity, calcium, sodium, chloride, sulfate, temperature = water
    amounts = {"ph": ph, "total_alkalinity": alkalinity, "calcium": calcium, "temperature": temperature}
    amounts["total_dissolved_solids"] = calcium + sodium + chloride + sulfate + 0.6 * alkalinity
    raw = raw_water(sample(amounts))
    exact_ph, exact_gain = beside_calcite(engine, *water)
    highest, gain = acidity.beside_calcite(raw)
    assert highest == pytest.approx(exact_ph, abs=0.05)
    assert gain == pytest.approx(exact_gain, rel=0.03)
    behind = predict("neutralising_calcite", raw).amounts
    assert behind["total_alkalinity"][1] == pytest.approx(alkalinity + exact_gain, rel=0.03)
    assert behind["calcium"][1] == pytest.approx(calcium + exact_gain * 40.078 / 100.086, rel=0.03)
    assert behind["ph"][0] == ph
