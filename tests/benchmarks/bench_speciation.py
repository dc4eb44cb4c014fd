"""A million waters speciated on one core, against the reference engine asked water by water.

    python tests/benchmarks/bench_speciation.py [waters] [sample]

Prints, from one run: microseconds of processor time a water of the library (full set of ion pairs; saturation with
seven minerals and log pCO2; then the calcium carbonate potential by equilibration as well), of the reference engine
(PHREEQC in phreeqpython; one batch for a sample, best of three), their ratios, and the library's peak memory.
The engine is spared its iteration for the solution's density, which would double its time.
"""

import os

os.environ.update(dict.fromkeys(("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"), "1"))

import platform
import resource
import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from wellchem import __version__
from wellchem import chemistry as c

ROUNDS = 3
# Those of the major ions, as `saturation_indices` gives them.
MINERALS = ("calcite", "aragonite", "dolomite", "gypsum", "fluorite", "chalcedony", "silica_gel")
# Medians [mg/L] and spreads [decades] of a well water that is not far from balanced in charge.
TYPICAL = {
    "calcium": (60.0, 0.35),
    "magnesium": (18.0, 0.4),
    "sodium": (35.0, 0.5),
    "potassium": (3.0, 0.3),
    "alkalinity": (190.0, 0.3),
    "sulfate": (40.0, 0.5),
    "chloride": (35.0, 0.5),
    "nitrate": (2.0, 0.5),
    "fluoride": (0.3, 0.3),
    "silica": (15.0, 0.2),
}


def invented(count: int) -> dict[str, np.ndarray]:
    rng = np.random.default_rng(12)
    waters = {name: middle * 10 ** rng.normal(0, spread, count) for name, (middle, spread) in TYPICAL.items()}
    waters["temperature"] = rng.uniform(4, 28, count)
    waters["ph"] = np.clip(rng.normal(7.4, 0.5, count), 5.5, 9.2)
    return waters


def timed(work: Callable[[], object]) -> float:
    begun = time.process_time()
    work()
    return time.process_time() - begun


def engine_times(waters: dict[str, np.ndarray]) -> tuple[float, float, str]:
    """Seconds for the sample without and with the potential, and the engine's version."""
    sys.path.insert(0, str(Path(__file__).parents[1]))
    from chemistry.reference_engine import PHASES, engine, phreeqpython, solution

    count = waters["ph"].size
    punch = [f'SI("{PHASES[name]}")' for name in MINERALS] + ['SI("CO2(g)")', "MU"]
    head = "SELECTED_OUTPUT 1\n -reset false\nUSER_PUNCH 1\n -headings " + " ".join(f"c{i}" for i in range(len(punch)))
    head += "\n 10 PUNCH " + ",".join(punch) + "\n"
    texts = [solution(waters, i, i + 1).replace(" density 1 calculate\n", "") for i in range(count)]
    plain = head + "".join(texts) + "END\n"
    settling = head + "".join(f"{text}EQUILIBRIUM_PHASES {i + 1}\n Calcite 0 10\nEND\n" for i, text in enumerate(texts))
    running = engine()
    best = [min(timed(lambda text=text: running.run_string(text)) for _ in range(ROUNDS)) for text in (plain, settling)]
    return best[0], best[1], f"phreeqpython {getattr(phreeqpython, '__version__', '1.6')}, IPhreeqc 3.7.3"


def main(count: int, sample: int) -> None:
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    waters = invented(count)
    small = {name: values[:1000] for name, values in waters.items()}
    c.calcium_carbonate_potential(c.speciate(**small))  # tables and systems are read once

    begun = time.process_time()
    found = c.speciate(**waters)
    indices, pressure = c.saturation_indices(found), found.log_pco2
    spent = time.process_time() - begun
    potential = c.calcium_carbonate_potential(found)
    with_potential = time.process_time() - begun
    unsolved = int((potential.reason != c.Reason.SOLVED).sum())
    # Kilobytes, but bytes on macOS.
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (1024**2 if sys.platform == "darwin" else 1024)
    assert np.isfinite(indices.calcite).sum() == np.isfinite(pressure).sum()

    plain, settling, engine_version = engine_times({name: values[:sample] for name, values in waters.items()})
    print(f"wellchem {__version__}, numpy {np.__version__}, Python {platform.python_version()}, {engine_version}")
    print(f"{count} waters, {unsolved} without a result, one core; engine on {sample} of them")
    for name, ours, theirs in (
        ("speciation and saturation", spent, plain),
        ("with calcium carbonate potential", with_potential, settling),
    ):
        mine, other = ours / count * 1e6, theirs / sample * 1e6
        print(f"{name}: {mine:.2f} µs a water, engine {other:.0f} µs, {other / mine:.0f} times as fast")
    print(f"peak memory {memory:.0f} MB, waters and results included")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000, int(sys.argv[2]) if len(sys.argv) > 2 else 1000)
