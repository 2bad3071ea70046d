"""The tables of the dataset. Names and meanings are promised to other programs; see the project's README."""

from __future__ import annotations

VERSION = 4
SCORED_BY = "scored_by"  # the key under which kept.about has the rules and conditions of the last state

# claims: one row per claim of a document about a van. `printed` are its words, `said` what of them makes the claim (or
# the values that running text gives), `title` what it says; `kind` season, temperature, grade, or a topic or kind of
# rules/claims.yaml; `verdict` supported, only_with_options, contradicted or not_supported, of its weakest part;
# `because` the parts in short; `note` what has to be said beside it. `claim_fact_ids` are the facts that the claim
# itself states, `fact_ids` those that it is held against, `fields` the fields and derived quantities asked for.
# claim_parts: one row per thing that a claim implies: the `condition` over the van's columns, whether it holds as
# delivered and with options (yes, no, unknown), the verdict, and `because`, the evidence in words, arithmetic included.
TABLES: dict[str, str] = {
    "documents": """
        doc_id VARCHAR PRIMARY KEY, path VARCHAR, name VARCHAR, sha256 VARCHAR, kind VARCHAR, language VARCHAR,
        pages INTEGER, status VARCHAR, message VARCHAR, dated VARCHAR, unread_pages INTEGER[]""",
    "facts": """
        fact_id VARCHAR PRIMARY KEY, van_id VARCHAR, field VARCHAR, value_num DOUBLE, value_low DOUBLE,
        value_high DOUBLE, value_text VARCHAR, value_flag BOOLEAN, unit VARCHAR, printed VARCHAR, printed_unit VARCHAR,
        basis VARCHAR, availability VARCHAR, option_name VARCHAR, doc_id VARCHAR, page INTEGER, x0 DOUBLE, top DOUBLE,
        x1 DOUBLE, bottom DOUBLE, found_by VARCHAR, confidence DOUBLE, rejected_because VARCHAR, form VARCHAR,
        grounds VARCHAR[]""",
    "settled": """
        van_id VARCHAR, field VARCHAR, equipment VARCHAR, value_num DOUBLE, value_low DOUBLE, value_high DOUBLE,
        value_text VARCHAR, value_flag BOOLEAN, unit VARCHAR, availability VARCHAR, status VARCHAR, fact_ids VARCHAR[],
        note VARCHAR, reason VARCHAR, basis VARCHAR""",
    "observations": """
        van_id VARCHAR, field VARCHAR, equipment VARCHAR, answer VARCHAR, value_num DOUBLE, value_text VARCHAR,
        value_flag BOOLEAN, unit VARCHAR, who VARCHAR, observed_on DATE, how VARCHAR, evidence VARCHAR, note VARCHAR,
        document VARCHAR, page INTEGER, line INTEGER""",
    "claims": """
        claim_id VARCHAR PRIMARY KEY, van_id VARCHAR, doc_id VARCHAR, page INTEGER, x0 DOUBLE, top DOUBLE, x1 DOUBLE,
        bottom DOUBLE, kind VARCHAR, title VARCHAR, said VARCHAR, printed VARCHAR, form VARCHAR, availability VARCHAR,
        verdict VARCHAR, because VARCHAR, note VARCHAR, claim_fact_ids VARCHAR[], fact_ids VARCHAR[],
        fields VARCHAR[]""",
    "claim_parts": """
        claim_id VARCHAR, part INTEGER, means VARCHAR, condition VARCHAR, fields VARCHAR[], as_delivered VARCHAR,
        with_options VARCHAR, verdict VARCHAR, because VARCHAR, fact_ids VARCHAR[]""",
    "van_names": "van_id VARCHAR, doc_id VARCHAR, maker VARCHAR, model VARCHAR, model_year INTEGER",
    "scores": """
        van_id VARCHAR, ruleset VARCHAR, equipment VARCHAR, criterion VARCHAR, points DOUBLE, points_low DOUBLE,
        points_high DOUBLE, points_max DOUBLE, because VARCHAR""",
    "gaps": """
        van_id VARCHAR, ruleset VARCHAR, field VARCHAR, reason VARCHAR, points_at_stake DOUBLE, question VARCHAR,
        narrows DOUBLE, narrows_what VARCHAR""",
    "fields": """
        field VARCHAR, type VARCHAR, unit VARCHAR, kind VARCHAR, meaning VARCHAR, words VARCHAR[]""",
    "rulesets": "ruleset VARCHAR, title VARCHAR, criterion VARCHAR, criterion_title VARCHAR, points_max DOUBLE, "
    "fields VARCHAR[], source VARCHAR, note VARCHAR",
    "runs": """
        run_id VARCHAR PRIMARY KEY, version VARCHAR, rules_sha256 VARCHAR, started_at TIMESTAMP, finished_at TIMESTAMP,
        documents INTEGER, documents_read INTEGER, documents_unreadable INTEGER, vans INTEGER, facts INTEGER,
        conditions VARCHAR""",
}

# What the program keeps for itself: the findings of each file, so that an unchanged one is not read again (`outline`
# has the names of vans and a digest of the findings, which are long); by van a digest of all that its rows follow from.
INTERNAL = """
    CREATE SCHEMA IF NOT EXISTS kept;
    CREATE TABLE IF NOT EXISTS kept.about (key VARCHAR PRIMARY KEY, value VARCHAR);
    CREATE TABLE IF NOT EXISTS kept.findings (
        path VARCHAR PRIMARY KEY, sha256 VARCHAR, made_by VARCHAR, record VARCHAR, outline VARCHAR, found VARCHAR);
    CREATE TABLE IF NOT EXISTS kept.vans (van_id VARCHAR PRIMARY KEY, key VARCHAR);
"""


def create_statements() -> list[str]:
    """Give the statements that make an empty dataset."""
    return [INTERNAL, *(f"CREATE TABLE IF NOT EXISTS {name} ({columns})" for name, columns in TABLES.items())]


def columns_of(table: str) -> list[str]:
    """Give the names of a table's columns, in order."""
    depth, part, parts = 0, "", []
    for character in TABLES[table]:
        depth += (character == "(") - (character == ")")
        if character == "," and depth == 0:
            parts.append(part)
            part = ""
        else:
            part += character
    return [text.split()[0] for text in [*parts, part]]
