"""Values that are names rather than words of a vocabulary: the base vehicle; thermal grades."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

from specscan.finding.kit import JOIN, Kit
from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.prices import has_price
from specscan.finding.naming.name_forms import BASE_NAME
from specscan.finding.things.found import Found, How, Value, found_at
from specscan.finding.things.items import Item
from specscan.finding.things.statement import Statement
from specscan.finding.vehicle_lines import vehicle_line
from specscan.finding.wording import Wording
from specscan.records.years import MODEL_YEAR
from specscan.rulebook.book import Rulebook

NAME_END = re.compile(r"\s*(?:,(?!\d)|;|\(|\s[-–—]\s|\b(?:with|mit|avec|chassis|cab|van|base|or|and|auf|sur)\b)")
BEFORE_ENGINE = re.compile(r"(?:\s+[a-zà-ÿ][\w-]*){0,3}?\s*(?:\b(?:with|mit|avec)\b|,)")  # " cargo van, "
YEAR_AHEAD = re.compile(rf"^{MODEL_YEAR}\s+(?=[A-ZÀ-Þ])")
GRADE = re.compile(r"(?<![\w.,-])(III|II|I|[123])(?![\w.,-]*\d|[\w])")
ROMAN = {"I": 1, "II": 2, "III": 3}
STANDARD = re.compile(r"(?:EN|DIN EN|NF EN)\s*(?:ISO\s*)?164[56](?:\s*[-–]\s*\d)?(?::\d{4})?", re.IGNORECASE)
BEHIND_STANDARD = re.compile(r"[^\d.;!?]{0,24}")  # "EN 1646-1, Grad 3"
MAX_NAME_WORDS = 7


def special_values(book: Rulebook, kit: Kit, statement: Statement, draft: Wording) -> list[Found]:
    """Give base-vehicle names, with the fuel that stands between them and the driven wheels, and grades."""
    found = _names_and_grades(book, kit, statement, draft)
    if statement.split or draft.how not in (How.PROSE, How.LIST):
        return found
    name = next(name for name, spec in kit.frames.special if spec.text == "name")
    line = vehicle_line(book, statement.parsed, name, headed=draft.headed)
    return [*line, *(one for one in found if not any(one.field == other.field for other in line))]


def _names_and_grades(book: Rulebook, kit: Kit, statement: Statement, draft: Wording) -> list[Found]:
    found: list[Found] = []
    sentence = kit.frames.sentence_of(statement)
    if not sentence.groups and not draft.leads:
        if not statement.split and draft.how in (How.PROSE, How.LIST):
            return [
                one
                for name, spec in kit.frames.special
                if spec.text == "name"
                for one in _mounted(kit, name, statement)
            ]
        return found  # a name or a grade stands with words for it, or leads what is under a heading
    things = {thing for group in sentence.groups if group.label for thing in group.things}
    for name, spec in kit.frames.special:
        if spec.text == "name":
            if things & set(spec.of):
                if _asks_for_aspect(book, things & set(spec.of), spec.aspect, statement):
                    continue
                if not (draft.body[:1].isdigit() and _asks_for_measure(book, things, statement)):
                    found.extend(_labelled_name(name, statement, draft, kit.lexicon.words.drop))
            elif not statement.split:
                free = _free_name(kit, name, spec.of, statement, sentence.groups, draft)
                if not free and draft.how in (How.PROSE, How.LIST):
                    free = _mounted(kit, name, statement)
                if not free and draft.leads and set(draft.sections) & set(spec.of) and not sentence.groups:
                    free = _headed_name(name, statement, draft, kit.lexicon.words.drop)
                found.extend(free)
        elif spec.number == "grade":
            found.extend(_grades(name, spec.of, statement, sentence.groups, things))
    found = [_bare_name(kit, book, one) for one in found]
    return found + _counted_to(book, kit, statement)


def _bare_name(kit: Kit, book: Rulebook, found: Found) -> Found:
    """Give a name without what stands ahead of it: "2025 Tote 3500", "Base Tote 3500", "Included Tote 3500"."""
    if book.fields[found.field].text != "name" or not found.value.text:
        return found
    name = YEAR_AHEAD.sub("", found.value.text)
    first, _, rest = name.partition(" ")
    if rest[:1].isupper() and kit.lexicon.cues(kit.lexicon.analyse(first), "standard", "optional"):
        name, (first, _, rest) = rest, rest.partition(" ")  # "Included Tote 3500" of a list of what was chosen
    own = set(book.fields[found.field].of)
    named = {m.concept.name for m in kit.lexicon.analyse(first).mentions if m.concept.kind in ("thing", "short")}
    if rest[:1].isupper() and named & own:
        name = rest
    return found if name == found.value.text else replace(found, value=replace(found.value, text=name))


def _counted_to(book: Rulebook, kit: Kit, statement: Statement) -> list[Found]:
    """Give how many there are with the last of them: "Third sleeping place (jump seat)", "sleeps a third person".

    A label is asked only where a sign answers it and it is read as a statement: other answers may give the number.
    """
    tokens, found = statement.parsed.analysis.tokens, list[Found]()
    if statement.split:
        return found
    for item in statement.parsed.items:
        number = _ordinal(kit.lexicon, [token.norm for token in tokens], item)
        names = [name for thing in item.names("thing") for name in book.fields_of(thing)] if number else []
        for name in names:
            if book.fields[name].number == "count":
                found.append(found_at(item, name, Value(num=float(number or 0)), "counted", book.fields[name].of))
    return found


def _ordinal(lexicon: Lexicon, norms: list[str], item: Item) -> int | None:
    """Give the number of an ordinal right before or behind a thing, in words or figures: "3rd berth", "3. Platz"."""
    before, behind = norms[: item.first], norms[item.last :]
    for near in (before[-1:], behind[:1]):
        if near and near[0] in lexicon.ordinals:
            return lexicon.ordinals[near[0]]
    figure = before[-2] if len(before) > 1 and before[-1] in lexicon.ordinal_ends and before[-2].isdigit() else ""
    return int(figure) if figure and int(figure) in lexicon.ordinals.values() else None


def _asks_for_aspect(book: Rulebook, things: set[str], own: str, statement: Statement) -> bool:
    """Tell whether a label asks for something else of a thing than its name, as "Fuel" under "Chassis" does."""
    others = {book.fields[name].aspect for thing in things for name in book.fields_of(thing)} - {own, ""}
    named = [aspect for i in statement.parsed.items if i.start < statement.split for aspect in i.names("aspect")]
    return any(aspect in others for aspect in named)


def _asks_for_measure(book: Rulebook, things: set[str], statement: Statement) -> bool:
    """Tell whether a figure answers a label that names something measured: "Fuel tank of the chassis: 21 gal"."""
    figures = [i.quantity for i in statement.parsed.items if i.quantity is not None and i.start >= statement.split]
    measures = {book.fields[n].dimension for t in things for n in book.fields_of(t)} - {""}
    return any(figure.dimension in measures for figure in figures)


def _labelled_name(name: str, statement: Statement, draft: Wording, articles: list[str]) -> list[Found]:
    body = draft.body
    offset = len(draft.label) + len(JOIN)
    end = NAME_END.search(body)
    text = body[: end.start()] if end and end.start() > 0 else body
    text = text.strip(" .:")
    begins = _behind_article(text, articles)
    text, offset = text[begins:], offset + begins
    words = text.split()
    covering = [i for i in statement.parsed.items if i.start <= offset and offset + len(text) <= i.end]
    if any(i.has("value") for i in covering):
        return []  # "What is it built on? Diesel."
    if not words or len(words) > MAX_NAME_WORDS or not any(c.isalpha() for c in text) or has_price(text):
        return []  # "Base retail: Drift $98,700"
    if any(i.has("distant", name) for i in statement.parsed.items if i.start < statement.split):
        return []  # "Base prices", "Base warranty"
    figures = [i.quantity for i in statement.parsed.items if i.start == offset]
    if any(quantity is not None and not quantity.bare for quantity in figures):
        return []  # "Donor's fuel: 80 L", "Warranty on the base: 3 years or 60,000 miles"
    if not (words[0][:1].isupper() or re.match(r"[a-z]-[A-Z]", words[0]) or words[0][:1].isdigit()):
        return []
    return [Found(name, Value(text=text), offset, offset + len(text), f"{name}:label")]


def _free_name(kit: Kit, name: str, of: list[str], statement: Statement, groups: list, draft: Wording) -> list[Found]:  # type: ignore[type-arg]
    """Give the name right before or behind the words "base vehicle", or leading a line about the engine."""
    text = statement.parsed.text
    if draft.how in (How.HEADING, How.NOTE):
        return []
    named: dict[int, Found] = {}  # one in each sentence
    for group in groups:
        item = group.items[0]
        if not set(group.things) & set(of) or item.sentence in named:
            continue
        before = _without_joint(text[: item.start].rstrip(), kit)
        match = re.search(rf"{BASE_NAME.pattern}$", before)
        leads = text[item.start : item.end].casefold().split()[-1] in kit.lexicon.words.leads_to_name
        if match and len(match.group().split()) >= 2 and not leads:
            named[item.sentence] = _named(name, match.group(), match.start(), statement)
            continue
        behind = re.match(r"\s*(?:is|the|a|an|:|on|le|la|der|die|das|dem|une|un)?\s*(?:the\s+|a\s+)?", text[item.end :])
        start = item.end + (behind.end() if behind else 0)
        match = BASE_NAME.match(text, start)
        if match and len(match.group().split()) >= 2:
            named[item.sentence] = _named(name, match.group(), match.start(), statement)
    if named:
        return list(named.values())
    engines = [g for g in groups if "engine" in g.things]
    lead = BASE_NAME.match(text, _behind_article(text, kit.lexicon.words.drop))
    if engines and draft.how is How.LIST and lead and len(lead.group().split()) >= 2:
        joint = BEFORE_ENGINE.match(text, lead.end())
        between = [i for i in statement.parsed.items if joint is not None and lead.end() <= i.start < joint.end()]
        fields_of = kit.lexicon.book.fields_of  # "cargo" of "cargo van" has none
        told = any(i.tells or i.quantity is not None or any(map(fields_of, i.names("thing"))) for i in between)
        if joint is not None and engines[0].start > lead.end() and not told:
            return [_named(name, lead.group(), lead.start(), statement)]
    return []


def _mounted(kit: Kit, name: str, statement: Statement) -> list[Found]:
    """Give the name of which a sentence says that the van stands on it."""
    place = kit.mounted.find(statement.parsed)
    return [_named(name, statement.parsed.text[place[0] : place[1]], place[0], statement)] if place is not None else []


def _without_joint(before: str, kit: Kit) -> str:
    """Give what stands before the term for a base vehicle without the words that join a name to it: "as its"."""
    for joint in kit.lexicon.words.behind_name:
        if before.casefold().endswith(f" {joint}"):
            return before[: -len(joint)].rstrip()
    return before


def _headed_name(name: str, statement: Statement, draft: Wording, articles: list[str]) -> list[Found]:
    """Give the name that is the first line under a heading such as "Base vehicle"."""
    text = statement.parsed.text
    lead = BASE_NAME.match(text, _behind_article(text, articles))
    if draft.how is not How.LIST or lead is None or len(lead.group().split()) < 2:
        return []
    rest = text[lead.end() :]
    return [_named(name, lead.group(), lead.start(), statement)] if not rest or NAME_END.match(rest) else []


def _behind_article(text: str, articles: list[str]) -> int:
    """Give where a text goes on behind an article that it opens with: "The Kelmar Cargo 2500"."""
    first, _, rest = text.partition(" ")
    return len(first) + 1 if first.casefold() in articles and rest[:1].isupper() else 0


def _named(name: str, text: str, start: int, statement: Statement) -> Found:
    text = text.rstrip(".")
    return _placed(Found(name, Value(text=text), start, start + len(text), f"{name}:named"), statement)


def _placed(found: Found, statement: Statement) -> Found:
    """Give what was found with the sentence it stands in, so that it is said of the van spoken of there."""
    if not statement.split:
        found.item = statement.parsed.item_at(found.start, found.end)
        found.chunk, found.sentence = found.item.chunk, found.item.sentence
    return found


def _grades(name: str, of: list[str], statement: Statement, groups: list, things: set[str]) -> list[Found]:  # type: ignore[type-arg]
    """Give a thermal grade in arabic or roman figures that stands with the word for it."""
    text = statement.parsed.text
    masked = STANDARD.sub(lambda m: " " * len(m.group()), text)
    near = [g for g in groups if set(g.things) & set(of)]
    if not near or not (STANDARD.search(text) or _speaks_of_heat(statement)):
        return []
    matches = list(GRADE.finditer(masked))
    if any(not text[one.end() : two.start()].strip() for one, two in pairwise(matches)):
        return []  # "Grade 2 2 3": a row whose columns have run together
    found: list[Found] = []
    worded = True  # with "Grade" beside each, as running text sets it for several vans
    for match in matches:
        labelled = bool(things & set(of)) and 0 < statement.split <= match.start()
        tied = any(0 <= match.start() - g.end <= 3 or 0 <= g.start - match.end() <= 3 for g in near)
        ends = [i.end for g in near for i in g.items if i.end <= match.start()]
        listed = any(not text[end : match.start()].strip(" :") for end in ends)
        said = any(BEHIND_STANDARD.fullmatch(text, one.end(), match.start()) for one in STANDARD.finditer(text))
        held = any(i.start < match.start() < i.end for g in near for i in g.items)  # "Klasse 3 nach EN 1646-1"
        if labelled or tied or listed or said or held:
            value = float(ROMAN.get(match.group(1), 0) or int(match.group(1)))
            found.append(_placed(Found(name, Value(num=value), match.start(), match.end(), f"{name}:grade"), statement))
            worded = worded and (tied or held)
    by_van = any(i.vans and i.start >= statement.split for i in statement.parsed.items)
    if statement.split and by_van and len({one.value.num for one in found}) > 1:
        return []  # "Both have a grade: the 62 is grade 2, the 70 grade 3": the label's is of neither alone
    several = worded and not statement.split  # "The 6.0 carries Grade III to EN 1646-1, the 5.4 Grade II."
    return found if several else found[:1]


def _speaks_of_heat(statement: Statement) -> bool:
    label = statement.parsed.text[: statement.split].casefold()
    return any(word in label for word in ("therm", "heating", "insulation", "wärme", "isolation", "1646"))
