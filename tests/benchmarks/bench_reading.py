"""From a file to results, as ratios to the bare library on the same file in the same run.

    python tests/benchmarks/bench_reading.py [ROWS]

Processor and wall seconds, the best of three runs after one warm run. Baselines: pandas reading Arrow strings by its
own parser (`dtype="string[pyarrow]"`, the target; for information also `dtype_backend="pyarrow"`, which turns numbers
into floats and leaves the text to its parser, and `engine="pyarrow"`), pdfplumber's bare word extraction, one
normal-mode load by openpyxl. Each step of the delimited files runs in an interpreter of its own, so that its peak
memory is its own; elsewhere it is that of the process so far.
"""

from __future__ import annotations

import io
import resource
import subprocess
import sys
import tempfile
import time
from importlib.metadata import version
from pathlib import Path

import numpy as np
import pandas as pd

import wellchem

NAMES = (
    "Iron, Total",
    "Manganese",
    "Nitrate as N",
    "Chloride",
    "Sulfate",
    "Sodium",
    "Arsenic",
    "pH",
    "Calcium",
    "Zinc",
)
UNITS = ("mg/L", "mg/L", "mg/L", "mg/L", "mg/L", "mg/L", "µg/L", "SU", "mg/L", "µg/L")


def table(rows: int, width: int) -> bytes:
    """A long table of invented results: thirteen columns that say something, the rest of no use."""
    rng = np.random.default_rng(3)
    name = rng.integers(0, len(NAMES), rows)
    number = np.round(rng.lognormal(0, 1.5, rows), 3).astype(str)
    number = np.where(rng.random(rows) < 0.2, np.char.add("<", number), number)
    sample = np.arange(rows) // len(NAMES)
    data = {
        "Sample ID": np.char.add("S", sample.astype(str)),
        "Site": np.char.add("well ", (sample % 5000).astype(str)),
        "Collected": np.datetime_as_string(np.datetime64("2019-01-01") + (sample % 2500)),
        "Sample Type": "Routine",
        "Matrix": "Ground water",
        "Analyte": np.array(NAMES)[name],
        "Fraction": np.array(["Total", ""])[rng.integers(0, 2, rows)],
        "Result": number,
        "Units": np.array(UNITS)[name],
        "Qualifier": np.array(["", "", "", "J"])[rng.integers(0, 4, rows)],
        "Reporting Limit": "0.05",
        "Method": np.array(["EPA 200.7", "EPA 300.0"])[rng.integers(0, 2, rows)],
        "Laboratory": "Osprey Brook Analytical",
    }
    for extra in range(width - len(data)):
        data[f"Internal code {extra}"] = np.array(["A", "B", ""])[rng.integers(0, 3, rows)]
    return pd.DataFrame(data).to_csv(index=False).encode()


def decimals(rows: int) -> bytes:
    """Every number another: results, limits of their own, coordinates of each sample."""
    data, rng = pd.read_csv(io.BytesIO(table(rows, 13)), dtype="str"), np.random.default_rng(4)
    sample = np.arange(rows) // len(NAMES)
    data = data.drop(columns=["Sample Type", "Matrix", "Laboratory"])
    data["Result"] = np.round(rng.lognormal(0, 1.5, rows), 7).astype(str)
    data["Reporting Limit"] = np.round(0.01 + rng.random(rows) / 100, 6).astype(str)
    data["MDL"] = np.round(0.001 + rng.random(rows) / 1000, 7).astype(str)
    for name, from_degree in (("Latitude", 40), ("Longitude", -90)):
        data[name] = np.round(from_degree + rng.random(sample[-1] + 1), 6).astype(str)[sample]
    return data.to_csv(index=False).encode()


def moments(rows: int) -> bytes:
    """Dates with times: of collection in two columns, of receipt and analysis in one each."""
    data, rng = pd.read_csv(io.BytesIO(table(rows, 13)), dtype="str"), np.random.default_rng(5)
    sample = np.arange(rows) // len(NAMES)
    begin = pd.Timestamp("2015-01-01")
    when = pd.Series(begin + pd.to_timedelta(rng.integers(0, 5_000_000, sample[-1] + 1), "min"))[sample]
    later = when + pd.to_timedelta(rng.integers(60, 28_800, rows), "min")
    data = data.drop(columns=["Sample Type", "Matrix", "Method"])
    data["Collected"] = when.dt.strftime("%m/%d/%Y").to_numpy()
    data["Time Collected"] = when.dt.strftime("%H:%M").to_numpy()
    data["Received"] = (when + pd.Timedelta(days=1)).dt.strftime("%m/%d/%Y %I:%M %p").to_numpy()
    data["Analyzed"] = later.dt.strftime("%m/%d/%Y %H:%M").to_numpy()
    return data.to_csv(index=False).encode()


