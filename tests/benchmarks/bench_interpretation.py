"""Problems and checks of many samples against comparing them, and one interpretation against comparing that sample.

    python tests/benchmarks/bench_interpretation.py [samples]

Prints, from one run and the best of its rounds, times and their ratios to `compare` on the same data: of many samples,
and of single ones of several kinds, with what shows them. Processor time, so that other work on the machine does not
count.
"""

import platform
import sys
import time
from collections.abc import Callable
from datetime import date

import numpy as np
import pandas as pd

import wellchem
from wellchem import limits, schema
from wellchem.models.codes import Censoring
from wellchem.models.sample import Result, Sample
from wellchem.vocabulary import bundled

ON = date(2026, 5, 1)
ROUNDS = 3
# Thirty results a sample: middle of what wells show, and its spread as a factor.
AMOUNTS = {
    "ph": (7.2, 1.05),
    "total_alkalinity": (180, 1.6),
    "calcium": (60, 1.6),
    "magnesium": (20, 1.6),
    "sodium": (25, 2.5),
    "potassium": (2.5, 2),
    "chloride": (25, 3),
    "sulfate": (30, 3),
    "nitrate": (1.5, 4),
    "nitrite": (0.02, 3),
    "fluoride": (0.3, 2.5),
    "iron": (0.1, 6),
    "manganese": (0.03, 6),
    "copper": (0.05, 5),
    "lead": (0.001, 4),
    "arsenic": (0.0015, 4),
    "uranium": (0.003, 4),
    "total_dissolved_solids": (320, 1.6),
    "specific_conductance": (540, 1.6),
    "total_hardness": (235, 1.5),
    "turbidity": (0.4, 3),
    "boron": (0.05, 3),
    "barium": (0.05, 3),
    "selenium": (0.001, 3),
    "chromium": (0.001, 3),
    "zinc": (0.05, 4),
    "silica": (14, 1.5),
    "ammonia": (0.05, 3),
    "total_coliform": (0.2, 8),
    "e_coli": (0.02, 8),
}
COUNTS = ("total_coliform", "e_coli")


def invented(samples: int) -> pd.DataFrame:
    """Results of invented wells, a fifth of them not detected."""
    random, known = np.random.default_rng(20260501), bundled().analytes
    names = list(AMOUNTS)
    middle, spread = np.array(list(AMOUNTS.values())).T
    value = middle * spread ** random.normal(0.0, 1.0, (samples, len(names)))
    missed = random.random(value.shape) < 0.2
    missed[:, names.index("ph")] = False
    for place in map(names.index, COUNTS):
        value[:, place] = np.floor(value[:, place])
        missed[:, place] = value[:, place] == 0.0
    low, high = np.where(missed, 0.0, value), value
    size = value.size
    analyte = np.tile(np.arange(len(names)), samples)
    keys = pd.Index([f"well {number}" for number in range(samples)])
    data = {
        "sample": pd.Categorical.from_codes(np.repeat(np.arange(samples), len(names)), categories=keys),
        "analyte": pd.Categorical.from_codes(analyte, categories=pd.Index(names)),
        "censoring": pd.Categorical.from_codes(missed.ravel().astype(int), categories=pd.Index(["none", "left"])),
        "value": value.ravel(),
        "low": low.ravel(),
        "high": high.ravel(),
        "unit": pd.Categorical([known[name].unit for name in names])[analyte],
        "basis": pd.Categorical([known[name].basis for name in names])[analyte],
        "collected": np.full(size, np.datetime64("2026-04-01")),
    }
    return schema.conform("results", data, size)


def one_sample(frame: pd.DataFrame) -> Sample:
    """The first sample of the frame as a model."""
    rows = frame.head(len(AMOUNTS)).itertuples()
    results = [
        Result(
            analyte=row.analyte,
            censoring=Censoring(row.censoring),
            value=row.value,
            low=row.low,
            high=row.high,
            unit=row.unit,
            basis=row.basis if isinstance(row.basis, str) else None,
        )
        for row in rows
    ]
    return Sample(key="one", collected=date(2026, 4, 1), results=tuple(results))


