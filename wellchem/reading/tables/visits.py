"""Several visits in one row of a wide table: columns like `C1Nitrate`, `C2Nitrate` under a prefix for each visit."""

from __future__ import annotations

from dataclasses import replace

from wellchem.reading.tables.cells import Lexicon
from wellchem.reading.tables.headers import Head, Header, prefix_of


def visits(lexicon: Lexicon, header: Header) -> list[Header]:
    """A header for each visit, its prefix taken off, columns without a prefix in all; else the header alone."""
    found: dict[str, dict[int, tuple[str, Head]]] = {}
    for column, head in header.heads.items():
        prefix, rest = prefix_of(head.text) if head.meaning is None and not lexicon.is_name(head.text) else ("", "")
        if prefix and not lexicon.is_name(prefix) and _means(lexicon, rest):  # "CO3.rmk" is of no visit
            found.setdefault(prefix, {})[column] = (rest.casefold(), _without(lexicon, head, rest))
    rests = [tuple(rest for rest, _ in columns.values()) for columns in found.values()]
    if len(found) < 2 or len(set(rests)) > 1:
        return [header]
    mine = {column for columns in found.values() for column in columns}
    shared = {column: head for column, head in header.heads.items() if column not in mine}
    return [
        replace(header, heads={**shared, **{column: head for column, (_, head) in columns.items()}})
        for columns in found.values()
    ]


def _means(lexicon: Lexicon, text: str) -> bool:
    return lexicon.column(text) is not None or lexicon.vocabulary.name(text) is not None


def _without(lexicon: Lexicon, head: Head, text: str) -> Head:
    return Head(head.column, text, (text,), head.group, lexicon.column(text))
