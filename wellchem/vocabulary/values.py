"""Printed values: one cell's text to a censored number, free of unit."""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from functools import cached_property

from wellchem.models.codes import Censoring, Measured
from wellchem.vocabulary.forms import form_apart
from wellchem.vocabulary.meanings import Bound, ColumnRole, ValueMeaning
from wellchem.vocabulary.numerals import DATE, NUMBER, read_number
from wellchem.vocabulary.tables import Row
from wellchem.vocabulary.text import clean, fold

_INFINITY = float("inf")
# Digits that mean the same whatever stands around them: no sign of thousands is possible.
_PLAIN = {".": re.compile(r"-?\d+(?:\.\d*)?", re.ASCII), ",": re.compile(r"-?\d+(?:,\d*)?", re.ASCII)}
_UNCERTAINTY = re.compile(r"^\s*(?:\(\s*)?(?:±|\+/-|\+-|\+\\-|\+ ?/ ?-)\s*")
_REFERENCE = re.compile(
    r"^\s*(?:@|at\b|bei\b|a\b)\s*\d+(?:[.,]\d+)?\s*(?:°|deg\.?)?\s*[cf]?\s*$|^\s*\(\d+(?:[.,]\d+)?\s*(?:°|deg\.?)?\s*[cf]\)$"
)
_QUALIFIER = re.compile(
    r"^[\s(\[]*([a-z]{1,3}[+-]?|\^[a-z\d]{1,2}|\[\d\]|[*†‡§#^]+\d?|\{[a-z0-9]\})[)\]]*(?=[\s,;/]|$|[*†‡])[\s,;/]*"
)
_RANGE = re.compile(r"^(nd|<?\s*[\d.,]+)\s*(?:-|to|bis|a)\s*(<?\s*[\d.,]+)(?:\s*\(?a? ?range\)?)?$")
_QUOTED = re.compile(r"""^=?"(.*)"$|^'(?=[\d.<>-])""")
_LABEL = re.compile(r"^(?:rl|mdl|dl|pql|loq|lod|mrl|mda|mdc|lq|lor|at|a)[\s:=]*(?=[<\d.,])|^[:=\s]+")
# The same result again in another unit behind the first: "212 mg/L (12.4 gpg)".
_RESTATED = re.compile(r"(.*\S)\s*(?:[(\[]|=)\s*([<>]?\s*[\d.,]+)\s*([^()\[\]=\d][^()\[\]=]*)[)\]]?")
_BOX = re.compile(r"[\[(]\s*[x✓✔]?\s*[\])]|[☐□☒☑■]")
_EMPTY_BOX = re.compile(r"[\[(]\s*[\])]|[☐□]")
# What stands in brackets behind a number, or a mark of attention on either side of it.
_BRACKETED = re.compile(r"\s*[(\[]([^()\[\]]+)[)\]]")
_LABELLED = re.compile(r"([^\W\d][^\d<]*?)\s*[:=]?\s*([<>]?\s*[\d.,]+)\s*(\D.*)?")
# A number in brackets behind a result with its unit, or a bound: not the result, whatever it is. `[1]` is a footnote.
_LAST_BRACKETS = re.compile(
    r"(?P<value>.*(?:[^\W\d]|%))\s*(?!\[\d\])[(\[]\s*[<>≤≥]?\s*\d[\d.,]*(?:\s*(?:[-–]|to)\s*\d[\d.,]*)?\s*[)\]]"
    r"|(?P<plain>.*\d)\s*[(\[]\s*[<>≤≥]\s*\d[\d.,]*\s*[)\]]"
)
_UNLABELLED = re.compile(r"[(\[]\s*<?\s*[\d.,]")
_DEGREES = re.compile(r"(?:@|at)?\s*\d+(?:[.,]\d+)?\s*(?:°\s*c?|deg\.?\s*c|c)")
_ATTENTION = re.compile(r"^[!↑↓▲▼]\s*(?=[<>\d.])|(?<=\S)\s*(?:[!↑↓▲▼]+|[(\[][!↑↓▲▼]+[)\]])$")
# An uncertainty in brackets with its number, or behind the unit: "(38.4 ± 2.9) mg/L", "57 mg/L ± 5 %".
_SPREAD_IN_BRACKETS = re.compile(r"^\(([^()]+?(?:±|\+/-)[^()]+)\)")
_SPREAD_BEHIND = re.compile(r"^(-?[\d.,]+)\s*([^\W\d_][^±+()]*?|%)\s*(±|\+/-)\s*([\d.,]+(?:\s*%)?)(?:\s*\2)?$")
_MARKED = re.compile(r"^([*†‡§]{1,3})\s*(?=[<>\d.])")
# A qualifier before its number: "J 0.05", "< J 0.05", "U0.05"; without a blank only before a decimal fraction, as
# letters and whole digits together name a sample.
_QUALIFIED = re.compile(r"^([<>]?)\s*([A-Z]{1,2}[+-]?)(?:\s+(?=[<>]?\s?[\d.])|(?=\d*[.,]\d))")
_SIGN_BEHIND = re.compile(r"^([\d.,]+)\s*([<>])$")
_RAISED_POINT = re.compile(r"(?<=\d)·(?=\d)(?!\s*10\s*\^)")
_OPENS_NUMBER = set("0123456789.,<>≤≥~")
_SIGNS = {"less", "greater", "about"}
_BARE = {"<", ">"}
_PLACES = {"in_field": Measured.FIELD, "in_laboratory": Measured.LABORATORY}
_BESIDE = {*_SIGNS, "rating", "limit", *_PLACES}  # words that are no value by themselves
_THERE = ("present", "too_numerous")
_FOUND = ("absent", "not_detected", *_THERE)  # words behind a number that says the same
_LIMITS = (
    ColumnRole.REPORTING_LIMIT,
    ColumnRole.DETECTION_LIMIT,
    ColumnRole.LIMIT,
    ColumnRole.PREVIOUS,
    ColumnRole.STATISTIC,
)
_NON_DETECTS = {"not_detected", "below_detection", "below_reporting"}


