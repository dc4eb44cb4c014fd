"""The base of every model: frozen, strict about unknown fields, and its JSON brings infinities back."""

from pydantic import BaseModel, ConfigDict


class Model(BaseModel):
    """A frozen record."""

    model_config = ConfigDict(frozen=True, extra="forbid", ser_json_inf_nan="strings", use_enum_values=False)


class Interval(Model):
    """A number known to lie between two bounds, both included; `high` may be infinite."""

    low: float
    high: float
