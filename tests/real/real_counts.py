"""How much of each public file is a result, quality control, or unread, and why.

    python tests/real/real_counts.py [part of a file's name ...]

A line per file: results, quality control, unread rows by reason, and whether every cell is claimed once.
"""

from __future__ import annotations

import sys
from collections import Counter
from functools import cache

import pandas as pd
from real_truth import FOLDER

import wellchem
from wellchem.errors import NothingFound
from wellchem.models.sample import Report, Unread

# Lists of names, codes and units: not one of their rows has a value, and none of them is a result.
LISTS = ("nwis/pCodeToName.csv", "nwis/parameterCdFile.csv", "wide/kwale_dictionary.csv")
SUFFIXES = (".csv", ".gz", ".xlsx", ".pdf", ".rdb")


def files() -> list[str]:
    """The files of the public folder, by their path in it."""
    found = (path for path in FOLDER.glob("*/*") if path.name.endswith(SUFFIXES))
    return sorted(path.relative_to(FOLDER).as_posix() for path in found)


@cache
def read(file: str) -> tuple[Report | None, tuple[Unread, ...]]:
    """One file, read as anybody's, and what is unread of it; no report where it holds no result."""
    try:
        report = wellchem.read(FOLDER / file)
    except NothingFound as nothing:
        return None, nothing.unread
    return report, report.unread


@cache
def results(file: str) -> pd.DataFrame:
    """The results of one file as a frame, quality control too."""
    report = read(file)[0]
    assert report is not None
    return report.to_frame()


def line(file: str) -> str:
    """What one file gave."""
    report, unread = read(file)
    reasons = Counter(one.reason.value for one in unread).most_common()
    said = ", ".join(f"{count} {reason}" for reason, count in reasons) or "none"
    if report is None:
        return f"{file}: no results; unread: {said}"
    results, control = (sum(len(sample.results) for sample in of) for of in (report.samples, report.quality_control))
    balanced = "balanced" if report.explanation.balanced else "NOT BALANCED"
    return f"{file}: {results} results, {control} quality control; unread: {said}; {balanced}"


if __name__ == "__main__":
    for file in files():
        if not sys.argv[1:] or any(part in file for part in sys.argv[1:]):
            print(line(file), flush=True)
            read.cache_clear()
