"""Which tests share a process where several run at once: those of one module, and those of one public file."""

from typing import Any

import pytest
from xdist.scheduler import LoadScopeScheduling


class _Shared(LoadScopeScheduling):
    """A public file is read once for all the tests that look at it; what a module has made is made once."""

    def _split_scope(self, nodeid: str) -> str:
        module, _, test = nodeid.partition("::")
        return test.partition("[")[2] if module.startswith("tests/real/") else module


def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> LoadScopeScheduling:
    """Tests handed out by what they share."""
    return _Shared(config, log)
