"""Words around the tables: legends of qualifiers, notes on units, titles and footers; and results in running lines."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from wellchem.models.codes import Censoring
from wellchem.reading.tables.cells import Lexicon
from wellchem.vocabulary import ColumnRole

LIMITS = (ColumnRole.LIMIT, ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT, ColumnRole.PREVIOUS)

_ENTRY = re.compile(
    r"(?:^|[;,|•·.]\s+|\s{2,})(?P<code>\*{1,3}|†|‡|(?:[A-Za-z]\.\s?){2,3}|[A-Za-z<>]{1,5}\*?(?:\s?[,/]\s?[A-Z]{1,3})*|\d{1,2}\)?|\([a-z0-9]\))\s*(?:=|:|[-–—]{1,2}(?=\s)|means\b|indicates\b)\s*"
    r"(?P<meaning>[^\W\d].*?)(?=(?:[;|•·.]|,)\s*(?:\*{1,3}|(?:[A-Za-z]\.\s?){2,3}|[A-Z]{1,5}\*?)\s*(?:=|:|[-–—](?=\s))|\s{2,}|$)"
)
_STARRED = re.compile(r"^(?P<code>\*{1,3}|†|‡|§)\s*(?P<meaning>[^\W\d].+)$")
_UNIT_NOTE = re.compile(
    r"\b(?:results?|values?|concentrations?|units?|r[ée]sultats?|concentraci[oó]n(?:es)?|resultados|valeurs|ergebnisse|angaben|werte|"
    r"konzentrationen|einheiten?|unidades|unit[ée]s?)\b(?:[^.;]*?\b(?:in|en|as)\b|[^.;:]{0,30}:)\s+(?P<unit>[^\s,;()]+(?:\s?/\s?[^\s,;().]+)?)",
    re.IGNORECASE,
)
_TITLE_UNIT = re.compile(
    r"^(?P<title>[^\W\d]\D*?)\s*(?:[(\[]\s*(?P<within>[^()\[\]]+?)\s*[)\]]|(?:[,:–—-]|\b(?:in|en)\b)\s*(?P<behind>\S+))$"
)
_DOTS = re.compile(r"^(?P<name>[^\W\d].*?)\s*(?:\.\s?){3,}\s*(?P<rest>\S.*)$")
_SENTENCE = re.compile(
    r"^(?:the |your |le |la |votre |der |die |das |ihr |el |su )?(?P<name>[^\W\d].{0,60}?)"
    r"(?: (?:level|concentration|content|result))?(?: (?:of|in) (?:your|the|this)(?: well)?(?: water| sample)+)?\s+"
    r"(?:(?:was|were|is) (?:found|measured|present) at|was found to be|measured|tested at|came back at|was|were|is"
    r"|est de|était de|betrug|beträgt|fue de|es de)\s+(?P<rest>\S.{0,90}?)\.?$",
    re.IGNORECASE,
)
# A remark on the number closes the sentence: "12.4 mg/L, above the standard of 10 mg/L".
_REMARK = re.compile(
    r"(.{1,40}?)(?:,? (?:which |well |far )?|\s+(?=\())(?:is |was |exceed|above|below|over|under|within|\().*$"
)
# Findings before names: "We found 4.2 mg/L of fluoride", "No E. coli were found". Behind the name stands
# nothing but the household's own water: "in the blank" and "above 10 mg/L" make it another statement.
_FOUND_IN = r"(?:,? (?:in|from) (?:your|the|this)(?: well| tap| drinking)?(?: water| sample)+)?"
_WATER = r"^(?:your|this|the)(?: well| tap)?(?: water| sample)+ "
_WE = r"^(?:we|the lab(?:oratory)?|(?:the|our|this) (?:test|analysis)) (?:has |have )?(?:found|measured|detected) "
_NAME = r"(?P<name>[^\W\d].{0,40}?)(?: (?:level|concentration|content))?"
_VALUE, _UNIT = r"(?P<value>(?:[<>≤≥]\s*)?\d[\d.,]*)", r"(?P<unit>[^\s\d]\S*(?: as \S+)?)"
_FINDINGS = tuple(
    re.compile(pattern + r"\.?$", re.IGNORECASE)
    for pattern in (
        rf"(?:{_WE}|{_WATER}(?:contains|contained|has|had) ){_VALUE}\s*{_UNIT}\s+(?:of )?{_NAME}{_FOUND_IN}",
        rf"{_WE}{_NAME} at {_VALUE}\s*{_UNIT}{_FOUND_IN}",
        rf"{_WATER}(?:has|had|shows|showed) an? (?:total )?{_NAME} of {_VALUE}(?:\s*{_UNIT})?",
        rf"{_WATER}(?:has |have )?tested (?P<value>positive|negative) for (?P<name>[^\W\d].{{0,40}}?)",
        r"^no (?P<name>[^\W\d].{0,40}?) (?:was|were|has been|have been) (?P<absent>found|detected|present)" + _FOUND_IN,
    )
)
# What makes a line that names an analyte worth a look: an amount, or a word of presence.
_AMOUNT = re.compile(r"(?<![\w.,])[<>≤≥]?\s?\d[\d.,]*\s?(?P<unit>%|[^\W\d][^\s;()]*(?:\s?/\s?[^\s;()]+)?)")
_PH = re.compile(r"\bpH\b[^.;]{0,30}?(?<![\w.,])\d{1,2}[.,]\d")  # has no unit
_WORD = re.compile(r"[^\s,;:()]+")
_LONGEST_NAME = 4  # words
_NAMED = re.compile(r"^(?P<name>[^\W\d][^:=]{0,60}?)\s*[:=]\s+(?P<rest>\S.{0,40})$")
_REST = re.compile(
    r"^(?P<value>(?:[<>≤≥~]\s*)?[-+]?\d[\d.,]*(?:\s*[x×]\s*10\^?-?\d+|[eE][-+]?\d+)?|[^\W\d][^\d]*?)(?:\s+(?P<unit>\S.*))?$"
)


@dataclass(frozen=True)
class RunningResult:
    """A result in a running line: what was printed for its name, value and unit, and limits of detection beside it."""

    name: str
    value: str
    unit: str
    beside: dict[str, str] = field(default_factory=dict)


def legend_in(lexicon: Lexicon, text: str) -> dict[str, str]:
    """Qualifiers that a line explains: code and meaning. Empty where the line is no legend."""
    starred = _STARRED.match(text)
    if starred:
        return {starred["code"]: starred["meaning"].strip()}
    found = {
        code.strip(): entry["meaning"].strip()
        for entry in _ENTRY.finditer(text)
        for code in re.split(r"[,/]", entry["code"].rstrip(")"))
    }
    return {code: meaning for code, meaning in found.items() if _explains(lexicon, code, meaning)}


def _explains(lexicon: Lexicon, code: str, meaning: str) -> bool:
    """Whether the words after a code explain it: the code is a known one, or a lone mark."""
    if lexicon.is_name(code) and lexicon.vocabulary.qualifier(code) is None:
        return False
    if len(meaning) <= 2:
        return False
    known = lexicon.vocabulary.qualifier(code) is not None
    dotted = code.endswith(".") and lexicon.vocabulary.value(code) is not None  # "n.b."
    return known or dotted or not code[0].isalnum() or code.isdigit() or code.isupper()


def unit_note(lexicon: Lexicon, text: str) -> str:
    """The unit in which a note says that all results are printed, else empty."""
    found = _UNIT_NOTE.search(text)
    if not found:
        return ""
    unit = found["unit"].rstrip(".:")
    return unit if lexicon.vocabulary.is_unit(unit) and len(unit) > 1 else ""


def title_and_unit(lexicon: Lexicon, text: str) -> tuple[str, str] | None:
    """A group's title and the unit that it gives for the rows beneath: "Metals (µg/L)". None where it gives none."""
    found = _TITLE_UNIT.match(text) if len(text) < 60 else None
    if found is None:
        return None
    title, unit = found["title"], found["within"] or found["behind"]
    parted = "/" in unit or unit.casefold() in ("ppm", "ppb", "ppt")  # a letter alone is a unit of many things
    return (title, unit) if parted and lexicon.vocabulary.is_unit(unit) and not lexicon.is_name(title) else None


