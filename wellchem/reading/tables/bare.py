"""Results in bare lines: "Iron 0.42 mg/L", "pH 7.1", several in one line, with nothing but a limit beside them."""

from __future__ import annotations

import re

from wellchem.models.codes import Censoring
from wellchem.reading.tables.cells import Cell, Cells, Kind, Lexicon
from wellchem.reading.tables.notes import LIMITS, RunningResult, value_and_unit
from wellchem.vocabulary import ColumnRole, Vocabulary

_LONGEST = 140  # letters of a line
_WORDS = 9  # of a name
_PROSE = 8  # words of a line that runs on into the next
_SEPARATED = re.compile(r"\s*[;•|]\s*|,\s+(?=[^\W\d])|\s+(?:and|und|et|y)\s+")
_LIMITED = re.compile(r"^[(\[]?(?P<label>[^\W\d][^\d<>≤≥()\[\]]*?)\s*[:=]?\s*(?P<number>[<>≤≥]?\s*\d[^()\[\]]*)[)\]]?$")
_MOST = {"max", "max.", "maximum", "máx", "máx.", "máximo", "höchstens"}
_OWN = (ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT)
_NUMBER = re.compile(r"[<>≤≥]?\s?[\d.,]*\d")
# Roles of words in a line above that make the numbers under it somebody else's.
_FOREIGN = {ColumnRole.LIMIT, ColumnRole.PREVIOUS, *_OWN}


def bare_results(lexicon: Lexicon, left: list[Cell]) -> list[RunningResult]:
    """The results of which a line is made and nothing else; none where anything of it is not understood.

    Each is a known name, a value, and its unit: a number without one is none, but for the pH.
    """
    text = " ".join(cell.text for cell in left).strip(" .")
    if len(text) > _LONGEST or not any(map(str.isalpha, text)):
        return []
    cells = [_one(lexicon, cell.text) for cell in left]
    if all(cells):
        return [one for one in cells if one]
    made: list[RunningResult] = []
    pending = ""
    for clause in _SEPARATED.split(text):
        pending = f"{pending}, {clause}" if pending else clause
        if one := _one(lexicon, pending):
            made.append(one)
            pending = ""
    if pending or not all(any(one.value in cell.text for cell in left) for one in made):
        return []  # a value over two cells may be two numbers
    return made


def to_choose(lexicon: Lexicon, texts: list[str]) -> bool:
    """Whether words for present and for absent stand beside each other: a mark that is not seen chooses one."""
    told = {one.censoring for text in texts if (one := lexicon.vocabulary.value(text)) is not None}
    return {Censoring.PRESENT, Censoring.ABSENT} <= told


def undecided(lexicon: Lexicon, text: str) -> bool:
    """Whether a line is a known name and numbers, without words that tell which of them is the result."""
    named = _named(lexicon, text)
    if named is None:
        return False
    rest = [word.strip("()[],;") for word in named[1].split()]
    if not any(_NUMBER.match(word) for word in rest):
        return False
    return all(_NUMBER.match(word) or lexicon.vocabulary.is_unit(word) or not word for word in rest)


def named_in_words(lexicon: Lexicon, text: str) -> bool:
    """Whether a line is a known name and, behind its colon, a word or two that are no value: "Water hardness: hard".

    The name may have a word or two behind it that are none of a name: "Hardness class: hard".
    """
    name, colon, rest = text.partition(":")
    words = name.split()
    if not colon or not 0 < len(rest.split()) <= 3 or len(rest) > 30:
        return False
    spans = (" ".join(words[:count]) for count in range(len(words), max(0, len(words) - 3), -1))
    return any(len(span) > 2 and lexicon.is_name(span) for span in spans)


def of_others(cells: Cells, row: int) -> bool:
    """Whether the lines above make a bare line somebody else's: a heading over limits, or a sentence that runs on."""
    for above in range(row - 1, -1, -1):
        line = list(cells.line(above))
        text = " ".join(cell.text for cell in line)
        if not line or bare_results(cells.lexicon, line) or (line[0].kind & Kind.NAME and len(line) > 1):
            continue
        words = text.split()
        plain = sum(word.islower() for word in words)
        if len(words) > _PROSE and plain * 2 > len(words) and text[-1] not in ".:;!?":
            return True
        roles = _roles(cells.lexicon, words)
        return bool(roles & _FOREIGN) or cells.lexicon.vocabulary.label_role(text) is not None
    return False


def _roles(lexicon: Lexicon, words: list[str]) -> set[ColumnRole]:
    """Roles of the words of a line, one to three together."""
    plain = [word.strip(".,:;()[]") for word in words]
    spans = {" ".join(plain[at : at + size]) for at in range(len(plain)) for size in (1, 2, 3)}
    spans |= {span.removesuffix("s") for span in spans}
    return {found.role for span in spans if span and (found := lexicon.column(span)) is not None}


def _named(lexicon: Lexicon, text: str) -> tuple[str, str] | None:
    """The longest known name that a text begins with, and what stands behind it."""
    words = text.split()
    for count in range(min(_WORDS, len(words) - 1), 0, -1):
        name = " ".join(words[:count]).rstrip(" :=,")
        if lexicon.is_name(name):
            return name, " ".join(words[count:]).lstrip(":= ")
    return None


def _one(lexicon: Lexicon, text: str) -> RunningResult | None:
    """The one result that a text is, or None."""
    named = _named(lexicon, text)
    if named is None:
        return None
    name, rest = named
    if to_choose(lexicon, text.split()):
        return None
    beside: dict[str, str] = {}
    parts = value_and_unit(lexicon, rest, lexicon.is_of_germs(name))
    words = rest.split()
    for place in range(1, len(words)) if parts is None else ():
        limited = _LIMITED.match(" ".join(words[place:]))
        role = _limit_role(lexicon, limited["label"].strip()) if limited else None
        if limited and role:
            parts = value_and_unit(lexicon, " ".join(words[:place]).rstrip(" ,;"))
            beside = {str(role): limited["number"].strip()} if role in _OWN else {}
            break
    if parts is None or not is_sure(lexicon.vocabulary, name, *parts):
        return None
    return RunningResult(name, *parts, beside)


def _limit_role(lexicon: Lexicon, label: str) -> ColumnRole | None:
    if label.casefold() in _MOST:
        return ColumnRole.LIMIT
    found = lexicon.column(label.rstrip(".:= "))
    return found.role if found is not None and found.role in LIMITS else None


def is_limit(lexicon: Lexicon, text: str) -> bool:
    """Whether a text is a limit with its word: "MCL 15", "max. 0.3 mg/L"."""
    limited = _LIMITED.match(text)
    return bool(limited and _limit_role(lexicon, limited["label"].strip()) is ColumnRole.LIMIT)


def is_sure(vocabulary: Vocabulary, name: str, value: str, unit: str) -> bool:
    """Whether name, value and unit are a result beyond doubt."""
    meaning = vocabulary.name(name, unit=unit)
    counted = meaning is not None and vocabulary.analytes[meaning.analyte].quantity == "count"
    said = vocabulary.value(value, presence=counted)
    if said is None or meaning is None or said.censoring is Censoring.NOT_REPORTED:
        return False
    unit = unit or said.unit_text or meaning.unit
    if said.number is not None and not unit:
        return meaning.analyte == "ph" and 0.0 < said.number < 14.0
    if said.number is None and said.censoring is Censoring.NONE:
        return False
    return not unit or vocabulary.unit(unit, meaning.analyte, meaning).problem is None
