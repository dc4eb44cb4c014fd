"""Dates that laboratories print in lines of words: which of them is the day of collection, of receipt, of analysis."""

import io

import openpyxl
import pytest

import wellchem

TABLE = "Parameter,Result,Unit\nIron,0.42,mg/L\nNitrate-N,3.1,mg/L\npH,7.2,\n"
LIST = "Iron ..... 0.42 mg/L\nNitrate-N ..... 3.1 mg/L\npH ..... 7.2\n"
# Line printed, then what it says of collection, receipt and analysis.
LINES = [
    ("Sampled 14 May 2026", "2026-05-14", None, None),
    ("Sampled 14 May 2026, received 15 May 2026, tested 16 May 2026", "2026-05-14", "2026-05-15", "2026-05-16"),
    ("taken on 9th February 2026", "2026-02-09", None, None),
    ("Taken June 5, 2026 at 7:40 am", "2026-06-05 07:40:00", None, None),
    ("Date of samples: 14 May 2026", "2026-05-14", None, None),
    ("Date of samples 14/05/2026", "2026-05-14", None, None),
    ("Prélevé le 3 mars 2026", "2026-03-03", None, None),
    ("Prélevé le 3 mars 2026 à 8h30, reçu le 4 mars 2026", "2026-03-03 08:30:00", "2026-03-04", None),
    ("Probenahme: 03.03.2026 08:15", "2026-03-03 08:15:00", None, None),
    ("Probenahme am 03.03.2026 um 08:15 Uhr", "2026-03-03 08:15:00", None, None),
    (
        "Die Probe wurde am 3. März 2026 entnommen und am 4. März 2026 im Labor untersucht.",
        "2026-03-03",
        None,
        "2026-03-04",
    ),
    ("Fecha de muestreo: 3 de marzo de 2026", "2026-03-03", None, None),
    ("Muestra tomada el 3 de marzo de 2026 y recibida el 4 de marzo de 2026", "2026-03-03", "2026-03-04", None),
    (
        "The sample of your well was collected by the owner on 9 February 2026 and reached us on 10 February 2026.",
        "2026-02-09",
        "2026-02-10",
        None,
    ),
    ("On 9 February 2026 a sample was taken from your kitchen tap.", "2026-02-09", None, None),
    (
        "We received your sample on February 10, 2026; it had been taken on February 9, 2026.",
        "2026-02-09",
        "2026-02-10",
        None,
    ),
    ("Report issued 20 May 2026", None, None, None),
    ("Samples analysed between 5 May 2026 and 9 May 2026", None, None, None),
    ("Previous sample taken 5 May 2024", None, None, None),
    ("Last sampled on 5 May 2024", None, None, None),
    ("Date sampled Tuesday 14 April 2026", "2026-04-14", None, None),
    ("Sampling date: Tue 14 Apr 2026 09:10", "2026-04-14 09:10:00", None, None),
    ("Collected by J. Doe on 04/14/2026 at 10:15 AM", "2026-04-14 10:15:00", None, None),
    ("Collected by: client 04/14/2026", "2026-04-14", None, None),
    ("Sample drawn 04-14-26 0915 hrs", "2026-04-14 09:15:00", None, None),
    (
        "COLLECTED: 14-APR-2026 07:40   RECEIVED: 14-APR-2026 13:00   REPORTED: 20-APR-2026",
        "2026-04-14 07:40:00",
        "2026-04-14 13:00:00",
        None,
    ),
    (
        "Collected 4/14/26 7:40 Received 4/15/26 8:00 Analyzed 4/16/26",
        "2026-04-14 07:40:00",
        "2026-04-15 08:00:00",
        "2026-04-16",
    ),
    (
        "Sampled on: 14.04.2026 Arrived: 15.04.2026 Tested: 16.04.2026 - 20.04.2026",
        "2026-04-14",
        "2026-04-15",
        "2026-04-16",
    ),
    ("Date of sampling - 14 April 2026", "2026-04-14", None, None),
    ("Results of your water sample dated 14 April 2026", "2026-04-14", None, None),
    ("Results for the sample of 14 April 2026", "2026-04-14", None, None),
    ("Echantillon prélevé par le client le 03/03/2026 à 08:15", "2026-03-03 08:15:00", None, None),
    ("Entnahme: Di, 14.04.2026, 8.15 Uhr", "2026-04-14 08:15:00", None, None),
    ("The well was chlorinated on 2 April 2026 and sampled on 14 April 2026.", "2026-04-14", None, None),
    ("Well drilled 3 May 1998", None, None, None),
    ("This report is valid until 14 April 2027", None, None, None),
    ("Water collected after flushing on 14 April 2026", "2026-04-14", None, None),
    ("Sample taken: 14th of April, 2026", "2026-04-14", None, None),
    ("Date/time taken: 2026-04-14T09:10", "2026-04-14 09:10:00", None, None),
    ("Date taken (d/m/y): 05/04/2026", "2026-04-05", None, None),
    ("Date taken (mm/dd/yyyy): 05/04/2026", "2026-05-04", None, None),
    ("Date Rec'd: 04/15/2026", None, "2026-04-15", None),
    ("Received in the laboratory April 15, 2026. Collected April 14, 2026.", "2026-04-14", "2026-04-15", None),
    ("Sample date: week of 14 April 2026", None, None, None),
    ("Sampled by: R. Vale, 14 April 2026", "2026-04-14", None, None),
    ("Toma de muestra: 14/04/2026, 10:00 h", "2026-04-14 10:00:00", None, None),
    ("Prélèvement du 14/04/2026 à 10h00", "2026-04-14 10:00:00", None, None),
    ("Prélevé le : mardi 14 avril 2026 à 10 h 05", "2026-04-14 10:05:00", None, None),
    ("Eingang der Probe am 15.04.2026", None, "2026-04-15", None),
    ("Untersuchungszeitraum: 15.04.2026 - 20.04.2026", None, None, "2026-04-15"),
]


