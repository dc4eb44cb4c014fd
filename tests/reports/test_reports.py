"""Every invented layout is read result by result against its truth, and every cell or word is accounted for."""

import pytest
from reports_score import MAKERS, score


@pytest.fixture(scope="module", params=MAKERS, ids=str)
def scored(request):
    layout = MAKERS[request.param]()
    return request.param, score(layout)


def test_no_result_is_wrong_and_none_is_invented(scored):
    _, one = scored
    assert (one.wrong, one.extra) == (0, 0), "\n".join(one.lines)


def test_every_result_is_found(scored):
    _, one = scored
    assert one.right == one.truth, "\n".join(one.lines)


def test_quality_control_is_kept_apart(scored):
    _, one = scored
    assert not any(line.startswith("quality control") for line in one.lines), "\n".join(one.lines)


def test_days_and_what_is_unread_are_told(scored):
    _, one = scored
    assert not any(line.startswith("day ") or (" of " in line and line.startswith("unread:")) for line in one.lines)


def test_every_cell_or_word_is_claimed_once(scored):
    _, one = scored
    assert one.balanced


def test_what_is_printed_of_the_sample_is_found(scored):
    key, one = scored
    if not key.endswith(("states", "browser", "abroad", "letters")):
        pytest.skip("the truth of this layout does not say what is printed of its samples")
    assert not one.heads, "\n".join(one.heads)
