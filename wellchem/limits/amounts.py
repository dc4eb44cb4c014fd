"""Amounts that are worked out of several results of one sample: parts and wholes, sums, differences, sums of ratios."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from wellchem.limits.observed import BIT, PARTS, Floats, Observed, joined
from wellchem.limits.prepare import Amount, Prepared
from wellchem.models.codes import Reason

# Beyond this many the missing members are counted, not named: the limit itself lists its members.
NAMED_AT_MOST = 40
_UNSEEN = -2

# What holds of a member holds of what is worked out of it.
INHERITED = BIT[Reason.HOLDING_TIME] | BIT[Reason.UNIT_ASSUMED] | BIT[Reason.BASIS_ASSUMED]


@dataclass(frozen=True)
class Found:
    """The samples that have an analyte, in order: its bounds, fraction and inherited reasons in each."""

    sample: NDArray[np.intp]
    low: Floats
    high: Floats
    fraction: NDArray[np.int8]
    reasons: NDArray[np.int32]

    def take(self, places: NDArray[np.intp] | slice) -> Found:
        """Some of them."""
        return Found(*(getattr(self, name)[places] for name in Found.__dataclass_fields__))


class SampleIndex:
    """Bounds of each analyte in each sample that has a usable result of it.

    Two results of one analyte are taken together, from the lower low to the higher high; but a dissolved part beside
    the total, and a laboratory's pH beside the field's, are left out.
    """

    def __init__(self, observed: Observed, prepared: Prepared) -> None:
        at = np.flatnonzero(observed.usable & prepared.indexed[observed.code])
        self.nothing = observed.take(np.arange(0))
        self.samples = int(observed.sample.max(initial=-1)) + 1
        key = observed.code[at].astype(np.int64) * self.samples + observed.sample[at]
        order = np.argsort(key * 4 + observed.rank[at], kind="stable")
        at, key = at[order], key[order]
        first = np.flatnonzero(np.diff(key, prepend=-1))
        best = np.repeat(observed.rank[at[first]], np.diff(np.append(first, len(at))))
        kept = observed.rank[at] == best
        at, key = at[kept], key[kept]
        first = np.flatnonzero(np.diff(key, prepend=-1))
        code = observed.code[at[first]]
        self._all = Found(
            sample=observed.sample[at[first]],
            low=np.minimum.reduceat(observed.low[at], first) if len(at) else observed.low[:0],
            high=np.maximum.reduceat(observed.high[at], first) if len(at) else observed.high[:0],
            fraction=observed.fraction[at[first]],
            reasons=np.bitwise_or.reduceat(observed.reasons[at] & INHERITED, first)
            if len(at)
            else observed.reasons[:0],
        )
        self._start = np.searchsorted(code, np.arange(len(prepared.indexed) + 1))
        self._added: dict[int, list[Observed]] = {}
        self.codes = set(code.tolist())

    def find(self, code: int) -> Found:
        """The samples that have the analyte."""
        found = self._all.take(slice(self._start[code], self._start[code + 1]))
        if code not in self._added:
            return found
        parts = (found, *self._added[code])
        joined = Found(*(np.concatenate([getattr(part, n) for part in parts]) for n in Found.__dataclass_fields__))
        return joined.take(np.argsort(joined.sample, kind="stable"))

    def add(self, made: Observed) -> None:
        """Take in what was worked out for samples without a result of the analyte's own."""
        if len(made.code):
            self._added.setdefault(int(made.code[0]), []).append(made)
            self.codes.add(int(made.code[0]))

    def dense(self, code: int, samples: int) -> tuple[Floats, Floats]:
        """Bounds for every sample, NaN where there is none."""
        found = self.find(code)
        every = np.full((2, samples), np.nan)
        every[0, found.sample], every[1, found.sample] = found.low, found.high
        return every[0], every[1]


def worked_out(index: SampleIndex, prepared: Prepared) -> Observed:
    """What follows for analytes without a result of their own, and the amounts of groups."""
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
            index.add(made)
    return joined(parts or [index.nothing], tuple(details))


def _work_out(amount: Amount, index: SampleIndex, prepared: Prepared, details: dict[str, int]) -> Observed | None:
    found = {place: index.find(term.code) for place, term in enumerate(amount.terms) if term.code in index.codes}
    wanted = np.zeros(index.samples, dtype=bool)
    for place, one in found.items():
        if not (amount.minuend and place):
            wanted[one.sample] = True
    if amount.instead_of in index.codes:
        wanted[index.find(amount.instead_of).sample] = False
    samples = np.flatnonzero(wanted)
    size = len(samples)
    if not size:
        return None
    low, high = np.zeros(size), np.zeros(size)
    missing = np.ones((size, len(amount.terms)), dtype=bool)
    fraction, reasons = np.full(size, _UNSEEN, dtype=np.int8), np.zeros(size, dtype=np.int32)
    for place, term in enumerate(amount.terms):
        # A member without a result may be anything from nothing on.
        least, most = np.zeros(size), np.full(size, np.inf)
        if place in found:
            here = np.minimum(np.searchsorted(samples, found[place].sample), size - 1)
            inside = np.flatnonzero(samples[here] == found[place].sample)
            here, one = here[inside], found[place].take(inside)
            missing[here, place] = False
            # No content of water is negative, even where a measured activity is.
            least[here] = np.maximum(one.low, 0) * term.least
            if np.isfinite(term.most):
                most[here] = np.maximum(one.high, 0) * term.most
            fraction[here] = _joint_fraction(fraction[here], one.fraction)
            reasons[here] |= one.reasons
        if amount.minuend and place:
            low, high = low - most, high - least
        else:
            low, high = low + least, high + most
    rows = Observed(
        position=np.full(size, -1, dtype=np.int64),
        sample=samples,
        code=np.full(size, amount.code, dtype=np.int32),
        low=np.maximum(low, 0),
        high=high,
        open_low=np.zeros(size, dtype=bool),
        open_high=np.zeros(size, dtype=bool),
        fraction=fraction,
        uncertainty=np.full(size, np.nan),
        reasons=reasons,
        detail=_detail(amount, missing, prepared, details),
        rank=np.zeros(size, dtype=np.int8),
        decided_only=np.full(size, amount.decided_only),
    )
    if amount.derived and any(term.most == np.inf for term in amount.terms):
        return rows.take(np.flatnonzero(low > 0))  # none found of a part says nothing of the whole
    return rows


def _joint_fraction(before: NDArray[np.int8], other: NDArray[np.int8]) -> NDArray[np.int8]:
    """The fraction of a sum: the one that all members have; a part where any member is one; else not said."""
    joint = np.where((before == other) | (before == _UNSEEN), other, -1)
    joint = np.where(np.isin(before, PARTS), before, joint)
    return np.where(np.isin(other, PARTS), other, joint).astype(np.int8)


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
