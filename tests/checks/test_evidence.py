"""Where a figure is shown: what is read off its points with a ruler is the figure, for every sample car and driver.

The rules below read a value off the points as one would off the drawing, without the formulas that measured it.
"""

from dataclasses import replace
from functools import cache
from itertools import product

import numpy as np
import pytest
import shapely

from fitcalc.checks.catalogue import figures_of
from fitcalc.checks.shoe_sweep import half_width_turned
from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.setup import PedalRework, Setup
from tests.checks.cockpits import seated

NEAR = 1e-6
"""mm and deg; values and points come by different arithmetic."""
FIST = ELBOW = 45.0
COLUMN = 13.0
"""Design inferences of the program, as docs/figures.md gives them."""
REWORKS = {
    "as found": Setup(),
    "reworked": Setup(
        seat_travel=12.0,
        seat_raise=8.0,
        recline=2.0,
        box_travel=15.0,
        shoulder_anchor_raise=10.0,
        brake=PedalRework(stand_off=15.0),
        clutch=PedalRework(longer_arm=15.0),
    ),
}


def number(value):
    return float(np.ravel(value)[0])


def length(a, b):
    return np.linalg.norm(b - a)


def side_view(a, b):
    return np.hypot(b[0] - a[0], b[2] - a[2])


def corner(a, b, c):
    """The angle at b."""
    first, second = a - b, c - b
    return np.degrees(np.arctan2(np.linalg.norm(np.cross(first, second)), first @ second))


def drop(a, b):
    return np.degrees(np.arctan2(a[2] - b[2], b[0] - a[0]))


def lean(a, b):
    return np.degrees(np.arctan2(b[0] - a[0], b[2] - a[2]))


def under(top, front, rear):
    """How far a point lies below a line in side view."""
    along = (rear - front) / side_view(front, rear)
    away = top - front
    return along[2] * away[0] - along[0] * away[2]


def to_strap(place, start, end):
    """Side-view gap to a straight run of webbing."""
    return shapely.LineString([start[[0, 2]], end[[0, 2]]]).distance(shapely.Point(place[0], place[2]))


def surface(point, line, solid):
    """Gap from a point to a floor or roof by shapely, negative inside it."""
    gap = shapely.LineString(line).distance(shapely.Point(point[0], point[2]))
    inside = line[0][0] <= point[0] <= line[-1][0]
    behind = solid * (point[2] - np.interp(point[0], *np.transpose(line))) > 0
    return -gap if inside and behind else gap


def wall(x, widths):
    return np.interp(x, *np.transpose(widths))


def pad_of(case, id):
    return case.car.fitted_pedals()[id.split(".")[1]]


def link(case, name):
    return number(getattr(case.links, name))


def rim_gap(case, place):
    """Gap from a place to the middle of the rim, seen as its distances along the wheel's axis and from it."""
    wheel, tilt = case.car.steering_wheel, np.radians(case.car.steering_wheel.tilt)
    axis = np.array([np.cos(tilt), 0.0, np.sin(tilt)])
    off = place - [wheel.centre.x, wheel.centre.y, wheel.centre.z] - case.setup.wheel_spacer * axis
    along = off @ axis
    return np.hypot(
        along, np.linalg.norm(off - along * axis) - (wheel.rim_diameter - wheel.rim_thickness) / 2
    )


def to_column(case, place):
    wheel, tilt = case.car.steering_wheel, np.radians(case.car.steering_wheel.tilt)
    foot = np.array([wheel.column_foot.x, 0.0, wheel.column_foot.z])
    top = np.array([wheel.centre.x, wheel.centre.y, wheel.centre.z])
    top = top + case.setup.wheel_spacer * np.array([np.cos(tilt), 0.0, np.sin(tilt)])
    part = np.clip((place - foot) @ (top - foot) / ((top - foot) @ (top - foot)), 0.0, 1.0)
    return length(foot + part * (top - foot), place)


