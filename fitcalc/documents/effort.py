"""What a rework may change, how far, in which steps, and what each change costs in minutes at the bench."""

from collections.abc import Mapping
from typing import Any, Literal, Self

from pydantic import model_validator

from fitcalc.documents.fields import Document, clash, part, quantity, whole

Kind = Literal["bolt_on", "drilling", "welding", "new_bracket"]
LONGEST = 10_000
"""Most minutes that may be given."""


class Change(Document):
    """One thing that may be changed; what is left out is as the car and the program have it."""

    low: float | None = quantity(
        "low",
        "Count from as found, the negative way; the car's own end holds too, and 0 forbids it.",
        "mm or deg",
        (-400, 0),
        None,
    )
    high: float | None = quantity(
        "high",
        "Count from as found, the positive way; the car's own end holds too, and 0 forbids it.",
        "mm or deg",
        (0, 400),
        None,
    )
    step: float | None = quantity(
        "step",
        "What can be set; left out, the car's hole pitch where it has one.",
        "mm or deg",
        (0.1, 200),
        None,
    )
    work: Kind | None = part("work", "What kind of work it is.", None)
    fixed: float | None = quantity(
        "fixed", "Minutes that are due once it is changed at all; left out, those of its kind of work.",
        "min", (0, LONGEST), None,
    )  # fmt: skip
    per_unit: float | None = quantity(
        "per unit", "Minutes for every mm or deg on top.", "min", (0, 1000), None
    )


class PedalChange(Document):
    """What may be changed on one pedal."""

    stand_off: Change = whole("stand-off", "Pad brought toward the driver.", Change)
    longer_arm: Change = whole("longer arm", "Pad moved out along the arm.", Change)


class Work(Document):
    """Minutes that are due once for each thing that is changed in this way."""

    bolt_on: float | None = quantity("bolt on", "Undo, move, do up.", "min", (0, LONGEST), None)
    drilling: float | None = quantity("drilling", "Mark out, drill, deburr, fit.", "min", (0, LONGEST), None)
    welding: float | None = quantity("welding", "Prepare, weld, have it checked.", "min", (0, LONGEST), None)
    new_bracket: float | None = quantity("new bracket", "Make and fit a bracket.", "min", (0, LONGEST), None)


class Effort(Document):
    """What a rework may change and what it costs; all left out is as the program has it."""

    format: Literal[1] = part("format", "Version of the effort file: 1.", 1)
    name: str = part("name", "What these figures are called.", "")
    work: Work = whole("work", "Minutes due once, by kind of work.", Work)
    seat_travel: Change = whole("seat travel", "Seat along its rail, mm; positive = forward.", Change)
    seat_raise: Change = whole("seat raise", "Seat raised or lowered, mm; positive = up.", Change)
    recline: Change = whole("recline", "Seat turned, deg; positive = further back.", Change)
    box_travel: Change = whole("pedal box travel", "Pedal box, mm; positive = rearward.", Change)
    wheel_spacer: Change = whole("wheel spacer", "Wheel toward the driver, mm.", Change)
    shoulder_anchor_raise: Change = whole(
        "shoulder anchor raise", "Both shoulder anchors, mm; positive = up.", Change
    )
    cushion_insert: Change = whole(
        "insert under the driver", "Laid on the cushion for one driver, mm.", Change
    )
    back_insert: Change = whole(
        "insert behind the back", "Put on the back of the seat for one driver, mm.", Change
    )
    stand_off: Change = whole("stand-off", "Pad brought toward the driver, mm, on every pedal.", Change)
    longer_arm: Change = whole("longer arm", "Pad moved out along the arm, mm, on every pedal.", Change)
    clutch: PedalChange = whole("clutch", "The clutch pedal alone, ahead of what holds for all.", PedalChange)
    brake: PedalChange = whole("brake", "The brake pedal alone, ahead of what holds for all.", PedalChange)
    throttle: PedalChange = whole("throttle", "The throttle alone, ahead of what holds for all.", PedalChange)

    @model_validator(mode="after")
    def _bars_only_lengthen(self) -> Self:
        for name in ("stand_off", "longer_arm", "wheel_spacer", "cushion_insert", "back_insert"):
            low = getattr(self, name).low
            if low is not None and low < 0:
                raise clash(f"{name}.low", low, "must be 0: it only ever grows from as found", "take it out")
        return self


def is_effort(table: Mapping[str, Any]) -> bool:
    """Whether a table is of what work costs and not of a rework, which has numbers where this one has sections."""
    changes = [name for name, field in Effort.model_fields.items() if field.annotation in (Work, Change)]
    pedals = [table[name] for name in ("clutch", "brake", "throttle") if isinstance(table.get(name), dict)]
    below = [value for pedal in pedals for value in pedal.values()]
    return any(isinstance(value, dict) for value in (*map(table.get, changes), *below))
