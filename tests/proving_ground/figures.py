"""Numbers as a house prints them, and what each means in the vocabulary's unit.

A ``House`` has one way with every quantity, drawn once for a document. Values are rounded to what is printed first, and
the truth is taken from the printed figure, so both always agree. Factors are the exact definitions of the units
(NIST Special Publication 811, appendix B): inch 25.4 mm, pound 0.45359237 kg, US gallon 3.785411784 l, imperial gallon
4.54609 l, BTU(IT)/h 0.29307107 W, h·ft²·°F/BTU 0.17611018 m²·K/W.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from random import Random

INCH, POUND, US_GALLON, IMPERIAL_GALLON = 25.4, 0.45359237, 3.785411784, 4.54609
BTU_H, R_US = 0.29307107, 0.17611018
NBSP, THIN, NARROW = "\u00a0", "\u2009", "\u202f"


@dataclass(frozen=True, slots=True)
class Figure:
    """A value as printed.

    ``text`` is the figure with its unit, ``value`` what it means in the vocabulary's unit, ``habit`` the way of
    printing (a row of the report). ``bare`` and ``unit`` are the two parts where the unit can move into the label.
    """

    text: str
    value: float
    habit: str
    bare: str = ""
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Way:
    """How a number is set: sign before thousands, decimal sign, gap before the unit."""

    thousands: str
    decimal: str
    gap: str


WAYS = {
    "us": [Way(",", ".", " "), Way(",", ".", " "), Way(",", ".", NBSP), Way("", ".", " ")],
    "uk": [Way(",", ".", " "), Way("", ".", " "), Way(",", ".", ""), Way("", ".", "")],
    "au": [Way(",", ".", " "), Way("", ".", " "), Way("", ".", ""), Way(" ", ".", " ")],
    "fr": [Way(" ", ",", " "), Way(NBSP, ",", NBSP), Way(NARROW, ",", NBSP), Way("", ",", " ")],
    "qc": [Way(" ", ",", " "), Way(NBSP, ",", NBSP), Way("", ",", " ")],
    "de": [Way(".", ",", " "), Way(".", ",", NBSP), Way("", ",", " "), Way(THIN, ",", " ")],
}

# Ways to print each quantity, by region; a way that stands twice is as common as two.
STYLES: dict[str, dict[str, str]] = {
    "us": {
        "volume": "gal|gal|gal.|gals|gallons|US gal|U.S. gal|gal (L)|gal / L|-gal",
        "long": 'ft in|ft in|f\'i"|f\' i"|f′ i″|ft. in.|in|in"|in.d"|f\'i½"|ft in (m)|in (m)|f\'-i"',
        "short": 'in|in|in"|in.|ft in|f\'i"|f\' i"|in (m)',
        "mass": "lb|lb|lbs|lbs.|lb (kg)|pounds",
        "power": "BTU/h|BTU|BTU/hr|Btu/h|BTUs|BTU/h (kW)|BTU per hour",
        "temp": "°F|° F|minus °F|−°F|°F (°C)|degrees F|F",
        "thickness": 'in|in|in.|in"|½ in|1/2 in|inches|in (mm)|mm',
        "burn": "gal/h|gal/hr|gph|gal per hour",
        "r": "R-|R-|R|R ",
    },
    "uk": {
        "volume": "litres|litres|L|l|ltr|litres (imp gal)|l (gal imp)|imp gal",
        "long": "m|m|mm|m (ft in)|m (f'i\")|cm",
        "short": "m|m|mm|cm",
        "mass": "kg|kg|kg|t|tonnes",
        "power": "kW|kW|.kW|W",
        "temp": "°C|°C|−°C|minus °C|degrees C|C",
        "thickness": "mm|mm|mm|cm",
        "burn": "l/h|litres/hour|L/h",
        "r": "m²K/W|m²·K/W|m2K/W",
    },
    "au": {
        "volume": "L|L|litres|l|ltr",
        "long": "mm|mm|m|m|cm",
        "short": "mm|m|mm|cm",
        "mass": "kg|kg|kg|t",
        "power": "kW|kW|.kW|W",
        "temp": "°C|°C|−°C|minus °C|degrees C",
        "thickness": "mm|mm|mm|cm",
        "burn": "L/h|L/hr|litres/hour",
        "r": "m²K/W|R (m²K/W)|m²·K/W",
    },
    "fr": {
        "volume": "l|l|L|litres|l|litres",
        "long": "m|m|mm|mm|cm|m full",
        "short": "m|m|mm|cm",
        "mass": "kg|kg|kg|t",
        "power": "kW|kW|.kW|W",
        "temp": "°C|°C|−°C|–°C|moins °C",
        "thickness": "mm|mm|mm|cm",
        "burn": "l/h|l/h|litre/heure",
        "r": "m²K/W|m²·K/W|m².K/W",
    },
    "qc": {
        "volume": "L|L|litres|gal US (L)|L (gal US)|gal US",
        "long": "pi po|pi po|pi po (m)|mm|m|po",
        "short": "po|pi po|mm|m|cm",
        "mass": "lb|lb (kg)|kg|kg (lb)|lb",
        "power": "BTU/h|BTU|kW|BTU/h (kW)|BTU/h",
        "temp": "°C|°C|−°C|moins °C|°C (°F)",
        "thickness": "po|po|mm|cm",
        "burn": "L/h|L/h|gal US/h",
        "r": "R-|R|RSI",
    },
    "de": {
        "volume": "l|l|Liter|L|Ltr.|l",
        "long": "mm|mm|m|m|cm|m full",
        "short": "m|mm|cm|m",
        "mass": "kg|kg|kg|t",
        "power": "kW|kW|.kW|W",
        "temp": "°C|°C|−°C|–°C|minus Grad|Grad Celsius",
        "thickness": "mm|mm|mm|cm",
        "burn": "l/h|l/h|Liter/Stunde",
        "r": "m²K/W|m²·K/W|m²K/W",
    },
}

WATTS = {"W": 4, "watts": 1}
AMPS = {"us": "A|A|amp|amps|-amp", "uk": "A|A|amp", "au": "A|A|amp", "fr": "A", "qc": "A|ampères", "de": "A|A|Ampere"}
HOURS = {"us": "Ah|Ah|amp-hours|AH", "uk": "Ah|Ah|amp-hours", "au": "Ah", "fr": "Ah", "qc": "Ah", "de": "Ah"}
WATT = {"us": "W|W|watts|watt", "uk": "W|W|watts", "au": "W|W|watts", "fr": "W", "qc": "W|watts", "de": "W|W|Watt"}
ENERGY = "Wh|kWh|kWh"


def rounded(value: float) -> float:
    """Give a value with four significant figures, as labels carry it."""
    return float(f"{value:.4g}")


class House:
    """One house's way with figures; ``glyphs`` is False where the medium's fonts lack thin spaces, primes and signs."""

    def __init__(self, region: str, rng: Random, glyphs: bool = True):
        self.region = region
        self.rng = rng
        self.glyphs = glyphs
        self.way = rng.choice(WAYS[region])
        if not glyphs and {self.way.thousands, self.way.gap} & {THIN, NARROW}:
            self.way = replace(self.way, thousands=NBSP if self.way.thousands in (THIN, NARROW) else self.way.thousands)
        self.styles = {name: self._style(text) for name, text in STYLES[region].items()}
        self.styles["amp"] = rng.choice(AMPS[region].split("|"))
        self.styles["hour"] = rng.choice(HOURS[region].split("|"))
        self.styles["watt"] = rng.choice(WATT[region].split("|"))
        self.styles["energy"] = rng.choice(ENERGY.split("|"))
        self.low = rng.choice(("before", "after"))

    def _style(self, text: str) -> str:
        styles = text.split("|")
        if not self.glyphs:
            styles = [style for style in styles if not set(style) & set("′″−")]
        return self.rng.choice(styles)

    def aloud(self) -> House:
        """Give the same house when it writes running text: plain units, no dual figures."""
        other = House(self.region, self.rng, self.glyphs)
        other.way = self.way
        plain = {"volume": "gallons" if self.region == "us" else "litres", "long": self.styles["long"].split(" (")[0]}
        if self.region == "de":
            plain["volume"] = self.rng.choice(("Liter", "l"))
        other.styles = {**self.styles, **plain}
        return other

    # -- numbers ----------------------------------------------------------------------------------------------------

    def number(self, value: float, places: int = 0, thousands: bool = True) -> str:
        """Give a number with this house's signs."""
        text = f"{value:,.{places}f}"
        whole, _, part = text.partition(".")
        whole = whole.replace(",", self.way.thousands if thousands else "")
        return whole + (self.way.decimal + part if part else "")

    def exact(self, value: float, places: int) -> str:
        """Give a number without zeros at its end."""
        for fewer in range(places + 1):
            if abs(round(value, fewer) - value) < 10 ** -(places + 2):
                return self.number(value, fewer)
        return self.number(value, places)

    def _made(self, bare: str, unit: str, value: float, habit: str, gap: str | None = None) -> Figure:
        join = self.way.gap if gap is None else gap
        if gap is None and not join and (len(unit) > 3 or "/" in unit):
            join = " "
        movable = unit != '"'
        return Figure(bare + join + unit, rounded(value), habit, bare if movable else "", unit if movable else "")

    # -- quantities -------------------------------------------------------------------------------------------------

    def figure(self, quantity: str, value: float) -> Figure:
        """Give a value (in the vocabulary's unit) as this house prints that quantity."""
        makers: dict[str, Callable[[float], Figure]] = {
            "volume": self._volume, "long": self._long, "short": self._short, "mass": self._mass, "power": self._power,
            "temp": self._temp, "thickness": self._thickness, "burn": self._burn, "r": self._resistance,
            "amp": self._amp, "watt": self._watt, "draw": self._draw, "hour": self._hour, "energy": self._energy,
        }  # fmt: skip
        return makers[quantity](value)

    def _volume(self, litres: float) -> Figure:
        style = self.styles["volume"]
        if style in ("imp gal", "litres (imp gal)", "l (gal imp)"):
            gallons = max(1.0, round(litres / IMPERIAL_GALLON, 1 if litres < 40 else 0))
            if style == "imp gal":
                return self._made(self.exact(gallons, 1), "imp gal", gallons * IMPERIAL_GALLON, "imp gal")
            whole = round(litres)
            unit = "litres" if style.startswith("litres") else "l"
            text = f"{whole}{self.way.gap}{unit} ({self.exact(round(whole / IMPERIAL_GALLON, 1), 1)} gal)"
            return Figure(text, whole, style)
        if "gal" not in style or style.startswith("L ("):
            whole = max(1, round(litres))
            if style == "L (gal US)":
                return Figure(f"{whole} L ({self.exact(round(whole / US_GALLON, 1), 1)} gal US)", whole, style)
            return self._made(str(whole), style, whole, style)
        gallons = max(0.5, round(litres / US_GALLON, 1) if litres < 25 else round(litres / US_GALLON))
        bare, value = self.exact(gallons, 1), gallons * US_GALLON
        if style in ("gal (L)", "gal US (L)"):
            unit = style.removesuffix(" (L)")
            return Figure(f"{bare} {unit} ({self.number(value, 0)} L)", rounded(value), style)
        if style == "gal / L":
            return Figure(f"{bare} gal / {self.number(value, 0)} L", rounded(value), style)
        if style == "-gal":
            return Figure(f"{bare} gal", rounded(value), "gal", bare, "gal")
        return self._made(bare, style, value, style)

    def _long(self, mm: float) -> Figure:
        return self._length(mm, self.styles["long"])

    def _short(self, mm: float) -> Figure:
        return self._length(mm, self.styles["short"])

    def _length(self, mm: float, style: str) -> Figure:
        if style in ("mm", "cm", "m", "m full", "m (ft in)", "m (f'i\")"):
            return self._metric_length(mm, style)
        inches = round(mm / INCH)
        half = style == "f'i½\""
        feet, rest = divmod(inches, 12)
        value = (inches + (0.5 if half else 0)) * INCH
        metres = self.number(value / 1000, 2)
        if style == 'in.d"':
            tenth = round(mm / INCH, 1)
            return self._made(self.number(tenth, 1), '"', tenth * INCH, "in with decimals", "")
        if style in ("in", "in.", 'in"', "po"):
            unit = {'in"': '"'}.get(style, style)
            return self._made(str(inches), unit, value, style, "" if unit == '"' else None)
        if style == "in (m)":
            return Figure(f"{inches} in ({metres} m)", rounded(value), style)
        forms = {
            "ft in": f"{feet} ft {rest} in", "ft. in.": f"{feet} ft. {rest} in.", "f'i\"": f"{feet}'{rest}\"",
            "f' i\"": f"{feet}' {rest}\"", "f′ i″": f"{feet}′ {rest}″", "f'-i\"": f"{feet}'-{rest}\"",
            "f'i½\"": f"{feet}' {rest}½\"", "ft in (m)": f"{feet} ft {rest} in ({metres} m)",
            "pi po": f"{feet} pi {rest} po", "pi po (m)": f"{feet} pi {rest} po ({metres} m)",
        }  # fmt: skip
        return Figure(forms[style], rounded(value), style)

    def _metric_length(self, mm: float, style: str) -> Figure:
        if style == "mm":
            whole = round(mm)
            return self._made(self.number(whole), "mm", whole, "mm")
        if style == "cm":
            whole = round(mm / 10)
            return self._made(str(whole), "cm", whole * 10, "cm")
        metres = round(mm / 1000, 2)
        if style in ("m (ft in)", "m (f'i\")"):
            feet, rest = divmod(round(metres * 1000 / INCH), 12)
            second = f"{feet} ft {rest} in" if style == "m (ft in)" else f"{feet}'{rest}\""
            return Figure(f"{self.number(metres, 2)}{self.way.gap}m ({second})", rounded(metres * 1000), style)
        unit = {"m full": {"fr": "mètres", "de": "Meter"}.get(self.region, "metres")}.get(style, "m")
        return self._made(self.number(metres, 2), unit, metres * 1000, unit)

    def _mass(self, kg: float) -> Figure:
        style = self.styles["mass"]
        if style.startswith(("lb", "pounds")):
            pounds = round(kg / POUND / 10) * 10
            if style == "lb (kg)":
                text = f"{self.number(pounds)} lb ({self.number(pounds * POUND)} kg)"
                return Figure(text, rounded(pounds * POUND), style)
            return self._made(self.number(pounds), style, pounds * POUND, style)
        if style in ("t", "tonnes"):
            tonnes = round(kg / 1000, 2)
            return self._made(self.exact(tonnes, 2), style, tonnes * 1000, style)
        whole = round(kg / 5) * 5
        if style == "kg (lb)":
            return Figure(f"{self.number(whole)} kg ({self.number(whole / POUND)} lb)", whole, style)
        return self._made(self.number(whole), "kg", whole, "kg")

    def _power(self, watts: float) -> Figure:
        style = self.styles["power"]
        if style.upper().startswith("BTU"):
            btu = round(watts / BTU_H / 500) * 500
            value = btu * BTU_H
            if style == "BTU/h (kW)":
                text = f"{self.number(btu)} BTU/h ({self.number(value / 1000, 1 if value > 3000 else 2)} kW)"
                return Figure(text, rounded(value), style)
            return self._made(self.number(btu), style, value, style)
        kilowatts = round(watts / 1000, 1)
        if style == "W":
            return self._made(self.number(kilowatts * 1000), "W", kilowatts * 1000, "W")
        bare = self.number(kilowatts, 1) if style == ".kW" else self.exact(kilowatts, 1)
        return self._made(bare, "kW", kilowatts * 1000, "kW")

    def _temp(self, celsius: float) -> Figure:
        style = self.styles["temp"]
        if "F" in style and style != "°C (°F)":
            fahrenheit = round((celsius * 9 / 5 + 32) / 5) * 5
            return self._degrees(fahrenheit, style, round((fahrenheit - 32) * 5 / 9, 1), "F")
        whole = round(celsius)
        return self._degrees(whole, style, whole, "C")

    def _degrees(self, shown: int, style: str, celsius: float, scale: str) -> Figure:
        size, below = abs(shown), shown < 0
        sign = "-" if below else ""
        minus = "minus " if below else ""
        moins = "moins " if below else ""
        other = f"{'-' if celsius < 0 else ''}{abs(celsius):.0f} °C"
        forms = {
            f"°{scale}": f"{sign}{size} °{scale}", f"° {scale}": f"{sign}{size}° {scale}",
            f"minus °{scale}": f"{minus}{size} °{scale}", f"−°{scale}": f"{'−' if below else ''}{size} °{scale}",
            f"–°{scale}": f"{'–' if below else ''}{size} °{scale}", "°F (°C)": f"{sign}{size} °F ({other})",
            f"degrees {scale}": f"{minus}{size} degrees {scale}", scale: f"{sign}{size} {scale}",
            "°C (°F)": f"{sign}{size} °C ({round(celsius * 9 / 5 + 32)} °F)", "moins °C": f"{moins}{size} °C",
            "minus Grad": f"{minus}{size} Grad", "Grad Celsius": f"{sign}{size} Grad Celsius",
        }  # fmt: skip
        return Figure(forms[style], celsius, style)

    def _thickness(self, mm: float) -> Figure:
        style = self.styles["thickness"]
        if style == "mm":
            whole = round(mm / 5) * 5
            return self._made(str(whole), "mm", whole, "mm")
        if style == "cm":
            centimetres = round(mm / 5) / 2
            return self._made(self.exact(centimetres, 1), "cm", centimetres * 10, "cm")
        halves = max(2, round(mm / INCH * 2))
        inches, value = halves / 2, halves / 2 * INCH
        decimal = self.exact(inches, 1)
        whole, odd = divmod(halves, 2)
        if style == "½ in":
            return self._made(f"{whole}{'½' if odd else ''}", "in", value, style)
        if style == "1/2 in":
            return self._made(f"{whole}{' 1/2' if odd else ''}", "in", value, style)
        if style == "in (mm)":
            return Figure(f"{decimal} in ({value:.0f} mm)", rounded(value), style)
        unit = {'in"': '"', "inches": "inch" if inches == 1 else "inches"}.get(style, style)
        return self._made(decimal, unit, value, style, "" if unit == '"' else None)

    def _burn(self, litres: float) -> Figure:
        style = self.styles["burn"]
        if "gal" in style or style == "gph":
            gallons = round(litres / US_GALLON, 2)
            return self._made(self.number(gallons, 2), style, gallons * US_GALLON, style)
        hundredths = round(litres, 2)
        return self._made(self.number(hundredths, 2), style, hundredths, style)

    def _resistance(self, rsi: float) -> Figure:
        style = self.styles["r"]
        if style in ("R-", "R", "R "):
            whole = max(2, round(rsi / R_US))
            return Figure(f"{style}{whole}", rounded(whole * R_US), "R-value")
        tenth = round(rsi, 1)
        if style == "RSI":
            return Figure(f"RSI {self.number(tenth, 1)}", tenth, "RSI")
        if style == "R (m²K/W)":
            return Figure(f"R {self.number(tenth, 1)} m²K/W", tenth, style)
        return self._made(self.number(tenth, 1), style, tenth, style)

    def _amp(self, amperes: float) -> Figure:
        style, whole = self.styles["amp"], round(amperes)
        if style == "-amp":
            return Figure(f"{whole}-amp", whole, style)
        return self._made(str(whole), style, whole, style)

    def _watt(self, watts: float) -> Figure:
        style, whole = self.styles["watt"], round(watts)
        return self._made(self.number(whole), style, whole, style)

    def _draw(self, watts: float) -> Figure:
        return self._made(str(round(watts)), "W", round(watts), "W")

    def _hour(self, hours: float) -> Figure:
        style, whole = self.styles["hour"], round(hours)
        return self._made(str(whole), style, whole, style)

    def _energy(self, watt_hours: float) -> Figure:
        if self.styles["energy"] == "Wh":
            return self._made(self.number(round(watt_hours)), "Wh", round(watt_hours), "Wh")
        kilo = round(watt_hours / 1000, 2)
        return self._made(self.exact(kilo, 2), "kWh", kilo * 1000, "kWh")