# Single waters by what differs from the middle of `AMOUNTS`; nought is not detected, below the middle.
KINDS: dict[str, dict[str, float]] = {
    "the middle of all": {},
    "soft and acid": {"ph": 5.9, "total_alkalinity": 14, "calcium": 4, "magnesium": 1.2, "total_hardness": 15}
    | {"copper": 1.9, "lead": 0.021, "total_dissolved_solids": 60, "specific_conductance": 95},
    "iron and manganese": {"iron": 3.4, "manganese": 0.42, "ammonia": 0.4, "nitrate": 0.0},
    "hard": {"calcium": 128, "magnesium": 44, "total_hardness": 501, "total_alkalinity": 380, "sodium": 12},
    "coastal": {"sodium": 640, "chloride": 1150, "sulfate": 170, "total_dissolved_solids": 2300}
    | {"specific_conductance": 4100, "boron": 0.4},
    "many problems": {"e_coli": 4, "total_coliform": 60, "nitrate": 16, "arsenic": 0.024, "uranium": 0.05}
    | {"fluoride": 4.6, "iron": 1.2, "lead": 0.03, "total_hardness": 320},
}
NEARLY_EMPTY = {"ph": 7.0, "iron": 0.9}


def water(amounts: dict[str, float]) -> Sample:
    """A sample of these amounts, in canonical units."""
    known = bundled().analytes
    results = [
        Result(
            analyte=name,
            censoring=Censoring.NONE if value else Censoring.LEFT,
            value=value or AMOUNTS[name][0],
            low=value,
            high=value or AMOUNTS[name][0],
            unit=known[name].unit,
            basis=known[name].basis,
        )
        for name, value in amounts.items()
    ]
    return Sample(key="one", collected=date(2026, 4, 1), results=tuple(results))


def best(work: Callable[[], object], rounds: int = ROUNDS) -> float:
    """Least processor time of a few rounds [s]."""
    times = []
    for _ in range(rounds):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return min(times)


def main() -> None:
    """Print the table."""
    samples = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
    frame = invented(samples)
    sample = one_sample(frame)
    cold = best(lambda: limits.compare_sample(sample, on=ON), 1)
    cold_interpret = best(lambda: wellchem.interpret(sample, on=ON), 1)
    compare = best(lambda: wellchem.compare(frame, on=ON))
    problems = best(lambda: wellchem.problems(frame, on=ON))
    checks = best(lambda: wellchem.checks(frame, on=ON))
    print(f"wellchem {wellchem.__version__}, Python {platform.python_version()}, numpy {np.__version__}")
    print(f"{samples} samples x {len(AMOUNTS)} results")
    print(f"compare            {compare:8.2f} s")
    print(f"problems           {problems:8.2f} s   {problems / compare:5.2f} x compare (target 3)")
    print(f"checks             {checks:8.2f} s   {checks / compare:5.2f} x compare")
    print(f"one sample, cold   {cold_interpret:8.4f} s   after a first compare of {cold:.4f} s")
    print(
        "one sample, warm: `wellchem.compare` of its frame [ms], and other work as times of it (target 5 to interpret,"
    )
    print("10 to HTML); last, interpret as times of the comparison of the model that it makes itself, without a frame")
    middle = {name: 0.0 if name in COUNTS else value for name, (value, _) in AMOUNTS.items()}
    kinds = {name: water(middle | other) for name, other in KINDS.items()}
    for name, one in {"the first of the frame": sample, **kinds, "nearly empty": water(NEARLY_EMPTY)}.items():
        single(name, one)


def single(name: str, sample: Sample) -> None:
    """Print what one sample takes."""
    found = wellchem.interpret(sample, on=ON)
    frame = schema.results_frame([sample])
    compare = best(lambda: wellchem.compare(frame, on=ON), 30)
    own = best(lambda: limits.compare_sample(sample, on=ON), 30)
    made = {
        "interpret": lambda: wellchem.interpret(sample, on=ON),
        "HTML": found.to_html,
        "text": found.to_text,
        "JSON": found.model_dump_json,
    }
    times = {what: best(work, 30) for what, work in made.items()}
    ratios = "   ".join(f"{what} {time / compare:5.2f}" for what, time in times.items())
    print(f"{name:24} {compare * 1e3:7.2f}   {ratios}   ({times['interpret'] / own:5.2f})")


if __name__ == "__main__":
    main()