def running_result(lexicon: Lexicon, text: str) -> RunningResult | None:
    """The one result of a line with an explicit grammar: dots, `name: value unit`, or `the name was value unit`."""
    if len(text) > 200:
        return None
    for pattern in _FINDINGS:
        found = pattern.match(text)
        if found and lexicon.is_name(found["name"]):
            said = {key: (held or "").rstrip(".,") for key, held in found.groupdict().items()}
            if "absent" in said:
                return RunningResult(said["name"], f"not {said['absent'].lower()}", "")
            unit = said.get("unit", "")
            known = lexicon.vocabulary.is_unit(unit) if unit else _is_unitless(lexicon, said["name"], said["value"])
            if known and lexicon.vocabulary.value(said["value"]) is not None:
                return RunningResult(said["name"], said["value"], unit)
    for pattern in (_DOTS, _SENTENCE, _NAMED):
        found = pattern.match(text)
        if found and lexicon.is_name(found["name"].strip()):
            rest, beside = _limit_apart(lexicon, found["rest"].strip().rstrip("."))
            cut = _REMARK.match(rest) if pattern is _SENTENCE else None
            answers = lexicon.is_of_germs(found["name"].strip())
            parts = value_and_unit(lexicon, rest, answers) or (cut and value_and_unit(lexicon, cut[1]))
            if parts:
                return RunningResult(found["name"].strip(), *parts, beside)
    return None