def _sheet(line: str) -> bytes:
    book = openpyxl.Workbook()
    for row in (["Ridgeway Laboratory"], [line], [], *(text.split(",") for text in TABLE.split())):
        book.active.append(row)
    buffer = io.BytesIO()
    book.save(buffer)
    return buffer.getvalue()


FILES = {
    "above a list.txt": lambda line: f"Ridgeway Laboratory\n\n{line}\n\n{LIST}".encode(),
    "above a table.csv": lambda line: f'Ridgeway Laboratory\n"{line}"\n\n{TABLE}'.encode(),
    "below a table.csv": lambda line: f'{TABLE}\n"{line}"\n'.encode(),
    "sheet.xlsx": _sheet,
}


@pytest.mark.parametrize("name", FILES)
@pytest.mark.parametrize(("line", "collected", "received", "analysed"), LINES)
def test_a_date_is_what_its_words_say(name, line, collected, received, analysed):
    report = wellchem.read(FILES[name](line), name=name)
    (sample,) = report.samples
    told = (sample.collected, sample.received, sample.analysed)
    assert tuple(None if one is None else str(one) for one in told) == (collected, received, analysed)
    assert len(sample.results) == 3
    assert report.explanation.balanced


def test_a_sentence_goes_on_in_the_next_line():
    prose = (
        "The sample of the water of your well, which was taken\nby our sampler on 9 February 2026, was received"
        " at the\nlaboratory on 10 February 2026 and examined there.\n"
    )
    (sample,) = wellchem.read(f"{prose}\n{LIST}".encode(), name="letter.txt").samples
    assert (str(sample.collected), str(sample.received), sample.analysed) == ("2026-02-09", "2026-02-10", None)


def test_a_label_comes_before_a_line_of_words():
    text = f"Sample taken 9 February 2026 by the owner.\nDate collected: 8 February 2026\n\n{LIST}"
    (sample,) = wellchem.read(text.encode(), name="a.txt").samples
    assert str(sample.collected) == "2026-02-08"


def test_two_days_of_one_thing_are_not_taken():
    text = f"Kitchen tap sampled 9 February 2026, well head sampled 11 February 2026\n\n{LIST}"
    (sample,) = wellchem.read(text.encode(), name="a.txt").samples
    assert sample.collected is None


def test_the_order_of_day_and_month_is_said_where_it_is_supposed():
    (sample,) = wellchem.read(f"Taken 03/04/2026, received 04/04/2026\n\n{LIST}".encode(), name="a.txt").samples
    assert {("date_order", "mdy")} <= {(one.code, one.value) for one in sample.results[0].assumptions}
    # Received before it was taken if the month came first: the day does.
    (sample,) = wellchem.read(f"Taken 02/04/2026, received 03/03/2026\n\n{LIST}".encode(), name="a.txt").samples
    assert str(sample.collected) == "2026-02-04"
    assert not any(one.code == "date_order" for one in sample.results[0].assumptions)


@pytest.mark.parametrize(
    ("header", "day"),
    [
        ("Date Collected (mm/dd/yyyy)", "2026-03-04"),
        ("Sampled DD/MM/YYYY", "2026-04-03"),
        ("Date de prélèvement (JJ/MM/AAAA)", "2026-04-03"),
    ],
)
def test_a_format_of_dates_beside_a_header_decides_their_order(header, day):
    text = f"Sample,{header},Parameter,Result,Unit\nW-1,03/04/2026,Iron,0.42,mg/L\nW-1,03/04/2026,pH,7.2,\n"
    (sample,) = wellchem.read(text.encode(), name="a.csv").samples
    assert str(sample.collected) == day
    assert not any(one.code == "date_order" for one in sample.results[0].assumptions)
