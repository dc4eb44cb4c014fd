"""Reads the invented wells of `wells_more`: printed names and values, a household, what guidance leads one to say.

A table of a file is a well: `title`, `guidance`, `results` (printed name and value), and where they differ from the
usual `authorities`, `on`, `sample`, `household`, `qualifiers` (by printed name). `expect` holds what was written down
beforehand:

verdicts, problems, urgency, checks   by analyte/kind or code; `problems_in` gives the certainties that would do
present, absent, none                 problems that stand, that do not, or that there are none of any kind
boiling, boiling_says, formula, bathing   what is said of these uses, by hazard; `action_groups`: who is spoken to
missing, not_missing, first_missing, first_missing_of, first_missing_matching, order, missing_matching, missing_says,
open                                  what is to be tested, how early, why, and which core tests are not established
signs, no_signs, mixed, mixed_analyte signs, and that verdicts of several authorities differ
stages, stages_have, never_stages, ordered_stages, barrier_before, first_stage_of, neutraliser_before   the train
feed, sizes                           by stage: how a feed condition stands, and a figure with its bounds and unit
treated                               bounds of an analyte behind the whole train, worked out by hand
says, never, household_first_says     patterns of the text of the whole, or of the household's first part
"""

from __future__ import annotations

import tomllib
from datetime import date
from functools import cache
from html import unescape
from pathlib import Path
from re import sub
from typing import Any

import wellchem
from wellchem.models.household import Household
from wellchem.models.sample import Sample

FOLDER = Path(__file__).parent / "wells_more"
USUAL_DAY = date(2026, 5, 1)
USUAL_SAMPLE = {"collected": date(2026, 4, 20)}

TABLES: dict[str, dict[str, Any]] = {
    name: table
    for path in sorted(FOLDER.glob("*.toml"))
    for name, table in tomllib.loads(path.read_text(encoding="utf-8")).items()
}
NAMES = sorted(TABLES)


def sample(name: str) -> Sample:
    """The well's sample, read as a report is."""
    table = TABLES[name]
    read = Sample.from_values(table["results"], key=name, id=name, **table.get("sample", USUAL_SAMPLE))
    flagged = table.get("qualifiers", {})
    results = tuple(
        one.model_copy(update={"qualifiers": (*one.qualifiers, *flagged.get(one.printed.name, ()))})
        for one in read.results
    )
    return read.model_copy(update={"results": results})


def household(name: str) -> Household | None:
    """What is known of the household, if anything."""
    table = TABLES[name]
    return Household(**table["household"]) if "household" in table else None


def about(name: str) -> dict[str, Any]:
    """The further arguments of `wellchem.interpret`."""
    table = TABLES[name]
    return {
        "authorities": tuple(table.get("authorities", ("us-epa",))),
        "on": table.get("on", USUAL_DAY),
        "household": household(name),
    }


@cache
def found(name: str) -> Any:
    """The interpretation of the well."""
    return wellchem.interpret(sample(name), **about(name))


@cache
def page(name: str) -> str:
    """The HTML page as plain text."""
    return plain(found(name).to_html())


def plain(html: str) -> str:
    """The words of a page, one line an element."""
    body = sub(r"(?s)<(style|svg).*?</\1>", " ", html)
    return unescape(sub(r"[ \t]+", " ", sub(r"<[^>]+>", "\n", body)))


def first_part(name: str) -> str:
    """What the household reads before what was not tested."""
    return page(name).split("What was not tested")[0]
