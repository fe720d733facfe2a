"""The driver: a few tape measurements, the kit worn, and any wishes about posture."""

from typing import Literal, Self

from pydantic import model_validator

from fitcalc.documents.fields import Document, clash, deg, kg, mm, part, whole

LOWER_THAN = (
    ("sitting_height", "stature"),
    ("eye_height_sitting", "sitting_height"),
    ("shoulder_height_sitting", "eye_height_sitting"),
    ("shoulder_height_sitting", "sitting_height"),
    ("foot_breadth", "foot_length"),
)
"""Pairs of measurements of which the first is the smaller on every body."""


class Measurements(Document):
    """What the tape said. Only stature is required; each further one replaces an estimate.

    Dimensions are those of the ANSUR II survey (Gordon et al. 2014), bare or in light clothing, no shoes.
    """

    stature: float = mm(
        "stature", "Standing straight against a wall, no shoes: floor to top of head.", (1200, 2300)
    )
    sitting_height: float | None = mm(
        "sitting height", "Sitting straight on a hard flat seat: seat to top of head.", (600, 1250), None
    )
    eye_height_sitting: float | None = mm(
        "eye height, sitting",
        "Sitting straight on a hard flat seat: seat to outer corner of the eye.",
        (500, 1150),
        None,
    )
    shoulder_height_sitting: float | None = mm(
        "shoulder height, sitting",
        "Sitting straight on a hard flat seat: seat to the bony tip on top of the shoulder (acromion).",
        (380, 850),
        None,
    )
    buttock_knee: float | None = mm(
        "buttock-knee length",
        "Sitting, knees square: back of the buttock to front of the kneecap.",
        (400, 850),
        None,
    )
    knee_height: float | None = mm(
        "knee height, sitting", "Sitting, knees square, no shoes: floor to top of the knee.", (350, 750), None
    )
    hip_breadth: float | None = mm(
        "hip breadth, sitting", "Widest across the hips, sitting.", (230, 650), None
    )
    shoulder_breadth: float | None = mm(
        "shoulder breadth", "Widest across the upper arms, arms hanging (bideltoid).", (300, 750), None
    )
    upper_arm: float | None = mm(
        "upper arm length",
        "Elbow square, upper arm hanging: bony tip on top of the shoulder to underside of the elbow.",
        (240, 500),
        None,
    )
    forearm_grip: float | None = mm(
        "forearm to grip",
        "Elbow square: back of the elbow to the centre of a rod held in the fist.",
        (240, 480),
        None,
    )
    foot_length: float | None = mm(
        "foot length", "Bare foot: back of the heel to the longest toe.", (180, 370), None
    )
    foot_breadth: float | None = mm("foot breadth", "Bare foot: widest across the ball.", (65, 150), None)

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        for lower, higher in LOWER_THAN:
            below, above = getattr(self, lower), getattr(self, higher)
            if below is not None and above is not None and below >= above:
                raise clash(
                    lower, below, f"must be less than {higher}, which is {above:g}", "measure both again"
                )
        return self


class Shoe(Document):
    """The shoe that is driven in."""

    sole_ball: float = mm(
        "sole under the ball", "Thickness of the sole under the ball of the foot.", (0, 60), 5.0
    )
    sole_heel: float = mm("sole under the heel", "Thickness of the sole under the heel.", (0, 80), 8.0)
    length: float | None = mm("shoe length", "Outside length of the sole.", (190, 420), None)
    width: float | None = mm("shoe width", "Outside width of the sole across the ball.", (65, 180), None)


class Helmet(Document):
    """The helmet that is worn."""

    height: float = mm("helmet height", "Outside, from chin edge to top.", (180, 400), 265.0)
    length: float = mm("helmet length", "Outside, front of the chin bar to the back.", (220, 450), 330.0)
    width: float = mm("helmet width", "Outside, widest.", (180, 400), 250.0)


class Kit(Document):
    """What is worn besides helmet and shoes."""

    suit: float = mm("suit thickness", "One layer of suit and underwear, pressed by hand.", (0, 40), 3.0)
    restraint: float = mm(
        "head-and-neck restraint",
        "Thickness of the head-and-neck restraint under the shoulder strap; 0 when none is worn.",
        (0, 80),
        0.0,
    )
    collar: float | None = mm(
        "restraint behind the helmet",
        "How far the head-and-neck restraint's collar or tethers stand out behind the back of the helmet, both worn.",
        (0, 150),
        None,
    )


class Targets(Document):
    """The driver's own wishes; each one given replaces the chosen posture set's recommended value."""

    knee_released_low: float | None = deg(
        "least knee angle", "Feet on released pedals; 180 = straight.", (60, 175), None
    )
    knee_released_high: float | None = deg(
        "most knee angle", "Feet on released pedals; 180 = straight.", (60, 178), None
    )
    knee_pressed_high: float | None = deg(
        "most knee angle, pressed", "At full travel; 180 = straight.", (90, 178), None
    )
    elbow_low: float | None = deg(
        "least elbow angle", "Hands level on the wheel; 180 = straight.", (45, 175), None
    )
    elbow_high: float | None = deg(
        "most elbow angle", "Hands level on the wheel; 180 = straight.", (60, 178), None
    )

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        for joint in ("knee_released", "elbow"):
            low, high = getattr(self, f"{joint}_low"), getattr(self, f"{joint}_high")
            if low is not None and high is not None and low > high:
                raise clash(
                    f"{joint}_low",
                    low,
                    f"must not be more than {joint}_high, which is {high:g}",
                    "swap the two",
                )
        return self


class Driver(Document):
    """One driver file."""

    format: Literal[1] = part("format", "Version of the driver file: 1.", 1)
    name: str = part("name", "Who this is.")
    note: str = part("note", "Anything worth remembering about this driver.", "")
    sex: Literal["female", "male"] | None = part(
        "sex", "Which survey table is used; left out, both are mixed by how well they fit.", None
    )
    mass: float | None = kg("mass", "Body mass in light clothing, without kit.", (30, 220), None)
    tape: float = mm("tape tolerance", "What each body measurement can promise, plus or minus.", (0, 50), 5.0)
    measurements: Measurements = part("measurements", "What the tape said.")
    shoe: Shoe = whole("shoe", "The shoe that is driven in.", Shoe)
    helmet: Helmet = whole("helmet", "The helmet that is worn.", Helmet)
    kit: Kit = whole("kit", "What is worn besides.", Kit)
    targets: Targets = whole("targets", "The driver's own wishes about posture.", Targets)
