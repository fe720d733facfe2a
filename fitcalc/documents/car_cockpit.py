"""What surrounds the driver: footwell, wheel, lever, straps, hoops, opening."""

from itertools import pairwise
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from fitcalc.documents.fields import (
    LATERAL,
    LONGITUDINAL,
    VERTICAL,
    Document,
    LongitudinalMm,
    Point,
    Profile,
    SideMark,
    SidePoint,
    clash,
    deg,
    kg,
    mm,
    part,
)

HalfWidth = tuple[
    LongitudinalMm, Annotated[float, mm("half width", "Inside, from the centre plane.", (80, 790))]
]
FLOOR_LENGTH = 300
"""Least length of floor, mm, that a driver can sit over (design inference)."""


class Reference(Document):
    """How the car was set up for measuring."""

    wheelbase: float = mm("wheelbase", "Front to rear axle line.", (1400, 3600))
    level_plane: Literal["floor top", "undertray", "ground"] = part("level plane", "Which plane is z = 0.")
    levelled_by: str = part("levelled by", "How the car was levelled.", "")
    ground: float = mm("ground", "z of the ground; negative when z = 0 lies above it.", (-400, 50), 0.0)
    front_axle_load: float | None = kg(
        "front axle load", "On scales, ready to drive, nobody in it.", (65, 600), None
    )
    rear_axle_load: float | None = kg(
        "rear axle load", "On scales, ready to drive, nobody in it.", (80, 780), None
    )


class Obstacle(Document):
    """Something the feet or legs could hit: a circle or an outline in side view, and its width across."""

    name: str = part("name", "What it is: rack, column, tube, battery.")
    centre: SideMark | None = part("centre", "Centre of a round obstacle.", None)
    radius: float | None = mm("radius", "Radius of a round obstacle.", (2, 300), None)
    outline: Annotated[tuple[SidePoint, ...], Field(min_length=3, max_length=10_000)] | None = part(
        "outline", "Corners of an obstacle that is not round, in order, as `[x, z]` pairs.", None
    )
    y_low: float = mm("left end", "Leftmost y.", LATERAL)
    y_high: float = mm("right end", "Rightmost y.", LATERAL)

    @model_validator(mode="after")
    def _one_shape(self) -> Self:
        is_round = self.centre is not None and self.radius is not None
        if is_round == (self.outline is not None):
            raise ValueError("give either centre and radius, or outline")
        if self.y_low >= self.y_high:
            raise clash(
                "y_low", self.y_low, f"must be less than y_high, which is {self.y_high:g}", "y points right"
            )
        return self


class Footwell(Document):
    """The space for the feet."""

    floor: Profile = part("floor", "What the heels rest on, in side view, front to rear.")
    bulkhead: float | None = mm("bulkhead", "x of the rear face of the front bulkhead.", LONGITUDINAL, None)
    roof: Profile | None = part(
        "roof", "Underside of scuttle or dash over the feet and shins, front to rear.", None
    )
    half_widths: Annotated[tuple[HalfWidth, ...], Field(min_length=1, max_length=1000)] | None = part(
        "half widths", "Inside half width along the car: `[x, half width]` pairs, front to rear.", None
    )
    heel_rest: SideMark | None = part(
        "heel rest", "Point that a heel rest holds the back of the heel at.", None
    )
    obstacles: Annotated[tuple[Obstacle, ...], Field(max_length=200)] = part(
        "obstacles", "What the feet or legs could hit.", ()
    )

    @model_validator(mode="after")
    def _runs_rearward(self) -> Self:
        for name in ("floor", "roof", "half_widths"):
            line = getattr(self, name) or ()
            for index, (ahead, here) in enumerate(pairwise(line), start=1):
                if here[0] <= ahead[0]:
                    allowed = f"must be greater than the x before it, {ahead[0]:g}"
                    raise clash(
                        f"{name}.{index}.0",
                        here[0],
                        allowed,
                        "give the line from front to rear; x points rearward",
                    )
        if self.floor[-1][0] - self.floor[0][0] < FLOOR_LENGTH:
            least = self.floor[0][0] + FLOOR_LENGTH
            allowed = f"must be {least:g} or more, {FLOOR_LENGTH} mm behind the floor's front end"
            raise clash(
                f"floor.{len(self.floor) - 1}.0",
                self.floor[-1][0],
                allowed,
                "give the floor in mm, as far as the seat",
            )
        return self


class SteeringWheel(Document):
    """The steering wheel, straight ahead."""

    centre: Point = part("centre", "Centre of the rim's plane.")
    rim_diameter: float = mm("rim diameter", "Outside, across the rim through its centre.", (180, 450))
    rim_thickness: float = mm("rim thickness", "Of the rim's section.", (10, 60))
    tilt: float = deg(
        "tilt", "Rim plane from the vertical; positive when the top of the rim leans forward.", (-20, 70)
    )
    lock: float = deg(
        "turning range used", "Most turn of the wheel to one side, from straight ahead.", (30, 540), 180.0
    )
    spacer_max: float = mm(
        "spacer allowed", "How far a boss spacer may bring the wheel toward the driver.", (0, 150), 0.0
    )
    column_foot: SideMark | None = part("column foot", "Lower end of the column's axis.", None)


