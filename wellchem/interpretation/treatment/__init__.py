"""From problems to a train of treatment that is shown to work on this water, and the water behind it."""

from wellchem.interpretation.treatment.recommendation import IMPLAUSIBLE, recommend
from wellchem.interpretation.treatment.treated import treat

__all__ = ["IMPLAUSIBLE", "recommend", "treat"]
