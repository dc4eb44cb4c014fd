"""Limits that an authority has already enacted for later, and that are stricter than what is in force."""

from __future__ import annotations

from datetime import date
from functools import lru_cache

from wellchem.errors import UnknownAuthority
from wellchem.limits import lookup
from wellchem.models.codes import LimitKind
from wellchem.models.limits import Limit


@lru_cache(maxsize=1 << 14)
def coming(analyte: str, authority: str, limit_id: str, on: date) -> Limit | None:
    """The strictest health limit that takes the place of one in force, or the first beside a goal, or None.

    Of the same analyte, fraction and condition; an authority whose limits are not bundled has none.
    """
    try:
        known = lookup(analyte, authority=authority, on="any")
    except UnknownAuthority:
        return None
    present = next((limit for limit in known if limit.id == limit_id), None)
    if present is None or present.canonical_maximum is None:
        return None
    later = [
        limit
        for limit in known
        if limit.kind is LimitKind.HEALTH
        and limit.compared
        and (limit.analyte, limit.applies_when, limit.fraction)
        == (present.analyte, present.applies_when, present.fraction)
        and limit.in_force_from is not None
        and limit.in_force_from > on
        and limit.canonical_maximum is not None
        and (present.kind is LimitKind.GOAL or limit.canonical_maximum < present.canonical_maximum)
    ]
    return min(later, key=lambda limit: limit.canonical_maximum or 0.0, default=None)