class GearLever(Document):
    """The gear lever's knob over its gate."""

    knobs: Annotated[tuple[Point, ...], Field(min_length=1, max_length=12)] = part(
        "knob positions", "Centre of the knob in each gear."
    )


class Control(Document):
    """Something that must be reached while strapped in."""

    name: str = part("name", "Switch, extinguisher pull, mirror...")
    hand: Literal["left", "right"] = part("hand", "Which hand reaches for it.")
    at: Point = part("position", "Where the finger must go.")


class Mirror(Document):
    """A mirror that the driver looks into."""

    name: str = part("name", "Left mirror, right mirror...")
    at: Point = part("position", "Middle of the glass.")


class MovableMass(Document):
    """Something heavy that could go elsewhere in the car: battery, extinguisher, ballast."""

    name: str = part("name", "What it is.")
    mass: float = kg("mass", "Weigh it with its bracket.", (0.1, 100))
    at: Point = part("position", "Middle of it, as found.")
    to: Point | None = part("new position", "Middle of it where it is to go; left out, it stays.", None)


class Guide(Document):
    """A tube or bar behind the shoulders that the straps run over."""

    x: float = mm("x", "Of the tube's centre.", LONGITUDINAL)
    z: float = mm("z", "Of the tube's centre.", VERTICAL)
    diameter: float = mm("diameter", "Outside of the tube.", (10, 80))


class Harness(Document):
    """The anchors of the straps."""

    points: Literal[4, 5, 6, 7] = part("points", "How many points the harness has.")
    shoulder_left: Point = part(
        "left shoulder anchor", "Where the strap is held: bolt centre or bar contact."
    )
    shoulder_right: Point = part(
        "right shoulder anchor", "Where the strap is held: bolt centre or bar contact."
    )
    lap_left: Point = part("left lap anchor", "Bolt centre.")
    lap_right: Point = part("right lap anchor", "Bolt centre.")
    crotch: Annotated[tuple[Point, ...], Field(max_length=3)] = part(
        "crotch anchors", "Where each is held: one (5-point), two (6-point) or three (7-point).", ()
    )
    shoulder_width: float = mm("shoulder strap width", "Of the webbing.", (25, 90), 75.0)
    lap_width: float = mm("lap strap width", "Of the webbing.", (25, 90), 50.0)
    guide: Guide | None = part("guide", "A tube that the shoulder straps run over, where there is one.", None)

    @model_validator(mode="after")
    def _crotch_count(self) -> Self:
        wanted = {4: 0, 5: 1, 6: 2, 7: 3}[self.points]
        if len(self.crotch) != wanted:
            allowed = f"needs {wanted} crotch anchors, and {len(self.crotch)} are given"
            raise clash("points", self.points, allowed, "change points or crotch")
        return self

    @model_validator(mode="after")
    def _left_is_left(self) -> Self:
        for pair in ("shoulder", "lap"):
            left, right = getattr(self, f"{pair}_left").y, getattr(self, f"{pair}_right").y
            if left >= right:
                allowed = f"must be less than {pair}_right.y, which is {right:g}"
                raise clash(
                    f"{pair}_left.y",
                    left,
                    allowed,
                    "y points to the driver's right; swap the two or mend the sign",
                )
        return self


class HeadRestraint(Document):
    """The pad behind the helmet."""

    x: float = mm("face", "x of its front face at mid-height.", (200, 4000))
    z_low: float = mm("lower edge", "z of the lower edge.", (0, 1700))
    z_high: float = mm("upper edge", "z of the upper edge.", (0, 1800))
    width: float = mm("width", "Across the pad's face.", (65, 600))


class Hoops(Document):
    """The roll structure."""

    main_top: SideMark = part("main hoop top", "Top of the main hoop's tube, outside.")
    front_top: SideMark = part("front hoop top", "Top of the front hoop's tube, outside.")
    tube: float = mm("tube diameter", "Outside of the hoops' tube.", (15, 70), 38.0)
    brace_foot: SideMark | None = part("brace foot", "Lower end of the main hoop's brace.", None)

    @model_validator(mode="after")
    def _front_is_ahead(self) -> Self:
        main, front = self.main_top.x, self.front_top.x
        if main <= front:
            allowed = f"must be greater than front_top.x, which is {front:g}"
            raise clash("main_top.x", main, allowed, "x points rearward; swap the two or mend the sign")
        return self


class Cockpit(Document):
    """The opening and the body sides."""

    opening_front: float = mm("opening, front", "x of the front edge of the opening.", (-500, 3000))
    opening_rear: float = mm("opening, rear", "x of the rear edge of the opening.", (0, 4000))
    opening_width: float = mm("opening width", "Widest, inside.", (250, 1200))
    side_top: float = mm("side top", "z of the top edge of the body side beside the seat.", (0, 1200))
    side_half_width: float = mm("side half width", "Inside half width at the elbows.", (150, 900))