def tells_finding(lexicon: Lexicon, text: str) -> bool:
    """Whether words name a known analyte together with an amount or a word of presence: no layout, even if not read."""
    words = [word.rstrip(".") if word.count(".") == 1 else word for word in _WORD.findall(text)]
    if not tells_amount(lexicon, text) and not any(_of_presence(lexicon, word) for word in words):
        return False
    spans = (
        " ".join(words[at : at + size])
        for at in range(len(words))
        for size in range(1, min(_LONGEST_NAME, len(words) - at) + 1)
    )
    return any((len(span) > 2 or span == "pH") and lexicon.is_name(span) for span in spans)


def tells_amount(lexicon: Lexicon, text: str) -> bool:
    """Whether a number stands before a unit somewhere in the text, or behind the pH."""
    units = (found["unit"].rstrip(".,:") for found in _AMOUNT.finditer(text))
    return any(map(lexicon.vocabulary.is_unit, units)) or bool(_PH.search(text))


def _of_presence(lexicon: Lexicon, word: str) -> bool:
    """Whether one word of a sentence can tell that something is there or not."""
    value = lexicon.vocabulary.value(word) if len(word) > 3 and word.isalpha() else None
    return value is not None and value.censoring in (Censoring.PRESENT, Censoring.ABSENT, Censoring.LEFT)


def _limit_apart(lexicon: Lexicon, text: str) -> tuple[str, dict[str, str]]:
    """The text without a limit that stands in parentheses behind it ("0.4 mg/L (guideline 0.3)"), and one of detection.

    A reporting or detection limit is the result's own; any other says nothing of it.
    """
    head, found, inside = text.rpartition("(")
    label = re.split(r"(?=[\d<>])", inside, maxsplit=1)[0]
    words = label.split() if found else []
    for count in range(min(3, len(words)), 0, -1):
        meaning = lexicon.column(" ".join(words[:count]).rstrip(":= "))
        if meaning is not None and meaning.role in LIMITS:
            number = inside[len(label) :].rstrip(") ")
            own = meaning.role in (ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT) and number
            return head.strip(), {str(meaning.role): number} if own else {}
    return text, {}


def _is_unitless(lexicon: Lexicon, name: str, value: str) -> bool:
    """Whether a sentence needs no unit: a word about organisms, a number of the pH."""
    found = lexicon.vocabulary.name(name)
    return lexicon.is_of_germs(name) if value.isalpha() else found is not None and found.analyte == "ph"


def value_and_unit(lexicon: Lexicon, text: str, answers: bool = False) -> tuple[str, str] | None:
    """A printed value and the unit behind it, or None where the text is not that and nothing else.

    `answers` tells that of organisms is said whether they are there: "yes", "no".
    """
    if lexicon.vocabulary.value(text, presence=answers) is not None:
        return text, ""
    found = _REST.match(text)
    if not found or lexicon.vocabulary.value(found["value"]) is None:
        return None
    unit = (found["unit"] or "").strip()
    if unit and not (lexicon.vocabulary.is_unit(unit) and any(sign.isalpha() or sign in "%°/" for sign in unit)):
        return None
    return found["value"], unit