def to_front_hoop(case, place):
    """From a knee to the tube's wall; the tube runs across the car, its top where the hoop's is."""
    hoops = case.car.hoops
    return (
        np.hypot(place[0] - hoops.front_top.x, place[2] - hoops.front_top.z + hoops.tube / 2) - hoops.tube / 2
    )


def to_thing(case, id, shoe, thing):
    """Gap of a shoe to an obstacle drawn out across the car: what is read in side view, and what is beside it."""
    *_, name = id.split(".")
    obstacle = next(
        each for each in case.car.footwell.obstacles if each.name.replace(" ", "_").lower() == name
    )
    half = number(half_width_turned(case.links, np.array([5.0])))
    beside = max(obstacle.y_low - shoe[1] - half, shoe[1] - half - obstacle.y_high)
    gap = side_view(shoe, thing)
    return np.hypot(gap, beside) if beside > 0 else gap


def arm(case):
    return link(case, "upper_arm") + link(case, "forearm")


def pad_widths(case, id):
    return sum(case.car.fitted_pedals()[name].pad_width for name in id.split(".")[1].split("_"))


def slot_of(case, id):
    name = id.split(".")[1]
    return next(slot for slot in case.car.seat.slots if slot.strap == name)


def end_gap(case, id, middle, at):
    """The slot is cut level in back and cushion; one in the side is cut square to its strap, which shows no way to read."""
    name = id.split(".")[1]
    if name.startswith("lap"):
        return None
    width = case.car.harness.shoulder_width if name.startswith("shoulder") else case.car.harness.lap_width
    return (slot_of(case, id).length - width) / 2 - abs(at[1] - middle[1])


def offset(case, id, middle, at):
    """Along the piece of the shell that the strap crosses, positive up the back and toward the cushion's rear."""
    if id.startswith("harness.lap"):
        return None
    line = shapely.LineString(case.shell[0][:, [0, 2]])
    piece = np.searchsorted(
        [line.project(shapely.Point(each)) for each in line.coords], line.project(shapely.Point(at[0], at[2]))
    )
    start, end = case.shell[0][piece - 1], case.shell[0][piece]
    return (at - middle) @ (end - start) / length(start, end)


def chest(case, id, rim):
    """To the line hip to shoulder in side view, less the deeper of chest and belly ahead of it."""
    trunk = case.sitting.trunk
    axis = shapely.LineString([trunk.hip[0, [0, 2]], trunk.shoulder[0, [0, 2]]])
    front = max(link(case, "chest_depth"), link(case, "abdomen_depth")) - link(case, "hip_ahead_of_back")
    return axis.distance(shapely.Point(rim[0], rim[2])) - front - case.car.steering_wheel.rim_thickness / 2


def wheel_line(case, id, top, front, rear):
    """From the middle of the rim's round section at its upper end, which its highest point stands straight above."""
    half = case.car.steering_wheel.rim_thickness / 2
    return under(top - [0.0, 0.0, half], front, rear) - half


def toe_line(case, id, knee, ankle, toe):
    heel = case.sitting.pedals[id.split(".")[2]].rest.foot.heel[0]
    return corner(knee, ankle, ankle + toe - heel)


def upper_arm(case, id, shoulder, elbow, grip):
    trunk = case.sitting.trunk
    return corner(shoulder + trunk.hip[0] - trunk.shoulder[0], shoulder, elbow)


def heel_lift(case, id, heel, pad):
    return max(0.0, side_view(heel, pad) - link(case, "heel_to_ball") - link(case, "shoe_heel_margin"))


def pad_height(case, id, heel, pad):
    return heel[2] - np.interp(heel[0], *np.transpose(case.car.footwell.floor))


