"""Every non-empty cell (or word) of any grids is claimed exactly once."""

import numpy as np
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from wellchem.intake.account import explained
from wellchem.normalise import normalised
from wellchem.reading.grid import Grid, Mark, Source, encode
from wellchem.reading.tables import printed
from wellchem.vocabulary import bundled

WORDS = [
    "", "", "", "Analyte", "Parameter", "Result", "Units", "RL", "MDL", "Qualifier", "MCL", "Sample ID", "Date", "Site",
    "Iron", "Lead", "pH", "Nitrate-N", "E. coli", "Calcium (mg/L)", "Calcium.rmk", "Iron, dissolved", "mg/L", "µg/L",
    "0.3", "<0.5", "ND", "12 J", "1,234.5", "0,8", "Absent", "7.2 @ 20 C", "U", "<", "J", "Metals, dissolved",
    "Quality Control", "Method Blank", "Method Blank: Iron", "LCS", "% Recovery", "98", "Sample ID: W-1", "Collected:",
    "2024-05-03", "03/05/2024 10:15", "W-2", "Mystery", "Zinc ...... 0.08 mg/L", "ND = not detected", "* exceeds",
    "All results in mg/L", "Page 1 of 2", "NA", "-", "Average", "Total", "Dissolved", "Field", "=SUM(A1)", "5s",
    "p00915",
    "C1Nitrate", "C2Nitrate", "0.5-1.2", "Limit", "Guideline", "Kitchen tap", "Soil", "\u00b1", "100",
]  # fmt: skip


@st.composite
def grids(draw):
    """Random grids: words of reports in any order, as sheets or as pages with several words a cell."""
    made = []
    paged = draw(st.booleans())
    for number in range(draw(st.integers(1, 3))):
        height, width = draw(st.integers(1, 12)), draw(st.integers(1, 7))
        texts = draw(
            st.lists(st.lists(st.sampled_from(WORDS), min_size=height, max_size=height), min_size=width, max_size=width)
        )
        columns = tuple(encode(column) for column in texts)
        filled = np.array([[bool(column[row]) for column in texts] for row in range(height)])
        words = np.where(filled, draw(st.integers(1, 4)), 0).astype(np.int32) if paged else None
        marks = (Mark(0, 0, "merged", f"1x{width}"),) if draw(st.booleans()) else ()
        boxes = None
        if paged:
            place = np.indices((height, width)).astype(np.float32)
            boxes = np.stack([place[1] * 50, place[0] * 12, place[1] * 50 + 40, place[0] * 12 + 10], axis=-1)
            boxes[~filled] = np.nan
        made.append(
            Grid(
                columns,
                height,
                np.arange(1, height + 1, dtype=np.int32),
                np.arange(1, width + 1, dtype=np.int32),
                page=number + 1 if paged else None,
                sheet=None if paged else f"Sheet{number}",
                boxes=boxes,
                words=words,
                marks=marks,
            )
        )
    return Source("random", "pdf" if paged else "spreadsheet", tuple(made))


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(grids())
def test_every_cell_is_claimed_once(source):
    reading = printed(source, bundled())
    made = normalised(reading, bundled())
    explanation = explained(made)
    assert explanation.balanced
    assert (made.outcome >= 0).all()
    assert not reading.ledger.unclaimed


@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(grids())
def test_reading_is_deterministic(source):
    first, second = (normalised(printed(source, bundled()), bundled()) for _ in range(2))
    assert (first.outcome == second.outcome).all()
    assert (first.reason == second.reason).all()
