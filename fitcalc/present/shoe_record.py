"""The shoe on each pedal: what it comes nearest to, when and where, and how wide pad and cleats must be."""

from fitcalc.checks.cleats import closest_shoe
from fitcalc.checks.limits import workshop_limits
from fitcalc.fit.result import Result
from fitcalc.present.parts import Record
from fitcalc.present.tables import Table
from fitcalc.present.wording import amount, number


class NearRecord(Record):
    """One thing that the shoe passes, mm; travel in % of the pedal's."""

    id: str
    what: str
    room: float
    travel: float
    x: float
    z: float


class ShoeRecord(Record):
    """One shoe on one pedal, mm. `spacing_least` leaves no play, the advised span leaves what the limits advise."""

    width: float
    spacing_least: float
    spacing_advised: tuple[float, float]
    near: list[NearRecord]


def shoe_records(result: Result) -> dict[str, ShoeRecord]:
    """The shoes of the first case, what they come nearest to first."""
    return {name: _shoe(name, result) for name in result.sitting.pedals}


def shoes_table(shoes: dict[str, ShoeRecord]) -> Table:
    """How wide the cleats must stand for this shoe."""
    rows = tuple(
        (
            name,
            amount(shoe.width, "mm"),
            amount(shoe.spacing_least, "mm"),
            f"{number(shoe.spacing_advised[0], 'mm')} to {amount(shoe.spacing_advised[1], 'mm')}",
        )
        for name, shoe in shoes.items()
    )
    header = ("pedal", "shoe width", "cleats apart and pad wide, least", "cleats apart, advised")
    return Table("Cleats and pads for this shoe", header, rows)


def near_table(shoes: dict[str, ShoeRecord]) -> Table:
    """What each shoe passes over its pedal's travel, nearest first: the first row is what to move first."""
    rows = tuple(
        (name, near.what, amount(near.room, "mm"), f"{near.travel:.0f} %", f"{near.x:.0f} / {near.z:.0f}")
        for name, shoe in shoes.items()
        for near in shoe.near
    )
    header = ("pedal", "what the shoe passes", "least room", "at this part of the travel", "there, x / z")
    return Table("Shoes over the pedal travel, nearest first: move the first named first", header, rows)


def _shoe(name: str, result: Result) -> ShoeRecord:
    width = float(result.links.shoe_width[0])
    play = workshop_limits().on("cleat.play")[0]
    advised = (width + (play.recommended_low or 0.0), width + (play.recommended_high or 0.0))
    return ShoeRecord(
        width=width,
        spacing_least=width + (play.low or 0.0),
        spacing_advised=advised,
        near=_near(name, result),
    )


def _near(name: str, result: Result) -> list[NearRecord]:
    labels = {figure.id: figure.label for figure in result.figures}
    found = [
        NearRecord(
            id=id,
            what=labels[id],
            room=float(least.room[0]),
            travel=100.0 * float(least.travel[0]),
            x=float(least.points[0][0, 0]),
            z=float(least.points[0][0, 2]),
        )
        for id, least in closest_shoe(result.case, name).items()
        if not id.endswith(".floor")
    ]
    return sorted(found, key=lambda near: near.room)
