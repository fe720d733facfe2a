"""The body's links: distances between joint centres, flesh, and what is worn, from outside dimensions.

Every constant stands in `data/links.toml` with source and spread. A body scaled as a whole has scaled links.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.body.estimate import estimate
from fitcalc.body.relations import Rules, head_carriage, rules
from fitcalc.documents.driver import Driver
from fitcalc.units import Deg, Floats, Kg, Mm


@dataclass(frozen=True, eq=False)
class Links:
    """One body per case, all (n,), mm and kg; "with suit" includes one layer on each side that has one.

    Attributes:
        stature: standing height, no shoes.
        mass: body mass without kit.
        hip_above_cushion: hip joint normal to a hard cushion surface.
        hip_ahead_of_back: hip joint normal to the back surface.
        hip_half_spacing: hip joint from the middle plane.
        trunk: hip joint to the height of the shoulder joints along the torso line, shortened by sitting.
        cervicale: hip joint to the cervicale (C7) along the torso line.
        shoulder_half_spacing: shoulder joint from the middle plane.
        upper_arm: shoulder joint to elbow joint.
        forearm: elbow joint to the axis of a rod in the fist.
        thigh: hip joint to knee joint.
        shank: knee joint to ankle joint.
        ankle_height: ankle joint above the bare sole.
        heel_to_ankle: back of the bare heel to the ankle joint, along the sole.
        heel_to_ball: back of the bare heel to the ball of the foot, along the sole.
        foot_length: bare.
        foot_breadth: bare, across the ball.
        sole_ball: sole under the ball.
        sole_heel: sole under the heel.
        shoe_length: outside length of the sole.
        shoe_width: outside width of the sole across the ball.
        shoe_heel_margin: outer sole behind the bare heel.
        knee_top: outside above the knee joint, shank upright; with suit.
        knee_front: outside ahead of the knee joint, knee square; with suit.
        thigh_radius: half thickness of the thigh; with suit.
        shank_radius: half thickness of the calf; with suit.
        hip_breadth: seated; with suit on both sides.
        shoulder_breadth: across the upper arms; with suit on both sides.
        abdomen_depth: bare, seated.
        chest_depth: bare.
        eye_below_vertex: eye below the top of the head.
        head_length: brow to back of the head.
        helmet_height: outside.
        helmet_length: outside.
        helmet_width: outside.
        helmet_above_vertex: outside of the helmet above the top of the head.
        strap_above_shoulder: shoulder joint up the torso line to the underside of a shoulder strap, over suit
            and head-and-neck restraint.
        strap_half_spacing: strap's centre line on the shoulder from the middle plane, unless guided.
        lap_ahead_of_hip: lap strap at the front of the pelvis, ahead of the hip joint for an upright trunk.
        lap_above_hip: the same, above the hip joint.
        groin_ahead_of_hip: where crotch straps leave the body, ahead of the hip joint for an upright trunk.
        groin_above_hip: the same, above the hip joint; negative is below.
    """

    stature: Mm
    mass: Kg
    hip_above_cushion: Mm
    hip_ahead_of_back: Mm
    hip_half_spacing: Mm
    trunk: Mm
    cervicale: Mm
    shoulder_half_spacing: Mm
    upper_arm: Mm
    forearm: Mm
    thigh: Mm
    shank: Mm
    ankle_height: Mm
    heel_to_ankle: Mm
    heel_to_ball: Mm
    foot_length: Mm
    foot_breadth: Mm
    sole_ball: Mm
    sole_heel: Mm
    shoe_length: Mm
    shoe_width: Mm
    shoe_heel_margin: Mm
    knee_top: Mm
    knee_front: Mm
    thigh_radius: Mm
    shank_radius: Mm
    hip_breadth: Mm
    shoulder_breadth: Mm
    abdomen_depth: Mm
    chest_depth: Mm
    eye_below_vertex: Mm
    head_length: Mm
    helmet_height: Mm
    helmet_length: Mm
    helmet_width: Mm
    helmet_above_vertex: Mm
    strap_above_shoulder: Mm
    strap_half_spacing: Mm
    lap_ahead_of_hip: Mm
    lap_above_hip: Mm
    groin_ahead_of_hip: Mm
    groin_above_hip: Mm


Dimensions = Mapping[str, Floats]
Part = dict[str, Floats]


def _pelvis(body: Dimensions, rule: Rules) -> Part:
    stature = body["stature"]
    breadth = rule.of("pelvis_breadth", body["bicristalbreadth"])
    tilt = np.radians(rule.plain("pelvis_tilt"))
    ahead, above = rule.of("spine_ahead_of_hip", breadth), rule.of("spine_above_hip", breadth)
    return {
        "hip_above_cushion": rule.of("hip_above_cushion", stature),
        "hip_ahead_of_back": rule.of("hip_ahead_of_back", body["buttockdepth"]),
        "hip_half_spacing": rule.of("hip_half_spacing", breadth),
        "lap_ahead_of_hip": ahead * np.cos(tilt) - above * np.sin(tilt) + rule.of("lap_flesh", stature),
        "lap_above_hip": ahead * np.sin(tilt) + above * np.cos(tilt) - rule.of("lap_below_spine", stature),
        "groin_ahead_of_hip": rule.of("groin_ahead_of_hip", stature),
        "groin_above_hip": -rule.of("groin_below_hip", stature),
    }


def _trunk(body: Dimensions, rule: Rules) -> Part:
    """Sitting heights less the seated hip height, which holds the lumbar shortening of sitting."""
    hip = rule.of("hip_above_cushion", body["stature"])
    joint = rule.of("shoulder_below_acromion", body["acromionradialelength"])
    return {
        "trunk": body["acromialheightsitting"] - joint - hip,
        "cervicale": body["cervicaleheightsitting"] - hip,
        "eye_below_vertex": body["sittingheight"] - body["eyeheightsitting"],
        "abdomen_depth": body["abdominalextensiondepthsitting"],
        "chest_depth": body["chestdepth"],
        "head_length": body["headlength"],
    }


def _arm(body: Dimensions, rule: Rules) -> Part:
    return {
        "shoulder_half_spacing": rule.of("shoulder_half_spacing", body["biacromialbreadth"]),
        "upper_arm": rule.of("upper_arm", body["acromionradialelength"]),
        "forearm": body["forearmcenterofgriplength"] - rule.of("elbow_flesh", body["stature"]),
    }


def _leg(body: Dimensions, rule: Rules) -> Part:
    knee = body["kneeheightsitting"] - rule.of("knee_top", body["stature"])
    shank = rule.of("shank", knee - body["lateralmalleolusheight"])
    return {
        "thigh": body["buttockkneelength"] - rule.of("hip_and_kneecap", body["stature"]),
        "shank": shank,
        "ankle_height": knee - shank,
        "heel_to_ankle": rule.of("heel_to_ankle", body["footlength"]),
        "heel_to_ball": body["balloffootlength"],
        "foot_length": body["footlength"],
        "foot_breadth": body["footbreadthhorizontal"],
    }


def _flesh(body: Dimensions, rule: Rules, suit: float) -> Part:
    return {
        "knee_top": rule.of("knee_top", body["stature"]) + suit,
        "knee_front": rule.of("knee_front", body["stature"]) + suit,
        "thigh_radius": rule.of("thigh_radius", body["thighclearance"]) + suit,
        "shank_radius": rule.of("shank_radius", body["thighclearance"]) + suit,
        "hip_breadth": body["hipbreadthsitting"] + 2 * suit,
        "shoulder_breadth": body["bideltoidbreadth"] + 2 * suit,
    }


def _shoe(body: Dimensions, rule: Rules, driver: Driver) -> Part:
    shoe = driver.shoe
    length = body["footlength"] + rule.plain("shoe_allowance")
    width = body["footbreadthhorizontal"] + rule.plain("shoe_width_allowance")
    outside = length if shoe.length is None else np.array([shoe.length])
    return {
        "sole_ball": np.array([shoe.sole_ball]),
        "sole_heel": np.array([shoe.sole_heel]),
        "shoe_length": outside,
        "shoe_width": width if shoe.width is None else np.array([shoe.width]),
        "shoe_heel_margin": rule.plain("shoe_heel_share") * np.maximum(outside - body["footlength"], 0.0),
    }


def _worn(body: Dimensions, rule: Rules, driver: Driver) -> Part:
    kit, helmet = driver.kit, driver.helmet
    flesh = rule.of("trapezius", body["cervicaleheight"] - body["acromialheight"])
    joint = rule.of("shoulder_below_acromion", body["acromionradialelength"])
    spacing = rule.of("strap_half_spacing", body["biacromialbreadth"])
    yoke = rule.plain("strap_half_spacing_restraint")
    return {
        "helmet_height": np.array([helmet.height]),
        "helmet_length": np.array([helmet.length]),
        "helmet_width": np.array([helmet.width]),
        "helmet_above_vertex": rule.plain("helmet_above_vertex"),
        "strap_above_shoulder": joint + flesh + kit.suit + kit.restraint,
        "strap_half_spacing": np.minimum(spacing, yoke) if kit.restraint > 0 else spacing,
    }


def links_of(dimensions: Dimensions, driver: Driver, errors: Dimensions | None = None) -> Links:
    """Links of bodies given by their outside dimensions.

    Args:
        dimensions: survey dimension -> (n,), mm and kg, as `estimate.means` and `estimate.sample` give them.
        driver: whose sex chooses the constants, and whose shoe, helmet and kit are worn.
        errors: constant's id -> (n,), as `relations.relation_errors` draws them; none takes them as given.
    """
    rule = rules(driver.sex, errors)
    parts = (
        {"stature": dimensions["stature"], "mass": dimensions["weightkg"]}
        | _pelvis(dimensions, rule)
        | _trunk(dimensions, rule)
        | _arm(dimensions, rule)
        | _leg(dimensions, rule)
        | _flesh(dimensions, rule, driver.kit.suit)
        | _shoe(dimensions, rule, driver)
        | _worn(dimensions, rule, driver)
    )
    return Links(**_frozen(parts, np.shape(dimensions["stature"])))


def links_for(driver: Driver) -> Links:
    """One driver's links, n = 1, from the expected value of every dimension."""
    return links_of(estimate(driver).means(), driver)


def _frozen(parts: Part, shape: tuple[int, ...]) -> Part:
    """Every part filled to the case axis and set read-only."""
    return {name: np.broadcast_to(np.asarray(value, dtype=float), shape) for name, value in parts.items()}


def eye_from_cervicale(recline: Deg) -> tuple[Mm, Mm]:
    """The eye ahead of and above the cervicale (C7) in the car's frame, the head held level.

    Args:    recline: (n,), hip to cervicale from the vertical, positive leaning rearward.
    Returns: forward (n,), positive toward the nose; up (n,).
             The published rows span 5 to 40 deg; beyond, the last slope goes on.
    Source:  `data/links.toml`, head_carriage.
    """
    known, forward, up = head_carriage()
    return _along(recline, known, forward), _along(recline, known, up)


def _along(at: Floats, known: Floats, values: Floats) -> Floats:
    """Linear between the rows, and with the first or last row's slope beyond them."""
    row = np.clip(np.searchsorted(known, at) - 1, 0, len(known) - 2)
    slope = (values[row + 1] - values[row]) / (known[row + 1] - known[row])
    return values[row] + slope * (at - known[row])
