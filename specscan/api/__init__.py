"""All that the command line does, as functions: one a task. Heavy libraries are imported where they are needed."""

from specscan.api.datasets import evaluate, examine, export, gold_of_corrections, observe, query, scan
from specscan.api.papers import report, sheet, written_report
from specscan.api.places import copy_demo, copy_rules, demo_folder, rules_folder
from specscan.api.rule_checks import check_rules, run_rule_cases
from specscan.api.views import (
    changes,
    check_draft,
    claims,
    doubts,
    explain,
    gaps,
    plot_winter,
    sensitivity,
    table,
    winter,
)
from specscan.records.defaults import DEFAULT_RULESET

__all__ = [
    "DEFAULT_RULESET",
    "changes",
    "check_draft",
    "check_rules",
    "claims",
    "copy_demo",
    "copy_rules",
    "demo_folder",
    "doubts",
    "evaluate",
    "examine",
    "explain",
    "export",
    "gaps",
    "gold_of_corrections",
    "observe",
    "plot_winter",
    "query",
    "report",
    "rules_folder",
    "run_rule_cases",
    "scan",
    "sensitivity",
    "sheet",
    "table",
    "winter",
    "written_report",
]
