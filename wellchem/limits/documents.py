"""The documents that limits cite, the authorities and what their numbers are to a private well."""

import hashlib
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from typing import Any

from wellchem.errors import UnknownAuthority
from wellchem.reference import folder


@dataclass(frozen=True)
class Document:
    """One document. `stands_from`: the day from which every undated row of it is known to have stood as given."""

    title: str
    publisher: str = ""
    edition: str = ""
    url: str = ""
    stands_from: date | None = None


@cache
def documents() -> Mapping[str, Document]:
    """The documents of the bundled limits by their id."""
    return {key: _document(table) for key, table in _toml("sources.toml").items()}


def authorities() -> tuple[str, ...]:
    """Authorities whose limits are bundled."""
    return tuple(_toml("standing.toml"))


def standing(authority: str) -> str:
    """What the authority's numbers are to a private well, and what was not checked.

    Raises UnknownAuthority, which lists those that are known.
    """
    table = _toml("standing.toml").get(authority)
    if table is None:
        raise unknown(authority)
    return " ".join(part for part in (table.get("text", ""), table.get("not_checked", "")) if part)


def short_name(authority: str) -> str:
    """What an authority is called in a sentence; the key itself of limits that are not bundled."""
    return str(_toml("standing.toml").get(authority, {}).get("short", authority))


def unknown(authority: str) -> UnknownAuthority:
    """The error for an authority whose limits are not bundled."""
    return UnknownAuthority(
        f"no limits of the authority {authority!r} are known; known are {', '.join(authorities())}. "
        "Other limits can be loaded from a CSV file with wellchem.limits.load."
    )


@cache
def version() -> str:
    """Version of the bundled limits: the first twelve hexadecimal digits of the SHA-256 of their tables."""
    digest = hashlib.sha256()
    for path in sorted(folder().glob("*.csv")) + sorted(folder().glob("*.toml")):
        digest.update(path.name.encode() + b"\0" + path.read_bytes().replace(b"\r\n", b"\n") + b"\0")
    return digest.hexdigest()[:12]


def _document(table: Mapping[str, Any]) -> Document:
    stands_from = table.get("stands_from")
    return Document(
        title=table["title"],
        publisher=table.get("publisher", ""),
        edition=table.get("edition", ""),
        url=table.get("url", ""),
        stands_from=date.fromisoformat(stands_from) if isinstance(stands_from, str) else stands_from,
    )


@cache
def _toml(name: str) -> Mapping[str, Any]:
    return tomllib.loads((folder() / name).read_text(encoding="utf-8"))
