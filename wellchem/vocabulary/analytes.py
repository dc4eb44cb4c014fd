"""What can be measured: each analyte's key, label, formula, quantity and canonical unit and basis."""

from collections.abc import Iterable
from dataclasses import dataclass

from wellchem.vocabulary.tables import Row, bundled_rows


@dataclass(frozen=True)
class Analyte:
    """One analyte. `unit` and `basis` are canonical: what every result of it is converted to.

    `fractions` tells whether a part of it may be analysed; `printed` whether its key and label are names that a report
    may print, which those of a class limit (each pesticide by itself) or of a sum that is only worked out are not.
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

    @property
    def form(self) -> str:
        """The chemical form in which the canonical unit counts: the basis, else the formula."""
        return self.basis or self.formula


def analytes(rows: Iterable[Row]) -> dict[str, Analyte]:
    """Analytes by key. Quantities follow from the canonical unit where the row does not say."""
    quantities = {row["unit"]: row["quantity"] for row in bundled_rows("quantities") if row["default"] == "yes"}
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
        )
    return made
