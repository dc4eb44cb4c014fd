"""The base of every model: frozen, strict about unknown fields, and its JSON brings infinities back."""

from pydantic import BaseModel, ConfigDict
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema


class Model(BaseModel):
    """A frozen record."""

    model_config = ConfigDict(frozen=True, extra="forbid", ser_json_inf_nan="strings", use_enum_values=False)


class WrittenSchema(GenerateJsonSchema):
    """JSON has no infinity: the schema says by which words it is written."""

    def float_schema(self, schema: core_schema.FloatSchema) -> JsonSchemaValue:
        return {"anyOf": [super().float_schema(schema), {"enum": ["Infinity", "-Infinity", "NaN"]}]}


class Interval(Model):
    """A number known to lie between two bounds, both included; `high` may be infinite."""

    low: float
    high: float
