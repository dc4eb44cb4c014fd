"""What a practitioner needs next: checks, problems, missing tests, treatment, and computed values."""

from __future__ import annotations

from datetime import date

from wellchem.models.base import Interval, Model
from wellchem.models.codes import Certainty, CheckStatus, ProblemKind, Urgency
from wellchem.models.household import Household
from wellchem.models.limits import Comparison
from wellchem.models.sample import Sample


class Source(Model):
    """The document behind a figure, a rule or a formula; `checked` as in the reference tables."""

    title: str
    locator: str = ""
    checked: str = ""

    def __str__(self) -> str:
        return ", ".join(part for part in (self.title, self.locator) if part) + (
            f" [{self.checked}]" if self.checked else ""
        )


class Computed(Model):
    """A computed value with its bounds, the formula's source and the inputs used."""

    name: str
    label: str
    low: float | None = None
    high: float | None = None
    unit: str = ""
    text: str = ""
    source: Source | None = None
    inputs: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


class Evidence(Model):
    """What a conclusion rests on: results and comparisons (by index into sample and finding), or words."""

    text: str
    results: tuple[int, ...] = ()
    comparisons: tuple[int, ...] = ()
    source: Source | None = None


class Check(Model):
    """One check of the report."""

    code: str
    title: str
    status: CheckStatus
    text: str
    figures: tuple[Computed, ...] = ()
    results: tuple[int, ...] = ()
    source: Source | None = None


class Caution(Model):
    """A warning for a hazard and the group at risk, and who decides."""

    code: str
    text: str
    hazard: str = ""
    group: str = ""
    decides: str = ""
    source: Source | None = None


class Action(Model):
    """What to do today for one hazard."""

    hazard: str
    text: str
    urgency: Urgency
    deadline: str = ""
    group: str = ""
    boiling: str = ""
    bathing: str = ""
    infant_formula: str = ""
    source: Source | None = None


class Problem(Model):
    """Something wrong with the water, how sure, and on what evidence."""

    code: str
    title: str
    kind: ProblemKind
    certainty: Certainty
    urgency: Urgency
    text: str
    noticed: str = ""
    evidence: tuple[Evidence, ...] = ()
    cautions: tuple[Caution, ...] = ()
    decides: str = ""


class Sign(Model):
    """A sign in the numbers, of treatment before the sample or of where the water's salts come from: a question."""

    code: str
    title: str
    certainty: Certainty
    text: str
    question: str = ""
    evidence: tuple[Evidence, ...] = ()


class MissingTest(Model):
    """A test, or a question to the household, that would change a decision."""

    code: str
    title: str
    decision: str
    value: int = 0
    bottle: str = ""
    holding_time: str = ""
    field: str = ""
    source: Source | None = None


class Figure(Model):
    """One sizing figure with its formula and inputs."""

    name: str
    label: str
    low: float | None = None
    high: float | None = None
    unit: str = ""
    low_us: float | None = None
    high_us: float | None = None
    unit_us: str = ""
    formula: str = ""
    inputs: tuple[str, ...] = ()
    source: Source | None = None


class FeedCondition(Model):
    """A condition of the water that a stage takes in, and whether it holds there."""

    text: str
    status: str
    amount: Interval | None = None
    source: Source | None = None


class Stage(Model):
    """One stage of a treatment train: a class of treatment, never a make; `after` is the water predicted behind it."""

    code: str
    title: str
    where: str
    answers: tuple[str, ...] = ()
    why: str = ""
    feed: tuple[FeedCondition, ...] = ()
    adds: tuple[str, ...] = ()
    certification: str = ""
    maintenance: str = ""
    failure: str = ""
    tests: str = ""
    after: tuple[Computed, ...] = ()
    sizes: tuple[Figure, ...] = ()
    sources: tuple[Source, ...] = ()


class Treatment(Model):
    """An ordered train, what it leaves unanswered, and the runner-up with why it lost."""

    steps_first: tuple[str, ...] = ()
    stages: tuple[Stage, ...] = ()
    unanswered: tuple[str, ...] = ()
    runner_up: tuple[str, ...] = ()
    runner_up_titles: tuple[str, ...] = ()
    runner_up_why: str = ""
    text: str = ""


class Interpretation(Model):
    """All that the library concludes of one sample."""

    sample: Sample
    household: Household | None = None
    authorities: tuple[str, ...]
    on: date
    standing: tuple[str, ...] = ()
    comparisons: tuple[Comparison, ...] = ()
    checks: tuple[Check, ...] = ()
    problems: tuple[Problem, ...] = ()
    actions: tuple[Action, ...] = ()
    missing: tuple[MissingTest, ...] = ()
    signs: tuple[Sign, ...] = ()
    treatment: Treatment = Treatment()
    treated: Sample | None = None
    treated_comparisons: tuple[Comparison, ...] = ()
    cautions: tuple[Caution, ...] = ()
    hardness: tuple[Computed, ...] = ()
    ion_balance: tuple[Computed, ...] = ()
    scaling: tuple[Computed, ...] = ()
    corrosion: tuple[Computed, ...] = ()
    library_version: str = ""
    schema_version: str = ""
    limits_version: str = ""

    def to_text(self, width: int = 100) -> str:
        """The interpretation as text for a terminal."""
        from wellchem.display import text  # the one way up: a model that prints itself

        return text.render(self, width=width)

    def to_html(self) -> str:
        """The interpretation as one self-contained, printable HTML page."""
        from wellchem.display import page

        return page.render(self)
