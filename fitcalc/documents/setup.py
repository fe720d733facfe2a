"""The rework: what is changed from the car as found."""

from typing import Literal

from fitcalc.documents.fields import Document, deg, mm, part, whole


class PedalRework(Document):
    """What is done to one pedal."""

    stand_off: float = mm("stand-off", "Pad brought toward the driver, square to its face.", (0, 200), 0.0)
    longer_arm: float = mm("longer arm", "Pad moved out along the arm.", (0, 200), 0.0)


class Setup(Document):
    """One rework of one car for one driver; all zero is the car as found."""

    format: Literal[1] = part("format", "Version of the setup file: 1.", 1)
    name: str = part("name", "What this rework is called.", "")
    note: str = part("note", "Anything worth remembering about it.", "")
    seat_travel: float = mm("seat travel", "Along the rail; positive = forward.", (-400, 400), 0.0)
    seat_raise: float = mm("seat raise", "Positive = up.", (-200, 200), 0.0)
    recline: float = deg(
        "recline", "Turn of the seat about its front mounts; positive = further back.", (-40, 40), 0.0
    )
    box_travel: float = mm("pedal box travel", "Positive = rearward, toward the driver.", (-300, 300), 0.0)
    wheel_spacer: float = mm(
        "wheel spacer", "Wheel brought toward the driver along the column.", (0, 150), 0.0
    )
    shoulder_anchor_raise: float = mm(
        "shoulder anchor raise", "Both shoulder anchors; positive = up.", (-400, 400), 0.0
    )
    cushion_insert: float = mm(
        "insert under the driver", "Laid on the cushion for this driver; thickness sat on.", (0, 150), 0.0
    )
    back_insert: float = mm(
        "insert behind the back",
        "Put on the back of the seat for this driver; thickness leant on.",
        (0, 150),
        0.0,
    )
    clutch: PedalRework = whole("clutch", "What is done to the clutch pedal.", PedalRework)
    brake: PedalRework = whole("brake", "What is done to the brake pedal.", PedalRework)
    throttle: PedalRework = whole("throttle", "What is done to the throttle pedal.", PedalRework)
