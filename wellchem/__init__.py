"""wellchem reads a laboratory's report on a private well's water and works out what a practitioner needs next.

The names below load when they are first used, so that importing the package costs next to nothing.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

__version__ = "0.1.0"

_PLACES = {
    "read": "wellchem.intake",
    "read_batch": "wellchem.intake",
    "Report": "wellchem.models.sample",
    "Sample": "wellchem.models.sample",
    "Result": "wellchem.models.sample",
    "Household": "wellchem.models.household",
    "Interpretation": "wellchem.models.finding",
    "interpret": "wellchem.interpretation",
    "treat": "wellchem.interpretation",
    "checks": "wellchem.interpretation",
    "problems": "wellchem.interpretation",
    "compare": "wellchem.limits",
    "convert": "wellchem.normalise",
    "resolve": "wellchem.normalise",
}
_ROOMS = ("chemistry", "errors", "limits", "schema", "vocabulary")

__all__ = [
    "Household",
    "Interpretation",
    "Report",
    "Result",
    "Sample",
    "__version__",
    "checks",
    "chemistry",
    "compare",
    "convert",
    "errors",
    "interpret",
    "limits",
    "problems",
    "read",
    "read_batch",
    "resolve",
    "schema",
    "treat",
    "vocabulary",
]

if TYPE_CHECKING:
    from wellchem import chemistry, errors, limits, schema, vocabulary
    from wellchem.intake import read, read_batch
    from wellchem.interpretation import checks, interpret, problems, treat
    from wellchem.limits import compare
    from wellchem.models.finding import Interpretation
    from wellchem.models.household import Household
    from wellchem.models.sample import Report, Result, Sample
    from wellchem.normalise import convert, resolve


def __getattr__(name: str) -> Any:
    if name in _PLACES:
        value = getattr(import_module(_PLACES[name]), name)
    elif name in _ROOMS:
        value = import_module(f"wellchem.{name}")
    else:
        raise AttributeError(f"module 'wellchem' has no attribute {name!r}")
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    return __all__
