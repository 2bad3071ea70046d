"""How much heat a van loses for each kelvin: its faces, their U values, and the air that is changed.

Sizes that documents leave out are assumptions of ``rules/values/body.yaml``. The cab counts as part of the heated
space: its glass and shell are what many vans lose most by.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from specscan.physics.assumptions import MILLIMETRE, Assumptions
from specscan.physics.columns import Columns, by_flag, by_word
from specscan.physics.conduction import bridged, covered, transmittance, ventilation_flow
from specscan.physics.convection import outside_film
from specscan.physics.ranges import Floats, Mask, Range, first_known, hull, independent_sum, monotone, pick
from specscan.physics.wall import wall_resistance

INPUTS = (
    "length_mm", "width_mm", "height_mm", "interior_height_mm", "insulation_r_si", "insulation_material",
    "insulation_thickness_mm", "insulated_surfaces", "thermal_break", "window_glazing", "cab_shades_insulated",
    "rear_shades_insulated",
)  # fmt: skip
"""Fields on which the loss of heat depends."""
GROUPS = (("walls", "ceiling", "floor"), ("windows",), ("cab_glass",), ("cab_shell",), ("air",))
"""Parts whose assumptions have nothing to do with those of another group; the air last."""
NONE = Range.of(0.0)


@dataclass(frozen=True, slots=True)
class Space:
    """The heated space: length, width and height behind the cab (m), and the air in it and in the cab (m³)."""

    length: Range
    width: Range
    height: Range
    air: Range

    @property
    def floor(self) -> Range:
        """Give the area of the floor, and of the ceiling (m²)."""
        return self.length * self.width

    @property
    def walls(self) -> Range:
        """Give the area of both sides and the rear end (m²); towards the cab the space is open."""
        return monotone(
            lambda length, width, height: (2 * length + width) * height,
            {"length": self.length, "width": self.width, "height": self.height}, {},
        )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Envelope:
    """What a van loses per kelvin (W/K), by part.

    ``areas`` (m²) and ``u_values`` (W/(m²·K)) are those of the parts but the air. ``total`` is the sum of all parts,
    ``fabric`` that without the air, ``area`` the outer surface (m²). The spreads of assumptions are combined as those
    of independent groups: insulated faces, windows, cab glass, cab shell, air.
    """

    space: Space
    parts: dict[str, Range]
    u_values: dict[str, Range]
    areas: dict[str, Range]
    total: Range
    fabric: Range
    area: Range

    @property
    def mean_u(self) -> Range:
        """Give the mean U of the surface (W/(m²·K)), air change left out: fabric over area.

        Area and fabric grow together with the size of the van, so each end of the one goes with the same of the other.
        """
        parts = zip((self.fabric.low, self.fabric.typical, self.fabric.high), _ends(self.area), strict=True)
        return Range.of(*(fabric / area for fabric, area in parts))


def space_of(columns: Columns, values: Assumptions) -> Space:
    """Give the heated space from the printed outside size, standing height, or else assumed ones.

    Length: overall less engine and cab (rows M01 to M15). A printed width that leaves more than the widest load space
    may include mirrors; the range then covers both. Checks: rows M02, M04, M06.
    """
    overall = first_known(
        columns.number("length_mm").times(MILLIMETRE), _all(values["assumed_overall_length"], columns)
    )
    length = (overall - values["cab_and_nose_length"]).clipped(least=0.5)
    usual = _all(values["load_width"], columns)
    printed = (columns.number("width_mm").times(MILLIMETRE) - values["width_outside_less_inside"]).clipped(least=0.5)
    width = pick(printed.typical <= usual.high, printed, first_known(hull(usual, printed), usual))
    standing = columns.number("interior_height_mm").times(MILLIMETRE) + values["load_height_less_standing"]
    outside = (columns.number("height_mm").times(MILLIMETRE) - values["height_outside_less_load"]).clipped(least=0.5)
    height = first_known(standing, outside, _all(values["load_height"], columns))
    return Space(length, width, height, length * width * height + values["cab_volume"])


def insulation_of(columns: Columns, values: Assumptions, materials: list[str]) -> dict[str, Range]:
    """Give the resistance of the insulation (m²·K/W) of walls, ceiling and floor.

    Walls: printed or from material and thickness, else assumed. A ceiling that is named as insulated is taken as the
    walls; a face that is not named may be bare.
    """
    wall = first_known(
        wall_resistance(columns, values, materials), _all(values["assumed_insulation_resistance"], columns)
    )
    bare, floor = values["bare_surface_resistance"], values["floor_insulation_resistance"]
    maybe_floor = hull(floor, bare).at(floor.low)
    named = {face: columns.holds("insulated_surfaces", face) for face in ("ceiling", "floor")}
    return {
        "walls": wall,
        "ceiling": pick(named["ceiling"], wall, hull(wall, bare)),
        "floor": pick(named["floor"], _all(floor, columns), _all(maybe_floor, columns)),
    }


def face_u(inner: Floats, outer: Floats, steel: Floats, insulation: Floats, lining: Floats, over_rib: Floats,
           share: Floats) -> Floats:  # fmt: skip
    """Give the U of a face (W/(m²·K)) with steel ribs; all but ``share`` (of ribs) are resistances in m²·K/W.

    Layers in series between the ribs; at the ribs only what lies over them (a thermal break), which counts at most as
    much as insulation and lining. Checks: rows H07 and H08.
    """
    between = transmittance(inner, steel, insulation, lining, outer)
    rib = transmittance(inner, steel, np.minimum(over_rib, insulation + lining), outer)
    return bridged(between, rib, share)


def faces(columns: Columns, values: Assumptions, materials: list[str], wind: float) -> dict[str, Range]:
    """Give the U values (W/(m²·K)) of walls, ceiling and floor in wind (m/s)."""
    share = {"share": values["rib_share"]}
    return {face: monotone(face_u, share, one) for face, one in layers(columns, values, materials, wind).items()}


def layers(columns: Columns, values: Assumptions, materials: list[str], wind: float) -> dict[str, dict[str, Range]]:
    """Give the resistances (m²·K/W) of walls, ceiling and floor in wind (m/s), as ``face_u`` takes them."""
    over_rib = by_flag(columns, "thermal_break", values["thermal_break_resistance"], NONE)
    radiative = values["exterior_radiative_film"]
    outer = monotone(lambda film: 1 / outside_film(wind, film), {}, {"film": radiative})
    films = {"walls": "inside_film_wall", "ceiling": "inside_film_ceiling", "floor": "inside_film_floor"}
    return {
        face: {
            "inner": values[films[face]], "outer": outer, "steel": values["steel_resistance"],
            "insulation": one, "lining": values["lining_resistance"], "over_rib": over_rib,
        }
        for face, one in insulation_of(columns, values, materials).items()
    }  # fmt: skip


def glass(columns: Columns, values: Assumptions) -> dict[str, Range]:
    """Give the U values (W/(m²·K)) of living-space windows and of the cab's glass, with insulated covers up.

    Windows of unknown glazing range over single and double; a cover of which nothing is said may be there or not.
    Checks: rows W07 to W13.
    """
    single, double = values["single_window_transmittance"], values["double_window_transmittance"]
    middle = Range.of((single.typical + double.typical) / 2)
    both = hull(single, double).at(middle.typical)
    living = by_word(columns, "window_glazing", {"double": double, "single": single, "mixed": both}, middle)
    cover = values["cab_cover_resistance"]
    return {
        "windows": _maybe_covered(columns, "rear_shades_insulated", living, cover),
        "cab_glass": _maybe_covered(columns, "cab_shades_insulated", _all(single, columns), cover),
    }


def air_changes(parked: Range, per_speed: Range, speed: float) -> Range:
    """Give air changes per second of a closed van at a speed (m/s): what it has parked and so much per metre driven.

    Source: Ott et al. 2008, linear in speed (row A05). Check: below 6.6 an hour at 110 km/h and typical values.
    """
    return parked + per_speed.times(speed)


def envelope(columns: Columns, values: Assumptions, materials: list[str], wind: float, speed: float = 0.0) -> Envelope:
    """Give what a van loses per kelvin in wind (m/s), parked or at a speed (m/s), by part.

    Valid for steady cold; sun on the van and ground that is warmer than the air are left out, both on the cold side.
    """
    space, u, areas, parts = _parts(columns, values, materials, wind, speed)
    certain = Assumptions(values.book, values.fixed, certain=True)
    *_, known = _parts(columns, certain, materials, wind, speed)
    area = space.walls + space.floor + space.floor + values["cab_glass_area"] + values["cab_shell_area"]
    everything = independent_sum(_grouped(known, GROUPS), _grouped(parts, GROUPS))
    fabric = independent_sum(_grouped(known, GROUPS[:-1]), _grouped(parts, GROUPS[:-1]))
    return Envelope(space, parts, u, areas, everything, fabric, area)


def _parts(
    columns: Columns, values: Assumptions, materials: list[str], wind: float, speed: float
) -> tuple[Space, dict[str, Range], dict[str, Range], dict[str, Range]]:
    """Give the heated space, U values, areas (m²), and what is lost per kelvin by part (W/K)."""
    space = space_of(columns, values)
    u = {**faces(columns, values, materials, wind), **glass(columns, values)}
    u["cab_shell"] = values["cab_shell_transmittance"]
    window_area = values["living_window_area"]
    opaque = (space.walls - window_area).clipped(least=0.0)
    areas = {
        "walls": opaque, "ceiling": space.floor, "floor": space.floor, "windows": window_area,
        "cab_glass": values["cab_glass_area"], "cab_shell": values["cab_shell_area"],
    }  # fmt: skip
    parts = {name: u[name] * areas[name] for name in areas}
    changes = air_changes(values["air_changes_parked"], values["air_changes_per_speed"], speed)
    parts["air"] = monotone(
        ventilation_flow, {"heat_capacity": values["air_heat_capacity"], "changes": changes, "volume": space.air}, {}
    )
    return space, u, areas, parts


def _grouped(parts: dict[str, Range], groups: tuple[tuple[str, ...], ...]) -> list[Range]:
    """Add up the parts of each group; within a group they rest on the same assumptions, so bound goes with bound."""
    return [_sum([parts[name] for name in group]) for group in groups]


def has_size_or_wall(columns: Columns, values: Assumptions, materials: list[str]) -> Mask:
    """Tell where enough is known for a loss of heat that is worth a figure: the length, or the walls' insulation."""
    return columns.number("length_mm").known | wall_resistance(columns, values, materials).known


def _maybe_covered(columns: Columns, name: str, bare: Range, cover: Range) -> Range:
    with_cover = monotone(covered, {"u": bare}, {"cover": cover})
    return by_flag(columns, name, with_cover, bare)


def _all(one: Range, columns: Columns) -> Range:
    """Give an assumption once for each case."""
    return Range(*(np.broadcast_to(part, columns.size) for part in (one.low, one.typical, one.high)))


def _ends(one: Range) -> tuple[Floats, Floats, Floats]:
    return one.low, one.typical, one.high


def _sum(ranges: list[Range]) -> Range:
    total = ranges[0]
    for one in ranges[1:]:
        total = total + one
    return total
