"""One short name for all that a verdict depends on, so that a kept verdict is known to be of today.

Two problems with the same fingerprint are the same problem. The order of panels, pieces and points
counts, because the search may depend on it.
"""

import hashlib
import json

from planning.coverage.cover_file import problem_to_json
from planning.coverage.problem import Problem


def fingerprint(problem: Problem) -> str:
    """SHA-256 of the problem's canonical JSON (sorted keys, no spaces), in hexadecimal."""
    text = json.dumps(
        _plain(problem_to_json(problem)), sort_keys=True, separators=(",", ":"), allow_nan=False
    )
    return hashlib.sha256(text.encode()).hexdigest()


def _plain(value: object) -> object:
    """The value with every number as a float, so that 5 and 5.0 and -0.0 and 0 are one."""
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(item) for item in value]
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value) + 0.0
    return value
