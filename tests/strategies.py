"""Hypothesis strategies: valid cars, drivers and setups of every shape that the files allow.

Positions are drawn around one seat, so that the parts of a car agree with each other.
"""

from math import radians, sin

from hypothesis import strategies as st

from fitcalc.documents import car, car_cockpit, car_pedals, car_seat, driver, setup
from fitcalc.documents.fields import Point, SideMark

notes = st.text(max_size=12)


def number(low, high):
    """Any number of the span, whole ones often, as a tape gives them."""
    exact = st.floats(low, high, allow_subnormal=False)
    return exact | exact.map(lambda value: min(max(float(round(value)), low), high))


def maybe(strategy):
    return st.none() | strategy


def points(x, y, z):
    return st.builds(
        Point, x=number(*x), y=number(*y), z=number(*z), tolerance=number(0, 20), note=st.just("") | notes
    )


def marks(x, z):
    return st.builds(SideMark, x=number(*x), z=number(*z))


def lines(xs, z):
    """A line from front to rear through every given x."""
    return st.tuples(*(st.tuples(st.just(float(x)), number(*z)) for x in xs))


shoes = st.builds(driver.Shoe, sole_ball=number(0, 60), length=maybe(number(240, 350)))
kits = st.builds(driver.Kit, suit=number(0, 20), restraint=number(0, 50))


@st.composite
def measurements(draw):
    stature = draw(number(1400, 2100))
    share = {
        "sitting_height": (0.49, 0.56),
        "eye_height_sitting": (0.42, 0.48),
        "shoulder_height_sitting": (0.31, 0.38),
        "buttock_knee": (0.31, 0.38),
        "knee_height": (0.27, 0.34),
        "upper_arm": (0.19, 0.22),
        "forearm_grip": (0.18, 0.22),
        "foot_length": (0.14, 0.16),
    }
    taken = {name: draw(maybe(number(stature * low, stature * high))) for name, (low, high) in share.items()}
    breadths = {"hip_breadth": (280, 480), "shoulder_breadth": (380, 600), "foot_breadth": (80, 120)}
    wide = {name: draw(maybe(number(*span))) for name, span in breadths.items()}
    return driver.Measurements(stature=stature, **taken, **wide)


def drivers():
    return st.builds(
        driver.Driver,
        name=notes,
        note=notes,
        sex=st.sampled_from([None, "female", "male"]),
        mass=maybe(number(45, 140)),
        tape=number(0, 20),
        measurements=measurements(),
        shoe=shoes,
        kit=kits,
        targets=st.builds(
            driver.Targets, knee_released_low=maybe(number(90, 110)), elbow_high=maybe(number(120, 170))
        ),
    )


def setups():
    pedal = st.builds(setup.PedalRework, stand_off=number(0, 100), longer_arm=number(0, 100))
    return st.builds(
        setup.Setup,
        name=notes,
        seat_travel=number(-100, 100),
        seat_raise=number(-50, 50),
        recline=number(-10, 10),
        wheel_spacer=number(0, 80),
        cushion_insert=number(0, 60),
        back_insert=number(0, 60),
        clutch=pedal,
        brake=pedal,
        throttle=pedal,
    )


@st.composite
def cylinders(draw, pivot_x, pivot_z):
    bar = st.builds(
        car_pedals.BalanceBar, spacing=number(50, 80), pivot_to_front=number(20, 35), rear_bore=number(15, 25)
    )
    return car_pedals.Cylinder(
        joint_radius=draw(number(40, 70)),
        joint_phase=draw(number(-20, 20)),
        rod_end=draw(marks((pivot_x - 200, pivot_x - 100), (pivot_z - 80, pivot_z + 80))),
        bore=draw(number(14, 26)),
        stroke=draw(number(20, 40)),
        balance_bar=draw(maybe(bar)),
    )


