"""Printed rows to results: canonical analyte, number with its bounds, unit and basis, and what was supposed."""

from wellchem.normalise.byhand import convert, resolve, sample_from_values
from wellchem.normalise.frames import results_frame, samples_frame, unread_frame
from wellchem.normalise.models import samples_of
from wellchem.normalise.results import Normalised, normalised

__all__ = [
    "Normalised",
    "convert",
    "normalised",
    "resolve",
    "results_frame",
    "sample_from_values",
    "samples_frame",
    "samples_of",
    "unread_frame",
]
