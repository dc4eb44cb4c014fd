"""From results and comparisons to checks, problems, what to do, what is missing, and treatment."""

from wellchem.interpretation.core import interpret
from wellchem.interpretation.frames import checks, problems
from wellchem.interpretation.treatment import treat

__all__ = ["checks", "interpret", "problems", "treat"]
