"""What a printed string means: the records that the vocabulary answers with, and their closed sets of words."""

from dataclasses import dataclass
from enum import StrEnum

from wellchem.models.codes import Censoring, Fraction, Measured, Role, SamplingPoint


class UnitProblem(StrEnum):
    """Why a printed unit gives no conversion."""

    UNKNOWN_UNIT = "unknown_unit"
    UNIT_NOT_OF_ANALYTE = "unit_not_of_analyte"
    CONTRADICTORY = "contradictory"


class Companion(StrEnum):
    """What a name is when it names not a result but something printed beside one (`Gross alpha counting error`)."""

    UNCERTAINTY = "uncertainty"
    DETECTION_LIMIT = "detection_limit"
    REPORTING_LIMIT = "reporting_limit"
    QUALIFIER = "qualifier"
    UNIT = "unit"
    METHOD = "method"


class Bound(StrEnum):
    """Which limit of the laboratory bounds a non-detect that has no number of its own."""

    DETECTION = "detection"
    REPORTING = "reporting"


@dataclass(frozen=True)
class NameMeaning:
    """What a printed name says.

    `basis` is a chemical form that the name prints ("as N", "NO3-N"); `supposed` one that it only suggests (a formula
    beside or instead of the name, "bicarbonate alkalinity"). `unit` is a unit printed in the name, `temperature` its
    reference temperature [°C], `point` where the name says that the water was taken. `companion` is set where the name
    is of something beside a result. `reporting_limit` and `detection_limit` are printed in the name's brackets.
    `assumptions` are codes such as `analyte=apparent_color`.
    """

    analyte: str
    fraction: Fraction | None = None
    basis: str | None = None
    supposed: str | None = None
    measured: Measured | None = None
    unit: str = ""
    temperature: float | None = None
    method: str = ""
    point: SamplingPoint | None = None
    companion: Companion | None = None
    footnotes: tuple[str, ...] = ()
    assumptions: tuple[str, ...] = ()
    reporting_limit: str = ""
    detection_limit: str = ""


@dataclass(frozen=True)
class UnitMeaning:
    """What a printed unit says of one analyte: canonical = printed * factor + offset.

    `unit` and `basis` are the analyte's canonical ones. `per_volume_ml` is the volume that a count is given for,
    `counted_by` how organisms were counted (CFU, MPN, PFU, presence). Where `problem` is set, nothing can be
    converted and `detail` says why.
    """

    factor: float = 1.0
    offset: float = 0.0
    unit: str = ""
    basis: str | None = None
    per_volume_ml: float | None = None
    counted_by: str = ""
    assumptions: tuple[str, ...] = ()
    problem: UnitProblem | None = None
    detail: str = ""


@dataclass(frozen=True)
class ValueMeaning:
    """What a printed value says, free of unit.

    `number` is the number printed (the bound itself where censored); `low` and `high` bound the quantity as far as the
    cell alone does, None where it does not. `detected` is None where the cell does not say. `bound` names the limit of
    the laboratory that bounds a non-detect without a number; `reporting_limit` and `detection_limit` are printed in
    the cell itself, in its unit; so are `basis`, the chemical form, and `measured`, the place.
    `note` is a code: `range`, `approximate`, `blank`,
    `not_analysed`, `too_numerous`, `confluent`, `invalid`, `trace`, `brackets`, `ambiguous_decimal`, `temperature`,
    `above_range`, `noted`, `none`, `restated`, `number_behind` (in brackets, unexplained), `bracketed_bound`.
    """

    censoring: Censoring
    number: float | None = None
    low: float | None = None
    high: float | None = None
    uncertainty: float | None = None
    unit_text: str = ""
    qualifiers: tuple[str, ...] = ()
    note: str = ""
    detected: bool | None = None
    bound: Bound | None = None
    reporting_limit: float | None = None
    detection_limit: float | None = None
    basis: str = ""
    measured: Measured | None = None


