"""Every public file is accounted for, and no reason for leaving something unread hides an analyte that is known."""

import re

import pytest
from real_counts import LISTS, files, read
from real_truth import FOLDER

from wellchem.vocabulary import bundled

pytestmark = pytest.mark.skipif(not FOLDER.is_dir(), reason="the public data folder is not there")

# Reasons that speak of the name. The others concern the value, the unit or the kind of water: the name may be known.
OF_NAMES = {"unknown_name", "no_name", "not_a_table"}
# A value as the unread list prints it after the name: a number, perhaps compared, or a word for not detected.
VALUE = re.compile(r"\s(?:[<>≤≥]|[-+]?\d*\.?\d+(?:[eE][-+]?\d+)?(?=\s|$)|ND\b|no data\b).*$")


def hidden(unread):
    """The known names of an unread row whose reason says that there is none.

    A row of a table is printed as name, value and unit; a row outside every table as its cells.
    """
    parts = [*unread.text.split(" | "), VALUE.sub("", unread.text)]
    return {part for part in parts if bundled().value(part) is None and bundled().name(part) is not None}


@pytest.mark.parametrize("file", files() if FOLDER.is_dir() else [])
def test_no_reason_hides_an_analyte(file):
    if file in LISTS:
        assert read(file)[0] is None
        return
    found = [(one.reason.value, hidden(one), one.text[:120]) for one in read(file)[1] if one.reason.value in OF_NAMES]
    found = [one for one in found if one[1]]
    assert not found, (len(found), found[:8])


@pytest.mark.parametrize("file", files() if FOLDER.is_dir() else [])
def test_every_cell_is_claimed_once(file):
    report, unread = read(file)
    assert report is None or report.explanation.balanced
    assert all(one.origin.row or one.origin.page for one in unread)
