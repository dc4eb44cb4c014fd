"""Constants and water's properties; the published carbonate constants are among the worked examples."""

import math

import numpy as np
import pytest

from wellchem import chemistry as c
from wellchem.chemistry.equilibria import phases, species
from wellchem.chemistry.system import charge
from wellchem.chemistry.tables import rows


@pytest.mark.parametrize("celsius", [0.0, 8.0, 25.0, 60.0])
def test_every_constant_is_the_engines(celsius: float) -> None:
    # The engine's own log K of each reaction with its master species (LK_SPECIES, LK_PHASE).
    engine = pytest.importorskip("chemistry.reference_engine")
    waters = {name: values[:1] for name, values in engine.random_waters(1, 1, traces=True).items()}
    waters["temperature"][:] = celsius
    waters["pe"][:] = 8.0
    formed = [row["species"] for row in rows("aqueous_species") if row["reaction"]]
    minerals = list(engine.PHASES)
    asked = [f'LK_SPECIES("{name}")' for name in formed]
    asked += [f'LK_PHASE("{engine.PHASES[name]}")' for name in minerals]
    expected = engine.ask(waters, asked)[0]
    kelvin = celsius + 273.15
    basis = np.array([1, kelvin, 1 / kelvin, math.log10(kelvin), 1 / kelvin**2, kelvin**2])
    for name, value in zip([*formed, *minerals], expected, strict=True):
        # The engine's gas constant is 8.3147 J/(mol K), 0.003 % above today's: it shows in the largest enthalpies.
        assert c.log_equilibrium_constant(name, celsius) == pytest.approx(value, abs=1e-4), name
    # A reaction that is printed with a species which is itself formed is summed up.
    total = sum(c.log_equilibrium_constant(name, celsius) for name in ("NaHCO3", "HCO3-"))
    assert species()["NaHCO3"].constants @ basis == pytest.approx(total, abs=1e-9)


def test_reactions_keep_charge() -> None:
    of = {"e-": -1} | {name: charge(name) for name in species()}
    for reaction in [*species().values(), *phases().values()]:
        solid = reaction.name in phases()
        total = sum(count * of.get(master, 0) for master, count in reaction.masters.items())
        assert total == pytest.approx(0 if solid else charge(reaction.name)), reaction


def test_every_row_names_its_source() -> None:
    for table in ("aqueous_species", "phases", "water_components", "handbook_constants", "water_properties"):
        for row in rows(table):
            assert row["source"], (table, row)
            assert row["place"], (table, row)
            assert row["checked"] in ("page", "transposition", "memory"), (table, row)


def test_a_constant_that_is_not_there() -> None:
    with pytest.raises(ValueError, match="no equilibrium constant"):
        c.log_equilibrium_constant("unobtainium", 25.0)


def test_water() -> None:
    # Density 0.99984 at 0 °C and 0.99705 kg/L at 25 °C, permittivity 87.9 and 78.4 (CRC Handbook, from memory);
    # Debye-Hückel A 0.509 to 0.510 and B 0.328 to 0.329 at 25 °C (Stumm & Morgan 1996, Table 3.3, from memory).
    np.testing.assert_allclose(c.water_density(np.array([0.0, 25.0])), [0.99984, 0.99705], atol=7e-5)
    np.testing.assert_allclose(c.relative_permittivity(np.array([0.0, 25.0])), [87.9, 78.4], atol=0.15)
    a, b = c.debye_huckel_parameters(25.0)
    assert a == pytest.approx(0.5095, abs=0.001)
    assert b == pytest.approx(0.3285, abs=0.001)


def test_water_is_the_engines() -> None:
    engine = pytest.importorskip("chemistry.reference_engine")
    waters = {name: values[:20] for name, values in engine.random_waters(20, 9, traces=False).items()}
    waters["temperature"] = np.linspace(0.5, 95.0, 20)
    density, permittivity, a, b = engine.ask(waters, ["RHO_0", "EPS_R", "DH_A", "DH_B"]).T
    ours = c.debye_huckel_parameters(waters["temperature"])
    np.testing.assert_allclose(c.water_density(waters["temperature"]), density, rtol=1e-4)
    np.testing.assert_allclose(c.relative_permittivity(waters["temperature"]), permittivity, rtol=1e-5)
    np.testing.assert_allclose(ours[0], a, rtol=1e-3)
    np.testing.assert_allclose(ours[1], b, rtol=1e-3)
