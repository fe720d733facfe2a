"""The driver as joints, links and tapered outlines, from the joints that the numbers use."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from shapely import Polygon, get_coordinates, get_parts, union_all

from fitcalc.body.links import Links
from fitcalc.fit.result import Result
from fitcalc.posture.limbs import Arm, Leg
from fitcalc.posture.sit import Sitting
from fitcalc.present.outlines import (
    HELMET,
    VISOR,
    Disc,
    as_points,
    ellipse,
    placed,
    shoe,
    smooth,
    sole,
    torso,
    toward,
    wrapped,
)
from fitcalc.present.picture import XY, Area, Circle, Line, Primitive, Style, View, seen

ANKLE, WRIST, NECK = 40.0, 30.0, 58.0
"""Half thickness of ankle, wrist and neck, mm: drawing only, no source."""
JOINT = 9.0
"""Radius of a joint mark, mm."""


@dataclass(frozen=True)
class Look:
    """How one body is drawn.

    Attributes:
        prefix: of every key.
        skin, kit: outlines of the body, and of what is worn.
        joint, link: the skeleton; None leaves it out.
    """

    prefix: str
    skin: Style
    kit: Style
    joint: Style | None
    link: Style | None


AFTER = Look("body", "body", "kit", "joint", "link")
FOUND = Look("found body", "as found", "as found", None, None)
OTHER = Look("other body", "other driver", "other driver", "other joint", None)


def body_drawing(result: Result, view: View, look: Look = AFTER) -> Iterator[Primitive]:
    """The seated driver whole, far side first; the left leg on its leftmost pedal, the right leg on its rightmost."""
    yield from trunk_and_legs(result, view, look)
    yield from arms_and_helmet(result, view, look)


@lru_cache(maxsize=12)
def silhouette(result: Result, view: View, look: Look) -> tuple[Primitive, ...]:
    """The seated driver as one outline, for what is only compared with; and joints, where the look has them.

    Kept from one picture to the next, since the body compared with stays while the other is dragged.
    """
    parts = tuple(body_drawing(result, view, look))
    whole = union_all([Polygon(part.points).buffer(0.0) for part in parts if isinstance(part, Area)])
    lines = [
        Line(f"{look.prefix}.outline{at}", look.skin, "", as_points(get_coordinates(shape.exterior)))
        for at, shape in enumerate(get_parts(whole))
    ]
    return (*lines, *(part for part in parts if isinstance(part, Circle)))


def trunk_and_legs(result: Result, view: View, look: Look = AFTER) -> Iterator[Primitive]:
    """What the straps lie on."""
    sitting, links = result.sitting, result.links
    left, right = resting_legs(sitting)
    yield from _legs("leg_right", right, links, view, look)
    if view == "plan":
        yield from _legs("leg_left", left, links, view, look)
        yield from _trunk_above(sitting, links, look)
        return
    yield from _trunk_beside(sitting, links, look)
    yield from _legs("leg_left", left, links, view, look)


def arms_and_helmet(result: Result, view: View, look: Look = AFTER) -> Iterator[Primitive]:
    """What hides the straps: from the side the near arm, from above the arms and the helmet."""
    yield from _arms(result.sitting, result.links, view, look)
    if view == "plan":
        yield _area("helmet", "driver.helmet", look.kit, look, _helmet_above(result))


def resting_legs(sitting: Sitting) -> tuple[tuple[Leg, ...], tuple[Leg, ...]]:
    """The leg on the leftmost and the leg on the rightmost pedal, released; none where that foot has no pedal."""
    hip_left = sitting.hips[0]
    legs = [at.rest for at in sitting.pedals.values()]
    left = [leg for leg in legs if leg.hip is hip_left]
    return tuple(left[:1]), tuple([leg for leg in legs if leg.hip is not hip_left][-1:])


def shoe_beside(leg: Leg, links: Links) -> tuple[XY, ...]:
    """The shoe in side view."""
    along, _ = toward(seen(leg.foot.heel, "side"), seen(leg.foot.toe, "side"))
    ankle = (
        float(links.heel_to_ankle[0] + links.shoe_heel_margin[0]),
        float(links.ankle_height[0] + links.sole_heel[0]),
    )
    outline = shoe(float(links.shoe_length[0]), ankle)
    return placed(outline, seen(leg.foot.heel, "side"), along, (along[1], -along[0]))


def sole_seen(leg: Leg, links: Links, view: View) -> tuple[XY, ...]:
    """The shoe's sole in plan or looking forward."""
    heel, toe = seen(leg.foot.heel, view), seen(leg.foot.toe, view)
    length, ball = float(links.shoe_length[0]), float(links.heel_to_ball[0] + links.shoe_heel_margin[0])
    along = ((toe[0] - heel[0]) / length, (toe[1] - heel[1]) / length)
    right = (0.0, 1.0) if view == "plan" else (1.0, 0.0)
    return placed(sole(length, ball, float(links.shoe_width[0])), heel, along, right)


def _area(name: str, ref: str, style: Style, look: Look, points: tuple[XY, ...]) -> Area:
    return Area(f"{look.prefix}.{name}", style, ref, points)


def _skeleton(name: str, joints: tuple[XY, ...], look: Look) -> Iterator[Primitive]:
    if look.link is not None:
        yield Line(f"{look.prefix}.{name}.links", look.link, "", joints)
    if look.joint is not None:
        for at, joint in enumerate(joints):
            yield Circle(f"{look.prefix}.{name}.joint{at}", look.joint, "", joint, JOINT)