RULES = {
    "posture.recline": lambda case, id, hip, shoulder: lean(hip, shoulder),
    "posture.elbow": lambda case, id, *joints: corner(*joints),
    "posture.knee_released": lambda case, id, *joints: corner(*joints),
    "posture.knee_pressed": lambda case, id, *joints: corner(*joints),
    "posture.hip": lambda case, id, shoulder, hip, knee: corner(
        np.array([shoulder[0], hip[1], shoulder[2]]), hip, knee
    ),
    "posture.ankle": toe_line,
    "posture.shoulder": upper_arm,
    "posture.heel_lift": heel_lift,
    "posture.leg_reach": lambda case, id, hip, ankle: (
        link(case, "thigh") + link(case, "shank") - length(hip, ankle)
    ),
    "head.hoop_line": lambda case, id, *points: under(*points),
    "head.brace_line": lambda case, id, *points: under(*points),
    "head.lowered_line": lambda case, id, *points: under(*points),
    "head.main_top": lambda case, id, top, main: main[2] - top[2],
    "head.main_hoop_fore_aft": lambda case, id, back, main: main[0] - case.car.hoops.tube / 2 - back[0],
    "head.restraint_gap": lambda case, id, back, pad: pad[0] - back[0],
    "head.collar_room": lambda case, id, back, pad: pad[0] - back[0] - case.driver.kit.collar,
    "head.restraint_edge": lambda case, id, at: min(
        at[2] - case.car.head_restraint.z_low,
        case.car.head_restraint.z_high - at[2],
        case.car.head_restraint.width / 2,
    ),
    "harness.points": lambda case, id, *anchors: len({tuple(each) for each in anchors}),
    "harness.shoulder.side_angle": lambda case, id, a, b: drop(a, b),
    "harness.shoulder.rim_angle": lambda case, id, a, b: drop(a, b),
    "harness.shoulder.plan_angle": lambda case, id, a, b: np.degrees(
        np.arctan2(np.sign(a[1]) * (a[1] - b[1]), b[0] - a[0])
    ),
    "harness.shoulder.behind_seat": lambda case, id, rim, first: first[0] - rim[0],
    "harness.shoulder.sensitivity": lambda case, id, a, b: (
        np.degrees(np.cos(np.radians(drop(a, b)))) / side_view(a, b)
    ),
    "harness.shoulder.spine_load": lambda case, id, a, b: (
        1000 * np.sin(np.radians(drop(a, b) - number(case.sitting.trunk.recline)))
    ),
    "harness.shoulder.spacing": lambda case, id, left, right: right[1] - left[1],
    "harness.shoulder.inner_gap": lambda case, id, left, right: (
        right[1] - left[1] - case.car.harness.shoulder_width
    ),
    "harness.shoulder.width": lambda case, id, left, right: length(left, right),
    "harness.shoulder.width_restraint": lambda case, id, left, right: length(left, right),
    "harness.lap.side_angle": lambda case, id, a, b: drop(a, b),
    "harness.lap.junction": lambda case, id, junction, strap: junction[0] - strap[0],
    "harness.lap.width": lambda case, id, left, right: length(left, right),
    "harness.crotch.side_angle": lambda case, id, start, anchor: lean(
        start, [anchor[0], 0.0, 2 * start[2] - anchor[2]]
    ),
    "harness.crotch.chest_line_angle": lambda case, id, start, anchor: (
        np.degrees(np.arctan2(start[0] - anchor[0], start[2] - anchor[2]))
        - number(case.sitting.trunk.recline)
    ),
    "harness.crotch.spacing": lambda case, id, left, right: right[1] - left[1],
    "harness.slot.turn": lambda case, id, *points: 180.0 - corner(*points),
    "harness.slot.offset": offset,
    "harness.slot.end_gap": end_gap,
    "harness.shoulder.shell_clearance": lambda case, id, *points: np.copysign(
        to_strap(*points), under(*points)
    ),
    "wheel.dash": lambda case, id, fist: surface(fist, case.car.footwell.roof, 1.0) - FIST,
    "wheel.side": lambda case, id, fist: case.car.cockpit.side_half_width - abs(fist[1]) - FIST,
    "wheel.chest": chest,
    "wheel.line": wheel_line,
    "wheel.behind_opening": lambda case, id, at: at[0] - case.car.cockpit.opening_front,
    "wheel.top_below_hoop": lambda case, id, top, hoop: hoop[2] - top[2],
    "wheel.hoop_distance": lambda case, id, hoop, at: at[0] - hoop[0] - case.car.hoops.tube / 2,
    "knee.roof": lambda case, id, knee: surface(knee, case.car.footwell.roof, 1.0) - link(case, "knee_top"),
    "knee.column": lambda case, id, knee: to_column(case, knee) - COLUMN - link(case, "knee_top"),
    "knee.wheel": lambda case, id, knee: (
        rim_gap(case, knee) - case.car.steering_wheel.rim_thickness / 2 - link(case, "knee_top")
    ),
    "knee.hoop": lambda case, id, knee: to_front_hoop(case, knee) - link(case, "knee_top"),
    "feet.axle_line": lambda case, id, foremost: foremost[0],
    "feet.bulkhead": lambda case, id, shoe: shoe[0] - case.car.footwell.bulkhead,
    "pedal.bulkhead": lambda case, id, edge: edge[0] - case.car.footwell.bulkhead,
    "pedal.rest_room": lambda case, id, pad: (
        wall(pad[0], case.car.footwell.half_widths)
        + pad[1]
        - pad_of(case, f"pedal.{next(iter(case.sitting.pedals))}").pad_width / 2
        - link(case, "shoe_width")
    ),
    "cleat.pads": lambda case, id, left, right: right[1] - left[1] - pad_widths(case, id) / 2,
    "cleat.roof": lambda case, id, shoe, roof: side_view(shoe, roof),
    "cleat.floor": lambda case, id, shoe, floor: side_view(shoe, floor),
    "cleat.bulkhead": lambda case, id, shoe, face: shoe[0] - face[0],
    "cleat.wall": lambda case, id, edge: wall(edge[0], case.car.footwell.half_widths) - abs(edge[1]),
    "cleat.obstacle": to_thing,
    "height.pad": pad_height,
    "height.heel_toe_height": lambda case, id, throttle, brake: brake[2] - throttle[2],
    "pedal.travel": lambda case, id, rest, full: length(rest, full),
    "reach.gear": lambda case, id, knob: max(
        arm(case) - length(shoulder[0], knob)
        for shoulder in (case.sitting.trunk.shoulder_left, case.sitting.trunk.shoulder_right)
    ),
    "reach.control": lambda case, id, shoulder, at: arm(case) - length(shoulder, at),
    "reach.elbow_room": lambda case, id, elbow: case.car.cockpit.side_half_width - abs(elbow[1]) - ELBOW,
    "sight.ground": lambda case, id, eye, edge, ground: eye[0] - ground[0],
    "sight.ground_over_wheel": lambda case, id, eye, edge, ground: eye[0] - ground[0],
    "seat.behind": lambda case, id, seat, thing: length(seat, thing) - case.car.seat.shell_thickness,
    "seat.side_depth": lambda case, id, cushion: case.car.cockpit.side_top - cushion[2],
    "seat.mount_count": lambda case, id, *mounts: len({tuple(each) for each in mounts}),
    "seat.bracket_reach": lambda case, id, hole, after: length(hole, after),
    "cockpit.opening_length": lambda case, id, front, rear: length(front, rear),
    "cockpit.opening_width": lambda case, id, left, right: length(left, right),
    "cockpit.section_width": lambda case, id, left, right: length(left, right),
    "cockpit.section_height": lambda case, id, low, high: length(low, high),
    "template.torso_angle": lambda case, id, hip, shoulder: lean(hip, shoulder),
    "template.helmet_line": lambda case, id, *points: under(*points),
    "template.brace_line": lambda case, id, *points: under(*points),
    "template.pedal_distance": lambda case, id, hip, pad: side_view(hip, pad),
    "mirror.turn": lambda case, id, eye, at: corner(eye - [1.0, 0.0, 0.0], eye, at),
    "mirror.glass": lambda case, id, at, eye: (
        np.degrees(np.arctan2(np.sign(at[1]) * (at[1] - eye[1]), eye[0] - at[0])) / 2
    ),
}


