"""JSON for other programs: plain SI numbers, the same keys every time, never NaN or infinity."""

import json
import math
from collections.abc import Mapping
from datetime import date
from typing import Any


def json_text(value: Mapping[str, Any]) -> str:
    """Return the value as JSON; a number that is not finite becomes null, a date its ISO form."""
    return json.dumps(_plain(value), ensure_ascii=False, indent=2, allow_nan=False)


def _plain(value: Any) -> Any:  # noqa: ANN401 - anything JSON can hold
    if isinstance(value, float):
        return value if math.isfinite(value) else None
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return {str(key): _plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple | set | frozenset):
        return [_plain(inner) for inner in value]
    return value