def _legs(name: str, legs: tuple[Leg, ...], links: Links, view: View, look: Look) -> Iterator[Primitive]:
    for leg in legs:
        yield from _leg(name, leg, links, view, look)


def _leg(name: str, leg: Leg, links: Links, view: View, look: Look) -> Iterator[Primitive]:
    hip, knee, ankle = (seen(joint, view) for joint in (leg.hip, leg.knee, leg.ankle))
    thigh, calf, top = (float(size[0]) for size in (links.thigh_radius, links.shank_radius, links.knee_top))
    swell = (knee[0] + 0.3 * (ankle[0] - knee[0]), knee[1] + 0.3 * (ankle[1] - knee[1]))
    foot = shoe_beside(leg, links) if view == "side" else sole_seen(leg, links, view)
    yield _area(
        f"{name}.shank",
        "driver.measurements.knee_height",
        look.skin,
        look,
        wrapped([(knee, top), (swell, calf), (ankle, ANKLE)]),
    )
    yield _area(
        f"{name}.thigh",
        "driver.measurements.buttock_knee",
        look.skin,
        look,
        wrapped([(hip, thigh), (knee, top)]),
    )
    yield _area(f"{name}.shoe", "driver.shoe", look.kit, look, foot)
    yield from _skeleton(name, (hip, knee, ankle, seen(leg.foot.ball, view)), look)


def _arms(sitting: Sitting, links: Links, view: View, look: Look) -> Iterator[Primitive]:
    """Both arms in plan; from the side the left one, which hides the other."""
    hands = sitting.hands or ()
    for name, arm in zip(("arm_left", "arm_right"), hands if view == "plan" else hands[:1], strict=False):
        yield from _arm(name, arm, links, view, look)


def _arm(name: str, arm: Arm, links: Links, view: View, look: Look) -> Iterator[Primitive]:
    shoulder, elbow, grip = (seen(joint, view) for joint in (arm.shoulder, arm.elbow, arm.grip))
    thick = 0.19 * float(links.upper_arm[0])
    discs: tuple[Disc, ...] = ((shoulder, thick), (elbow, 0.8 * thick))
    yield _area(f"{name}.upper", "driver.measurements.upper_arm", look.skin, look, wrapped(discs))
    yield _area(
        f"{name}.fore",
        "driver.measurements.forearm_grip",
        look.skin,
        look,
        wrapped([(elbow, 0.8 * thick), (grip, WRIST)]),
    )
    yield from _skeleton(name, (shoulder, elbow, grip), look)


def _trunk_beside(sitting: Sitting, links: Links, look: Look) -> Iterator[Primitive]:
    trunk = sitting.trunk
    hip, shoulder, neck = (seen(joint, "side") for joint in (trunk.hip, trunk.shoulder, trunk.cervicale))
    along, length = toward(hip, shoulder)
    sizes = (links.hip_ahead_of_back, links.abdomen_depth, links.chest_depth, links.hip_above_cushion)
    outline = torso(length, *(float(size[0]) for size in sizes))
    helmet = seen(trunk.helmet, "side")
    forward = (neck[0] - 0.9 * NECK, neck[1])
    yield _area("neck", "", look.skin, look, wrapped([(forward, NECK), (helmet, NECK)]))
    yield _area(
        "torso",
        "driver.measurements.sitting_height",
        look.skin,
        look,
        placed(outline, hip, along, (along[1], -along[0])),
    )
    half = (float(trunk.helmet_length[0]) / 2, float(trunk.helmet_height[0]) / 2)
    for name, shape in (("helmet", HELMET), ("visor", VISOR)):
        at = placed(smooth(shape), helmet, (half[0], 0.0), (0.0, half[1]))
        yield _area(name, "driver.helmet", look.kit, look, at)
    yield from _skeleton("trunk", (hip, shoulder), look)
    yield from _skeleton("head", (seen(trunk.eye, "side"),), look)


def _trunk_above(sitting: Sitting, links: Links, look: Look) -> Iterator[Primitive]:
    trunk = sitting.trunk
    chest, hips = float(links.chest_depth[0]) / 2, float(links.abdomen_depth[0]) / 2
    shoulders = [(seen(point, "plan"), 0.55 * chest) for point in (trunk.shoulder_left, trunk.shoulder_right)]
    middle = seen((trunk.hip + trunk.shoulder) / 2, "plan")
    side = float(links.hip_breadth[0]) / 2 - 0.6 * hips
    pelvis = [((seen(trunk.hip, "plan")[0], middle[1] + sign * side), 0.6 * hips) for sign in (-1.0, 1.0)]
    yield _area(
        "torso", "driver.measurements.shoulder_breadth", look.skin, look, wrapped([*shoulders, *pelvis])
    )


def _helmet_above(result: Result) -> tuple[XY, ...]:
    trunk = result.sitting.trunk
    half = (float(trunk.helmet_length[0]) / 2, float(result.links.helmet_width[0]) / 2)
    return ellipse(seen(trunk.helmet, "plan"), *half)


def extreme_leg(name: str, leg: Leg, links: Links, view: View) -> Iterator[Primitive]:
    """A leg with its pedal at the stop: links, and the shoe."""
    joints = tuple(seen(joint, view) for joint in (leg.hip, leg.knee, leg.ankle))
    foot = shoe_beside(leg, links) if view == "side" else sole_seen(leg, links, view)
    yield Line(f"full.{name}.links", "extreme", "", joints)
    yield Line(f"full.{name}.shoe", "extreme", "driver.shoe", (*foot, foot[0]))