PLACES = {
    "balance.front_share": "centre of mass",
    "balance.front_shift": "centre of mass before and after",
    "balance.mass_shift": "where the thing is and where it goes",
    "cleat.shoes": "the pads whose shoes they are",
    "harness.lap.length": "the strap also lies round the pelvis",
    "harness.shoulder.length": "the strap also lies round the shoulder",
    "harness.slot.edge_force": "the slot",
    "harness.slot.edge_radius": "the slot",
    "harness.slot.height": "the slot",
    "harness.slot.length": "the slot",
    "harness.slot.x": "the slot",
    "harness.slot.y": "the slot",
    "harness.slot.z": "the slot",
    "height.heel_toe_step": "square to the throttle's face, whose lean is not shown",
    "leg.obstacle": "where to look: the leg's axis by the thing",
    "leg.roof": "where to look: the knee",
    "pedal.bar_deflection": "the bar",
    "pedal.bar_safety": "the bar",
    "pedal.brake_bar_safety": "the bar",
    "pedal.brake_ratio": "the pad's way",
    "pedal.front_pressure": "the pad's way",
    "pedal.line_pressure": "the pad's way",
    "pedal.pull_left": "the pad's way",
    "pedal.ratio": "the pad's way",
    "pedal.ratio_change": "the pad's way",
    "pedal.rear_pressure": "the pad's way",
    "pedal.release_left": "the pad's way",
    "pedal.rod_angle": "the pad's way",
    "pedal.slide": "the pad's way",
    "pedal.stop_error": "the pad's way",
    "pedal.stroke_left": "the pad's way",
    "seat.bracket_thickness": "the first bracket",
    "seat.hip_room": "the hip joints",
    "seat.mount_safety": "the mounts",
    "seat.mount_safety_driver": "the mounts",
    "wheel.knuckles_thigh": "the lower fist",
    "wheel.thigh": "the rim's lowest point",
}
"""Quantities whose points show where, not how much."""
STRAPS = ("harness.lap.length", "harness.shoulder.length")
COARSE = {"cleat.obstacle": 1.0}
"""mm. The points are of a station of the travel; 23 mm on, half way to the next, a shoe 100 mm off is 0.7 mm nearer."""
FURNISHED = {
    "footwell.floor": ((-500.0, -30.0), (400.0, 0.0), (1500.0, 60.0)),
    "footwell.heel_rest": None,
    "head_restraint.z_low": 690.0,
    "head_restraint.width": 400.0,
    "mirrors": (
        {"name": "left", "at": {"x": 700.0, "y": -350.0, "z": 620.0}},
        {"name": "right", "at": {"x": 720.0, "y": 360.0, "z": 640.0}},
    ),
    "harness.points": 5,
    "harness.crotch": ({"x": 1060.0, "y": 0.0, "z": 20.0},),
    "seat.slots": (),
    "masses": (
        {
            "name": "battery",
            "mass": 12.0,
            "at": {"x": 1500.0, "y": 0.0, "z": 100.0},
            "to": {"x": 300.0, "y": 0.0, "z": 100.0},
        },
    ),
}


