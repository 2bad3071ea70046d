"""The text of a legend, cut into its signs and the words behind them."""

from __future__ import annotations

import functools
import re
from collections import Counter

from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage

SYMBOL = re.compile(
    r"(?:^|(?<=\s)|(?<=[;,(]))([^\w\s.,;:!?()\[\]'\"“”„’‘«»/&%@#°©®™=<>|·+÷])\s*(?:[=:]|[–—-](?=\s))?\s*(?=[^\W\d_])"
)
PLUS = re.compile(r"(?:^|(?<=\s))(\+)\s+(?=[^\W\d_])")  # a sign only beside others: it adds in "pump + filter"
LETTER = re.compile(
    r"(?:^|(?<=[\s;,(|]))([A-Z]{1,3}|[a-z]{1,2}|[A-Z](?:\.[A-Z])+\.?|[A-Za-z]/[A-Za-z]|[–—*-]|✓|✔"
    r"|(?:[a-z]\.[ \u00a0]?){1,2}[a-z]\.)\s*[=:–-]\s*(?=[^\W\d_])"
)
# "opt. : en option", "série : compris": a short word for an offer, which itself says one, before a colon.
COLONED = re.compile(r"(?:^|(?<=\s))([^\W\d_]{2,6}\.?)\s*:\s+(?=[^\W\d_])")
EQUATED = re.compile(r"(?:^|(?<=[\s;,(|]))([^\W\d_]{2,8}\.?)\s*=\s*(?=[^\W\d_])")  # "Std = ", "incl. = ", "Figure = "
# "x standard   o option": letters without a sign between them and their meaning.
EQUATING = re.compile("[=:–-]")
BRACKETED = re.compile(r"\(\s?([^\w\s()]|[–—-])\s?\)\s+(?=[^\W\d_])")  # "a dash (—) that it cannot"
BARE_LETTER = re.compile(r"(?:^|(?<=[^\d]\s))([b-zA-HJ-Z])\s+(?=[^\W\d_]{2})")
BOX = re.compile(r"(?:^|(?<=\s))(\[(?:[ xX]|[A-Z]|[^\w\s\[\]])\])\s+(?=[^\W\d_])")  # "[S] in the price"
ARTICLE = "A"  # is a letter of a legend only behind others
# "S standard   SA extra cost   n. m. not for this layout   Opt. option   N/A not to be had": codes of two or more
# letters and abbreviations likewise; small ones before a small letter, "std. in the price", where no sentence begins.
BARE_CODE = re.compile(
    r"(?:^|(?<=\s))([B-HJ-Z]|[A-Z]{2,3}|[A-Z]/[A-Z]|[A-Z][a-z]{2,4}\.|[a-z]{3,4}\.(?=\s+[a-z])"
    r"|(?:[a-z]\.[ \u00a0]?){2,3})\s+(?=[^\W\d_]{2})"
)
# “no” means that …; “–” = not to be had
QUOTED = re.compile(r"[“„«\"]\s?([^\W\d_][\w./]{0,4}|[–—-])\s?[”“»\"](?:,?\s|\s?[=:])\s*(?=[^\W\d_])")
REMARK = re.compile(r"\.\s+(?=[A-ZÀ-Þ])")  # a sentence behind the legend
SENTENCES = re.compile(r"\.\s+(?=[A-ZÀ-Þ“„«\"])")
STOP = re.compile(r"\.\s")
OTHER_SIGN = re.compile(r"\s+\S{1,12}\s*=\s")  # behind it another thing is explained
LONGEST_BARE = 160  # letters of a legend without signs between codes and meanings
LONGEST_OPENING, LEAST_OPENING = 60, 2  # letters of a sentence that explains a sign; so many at the head of a text
LEAST_WITHIN = 3  # signs that a sentence amid a paragraph explains
SHORT_BARE = 50  # letters of a line that explains one code, beside lines that explain others
KEPT_TEXTS = 8_000  # texts whose signs were looked for: labels repeat


def texts_of(passage: Passage) -> list[str]:
    """Give the texts of a passage that may explain signs: its own, parts of it, its label, its heading."""
    if passage.kind is Kind.BULLET and passage.mark:
        return [f"{passage.mark} {passage.text}"]
    opening = opening_of(passage.text) if len(passage.text) > LONGEST_BARE else ""
    texts = [opening] if opening else sentence_within(passage.text) if passage.kind is Kind.PROSE else []
    texts = [*texts, passage.text]
    if passage.row is not None and passage.row.text:
        texts = [f"{passage.row.text} {passage.text}", passage.row.text]
        if passage.column is not None and passage.column.text:
            texts.append(passage.column.text)
    return [*texts, *passage.sections[-1:]]


