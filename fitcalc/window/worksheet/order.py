"""Which measurements stand where: the order in which a person would take them."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Section:
    """One part of the worksheet.

    Attributes:
        refs: what is measured, from the document down; sections and lists stand for everything in them.
    """

    title: str
    refs: tuple[str, ...]


def _section(title: str, *refs: str) -> Section:
    return Section(title, refs)


DRIVER = (
    _section(
        "Body",
        "driver.name",
        "driver.sex",
        "driver.measurements.stature",
        "driver.measurements.sitting_height",
        "driver.measurements.shoulder_height_sitting",
        "driver.measurements.eye_height_sitting",
        "driver.measurements.buttock_knee",
        "driver.measurements.knee_height",
        "driver.measurements.hip_breadth",
        "driver.measurements.shoulder_breadth",
        "driver.measurements.upper_arm",
        "driver.measurements.forearm_grip",
        "driver.measurements.foot_length",
        "driver.measurements.foot_breadth",
        "driver.mass",
        "driver.tape",
        "driver.note",
    ),
    _section("Shoes, helmet, kit", "driver.shoe", "driver.helmet", "driver.kit"),
    _section("Wishes", "driver.targets"),
)
CAR = (
    _section("Car, set-up", "car.name", "car.note", "car.reference"),
    _section("Seat", "car.seat", "car.behind_seat"),
    _section("Seat rails", "car.rails"),
    _section("Pedal box", "car.pedals.box_forward", "car.pedals.box_rearward", "car.pedals.box_pitch"),
    _section("Clutch pedal", "car.pedals.clutch"),
    _section("Brake pedal", "car.pedals.brake"),
    _section("Throttle pedal", "car.pedals.throttle"),
    _section("Footwell", "car.footwell"),
    _section("Wheel, lever, controls", "car.steering_wheel", "car.gear_lever", "car.controls"),
    _section("Harness", "car.harness"),
    _section("Hoops, head restraint", "car.hoops", "car.head_restraint"),
    _section("Opening and sight", "car.cockpit", "car.sight_edges"),
)
SECTIONS = (*DRIVER, *CAR)


def section_with(ref: str) -> Section | None:
    """The section that shows a ref; None where no section does."""
    owners = [one for one in SECTIONS for each in one.refs if _is_within(ref, each) or _is_within(each, ref)]
    return owners[0] if owners else None


def _is_within(ref: str, above: str) -> bool:
    return ref == above or ref.startswith(f"{above}.")
