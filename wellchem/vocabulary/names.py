"""Printed names of analytes: a grammar in which every word of the name must be explained.

A name is one analyte's spelling (or several of the same one: "Iron (Fe)"), and around it words of known kinds:
fraction, chemical form, unit, reference temperature, method, field or laboratory. A word left over means that the name
is unknown: what is only similar is never taken for it.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace

from wellchem.models.codes import Fraction, Measured, SamplingPoint
from wellchem.vocabulary.analytes import Analyte
from wellchem.vocabulary.forms import form_factor, form_of, opened_form
from wellchem.vocabulary.meanings import ColumnRole, Companion, NameMeaning
from wellchem.vocabulary.name_patterns import (
    BARE_LIMIT,
    CHARGE,
    DURATION,
    EMISSION_LINE,
    FILTER,
    LEADER,
    LIMIT,
    MARKS,
    METHOD,
    TEMPERATURE,
    WORD,
)
from wellchem.vocabulary.suggestions import Suggestions
from wellchem.vocabulary.tables import Row
from wellchem.vocabulary.text import clean, fold, squash
from wellchem.vocabulary.units import Units, kinds_of

_LIMITED_GROUPS = ("metal", "major ion", "nutrient", "inorganic")
_LIMITS = (ColumnRole.LIMIT, ColumnRole.REPORTING_LIMIT, ColumnRole.DETECTION_LIMIT, ColumnRole.STATISTIC)
_LONGEST, _WAYS = 28, 4  # words of a name; ways of reading it that are kept


@dataclass(frozen=True)
class Spelling:
    """One spelling of an analyte (or of a family whose fraction tells which one), with what it prints or suggests."""

    analyte: str
    fraction: Fraction | None
    basis: str | None
    supposed: str | None
    measured: Measured | None
    assumption: str
    letters: str = ""
    symbol: bool = False


@dataclass(frozen=True)
class _Word:
    text: str
    folded: str
    start: int
    end: int


@dataclass(frozen=True)
class _Part:
    """One span of a name with its meaning, and what that costs in the choice between readings."""

    kind: str
    value: str = ""
    cost: float = 1.0
    spelling: Spelling | None = None


_Way = tuple[float, tuple[_Part, ...]]


@dataclass
class Names:
    """Every name that can be read."""

    rows: Iterable[Row]
    word_rows: Iterable[Row]
    switch_rows: Iterable[Row]
    analytes: Mapping[str, Analyte]
    units: Units
    role_of: Callable[[str], ColumnRole | None]
    _spellings: dict[str, list[Spelling]] = field(init=False, default_factory=dict)
    _words: dict[str, list[tuple[str, str]]] = field(init=False, default_factory=dict)
    _switches: dict[tuple[str, str, str], str] = field(init=False, default_factory=dict)
    _connectors: set[str] = field(init=False, default_factory=set)
    _joining: set[str] = field(init=False, default_factory=set)
    _families: set[str] = field(init=False, default_factory=set)
    _known: dict[tuple[str, str, Fraction | None], NameMeaning | None] = field(init=False, default_factory=dict)
    _suggestions: Suggestions | None = field(init=False, default=None)
    _labels: dict[str, str] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        for row in self.rows:
            self._add(row["name"], row)
        for analyte in self.analytes.values():
            for name in (analyte.key.replace("_", " "), analyte.label) if analyte.printed else ():
                if analyte.key not in (known.analyte for known in self._spellings.get(squash(name), ())):
                    self._add(name, {"analyte": analyte.key})
        for row in self.word_rows:
            if row["kind"] in ("joining", "connector"):
                self._connectors.add(row["words"])
                self._joining.update({row["words"]} if row["kind"] == "joining" else ())
            elif row["kind"] != "opener":
                self._words.setdefault(squash(row["words"]), []).append((row["kind"], row["value"]))
        for row in self.switch_rows:
            self._switches[row["analyte"], row["by"], row["value"]] = row["becomes"]
        self._families = {family for family, _, _ in self._switches if family not in self.analytes}

    def _add(self, name: str, row: Row) -> None:
        made = Spelling(
            analyte=row["analyte"],
            fraction=Fraction(row["fraction"]) if row.get("fraction") else None,
            basis=row.get("basis") or None,
            supposed=row.get("supposed") or None,
            measured=Measured(row["measured"]) if row.get("measured") else None,
            assumption=row.get("assumption", ""),
            letters=name if row.get("kind") or (len(squash(name)) <= 2 and name.isupper()) else "",
            symbol=row.get("kind") == "symbol",
        )
        key = squash(name)
        if made not in self._spellings.setdefault(key, []):
            self._spellings[key].append(made)
            self._labels.setdefault(key, name)

    def meaning(self, text: str, unit: str = "", fraction: Fraction | None = None) -> NameMeaning | None:
        """What a printed name says, or None where it is unknown or could be two analytes (see Vocabulary.name)."""
        key = (text, unit, fraction)
        if key not in self._known:
            self._known[key] = self._meaning(text, unit, fraction)
        return self._known[key]

    def suggest(self, text: str) -> tuple[str, ...]:
        """Nearest known spellings, of different analytes, best first."""
        if self._suggestions is None:
            plain = {key: label for key, label in self._labels.items() if len(key) > 2}
            self._suggestions = Suggestions(plain, {key: self._spellings[key][0].analyte for key in plain})
        return self._suggestions.nearest(squash(text))

    def _meaning(self, text: str, unit: str, fraction: Fraction | None) -> NameMeaning | None:
        printed = clean(text).strip(" :;,.-_=")
        printed = LEADER.sub(" ", printed).strip()
        if (beside := LIMIT.search(printed)) and (role := self.role_of(beside.group(1))) in _LIMITS:
            made = self._meaning(_without(printed, beside), unit, fraction)  # a limit is no part of the name
            if made and role is ColumnRole.REPORTING_LIMIT:
                return replace(made, reporting_limit=beside.group(2))
            return (
                replace(made, detection_limit=beside.group(2)) if made and role is ColumnRole.DETECTION_LIMIT else made
            )
        if line := EMISSION_LINE.match(printed.rstrip("*†‡ ")):
            printed, method = line.group(1), f"emission line {line.group(2)}"
        else:
            printed, method = self._without_method(printed)
        marks = tuple(mark.strip("^(){}[] ") for mark in MARKS.findall(printed)) if MARKS.search(printed) else ()
        readings = (printed, MARKS.sub(" ", CHARGE.sub("", printed)).strip(), printed.replace("_", " "))
        for reading in dict.fromkeys(readings):
            if (
                made := self._parse(reading, unit, fraction, marks if reading == readings[1] != printed else (), method)
            ) is not None:
                return made
        return self._without_bare_limit(printed, unit, fraction)

    def _without_bare_limit(self, printed: str, unit: str, fraction: Fraction | None) -> NameMeaning | None:
        """A name with a bare number in brackets that can only be a limit: no valence, isotope, end point, filter."""
        beside = BARE_LIMIT.search(printed)
        if beside is None or not beside.start():
            return None
        sign, number, amount = beside.group(1), beside.group(2), (beside.group(3) or "").strip()
        if (amount and not self.units.parse(amount)) or float(number.replace(",", ".")) == 0.45:
            return None
        if not (sign or amount or not number.isdigit() or int(number) >= 10):
            return None
        made = self._meaning(_without(printed, beside), unit, fraction)
        if made is None or squash(printed[: beside.start()] + number) in self._spellings:
            return None
        return made if self.analytes[made.analyte].group in _LIMITED_GROUPS else None

    def _without_method(self, printed: str) -> tuple[str, str]:
        found = METHOD.search(printed)
        if found is None or found.start() == 0:
            return printed, ""
        rest = (printed[: found.start()] + " " + printed[found.end() :]).strip(" ,;(-")
        return rest, re.sub(r"\s+", " ", f"{found.group(1)} {found.group(2)}").strip()

    def _parse(
        self, printed: str, unit: str, fraction: Fraction | None, marks: tuple[str, ...], method: str
    ) -> NameMeaning | None:
        tokens = [_Word(m.group(), fold(m.group()), m.start(), m.end()) for m in WORD.finditer(printed)]
        if not tokens or len(tokens) > _LONGEST:
            return None
        # For each place the few cheapest ways to explain everything before it, by the analyte spelled so far.
        best: list[dict[str, list[_Way]]] = [{} for _ in range(len(tokens) + 1)]
        best[0][""] = [(0.0, ())]
        for start in range(len(tokens)):
            for end in range(start + 1, len(tokens) + 1) if best[start] else ():
                for part in self._parts(printed, tokens, start, end):
                    spelled = part.spelling.analyte if part.spelling else ""
                    for analyte, ways in best[start].items():
                        if spelled and analyte and spelled != analyte:
                            continue
                        kept = best[end].setdefault(spelled or analyte, [])
                        kept.extend((cost + part.cost, (*parts, part)) for cost, parts in ways)
                        kept.sort(key=lambda way: way[0])
                        del kept[_WAYS:]
        read: list[tuple[float, NameMeaning]] = []
        for analyte, ways in best[-1].items():
            for cost, parts in ways if analyte else ():
                if (made := self._assemble(parts, unit, fraction, marks, method)) is not None:
                    read.append((cost, made))
                    break
        least = min((cost for cost, _ in read), default=0.0)
        cheapest = [meaning for cost, meaning in read if cost == least]
        if len(cheapest) > 1 and unit:  # letters of two analytes, such as TH: the unit may be of one of them only
            cheapest = [meaning for meaning in cheapest if self.units.measures(unit, self.analytes[meaning.analyte])]
        return cheapest[0] if len({meaning.analyte for meaning in cheapest}) == 1 else None

    def _parts(self, printed: str, tokens: list[_Word], start: int, end: int) -> Iterable[_Part]:
        """Every meaning of the words from start to end."""
        span = tokens[start:end]
        raw = printed[tokens[start].start : tokens[end - 1].end]
        before = printed[tokens[start - 1].end if start else 0 : tokens[start].start]
        key = squash(raw)
        alone = end - start == 1
        if spellings := self._spellings.get(key) or self._spellings.get(self._joined(span)):
            for spelling in spellings:
                stands = _letters_stand(spelling, raw, printed, tokens, start, end)
                if (
                    spelling.letters
                    and not stands
                    and not (key == printed.partition("_")[0] and self._is_coded(printed))
                ):
                    continue
                yield _Part("name", spelling=spelling, cost=1.0 if not start else 1.1)
        for kind, value in self._words.get(key, ()):
            bracketed = "(" in before and printed[tokens[end - 1].end :].lstrip()[:1] == ")"
            hung_on = before in ("-", "_") and end == len(tokens)
            if kind == "fraction_letter" and raw.isupper() and hung_on:  # "Fe-T", "Mn_D"
                yield _Part("fraction", value)
            elif not kind.endswith("_letter") or (kind == "noise_letter" and raw.isupper() and bracketed):
                yield _Part(kind, value or (raw if kind == "method" else ""))
        if alone and start and end < len(tokens) and span[0].folded in self._connectors:
            yield _Part("connector", span[0].folded, 0.5)
        if start:
            yield from self._forms(raw, before, joined=self._is_joined(before, tokens[start - 1]))
            if FILTER.match(fold(raw)):
                yield _Part("method", raw)
            if DURATION.match(fold(raw)):
                yield _Part("duration", raw)
            if found := TEMPERATURE.match(before.strip() + fold(raw)):
                yield _Part("temperature", found.group(1) or found.group(2) or "")
        closing = printed[tokens[end - 1].end :].lstrip()[:1]
        if (start or "(" in before) and end - start <= 8:
            whole = raw + ")" if raw.count("(") > raw.count(")") and closing == ")" else raw
            whole = before.strip()[-1] + whole if before.strip()[-1:] == "/" else whole
            whole = whole.removeprefix("as ").removeprefix("AS ").replace("_", "/")
            like = "/" in whole or "%" in raw or " per " in raw.lower() or self.units.is_word(whole)
            if like and not whole.lower().startswith("as ") and self.units.parse(whole):
                yield _Part("unit", whole, 1.3)

    def _is_coded(self, printed: str) -> bool:
        """Whether a name is the heading of a data file, a symbol in small letters and its unit: `fe_mgl`, `as_flag`."""
        symbol, line, rest = printed.partition("_")
        beside = any(kind == "companion" for kind, _ in self._words.get(squash(rest), ()))
        return bool(line) and symbol.islower() and (beside or bool(self.units.parse(rest.replace("_", "/"))))

    def _joined(self, span: list[_Word]) -> str:
        """The squash of a span without its joining words: "nitrate + nitrite" is spelled "nitrate nitrite"."""
        if len(span) < 3 or span[0].folded in self._joining or span[-1].folded in self._joining:
            return ""
        kept = [word.text for word in span if word.folded not in self._joining]
        return squash("".join(kept)) if len(kept) < len(span) else ""

    def _is_joined(self, before: str, last: _Word) -> bool:
        """Whether a sign or word of joining stands before: what is joined is no form of the first."""
        return last.folded in self._joining or any(sign in before for sign in "&/")

    def _forms(self, raw: str, before: str, *, joined: bool) -> Iterable[_Part]:
        """A chemical form: after its opener, after a hyphen, or bare."""
        if (form := opened_form(raw)) is not None:
            yield _Part("basis", form)
            return
        if joined and len(raw) > 2 and squash(raw) in self._spellings:  # "Hardness/CaCO3", "Sulfate/S" say a form
            return
        if (form := form_of(raw)) is not None:
            yield _Part("basis" if before.rstrip().endswith("-") else "bare_form", form, 1.2)

    def _assemble(
        self,
        parts: tuple[_Part, ...],
        unit: str,
        fraction: Fraction | None,
        marks: tuple[str, ...],
        method: str,
    ) -> NameMeaning | None:
        """One meaning of the parts together, or None where they contradict each other."""
        spellings = [part.spelling for part in parts if part.spelling]
        kinds = {kind: [part.value for part in parts if part.kind == kind] for kind in {part.kind for part in parts}}
        fractions = {spelling.fraction for spelling in spellings} | {Fraction(f) for f in kinds.get("fraction", ())}
        printed = _one_fraction({fraction for fraction in fractions if fraction})
        if isinstance(printed, bool):
            return None
        units = kinds.get("unit", [])
        own_unit = units[0] if units else ""
        if len(units) > 1:
            return None
        spelled = spellings[0].analyte
        key = self._switch(spelled, printed or fraction, unit or own_unit, kinds.get("basis", []))
        if key is None or (printed is Fraction.FREE and key == spelled and None in fractions):
            return None  # the free form of it is another thing, and not known
        analyte = self.analytes[key]
        if "counted" in kinds and analyte.quantity != "count":
            return None
        if "duration" in kinds and "point" not in kinds:
            return None
        if "residual" in kinds and analyte.group != "disinfectant":
            return None
        forms = {
            reading.form
            for reading in self.units.parse(own_unit)
            if reading.form and (not reading.quantities or reading.quantities & kinds_of(analyte))
        }
        bases = {spelling.basis for spelling in spellings} | set(kinds.get("basis", ())) | forms
        supposed = {spelling.supposed for spelling in spellings} - {None}
        for form in kinds.get("bare_form", ()):
            (supposed if form == analyte.formula or form in ("NH3", "NH4") else bases).add(form)
        bases -= {None}
        if any(form_factor(analyte, form) is None for form in (bases | supposed) - {None} if form):
            return None
        if len(bases) > 1 or (own_unit and not self.units.measures(own_unit, analyte)):
            return None
        basis = next(iter(bases), None)
        temperatures = [float(value.replace(",", ".")) for value in kinds.get("temperature", ()) if value]
        measured = {Measured(m) for m in kinds.get("measured", ())} | {spelling.measured for spelling in spellings}
        measured -= {None}
        companions = kinds.get("companion", [])
        if len(measured) > 1 or len(companions) > 1:
            return None
        method_words = " ".join([*filter(None, [method]), *kinds.get("method", [])])
        canonical_only = len(supposed) != 1 or basis is not None
        return NameMeaning(
            analyte=key,
            fraction=(printed or None) if analyte.fractions and _is_fraction(analyte, printed) else None,
            basis=basis,
            supposed=None if canonical_only else next(iter(supposed)),
            measured=next(iter(measured), None),
            unit=own_unit,
            temperature=temperatures[0] if temperatures else None,
            method=method_words.strip(),
            point=SamplingPoint(kinds["point"][0]) if "point" in kinds else None,
            companion=Companion(companions[0]) if companions else None,
            footnotes=marks,
            assumptions=tuple(sorted({spelling.assumption for spelling in spellings} - {""})),
        )

    def _switch(self, analyte: str, fraction: Fraction | None, unit: str, forms: list[str]) -> str | None:
        """The analyte that a fraction, a form or a kind of unit turns a name into; None for a family without it."""
        if fraction and (becomes := self._switches.get((analyte, "fraction", fraction))):
            analyte = becomes
        for form in (*forms, *(reading.form or "" for reading in self.units.parse(unit))):
            analyte = self._switches.get((analyte, "form", form), analyte)
        for quantity in ("activity", "concentration") if unit else ():
            becomes = self._switches.get((analyte, "unit", quantity))
            if becomes and self.units.measures(unit, self.analytes[becomes]):
                return becomes
        return None if analyte in self._families else analyte


def _without(printed: str, part: re.Match[str]) -> str:
    """A name without a part in brackets."""
    return re.sub(r"\s+", " ", printed[: part.start()] + " " + printed[part.end() :]).strip(" ,;-")


def _letters_stand(spelling: Spelling, raw: str, printed: str, tokens: list[_Word], start: int, end: int) -> bool:
    """Whether a symbol, a charged formula or two letters are this spelling here.

    They stand without blanks, in their own case or in capitals; a symbol of one letter only where it is set apart.
    """
    letters = re.sub(r"[^A-Za-z0-9]", "", spelling.letters)
    if " " in raw or re.sub(r"[^A-Za-z0-9]", "", raw) not in (letters, letters.upper()):
        return False
    if len(raw) > 1 or not spelling.symbol:
        return True
    before = printed[tokens[start - 1].end if start else 0 : tokens[start].start]
    after = printed[tokens[end - 1].end : tokens[end].start if end < len(tokens) else len(printed)]
    apart = not start or any(mark in before for mark in "(,[/")
    return apart and (end == len(tokens) or any(mark in after for mark in "),]/:-") or not start)


def _one_fraction(fractions: set[Fraction]) -> Fraction | bool | None:
    """The one fraction that the words together say, None for none, False where they contradict each other."""
    if not fractions:
        return None
    if len(fractions) == 1:
        return next(iter(fractions))
    if fractions == {Fraction.TOTAL, Fraction.TOTAL_RECOVERABLE}:
        return Fraction.TOTAL_RECOVERABLE
    if fractions == {Fraction.DISSOLVED, Fraction.TOTAL_RECOVERABLE}:
        return Fraction.DISSOLVED
    if fractions == {Fraction.SUSPENDED, Fraction.TOTAL_RECOVERABLE}:
        return Fraction.SUSPENDED
    return False


def _is_fraction(analyte: Analyte, fraction: Fraction | None) -> bool:
    """Whether "total" is a fraction for this analyte: it is part of the name of a sum or an aggregate."""
    return bool(fraction) and not (fraction is Fraction.TOTAL and analyte.group in ("aggregate", "organic aggregate"))
