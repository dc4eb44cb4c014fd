"""What qualifiers, remarks, detect flags and detection conditions do to the number beside them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntFlag

from wellchem.models.codes import Censoring
from wellchem.vocabulary import Bound, ColumnRole, Consequence, Vocabulary


class Effect(IntFlag):
    """Consequences of the marks beside a value, together."""

    NOTHING = 0
    NOT_DETECTED = 1
    ESTIMATED = 2
    UPPER_BOUND = 4
    LOWER_BOUND = 8
    LESS_THAN = 16
    GREATER_THAN = 32
    BETWEEN_LIMITS = 64
    PRESENT = 128
    ABSENT = 256
    TOO_NUMEROUS = 512
    REJECTED = 1024
    NOT_REPORTED = 2048
    BELOW_DETECTION = 4096
    BELOW_REPORTING = 8192
    FLAGGED = 16384
    UNQUANTIFIED = 32768
    NEGATIVE = 65536


_OF = {
    Consequence.NOT_DETECTED: Effect.NOT_DETECTED,
    Consequence.ESTIMATED: Effect.ESTIMATED,
    Consequence.NOT_DETECTED_ESTIMATED: Effect.NOT_DETECTED,
    Consequence.UPPER_BOUND: Effect.UPPER_BOUND,
    Consequence.LOWER_BOUND: Effect.LOWER_BOUND,
    Consequence.LESS_THAN: Effect.LESS_THAN,
    Consequence.GREATER_THAN: Effect.GREATER_THAN,
    Consequence.BETWEEN_LIMITS: Effect.BETWEEN_LIMITS,
    Consequence.PRESENT: Effect.PRESENT | Effect.UNQUANTIFIED,
    Consequence.ABSENT: Effect.ABSENT,
    Consequence.TOO_NUMEROUS: Effect.TOO_NUMEROUS,
    Consequence.REJECTED: Effect.REJECTED,
    Consequence.NOT_REPORTED: Effect.NOT_REPORTED,
    Consequence.NEGATIVE: Effect.NEGATIVE,
}
# The code that every room after this one knows a consequence by, whatever the report called it.
_CODES = {
    Consequence.NOT_DETECTED: ("U",),
    Consequence.ESTIMATED: ("J",),
    Consequence.NOT_DETECTED_ESTIMATED: ("J", "U"),
    Consequence.BETWEEN_LIMITS: ("J",),
    Consequence.UPPER_BOUND: ("B",),
    Consequence.LOWER_BOUND: ("E",),
    Consequence.HOLDING_TIME: ("H",),
    Consequence.REJECTED: ("R",),
    Consequence.LESS_THAN: (),
    Consequence.GREATER_THAN: (),
    Consequence.NOT_REPORTED: (),
    Consequence.PRESENT: (),
    Consequence.ABSENT: (),
    Consequence.NEGATIVE: (),
}
_YES = {"y", "yes", "true", "t", "1", "detect", "detected", "oui", "ja", "si", "sí"}
_NO = {"n", "no", "false", "f", "0", "non-detect", "nondetect", "not detected", "non", "nein"}
_PARTS = re.compile(r"[\s,;/|]+")


@dataclass(frozen=True)
class Effects:
    """What one printed mark does: the consequences, the codes kept, what was supposed, a number it carries."""

    effect: Effect = Effect.NOTHING
    codes: tuple[str, ...] = ()
    assumptions: tuple[str, ...] = ()
    number: float | None = None


@dataclass(frozen=True)
class Marks:
    """Reads marks by the report's legend and the usual meanings."""

    vocabulary: Vocabulary
    legend: Mapping[str, str]

    def qualifier(self, text: str, family: str = "usual") -> Effects:
        """A cell of qualifiers: one code, or several with separators or none between them.

        `family` is the key of a data standard's column; without one of its own the usual readings hold.
        """
        if text.strip() == "=":  # the number itself, where others have "<" or ">"
            return Effects()
        whole = self._code(text, family)
        if whole is not None:
            return whole
        if limit := self._limit_named(text):  # "MRL": no letters, but the limit that a sign is of
            return Effects(limit, (text.strip(),))
        parts = [part for part in _PARTS.split(text) if part]
        if len(parts) == 1 and text.isalpha() and text.isupper() and 1 < len(text) <= 4:
            parts = list(text)
        found = [self._code(part, family) or Effects(codes=(part,)) for part in parts]
        if len(parts) > 4 or any(len(part) > 12 for part in parts):
            return Effects()  # words, not codes: the cell is a comment
        return _together(found)

    def _code(self, code: str, family: str) -> Effects | None:
        found = self.vocabulary.qualifier(code.strip(), legend=self.legend, family=family)
        if found is None:
            return None
        codes = _CODES.get(found.consequence, (found.code,))
        effect = _OF.get(found.consequence, Effect.NOTHING)
        if found.from_legend and effect is Effect.NOT_DETECTED:
            effect |= self._limit_named(found.meaning)
        return Effects(effect, codes, found.assumptions)

    def _limit_named(self, meaning: str) -> Effect:
        """Which limit a legend's words say that a non-detect lies below."""
        words = re.findall(r"[^\W_]+", meaning)
        spans = {" ".join(words[at : at + size]) for size in (1, 2, 3) for at in range(len(words) - size + 1)}
        roles = {found.role for span in spans if (found := self.vocabulary.column(span)) is not None}
        if ColumnRole.DETECTION_LIMIT in roles and ColumnRole.REPORTING_LIMIT not in roles:
            return Effect.BELOW_DETECTION
        if ColumnRole.REPORTING_LIMIT in roles and ColumnRole.DETECTION_LIMIT not in roles:
            return Effect.BELOW_REPORTING
        return Effect.NOTHING

    def flag(self, text: str) -> Effects:
        """A cell that says whether the analyte was detected."""
        word = text.strip().casefold()
        if word in _YES:
            return Effects(Effect.PRESENT)  # which a number beside it says better
        if word in _NO:
            return Effects(Effect.NOT_DETECTED | Effect.FLAGGED, ("U",))
        return self.condition(text)

    def condition(self, text: str) -> Effects:
        """A cell that says in words how the analyte was detected, or writes the bound itself (`< 2`)."""
        value = self.vocabulary.value(text)
        if value is None or (value.note == "noted" and self._code(text, "usual") is not None):
            return self.qualifier(text)
        effect = Effect.NOTHING
        if value.censoring is Censoring.LEFT:
            effect = Effect.LESS_THAN if value.number is not None else Effect.NOT_DETECTED
            if value.bound is Bound.DETECTION:
                effect |= Effect.BELOW_DETECTION
            elif value.bound is Bound.REPORTING:
                effect = Effect.BETWEEN_LIMITS if value.detected else effect | Effect.BELOW_REPORTING
        elif value.censoring is Censoring.RIGHT:
            effect = Effect.GREATER_THAN if value.number is not None else Effect.TOO_NUMEROUS
        elif value.censoring is Censoring.PRESENT:
            effect = Effect.PRESENT
        elif value.censoring is Censoring.ABSENT:
            effect = Effect.ABSENT
        elif value.censoring is Censoring.NOT_REPORTED and value.note != "blank":
            effect = Effect.NOT_REPORTED
        codes = ("U",) if effect & Effect.NOT_DETECTED else ()
        return Effects(effect, codes, (), value.number if value.censoring is not Censoring.NONE else None)


def _together(found: list[Effects]) -> Effects:
    effect = Effect.NOTHING
    for one in found:
        effect |= one.effect
    codes = tuple(dict.fromkeys(code for one in found for code in one.codes))
    return Effects(effect, codes, tuple(dict.fromkeys(a for one in found for a in one.assumptions)))