def mixed(rows: int) -> bytes:
    """Few distinct values, words among them, mixed units, quality control, and every fifth row not to be read."""
    data, rng = pd.read_csv(io.BytesIO(table(rows, 13)), dtype="str"), np.random.default_rng(6)
    words = np.array(["<0.05", "ND", "<0.5", "0.31 J", "1.2", "BDL", "12.5", "0.004", "7.1", "> 2", "1.5 mg/L"], object)
    data["Result"] = words[rng.integers(0, len(words), rows)]
    data["Units"] = np.array(["mg/L", "ug/L", "ppm", "ppb", "MG/L"], object)[rng.integers(0, 5, rows)]
    kinds = np.array(["Routine", "Routine", "Routine", "Method Blank", "Matrix Spike", "Field Duplicate"], object)
    data["Sample Type"] = kinds[rng.integers(0, 6, rows // len(NAMES) + 1)][np.arange(rows) // len(NAMES)]
    odd = rng.random(rows) < 0.2
    data.loc[odd, "Analyte"] = np.char.add("Parameter X-", rng.integers(0, 300, int(odd.sum())).astype(str))
    return data.to_csv(index=False).encode()


FILES = {
    "13 columns": lambda rows: table(rows, 13),
    "13 columns of decimals": decimals,
    "13 columns with times": moments,
    "13 columns of words, mixed units, a fifth unread": mixed,
    "65 columns": lambda rows: table(rows, 65),
}
READERS = {
    "results": lambda path: wellchem.read_batch([path]),
    "Arrow strings": lambda path: pd.read_csv(path, dtype="string[pyarrow]"),
    "Arrow backend": lambda path: pd.read_csv(path, dtype_backend="pyarrow"),
    "Arrow engine": lambda path: pd.read_csv(path, engine="pyarrow", dtype_backend="pyarrow"),
}


def pages(count: int) -> bytes:
    """A report of many pages, forty results each."""
    from reportlab.lib.pagesizes import A4
    from reportlab.pdfgen import canvas

    buffer = io.BytesIO()
    page = canvas.Canvas(buffer, pagesize=A4, invariant=True)
    for number in range(count):
        page.setFont("Helvetica", 9)
        page.drawString(48, 800, f"Sample ID: P{number}    Collected: 2026-03-0{number % 9 + 1}")
        for line in range(-1, 40):
            cells = ("Analyte", "Result", "Units", "RL", "Method") if line < 0 else None
            k = line % len(NAMES)
            cells = cells or (NAMES[k], f"{line * 0.37 + 0.1:.2f}", UNITS[k], "0.05", "EPA 200.7")
            for x, text in zip((48, 215, 280, 350, 420), cells, strict=True):
                page.drawString(x, 770 - 17 * (line + 1), text)
        page.showPage()
    page.save()
    return buffer.getvalue()


def workbook(rows: int) -> bytes:
    """The long table as a workbook."""
    buffer = io.BytesIO()
    pd.read_csv(io.BytesIO(table(rows, 13))).to_excel(buffer, index=False)
    return buffer.getvalue()


def spent(call, times: int = 3) -> float:
    """Least processor time of some runs after a warm one [s]."""
    call()
    took = []
    for _ in range(times):
        begin = time.process_time()
        call()
        took.append(time.process_time() - begin)
    return min(took)


def report(what: str, ours: float, theirs: float, target: str) -> None:
    """One line."""
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"{what}: {ours:.2f} s against {theirs:.2f} s, ratio {ours / theirs:.2f} ({target}); peak {peak:.0f} MB")


def alone(reader: str, path: str) -> None:
    """Print processor and wall seconds, and peak memory [MB], of one reader of a delimited file."""
    took = []
    READERS[reader](path)
    for _ in range(3):
        begin = time.process_time(), time.perf_counter()
        READERS[reader](path)
        took.append((time.process_time() - begin[0], time.perf_counter() - begin[1]))
    # The kernel's high-water mark of this program alone: ru_maxrss would be that of the process it was forked from.
    status = dict(line.split(":", 1) for line in Path("/proc/self/status").read_text().splitlines())
    print(*map(min, zip(*took, strict=True)), int(status["VmHWM"].split()[0]) / 1024)


def delimited(rows: int, folder: str) -> None:
    """Print the ratios of every delimited file to every baseline."""
    for what, make in FILES.items():
        path = Path(folder) / "results.csv"
        path.write_bytes(make(rows))
        cost = {}
        for reader in READERS:
            done = subprocess.run(
                [sys.executable, __file__, "--alone", reader, str(path)], capture_output=True, text=True, check=True
            )
            cost[reader] = tuple(map(float, done.stdout.split()))
        cpu, wall, memory = cost.pop("results")
        print(f"{rows:,} rows, {what}: {cpu:.2f} s, wall {wall:.2f} s, peak {memory:.0f} MB")
        for reader, (other, other_wall, other_memory) in cost.items():
            target = " (target at most 1)" if reader == "Arrow strings" else ""
            print(f"    {cpu / other:.2f} x {reader}{target}, wall {wall / other_wall:.2f} x; {other_memory:.0f} MB")


def main(rows: int) -> None:
    """Print every ratio."""
    import openpyxl
    import pdfplumber

    packages = ("pandas", "pyarrow", "pdfplumber", "openpyxl", "numpy")
    print(", ".join(f"{name} {version(name)}" for name in packages), f"python {sys.version.split()[0]}")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "report.pdf"
        path.write_bytes(pages(100))

        def words() -> None:
            with pdfplumber.open(path) as document:
                for page in document.pages:
                    page.extract_words()

        report("100 pages", spent(lambda: wellchem.read(path), 2), spent(words, 2), "at most 1.3 and 30 ms")
        path = Path(folder) / "results.xlsx"
        path.write_bytes(workbook(20_000))
        ours = spent(lambda: wellchem.read_batch([path]), 2)
        report("20,000 rows of a workbook", ours, spent(lambda: openpyxl.load_workbook(path), 2), "at most 1.3")
        path = Path(folder) / "report.pdf"
        path.write_bytes(pages(1))
        ours, theirs = spent(lambda: wellchem.read(path), 20), spent(words, 20)
        print(f"one page: {ours * 1e3:.0f} ms, {(ours - 1.3 * theirs) * 1e3:.0f} ms over 1.3 x words (at most 30)")
        delimited(rows, folder)


if __name__ == "__main__":
    if sys.argv[1:2] == ["--alone"]:
        alone(*sys.argv[2:4])
    else:
        main(int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000)
