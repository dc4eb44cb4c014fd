"""The command line as its user meets it: what it prints, and its exit codes."""

import json
import subprocess
import sys

import pytest

import wellchem
from wellchem import cli, demo


def run(capsys, *words):
    code = cli.main([str(word) for word in words])
    caught = capsys.readouterr()
    return code, caught.out, caught.err


def test_demo_prints_problems_cautions_and_who_decides(capsys):
    code, out, _ = run(capsys, "demo", "--on", "2026-11-01")
    assert code == 0
    for words in ("WHAT TO DO FIRST", "Arsenic above", "Who decides:", "page 2, row", "40 CFR"):
        assert words in out
    assert "an invented laboratory" in out


def test_demo_as_json_comes_back_as_the_same_model(capsys):
    code, out, _ = run(capsys, "demo", "--json", "--on", "2026-11-01")
    assert code == 0
    finding = wellchem.Interpretation.model_validate_json(out)
    assert finding.on.isoformat() == "2026-11-01"
    assert finding.limits_version
    assert finding.library_version
    assert finding.schema_version


def test_read_shows_the_clean_table_and_explains_itself(capsys):
    code, out, _ = run(capsys, "read", demo.REPORT, "--explain")
    assert code == 0
    assert "reporting limit" in out
    assert "cells or words" in out


def test_read_as_csv_has_the_columns_of_the_schema(capsys):
    code, out, _ = run(capsys, "read", demo.REPORT, "--csv")
    assert code == 0
    assert out.splitlines()[0].split(",") == [column.name for column in wellchem.schema.columns("results")]


def test_limits_with_citation_and_date(capsys):
    code, out, _ = run(capsys, "limits", "lead", "--authority", "us-epa", "--on", "2028-01-01")
    assert code == 0
    assert "0.01 mg/L" in out
    assert "141.80(c)" in out  # 40 CFR 141.80(c): action level of 0.010 mg/L from 2027-11-01


def test_limits_as_json_and_table(capsys):
    code, out, _ = run(capsys, "limits", "NO3-N", "--json", "--authority", "who")
    assert code == 0
    assert json.loads(out)[0]["analyte"] == "nitrate"
    code, out, _ = run(capsys, "limits", "nitrate", "arsenic", "--table")
    assert code == 0
    assert "us-epa" in out
    assert "germany" in out


@pytest.mark.parametrize(
    "words, code",
    [
        (["read", "no such file.pdf"], 1),
        (["interpret", "no such file.pdf"], 1),
        (["limits", "unobtainium"], 2),
        (["limits", "lead", "--authority", "nowhere"], 2),
        (["interpret", str(demo.REPORT), "--household", "no such file.json"], 2),
    ],
)
def test_exit_codes(capsys, words, code):
    assert run(capsys, *words)[0] == code


def test_bad_usage_exits_with_2():
    for words in (["--no-such-flag"], ["limits", "lead", "--on", "yesterday"], []):
        with pytest.raises(SystemExit) as stopped:
            cli.main(words)
        assert stopped.value.code == 2


def test_an_empty_file_is_said_to_be_empty(capsys, tmp_path):
    path = tmp_path / "empty.csv"
    path.write_bytes(b"")
    code, _, err = run(capsys, "read", path)
    assert code == 1
    assert "empty" in err
    assert "Traceback" not in err


def test_a_household_with_a_wrong_field_is_told_which(capsys, tmp_path):
    path = tmp_path / "household.json"
    path.write_text('{"people": "many", "pets": 2}')
    code, _, err = run(capsys, "demo", "--household", path)
    assert code == 2
    assert "people" in err
    assert "pets" in err


def test_piped_output_is_cut_without_a_traceback():
    shown = subprocess.run(
        [sys.executable, "-c", "import subprocess,sys; p=subprocess.Popen([sys.executable,'-m','wellchem','demo'],"
         "stdout=subprocess.PIPE,stderr=subprocess.PIPE); p.stdout.readline(); p.stdout.close(); "
         "sys.stdout.write(p.stderr.read().decode()); p.wait()"],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert "Traceback" not in shown.stdout
