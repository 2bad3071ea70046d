"""Invented names of makers, series, base vehicles and places, from syllables that no house in the trade uses."""

from __future__ import annotations

from random import Random

FIRST = (
    "Bralv Keldu Torvi Marre Ostlu Feskal Hulve Gravo Lindel Skerru Wendu Orrin Dalve Brimo Narvu Tullo Vessa Haskel "
    "Jornu Pellu Quarra Ruspe Sarvo Thessu Umbre Varno Welka Yarra Zolve Ettel Irmo Corle"
).split()
LAST = (
    "brast mesk dorran quint velder gast lund nock ridge tarn wold fenn gill holt knoll slack thwaite combe stead shaw "
    "rigg moor heath skerry barn lathe"
).split()
SERIES = (
    "Tarvel Fellmar Snurra Gjolt Harrick Moorel Sennet Brackle Dunnel Fjarra Kestrin Lummel Merrow Norrel Pinnet Quorn "
    "Rimmel Sallet Tindle Ulmar Vindle Wrackel Ysset Zerrin Aldrick Borrel Cairnet Drumlin Eskarn Firnel Glenno "
    "Hobbern Issarn Jokkel Klemmat Lerchin"
).split()
BASES = "Kordel Vastro Pelmar Bruska Tirrow Gendal Ombrek Laskun Drovex Haldrik Rekkel Strimm".split()
BASE_WORDS = "Lader Haul Carrier Freight Portage Lugger Ferryman Crate Bowler Hauler Cargon Trosser".split()
TOWNS = (
    "Ostwell Brunmoss Harrowdale Skelwick Tarnside Volmere Kirnau Quillby Rastow Ellbruck Sarnac-le-Bois Velden".split()
)
SUFFIXES = "RB T XL S DX RT Q D E N P FB TB LX ST".split()
TRIMS = "Ridge Shore Vale Cove Fell Dune Moor Larch".split()
GRADES = ["Solo", "Duo", "Trio", "Duo XL", "Solo Plus", "Quartet", "Ridge", "Shore Plus", "Larch", "Trio L"]
WORDS = "Alcove Larder Lantern Thimble Bracken Hearth Gable Kindle Inglenook Haven Quay Spindle Bobbin Ferrule".split()
SHADES = "Gray Quiet Far Long Amber Pale Early High Silver Little".split()
METRIC = (540, 590, 600, 630, 636, 640, 660, 680, 700)
INCHES = (136, 144, 148, 159, 170, 178)
FORMS = {
    "us": ("Inc.", "LLC", "Corp."),
    "uk": ("Ltd", "Limited"),
    "au": ("Pty Ltd",),
    "fr": ("SAS", "SARL", "SA"),
    "qc": ("inc.", "ltée"),
    "de": ("GmbH", "AG", "GmbH & Co. KG"),
}
KINDS_OF_HOUSE = {
    "us": ("", "", "", " Vans", " Coachworks"),
    "uk": ("", "", "", " Campers", " Conversions"),
    "au": ("", "", "", " Campervans"),
    "fr": ("",),
    "qc": ("",),
    "de": ("", "", " Mobile"),
}


def maker(rng: Random, region: str) -> str:
    """Give the name of a house, without its legal form."""
    return rng.choice(FIRST) + rng.choice(LAST) + rng.choice(KINDS_OF_HOUSE[region])


def legal_form(rng: Random, region: str) -> str:
    """Give the legal form that stands behind the name of a house."""
    return rng.choice(FORMS[region])


def series(rng: Random) -> str:
    """Give the name of a series of vans."""
    return rng.choice(SERIES)


def town(rng: Random) -> str:
    """Give a place."""
    return rng.choice(TOWNS)


def codes(rng: Random, region: str, count: int) -> list[str]:
    """Give as many different floorplan codes as asked for, of one kind; none reads as a figure with a unit."""
    kind = rng.choice(("plain", "suffix"))
    numbers = list(range(17, 26)) if region in ("us", "qc") else list(METRIC)
    if kind == "plain":
        return [str(number) for number in sorted(rng.sample(numbers, count))]
    chosen = sorted(rng.choices(numbers, k=count))
    suffixes = rng.sample(SUFFIXES, count)
    gap = rng.choice((" ", " ", ""))
    return [f"{number}{gap}{suffix}" for number, suffix in zip(chosen, suffixes, strict=True)]


def base_vehicles(rng: Random, region: str) -> list[str]:
    """Give two sizes of one base vehicle."""
    name = f"{rng.choice(BASES)} {rng.choice(BASE_WORDS)}"
    sizes = rng.choice((("2500", "3500"), ("250", "350"))) if region in ("us", "qc") else ("35 L2H2", "35 L3H2")
    return [f"{name} {size}" for size in sizes]


def every_word() -> list[str]:
    """Give every word this module can put into a document, for checking against barred names."""
    joined = [first + last for first in FIRST for last in LAST]
    return joined + SERIES + BASES + BASE_WORDS + TOWNS + TRIMS + GRADES + WORDS + SHADES
