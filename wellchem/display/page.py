"""One self-contained HTML page in two halves: the household's, then the practitioner's."""

from __future__ import annotations

from html import escape
from pathlib import Path

from wellchem.display import household, practitioner, words
from wellchem.models.finding import Interpretation

_STYLE = Path(__file__).with_name("style.css")


def render(finding: Interpretation) -> str:
    """The page as text; it loads nothing from anywhere."""
    title = f"Well water, {finding.sample.site or finding.sample.id or 'one sample'}, {words.day(finding.on)}"
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(title)}</title><style>{_STYLE.read_text(encoding='utf-8')}</style></head><body>"
        f'<section>{household.render(finding)}</section><section class="half">{practitioner.render(finding)}</section>'
        "</body></html>\n"
    )
