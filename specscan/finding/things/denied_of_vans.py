"""Things that vans are said not to have: "No Drift carries propane", "Neither the Drift 19 nor the 21 has gas"."""

from __future__ import annotations

from specscan.finding.things.items import Item, Parsed
from specscan.rulebook.book import Rulebook


def is_of_vans(cue: Item, item: Item, parsed: Parsed, book: Rulebook) -> bool:
    """Tell whether a negation denies that vans have a thing: "None of the Drifts carries propane".

    Between it and the verb stand names: of vans of the document, or of their range, where nouns have no capitals.
    """
    if not cue.has("cue", "none", "neither"):
        return False
    held = [i for i in parsed.items if cue.end <= i.start < item.start]
    if any(i.tells or i.has("thing") for i in held):
        return False
    between = parsed.text[cue.end : item.start].split()
    joints = book.cue_words("definite") | book.cue_words("or_joint") | book.cue_words("preposition")
    for file in book.words.values():
        verbs = (verb.split() for verb in file.cues.get("has_thing", ()))
        subject = next((between[: -len(verb)] for verb in verbs if between[-len(verb) :] == verb), [])
        names = [word for word in subject if word.casefold() not in joints]
        if names and all(name[0].isupper() or name[0].isdigit() for name in names):
            return any(i.vans for i in held) or len(names) == 1 and not file.nouns_have_capitals
    return False
