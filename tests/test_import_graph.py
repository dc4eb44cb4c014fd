"""Imports go down the list of rooms only; the exceptions are named here and nowhere else."""

import ast
from pathlib import Path

import pytest

import wellchem

PACKAGE = Path(wellchem.__file__).parent

# A room may import those named after it, and itself.
MAY = {
    "errors": (),
    "reference": (),
    "models": ("errors",),
    "schema": ("errors", "models"),
    "chemistry": ("reference",),
    "vocabulary": ("errors", "models", "reference", "chemistry"),
    "reading": ("errors", "models", "vocabulary"),
    "normalise": ("errors", "models", "schema", "vocabulary", "reading", "chemistry"),
    "intake": ("errors", "models", "schema", "vocabulary", "reading", "normalise"),
    "limits": ("errors", "models", "schema", "reference", "vocabulary", "chemistry"),
    "interpretation": ("errors", "models", "schema", "reference", "vocabulary", "chemistry", "limits", "normalise"),
    "display": ("errors", "models", "schema"),
    "demo": (),
    "cli": ("errors", "models", "schema", "intake", "normalise", "limits", "interpretation", "display", "demo"),
}

# A model makes and prints itself: imports inside a function, upwards.
UPWARD = {
    ("models/sample.py", "normalise"),
    ("models/sample.py", "schema"),
    ("models/finding.py", "display"),
}


def _modules():
    return sorted(path for path in PACKAGE.rglob("*.py") if path != PACKAGE / "__init__.py")


def _imports(path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "wellchem":
            parts = node.module.split(".")
            if len(parts) > 1:
                yield parts[1]
            else:
                yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.Import):
            for alias in node.names:
                parts = alias.name.split(".")
                if parts[0] == "wellchem" and len(parts) > 1:
                    yield parts[1]


@pytest.mark.parametrize("path", _modules(), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_imports_go_down(path):
    relative = path.relative_to(PACKAGE)
    room = relative.parts[0].removesuffix(".py")
    if room == "__main__":
        return
    for imported in _imports(path):
        if imported in (room, "__version__") or (relative.as_posix(), imported) in UPWARD:
            continue
        assert imported in MAY[room], f"{relative} imports wellchem.{imported}"
