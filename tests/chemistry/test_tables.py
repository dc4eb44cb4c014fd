"""The room's reference tables: every row says where it is from, and nothing is known that no table has."""

import csv

import pytest

from wellchem.reference import folder

TABLES = sorted((folder() / "chemistry").glob("*.csv"))


@pytest.mark.parametrize("path", TABLES, ids=[path.stem for path in TABLES])
def test_every_row_names_its_source(path: object) -> None:
    with open(path, encoding="utf-8", newline="") as lines:  # type: ignore[call-overload]
        rows = list(csv.DictReader(lines))
    assert rows
    for row in rows:
        assert None not in row, row
        assert None not in row.values(), row
        assert row["source"], row
        assert row["place"], row
        assert row["checked"] in {"page", "transposition", "memory"}, row


def test_the_readme_describes_every_table() -> None:
    text = (folder() / "chemistry" / "README.md").read_text(encoding="utf-8")
    assert [path.name for path in TABLES if f"`{path.name}`" not in text] == []
