"""Cars that are odd to the edge of sense, by what is changed in a sample: path and value; None takes a field out."""

import copy
import tomllib

from fitcalc.documents.samples import sample_path

CORNER = [800.0, 10.0]
BROAD = {"y_low": -100.0, "y_high": 100.0}
LINE_OF_SEAT = [[-400.0, 0.0], [0.0, 0.0], [1.0, 524.0]]


def outline(*corners):
    """One obstacle of an outline."""
    return {
        "footwell.obstacles": [
            {"name": "odd", "outline": [list(map(float, each)) for each in corners], **BROAD}
        ]
    }


def round_thing(x, z, radius):
    """One round obstacle."""
    return {"footwell.obstacles": [{"name": "odd", "centre": {"x": x, "z": z}, "radius": radius, **BROAD}]}


def both(part, x, y, z):
    """A pair of anchors, left and right."""
    sides = (("left", -y), ("right", y))
    return {f"harness.{part}_{side}": {"x": x, "y": across, "z": z} for side, across in sides}


def mounts(*points):
    return {"seat.mounts": [dict(zip("xyz", map(float, each), strict=True)) for each in points]}


def slot(**given):
    return {"seat.slots": [{"strap": "lap_left", "x": -19.0, "y": -205.0, "z": 91.0, "length": 75.0} | given]}


def every_tolerance(value):
    points = (
        "pedals.brake.pivot",
        "pedals.throttle.pivot",
        "seat.junction",
        "steering_wheel.centre",
        "hoops.main_top",
    )
    return {f"{each}.tolerance": value for each in points}


