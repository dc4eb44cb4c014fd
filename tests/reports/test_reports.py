"""Every invented layout is read result by result against its truth, and every cell or word is accounted for."""

import pytest
from reports_score import MAKERS, score


@pytest.fixture(scope="module", params=MAKERS, ids=str)
def scored(request):
    return score(MAKERS[request.param]())


def test_no_result_is_wrong_and_none_is_invented(scored):
    assert (scored.wrong, scored.extra) == (0, 0), "\n".join(scored.lines)


def test_every_result_is_found(scored):
    assert scored.right == scored.truth, "\n".join(scored.lines)


def test_quality_control_is_kept_apart(scored):
    assert not any(line.startswith("quality control") for line in scored.lines), "\n".join(scored.lines)


def test_days_and_what_is_unread_are_told(scored):
    assert not any(line.startswith("day ") or (" of " in line and line.startswith("unread:")) for line in scored.lines)


def test_every_cell_or_word_is_claimed_once(scored):
    assert scored.balanced


def test_what_is_printed_of_the_sample_is_found(scored):
    assert not scored.heads, "\n".join(scored.heads)
