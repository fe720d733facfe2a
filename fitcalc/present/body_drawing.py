"""The driver as joints, links and tapered outlines, from the joints that the numbers use."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fitcalc.body.links import Links
from fitcalc.fit.result import Result
from fitcalc.posture.limbs import Leg
from fitcalc.posture.sit import Sitting
from fitcalc.present.body_parts import (
    Look,
    draw_arm,
    draw_leg,
    helmet_above,
    shoe_beside,
    sole_seen,
    trunk_above,
    trunk_beside,
)
from fitcalc.present.outlines import as_points
from fitcalc.present.picture import Area, Circle, Line, Primitive, View, seen
from fitcalc.present.same import once

if TYPE_CHECKING:
    from shapely import Geometry

AFTER = Look("body", "body", "kit", "joint", "link")
FOUND = Look("found body", "as found", "as found", None, None)
OTHER = Look("other body", "other driver", "other driver", "other joint", None)


def silhouette(result: Result, view: View, look: Look) -> tuple[Primitive, ...]:
    """The seated driver as one outline, for what is only compared with; and joints, where the look has them.

    Kept from one picture to the next, since the body compared with stays while the other is dragged.
    """
    return _silhouette(result.sitting, result.links, view, look)


@once
def _silhouette(sitting: Sitting, links: Links, view: View, look: Look) -> Iterator[Primitive]:
    from shapely import get_coordinates, get_parts, union_all

    parts = tuple(body_drawing(sitting, links, view, look))
    areas = [part for part in parts if isinstance(part, Area)]
    legs = [area for area in areas if ".leg_" in area.key]
    rest = [area for area in areas if ".leg_" not in area.key]
    whole = union_all([*_united(*legs), *_united(*rest)])
    for at, shape in enumerate(get_parts(whole)):
        yield Line(f"{look.prefix}.outline{at}", look.skin, "", as_points(get_coordinates(shape.exterior)))
    yield from (part for part in parts if isinstance(part, Circle))


@once
def _united(*areas: Area) -> Iterator["Geometry"]:
    from shapely import linearrings, polygons, union_all

    outlines = [polygons(linearrings(area.points)) for area in areas]
    yield union_all([each if each.is_valid else each.buffer(0.0) for each in outlines])


def body_drawing(sitting: Sitting, links: Links, view: View, look: Look = AFTER) -> Iterator[Primitive]:
    """The seated driver whole, far side first; the left leg on its leftmost pedal, the right leg on its rightmost."""
    yield from trunk_and_legs(sitting, links, view, look)
    yield from arms_and_helmet(sitting, links, view, look)


def trunk_and_legs(sitting: Sitting, links: Links, view: View, look: Look = AFTER) -> Iterator[Primitive]:
    """What the straps lie on."""
    left, right = resting_legs(sitting)
    yield from _legs("leg_right", right, links, view, look)
    if view == "plan":
        yield from _legs("leg_left", left, links, view, look)
        yield from trunk_above(sitting.trunk, links, look)
        return
    yield from trunk_beside(sitting.trunk, links, look)
    yield from _legs("leg_left", left, links, view, look)


def arms_and_helmet(sitting: Sitting, links: Links, view: View, look: Look = AFTER) -> Iterator[Primitive]:
    """What hides the straps: from the side the near arm, from above the arms and the helmet."""
    yield from _arms(sitting, links, view, look)
    if view == "plan":
        yield from helmet_above(sitting.trunk, links, look)


def resting_legs(sitting: Sitting) -> tuple[tuple[Leg, ...], tuple[Leg, ...]]:
    """The leg on the leftmost and the leg on the rightmost pedal, released; none where that foot has no pedal."""
    middle = sitting.trunk.hip[0, 1]
    legs = [at.rest for at in sitting.pedals.values()]
    left = [leg for leg in legs if leg.hip[0, 1] < middle]
    right = [leg for leg in legs if leg.hip[0, 1] > middle]
    return tuple(left[:1]), tuple(right[-1:])


def _legs(name: str, legs: tuple[Leg, ...], links: Links, view: View, look: Look) -> Iterator[Primitive]:
    for leg in legs:
        yield from draw_leg(name, leg, links, view, look)


def _arms(sitting: Sitting, links: Links, view: View, look: Look) -> Iterator[Primitive]:
    """Both arms in plan; from the side the left one, which hides the other."""
    hands = sitting.hands or ()
    for name, arm in zip(("arm_left", "arm_right"), hands if view == "plan" else hands[:1], strict=False):
        yield from draw_arm(name, arm, links, view, look)


@once
def extreme_leg(name: str, leg: Leg, links: Links, view: View) -> Iterator[Primitive]:
    """A leg with its pedal at the stop: links, and the shoe."""
    joints = tuple(seen(joint, view) for joint in (leg.hip, leg.knee, leg.ankle))
    foot = shoe_beside(leg, links) if view == "side" else sole_seen(leg, links, view)
    yield Line(f"full.{name}.links", "extreme", "", joints)
    yield Line(f"full.{name}.shoe", "extreme", "driver.shoe", (*foot, foot[0]))
