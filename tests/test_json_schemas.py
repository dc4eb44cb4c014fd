"""What the library writes is what its JSON Schemas describe (JSON Schema draft 2020-12, by the jsonschema library)."""

import json

import jsonschema
import pytest

import wellchem
from wellchem import demo


@pytest.fixture(scope="module")
def report() -> wellchem.Report:
    return wellchem.read(demo.REPORT)


@pytest.mark.parametrize("name", ["Report", "Sample", "Interpretation", "Limit", "Household"])
def test_written_json_is_what_its_schema_describes(name: str, report: wellchem.Report) -> None:
    schema = wellchem.schema.json_schemas()[name]
    jsonschema.Draft202012Validator.check_schema(schema)
    written = {
        "Report": lambda: report,
        "Sample": lambda: report.samples[0],
        "Interpretation": lambda: wellchem.interpret(report.samples[0]),
        "Limit": lambda: wellchem.limits.lookup("nitrate", authority="us-epa")[0],
        "Household": lambda: wellchem.Household.model_validate_json(demo.HOUSEHOLD.read_text(encoding="utf-8")),
    }[name]()
    jsonschema.Draft202012Validator(schema).validate(json.loads(written.model_dump_json()))


def test_a_schema_refuses_what_is_no_result(report: wellchem.Report) -> None:
    schema = wellchem.schema.json_schemas()["Sample"]
    broken = json.loads(report.samples[0].model_dump_json())
    broken["results"][0]["censoring"] = "somewhere"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.Draft202012Validator(schema).validate(broken)