def opening_of(text: str) -> str:
    """Give the sentences at the head of a text that explain a sign each: "S standard. O at extra cost. – not offered."

    Behind them the text goes on with other things; fewer than two such sentences are none.
    """
    ends = [match.start() + 1 for match in STOP.finditer(text)]
    begin = count = 0
    for end in ends:
        sentence = text[begin:end].strip()
        entries = entries_of(sentence) if len(sentence) <= LONGEST_OPENING else []
        if len(entries) != 1 or not sentence.startswith(entries[0][0]):
            break
        begin, count = end, count + 1
    return text[:begin] if count >= LEAST_OPENING else ""


def sentence_within(text: str) -> list[str]:
    """Give the sentence of a paragraph that explains several signs: "Coded: S standard, O option, N not available."."""
    if len(text) <= LONGEST_BARE:
        return []
    sentences = (sentence for sentence in SENTENCES.split(text) if len(sentence) <= LONGEST_BARE)
    return [sentence for sentence in sentences if len(entries_of(sentence)) >= LEAST_WITHIN][:1]


@functools.lru_cache(maxsize=KEPT_TEXTS)
def entries_of(text: str, names: frozenset[str] = frozenset()) -> list[tuple[str, str]]:
    """Cut a legend into signs and the words behind them.

    Letters that are ``names`` of vans are no signs beside others: "▲ fitted to SX, extra cost on S".
    """
    if names and SYMBOL.search(text) is None:
        names = frozenset()
    bare = [(m.start(1), m.end(), m.group(1)) for m in BARE_LETTER.finditer(text) if m.group(1) not in names]
    among = len(bare) == 1 and _among_symbols(text)
    if bare and (bare[0][2] == ARTICLE or len(bare) == 1 and bare[0][0] and not among):
        bare = []
    opens = bool(bare) and bare[0][0] == 0 and SYMBOL.search(text) is not None  # "S standard  • may be ordered"
    opens = opens or among
    places = bare if (opens or len(bare) >= 2 or len(text) <= SHORT_BARE) and len(text) <= LONGEST_BARE else []
    coded = [(m.start(1), m.end(), m.group(1).strip()) for m in BARE_CODE.finditer(text) if m.group(1) not in names]
    # "N/A" on a line of its own, the last one; "NOT fitted" and "AWD option" are no codes
    alone = len(coded) == 1 and "/" in coded[0][2] and not coded[0][0] and len(text) <= SHORT_BARE
    places += coded if (len(coded) >= 2 or alone) and coded[-1][1] <= LONGEST_BARE else []  # before a remark, if any
    if EQUATING.search(text):
        places += [(m.start(1), m.end(), m.group(1)) for m in LETTER.finditer(text)]
        places += [(m.start(1), m.end(), m.group(1)) for m in EQUATED.finditer(text)]
        places += [(m.start(1), m.end(), m.group(1)) for m in COLONED.finditer(text)]
    boxes = list(BOX.finditer(text))
    boxes = boxes if len(boxes) > 1 or text.startswith("[") else []  # "Inverter [W]: no"
    printed = (*QUOTED.finditer(text), *BRACKETED.finditer(text), *boxes)
    places += [(m.start(1), m.end(), m.group(1)) for m in printed]
    joints = [(start, end) for start, end, _ in places]  # the dash of "S – standard" is no sign of its own
    places += [
        (m.start(1), m.end(), m.group(1))
        for m in SYMBOL.finditer(text)
        if not any(start < m.start(1) < end for start, end in joints)
    ]
    if places:
        places += [(m.start(1), m.end(), m.group(1)) for m in PLUS.finditer(text)]
    places = sorted({start: (start, end, sign) for start, end, sign in places}.values())
    entries = []
    for index, (_, end, sign) in enumerate(places):
        stop = places[index + 1][0] if index + 1 < len(places) else len(text)
        entries.append((sign, REMARK.split(OTHER_SIGN.split(text[end:stop])[0])[0].strip(" ;,|")))
    return entries


def apart_from_names(text: str, entries: list[tuple[str, str]], vans: VanMentions) -> list[tuple[str, str]]:
    """Give the entries of a legend but for signs that are only part of a van's name: "Drift 22 N: option"."""
    names = [] if vans.single else [text[start:end].split() for start, end, _ in vans.find(text)]
    within = Counter(word for name in names if len(name) > 1 for word in name)
    alone = Counter(re.findall(r"[^\s,;:.()]+", text)) - within
    return [(sign, words) for sign, words in entries if sign not in within or alone[sign]]


def _among_symbols(text: str) -> bool:
    """Tell whether a legend begins with a symbol and has another: "• standard  O optional  — none".

    A short one may go on in the next line: "✓ standard  O optional" above "x not offered".
    """
    found = [match.start(1) for match in SYMBOL.finditer(text)]
    return bool(found) and found[0] == 0 and (len(found) > 1 or len(text) <= SHORT_BARE)
