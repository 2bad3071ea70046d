"""What is left of a title without what is no name: maker, years, signs, words of the trade."""

from __future__ import annotations

import functools
import re
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, may_hold, without_name, without_names
from specscan.finding.naming.maker import JOINTS
from specscan.finding.naming.place import PARTED
from specscan.finding.naming.range_signs import RangeSigns
from specscan.finding.naming.title_texts import TitleTexts
from specscan.finding.naming.years import YEAR
from specscan.records.years import MODEL_YEAR
from specscan.rulebook.book import Rulebook

KEPT_TITLES = 4_000
EDGES = " ,.;:-–|/'’&<>»«*#=~"  # round a title, as in ">>> Drift 21 <<<"
SMALL_END = re.compile(r"(?:\s+[a-zà-ÿ]{1,4})+\s*$")
BEHIND_CODE = re.compile(r"((?:^|\s)(?=\S*\d)[\w.-]+)(?:\s+[a-zà-ÿ]{2,}){2,}\s*$")  # "Drift 21 in winter"
LEADER = re.compile(r"\s?\.{4,}")  # the dots that lead to a price
IN_BRACKETS = r"\([^)]*\)|\[[^\]]*\]"
BEHIND_FIGURE = re.compile(r"\d[A-Z]{0,3}[ \u00a0]$")  # "SE" of "Drift 600 SE", "Limited" of "Drift 22RB Limited"
BOUND = "\u00aa"  # a letter to patterns; holds "Series" to its number in "Drift Series II", which is no "Drift series"


class CleanTitles(TitleTexts):
    """Takes from titles, of documents of one language, what is no name."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        super().__init__(book, lexicon)
        self.filling = sorted(self.fillers, key=lambda phrase: (-len(phrase), phrase))
        self.model_labels = {label.casefold() for label in self.words.model_labels}
        self.range_words = {word.casefold() for word in self.words.range_words}
        numbered = any_word(self.words.number_labels)
        self.numbered = re.compile(rf"(?<![\w-])(?:(?:{numbered})(?:\s?[.:#])*\s?){{1,2}}\d[\w/-]*", re.IGNORECASE)
        ranges = f"(?i:{any_word(self.words.range_words)})"
        self.counted_series = re.compile(
            rf"(?<=\w )({ranges}) (?=[IVX]{{2,4}}(?!\w))|(?<=\d )({ranges}) (?=\d(?![\w.,]))"
        )
        dating = any_word((*self.words.model_year, *self.words.editions))
        self.dated = re.compile(
            rf"(?<!\w)(?:{dating})\s+(?={MODEL_YEAR}(?!\d))|(?<=\d\d\d\d)\s+(?:{dating})(?!\w)", re.IGNORECASE
        )
        function = (*self.words.drop, *self.words.articles_of_names, *self.words.made_by, *self.words.pronouns)
        self.function_words = {word.casefold() for word in (*function, *self.words.every_words)}
        cues = self.words.cues
        small = (*self.words.predicates, *cues["is_named"], *cues["preposition"], *cues["before_number"])
        self.words_of_sayings = {word.casefold() for word in small} | self.function_words
        self.signs = RangeSigns(lexicon)
        self.clean = functools.lru_cache(maxsize=KEPT_TITLES)(self._clean)

    def _shortened(self, text: str, maker: str) -> str:
        """Give the first part of a title without maker, years and signs, its common words kept."""
        text = without_signs(PARTED.split(text)[0])
        return re.sub(r"[\s?!]+", " ", without_name(text, maker)).strip(" ,.;:-–|/'’&")

    def _clean(self, text: str, maker: str) -> str:
        """Give a title without maker, years, brackets and words such as "specifications"."""
        text = LEADER.split(PARTED.split(text)[0])[0]
        text = re.sub(rf"{IN_BRACKETS}|[®™©]|[$€£]\s?[\d.,]+", " ", text)
        text = YEAR.sub(" ", self.dated.sub(" ", self.short_year.sub(" ", self.date.sub(" ", text))))
        whole, text = text, self.numbered.sub(" ", text)
        if text != whole and not re.search(r"\d", text):
            return ""  # "The Lane Letter, no. 31" is a paper
        whole = text
        text = without_name(text, maker)  # before the words of the trade that its name may hold
        if any(joint in maker.split() for joint in JOINTS):
            text = without_name(text, " ".join(word for word in maker.split() if word not in JOINTS))  # as files do
        if self._is_lettered(text):
            return text.strip(EDGES)
        text = self.signs.without_word(text.strip(EDGES))
        text = self.counted_series.sub(lambda match: f"{match.group(1) or match.group(2)}{BOUND}", text)
        text = without_names(text, self.filling)
        if text != whole:
            text = SMALL_END.sub("", text)  # "Drift im" of "Drift im Modelljahr 2026"
            shouted = text.split()
            while (
                len(shouted) > 1 and shouted[-1].casefold() in self.words_of_sayings and not _is_lettered_code(shouted)
            ):
                shouted.pop()  # "DRIFT 21 IN" of "DRIFT 21 IN NUMBERS"
            text = " ".join(shouted)
        whole = text
        text = self.form.sub(lambda form: form.group() if BEHIND_FIGURE.search(text, 0, form.start()) else " ", text)
        words = maker.split()
        starts = [" ".join(words[:most]) for most in range(len(words) - 1, 0, -1)]
        if len(words) > 1 and words[0].casefold() in self.lexicon.words.cues["company"]:
            starts.append(" ".join(words[1:]))  # "MARROWFEN Drift" of "Atelier Marrowfen"
        for start in starts:
            if may_hold(text, start):
                text = without_name(text, start)  # "Marrowfen Mill" of "Marrowfen Mill Vans"
                break
        if text != whole:
            text = SMALL_END.sub("", text)  # "Drift by Marrowfen"
        text = BEHIND_CODE.sub(r"\1", text)
        return re.sub(rf"[\s?!{BOUND}]+", " ", text).strip(EDGES)

    def _is_lettered(self, text: str) -> bool:
        """Tell whether a text is a letter behind a word such as "Model", which is a part of the name then."""
        first, _, letter = text.strip(EDGES).rpartition(" ")
        return len(letter) == 1 and letter.isupper() and first.casefold() in self.model_labels - self.range_words


def _is_lettered_code(words: Sequence[str]) -> bool:
    """Tell whether words end in a figure and a letter behind it: the "A" of "Drift 600 A" is no article."""
    return len(words[-1]) == 1 and words[-1].isupper() and any(map(str.isdigit, words[-2]))


def without_signs(text: str) -> str:
    """Give a line without years, what is in brackets, and signs of makers' rights."""
    return YEAR.sub(" ", re.sub(rf"{IN_BRACKETS}|[®™©]", " ", text))
