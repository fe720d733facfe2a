"""The pedal box and its pedals."""

from typing import Literal, Self

from pydantic import model_validator

from fitcalc.documents.fields import LATERAL, Document, Point, SideMark, clash, deg, mm, part, quantity, whole
from fitcalc.documents.slips import slip_hint

Foot = Literal["left", "right"]
BarMaterial = Literal[
    "S235JR", "S275JR", "S355J2", "S235JRH", "S355J2H", "1.4301", "6082-T6", "6082-T6 plate", "6061-T6"
]
"""Materials whose strength is known; each can be welded, the alloys with loss of temper."""
LEAST_CLEAT = 2
"""Least height of a cleat, mm; anything lower is a slip of unit (design inference)."""
LEVER = (1.2, 11.9)
"""Arm over push-rod or cable radius of any pedal (design inference)."""
PAD_ASIDE = 120.0
"""Most that a cranked arm carries its pad to one side, mm (design inference)."""


class Release(Document):
    """What the clutch cylinder works."""

    slave_bore: float = mm("slave bore", "Bore of the slave cylinder.", (8, 60))
    fork_ratio: float = quantity("fork ratio", "Slave travel over bearing travel.", "-", (0.5, 5))
    needed: float = mm("bearing travel needed", "Travel at which the clutch is free.", (2, 19))


class BalanceBar(Document):
    """Two cylinders worked by one pedal through a bar."""

    spacing: float = mm("clevis spacing", "Between the two clevises.", (30, 120))
    pivot_to_front: float = mm(
        "pivot to front clevis", "From the bar's pivot to the clevis of the front circuit.", (6, 96)
    )
    rear_bore: float = mm(
        "rear bore", "Bore of the rear circuit's cylinder; `bore` is the front circuit's.", (10, 40)
    )

    @model_validator(mode="after")
    def _pivot_between_clevises(self) -> Self:
        low, high = 0.2 * self.spacing, 0.8 * self.spacing
        if not low <= self.pivot_to_front <= high:
            span = f"must be a number from {low:g} to {high:g} mm"
            allowed = f"{span} to agree with spacing, which is {self.spacing:g}"
            raise clash(
                "pivot_to_front", self.pivot_to_front, allowed, slip_hint(self.pivot_to_front, low, high)
            )
        return self


class Cylinder(Document):
    """A master cylinder worked by a push-rod."""

    joint_radius: float = mm("rod joint radius", "From the pedal pivot to the push-rod joint.", (18, 179))
    joint_phase: float = deg(
        "rod joint phase",
        "From the arm to the line pivot - rod joint, in the sense of the rest angle (positive = toward the "
        "driver at the pad end); 180 when the joint lies beyond the pivot.",
        (-180, 180),
        0.0,
    )
    rod_end: SideMark = part(
        "rod end", "The far end of the push-rod, at the cylinder (its pivot when it swings)."
    )
    bore: float = mm("bore", "Bore of the master cylinder.", (10, 40))
    stroke: float = mm("usable stroke", "Stroke of the cylinder, less what it needs to refill.", (8, 79))
    lost_travel: float = mm("lost stroke", "Stroke before pressure rises.", (0, 9), 1.0)
    release: Release | None = part("release", "For a clutch: what the cylinder works.", None)
    balance_bar: BalanceBar | None = part("balance bar", "For a brake with two cylinders.", None)


class Cable(Document):
    """A cable worked by the pedal over a sector or a straight lever."""

    joint_radius: float = mm("cable radius", "From the pedal pivot to the cable.", (18, 179))
    needed: float = mm("cable travel needed", "From rest to wide open, or to a free clutch.", (8, 79))
    slack: float = mm("slack", "Pull before anything moves.", (0, 15), 1.0)


class Bar(Document):
    """The stock an extension bar would be made of, and how it is fastened to the old arm."""

    shape: Literal["flat", "round tube", "square tube", "angle"] = part(
        "shape", "Section of the bar.", "flat"
    )
    depth: float = mm(
        "depth", "Size of the section in the direction of the push; diameter of a tube.", (8, 79), 30.0
    )
    thickness: float = mm("thickness", "Thickness of flat bar or wall of tube or angle.", (0.8, 30), 6.0)
    material: BarMaterial = part(
        "material", "Of the bar; alloys of temper T6 lose half their strength beside a weld.", "S235JR"
    )
    joint: Literal["bolted", "welded"] = part("joint", "How the bar meets the old arm.", "bolted")
    bolt: Literal["M5", "M6", "M8", "M10", "M12"] = part("bolt", "Bolt size of a bolted joint.", "M8")
    bolt_pitch: float = mm("bolt pitch", "Between the two bolts, along the bar.", (16, 159), 40.0)
    edge: float = mm("edge distance", "From a hole's centre to the end of the bar.", (6, 59), 16.0)


