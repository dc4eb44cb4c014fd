"""The command line: `wellchem read`, `interpret`, `limits`, `demo`.

Exit codes: 0 done, 1 nothing could be read, 2 bad usage. A health finding is not an error.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from wellchem import __version__, errors

if TYPE_CHECKING:
    from wellchem.models.finding import Interpretation
    from wellchem.models.household import Household
    from wellchem.models.sample import Report


def _date(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text!r} is not a date like 2026-05-01") from None


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="wellchem",
        description="Reads a laboratory's report on a private well's water and works out what comes next.",
        epilog="It informs; it does not certify. The health authority, a certified laboratory, local code and "
        "licensed professionals decide.",
    )
    parser.add_argument("--version", action="version", version=f"wellchem {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")

    read = commands.add_parser("read", help="the cleaned results of a report, and what could not be read")
    read.add_argument("files", nargs="+", metavar="FILE")
    read.add_argument(
        "--format", choices=("delimited", "spreadsheet", "pdf"), help="what the file is, if its name lies"
    )
    read.add_argument("--explain", action="store_true", help="how each table was understood, column by column")
    form = read.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="the report as JSON")
    form.add_argument("--csv", action="store_true", help="every column of the results frame as CSV")

    interpret = commands.add_parser("interpret", help="what is wrong with the water, and what comes next")
    interpret.add_argument("files", nargs="+", metavar="FILE")
    _interpret_options(interpret)

    demo = commands.add_parser("demo", help="interpret the bundled report of an invented laboratory and well")
    _interpret_options(demo)

    limits = commands.add_parser("limits", help="look up limits with their citations")
    limits.add_argument("analytes", nargs="+", metavar="ANALYTE")
    limits.add_argument("--authority", action="append", metavar="NAME", help="may be given more than once")
    limits.add_argument("--on", type=_date, metavar="DATE", help="as in force on that day; default today")
    limits.add_argument("--table", action="store_true", help="one table over authorities")
    limits.add_argument("--json", action="store_true", help="the limits as JSON")
    return parser


def _interpret_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--authority", action="append", metavar="NAME", help="default us-epa; may be given more than once"
    )
    parser.add_argument("--on", type=_date, metavar="DATE", help="limits as in force on that day; default today")
    parser.add_argument("--household", type=Path, metavar="JSON", help="what the household says of itself and its well")
    form = parser.add_mutually_exclusive_group()
    form.add_argument("--json", action="store_true", help="the interpretation as JSON")
    form.add_argument("--html", type=Path, metavar="OUT", help="write one printable HTML page")


def _read_all(files: Sequence[str], format: str | None) -> list[Report]:
    from wellchem.intake import read

    reports = []
    for file in files:
        try:
            reports.append(read(file, format=format))
        except errors.ReadError as error:
            print(f"wellchem: {error}", file=sys.stderr)
    return reports


def _household(path: Path | None) -> Household | None:
    from pydantic import ValidationError

    from wellchem.models.household import Household

    if path is None:
        return None
    try:
        return Household.model_validate_json(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise _Usage(f"{path}: {error.strerror}") from None
    except ValidationError as error:
        faults = "; ".join(f"{'.'.join(map(str, e['loc'])) or 'file'}: {e['msg']}" for e in error.errors())
        raise _Usage(f"{path}: {faults}") from None


class _Usage(Exception):
    """The words of the command line ask for something impossible."""


def _read(options: argparse.Namespace) -> int:
    from wellchem.display import reports

    found = _read_all(options.files, options.format)
    for report in found:
        if options.json:
            print(report.model_dump_json(indent=2))
        elif options.csv:
            report.to_frame().to_csv(sys.stdout, index=False)
        else:
            print(reports.render(report, explain=options.explain), end="")
    return 0 if found else 1


def _findings(files: Sequence[str], options: argparse.Namespace, household: Household | None) -> list[Interpretation]:
    from wellchem.interpretation import interpret

    reports = _read_all(files, None)
    about = {"authorities": options.authority or ["us-epa"], "on": options.on, "household": household}
    return [interpret(sample, **about, reports=reports) for report in reports for sample in report.samples]


def _show(findings: list[Interpretation], options: argparse.Namespace) -> int:
    if options.json:
        whole = [json.loads(finding.model_dump_json()) for finding in findings]
        print(json.dumps(whole[0] if len(whole) == 1 else whole, indent=2, ensure_ascii=False))
    elif options.html:
        for number, finding in enumerate(findings):
            path = options.html if number == 0 else options.html.with_stem(f"{options.html.stem}-{number + 1}")
            path.write_text(finding.to_html(), encoding="utf-8")
            print(path)
    else:
        print("\n\n".join(finding.to_text() for finding in findings), end="")
    return 0 if findings else 1


def _interpret(options: argparse.Namespace) -> int:
    return _show(_findings(options.files, options, _household(options.household)), options)


def _demo(options: argparse.Namespace) -> int:
    from wellchem import demo

    if not options.json and not options.html:
        print("The report of an invented laboratory on an invented household's well.\n")
    household = _household(options.household or demo.HOUSEHOLD)
    return _show(_findings([str(demo.REPORT)], options, household), options)


def _limits(options: argparse.Namespace) -> int:
    from wellchem import limits
    from wellchem.display import limit_tables

    authorities = options.authority or list(limits.authorities())
    found = [
        limit
        for analyte in options.analytes
        for authority in authorities
        for limit in limits.lookup(analyte, authority=authority, on=options.on)
    ]
    if options.json:
        print(json.dumps([json.loads(limit.model_dump_json()) for limit in found], indent=2, ensure_ascii=False))
    elif options.table:
        print(limit_tables.across(found), end="")
    else:
        print(limit_tables.each(found, [limits.standing(authority) for authority in authorities]), end="")
    return 0


_COMMANDS = {"read": _read, "interpret": _interpret, "demo": _demo, "limits": _limits}


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code."""
    options = _parser().parse_args(arguments)
    try:
        return _COMMANDS[options.command](options)
    except (_Usage, errors.UnknownAnalyte, errors.UnknownAuthority, errors.UnitError) as error:
        print(f"wellchem: {error}", file=sys.stderr)
        return 2
    except errors.WellchemError as error:
        print(f"wellchem: {error}", file=sys.stderr)
        return 1
    except BrokenPipeError:  # the reader of a pipe has seen enough
        sys.stderr.close()
        return 0


if __name__ == "__main__":
    sys.exit(main())
