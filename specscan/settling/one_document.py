"""The statements of one document: sets joined, implied ones set aside, repeats known."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import replace

from specscan.records.facts import Fact
from specscan.rulebook.book import Rulebook
from specscan.settling.confidence import DISAGREES
from specscan.settling.preferences import Preferences

IMPLIED = "only implied; an exact statement stands elsewhere in the document"
IN_UNION = "one line of a set that is stated over several lines; counted in their union"
LESS_EXACT = "running text names only a part of what a table or list states in full"
ABSENT = "of what the document says this van does not have"
UNION_MARK = ":union"  # ends ``found_by`` of a fact that joins several lines
DOUBTFUL = "read with less confidence than is asked for"
BY_SETTLING = (IMPLIED, IN_UNION, LESS_EXACT, ABSENT, DOUBTFUL)  # why facts are set aside here, not when found

AS_DELIVERED = ("standard", "unstated")


def consolidate(facts: Iterable[Fact], book: Rulebook, preferences: Preferences) -> list[Fact]:
    """Give the facts of one document with how sure they are, those set aside that others make needless, with why.

    Where a set is stated over several lines, a fact with their union is added (contract: "a set stated over
    several lines is their union"); it stands at the place of the first line.
    """
    result = _without_absent([_weighed(fact, preferences) for fact in facts], book)
    groups: dict[tuple[str, str], list[int]] = defaultdict(list)
    for index, fact in enumerate(result):
        if not fact.rejected:
            groups[(fact.model, fact.field)].append(index)
    for (_, name), members in groups.items():
        spec = book.fields[name]
        parts = spec.union and _is_one_part(result, members)
        if not parts:
            members = _without_implied(result, members, spec.weak)
        if spec.type == "set":
            for kinds in (AS_DELIVERED, ("optional",), ("not_available",)):
                _join(result, [i for i in members if result[i].availability in kinds], preferences, parts=parts)
        elif name not in preferences.never_conflicts:
            _note_disagreement(result, [i for i in members if result[i].availability in AS_DELIVERED], preferences)
    return result


def _without_absent(facts: list[Fact], book: Rulebook) -> list[Fact]:
    """Set aside what is said of a part that a van lacks, as of the black tank in "gray and black tanks: heated".

    A field's ``absent_with`` names the values of other fields with which there is none; a part of which one statement
    says that it is there, if only as an option, stays, and so does one where only an option has none.
    """
    parts = {name: spec.absent_with for name, spec in book.fields.items() if spec.absent_with}
    asked = {name for others in parts.values() for name in others}
    told: dict[tuple[str, str], set[str]] = defaultdict(set)
    delivered: set[tuple[str, str]] = set()
    for fact in facts:
        if not fact.rejected and fact.field in asked:
            told[fact.model, fact.field].add(fact.text or ("" if fact.num is None else f"{fact.num:g}"))
            if fact.availability in AS_DELIVERED:
                delivered.add((fact.model, fact.field))

    def is_absent(fact: Fact) -> bool:
        values = [(told[fact.model, name], set(words)) for name, words in parts[fact.field].items()]
        known = any((fact.model, name) in delivered for name in parts[fact.field])
        return known and all(said <= absent for said, absent in values)

    return [
        replace(fact, rejected=ABSENT) if not fact.rejected and fact.field in parts and is_absent(fact) else fact
        for fact in facts
    ]


def _weighed(fact: Fact, preferences: Preferences) -> Fact:
    """Give a fact with how sure it is, set aside where that is less than is asked for."""
    sure = preferences.confidences.of(fact)
    doubtful = not fact.rejected and sure < preferences.settle_at
    if sure == fact.confidence and not doubtful:
        return fact
    return replace(fact, confidence=sure, rejected=DOUBTFUL if doubtful else fact.rejected)


def _note_disagreement(facts: list[Fact], members: list[int], preferences: Preferences) -> None:
    """Weigh anew the statements of one field that another of the same document contradicts."""
    alike: dict[tuple[object, ...], list[int]] = defaultdict(list)  # on nothing else it rests whether two agree
    for i in members:
        alike[facts[i].num, facts[i].unit, facts[i].text, facts[i].flag].append(i)
    firsts = {key: facts[some[0]] for key, some in alike.items()}
    odd = {
        i
        for key, some in alike.items()
        if not all(preferences.agree(one.field, firsts[key], one) for one in firsts.values())
        for i in some
    }
    for index in sorted(odd):
        grounds = (*facts[index].grounds, DISAGREES)
        facts[index] = _weighed(replace(facts[index], grounds=grounds), preferences)


def _without_implied(facts: list[Fact], members: list[int], weak: Sequence[str]) -> list[int]:
    """Set aside implied statements where an exact one that says more than "none" stands beside them.

    An exact one that is only offered leaves what is delivered, unless that is the vaguest of the ``weak`` words: the
    heated bay stays beside pads that can be ordered, "heated" may mean them. So do words of another kind: a van with
    front-wheel drive may be had with all-wheel drive. What is only offered stays beside another that is delivered: "A
    300 Ah lithium battery is an option".
    """
    exact = [i for i in members if not facts[i].weak and facts[i].text != "none"]
    if not exact:
        return members
    offered = all(facts[i].availability in ("optional", "not_available") for i in exact)
    delivered = all(facts[i].availability in AS_DELIVERED for i in exact)
    others = {*weak, "", None, *(facts[i].text for i in exact)}
    for index in members:
        another = facts[index].text not in others
        stays = facts[index].text in weak[:-1] or another
        stays = stays and offered and facts[index].availability in AS_DELIVERED
        stays = stays or another and delivered and facts[index].availability not in AS_DELIVERED
        if facts[index].weak and not stays:
            facts[index] = replace(facts[index], rejected=IMPLIED)
    return [i for i in members if not facts[i].rejected]


def _is_one_part(facts: list[Fact], members: list[int]) -> bool:
    """Tell whether all that is exactly said names one part of a union: "Insulated floor: yes" lists no surfaces.

    What is implied of others, by "wall insulation: wool, 25 mm", then holds beside it. So it does beside running
    text where nothing is exactly said: "Walls, roof and floor are insulated."
    """
    exact = {facts[i].text for i in members if not facts[i].weak and facts[i].availability in AS_DELIVERED}
    implied = {facts[i].text for i in members if facts[i].weak and facts[i].availability in AS_DELIVERED}
    return len(exact) <= 1 and bool(implied - exact)


def _join(facts: list[Fact], members: list[int], preferences: Preferences, *, parts: bool) -> None:
    """Join the lines of a set; where they are ``parts``, what running text says is one too."""
    spoken = [i for i in members if facts[i].how in ("prose", "heading")]
    listed = [i for i in members if i not in spoken]
    if listed and spoken and not parts:
        words = _words(facts, listed)
        for index in spoken:
            if _words(facts, [index]) <= words:
                facts[index] = replace(facts[index], rejected=LESS_EXACT)
        members = listed
    if len(members) < 2:
        return
    ordered = sorted(members, key=lambda i: (preferences.rank(facts[i]), i))
    words = _words(facts, members)
    whole = [i for i in ordered if _words(facts, [i]) == words]
    if whole:
        for index in members:
            if index != whole[0] and _words(facts, [index]) != words:
                facts[index] = replace(facts[index], rejected=IN_UNION)
        return
    first = facts[ordered[0]]
    lines = dict.fromkeys(facts[i].printed for i in sorted(members))
    printed_words = " … ".join(lines)
    found_by = f"{first.field}{UNION_MARK}"
    grounds = tuple(dict.fromkeys(ground for i in members for ground in facts[i].grounds))
    joined = replace(first, text="+".join(sorted(words)), printed=printed_words, found_by=found_by, grounds=grounds)
    facts.append(_weighed(joined, preferences))
    for index in members:
        facts[index] = replace(facts[index], rejected=IN_UNION)


def _words(facts: list[Fact], members: list[int]) -> set[str]:
    return {word for i in members for word in (facts[i].text or "").split("+") if word}


def carriers(facts: Iterable[tuple[str, Fact]], preferences: Preferences) -> list[tuple[str, Fact]]:
    """Give one fact for each value that a document states of one field of one van: the most specific statement.

    ``facts`` are (id, fact) pairs of one document, van and field. Left out are repeats of a value, options that
    only repeat what is standard, and running text that names equipment without saying that it is an option.
    """
    kept: list[tuple[str, Fact]] = []
    ranked = sorted(
        facts, key=lambda pair: (pair[1].availability != "standard", preferences.rank(pair[1]), -pair[1].confidence)
    )
    for fact_id, fact in ranked:
        if not any(preferences.agree(fact.field, fact, other) and _repeats(fact, other) for _, other in kept):
            kept.append((fact_id, fact))
    return kept


def _repeats(fact: Fact, kept: Fact) -> bool:
    if fact.availability == kept.availability or "unstated" in (fact.availability, kept.availability):
        return True
    return kept.availability == "standard" and fact.availability == "optional"
