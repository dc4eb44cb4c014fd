"""Frames to models at the edge: samples with their results, each with its origin."""

from __future__ import annotations

from datetime import date, datetime
from typing import Any

import numpy as np
import pandas as pd

from wellchem.models.codes import Censoring, Fraction, Measured, Role, SamplingPoint
from wellchem.models.sample import Assumption, Origin, Printed, Result, Sample
from wellchem.normalise.results import Normalised


def samples_of(made: Normalised, results: pd.DataFrame) -> list[Sample]:
    """Samples with their results, in order of appearance, quality control with its role."""
    boxes = _boxes(made)
    plain = {name: _objects(results[name]) for name in results.columns}
    groups: dict[str, list[int]] = {}
    for row, key in enumerate(plain["sample"]):
        groups.setdefault(key, []).append(row)
    numbers = {key: int(key.rsplit("#", 1)[1].split("/")[0]) - 1 for key in groups}
    return [
        _sample(made, key, numbers[key], plain["role"][rows[0]], tuple(_result(plain, row, boxes) for row in rows))
        for key, rows in groups.items()
    ]


def _objects(series: pd.Series) -> list[Any]:
    """Plain values, None where missing."""
    if isinstance(series.dtype, pd.CategoricalDtype):
        words = [*series.cat.categories, None]  # code -1 is the last
        return [words[code] for code in series.cat.codes.tolist()]
    if series.dtype == "float64":
        return [None if number != number else number for number in series.tolist()]
    return list(series.astype(object).where(series.notna(), None))


def _result(
    plain: dict[str, list[Any]], row: int, boxes: dict[tuple[Any, ...], tuple[float, float, float, float]]
) -> Result:
    def at(name: str) -> Any:
        return plain[name][row]

    assumptions = [code.split("=", 1) for code in (at("assumptions") or "").split(";") if "=" in code]
    place = (at("page"), at("sheet"), at("row"), at("column"))
    return Result(
        analyte=at("analyte"),
        fraction=Fraction(at("fraction")) if at("fraction") else None,
        basis=at("basis"),
        censoring=Censoring(at("censoring")),
        value=at("value"),
        low=at("low"),
        high=at("high"),
        unit=at("unit"),
        uncertainty=at("uncertainty"),
        reporting_limit=at("reporting_limit"),
        detection_limit=at("detection_limit"),
        qualifiers=tuple((at("qualifiers") or "").split(";")) if at("qualifiers") else (),
        method=at("method"),
        measured=Measured(at("measured")) if at("measured") else None,
        assumptions=tuple(Assumption(code=code, value=value) for code, value in assumptions),
        printed=Printed(name=at("printed_name") or "", value=at("printed_value") or "", unit=at("printed_unit") or ""),
        origin=Origin(
            source=at("source"), page=place[0], sheet=place[1], row=place[2], column=place[3], box=boxes.get(place)
        ),
    )


def _sample(made: Normalised, key: str, number: int, role: str, results: tuple[Result, ...]) -> Sample:
    heads, printed = made.heads, made.heads.printed
    return Sample(
        id=printed.sample_id[number],
        key=key,
        role=Role(role),
        site=printed.site[number] or None,
        point=SamplingPoint(heads.point[number]) if heads.point[number] else None,
        matrix=printed.matrix[number] or None,
        collected=_when(heads.collected[number], bool(heads.collected_timed[number])),
        received=_when(heads.received[number], bool(heads.received_timed[number])),
        analysed=_when(heads.analysed[number], bool(heads.analysed_timed[number])),
        preserved=printed.preserved[number] or None,
        laboratory=printed.laboratory[number] or None,
        latitude=_float(heads.latitude[number]),
        longitude=_float(heads.longitude[number]),
        well_depth=_float(heads.well_depth[number]),
        aquifer=printed.aquifer[number] or None,
        results=results,
        source=made.reading.source.name,
    )


def _float(number: np.float64) -> float | None:
    return None if np.isnan(number) else float(number)


def _when(moment: np.datetime64, timed: bool) -> date | datetime | None:
    """A date where no time was printed, else the moment."""
    if np.isnat(moment):
        return None
    whole: datetime = moment.astype("datetime64[s]").item()
    return whole if timed else whole.date()


def _boxes(made: Normalised) -> dict[tuple[Any, ...], tuple[float, float, float, float]]:
    """Boxes on the page of the cells that results were read from, by page, sheet, row and column of the source."""
    found: dict[tuple[Any, ...], tuple[float, float, float, float]] = {}
    rows = made.reading.rows
    for number, grid in enumerate(made.reading.source.grids):
        if grid.boxes is None:
            continue
        for at in np.flatnonzero(rows.grid == number):
            row, column = int(rows.row[at]), int(rows.column[at])
            box = grid.boxes[row, column]
            if not np.isnan(box).any():
                place = (grid.page, grid.sheet, int(grid.rows[row]), int(grid.columns_at[column]))
                found[place] = (float(box[0]), float(box[1]), float(box[2]), float(box[3]))
    return found