ODD = {
    "the sample itself": {},
    "lap straps of no length": both("lap", 1190.0, 160.0, 120.0),
    "lap anchors in the hips": both("lap", 1178.0, 85.0, 118.0),
    "lap anchors on one spot": both("lap", 1225.0, 1e-9, 25.0),
    "lap anchors over the knees": both("lap", 700.0, 200.0, 500.0),
    "shoulder straps of no length": both("shoulder", 1480.0, 75.0, 560.0),
    "shoulder anchors in front of the chest": both("shoulder", 900.0, 75.0, 500.0),
    "shoulder anchors on one spot": both("shoulder", 1735.0, 1e-9, 535.0),
    "shoulder anchors at the slots": both("shoulder", 1694.0, 75.0, 550.0),
    "a guide at the anchors": {"harness.guide": {"x": 1735.0, "z": 535.0, "diameter": 30.0}},
    "a guide in the shoulder": {"harness.guide": {"x": 1480.0, "z": 560.0, "diameter": 80.0}},
    "a guide ahead of the driver": {"harness.guide": {"x": 300.0, "z": 560.0, "diameter": 10.0}},
    "crotch anchors in the hips": {"harness.crotch": [{"x": 1178.0, "y": y, "z": 118.0} for y in (-50.0, 50.0)]},
    "crotch anchors on one spot": {"harness.crotch": [{"x": 1090.0, "y": 0.0, "z": 5.0}] * 2},
    "slots on one spot": {"seat.slots": [{"strap": s, "x": 0.0, "y": 0.0, "z": 0.0, "length": 30.0} for s in ("lap_left", "lap_right")]},
    "a slot at its anchor": slot(x=-32.0, y=-225.0, z=-5.0),
    "a slot of the wrong side": slot(y=205.0),
    "a slot in the hip": slot(x=-79.0, y=-85.0, z=88.0, edge_radius=30.0),
    "two slots of one strap": {"seat.slots": [{"strap": "lap_left", "x": x, "y": -205.0, "z": 91.0, "length": 75.0} for x in (-19.0, -18.0)]},
    "no slots, controls, mirrors, masses, obstacles": {
        "seat.slots": [], "controls": [], "mirrors": [], "masses": [], "footwell.obstacles": [],
    },
    "an outline of three points in line": outline((800, 10), (850, 35), (900, 60)),
    "an outline of one point": outline(CORNER, CORNER, CORNER),
    "an outline of two points": outline(CORNER, (900, 10), CORNER, (900, 10)),
    "an outline that crosses itself": outline((800, 0), (900, 80), (900, 0), (800, 80)),
    "a star that crosses itself": outline((800, 0), (850, 200), (900, 0), (780, 130), (920, 130)),
    "an outline with a spike": outline((800, 0), (900, 0), (900, 80), (900, 300), (900, 80), (800, 80)),
    "an outline with points twice": outline((800, 0), (800, 0), (900, 0), (900, 0), (900, 80), (800, 80), (800, 80)),
    "an outline that is closed": outline((800, 0), (900, 0), (900, 80), (800, 80), (800, 0)),
    "an outline the other way round": outline((800, 80), (900, 80), (900, 0), (800, 0)),
    "an outline of hairs": outline((800, 0), (800 + 1e-9, 1e-9), (800, 1e-9)),
    "an outline of touching loops": outline((800, 0), (850, 40), (800, 80), (900, 80), (850, 40), (900, 0)),
    "an outline round everything": outline((-1500, -500), (4500, -500), (4500, 1800), (-1500, 1800)),
    "a round thing at a pad": round_thing(133.0, 170.0, 2.0),
    "a round thing round the feet": round_thing(133.0, 170.0, 300.0),
    "a round thing in the hips": round_thing(1178.0, 118.0, 50.0),
    "a thing as wide as a hair": {"footwell.obstacles": [{"name": "hair", "centre": {"x": 500.0, "z": 100.0}, "radius": 2.0, "y_low": 0.0, "y_high": 1e-9}]},
    "a floor with a wall": {"footwell.floor": [[-150.0, 0.0], [600.0, 0.0], [600.0 + 1e-9, 100.0], [1450.0, 100.0]]},
    "a floor with a pit": {"footwell.floor": [[-150.0, 0.0], [200.0, 0.0], [201.0, -400.0], [301.0, -400.0], [302.0, 0.0], [1450.0, 0.0]]},
    "a floor with one x twice": {"footwell.floor": [[-150.0, 0.0], [600.0, 0.0], [600.0, 50.0], [1450.0, 50.0]]},
    "a floor that ends ahead of the heels": {"footwell.floor": [[-1500.0, 0.0], [-1000.0, 0.0]]},
    "a roof below the floor": {"footwell.roof": [[-120.0, -300.0], [860.0, -300.0]]},
    "a roof that crosses the floor": {"footwell.roof": [[-120.0, 395.0], [860.0, -300.0]]},
    "a roof as a wall": {"footwell.roof": [[300.0, -500.0], [300.0 + 1e-9, 1800.0]]},
    "one half width": {"footwell.half_widths": [[300.0, 240.0]]},
    "a footwell narrower than a shoe": {"footwell.half_widths": [[-120.0, 80.0], [900.0, 80.0]]},
    "a bulkhead behind the pedals": {"footwell.bulkhead": 600.0},
    "a bulkhead behind the driver": {"footwell.bulkhead": 4000.0},
    "a heel rest at the pivot": {"footwell.heel_rest": {"x": 190.0, "z": 430.0}},
    "a heel rest under the seat": {"footwell.heel_rest": {"x": 1257.0, "z": 30.0}},
    "a seat of two straight lines": {"seat.profile": LINE_OF_SEAT},
    "a seat in one line": {"seat.profile": [[-400.0, -400.0], [-150.0, -150.0], [0.0, 0.0], [250.0, 250.0], [524.0, 524.0]]},
    "a seat with points twice": {"seat.profile": [[-400.0, 112.0], [-400.0, 112.0], [0.0, 0.0], [0.0, 0.0], [440.0, 524.0], [440.0, 524.0]]},
    "a seat that crosses itself": {"seat.profile": [[-400.0, 0.0], [100.0, 200.0], [-100.0, 200.0], [0.0, 0.0], [440.0, 524.0]]},
    "a seat that folds back on itself": {"seat.profile": [[-400.0, 0.0], [0.0, 0.0], [-400.0, 0.0], [-400.0, 524.0]]},
    "a seat with an overhang": {"seat.profile": [[-400.0, 112.0], [0.0, 0.0], [-300.0, 524.0]]},
    "mounts on one spot": mounts((930, 0, 5), (930, 0, 5)),
    "mounts in one line": mounts((930, 0, 5), (1100, 0, 5), (1280, 0, 5)),
    "mounts on one another": mounts((930, -170, 5), (930, 170, 5), (930, -170, 305), (930, 170, 305)),
    "mounts in the driver": mounts((1178, 0, 118), (1178, 1e-9, 118)),
    "what is behind the seat is one spot": {"behind_seat": [[1790.0, 620.0], [1790.0, 620.0]]},
    "what is behind the seat is ahead of it": {"behind_seat": [[600.0, 620.0], [600.0, 0.0]]},
    "what is behind the seat is level": {"behind_seat": [[1400.0, 300.0], [1800.0, 300.0]]},
    "sight edges on one spot": {"sight_edges": [[620.0, 640.0], [620.0, 640.0]]},
    "sight edges at the eye": {"sight_edges": [[1380.0, 790.0], [1381.0, 791.0]]},
    "sight edges behind the eye": {"sight_edges": [[2000.0, 790.0], [2500.0, 791.0]]},
    "a wheel in the chest": {"steering_wheel.centre": {"x": 1380.0, "y": 0.0, "z": 450.0}},
    "a wheel in the shoulders": {"steering_wheel.centre": {"x": 1480.0, "y": 0.0, "z": 560.0}},
    "a wheel under the floor": {"steering_wheel.centre": {"x": 985.0, "y": 0.0, "z": -500.0}},
    "a wheel at its column's foot": {"steering_wheel.column_foot": {"x": 985.0, "z": 552.0}},
    "a wheel out of reach": {"steering_wheel.centre": {"x": -1500.0, "y": 900.0, "z": 1800.0}},
    "hoops on one spot": {"hoops.main_top": {"x": 860.0, "z": 765.0}},
    "hoops the wrong way round": {"hoops.main_top": {"x": 860.0, "z": 1060.0}, "hoops.front_top": {"x": 1650.0, "z": 765.0}},
    "hoops over one another": {"hoops.main_top": {"x": 860.0, "z": 1060.0}},
    "a brace of no length": {"hoops.brace_foot": {"x": 1650.0, "z": 1060.0}},
    "hoops under the floor": {"hoops.main_top": {"x": 1650.0, "z": -500.0}, "hoops.front_top": {"x": 860.0, "z": -500.0}},
    "a head restraint of no height": {"head_restraint": {"x": 1600.0, "z_low": 700.0, "z_high": 700.0, "width": 200.0}},
    "a head restraint upside down": {"head_restraint": {"x": 1600.0, "z_low": 900.0, "z_high": 600.0, "width": 200.0}},
    "a head restraint in the head": {"head_restraint": {"x": 1380.0, "z_low": 600.0, "z_high": 900.0, "width": 600.0}},
    "an opening upside down": {"cockpit": {"opening_front": 1600.0, "opening_rear": 800.0, "opening_width": 300.0, "side_top": 400.0, "side_half_width": 200.0}},
    "an opening of no length": {"cockpit": {"opening_front": 900.0, "opening_rear": 900.0, "opening_width": 250.0, "side_top": 0.0, "side_half_width": 150.0}},
    "a control in the shoulder": {"controls": [{"name": "odd", "hand": "left", "at": {"x": 1480.0, "y": -180.0, "z": 560.0}}]},
    "a control at the corner of the world": {"controls": [{"name": "odd", "hand": "right", "at": {"x": 4500.0, "y": 900.0, "z": 1800.0}}]},
    "a mirror at the eye": {"mirrors": [{"name": "odd", "at": {"x": 1380.0, "y": 0.0, "z": 790.0}}]},
    "a mirror behind the head": {"mirrors": [{"name": "odd", "at": {"x": 2000.0, "y": 0.0, "z": 790.0}}]},
    "knobs on one spot": {"gear_lever.knobs": [{"x": 1010.0, "y": 225.0, "z": 395.0}] * 12},
    "a knob in the shoulder": {"gear_lever.knobs": [{"x": 1480.0, "y": 180.0, "z": 560.0}]},
    "a mass that moves nowhere": {"masses": [{"name": "odd", "mass": 0.1, "at": {"x": 0.0, "y": 0.0, "z": 0.0}, "to": {"x": 0.0, "y": 0.0, "z": 0.0}}]},
    "one axle load": {"reference.rear_axle_load": None},
    "pedals on one spot": {"pedals.throttle.pivot": {"x": 190.0, "y": 0.0, "z": 430.0}, "pedals.throttle.pad_y": 0.0},
    "pads that cross": {"pedals.throttle.pad_y": 40.0, "pedals.throttle.pivot.y": 40.0},
    "a rod of no length": {"pedals.brake.cylinder.rod_end": {"x": 179.6, "z": 478.9}},
    "a rod from the pivot": {"pedals.brake.cylinder.rod_end": {"x": 190.0, "z": 430.0}},
    "a rod in line with its lever": {"pedals.brake.cylinder.rod_end": {"x": 150.0, "z": 618.0}},
    "a pedal that hardly moves": {"pedals.brake.travel_angle": 2.0},
    "a pedal that turns over": {"pedals.brake.rest_angle": -60.0, "pedals.brake.travel_angle": 70.0},
    "a pad travel as long as the arm": {"pedals.throttle.arm": 149.0, "pedals.throttle.pad_travel": 149.0, "pedals.throttle.cable": None},
    "pads as tall as the arm": {"pedals.brake.pad_height": 239.0, "pedals.brake.pad_tilt": 45.0},
    "a bar as thick as it is deep": {"pedals.brake.bar": {"shape": "round tube", "depth": 8.0, "thickness": 30.0}},
    "a bolt wider than the bar": {"pedals.brake.bar": {"depth": 8.0, "bolt": "M12", "edge": 6.0, "bolt_pitch": 16.0}},
    "a clutch that moves nothing": {"pedals.clutch.cylinder.lost_travel": 9.0, "pedals.clutch.cylinder.stroke": 8.0},
    "rails that go nowhere": {"rails": {"kind": "drilled", "hole_pitch": 79.0, "forward_travel": 0.0, "rearward_travel": 0.0}},
    "rails that go everywhere": {"rails": {"kind": "continuous", "angle": 30.0, "forward_travel": 400.0, "rearward_travel": 400.0, "raise_travel": 200.0, "lower_travel": 200.0, "recline_travel": 40.0, "upright_travel": 40.0}},
    "rails steeper than the seat": {"rails.angle": -30.0},
    "no tolerance": every_tolerance(0.0),
    "every tolerance at its most": every_tolerance(100.0),
    "nothing that may be left out": dict.fromkeys(("behind_seat", "sight_edges", "steering_wheel", "gear_lever", "controls", "mirrors", "masses", "harness", "hoops", "head_restraint", "cockpit", "footwell.roof", "footwell.bulkhead", "footwell.half_widths", "footwell.obstacles", "pedals.clutch", "pedals.brake.cylinder", "pedals.throttle.cable", "seat.slots")),
    "a seat far behind the axle": {"seat.junction": {"x": 4000.0, "y": 0.0, "z": 30.0}},
    "a measured hip in the feet": {"seat.h_point": {"x": 300.0, "y": 0.0, "z": 100.0}},
    "a measured hip at the junction": {"seat.h_point": {"x": 1257.0, "y": 0.0, "z": 30.0}},
    "padding as thick as the body": {"seat.cushion_padding": 150.0, "seat.back_padding": 150.0},
}  # fmt: skip


def odd_cars():
    """Every odd car by name, as its file would say it."""
    text = sample_path("hillclimb").read_text(encoding="utf-8")
    return {name: _changed(tomllib.loads(text), changes) for name, changes in ODD.items()}


def _changed(car, changes):
    for path, value in copy.deepcopy(changes).items():
        *above, last = path.split(".")
        holder = car
        for step in above:
            holder = holder.setdefault(step, {})
        if value is None:
            holder.pop(last, None)
        else:
            holder[last] = value
    return car
