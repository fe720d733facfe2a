"""One car file."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from fitcalc.documents.car_cockpit import (
    Cockpit,
    Control,
    Footwell,
    GearLever,
    Harness,
    HeadRestraint,
    Hoops,
    Mirror,
    MovableMass,
    Reference,
    SteeringWheel,
)
from fitcalc.documents.car_pedals import Pedal, Pedals
from fitcalc.documents.car_seat import Rails, Seat
from fitcalc.documents.fields import FILE_NAME, Document, Profile, part
from fitcalc.documents.photo import Photo
from fitcalc.documents.plausible import require_agreement
from fitcalc.documents.plausible_feet import require_feet_agree

PEDALS = ("clutch", "brake", "throttle")


class Car(Document):
    """One car, as found. The frame is x rearward from the front-axle line, y to the right, z up."""

    format: Literal[1] = part("format", "Version of the car file: 1.", 1)
    name: str = part("name", "What this car is called.")
    note: str = part("note", "Anything worth remembering about this car.", "")
    rules: Annotated[str, Field(max_length=200, pattern=FILE_NAME)] = part(
        "rules", "The limit set the car is checked against unless another is asked for.", "club"
    )
    reference: Reference = part("reference", "How the car was set up for measuring.")
    seat: Seat = part("seat", "The seat, as found.")
    rails: Rails = part("rails", "How the seat may move.")
    behind_seat: Profile | None = part(
        "behind the seat", "What the seat could be pushed against: tank face, firewall; top to bottom.", None
    )
    pedals: Pedals = part("pedals", "The pedal box.")
    footwell: Footwell = part("footwell", "The space for the feet.")
    steering_wheel: SteeringWheel | None = part("steering wheel", "The wheel, straight ahead.", None)
    gear_lever: GearLever | None = part("gear lever", "The knob over its gate.", None)
    controls: Annotated[tuple[Control, ...], Field(max_length=50)] = part(
        "controls", "What must be reached while strapped in.", ()
    )
    mirrors: Annotated[tuple[Mirror, ...], Field(max_length=10)] = part(
        "mirrors", "Mirrors that the driver looks into.", ()
    )
    masses: Annotated[tuple[MovableMass, ...], Field(max_length=20)] = part(
        "movable masses", "What could be moved for balance: battery, extinguisher, ballast.", ()
    )
    harness: Harness | None = part("harness", "The straps' anchors.", None)
    hoops: Hoops | None = part("hoops", "The roll structure.", None)
    head_restraint: HeadRestraint | None = part("head restraint", "The pad behind the helmet.", None)
    sight_edges: Profile | None = part(
        "sight edges", "Edges that hide the road: nose, scuttle, screen; front to rear.", None
    )
    cockpit: Cockpit | None = part("cockpit", "The opening and the body sides.", None)
    photo: Photo | None = part("photo", "A photo that lies under the side view.", None)

    @model_validator(mode="after")
    def _agrees_with_itself(self) -> Self:
        require_agreement(self)
        require_feet_agree(self)
        return self

    def fitted_pedals(self) -> dict[str, Pedal]:
        """The pedals that this car has, by name, left to right."""
        pedals = {name: getattr(self.pedals, name) for name in PEDALS}
        return {name: pedal for name, pedal in pedals.items() if pedal is not None}
