"""Amounts that are worked out of several results of one sample: parts and wholes, sums, differences, sums of ratios."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from wellchem.limits.observed import Floats, Observed, joined
from wellchem.limits.prepare import Amount, Prepared
from wellchem.models.codes import Reason

# Beyond this many the missing members are counted, not named: the limit itself lists its members.
NAMED_AT_MOST = 40

Found = tuple[NDArray[np.int64], Floats, Floats]  # samples in order, and bounds in each


class SampleIndex:
    """Bounds of each analyte in each sample that has a usable result of it.

    Two results of one analyte are taken together, from the lower low to the higher high; but a dissolved part beside
    the total, and a laboratory's pH beside the field's, are left out.
    """

    def __init__(self, observed: Observed, prepared: Prepared) -> None:
        at = np.flatnonzero(observed.usable & prepared.indexed[observed.code])
        samples = int(observed.sample.max(initial=-1)) + 1
        key = observed.code[at].astype(np.int64) * samples + observed.sample[at]
        order = np.argsort(key * 4 + observed.rank[at], kind="stable")
        at, key = at[order], key[order]
        first = np.flatnonzero(np.diff(key, prepend=-1))
        best = np.repeat(observed.rank[at[first]], np.diff(np.append(first, len(at)))) if len(at) else observed.rank[at]
        at, key = at[kept := observed.rank[at] == best], key[kept]
        first = np.flatnonzero(np.diff(key, prepend=-1))
        self._low = np.minimum.reduceat(observed.low[at], first) if len(at) else observed.low[:0]
        self._high = np.maximum.reduceat(observed.high[at], first) if len(at) else observed.high[:0]
        self._sample = observed.sample[at[first]].astype(np.int64)
        self._start = np.searchsorted(observed.code[at[first]], np.arange(len(prepared.indexed) + 1))
        self._added: dict[int, list[Found]] = {}
        self.codes = set(observed.code[at[first]].tolist())

    def find(self, code: int) -> Found:
        """The samples that have the analyte, in order, with its bounds."""
        part = slice(self._start[code], self._start[code + 1])
        found = self._sample[part], self._low[part], self._high[part]
        if code not in self._added:
            return found
        samples, low, high = (np.concatenate(parts) for parts in zip(found, *self._added[code], strict=True))
        order = np.argsort(samples, kind="stable")
        return samples[order], low[order], high[order]

    def add(self, code: int, found: Found) -> None:
        """Take in what was worked out for samples without a result of the analyte's own."""
        self._added.setdefault(code, []).append(found)
        self.codes.add(code)

    def dense(self, code: int, samples: int) -> tuple[Floats, Floats]:
        """Bounds for every sample, NaN where there is none."""
        at, low, high = self.find(code)
        every = np.full((2, samples), np.nan)
        every[0, at], every[1, at] = low, high
        return every[0], every[1]


def worked_out(observed: Observed, index: SampleIndex, prepared: Prepared) -> Observed:
    """What follows for analytes without a result of their own, and the amounts of groups, as further rows."""
    details: dict[str, int] = {"": 0}
    parts: list[Observed] = []
    for amount in (*prepared.derived, *prepared.groups):
        needed = amount.terms[:1] if amount.minuend else amount.terms
        if not any(term.code in index.codes for term in needed):
            continue
        made = _work_out(amount, index, prepared, details)
        if made is None:
            continue
        parts.append(made)
        if amount.derived:
            index.add(amount.code, (made.sample.astype(np.int64), made.low, made.high))
    return joined((observed, *parts), tuple(details))


def _work_out(amount: Amount, index: SampleIndex, prepared: Prepared, details: dict[str, int]) -> Observed | None:
    found = {place: index.find(term.code) for place, term in enumerate(amount.terms) if term.code in index.codes}
    samples = np.unique(np.concatenate([at for place, (at, _, _) in found.items() if not (amount.minuend and place)]))
    if amount.instead_of in index.codes:
        samples = np.setdiff1d(samples, index.find(amount.instead_of)[0], assume_unique=True)
        if not len(samples):
            return None
    low, high = np.zeros(len(samples)), np.zeros(len(samples))
    missing = np.ones((len(samples), len(amount.terms)), dtype=bool)
    for place, term in enumerate(amount.terms):
        # A member without a result may be anything from nothing on.
        least, most = np.zeros(len(samples)), np.full(len(samples), np.inf)
        if place in found:
            at, term_low, term_high = found[place]
            here = np.minimum(np.searchsorted(samples, at), len(samples) - 1)
            inside = samples[here] == at
            here = here[inside]
            missing[here, place] = False
            # No content of water is negative, even where a measured activity is.
            least[here] = np.maximum(term_low[inside], 0) * term.least
            if np.isfinite(term.most):
                most[here] = np.maximum(term_high[inside], 0) * term.most
        if amount.minuend and place:
            low, high = low - most, high - least
        else:
            low, high = low + least, high + most
    low = np.maximum(low, 0)
    if amount.derived and any(term.most == np.inf for term in amount.terms):
        says = low > 0  # none found of a part says nothing of the whole
        samples, low, high, missing = samples[says], low[says], high[says], missing[says]
    return _rows(amount, samples, low, high, _detail(amount, missing, prepared, details))


def _detail(
    amount: Amount, missing: NDArray[np.bool_], prepared: Prepared, details: dict[str, int]
) -> NDArray[np.int32]:
    """For each row the index of its words: from what it is derived, and which members are missing."""
    # One code for each distinct row of flags, taken up 16 members at a time.
    code = np.zeros(len(missing), dtype=np.int64)
    for place in range(0, missing.shape[1], 16):
        flags = missing[:, place : place + 16]
        _, code = np.unique(code << 16 | flags @ (1 << np.arange(flags.shape[1])), return_inverse=True)
    _, first = np.unique(code, return_index=True)
    names = [prepared.analytes[term.code] for term in amount.terms]
    codes = []
    for bits in missing[first]:
        there = [name for name, gone in zip(names, bits, strict=True) if not gone]
        gone = [name for name, gone in zip(names, bits, strict=True) if gone]
        words = [f"{Reason.DERIVED_FROM}={','.join(there)}"] if amount.derived else []
        if gone:
            said = ",".join(gone) if len(gone) <= NAMED_AT_MOST else f"{len(gone)} of {len(names)}"
            words.append(f"{Reason.MEMBERS_MISSING}={said}")
        codes.append(details.setdefault(";".join(words), len(details)))
    return np.array(codes, dtype=np.int32)[code]


def _rows(amount: Amount, samples: NDArray[np.int64], low: Floats, high: Floats, detail: NDArray[np.int32]) -> Observed:
    size = len(samples)
    return Observed(
        position=np.full(size, -1, dtype=np.int64),
        sample=samples.astype(np.int32),
        code=np.full(size, amount.code, dtype=np.int32),
        low=low,
        high=high,
        open_low=np.zeros(size, dtype=bool),
        open_high=np.zeros(size, dtype=bool),
        fraction=np.full(size, -1, dtype=np.int8),
        uncertainty=np.full(size, np.nan),
        reasons=np.zeros(size, dtype=np.int32),
        detail=detail,
        rank=np.zeros(size, dtype=np.int8),
    )