class Pedal(Document):
    """One pedal, as found."""

    foot: Foot = part("foot", "Which foot works it.")
    hinge: Literal["hanging", "floor"] = part("hinge", "Hanging from above, or standing on a floor pivot.")
    pivot: Point = part("pivot", "Centre of the pivot; y is the arm's centre.")
    arm: float = mm("arm length", "From the pivot to the centre of the pad, along the arm.", (90, 450))
    rest_angle: float = deg(
        "rest angle",
        "Arm (pivot to pad) from the vertical; positive when the pad end leans rearward.",
        (-60, 60),
    )
    travel_angle: float | None = deg("travel", "Turn of the arm from rest to its stop.", (2, 70), None)
    pad_travel: float | None = mm(
        "pad travel", "Straight distance of the pad's centre from rest to its stop.", (15, 149), None
    )
    stand_off: float = mm(
        "stand-off, as found",
        "How far the pad's face stands off the arm's line, toward the driver.",
        (0, 150),
        0.0,
    )
    pad_tilt: float = deg(
        "pad tilt",
        "Pad face from the arm's line; positive when the top of the pad leans further rearward.",
        (-45, 45),
        0.0,
    )
    pad_y: float = mm("pad y", "Centre of the pad, right of the centre plane.", LATERAL)
    pad_width: float = mm("pad width", "Across the pad.", (18, 179))
    pad_height: float = mm("pad height", "Along the pad, bottom to top.", (24, 239))
    cleat_height: float = mm(
        "cleat height", "How far the raised side edges stand off the pad's face; 0 = no cleats.", (0, 19), 0.0
    )
    cleat_spacing: float | None = mm(
        "cleat spacing", "Between the inner faces of the two side cleats.", (18, 179), None
    )
    max_stand_off: float = mm(
        "stand-off allowed", "How much further the pad may be stood off.", (0, 200), 0.0
    )
    max_longer_arm: float = mm("longer arm allowed", "How much longer the arm may be made.", (0, 200), 0.0)
    cylinder: Cylinder | None = part("cylinder", "What a push-rod pedal works.", None)
    cable: Cable | None = part("cable", "What a cable pedal works.", None)
    bar: Bar = whole("bar", "The stock for an extension bar.", Bar)

    @model_validator(mode="after")
    def _one_travel(self) -> Self:
        if (self.travel_angle is None) == (self.pad_travel is None):
            raise ValueError("give either travel_angle or pad_travel, and not both")
        if self.pad_travel is not None and self.pad_travel > self.arm:
            raise clash(
                "pad_travel",
                self.pad_travel,
                f"must not be more than arm, which is {self.arm:g}",
                "measure both again",
            )
        return self

    @model_validator(mode="after")
    def _cleats_on_pad(self) -> Self:
        if (self.cleat_height > 0) != (self.cleat_spacing is not None):
            raise ValueError("cleat_height and cleat_spacing go together: give both, or neither")
        if 0 < self.cleat_height < LEAST_CLEAT:
            raise clash(
                "cleat_height", self.cleat_height, f"must be 0, or {LEAST_CLEAT} mm or more", "give it in mm"
            )
        if (
            self.cleat_spacing is not None
            and not 0.4 * self.pad_width <= self.cleat_spacing <= self.pad_width
        ):
            allowed = f"must be 0.4 to 1 times pad_width, which is {self.pad_width:g}"
            raise clash("cleat_spacing", self.cleat_spacing, allowed, "measure both again")
        return self

    @model_validator(mode="after")
    def _one_actuation(self) -> Self:
        if self.cylinder is not None and self.cable is not None:
            raise ValueError("give either cylinder or cable, and not both")
        return self

    @model_validator(mode="after")
    def _plausible_lever(self) -> Self:
        works = self.cylinder or self.cable
        if works is not None and not LEVER[0] <= self.arm / works.joint_radius <= LEVER[1]:
            part_name = "cylinder" if self.cylinder else "cable"
            low, high = (self.arm / ratio for ratio in reversed(LEVER))
            allowed = (
                f"must be a number from {low:.0f} to {high:.0f} mm to agree with arm, which is {self.arm:g}"
            )
            raise clash(
                f"{part_name}.joint_radius",
                works.joint_radius,
                allowed,
                slip_hint(works.joint_radius, low, high),
            )
        return self

    @model_validator(mode="after")
    def _pad_near_arm(self) -> Self:
        low, high = self.pivot.y - PAD_ASIDE, self.pivot.y + PAD_ASIDE
        if not low <= self.pad_y <= high:
            span = f"must be a number from {low:g} to {high:g} mm"
            allowed = f"{span} to agree with pivot.y, which is {self.pivot.y:g}"
            raise clash("pad_y", self.pad_y, allowed, slip_hint(self.pad_y, low, high))
        return self


class Pedals(Document):
    """The pedal box."""

    box_forward: float = mm("box forward", "How far the whole box may still slide forward.", (0, 300), 0.0)
    box_rearward: float = mm("box rearward", "How far the whole box may still slide rearward.", (0, 300), 0.0)
    box_pitch: float = mm("box hole pitch", "Step of the box's slots; 0 = slides freely.", (0, 100), 0.0)
    clutch: Pedal | None = part("clutch", "The clutch pedal, where there is one.", None)
    brake: Pedal = part("brake", "The brake pedal.")
    throttle: Pedal = part("throttle", "The throttle pedal.")
