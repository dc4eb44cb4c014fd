"""Texts that pyarrow holds are used as an array of the same texts; the plain array is the oracle."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellchem.normalise.numbers import plain_numbers
from wellchem.reading.arrow_texts import ArrowTexts
from wellchem.reading.date_columns import DateTexts
from wellchem.reading.rows import Coded, any_holds, texts_of

pa = pytest.importorskip("pyarrow")

TEXT = st.one_of(
    st.sampled_from(
        ["1", "0.5", "-3", "+4", "1e3", ".5", "5.", "1.2.3", "<2", "2024-01-02", "{}", "[1", "µg/L", "a\0b", "."]
    ),
    st.text(st.characters(codec="utf-8"), min_size=1, max_size=5),
)
TEXTS = st.lists(TEXT, min_size=1, unique=True)


def both(texts):
    """The texts held by pyarrow, as a part of a longer array, and as objects."""
    return ArrowTexts(pa.array(["before", *texts, "behind"]).slice(1, len(texts))), texts_of(texts)


@given(TEXTS, st.data())
def test_indexing(texts, data):
    held, plain = both(texts)
    places = data.draw(st.lists(st.integers(0, len(texts) - 1)))
    mask = np.array(data.draw(st.lists(st.booleans(), min_size=len(texts), max_size=len(texts))))
    assert list(held) == texts
    assert len(held) == len(texts)
    assert [held[at] for at in range(len(texts))] == texts
    for chosen in (np.array(places, np.int64), mask, slice(0, 2)):
        assert np.asarray(held[chosen]).tolist() == plain[chosen].tolist()
    assert np.append(held, "").tolist() == [*texts, ""]
    assert np.concatenate([held, plain]).tolist() == texts + texts


@given(TEXTS)
def test_looking_through_all(texts):
    held, plain = both(texts)
    np.testing.assert_array_equal(plain_numbers(held), plain_numbers(plain))
    for signs in (",", "<>", "0"):
        assert any_holds(held, signs) == any_holds(plain, signs)
    assert held.beginning_with("{[") == [at for at, text in enumerate(texts) if text[0] in "{["]
    assert DateTexts.of(held).days.tolist() == DateTexts.of(plain).days.tolist()


@given(TEXTS, st.data())
def test_a_column_of_them(texts, data):
    held, plain = both(texts)
    codes = np.array(data.draw(st.lists(st.integers(-1, len(texts) - 1))), np.int32)
    for made in (Coded(codes, held, True), Coded(codes, plain, True)):
        wanted = ["" if code < 0 else texts[code] for code in codes]
        assert made.plain() == made.compact().plain() == [made[row] for row in range(len(made))] == wanted