@st.composite
def pedals(draw, x, y, foot):
    hinge, arm = draw(st.sampled_from(["hanging", "floor"])), draw(number(170, 320))
    height = draw(number(400, 470)) if hinge == "hanging" else draw(number(-10, 20))
    rest = draw(number(-15, 15))
    along = x - arm * sin(radians(rest))
    pivot = draw(points((along - 40, along + 40), (y - 30, y + 30), (height, height)))
    width, is_cable = draw(number(40, 80)), draw(st.booleans())
    turns = draw(st.booleans())
    has_cleats = draw(st.booleans())
    cable = st.builds(car_pedals.Cable, joint_radius=number(40, 80), needed=number(15, 60))
    return car_pedals.Pedal(
        foot=foot,
        hinge=hinge,
        pivot=pivot,
        arm=arm,
        rest_angle=rest,
        travel_angle=draw(number(8, 40)) if turns else None,
        pad_travel=None if turns else draw(number(30, 120)),
        pad_y=draw(number(y - 30, y + 30)),
        pad_width=width,
        pad_height=draw(number(40, 120)),
        cleat_height=draw(number(3, 15)) if has_cleats else 0.0,
        cleat_spacing=0.8 * width if has_cleats else None,
        max_stand_off=draw(number(0, 100)),
        cylinder=None if is_cable else draw(cylinders(pivot.x, pivot.z)),
        cable=draw(cable) if is_cable else None,
        bar=draw(
            st.just(car_pedals.Bar())
            | st.builds(car_pedals.Bar, depth=number(20, 40), shape=st.just("round tube"))
        ),
    )


@st.composite
def seats(draw, x, z):
    spans = (
        ((-450, -250), (30, 150)),
        ((-200, -80), (0, 40)),
        ((0, 0), (0, 0)),
        ((100, 300), (150, 300)),
        ((350, 450), (400, 650)),
    )
    profile = tuple((draw(number(*along)), draw(number(*up))) for along, up in spans)
    slot = st.builds(
        car_seat.Slot,
        strap=st.sampled_from(["shoulder_left", "lap_right", "crotch_left"]),
        x=number(-200, 450),
        y=number(-200, 200),
        z=number(0, 600),
        length=number(50, 120),
    )
    mount = points((x - 350, x + 50), (-200, 200), (z - 60, z + 60))
    return car_seat.Seat(
        kind=draw(st.sampled_from(["shell", "bead"])),
        junction=draw(points((x, x), (-5, 5), (z, z))),
        profile=profile,
        half_width=draw(number(170, 230)),
        cushion_padding=draw(number(0, 30)),
        back_insert_max=draw(number(0, 60)),
        mounts=tuple(draw(st.lists(mount, min_size=2, max_size=6))),
        slots=tuple(draw(st.lists(slot, max_size=4))),
        h_point=draw(maybe(points((x - 180, x - 80), (-20, 20), (z + 60, z + 120)))),
    )


@st.composite
def harnesses(draw, x, z):
    count = draw(st.sampled_from([4, 5, 6, 7]))
    crotch = points((x - 350, x - 50), (-60, 60), (z - 60, z + 20))
    shoulder, lap = ((x + 350, x + 800), (z + 400, z + 650)), ((x - 150, x + 50), (z - 50, z + 60))
    return car_cockpit.Harness(
        points=count,
        shoulder_left=draw(points(shoulder[0], (-120, -60), shoulder[1])),
        shoulder_right=draw(points(shoulder[0], (60, 120), shoulder[1])),
        lap_left=draw(points(lap[0], (-250, -180), lap[1])),
        lap_right=draw(points(lap[0], (180, 250), lap[1])),
        crotch=tuple(draw(crotch) for _ in range(count - 4)),
        shoulder_width=draw(st.sampled_from([50.0, 75.0])),
        guide=draw(
            maybe(
                st.builds(
                    car_cockpit.Guide,
                    x=number(x + 300, x + 500),
                    z=number(z + 400, z + 600),
                    diameter=number(20, 50),
                )
            )
        ),
    )


