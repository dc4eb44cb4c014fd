"""From a file to results, as ratios to the bare library on the same file in the same run.

    python tests/benchmarks/bench_reading.py [ROWS]

Processor seconds of the whole process, the best of three runs after one warm run. Baselines: pandas reading Arrow
strings (its own parser), pdfplumber's bare word extraction, one normal-mode load by openpyxl. Peak memory is that of
the process after the step.
"""

from __future__ import annotations

import io
import resource
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
        for width in (13, 65):
            path = Path(folder) / f"results{width}.csv"
            path.write_bytes(table(rows, width))
            theirs = spent(lambda path=path: pd.read_csv(path, dtype="string[pyarrow]"), 2)
            report(
                f"{rows:,} rows x {width}", spent(lambda path=path: wellchem.read_batch([path]), 2), theirs, "at most 1"
            )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000)
