"""Columns that are headed alike under the names of several samples are the samples', whatever words the names hold."""

import io

import pytest

import wellchem


@pytest.mark.parametrize("name", ["By the mill", "By GI", "North gate"])
def test_a_header_word_in_the_name_of_a_sample(name):
    text = (
        f",,South gate,,{name},,Ford,\n"
        "Analyte,Units,FA,RA,FA,RA,FA,RA\n"
        "Iron,mg/L,0.11,0.21,0.31,0.41,0.51,0.61\n"
        "Manganese,mg/L,0.012,0.022,0.032,0.042,0.052,0.062\n"
        "Zinc,mg/L,1.1,1.2,1.3,1.4,1.5,1.6\n"
    )
    iron = wellchem.read_batch([io.BytesIO(text.encode())]).results.query("analyte == 'iron'")
    wanted = {0.11: "South gate FA", 0.21: "South gate RA", 0.31: f"{name} FA", 0.41: f"{name} RA"}
    wanted |= {0.51: "Ford FA", 0.61: "Ford RA"}
    assert dict(zip(iron["value"], iron["sample_id"], strict=True)) == wanted
