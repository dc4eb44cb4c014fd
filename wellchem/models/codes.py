"""The closed sets of words that models and frames speak. Each member's meaning is in the catalogue (`describe`)."""

from enum import StrEnum


class Censoring(StrEnum):
    """How a printed value bounds the true one."""

    NONE = "none"
    LEFT = "left"
    RIGHT = "right"
    INTERVAL = "interval"
    PRESENT = "present"
    ABSENT = "absent"
    NOT_REPORTED = "not_reported"


class Fraction(StrEnum):
    """The part of the water that was analysed, as the report prints it."""

    TOTAL = "total"
    DISSOLVED = "dissolved"
    TOTAL_RECOVERABLE = "total_recoverable"
    SUSPENDED = "suspended"
    FREE = "free"


class Role(StrEnum):
    """What a sample is: the household's water, quality control, or a prediction."""

    ROUTINE = "routine"
    DUPLICATE = "duplicate"
    BLANK = "blank"
    SPIKE = "spike"
    CONTROL = "control"
    PREDICTED = "predicted"


class Measured(StrEnum):
    """Where a result was measured."""

    FIELD = "field"
    LABORATORY = "laboratory"


class SamplingPoint(StrEnum):
    """Where in the household's plumbing the sample was taken."""

    WELL_HEAD = "well_head"
    BEFORE_TREATMENT = "before_treatment"
    AFTER_TREATMENT = "after_treatment"
    TAP = "tap"
    TAP_FIRST_DRAW = "tap_first_draw"
    TAP_FLUSHED = "tap_flushed"


class UnreadReason(StrEnum):
    """Why something printed did not become a result."""

    UNKNOWN_NAME = "unknown_name"
    UNKNOWN_UNIT = "unknown_unit"
    UNIT_NOT_OF_ANALYTE = "unit_not_of_analyte"
    UNREADABLE_VALUE = "unreadable_value"
    NO_VALUE = "no_value"
    NO_NAME = "no_name"
    IMPOSSIBLE_VALUE = "impossible_value"
    AMBIGUOUS_COLUMN = "ambiguous_column"
    STATISTIC = "statistic"
    NOT_WATER = "not_water"
    FORMULA_WITHOUT_VALUE = "formula_without_value"
    NOT_A_TABLE = "not_a_table"
    NOT_SHOWN = "not_shown"
    STRUCK_OUT = "struck_out"


class LayoutKind(StrEnum):
    """The kinds of layout that a cell or word of a source may be part of, when it is not part of a result."""

    TITLE = "title"
    HEADER = "header"
    FOOTER = "footer"
    NOTE = "note"
    SAMPLE_HEAD = "sample_head"
    SECTION = "section"
    LEGEND = "legend"
    LIMIT = "limit"
    PREVIOUS = "previous"
    STATISTIC = "statistic"
    REPEATED = "repeated"
    ADMINISTRATIVE = "administrative"


class LimitKind(StrEnum):
    """What a limit protects."""

    HEALTH = "health"
    AESTHETIC = "aesthetic"
    OPERATIONAL = "operational"
    GOAL = "goal"


class Checked(StrEnum):
    """How a reference value was checked against its document."""

    PAGE = "page"
    TRANSPOSITION = "transposition"
    MEMORY = "memory"


class Verdict(StrEnum):
    """What a comparison with one limit shows."""

    ABOVE = "above"
    BELOW = "below"
    WITHIN = "within"
    UNDECIDED = "undecided"


class Reason(StrEnum):
    """Why a comparison is undecided, or what its verdict rests on. `members_missing` and `derived_from` carry names."""

    LIMIT_WITHIN_BOUNDS = "limit_within_bounds"
    REPORTING_LIMIT_ABOVE = "reporting_limit_above"
    NO_BOUNDS = "no_bounds"
    REJECTED = "rejected"
    INVALID_SAMPLE = "invalid_sample"
    HOLDING_TIME = "holding_time"
    DISSOLVED_MEASURED = "dissolved_measured"
    TOTAL_MEASURED = "total_measured"
    FRACTION_NOT_PRINTED = "fraction_not_printed"
    UNIT_ASSUMED = "unit_assumed"
    BASIS_ASSUMED = "basis_assumed"
    UNIT_MISSING = "unit_missing"
    CONDITION_UNSETTLED = "condition_unsettled"
    DATE_UNKNOWN = "date_unknown"
    NOT_DATED = "not_dated"
    MEMBERS_MISSING = "members_missing"
    DERIVED_FROM = "derived_from"


class CheckStatus(StrEnum):
    """Outcome of a check of the report."""

    PASS = "pass"
    WARN = "warn"
    FAIL = "fail"
    NOT_POSSIBLE = "not_possible"


class ProblemKind(StrEnum):
    """What a problem touches."""

    HEALTH = "health"
    AESTHETIC = "aesthetic"
    EQUIPMENT = "equipment"


class Certainty(StrEnum):
    """How sure a conclusion is."""

    CERTAIN = "certain"
    LIKELY = "likely"
    POSSIBLE = "possible"


class Urgency(StrEnum):
    """How soon something must be acted on."""

    NOW = "now"
    SOON = "soon"
    PLANNED = "planned"
    OPTIONAL = "optional"
