"""How a house names its vans, its maker and the model year, and where on its pages these names stand."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from tests.proving_ground import names

ONE_VAN = "in the title"
PLACES = (
    ("whole in heads", 4), ("codes, range in the title", 4), ("codes, range in the corner", 2),
    ("codes, range in the running head", 1), ("codes, range in a sentence", 2),
)  # fmt: skip
MAKERS = (
    ("in the title", 3), ("a line of its own", 2), ("capitals", 3), ("letterspaced", 2), ("imprint alone", 3),
    ("running foot", 1), ("by", 2),
)  # fmt: skip
YEARS = (("in the title", 4), ("subtitle", 3), ("short", 2), ("small print", 2), ("running foot", 1))


@dataclass(frozen=True, slots=True)
class Naming:
    """The ways of one house.

    ``way`` is how vans are named, ``place`` where their names stand, ``maker`` and ``year`` how the maker and the model
    year are printed. ``listed``: a line near the title names all vans; ``slogan``: larger type says something else.
    """

    way: str
    place: str
    maker: str
    year: str
    listed: bool
    slogan: bool

    @property
    def range_in_title(self) -> bool:
        """Tell whether the title names the range."""
        return self.place in (ONE_VAN, "whole in heads", "codes, range in the title")

    @property
    def heads_are_codes(self) -> bool:
        """Tell whether the heads of tables leave the range out."""
        return self.place.startswith("codes")


def draw_naming(rng: Random, ranged: bool, way: str, count: int, headed: bool, paged: bool, usual: bool) -> Naming:
    """Give the ways of a house: ``ranged`` where its vans share the name of a range.

    ``headed``: its tables have heads with the vans' names; ``paged``: its pages have heads and feet; ``usual``: range,
    maker and year stand in the title.
    """
    if usual:
        places = ("whole in heads", "codes, range in the title")
        place = ONE_VAN if count == 1 else rng.choice(places)
        maker = rng.choice(("in the title", "a line of its own", "capitals"))
        return Naming(way, place, maker, "in the title", not headed or count == 1 or rng.random() < 0.6, False)
    place = ONE_VAN if count == 1 else "whole in heads"
    if count > 1 and ranged:
        place = _weighed(rng, PLACES)
        if not paged and place == "codes, range in the running head" or not headed and place.endswith("the corner"):
            place = "codes, range in the title"
    maker, year = _weighed(rng, MAKERS), _weighed(rng, YEARS)
    maker = "imprint alone" if maker == "running foot" and not paged else maker
    year = "small print" if year == "running foot" and not paged else year
    listed = not headed or count == 1 or rng.random() < 0.6
    return Naming(way, place, maker, year, listed, rng.random() < 0.15)


def _weighed(rng: Random, choices: tuple[tuple[str, int], ...]) -> str:
    return rng.choices([name for name, _ in choices], [weight for _, weight in choices])[0]


def letterspaced(text: str) -> str:
    """Give words in capitals with a space between letters and three between words."""
    return "\u00a0\u00a0\u00a0".join("\u00a0".join(word) for word in text.upper().split())


def draw_names(rng: Random, region: str, count: int, usual: bool) -> tuple[str, str, list[str]]:
    """Give the way in which vans are named, the name of their range (empty where they have none), and their codes.

    ``usual``: by a range with codes, or by the trims of one van.
    """
    way = _weighed(rng, USUAL if usual else WAYS if count > 1 else WAYS_OF_ONE)
    numbers = list(range(17, 26)) if region in ("us", "qc") else list(names.METRIC)
    one = names.series(rng)
    if way == "series and code":
        return way, one, names.codes(rng, region, count)
    if way == "a word for each van":
        return way, "", rng.sample(names.WORDS, count)
    if way == "a number for each van":
        pool = names.METRIC if region not in ("us", "qc") else rng.choice((names.INCHES, names.METRIC))
        return way, "", [str(number) for number in sorted(rng.sample(pool, count))]
    if way == "letters and digits":
        return way, "", _coded(rng, count)
    if way == "range and trim":
        return way, one, rng.sample(names.GRADES, count)
    if way == "two words":
        if rng.random() < 0.5:
            return way, "", [f"{first} {last}" for first, last in zip(
                rng.sample(names.SHADES, count), rng.sample(names.WORDS, count), strict=True
            )]  # fmt: skip
        return way, f"{rng.choice(names.SHADES)} {one}", names.codes(rng, region, count)
    if way == "decimals":
        bases = rng.sample(["4.9", "5.4", "5.9", "6.0", "6.3", "6.9", "7.2"], count)
        ends = [f" {rng.choice(names.TRIMS)}" if rng.random() < 0.25 else "" for _ in range(count)]
        return way, one, [base + end for base, end in zip(sorted(bases), ends, strict=True)]
    number = rng.choice([*numbers, 5, 6, 7])
    if way == "one begins another":
        others = [str(other) for other in sorted(rng.sample([n for n in numbers if n != number], count - 2))]
        return way, one, [str(number), f"{number} {rng.choice([*names.TRIMS, 'Winter', 'Plus'])}", *others]
    return way, one, [f"{number} {trim}" for trim in rng.sample(names.TRIMS, count)]


def _coded(rng: Random, count: int) -> list[str]:
    """Give codes of one maker: "Q54", "Q60"; "HC24-D", "HC26-B"; "KS 600 E", "KS 640 Q"."""
    letters = "BCDEFHKLMPQRSTVX"
    kind = rng.choice(("short", "hyphen", "spaced"))
    if kind == "short":
        first = rng.choice(letters)
        return [f"{first}{number}" for number in sorted(rng.sample(range(48, 76, 2), count))]
    first = "".join(rng.sample("BCDHKNRSTV", 2))
    ends = rng.sample("BDEKLQRST", count)
    pool = range(20, 29) if kind == "hyphen" else names.METRIC
    chosen = sorted(rng.sample(pool, count))
    way = "{}{}-{}" if kind == "hyphen" else "{} {} {}"
    return [way.format(first, number, end) for number, end in zip(chosen, ends, strict=True)]


WAYS = (
    ("series and code", 5), ("a word for each van", 2), ("a number for each van", 2), ("letters and digits", 2),
    ("range and trim", 2), ("two words", 2), ("decimals", 2), ("one begins another", 2), ("trims of one van", 2),
)  # fmt: skip
WAYS_OF_ONE = tuple(one for one in WAYS if one[0] != "one begins another")
USUAL = (("series and code", 3), ("trims of one van", 1))
