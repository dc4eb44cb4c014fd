"""What a spreadsheet's number format shows, where that is something else than the number itself.

The format codes are those of ECMA-376 Part 1 (5th edition, 2016), section 18.8.31.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

_TOKEN = re.compile(
    r'"(?P<quoted>[^"]*)"|\\(?P<escaped>.)|_.|\*.|\[(?P<bracket>[^\]]*)\]|(?P<general>General)|'
    r"(?P<exponent>[Ee][+-]0+)|(?P<digit>[0#?])|(?P<point>\.)|(?P<comma>,)|(?P<percent>%)|(?P<text>@)|(?P<literal>.)",
    re.DOTALL,
)
_CONDITION = re.compile(r"(<=|>=|<>|<|>|=)\s*(-?[\d.]+)")
_TESTS = {
    "<": lambda value, bound: value < bound,
    ">": lambda value, bound: value > bound,
    "<=": lambda value, bound: value <= bound,
    ">=": lambda value, bound: value >= bound,
    "=": lambda value, bound: value == bound,
    "<>": lambda value, bound: value != bound,
}
# Literals that write a sign or a blank and so say nothing beside the number.
_SIGNS = re.compile(r"[-+() \u00a0'\u2212]*")


@dataclass(frozen=True)
class _Section:
    """One part of a format: literals before, inside and after the digits, and how the number is scaled."""

    condition: tuple[str, float] | None
    before: str
    pattern: str
    after: str
    scale: int
    percent: bool
    text: bool

    def applies(self, value: float) -> bool:
        return self.condition is None or bool(_TESTS[self.condition[0]](value, self.condition[1]))


def shown(code: str, value: float, plain: str) -> str | None:
    """The text that format `code` shows for `value`, written in full as `plain`; None where that is the number alone.

    Rounding and thousands separators are not something else. An empty text means that the format hides the number.
    """
    if code == "General":
        return None
    sections = _sections(code)
    section, negative = _choose(sections, value)
    if section.text:
        return None
    if not section.pattern and not section.percent:
        return section.before
    before, after = section.before, section.after
    integer_zeros = section.pattern.split(".")[0].count("0")
    padded = "." not in section.pattern and integer_zeros > 1
    literal = not (_SIGNS.fullmatch(before) and _SIGNS.fullmatch(after))
    inside = any(character not in "0#?.Ee+-General" for character in section.pattern)
    if not (literal or section.percent or section.scale or inside or padded):
        return None
    number = plain
    if section.percent or section.scale:
        scaled = Decimal(plain) * (Decimal(100) if section.percent else 1) / Decimal(1000) ** section.scale
        number = format(scaled.normalize(), "f")
    if (padded or inside) and float(number) == int(float(number)):
        number = _filled(section.pattern, str(abs(int(float(number)))), number.startswith("-"))
    if negative:
        number = number.lstrip("-")
    return f"{before}{number}{'%' if section.percent else ''}{after}".strip()


def _choose(sections: tuple[_Section, ...], value: float) -> tuple[_Section, bool]:
    """The section for a value, and whether the section itself writes the sign."""
    if any(section.condition for section in sections):
        for section in sections:
            if section.applies(value):
                return section, False
        return sections[-1], False
    if value < 0 and len(sections) > 1:
        return sections[1], True
    if value == 0 and len(sections) > 2:
        return sections[2], False
    return sections[0], False


def _filled(pattern: str, digits: str, negative: bool) -> str:
    """Digits put into a pattern with literals from the right, as in a code `00-000`."""
    rest = list(digits)
    written: list[str] = []
    for character in reversed(pattern):
        if character in "0#?":
            if rest:
                written.append(rest.pop())
            elif character == "0":
                written.append("0")
        else:
            written.append(character)
    return ("-" if negative else "") + "".join(rest) + "".join(reversed(written))


@lru_cache(maxsize=4096)
def _sections(code: str) -> tuple[_Section, ...]:
    """The sections of a format code, without the one for text."""
    parts: list[str] = [""]
    for match in _TOKEN.finditer(code):
        if match["literal"] == ";":
            parts.append("")
        else:
            parts[-1] += match[0]
    sections = [_section(part) for part in parts[:4]]
    return tuple(sections[:3])


def _section(part: str) -> _Section:
    condition: tuple[str, float] | None = None
    before, pattern, after, scale, percent, text = "", "", "", 0, False, False
    for match in _TOKEN.finditer(part):
        literal = match["quoted"] or match["escaped"] or match["literal"] or ""
        if match["bracket"] is not None:
            found = _CONDITION.fullmatch(match["bracket"].strip())
            if found:
                condition = (found[1], float(found[2]))
            elif match["bracket"].startswith("$"):
                literal = match["bracket"][1:].split("-")[0]
        if match["digit"] or match["point"] or match["exponent"] or match["general"]:
            pattern, after = pattern + after + match[0], ""  # a literal between digits belongs to the pattern
            scale = 0
        elif match["comma"] and pattern:
            scale += 1  # commas behind the last digit divide by a thousand each
        elif match["percent"]:
            percent = True
        elif match["text"]:
            text = True
        elif literal and pattern:
            after += literal
        elif literal:
            before += literal
    return _Section(condition, before, pattern, after, scale, percent, text)
