"""Texts as pyarrow holds them: an object is made only of a text that somebody looks at."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    import pyarrow as pa


class ArrowTexts:
    """Stands for an array of texts, none of them empty, where a column's dictionary is long.

    Indexing by an array gives the same kind of thing, by a number a text; numpy takes it for an array of objects.
    """

    def __init__(self, held: pa.StringArray) -> None:
        self.held = held
        self._objects: NDArray[Any] | None = None

    def __len__(self) -> int:
        return len(self.held)

    def __iter__(self) -> Iterator[str]:
        return iter(self.__array__())

    def __array__(self, dtype: Any = None, copy: bool | None = None) -> NDArray[Any]:
        if self._objects is None:
            self._objects = self.held.to_numpy(zero_copy_only=False)
        return np.array(self._objects, dtype, copy=copy)

    def __getitem__(self, places: Any) -> Any:
        if isinstance(places, int | np.integer):
            return self.held[int(places)].as_py()
        chosen = np.arange(len(self))[places]
        return ArrowTexts(self.held.take(chosen))

    def letters(self) -> tuple[NDArray[np.uint8], NDArray[np.int64]]:
        """The UTF-8 of all texts one behind the other, and where each begins."""
        _, offsets, data = self.held.buffers()
        places = np.frombuffer(offsets, np.int32)[self.held.offset : self.held.offset + len(self.held) + 1]
        letters = np.frombuffer(data, np.uint8)[places[0] : places[-1]]
        return letters, (places[:-1] - places[0]).astype(np.int64)

    def floats(self) -> NDArray[np.float64]:
        """The texts as numbers. Raises ValueError where one is none."""
        import pyarrow as pa

        numbers: NDArray[np.float64] = self.held.cast(pa.float64()).to_numpy(zero_copy_only=False)
        return numbers

    def any_holds(self, signs: str) -> bool:
        """Whether one of these signs stands in any of the texts."""
        letters = self.letters()[0].tobytes()
        return any(sign.encode() in letters for sign in signs)

    def beginning_with(self, signs: str) -> list[int]:
        """Which texts begin with one of these signs of ASCII."""
        letters, starts = self.letters()
        found: list[int] = np.flatnonzero(np.isin(letters[starts], np.frombuffer(signs.encode(), np.uint8))).tolist()
        return found
