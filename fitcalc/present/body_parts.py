"""Parts of a drawn body: limbs, trunk, helmet and shoes, each from its joints."""

from collections.abc import Iterator
from dataclasses import dataclass

from fitcalc.body.links import Links
from fitcalc.posture.limbs import Arm, Leg
from fitcalc.posture.trunk import Trunk
from fitcalc.present.outlines import (
    HELMET,
    VISOR,
    Disc,
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
from fitcalc.present.same import once

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


@once
def trunk_beside(trunk: Trunk, links: Links, look: Look) -> Iterator[Primitive]:
    """Neck, torso and helmet from the side."""
    hip, shoulder, neck = (seen(joint, "side") for joint in (trunk.hip, trunk.shoulder, trunk.cervicale))
    along, _ = toward(hip, shoulder)
    sizes = (
        links.trunk,
        links.hip_ahead_of_back,
        links.abdomen_depth,
        links.chest_depth,
        links.hip_above_cushion,
    )
    outline = torso(*(float(size[0]) for size in sizes))
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


@once
def trunk_above(trunk: Trunk, links: Links, look: Look) -> Iterator[Primitive]:
    """Shoulders and pelvis from above."""
    chest, hips = float(links.chest_depth[0]) / 2, float(links.abdomen_depth[0]) / 2
    shoulders = [(seen(point, "plan"), 0.55 * chest) for point in (trunk.shoulder_left, trunk.shoulder_right)]
    middle = seen((trunk.hip + trunk.shoulder) / 2, "plan")
    side = float(links.hip_breadth[0]) / 2 - 0.6 * hips
    pelvis = [((seen(trunk.hip, "plan")[0], middle[1] + sign * side), 0.6 * hips) for sign in (-1.0, 1.0)]
    yield _area(
        "torso", "driver.measurements.shoulder_breadth", look.skin, look, wrapped([*shoulders, *pelvis])
    )


@once
def helmet_above(trunk: Trunk, links: Links, look: Look) -> Iterator[Primitive]:
    """The helmet from above."""
    half = (float(trunk.helmet_length[0]) / 2, float(links.helmet_width[0]) / 2)
    yield _area("helmet", "driver.helmet", look.kit, look, ellipse(seen(trunk.helmet, "plan"), *half))


@once
def draw_leg(name: str, leg: Leg, links: Links, view: View, look: Look) -> Iterator[Primitive]:
    """Thigh, shank and shoe, with their joints."""
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


@once
def draw_arm(name: str, arm: Arm, links: Links, view: View, look: Look) -> Iterator[Primitive]:
    """Upper arm and forearm, with their joints."""
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
    if look.link is not None and len(joints) > 1:
        yield Line(f"{look.prefix}.{name}.links", look.link, "", joints)
    if look.joint is not None:
        for at, joint in enumerate(joints):
            yield Circle(f"{look.prefix}.{name}.joint{at}", look.joint, "", joint, JOINT)
