"""What a title names: the company, the range or one of the vans."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable

from specscan.finding.language.whole_words import count, holds, stands_before
from specscan.finding.naming.addresses import plain_letters
from specscan.finding.naming.full_names import is_series_word
from specscan.finding.naming.place import Names, bears
from specscan.finding.naming.roster import Roster
from specscan.records.text import Passage

MIN_ALIKE = 2
LONGEST_LINE = 6  # words of a title


def is_house_of(names: Names, roster: Roster, told: tuple[str, list[str], Passage]) -> bool:
    """Tell whether a title alone above codes is the company, for a sentence gives these codes another range."""
    alone = names.title == names.series == roster.series and not names.maker
    return alone and told[0] != roster.series and set(told[1]) == set(roster.codes)


def can_be_of(title: str, series: str, codes: Collection[str]) -> bool:
    """Tell whether a title names no van, or one of those of which a sentence tells."""
    return not re.search(r"\d", title) or title in {f"{series} {code}" for code in codes}


def is_other_title(names: Names, roster: Roster) -> bool:
    """Tell whether the title names one van, and the line lists others: "Also: Drift 17 | Drift 19"."""
    title = names.title.casefold()
    return bool(re.search(r"\d", title)) and not any(model.casefold().startswith(title) for model in roster.models)


def split_maker(names: Names, heads: Iterable[str], hosts: Collection[str] = ()) -> None:
    """Take the words of a title that the heads of its vans leave out for the maker.

    "Marrowfen Drift" over the heads "Drift 19" and "Drift 21" is the Drift by Marrowfen. Heads that leave nothing out
    tell no maker where the web addresses, at ``hosts``, are of somebody else: there "Wading Drift" may be the range.
    """
    words = names.series.split()
    if names.maker or names.used or len(words) < 2:
        return
    named = {head.strip(" *†:").casefold() for head in heads}
    for cut in range(1, len(words)):
        tail, maker = " ".join(words[cut:]), " ".join(words[:cut])
        alike = [head for head in named if bears(head, tail) and len(head) > len(tail)]
        if hosts and not any(plain_letters(words[0]) in host for host in hosts):
            alike = [head for head in alike if not holds(head, f"{maker} {tail}".casefold())]
        if len(alike) >= MIN_ALIKE and words[0][0].isupper():
            names.maker, names.maker_place = maker, names.title_place
            names.series, names.title = tail, re.sub(rf"^{re.escape(maker)}\s+", "", names.title)
            return
        whole = re.sub(rf"^{re.escape(maker)}\s+", "", names.title)
        if re.search(r"\d", whole) and whole.casefold() in named and words[0][0].isupper():
            names.maker, names.maker_place = maker, names.title_place
            names.series, names.title = tail, whole
            return


def lists_ranges(title: str, heads: Collection[str]) -> bool:
    """Tell whether the words of a title are those with which heads begin: "Drift Gorse" of "Drift 5" and "Gorse 6"."""
    firsts = {head.split()[0].casefold() for head in heads if len(head.split()) > 1}
    return len(firsts) > 1 and set(title.casefold().split()) == firsts


def describes_vans(title: str, heads: Collection[str], own: Collection[Passage]) -> bool:
    """Tell whether a title of one word is no name, for the text has it in small letters alone: "the wildflower range".

    It heads vans with names of their own, before none of which it stands. In a short line any word may have a capital.
    """
    if not title.isalpha() or not all(is_series_word(head.split()[0]) and head[0].isupper() for head in heads):
        return False
    texts = [passage.text for passage in own]
    if any(stands_before(text, title, head) for text in texts for head in heads):
        return False
    running = [text for text in texts if len(text.split()) > LONGEST_LINE]
    named = any(count(text, form) for text in running for form in (title.capitalize(), title.upper()))
    return not named and any(count(text, title.lower()) for text in texts)
