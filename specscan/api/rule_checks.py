"""Checks of rule files, and the examples that they carry."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from specscan.api.places import rules_folder

if TYPE_CHECKING:
    from specscan.judging.examples import CaseResult


def check_rules(path: str | Path | None = None, rules: str | Path | None = None) -> list[str]:
    """Give every mistake in a rule-set file, or in a whole folder of rules, as ``file:line: reason``.

    ``path`` is a rule-set file or a folder of rules (the built-in one by default); ``rules`` the folder whose fields
    a single rule-set file is checked against.
    """
    from specscan.dataset.us_units import us_columns
    from specscan.judging.claim_rules import load_claims
    from specscan.judging.rulesets import check_ruleset_file, load_rulesets
    from specscan.observing.rules import load_observing
    from specscan.physics.conditions import load_conditions
    from specscan.records.errors import RuleError
    from specscan.reports.draft_talk import load_talk
    from specscan.reports.page_rules import load_report_rules
    from specscan.rulebook.book import load_rulebook
    from specscan.scanning.limits import load_limits
    from specscan.settling.preferences import load_preferences

    target = Path(path) if path is not None else rules_folder()
    try:
        if target.is_dir():
            book = load_rulebook(target)
            load_claims(book, load_preferences(book))
            load_limits(target)
            load_conditions(target)
            load_observing(book)
            us_columns([], target)
            load_report_rules(target)
            load_talk(book)
            load_rulesets(target / "winter", book)
            return []
        return check_ruleset_file(target, load_rulebook(Path(rules) if rules is not None else rules_folder()))
    except RuleError as error:
        return error.mistakes


def run_rule_cases(path: str | Path | None = None, rules: str | Path | None = None) -> list[CaseResult]:
    """Run the cases that rule files carry: of one file, or of all rule sets in the rules; give one result per case.

    Raises:
        RuleError: a rule file is wrong.
    """
    from specscan.judging.examples import run_cases
    from specscan.judging.rulesets import load_ruleset, load_rulesets
    from specscan.rulebook.book import load_rulebook

    folder = Path(rules) if rules is not None else rules_folder()
    book = load_rulebook(folder)
    sets = [load_ruleset(Path(path), book)] if path is not None else load_rulesets(folder / "winter", book)
    return [result for ruleset in sets for result in run_cases(ruleset, book)]