@st.composite
def footwells(draw, x, pads_x):
    obstacle = st.builds(
        car_cockpit.Obstacle,
        name=notes,
        centre=marks((pads_x, x), (50, 300)),
        radius=number(5, 60),
        y_low=number(-200, 0),
        y_high=number(10, 200),
    )
    outlined = st.builds(
        car_cockpit.Obstacle,
        name=notes,
        outline=st.lists(st.tuples(number(pads_x, x), number(0, 300)), min_size=3, max_size=6).map(tuple),
        y_low=number(-200, 0),
        y_high=number(10, 200),
    )
    return car_cockpit.Footwell(
        floor=draw(lines((pads_x - 400, pads_x, x), (-20, 20))),
        bulkhead=draw(maybe(number(pads_x - 400, pads_x - 150))),
        roof=draw(maybe(lines((pads_x - 200, pads_x + 100, pads_x + 300), (480, 650)))),
        half_widths=draw(maybe(lines((pads_x - 200, x), (180, 350)))),
        obstacles=tuple(draw(st.lists(obstacle | outlined, max_size=3))),
    )


@st.composite
def surroundings(draw, x, z):
    """Everything optional around the driver, by field."""
    wheel = st.builds(
        car_cockpit.SteeringWheel,
        centre=points((x - 450, x - 200), (-20, 20), (z + 350, z + 500)),
        rim_diameter=number(240, 360),
        rim_thickness=number(20, 40),
        tilt=number(0, 35),
        column_foot=maybe(marks((x - 1000, x - 500), (z + 100, z + 400))),
    )
    knob = points((x - 500, x - 200), (180, 300), (z + 150, z + 400))
    control = st.builds(
        car_cockpit.Control,
        name=notes,
        hand=st.sampled_from(["left", "right"]),
        at=points((x - 600, x), (-300, 300), (z, z + 600)),
    )
    hoops = st.builds(
        car_cockpit.Hoops,
        main_top=marks((x + 300, x + 600), (z + 850, z + 1000)),
        front_top=marks((x - 700, x - 400), (z + 450, z + 650)),
        brace_foot=maybe(marks((x + 700, x + 1300), (z + 100, z + 400))),
    )
    restraint = st.builds(
        car_cockpit.HeadRestraint,
        x=number(x + 350, x + 550),
        z_low=number(z + 550, z + 650),
        z_high=number(z + 750, z + 850),
        width=number(150, 300),
    )
    opening = st.builds(
        car_cockpit.Cockpit,
        opening_front=number(x - 600, x - 400),
        opening_rear=number(x + 100, x + 500),
        opening_width=number(400, 700),
        side_top=number(z + 200, z + 500),
        side_half_width=number(220, 350),
    )
    return {
        "steering_wheel": draw(maybe(wheel)),
        "gear_lever": draw(
            maybe(st.builds(car_cockpit.GearLever, knobs=st.lists(knob, min_size=1, max_size=6).map(tuple)))
        ),
        "controls": tuple(draw(st.lists(control, max_size=3))),
        "harness": draw(maybe(harnesses(x, z))),
        "hoops": draw(maybe(hoops)),
        "head_restraint": draw(maybe(restraint)),
        "cockpit": draw(maybe(opening)),
        "behind_seat": draw(maybe(lines((x + 50, x + 400), (0, 600)))),
    }


@st.composite
def cars(draw):
    x, z = draw(number(1000, 1700)), draw(number(0, 80))
    pads_x = x - draw(number(700, 900))
    clutch = draw(maybe(pedals(pads_x, -130, "left")))
    return car.Car(
        name=draw(notes),
        reference=draw(
            st.builds(
                car_cockpit.Reference,
                wheelbase=number(1800, 2800),
                level_plane=st.sampled_from(["floor top", "undertray", "ground"]),
                ground=number(-100, 0),
                front_axle_load=maybe(number(100, 300)),
            )
        ),
        seat=draw(seats(x, z)),
        rails=draw(
            st.builds(
                car_seat.Rails,
                kind=st.sampled_from(["drilled", "continuous", "fixed"]),
                angle=number(-10, 10),
                forward_travel=number(0, 200),
                rearward_travel=number(0, 200),
            )
        ),
        pedals=car_pedals.Pedals(
            clutch=clutch,
            brake=draw(pedals(pads_x, 0, "right" if clutch else "left")),
            throttle=draw(pedals(pads_x, 130, "right")),
        ),
        footwell=draw(footwells(x, pads_x)),
        **draw(surroundings(x, z)),
    )