def with_collar(case):
    kit = case.driver.kit.model_copy(update={"collar": 30.0})
    return replace(case, driver=case.driver.model_copy(update={"kit": kit}))


@cache
def measured():
    """Every case and figure that has a value and points."""
    cases = [
        seated(name=car, driver=driver, setup=setup)
        for car, driver, setup in product(sample_cars(), sample_drivers(), REWORKS.values())
    ]
    cases += [with_collar(seated(FURNISHED, driver=driver)) for driver in sample_drivers()]
    return [
        (case, figure, [place[0] for place in figure.evidence])
        for case in cases
        for figure in figures_of(case)
        if figure.value is not None and figure.evidence and not figure.is_absent
    ]


@pytest.mark.parametrize("quantity", RULES)
def test_value_is_what_its_points_show(quantity):
    rows = [
        (figure.value[0], RULES[quantity](case, figure.id, *points))
        for case, figure, points in measured()
        if figure.quantity == quantity
    ]
    values, read = zip(*(row for row in rows if row[1] is not None), strict=True)
    assert values == pytest.approx(read, rel=0, abs=COARSE.get(quantity, NEAR))


def test_every_quantity_with_points_has_a_rule_or_only_a_place():
    assert {figure.quantity for _, figure, _ in measured()} == RULES.keys() | PLACES.keys()


