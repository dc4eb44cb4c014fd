"""The bundled demo: a text PDF of an invented laboratory, and what the invented household says of itself."""

from pathlib import Path

_HERE = Path(__file__).parent

REPORT = _HERE / "report.pdf"
HOUSEHOLD = _HERE / "household.json"
