"""Qualifier codes beside a number: by the report's own legend, else by the usual reading."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from wellchem.vocabulary.meanings import Consequence, QualifierMeaning
from wellchem.vocabulary.tables import Row
from wellchem.vocabulary.text import words


@dataclass
class Qualifiers:
    """Codes by family (`usual`, and those of a data standard or a state), and words of legends (` & `: all of them)."""

    rows: Iterable[Row]
    legend_rows: Iterable[Row]
    _codes: dict[tuple[str, str], tuple[Consequence, str]] = field(init=False, default_factory=dict)
    _legend: list[tuple[list[str], Consequence]] = field(init=False, default_factory=list)
    _alpha: set[str] = field(init=False, default_factory=set)

    def __post_init__(self) -> None:
        for row in self.rows:
            self._codes[row["family"], row["code"]] = (Consequence(row["consequence"]), row["meaning"])
        self._alpha = {code.upper() for family, code in self._codes if family in ("usual", "florida")}
        made = [(row["words"].split(" & "), Consequence(row["consequence"])) for row in self.legend_rows]
        self._legend = sorted(made, key=lambda pair: -sum(map(len, pair[0])))

    def known(self, code: str) -> bool:
        """Whether letters beside a number may be a qualifier: a known code, or a combination of single-letter ones."""
        if not code.isupper() and code.rstrip("+-").isalpha():
            return len(code) == 1 and code not in "lgmcf"  # a footnote letter, not a unit
        return code in self._alpha or all(letter in self._alpha for letter in code.rstrip("+-"))

    def before_number(self, code: str) -> bool:
        """Whether a code may stand before a number too: every family that has it says the same of the number.

        Letters before numbers are remarks of older data as well: E is estimated there, K and L are less and more.
        """
        found = {consequence for (_, known), (consequence, _) in self._codes.items() if known == code}
        return code.rstrip("+-").isalpha() and len(found) == 1 and Consequence.NOTED not in found

    def meaning(self, code: str, legend: Mapping[str, str], family: str) -> QualifierMeaning | None:
        """What a code does (see Vocabulary.qualifier)."""
        code = code.strip()
        if code in legend:
            return QualifierMeaning(code, self.consequence(legend[code]), legend[code], from_legend=True)
        for known in (family, "usual"):
            if found := self._codes.get((known, code)) or self._codes.get((known, code.upper())):
                assumed = (f"qualifier={code}",) if code not in ("<", ">", "<=", ">=") else ()
                return QualifierMeaning(code, found[0], found[1], assumptions=assumed)
        return None

    def consequence(self, meaning: str) -> Consequence:
        """What a legend's words amount to; `noted` where they change nothing about the number."""
        text = words(meaning)
        found = [consequence for parts, consequence in self._legend if all(part in text for part in parts)]
        if not found:
            return Consequence.NOTED
        if "not detected" in text and not {Consequence.ESTIMATED, Consequence.NOT_DETECTED_ESTIMATED} & set(found):
            return Consequence.NOT_DETECTED  # whatever limit it was not detected above
        for first in (Consequence.BETWEEN_LIMITS, Consequence.NOT_DETECTED_ESTIMATED, Consequence.REJECTED):
            if first in found:
                return first
        if Consequence.NOT_DETECTED in found and Consequence.ESTIMATED in found:
            return Consequence.NOT_DETECTED_ESTIMATED if "not detected" in text else Consequence.ESTIMATED
        return found[0]
