"""The catalogue of checks: what each is called, what its outcomes mean, and the function that works it out."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np

from wellchem.interpretation import checks_beside, checks_report, checks_sums, wording
from wellchem.interpretation.checks_sums import NOT_POSSIBLE, Outcome
from wellchem.interpretation.practice import rows, source
from wellchem.interpretation.single import Single
from wellchem.interpretation.waters import Waters
from wellchem.models.codes import CheckStatus
from wellchem.models.finding import Check, Computed

STATUSES = (CheckStatus.PASS, CheckStatus.WARN, CheckStatus.FAIL, CheckStatus.NOT_POSSIBLE)

CHECKS: Mapping[str, Callable[[Waters], Outcome]] = {
    "ion_balance": checks_sums.ion_balance,
    "dissolved_solids": checks_sums.dissolved_solids,
    "conductance": checks_sums.conductance,
    "solids_conductance": checks_sums.solids_conductance,
    "hardness": checks_sums.hardness,
    "dissolved_total": checks_sums.dissolved_total,
    "nitrogen": checks_sums.nitrogen,
    "coliform_consistency": checks_sums.coliform_consistency,
    "alkalinity_ph": checks_sums.alkalinity_ph,
    "holding_time": checks_report.holding_time,
    "qualifiers": checks_report.qualifiers,
    "duplicates": checks_report.duplicates,
    "blanks": checks_beside.nothing,
    "other_samples": checks_beside.nothing,
    "reporting_limits": checks_report.reporting_limits,
    "age": checks_report.age,
    "plausible": checks_report.plausible,
    "raw_water": checks_report.raw_water,
    "sampling_point": checks_report.sampling_point,
}

# What else a report holds is known of one sample only.
_BESIDE: Mapping[str, Callable[[Single], Outcome]] = {
    "duplicates": checks_beside.duplicates,
    "blanks": checks_beside.blanks,
    "other_samples": checks_beside.other_samples,
}


def outcomes(waters: Waters) -> Mapping[str, Outcome]:
    """Every check of every sample, in the catalogue's order."""
    return {row["code"]: CHECKS[row["code"]](waters) for row in rows("checks")}


def _text(single: Single, row: Mapping[str, str], outcome: Outcome) -> str:
    status = int(outcome.status[0])
    text = row[STATUSES[status].value]
    if status != NOT_POSSIBLE and outcome.label and not np.isnan(outcome.low[0]):
        figure = wording.interval(float(outcome.low[0]), float(outcome.high[0]), outcome.unit)
        text = f"{text} {outcome.label[:1].upper() + outcome.label[1:]}: {figure}."
    if outcome.said:
        return f"{text} {'; '.join(outcome.said).removesuffix('.')}."
    read = single.source_rows(int(found[0]) for found in outcome.rows)
    if read:
        text = f"{text} {'; '.join(wording.result(single.sample.results[place]) for place in read)}."
    return text


def check_models(single: Single) -> tuple[Check, ...]:
    """The checks of one sample with their figures, source and the results looked at."""
    made = []
    for row in rows("checks"):
        code = row["code"]
        outcome = _BESIDE[code](single) if code in _BESIDE else CHECKS[code](single.waters)
        low, high = float(outcome.low[0]), float(outcome.high[0])
        figures: tuple[Computed, ...] = ()
        if outcome.label and not np.isnan(low):
            figures = (
                Computed(
                    name=row["code"],
                    label=outcome.label,
                    low=low,
                    high=None if np.isnan(high) else high,
                    unit=outcome.unit,
                    source=source(row),
                    inputs=outcome.analytes,
                    notes=outcome.notes,
                ),
            )
        rows_read = single.source_rows(int(found[0]) for found in outcome.rows)
        made.append(
            Check(
                code=row["code"],
                title=row["title"],
                status=STATUSES[int(outcome.status[0])],
                text=_text(single, row, outcome),
                figures=figures,
                results=outcome.places or rows_read or single.results(outcome.analytes),
                source=source(row),
            )
        )
    return tuple(made)
