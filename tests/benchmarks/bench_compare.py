"""Comparison of a million results with all authorities, against reading the same results from CSV with bare pandas.

    python tests/benchmarks/bench_compare.py [results] [report.pdf]

Prints, from one run and the best of three rounds: the time of `pandas.read_csv` (Arrow strings), of the comparison,
their ratio, the rows that come out and the peak of memory while comparing. Then one sample: its comparison beside
reading its PDF. Much of the comparison's time is the first touch of its frame's memory: run it on a machine at rest.
"""

import gc
import os
import platform
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
import pandas as pd

from wellchem import __version__, limits, schema

# What a private well's report usually carries; the last ones rarely.
ANALYTES = (
    *(
        "ph",
        "specific_conductance",
        "total_hardness",
        "total_alkalinity",
        "calcium",
        "magnesium",
        "sodium",
        "potassium",
    ),
    *("chloride", "sulfate", "nitrate", "nitrite", "fluoride", "iron", "manganese", "arsenic", "lead", "copper"),
    *(
        "uranium",
        "total_coliform",
        "e_coli",
        "total_dissolved_solids",
        "turbidity",
        "gross_alpha",
        "chloroform",
        "pfos",
    ),
)
PER_SAMPLE = 20
ROUNDS = 3


def peak() -> float:
    """Peak resident memory since the last reset [MB]; since the start where it cannot be reset."""
    try:
        status = Path("/proc/self/status").read_text()
        return int(status.split("VmHWM:")[1].split()[0]) / 1024
    except (OSError, IndexError):
        import resource

        return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def reset_peak() -> None:
    """Forget the peak so far, where the system can."""
    try:
        Path("/proc/self/clear_refs").write_text("5")
    except OSError:
        print("(peak memory cannot be reset here: it counts from the start)")


def invented(size: int) -> pd.DataFrame:
    """Results of invented wells: `PER_SAMPLE` of the analytes in each sample, a third of them censored."""
    from wellchem.vocabulary import bundled

    random = np.random.default_rng(20260501)
    known = bundled().analytes
    samples = -(-size // PER_SAMPLE)
    picked = np.concatenate([random.permuted(np.tile(np.arange(len(ANALYTES)), (samples, 1)), axis=1)[:, :PER_SAMPLE]])
    picked = picked.reshape(-1)[:size]
    sample = np.repeat(np.arange(samples), PER_SAMPLE)[:size]
    value = np.round(np.exp(random.normal(-1, 2, size)), 4)
    censored = random.random(size) < 1 / 3
    names = pd.Index(ANALYTES)
    data = {
        "sample": pd.Categorical.from_codes(sample, pd.Index([f"batch.csv#W-{number}" for number in range(samples)])),
        "sample_id": pd.Categorical.from_codes(sample, pd.Index([f"W-{number}" for number in range(samples)])),
        "site": pd.Categorical.from_codes(sample % 5000, pd.Index([f"Well {number}" for number in range(5000)])),
        "collected": pd.Timestamp("2016-01-01") + pd.to_timedelta(sample % 3650, unit="D"),
        "role": np.where(random.random(size) < 0.02, "blank", "routine"),
        "analyte": pd.Categorical.from_codes(picked, names),
        "fraction": np.where(random.random(size) < 0.2, "dissolved", "total"),
        "basis": np.array([known[name].basis for name in ANALYTES], dtype=object)[picked],
        "censoring": np.where(censored, "left", "none"),
        "value": value,
        "low": np.where(censored, 0.0, value),
        "high": value,
        "unit": np.array([known[name].unit for name in ANALYTES], dtype=object)[picked],
        "printed_name": np.array([f"{name}, printed" for name in ANALYTES], dtype=object)[picked],
        "printed_value": value.astype(str),
        "printed_unit": np.array([known[name].unit for name in ANALYTES], dtype=object)[picked],
        "reporting_limit": np.where(censored, value, np.round(value / 7, 5)),
        "detection_limit": np.where(censored, np.round(value / 3, 5), np.nan),
        "qualifiers": np.where(censored, "U", None),
        "measured": np.where(picked < 2, "field", "laboratory"),
        "point": pd.Categorical.from_codes(sample % 4, pd.Index(["well_head", "tap", "tap_first_draw", "tap_flushed"])),
        "method": np.array(["200.8", "300.0", "SM 2320 B", "9223 B"], dtype=object)[picked % 4],
        "source": np.full(size, "batch.csv", dtype=object),
        "row": np.arange(size) + 2,
        "column": np.full(size, 6),
    }
    return schema.conform("results", data, size)


def many(size: int) -> None:
    """A frame of results against all authorities."""
    frame = invented(size)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "results.csv"
        frame.to_csv(path, index=False)
        megabytes = path.stat().st_size / 1e6
        authorities = limits.authorities()
        limits.compare(frame.head(100), authorities)  # the limits are prepared once for a process
        readings, comparings = [], []
        for _ in range(ROUNDS):  # in turn, so that a busy machine is busy for both
            begun = time.perf_counter()
            plain = pd.read_csv(path, low_memory=False)
            readings.append(time.perf_counter() - begun)
            strings = {str(dtype) for dtype in plain.dtypes}
            del plain
            gc.collect()
            reset_peak()
            before = peak()
            begun = time.perf_counter()
            compared = limits.compare(frame, authorities, on="collected")
            comparings.append(time.perf_counter() - begun)
            highest = peak()
            rows, size_out = len(compared), compared.memory_usage(deep=False).sum() / 1e6
            verdicts = compared["verdict"].value_counts()
            del compared
    reading, taken = min(readings), min(comparings)
    print(f"{size:,} results ({megabytes:.0f} MB of CSV; dtypes {sorted(strings)}), {len(authorities)} authorities")
    print(f"  pandas.read_csv   {reading:6.2f} s")
    print(f"  wellchem.compare  {taken:6.2f} s   ratio {taken / reading:.2f} (at most 1)")
    print(f"  {rows:,} comparisons; frame {size_out:.0f} MB")
    print(f"  peak memory {highest:.0f} MB, of which {before:.0f} MB before the comparison (interpreter and results)")
    print("  " + ", ".join(f"{verdict} {count:,}" for verdict, count in verdicts.items()))


def one(path: str) -> None:
    """One sample against all authorities, beside reading its report."""
    import wellchem

    def fastest(call: object, times: int) -> float:
        taken = []
        for _ in range(times):
            begun = time.perf_counter()
            call()  # type: ignore[operator]
            taken.append(time.perf_counter() - begun)
        return min(taken)

    report = wellchem.read(path)
    sample = report.samples[0]
    number = len(limits.compare_sample(sample, limits.authorities()))
    reading = fastest(lambda: wellchem.read(path), 5)
    every = fastest(lambda: limits.compare_sample(sample, limits.authorities()), 20)
    single = fastest(lambda: limits.compare_sample(sample, ("us-epa",)), 20)
    print(f"one sample of {len(sample.results)} results, {number} comparisons with all authorities")
    print(f"  reading its PDF      {reading * 1e3:7.1f} ms")
    print(f"  all authorities      {every * 1e3:7.1f} ms   ratio {every / reading:.3f} (at most 0.1)")
    print(f"  one authority        {single * 1e3:7.1f} ms   ratio {single / reading:.3f}")


if __name__ == "__main__":
    print(
        f"wellchem {__version__}, limits {limits.version()}, pandas {pd.__version__}, numpy {np.__version__}, ", end=""
    )
    print(f"Python {platform.python_version()}, {os.cpu_count()} processors")
    many(int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000)
    if len(sys.argv) > 2:
        one(sys.argv[2])
