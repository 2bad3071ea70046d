"""For how many days fresh water lasts and waste tanks have room, at a stated use."""

from __future__ import annotations

import numpy as np

from specscan.physics.assumptions import DAY, LITRE, Assumptions
from specscan.physics.balance import lasting
from specscan.physics.columns import Columns
from specscan.physics.conditions import Conditions
from specscan.physics.ranges import Range, monotone, pick

BLACK, CASSETTE, DRY = "fixed_tank", ("cassette", "portable"), ("dry", "none")


def fresh_days(columns: Columns, values: Assumptions, conditions: Conditions) -> Range:
    """Give the days that the fresh water lasts: contents over use by all people."""
    contents = columns.number("fresh_tank_l").times(LITRE * conditions.fresh_share)
    return _days(contents, values["water_per_person"].times(conditions.people), values)


def gray_days(columns: Columns, values: Assumptions, conditions: Conditions) -> Range:
    """Give the days until the gray tank is full; 0 litres say that there is none, which ends nothing."""
    tank = columns.number("gray_tank_l")
    room = tank.times(LITRE * (1 - conditions.gray_share))
    water = values["water_per_person"].times(conditions.people) * values["gray_per_fresh"]
    return pick(tank.high == 0, _horizon(columns, values), _days(room, water, values))


def toilet_days(columns: Columns, values: Assumptions, conditions: Conditions) -> Range:
    """Give the days until cassette or black tank is full; a dry toilet, or none, ends nothing here."""
    share = LITRE * (1 - conditions.toilet_share)
    black = _days(
        columns.number("black_tank_l").times(share), values["black_per_person"].times(conditions.people), values
    )
    small = _days(
        columns.number("cassette_l").times(share), values["cassette_per_person"].times(conditions.people), values
    )
    has_black = columns.is_word("toilet", BLACK) | (columns.number("black_tank_l").low > 0)
    has_cassette = columns.is_word("toilet", *CASSETTE)
    none = columns.is_word("toilet", *DRY)
    unknown = Range.unknown(columns.size)
    return pick(none, _horizon(columns, values), pick(has_cassette, small, pick(has_black, black, unknown)))


def _days(room: Range, per_day: Range, values: Assumptions) -> Range:
    most = float(values["stay_horizon"].typical) / DAY
    return monotone(lasting, {"supply": room}, {"per_day": per_day.times(DAY)}, most=most)


def _horizon(columns: Columns, values: Assumptions) -> Range:
    days = float(values["stay_horizon"].typical) / DAY
    return Range.of(np.full(columns.size, days))
