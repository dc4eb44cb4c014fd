"""The water that is predicted behind a train, as a sample of bounds."""

from __future__ import annotations

from math import inf

from wellchem.errors import WellchemError
from wellchem.interpretation.treatment.prediction import predict
from wellchem.interpretation.treatment.tables import Ends, stages
from wellchem.interpretation.treatment.water import organism, raw_water, standing
from wellchem.models.codes import Censoring, Role, SamplingPoint
from wellchem.models.finding import Treatment
from wellchem.models.sample import Printed, Result, Sample

METHOD = "predicted from published ranges"


def treat(sample: Sample, treatment: Treatment) -> Sample:
    """The water predicted behind the whole train, at the tap that is drunk from.

    Amounts are intervals: of a quantified result they are the tabulated ranges, of a bounded one they hold its bounds
    as well. Counts of organisms behind a barrier go from nought to the raw count, so that only a test can decide them.

    Parameters
    ----------
    sample : Sample
        The raw water.
    treatment : Treatment
        Its train, by the codes of its stages.

    Returns
    -------
    Sample
        Role `predicted`, in canonical units.

    Raises
    ------
    WellchemError
        Where the train names a stage that is not known.
    """
    water = raw_water(sample)
    known = set(water.amounts)
    for stage in treatment.stages:
        if stage.code not in stages():
            raise WellchemError(f"no stage of treatment is named {stage.code!r}; there are {', '.join(stages())}")
        water = predict(stage.code, water)
    chosen = standing(sample)
    results = [_predicted(results[0], water.amounts[name]) for name, results in chosen.items()]
    results += [_added(name, ends) for name, ends in water.amounts.items() if name not in known]
    return sample.model_copy(
        update={
            "role": Role.PREDICTED,
            "point": SamplingPoint.AFTER_TREATMENT,
            "results": tuple(results),
            "preserved": None,
        }
    )


def _bounds(ends: Ends) -> dict[str, object]:
    low, high = ends
    point = low == high
    return {
        "low": low,
        "high": None if high == inf else high,
        "value": low if point else None,
        "censoring": Censoring.NONE if point else Censoring.INTERVAL,
    }


def _predicted(raw: Result, ends: Ends) -> Result:
    none_found = organism(raw.analyte) and ends == (0.0, 0.0)
    return Result(
        analyte=raw.analyte,
        fraction=raw.fraction,
        basis=raw.basis,
        unit=raw.unit,
        method=METHOD,
        assumptions=raw.assumptions,
        printed=raw.printed,
        **(_bounds(ends) if not none_found else {"low": 0.0, "high": 0.0, "censoring": Censoring.ABSENT}),  # type: ignore[arg-type]
    )


def _added(name: str, ends: Ends) -> Result:
    """Something that the train puts in, or that follows from other results."""
    from wellchem.vocabulary import bundled

    analyte = bundled().analytes[name]
    return Result(
        analyte=name,
        basis=analyte.basis,
        unit=analyte.unit,
        method=METHOD,
        printed=Printed(name=analyte.label),
        **_bounds(ends),  # type: ignore[arg-type]
    )
