"""What turning files into grids costs, as ratios to the bare library on the same file in the same run.

    python tests/benchmarks/bench_reading_formats.py [pdf] [xlsx] [delimited]

Each figure is the best of a few runs. The delimited baselines are pandas reading Arrow strings, by its own parser and
by pyarrow's. Peak memory is that of the process after the step.
"""

from __future__ import annotations

import io
import platform
import resource
import sys
import tempfile
import time
from collections.abc import Callable
from importlib.metadata import version
from pathlib import Path

import numpy as np

from wellchem.reading.formats import open_source

NAMES = ("Iron, total", "Manganese", "Nitrate + Nitrite as N", "Total Dissolved Solids", "Chloride", "Sulfate", "Zinc")


def best(call: Callable[[], object], times: int) -> float:
    """The least processor time of some runs [s]."""
    took = []
    for _ in range(times):
        begin = time.process_time()
        call()
        took.append(time.process_time() - begin)
    return min(took)


def peak() -> str:
    return f"peak {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB"


def pdf_bytes(pages: int, ruled: bool) -> bytes:
    """A report of many pages, with rules or without."""
    from reportlab.lib import colors
    from reportlab.lib.pagesizes import letter
    from reportlab.platypus import SimpleDocTemplate, Table, TableStyle

    rng = np.random.default_rng(1)
    rows = [["Analyte", "Result", "Units", "RL", "MDL", "Method", "Analysed"]]
    for at in range(pages * 38):
        rows.append([NAMES[at % 7], f"{rng.lognormal():.3g}", "mg/L", "0.05", "0.012", "EPA 200.7", "04/13/2026 10:20"])
    out = io.BytesIO()
    style = [("GRID", (0, 0), (-1, -1), 0.4, colors.grey)] if ruled else []
    SimpleDocTemplate(out, pagesize=letter).build([Table(rows, repeatRows=1, style=TableStyle(style))])
    return out.getvalue()


def bench_pdf() -> None:
    import pdfplumber

    def bare(data: bytes) -> int:
        with pdfplumber.open(io.BytesIO(data)) as document:
            return sum(len(page.extract_words()) for page in document.pages)

    for ruled in (True, False):
        data = pdf_bytes(100, ruled)
        ours = best(lambda data=data: open_source(data), 3)
        theirs = best(lambda data=data: bare(data), 3)
        kind = "ruled" if ruled else "unruled"
        print(f"pdf {kind}, 100 pages: {ours:.2f} s, {ours / theirs:.2f} x word extraction ({theirs:.2f} s), {peak()}")


def xlsx_bytes(rows: int, formulas: bool) -> bytes:
    import openpyxl

    book = openpyxl.Workbook(write_only=True)
    sheet = book.create_sheet("Results")
    sheet.append(["Sample", "Analyte", "Result", "Units", "RL", "Method", "Ratio"])
    rng = np.random.default_rng(2)
    for at in range(rows):
        last = f"=C{at + 2}/E{at + 2}" if formulas else 3.5
        sheet.append([f"W-{at // 20}", NAMES[at % 7], float(f"{rng.lognormal():.3g}"), "mg/L", 0.05, "EPA 200.7", last])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def bench_xlsx() -> None:
    import openpyxl

    for formulas, target in ((False, 1.3), (True, 2.3)):
        data = xlsx_bytes(30_000, formulas)
        ours = best(lambda data=data: open_source(data), 3)
        theirs = best(lambda data=data: openpyxl.load_workbook(io.BytesIO(data)), 3)
        kind = "with formulas" if formulas else "without formulas"
        print(f"xlsx {kind}: {ours:.2f} s, {ours / theirs:.2f} x one load ({theirs:.2f} s; at most {target}), {peak()}")


def write_delimited(path: Path, rows: int, columns: int) -> None:
    """A file of results: few distinct texts in most columns, as such files have, and many in some."""
    rng = np.random.default_rng(3)
    values = [f"{value:.4g}" for value in rng.lognormal(size=20_000)]
    header = ["sample", "site", "date", "analyte", "result", "unit", "rl"]
    header += [f"extra {at}" for at in range(columns - len(header))]
    extras = ",".join(f"code {at}" if at % 3 else "" for at in range(columns - 7))
    with path.open("w", encoding="utf-8") as file:
        file.write(",".join(header) + "\n")
        for at in range(rows):
            file.write(
                f'S-{at // 20},Site {at % 900},2026-0{at % 9 + 1}-{at % 27 + 1:02d},"{NAMES[at % 7]}",'
                f"{values[at % 20_000]},mg/L,0.05,{extras}\n"
            )


def bench_delimited() -> None:
    import pandas as pd

    for columns in (13, 65):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "results.csv"
            write_delimited(path, 1_000_000, columns)
            size = path.stat().st_size / 1e6
            ours = best(lambda path=path: open_source(path), 2)
            memory = peak()
            pandas = best(lambda path=path: pd.read_csv(path, dtype="string[pyarrow]"), 1)
            arrow = best(lambda path=path: pd.read_csv(path, engine="pyarrow", dtype_backend="pyarrow"), 2)
            print(
                f"delimited 1,000,000 x {columns} ({size:.0f} MB): {ours:.2f} s, {memory}; "
                f"{ours / pandas:.2f} x pandas ({pandas:.2f} s), {ours / arrow:.2f} x pandas by pyarrow ({arrow:.2f} s)"
            )


if __name__ == "__main__":
    packages = ("pandas", "pyarrow", "openpyxl", "pdfplumber", "pdfminer.six", "numpy")
    print(f"Python {platform.python_version()},", ", ".join(f"{name} {version(name)}" for name in packages))
    wanted = sys.argv[1:] or ["pdf", "xlsx", "delimited"]
    for kind in wanted:
        {"pdf": bench_pdf, "xlsx": bench_xlsx, "delimited": bench_delimited}[kind]()
