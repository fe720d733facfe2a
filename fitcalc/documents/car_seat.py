"""The seat and what carries it."""

from math import atan2, degrees
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from fitcalc.documents.fields import Document, Point, Profile, clash, deg, kg, mm, part
from fitcalc.documents.slips import slip_hint

StrapName = Literal["shoulder_left", "shoulder_right", "lap_left", "lap_right", "crotch_left", "crotch_right"]
LEAST_CUSHION = 150
"""Least length of a cushion, mm (design inference)."""
LEAST_BACK = 250
"""Least height of a seat's back, mm (design inference)."""
OPENING = (50, 160)
"""Angle between the lines from the junction to the cushion's front edge and to the top of the back, deg: near a
straight line neither of them says where the hips are (design inference)."""


class Slot(Document):
    """A slot in the shell that a strap passes through; its centre is in the seat's own frame."""

    strap: StrapName = part("strap", "Which strap passes here.")
    x: float = mm("x", "Rearward of the seat's origin.", (-700, 900))
    y: float = mm("y", "To the driver's right of the seat's middle.", (-500, 500))
    z: float = mm("z", "Above the seat's origin.", (-300, 1100))
    length: float = mm("slot length", "Along the slot, end to end.", (30, 290))
    edge_radius: float = mm(
        "edge radius", "Radius of the edge or bushing the strap would bear on.", (0, 30), 0.0
    )


class Seat(Document):
    """The seat, as found. Its own frame is the car's frame moved to the junction of back and cushion."""

    kind: Literal["shell", "bead"] = part(
        "kind", "A hard or thinly padded shell, or a bead insert moulded to a body."
    )
    junction: Point = part(
        "junction", "Where the lines of back and cushion meet, on the surface sat against."
    )
    profile: Profile = part(
        "profile",
        "The surface sat against in side view, in the seat's own frame: from the front edge of the cushion "
        "through `[0, 0]` at the junction to the top of the back.",
    )
    half_width: float = mm("half width", "Half the inside width at the hips.", (120, 400))
    cushion_padding: float = mm(
        "cushion padding", "Thickness of loose padding under the driver, sat on.", (0, 150), 0.0
    )
    back_padding: float = mm(
        "back padding", "Thickness of loose padding behind the driver, leant on.", (0, 150), 0.0
    )
    cushion_insert_max: float = mm(
        "insert allowed under the driver",
        "Thickest insert that a driver may lay on the cushion for himself, sat on; 0 where none may be.",
        (0, 150),
        0.0,
    )
    back_insert_max: float = mm(
        "insert allowed behind the back",
        "Thickest insert that a driver may put behind his back for himself, leant on; 0 where none may be.",
        (0, 150),
        0.0,
    )
    shell_thickness: float = mm(
        "shell thickness", "Thickness of the shell where straps pass.", (0.8, 60), 4.0
    )
    mass: float = kg("seat mass", "Weigh it with its brackets.", (0.5, 40), 5.0)
    mounts: Annotated[tuple[Point, ...], Field(min_length=2, max_length=12)] = part(
        "mounts", "Each bolt that holds the seat to the car or its rails."
    )
    slots: Annotated[tuple[Slot, ...], Field(max_length=50)] = part(
        "slots", "Slots already cut for straps: the centre of each, from the seat's origin.", ()
    )
    h_point: Point | None = part(
        "hip joint, measured",
        "The driver's hip joint measured in the car with the seat as found; it overrides the calculated one.",
        None,
    )

    @model_validator(mode="after")
    def _origin_on_profile(self) -> Self:
        if (0.0, 0.0) not in self.profile[1:-1]:
            raise ValueError(
                "profile must pass through [0, 0], the junction, between its first and last point"
            )
        front, top = self.profile[0][0], self.profile[-1][1]
        if front > -LEAST_CUSHION:
            allowed = f"must be {-LEAST_CUSHION} or less: the cushion starts ahead of the junction at [0, 0]"
            raise clash("profile.0.0", front, allowed, slip_hint(front, -800, -LEAST_CUSHION))
        if top < LEAST_BACK:
            allowed = f"must be {LEAST_BACK} or more: the back ends above the junction at [0, 0]"
            raise clash(f"profile.{len(self.profile) - 1}.1", top, allowed, slip_hint(top, LEAST_BACK, 1100))
        return self

    @model_validator(mode="after")
    def _cushion_meets_back(self) -> Self:
        (front_x, front_z), (top_x, top_z) = self.profile[0], self.profile[-1]
        opening = degrees(abs(atan2(front_z, -front_x) - atan2(top_z, -top_x)))
        if not OPENING[0] <= opening <= OPENING[1]:
            allowed = (
                f"must lie so that cushion and back stand {OPENING[0]} to {OPENING[1]} deg apart at the junction; they "
                f"stand {opening:.0f} deg apart"
            )
            raise clash(f"profile.{len(self.profile) - 1}.0", top_x, allowed, "measure both ends of it again")
        return self


class Rails(Document):
    """How the seat may move from where it was found."""

    kind: Literal["drilled", "continuous", "fixed"] = part(
        "kind", "Drilled in steps, sliding freely, or fixed until a new bracket is made."
    )
    angle: float = deg(
        "rail angle",
        "Slope of the rail from level; positive when the seat rises as it moves forward.",
        (-30, 30),
        0.0,
    )
    hole_pitch: float = mm(
        "hole pitch", "Distance between neighbouring holes of a drilled rail.", (8, 79), 20.0
    )
    forward_travel: float = mm(
        "travel forward", "How far the seat may still move forward along the rail.", (0, 400)
    )
    rearward_travel: float = mm(
        "travel rearward", "How far the seat may still move rearward along the rail.", (0, 400)
    )
    raise_travel: float = mm(
        "may be raised", "How far spacers or brackets may raise the seat.", (0, 200), 0.0
    )
    lower_travel: float = mm("may be lowered", "How far the seat may be lowered.", (0, 200), 0.0)
    recline_travel: float = deg(
        "may be reclined",
        "How much further back the seat may lean; turn about the front mounts.",
        (0, 40),
        0.0,
    )
    upright_travel: float = deg(
        "may be set upright", "How much more upright the seat may be set.", (0, 40), 0.0
    )
