"""Limits as models with their citations, looked up by analyte, and as a table over authorities."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from functools import cache
from typing import TYPE_CHECKING

from wellchem.errors import UnknownAnalyte
from wellchem.limits.documents import Document, authorities
from wellchem.limits.rows import LimitRow, LimitTable, own_tables, table_of
from wellchem.models.limits import Citation, Limit
from wellchem.vocabulary import bundled

if TYPE_CHECKING:
    import pandas as pd

ANY_DAY = "any"


def lookup(
    analyte: str,
    authority: str | None = None,
    on: date | str | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
) -> tuple[Limit, ...]:
    """The limits on an analyte with their citations.

    Parameters
    ----------
    analyte : str
        Its key or a name as laboratories print it. Limits over a group that it is a member of are among the answers.
    authority : str or None
        One authority, or all of them.
    on : date, "any" or None
        As in force on that day, on any day, or today (None). A limit whose start the document does not give is among
        the answers for every day before its end; its `in_force_from` is then missing.
    limits : LimitTable or several, or None
        Limits of your own (`load`), looked up as well.

    Raises
    ------
    UnknownAnalyte
        With the nearest known names.
    UnknownAuthority
        With the authorities that are known.
    """
    own = own_tables(limits)
    key = _key(analyte, own)
    if authority is None:
        searched = (*map(table_of, authorities()), *own)
    else:
        searched = tuple(table for table in own if table.authority == authority) or (table_of(authority),)
    return tuple(
        model(row, table)
        for table in searched
        for row in table.rows
        if (row.analyte == key or any(member.analyte == key for member in row.members)) and in_force(row, on)
    )


def table(
    analytes: Iterable[str],
    authorities: Iterable[str] | None = None,
    on: date | str | None = None,
    limits: LimitTable | Iterable[LimitTable] | None = None,
) -> pd.DataFrame:
    """The limits on some analytes over the authorities: a row each, with its citation in words.

    Takes and raises what `lookup` does; `authorities` is all of them where it is None.
    """
    import pandas as pd

    own = own_tables(limits)
    asked = (analytes,) if isinstance(analytes, str) else tuple(analytes)
    places: tuple[str | None, ...] = (None,) if authorities is None else tuple(authorities)
    found = {
        (_key(analyte, own), limit.id): limit
        for analyte in asked
        for place in places
        for limit in lookup(analyte, place, on, limits)
    }
    texts = ("authority", "term", "kind", "minimum", "maximum", "unit", "basis", "fraction")
    more = ("canonical_minimum", "canonical_maximum", "canonical_unit", "combine")
    dated = ("compliance", "in_force_from", "in_force_to", "compared", "note")
    return pd.DataFrame(
        [
            {
                "analyte": key,
                "limit": limit.id,
                **{name: getattr(limit, name) for name in (*texts, *more)},
                "members": ";".join(limit.members),
                "applies_when": ";".join(limit.applies_when),
                **{name: getattr(limit, name) for name in dated},
                "citation": str(limit.citation),
            }
            for (key, _), limit in found.items()
        ],
        columns=["analyte", "limit", *texts, *more, "members", "applies_when", *dated, "citation"],
    )


def in_force(row: LimitRow, on: date | str | None) -> bool:
    """Whether the limit is in force on the day, as far as its dates are known."""
    if on == ANY_DAY:
        return True
    if isinstance(on, str):
        raise ValueError(f"on={on!r} is not a date, {ANY_DAY!r} or None")
    day = date.fromordinal((on or date.today()).toordinal())  # a time of day is left out
    return (row.starts is None or row.starts <= day) and (row.ends is None or day <= row.ends)


@cache
def model(row: LimitRow, table: LimitTable) -> Limit:
    """The limit with its citation."""
    document = table.documents.get(row.source, Document(title=row.source or f"limits of {table.authority}"))
    return Limit(
        id=row.id,
        authority=row.authority,
        analyte=row.analyte,
        term=row.term,
        kind=row.kind,
        minimum=row.minimum,
        maximum=row.maximum,
        unit=row.unit,
        basis=row.basis,
        fraction=row.fraction,
        canonical_minimum=row.canonical_minimum,
        canonical_maximum=row.canonical_maximum,
        canonical_unit=row.canonical_unit,
        combine=row.combine,
        members=row.printed_members,
        applies_when=row.applies_when,
        compliance=row.compliance,
        in_force_from=row.starts,
        in_force_to=row.ends,
        compared=row.in_plain_comparison,
        note=row.note,
        citation=Citation(
            source=row.source,
            title=document.title,
            publisher=document.publisher,
            edition=document.edition,
            locator=row.locator,
            url=document.url,
            checked=row.checked,
        ),
    )


def _key(analyte: str, own: tuple[LimitTable, ...]) -> str:
    vocabulary = bundled()
    if analyte in vocabulary.analytes or any(row.analyte == analyte for table in own for row in table.rows):
        return analyte
    meaning = vocabulary.name(analyte)
    if meaning is not None:
        named: str = meaning.analyte
        return named
    nearest = ", ".join(vocabulary.suggest(analyte))
    raise UnknownAnalyte(f"{analyte!r} is not a known analyte" + (f"; nearest: {nearest}" if nearest else ""))
