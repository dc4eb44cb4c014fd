"""Nearest known names of an unknown one, by shared triples of letters first, so that thousands cost little."""

from collections import Counter, defaultdict
from difflib import SequenceMatcher


def _triples(key: str) -> set[str]:
    padded = f"^{key}$"
    return {padded[place : place + 3] for place in range(len(padded) - 2)}


class Suggestions:
    """An index of squashed names."""

    def __init__(self, labels: dict[str, str], analytes: dict[str, str]) -> None:
        self._labels, self._analytes = labels, analytes
        self._index: dict[str, list[str]] = defaultdict(list)
        self._sizes = {key: len(_triples(key)) for key in labels}
        for key in labels:
            for triple in _triples(key):
                self._index[triple].append(key)
        self._known: dict[str, tuple[str, ...]] = {}

    def nearest(self, key: str, most: int = 3) -> tuple[str, ...]:
        """At most `most` labels of different analytes that are close to the squashed text, best first."""
        if key not in self._known:
            own = _triples(key)
            shared = Counter(name for triple in own for name in self._index.get(triple, ()))
            rough = sorted(shared, key=lambda name: -shared[name] / (len(own) + self._sizes[name]))[:20]
            scored = sorted(((SequenceMatcher(None, key, name).ratio(), name) for name in rough), reverse=True)
            chosen: dict[str, str] = {}
            for ratio, name in scored:
                if ratio >= 0.6:
                    chosen.setdefault(self._analytes[name], self._labels[name])
            self._known[key] = tuple(chosen.values())[:most]
        return self._known[key]
