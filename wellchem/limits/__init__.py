"""Guideline values of health authorities, dated and cited, and results compared with them.

A comparison never says more than the result allows: what cannot be told is `undecided`, with its reasons. The limits of
public systems bind no private well; `standing` says what each authority's numbers are to one.
"""

from wellchem.limits.citing import lookup, table
from wellchem.limits.comparing import compare
from wellchem.limits.documents import authorities, standing, version
from wellchem.limits.rows import LimitTable, load
from wellchem.limits.sampling import compare_sample

__all__ = ["LimitTable", "authorities", "compare", "compare_sample", "load", "lookup", "standing", "table", "version"]
