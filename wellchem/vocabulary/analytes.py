"""What can be measured: each analyte's key, label, formula, quantity and canonical unit and basis."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import inf

from wellchem.vocabulary.tables import Row, bundled_rows


@dataclass(frozen=True)
class Analyte:
    """One analyte. `unit` and `basis` are canonical: what every result of it is converted to.

    `fractions` tells whether a part of it may be analysed; `printed` whether its key and label are names that a report
    may print, which those of a class limit (each pesticide by itself) or of a sum that is only worked out are not.
    `traits` are what its group is known for: `feared` (people take it for cleared where nothing is said of it), `trace`
    (printed in ng/L or µg/L, never in mg/L), `thousandths` (`ppt` may be parts per thousand). `possible` are the least
    and the most that a report can print at all, in the canonical unit; beyond it the number is a slip.
    """

    key: str
    label: str
    group: str
    formula: str
    charge: int | None
    cas: str
    unit: str
    basis: str | None
    quantity: str
    fractions: bool
    printed: bool
    traits: frozenset[str] = frozenset()
    possible: tuple[float, float] = (0.0, inf)

    @property
    def form(self) -> str:
        """The chemical form in which the canonical unit counts: the basis, else the formula."""
        return self.basis or self.formula


def analytes(rows: Iterable[Row]) -> dict[str, Analyte]:
    """Analytes by key. Quantities follow from the canonical unit where the row does not say."""
    quantities = {row["unit"]: row["quantity"] for row in bundled_rows("quantities") if row["default"] == "yes"}
    traits = {row["group"]: frozenset(row["traits"].split()) for row in bundled_rows("groups")}
    possible = {
        row["quantity"]: (float(row["least"] or -inf), float(row["most"] or inf)) for row in bundled_rows("possible")
    }
    made = {}
    for row in rows:
        key, unit = row["analyte"], row["canonical_unit"]
        quantity = row.get("quantity") or quantities[unit]
        made[key] = Analyte(
            key=key,
            label=row.get("label") or key.replace("_", " "),
            group=row["group"],
            formula=row["formula"],
            charge=int(row["charge"]) if row["charge"] else None,
            cas=row["cas"],
            unit=unit,
            basis=row["canonical_basis"] or None,
            quantity=quantity,
            fractions=quantity in ("concentration", "activity") and row.get("fractions") != "no",
            printed=row.get("printed") != "no",
            traits=traits.get(row["group"], frozenset()),
            possible=possible.get(quantity, (0.0, inf)),
        )
    return made
