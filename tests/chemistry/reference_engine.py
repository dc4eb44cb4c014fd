"""The reference engine, PHREEQC 3.7.3 with its phreeqc.dat (phreeqpython), asked about waters of our making."""

import os
from pathlib import Path

import numpy as np
import pytest

phreeqpython = pytest.importorskip("phreeqpython")
from phreeqpython.viphreeqc import VIPhreeqc  # noqa: E402

Waters = dict[str, np.ndarray]
DATABASE = Path(os.path.dirname(phreeqpython.__file__)) / "database" / "phreeqc.dat"

# The engine's word for each analyte, and the basis that it is told.
_NAMES = {
    "calcium": "Ca",
    "magnesium": "Mg",
    "sodium": "Na",
    "potassium": "K",
    "alkalinity": "Alkalinity {} as CaCO3",
    "sulfate": "S(6) {} as SO4",
    "chloride": "Cl",
    "nitrate": "N(5) {} as N",
    "nitrite": "N(3) {} as N",
    "ammonia": "N(-3) {} as N",
    "fluoride": "F",
    "bromide": "Br",
    "silica": "Si {} as SiO2",
    "iron": "Fe",
    "manganese": "Mn(2)",
    "barium": "Ba",
    "strontium": "Sr",
    "lithium": "Li",
    "boron": "B",
    "orthophosphate": "P {} as P",
    "sulfide": "S(-2) {} as S",
}
_CONDITIONS = {"temperature": "temp", "ph": "pH", "pe": "pe"}
PHASES = {
    "calcite": "Calcite",
    "aragonite": "Aragonite",
    "dolomite": "Dolomite",
    "siderite": "Siderite",
    "gypsum": "Gypsum",
    "anhydrite": "Anhydrite",
    "barite": "Barite",
    "celestite": "Celestite",
    "fluorite": "Fluorite",
    "chalcedony": "Chalcedony",
    "quartz": "Quartz",
    "silica_gel": "SiO2(a)",
    "ferrihydrite": "Fe(OH)3(a)",
    "goethite": "Goethite",
    "rhodochrosite": "Rhodochrosite",
    "strontianite": "Strontianite",
    "witherite": "Witherite",
    "vivianite": "Vivianite",
    "hydroxyapatite": "Hydroxyapatite",
}


def random_waters(count: int, seed: int, traces: bool, temperature: tuple[float, float] = (0.0, 35.0)) -> Waters:
    """Waters of 20 to 8000 mg/L, pH 5 to 9.5, with any proportion of the major ions; not balanced in charge."""
    rng = np.random.default_rng(seed)
    solids = 10 ** rng.uniform(np.log10(20), np.log10(8000), count)
    cations, anions = rng.dirichlet([1, 1, 1, 0.2], count).T, rng.dirichlet([1, 0.7, 0.7, 0.1], count).T
    waters = {"temperature": rng.uniform(*temperature, count), "ph": rng.uniform(5, 9.5, count)}
    for name, share, weight in zip(
        ("calcium", "magnesium", "sodium", "potassium"), cations, (20.04, 12.15, 22.99, 39.1), strict=True
    ):
        waters[name] = share * solids / 60 * weight
    for name, share, weight in zip(
        ("alkalinity", "sulfate", "chloride", "nitrate"), anions, (50.04, 48.03, 35.45, 14.007), strict=True
    ):
        waters[name] = share * solids / 60 * weight
    waters["alkalinity"] += 5

    def decades(low: float, high: float) -> np.ndarray:
        return 10 ** rng.uniform(low, high, count)

    waters |= {"silica": decades(0, 2), "fluoride": decades(-2, 1)}
    if traces:
        waters |= {
            "iron": decades(-3, 1.5),
            "manganese": decades(-3, 0.5),
            "barium": decades(-3, 0.5),
            "strontium": decades(-2, 1),
            "boron": decades(-2, 1),
            "orthophosphate": decades(-2, 0.7),
            "ammonia": decades(-2, 1),
            "lithium": decades(-3, 0),
            "bromide": decades(-2, 0.5),
            "nitrite": decades(-3, 0),
            "sulfide": decades(-3, 1),
            # Water is stable up to pe + pH of 20.8; above, the engine fills it with dissolved oxygen.
            "pe": np.minimum(rng.uniform(-3, 12, count), 20 - waters["ph"]),
        }
    return waters


def engine() -> VIPhreeqc:
    found = VIPhreeqc()
    found.load_database(DATABASE)
    return found


def solution(waters: Waters, place: int, number: int = 1) -> str:
    """The engine's text of one water, its litre made to a mass with the density that the engine computes."""
    at = {name: repr(float(values[place])) for name, values in waters.items()}
    lines = [f"SOLUTION {number}", " units mg/l", " density 1 calculate"]
    lines += [f" {word} {at[name]}" for name, word in _CONDITIONS.items() if name in at]
    for name, word in _NAMES.items():
        if name in at:
            lines.append(" " + (word if "{}" in word else word + " {}").format(at[name]))
    return "\n".join(lines) + "\n"


def ask(waters: Waters, wanted: list[str], after: str = "") -> np.ndarray:
    """What the engine punches for each water (rows), NaN where it finds no solution.

    `after` is what it is to do with the water; the last of its results is taken.
    """
    count = waters["ph"].size
    punch = (
        "SELECTED_OUTPUT 1\n -reset false\nUSER_PUNCH 1\n -headings "
        + " ".join(f"c{i}" for i in range(len(wanted)))
        + "\n 10 PUNCH "
        + ",".join(wanted)
        + "\n"
    )
    found = np.full((count, len(wanted)), np.nan)
    running = engine()
    for place in range(count):
        try:
            running.run_string(punch + solution(waters, place) + after + "END\n")
            found[place] = running.get_selected_output_array()[-1]
        except Exception:  # the engine gives up in its own ways; that water is left out
            running = engine()
    return found