class ColumnRole(StrEnum):
    """What a column of a table holds."""

    NAME = "name"
    NAME_SUPPLIED = "name_supplied"
    CODE_NWIS = "code_nwis"
    CODE_CAS = "code_cas"
    CODE_STORET = "code_storet"
    CODE_LOCAL = "code_local"
    VALUE = "value"
    VALUE_NUMBER = "value_number"
    UNIT = "unit"
    FRACTION = "fraction"
    BASIS = "basis"
    QUALIFIER = "qualifier"
    REMARK = "remark"
    DETECT_FLAG = "detect_flag"
    DETECTION_CONDITION = "detection_condition"
    REPORTING_LIMIT = "reporting_limit"
    DETECTION_LIMIT = "detection_limit"
    LIMIT_VALUE = "limit_value"
    LIMIT_UNIT = "limit_unit"
    LIMIT_TYPE = "limit_type"
    UNCERTAINTY = "uncertainty"
    METHOD = "method"
    DILUTION = "dilution"
    DATE_COLLECTED = "date_collected"
    TIME_COLLECTED = "time_collected"
    DATE_RECEIVED = "date_received"
    DATE_ANALYSED = "date_analysed"
    SAMPLE_ID = "sample_id"
    SITE = "site"
    POINT = "point"
    MATRIX = "matrix"
    ACTIVITY_TYPE = "activity_type"
    SAMPLE_TYPE = "sample_type"
    RESULT_TYPE = "result_type"
    RESULT_STATUS = "result_status"
    LATITUDE = "latitude"
    LONGITUDE = "longitude"
    LABORATORY = "laboratory"
    LIMIT = "limit"
    PREVIOUS = "previous"
    STATISTIC = "statistic"
    PERCENT_RECOVERY = "percent_recovery"
    SPIKE_AMOUNT = "spike_amount"
    RPD = "rpd"
    COMMENT = "comment"
    MEASURED = "measured"
    WELL_DEPTH = "well_depth"
    AQUIFER = "aquifer"
    PRESERVED = "preserved"
    PRESENCE = "presence"
    RATING = "rating"
    NOTE = "note"
    ADMINISTRATIVE = "administrative"


@dataclass(frozen=True)
class ColumnMeaning:
    """What a printed column header says: its role, and what else it carries for the cells below it.

    `fraction`, `unit_text` and `bound_of` hold for every cell. `standard` names the data standard whose column this
    is, `group` ties columns of one standard together (limit type, value and unit of the same limit). `brackets` is the
    role of what stands in brackets behind each value ("Result (MCL)").
    """

    role: ColumnRole
    fraction: Fraction | None = None
    unit_text: str = ""
    standard: str = ""
    group: str = ""
    note: str = ""
    brackets: ColumnRole | None = None


class PhraseKind(StrEnum):
    """What a line or cell outside the table proper is."""

    SECTION = "section"
    QUALITY_CONTROL = "quality_control"
    SURROGATES = "surrogates"  # quality control within the sample: its next group is the sample's again
    SAMPLE_HEAD = "sample_head"
    LEGEND = "legend"
    FOOTER = "footer"
    TITLE = "title"
    NOTE = "note"
    POINT = "point"
    LIMIT_TYPE = "limit_type"
    MATRIX = "matrix"
    SAMPLE_TYPE = "sample_type"


@dataclass(frozen=True)
class PhraseMeaning:
    """What a section title, a head's label, a page's furniture says.

    `field` is a ColumnRole for labels of a sample's head, `rest` the text after the label; `role` the kind of sample
    that a quality-control title opens; `fraction`, `measured`, `point` hold for what follows; `water` is False where a
    matrix is not water; `limit_role` tells a reporting from a detection limit. Of a legend's line ("J = estimated")
    `note` is the code and `rest` its meaning.
    """

    kind: PhraseKind
    field: ColumnRole | None = None
    rest: str = ""
    role: Role | None = None
    fraction: Fraction | None = None
    measured: Measured | None = None
    point: SamplingPoint | None = None
    limit_role: ColumnRole | None = None
    water: bool | None = None
    note: str = ""


class Consequence(StrEnum):
    """What a qualifier does to the number beside it (design: qualifiers mean something)."""

    NOT_DETECTED = "not_detected"
    ESTIMATED = "estimated"
    NOT_DETECTED_ESTIMATED = "not_detected_estimated"
    UPPER_BOUND = "upper_bound"
    LOWER_BOUND = "lower_bound"
    LESS_THAN = "less_than"
    GREATER_THAN = "greater_than"
    BETWEEN_LIMITS = "between_limits"
    PRESENT = "present"
    ABSENT = "absent"
    TOO_NUMEROUS = "too_numerous"
    HOLDING_TIME = "holding_time"
    REJECTED = "rejected"
    NOT_REPORTED = "not_reported"
    NEGATIVE = "negative"
    NOTED = "noted"
    EXCEEDS = "exceeds"


@dataclass(frozen=True)
class QualifierMeaning:
    """What a qualifier code does, in whose words, and whether that had to be supposed."""

    code: str
    consequence: Consequence
    meaning: str
    from_legend: bool = False
    assumptions: tuple[str, ...] = ()
