"""What is taken for the driver's body: measured or estimated, how sure, and what it decides."""

from dataclasses import fields

from fitcalc.body.dimensions import FIELDS, titles
from fitcalc.body.estimate import estimate
from fitcalc.body.links import links_for
from fitcalc.documents.driver import Driver
from fitcalc.documents.guide import guide_for
from fitcalc.present.tables import Table
from fitcalc.present.wording import number


def body_table(driver: Driver) -> Table:
    """Every dimension with its 90 % interval; those that a driver file can give come with what they decide."""
    body = estimate(driver)
    decides = {dimension: _decides(field) for field, dimension in FIELDS.items()}
    rows = zip(body.names, body.mean, body.low, body.high, body.measured, strict=True)
    lines = tuple(
        (
            titles()[name],
            "measured" if measured else "estimated",
            number(value, _unit(name)),
            f"{number(low, _unit(name))} - {number(high, _unit(name))}",
            _unit(name),
            decides.get(name, ""),
        )
        for name, value, low, high, measured in rows
    )
    header = ("dimension", "from", "value", "90 % interval", "unit", "decides most")
    return Table(f"The body of {driver.name}", header, lines)


def links_table(driver: Driver) -> Table:
    """Every link and flesh allowance that the posture is built from, mm (mass in kg)."""
    links = links_for(driver)
    rows = tuple(
        (field.name.replace("_", " "), number(float(getattr(links, field.name)[0]), "mm"))
        for field in fields(links)
    )
    return Table("Links between joint centres, flesh and kit, mm (mass in kg)", ("link", "value"), rows)


def body_remarks(driver: Driver) -> tuple[str, ...]:
    """What does not go together, and where the estimate leaves the survey."""
    return estimate(driver).remarks


def _unit(name: str) -> str:
    return "kg" if name == FIELDS["mass"] else "mm"


def _decides(field: str) -> str:
    guide = guide_for(Driver, "mass" if field == "mass" else f"measurements.{field}")
    return "" if guide is None else guide.decides
