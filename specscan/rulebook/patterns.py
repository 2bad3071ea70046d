"""Regular expressions from rule files, as far as they cannot keep the program busy without end."""

from __future__ import annotations

import re
from re import _constants as codes  # type: ignore[attr-defined]
from re import _parser as parser  # type: ignore[attr-defined]
from typing import Any

LONGEST = 2_000  # characters of one pattern
MANY = 50  # repetitions from which a bounded one counts as endless
REPEATS = {codes.MAX_REPEAT, codes.MIN_REPEAT}


def checked_pattern(text: str, flags: int = 0) -> re.Pattern[str]:
    """Compile a pattern of a rule file.

    Refused is what makes Python's engine try exponentially many ways: an endless repetition of something that itself
    has several ways to match (a repetition of unequal length, or alternatives), as ``(a+)+`` and ``(a|ab)*``.

    Raises:
        re.error: it is no regular expression, or one of these.
    """
    if len(text) > LONGEST:
        raise re.error(f"longer than {LONGEST} characters", text)
    if _runs_away(parser.parse(text, flags), inside=False):
        raise re.error("an endless repetition of something that can itself match in several ways", text)
    return re.compile(text, flags)


def _runs_away(parsed: Any, *, inside: bool) -> bool:
    for code, argument in parsed:
        if code in REPEATS:
            least, most, inner = argument
            if (inside and least != most) or _runs_away(inner, inside=inside or most >= MANY):
                return True
        elif code is codes.BRANCH:
            if inside or any(_runs_away(one, inside=inside) for one in argument[1]):
                return True
        elif code is codes.SUBPATTERN:
            if _runs_away(argument[-1], inside=inside):
                return True
        elif code in (codes.ASSERT, codes.ASSERT_NOT) and _runs_away(argument[1], inside=inside):
            return True
    return False