@dataclass
class Values:
    """Words that stand for a value, and the grammar of numbers."""

    rows: Iterable[Row]
    is_unit: Callable[[str], bool]
    is_qualifier: Callable[[str], bool]
    is_before_number: Callable[[str], bool]
    role_of: Callable[[str], ColumnRole | None]
    _words: dict[str, str] = field(init=False, default_factory=dict)
    _compared: re.Pattern[str] = field(init=False)
    _about: re.Pattern[str] = field(init=False)
    _known: dict[tuple[str, str | None, bool], ValueMeaning | None] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        self._words = {fold(row["printed"]).replace("< ", "<"): row["meaning"] for row in self.rows}
        self._compared, self._about = self._opening("less", "greater"), self._opening("about")

    def _opening(self, *meanings: str) -> re.Pattern[str]:
        """A pattern of the table's signs and words that stand before a number."""
        found = sorted((word for word, meaning in self._words.items() if meaning in meanings), key=len, reverse=True)
        return re.compile(rf"^({'|'.join(map(re.escape, found))})\s*(?=[-+]?[\d.,(\[])")

    @cached_property
    def compared(self) -> dict[str, Censoring]:
        """Signs that say the same before every number: no word of the table is one with a number behind it."""
        worded = [word for word in self._words if any(letter.isdigit() for letter in word)]
        signs = sorted(_BARE & {sign for sign in self._words if self._words[sign] in ("less", "greater")})
        return {
            sign: Censoring.LEFT if self._words[sign] == "less" else Censoring.RIGHT
            for sign in signs
            if not any(word.startswith(sign) for word in worded)
        }

    def meaning(self, text: str, decimal: str | None, presence: bool) -> ValueMeaning | None:
        """What one cell says, or None where it is no value (see Vocabulary.value)."""
        if decimal is not None and _PLAIN[decimal].fullmatch(text):  # most cells of most files: not worth a memory
            number = float(text.replace(",", "."))
            return ValueMeaning(Censoring.NONE, number, number, number)
        key = (text, decimal, presence)
        if key not in self._known:
            self._known[key] = self._meaning(clean(text), decimal, presence)
        return self._known[key]

    def _meaning(self, printed: str, decimal: str | None, presence: bool) -> ValueMeaning | None:
        printed = _RAISED_POINT.sub(".", _QUOTED.sub(r"\1", printed).strip())
        printed = _SIGN_BEHIND.sub(r"\2\1", _ATTENTION.sub("", printed))
        printed = _SPREAD_BEHIND.sub(r"\1 \3 \4 \2", _SPREAD_IN_BRACKETS.sub(r"\1", printed))
        if marked := _MARKED.match(printed):
            made = self._meaning(printed[marked.end() :], decimal, presence)
            return replace(made, qualifiers=(marked.group(1), *made.qualifiers)) if made else None
        text = fold(printed)
        if not text:
            return ValueMeaning(Censoring.NOT_REPORTED, note="blank")
        if _BOX.match(text) or _EMPTY_BOX.search(text):  # the word of an empty box does not hold
            return self._ticked(text, presence)
        if (word := self._word(text, presence)) is not None:
            return word
        if DATE.match(text) and not re.fullmatch(r"\d{1,3}[.]\d{3}[.]\d{3}", text):
            return None
        if found := _RANGE.match(text):
            return self._range(found.group(1), found.group(2), decimal)
        if (lead := self._leading_word(printed, text, decimal, presence)) is not None:
            return lead
        if (code := _QUALIFIED.match(printed)) and self.is_before_number(code[2]):
            made = self._numeric(number := code[1] + printed[code.end() :], fold(number), decimal)
            return replace(made, qualifiers=(code[2], *made.qualifiers)) if made else None
        if (beside := self._with_brackets(printed, decimal, presence)) is not None:
            return beside
        if (last := _LAST_BRACKETS.fullmatch(printed)) and text[0] in _OPENS_NUMBER:
            first = self._meaning(last["value"] or last["plain"], decimal, presence)
            return replace(first, note="number_behind") if first and first.number is not None else None
        if (twice := _RESTATED.fullmatch(printed)) and self._is_unit(twice.group(3)):
            first = self._numeric(twice.group(1), fold(twice.group(1)), decimal)
            return replace(first, note="restated") if first and first.unit_text else None
        if (plain := self._numeric(printed, text, decimal)) is not None or (formed := form_apart(printed)) is None:
            return plain
        bare = self._meaning(formed[0], decimal, presence)  # "12.4 as N"
        return replace(bare, basis=formed[1]) if bare and not bare.basis else None

    def _with_brackets(self, printed: str, decimal: str | None, presence: bool) -> ValueMeaning | None:
        """A number with a limit, a rating, its place or temperature in brackets: `0.5 (RL 0.1)`, `7.2 (21 °C)`."""
        place = None
        limits: dict[ColumnRole, str] = {}
        rest = printed
        for found in _BRACKETED.finditer(printed):
            inside = found.group(1).strip()
            labelled = _LABELLED.fullmatch(inside)
            role = self.role_of(labelled.group(1).strip(" .:=")) if labelled else None
            if labelled and role in _LIMITS:
                limits.setdefault(role, inside[labelled.start(2) :])
            elif labelled and self._words.get(fold(labelled.group(1))) == "limit":
                pass
            elif (word := self._words.get(fold(inside))) in _PLACES:
                place = _PLACES[str(word)]
            elif not _DEGREES.fullmatch(fold(inside)) and word != "rating":
                continue
            rest = rest.replace(found.group(), "", 1)
        head, _, last = rest.rpartition(" ")
        if head and (word := self._words.get(fold(last))) in ("rating", *_PLACES):
            rest, place = head.rstrip(" -"), place or _PLACES.get(str(word))
        if rest == printed or not any(letter.isdigit() for letter in rest):
            return None
        made = self._meaning(rest.strip(), decimal, presence)
        if made is None or made.number is None:
            return None
        numbers = {role: self._numeric(text, fold(text), decimal) for role, text in limits.items()}
        reporting, detection = (
            limit.number
            if (limit := numbers.get(role)) and fold(limit.unit_text) in ("", fold(made.unit_text))
            else None
            for role in (ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT)
        )  # a limit of law or an earlier result is nothing of this result
        return replace(made, reporting_limit=reporting, detection_limit=detection, measured=place or made.measured)

    def _ticked(self, text: str, presence: bool) -> ValueMeaning | None:
        """The one word of several that is ticked: `[ ] Present [X] Absent`."""
        boxes = _BOX.findall(text)
        words = [word.strip(" ,;/") for word in _BOX.split(text)]
        words = words[1:] if not words[0] else words[:-1] if not words[-1] else []  # before or behind their boxes
        ticked = [word for box, word in zip(boxes, words, strict=False) if not _EMPTY_BOX.fullmatch(box)]
        return self._word(ticked[0], presence) if len(ticked) == 1 and len(words) == len(boxes) else None

    def _word(self, text: str, presence: bool) -> ValueMeaning | None:
        """A cell that is a word of the table, a unit or a qualifier after it or not."""
        meaning = self._words.get(text.replace("≤", "<").replace("< ", "<")) or self._words.get(text.strip("()[]*. "))
        if meaning is None or meaning in _BESIDE:
            return None
        if meaning in ("absent_short", "present_short"):
            return _WORDS[meaning.removesuffix("_short")] if presence else None
        if meaning == "absent_or_blank":
            return _WORDS["absent"] if presence else replace(_WORDS["blank"], note="none")
        made = _WORDS[meaning]
        return replace(made, qualifiers=("U",)) if text == "u" else made

    def _leading_word(self, printed: str, text: str, decimal: str | None, presence: bool) -> ValueMeaning | None:
        """`ND (0.5)`, `ND<0.5`, `Absent/100 mL`, `ND U`, `Present, confluent`: a word and what follows it."""
        for cut in range(len(text) - 1, 0, -1):
            if text[cut - 1].isalnum() and text[cut].isalnum():
                continue
            head = text[:cut].lstrip(" ,;:@(=").rstrip(" ,;:@(=<").replace("< ", "<")
            word = self._words.get(head)
            if word is None or word in _BESIDE or head in ("-", ".", "*", "/", "?", "--") or word.endswith("_short"):
                continue
            rest = text[cut:].strip(" ,;:@=")
            made = self._word(head, presence)
            if made is None:
                return None
            if word in _NON_DETECTS or word == "trace":
                bare = _LABEL.sub("", rest.strip("()[] @"))
                number = self._numeric(bare, bare, decimal)
                if number and number.number is not None and number.censoring in (Censoring.NONE, Censoring.LEFT):
                    if number.number < 0:
                        return None  # "ND-0.11 (a)" is a range, whatever is behind it
                    note = "bracketed_bound" if _UNLABELLED.match(text.removeprefix(head).lstrip()) else made.note
                    return replace(
                        made, number=number.number, high=number.number, unit_text=number.unit_text, note=note
                    )
            original = printed[cut:] if len(printed) == len(text) else text[cut:]
            codes = self._qualifiers(original)
            if codes is not None:
                return replace(made, qualifiers=(*made.qualifiers, *codes))
            if self._words.get(rest.strip("()[] ")) == word:
                return made
            if word == "too_numerous":
                number = self._numeric(rest.strip("()[] "), rest.strip("()[] "), decimal)
                if number and number.censoring is Censoring.RIGHT:
                    return replace(made, number=number.number, low=number.number)
            if word == "present" and re.match(r"[(\[]\s*>?\s*\d", rest):
                number = self._numeric(rest.strip("()[] "), rest.strip("()[] "), decimal)
                return number if number and number.number and number.censoring is not Censoring.LEFT else None
            if word == "absent" and rest.strip("()[] ") in ("0", "<1", "< 1", "<1.0", "<1.1"):
                return made
            unit = original
            unit = re.sub(r"^[\s,;:]*(?:in|per|dans|en|pro)\s+", "/", unit.strip())
            unit = unit if unit.startswith("/") or not unit[:1].isdigit() else "/" + unit
            if self.is_unit(unit):
                return replace(made, unit_text=unit.strip(" ()"))
        return None

    def _range(self, first: str, second: str, decimal: str | None) -> ValueMeaning | None:
        low = 0.0 if first.startswith(("nd", "<")) else self._plain(first, decimal)
        high = self._plain(second.lstrip("< "), decimal)
        if low is None or high is None or high < low or (1900 <= low <= 2100 and 1900 <= high <= 2100):
            return None
        return ValueMeaning(Censoring.INTERVAL, None, low, high, note="range")

    def _plain(self, text: str, decimal: str | None) -> float | None:
        found = NUMBER.fullmatch(text.strip())
        read = found and read_number(found.group(2), decimal)
        return read if isinstance(read, float) else None

    def _numeric(self, printed: str, text: str, decimal: str | None) -> ValueMeaning | None:
        """A number with what may stand around it: comparison, uncertainty, qualifiers, unit, temperature."""
        note, censoring, rest = "", Censoring.NONE, text
        if compared := self._compared.match(rest):
            censoring = Censoring.LEFT if self._words[compared.group(1)] == "less" else Censoring.RIGHT
            rest = rest[compared.end() :]
        elif about := self._about.match(rest):
            note, rest = "approximate", rest[about.end() :]
        if rest[:1] + rest[-1:] in ("[]", "()") and NUMBER.fullmatch(rest[1:-1]):
            note, rest = "brackets", rest[1:-1]
        found = NUMBER.match(rest)
        if found is None or not any(letter.isdigit() for letter in found.group(2)):
            return None
        number = read_number(found.group(2), decimal)
        if number is None:
            return None
        rest = rest[found.end() :]
        if isinstance(number, str):
            return ValueMeaning(Censoring.NOT_REPORTED, note="ambiguous_decimal")
        number *= -1.0 if found.group(1) == "-" else 1.0
        number = float(f"{number!r}e{found.group(3)}") if found.group(3) else number
        uncertainty = None
        if plus := _UNCERTAINTY.match(rest):
            more = NUMBER.match(rest[plus.end() :])
            spread = read_number(more.group(2), decimal) if more else None
            if more is None or not isinstance(spread, float):
                return None
            uncertainty = float(f"{spread!r}e{more.group(3)}") if more.group(3) else spread
            rest = rest[plus.end() + more.end() :].lstrip(")")
            if share := re.match(r"\s*%\s*\)?", rest):
                uncertainty, rest = abs(number) * uncertainty / 100.0, rest[share.end() :]
        if rest and (rest[0].isdigit() or rest[0] in ".,'"):
            return None
        if _REFERENCE.match(rest):
            note, rest = "temperature", ""
        elif self._words.get(rest.strip(" ()")) == "about":
            note, rest = "approximate", ""
        elif len(word := rest.strip(" ()[],;–-")) > 1 and (said := self._words.get(word)) in _FOUND:
            if (said in _THERE) == (number == 0 or censoring is Censoring.LEFT):
                return None  # the number and the word contradict each other
            rest = ""
        codes, unit = self._tail(printed, rest)
        if codes is None:
            return None
        low, high = {
            Censoring.LEFT: (0.0, number),
            Censoring.RIGHT: (number, _INFINITY),
        }.get(censoring, (number, number))
        if censoring is Censoring.LEFT and number < 0:
            low = -_INFINITY
        detected = False if censoring is Censoring.LEFT else True if censoring is Censoring.RIGHT else None
        return ValueMeaning(censoring, number, low, high, uncertainty, unit, codes, note, detected)

    def _tail(self, printed: str, rest: str) -> tuple[tuple[str, ...] | None, str]:
        """What follows the number: qualifiers, a unit, or both in either order; None where it is neither."""
        if not rest.strip():
            return (), ""
        original = printed[len(printed) - len(rest) :] if fold(printed).endswith(rest) else rest
        codes, alone = self._qualifiers(original), original.strip(" ()[]*†‡§")
        unit, _, last = original.strip().rpartition(" ")
        short = len(last) <= 2 and last not in ("C", "F")
        if unit and short and self._is_unit(unit) and (more := self._qualifiers(last)) is not None:
            return more, unit
        if codes is None or len(alone) > 1 or alone in ("C", "F", "%"):  # one letter alone is a qualifier first
            starred = original.rstrip("*†‡§ ")
            if starred != original and self._is_unit(starred):
                return (original[len(starred) :].strip(),), starred.strip()
            if self._is_unit(original):
                return (), original.strip()
        if codes is not None:
            return codes, ""
        tokens = original.split()
        for cut in range(1, len(tokens)):
            left, right = " ".join(tokens[:cut]), " ".join(tokens[cut:])
            if self._is_unit(left) and (codes := self._qualifiers(right)) is not None:
                return codes, left
            if self._is_unit(right) and (codes := self._qualifiers(left)) is not None:
                return codes, right
        return None, ""

    def _is_unit(self, text: str) -> bool:
        """Whether what follows a number is a unit: it has letters, or is a sign of one."""
        return any(letter.isalpha() or letter in "%‰°" for letter in text) and self.is_unit(text)

    def _qualifiers(self, text: str) -> tuple[str, ...] | None:
        """Qualifier codes and footnote marks, or None where the text holds anything else."""
        codes: list[str] = []
        rest = text.strip(" ,;")
        while rest:
            found = _QUALIFIER.match(rest.lower())
            if found is None:
                return None
            code = rest[found.start(1) : found.end(1)]
            if code[0].isalpha() and (not self.is_qualifier(code) or (len(code) > 1 and self.is_unit(code))):
                return None
            codes.append(code.strip("^[]") or code)
            rest = rest[found.end() :].strip(" ,;/)")
        return tuple(codes)


_LEFT = ValueMeaning(Censoring.LEFT, None, 0.0, None, detected=False)
_MISSING = ValueMeaning(Censoring.NOT_REPORTED)
_WORDS = {
    "not_detected": _LEFT,
    "below_detection": replace(_LEFT, bound=Bound.DETECTION),
    "below_reporting": replace(_LEFT, bound=Bound.REPORTING),
    "trace": replace(_LEFT, bound=Bound.REPORTING, detected=True, note="trace"),
    "absent": ValueMeaning(Censoring.ABSENT, low=0.0, high=0.0, detected=False),
    "present": ValueMeaning(Censoring.PRESENT, detected=True),
    "too_numerous": ValueMeaning(Censoring.RIGHT, None, None, _INFINITY, note="too_numerous", detected=True),
    "above": ValueMeaning(Censoring.RIGHT, None, None, _INFINITY, note="above_range", detected=True),
    "noted": replace(_MISSING, note="noted"),
    "confluent": replace(_MISSING, note="confluent"),
    "invalid": replace(_MISSING, note="invalid"),
    "not_analysed": replace(_MISSING, note="not_analysed"),
    "blank": replace(_MISSING, note="blank"),
}
