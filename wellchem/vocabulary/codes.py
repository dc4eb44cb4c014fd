"""Code lists: a number or code means something only in its list (NWIS, CAS, a state's old STORET numbers)."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from wellchem.models.codes import Fraction
from wellchem.vocabulary.analytes import Analyte
from wellchem.vocabulary.meanings import Companion, NameMeaning
from wellchem.vocabulary.tables import Row

_CAS = re.compile(r"\d{2,7}-\d{2}-\d")


@dataclass
class Codes:
    """Codes by list. CAS numbers come from the analytes too; where two analytes share one, the rows decide."""

    rows: Iterable[Row]
    analytes: Mapping[str, Analyte]
    _known: dict[tuple[str, str], NameMeaning | None] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        for analyte in self.analytes.values():
            if analyte.cas:
                key = ("cas", analyte.cas)
                self._known[key] = None if key in self._known else NameMeaning(analyte.key)
        for row in reversed(tuple(self.rows)):
            self._known[row["code_list"], _normal(row["code"], row["code_list"])] = NameMeaning(
                row["analyte"],
                fraction=Fraction(row["fraction"]) if row.get("fraction") else None,
                basis=row.get("basis") or None,
                unit=row.get("unit", ""),
                companion=Companion(row["companion"]) if row.get("companion") else None,
            )

    def meaning(self, text: str, code_list: str) -> NameMeaning | None:
        """What a code means in its list, or None."""
        return self._known.get((code_list, _normal(text, code_list)))


def _normal(text: str, code_list: str) -> str:
    code = text.strip().strip("'\"")
    if code_list == "nwis" and code.isdigit():
        return code.zfill(5)  # a number that lost its leading noughts in a spreadsheet
    if code_list == "cas":
        found = _CAS.search(code)
        return found.group().lstrip("0") if found else code
    return code.upper()
