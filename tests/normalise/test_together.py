"""Texts that are read all together mean what each of them means alone."""

from __future__ import annotations

import io
from datetime import datetime

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import wellchem
from wellchem.normalise.numbers import CENSORING, numbers_of
from wellchem.reading import delimited
from wellchem.reading.date_columns import DateTexts, parsed_all
from wellchem.reading.dates import parsed
from wellchem.reading.rows import texts_of
from wellchem.vocabulary import bundled

NUMBER = st.text("0123456789.,-+eE", min_size=1, max_size=9)
VALUE = st.one_of(
    NUMBER,
    st.tuples(st.sampled_from(["<", ">", "< ", "> ", "<=", "≤", "~", "=", "<<"]), NUMBER).map("".join),
    st.sampled_from(
        ["ND", "TNTC", "<1 U", "0.3 J", "1.5 mg/L", "١٢", "1_0", "nan", "inf", "-", "a\0b", "<MDL", "<", "é"]
    ),
)


@settings(max_examples=300, deadline=None)
@given(st.lists(VALUE, min_size=1, max_size=12, unique=True))
def test_values_together_as_each_alone(texts):
    words = bundled()
    made = numbers_of(words, texts_of(texts), ".", presence=False)
    for place, text in enumerate(texts):
        alone = words.value(text, decimal=".")
        assert made.readable[place] == (alone is not None)
        if alone is None:
            continue
        assert CENSORING[made.censoring[place]] == alone.censoring
        for got, wanted in ((made.number, alone.number), (made.low, alone.low), (made.high, alone.high)):
            np.testing.assert_array_equal(got[place], np.nan if wanted is None else wanted)
        assert (made.unit[place], made.note[place]) == (alone.unit_text, alone.note)
        assert made.qualifiers[place] == ";".join(alone.qualifiers)


def test_a_word_of_the_vocabulary_goes_before_the_sign():
    words = bundled().extended(values=[{"printed": "<1", "meaning": "absent", "note": ""}])
    made = numbers_of(words, texts_of(["<1", "<2"]), ".", presence=False)
    assert [CENSORING[code] for code in made.censoring] == [words.value(text).censoring for text in ("<1", "<2")]


DAY = st.sampled_from(
    ["2024-01-02", "13/02/2024", "3/4/2024", "03.04.2024", "1/2/24", "2024-13-01", "4-Mar-2024", "Mar", "20240102", "5"]
)
TIME = st.sampled_from(
    [
        "",
        " 10:20",
        " 1:05 PM",
        " 25:00",
        "T10:20",
        ", 07:15",
        " 0930",
        " x",
        "  8:00",
        " 10:00 EST",
        " 4, 2024",
        " 12 2024 1:05 PM",
    ]
)


@given(st.lists(st.tuples(DAY, TIME).map("".join), min_size=1, unique=True), st.booleans())
def test_dates_together_as_each_alone(texts, day_comes_first):
    made = parsed_all(DateTexts.of(texts_of(texts)), day_comes_first)
    for place, text in enumerate(texts):
        alone = parsed(text)
        when = made.when[place].item()
        if alone is None:
            assert when is None
            continue
        wanted: datetime = alone.either if alone.either is not None and day_comes_first else alone.when
        assert (when, made.timed[place], made.either[place]) == (wanted, alone.timed, alone.either is not None)


def file_of(seed: int, rows: int = 400) -> bytes:
    """Results of every kind: quality control, unknown names and units, words, limits, times, blanks."""
    rng = np.random.default_rng(seed)

    def some(*texts: str) -> np.ndarray:
        return np.array(texts, object)[rng.integers(0, len(texts), rows)]

    data = {
        "Sample ID": [f"S{at // 7}" for at in range(rows)],
        "Collected": some("03/04/2024 10:20", "3/14/2024 1:05 PM", "03/05/2024", ""),
        "Sample Type": some("Routine", "Routine", "Method Blank", "Matrix Spike"),
        "Analyte": some(
            "Iron, Total", "Nitrate as N", "pH", "E. coli", "Gross alpha", "Parameter X", " Zinc ", "Metals"
        ),
        "Result": some(
            "0.3", "<0.05", "< 2", "ND", "7.1", "see page 3", "", ">2420", "1.5 ± 0.2", "2 mg/L", "A", "=1+1"
        ),
        "Units": some("mg/L", "µg/L", "furlongs", "", "MPN/100 mL", "SU"),
        "Qualifier": some("", "U", "J", "B", "R"),
        "Reporting Limit": some("0.05", "0.1", ""),
        "Latitude": some("41.5", "-.5", "41.5 N", "95", ""),
    }
    return pd.DataFrame(data).to_csv(index=False).encode()


@pytest.mark.parametrize("seed", range(4))
def test_a_large_file_as_a_small_one(seed, monkeypatch):
    pytest.importorskip("pyarrow")
    data = file_of(seed)
    slow = wellchem.read(io.BytesIO(data), name="x.csv")
    slow_batch = wellchem.read_batch([io.BytesIO(data)])
    monkeypatch.setattr(delimited, "LARGE", 0)
    fast, fast_batch = wellchem.read(io.BytesIO(data), name="x.csv"), wellchem.read_batch([io.BytesIO(data)])
    assert fast.model_dump_json() == slow.model_dump_json()
    assert fast.explanation.balanced
    for frame in ("results", "samples", "unread"):
        pd.testing.assert_frame_equal(
            getattr(fast_batch, frame), getattr(slow_batch, frame), check_exact=True, check_categorical=True
        )