@pytest.mark.parametrize(
    ("quantity", "outside"),
    [
        ("wheel.knuckles_thigh", False),
        ("wheel.dash", False),
        ("wheel.side", False),
        ("wheel.chest", False),
        ("wheel.thigh", True),
        ("wheel.line", True),
        ("wheel.top_below_hoop", True),
    ],
)
def test_what_is_shown_on_the_rim_lies_on_it(quantity, outside):
    """In its middle, or half its thickness out; all of the rim leans with the wheel."""
    rows = [(case, points[0]) for case, figure, points in measured() if figure.quantity == quantity]
    off = [rim_gap(case, place) for case, place in rows]
    thick = [case.car.steering_wheel.rim_thickness / 2 if outside else 0.0 for case, _ in rows]
    assert rows
    assert off == pytest.approx(thick, rel=0, abs=NEAR)


def test_pads_beside_each_other_are_shown_by_their_middles_at_rest():
    for case, figure, points in measured():
        if figure.quantity in ("cleat.pads", "cleat.shoes"):
            names = figure.id.split(".")[1].split("_")
            middles = [case.sitting.pedals[name].rest_pad.centre[0] for name in names]
            assert np.ravel(points) == pytest.approx(np.ravel(middles), rel=0, abs=NEAR), figure.id


def test_tight_straps_are_shown_from_where_they_leave_the_body():
    """No strap is shorter than its straight way from there."""
    rows = [
        (figure.value[0], length(*points)) for _, figure, points in measured() if figure.quantity in STRAPS
    ]
    assert rows
    assert all(whole >= straight for whole, straight in rows)


def test_side_view_angles_are_shown_in_one_plane():
    for _, figure, points in measured():
        if figure.quantity in ("harness.lap.side_angle", "harness.shoulder.rim_angle"):
            assert points[0][1] == points[1][1], figure.id


def legs_of(case, side):
    fitted = case.car.fitted_pedals()
    return [
        leg
        for name, worked in case.sitting.pedals.items()
        if fitted[name].foot == side
        for leg in (worked.rest, worked.full)
    ]


def test_knee_room_is_the_least_of_every_pedal_released_and_pressed():
    """The rules read off each knee as it stands, not the one that is shown."""
    for case, figure, _ in measured():
        if figure.quantity in ("knee.roof", "knee.column", "knee.wheel", "knee.hoop"):
            knees = [leg.knee[0] for leg in legs_of(case, figure.id.split(".")[1])]
            rooms = [RULES[figure.quantity](case, figure.id, knee) for knee in knees]
            assert figure.value[0] == pytest.approx(min(rooms), rel=0, abs=NEAR), figure.id


def test_a_thing_beside_a_leg_is_shown_with_the_nearest_point_of_the_legs_middle_line():
    """Hip, and the middles of the places of knee and ankle; probed every millimetre or less, which errs by 0.01 mm."""
    share = np.linspace(0.0, 1.0, 801)[:, None]
    for case, figure, (on_leg, thing) in (
        (c, f, p) for c, f, p in measured() if f.quantity == "leg.obstacle"
    ):
        legs = legs_of(case, figure.id.split(".")[1])
        hip, knee, ankle = (
            np.mean([getattr(leg, joint)[0] for leg in legs], axis=0) for joint in ("hip", "knee", "ankle")
        )
        line = np.concatenate([hip + share * (knee - hip), knee + share * (ankle - knee)])
        assert length(on_leg, thing) == pytest.approx(
            np.min(np.linalg.norm(line - thing, axis=1)), rel=0, abs=0.01
        )
