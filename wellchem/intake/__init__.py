"""The way in: one file to a report, many files to frames."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

import pandas as pd

from wellchem import __version__, schema
from wellchem.errors import NothingFound, ReadError
from wellchem.intake.account import explained, suggestions
from wellchem.models.codes import Role, UnreadReason
from wellchem.models.sample import Origin, Report, Unread
from wellchem.normalise import Normalised, normalised, results_frame, samples_frame, samples_of, unread_frame
from wellchem.reading.formats import open_source
from wellchem.reading.tables import printed
from wellchem.vocabulary import Vocabulary, bundled

Readable = str | Path | bytes | BinaryIO


def _understood(
    source: Readable, format: str | None, name: str | None, vocabulary: Vocabulary | None
) -> tuple[Normalised, Vocabulary]:
    words = vocabulary or bundled()
    return normalised(printed(open_source(source, format=format, name=name), words), words), words


def read(
    source: Readable, *, format: str | None = None, vocabulary: Vocabulary | None = None, name: str | None = None
) -> Report:
    """A laboratory's report, read from a path, bytes or a stream.

    `format` says what the content is where its beginning does not (`csv`, `xlsx`, `pdf` …); `vocabulary` is one with
    names, units or headers of your own (`Vocabulary.extended`); `name` stands for the source in origins and messages.

    Raises the kinds of ReadError: the file is missing, empty, damaged, locked, a picture without text, or holds no
    analyte result.
    """
    made, words = _understood(source, format, name, vocabulary)
    results = results_frame(made)
    unread = unread_frame(made, suggestions(made, words))
    explanation = explained(made)
    samples = samples_of(made, results)
    if not samples:
        nothing = NothingFound(made.reading.source.name, _what_was_there(unread))
        nothing.unread = tuple(_unread(unread))
        raise nothing
    return Report(
        source=made.reading.source.name,
        samples=tuple(sample for sample in samples if sample.role is Role.ROUTINE),
        quality_control=tuple(sample for sample in samples if sample.role is not Role.ROUTINE),
        unread=tuple(_unread(unread)),
        explanation=explanation,
        library_version=__version__,
        schema_version=schema.VERSION,
    )


def _what_was_there(unread: pd.DataFrame) -> str:
    if not len(unread):
        return "no table and no line of results"
    reasons = unread["reason"].value_counts()
    return ", ".join(f"{count} x {reason}" for reason, count in reasons.items() if count)


def _unread(frame: pd.DataFrame) -> list[Unread]:
    plain = frame.astype(object).where(frame.notna(), None)
    return [
        Unread(
            reason=UnreadReason(row["reason"]),
            text=row["text"] or "",
            detail=row["detail"] or "",
            suggestions=tuple(row["suggestions"].split(";")) if row["suggestions"] else (),
            origin=Origin(
                source=row["source"], page=row["page"], sheet=row["sheet"], row=row["row"], column=row["column"]
            ),
        )
        for row in plain.to_dict("records")
    ]


@dataclass(frozen=True, eq=False)
class Batch:
    """Many files read: four frames of wellchem.schema. Quality control has its role in `results`."""

    results: pd.DataFrame
    samples: pd.DataFrame
    unread: pd.DataFrame
    failed: pd.DataFrame


def read_batch(paths: Iterable[Readable], *, vocabulary: Vocabulary | None = None) -> Batch:
    """Many reports to frames. A file that cannot be read is a row of `failed`; the others are not held up by it."""
    parts: dict[str, list[pd.DataFrame]] = {"results": [], "samples": [], "unread": []}
    failed: list[dict[str, str]] = []
    seen: dict[str, int] = {}
    for path in paths:
        given = str(path) if isinstance(path, str | Path) else str(getattr(path, "name", "bytes"))
        seen[given] = seen.get(given, 0) + 1
        name = given if seen[given] == 1 else f"{given} ({seen[given]})"
        try:
            made, words = _understood(path, None, name, vocabulary)
        except ReadError as error:
            failed.append({"source": name, "error": type(error).__name__, "message": str(error)})
            continue
        results = results_frame(made)
        if not len(results):
            failed.append({"source": name, "error": "NothingFound", "message": str(NothingFound(name))})
        parts["results"].append(results)
        parts["samples"].append(samples_frame(made))
        parts["unread"].append(unread_frame(made, suggestions(made, words)))
    frames = {frame: _together(frame, made_of) for frame, made_of in parts.items()}
    data = {column: [row[column] for row in failed] for column in ("source", "error", "message")}
    return Batch(**frames, failed=schema.conform("failed", data, len(failed)))


def _together(frame: str, parts: list[pd.DataFrame]) -> pd.DataFrame:
    """Frames of several files one after the other, their categories united."""
    if not parts:
        return schema.empty(frame)
    if len(parts) == 1:
        return parts[0]
    data = {}
    for column in schema.columns(frame):
        pieces = [part[column.name] for part in parts]
        if column.kind == "text":
            data[column.name] = pd.api.types.union_categoricals([piece.array for piece in pieces])
        else:
            data[column.name] = pd.concat(pieces, ignore_index=True).array
    return schema.conform(frame, data, sum(len(part) for part in parts))


__all__ = ["Batch", "read", "read_batch"]
