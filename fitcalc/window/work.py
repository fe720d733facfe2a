"""All that is worked on at once, as one frozen value: a car, its drivers, a rework for each of them, and what work costs.

A `ref` names one value of it by its document and path, as in `car.hoops.main_top.z`; `driver` and `setup` are the
chosen driver's.
"""

from dataclasses import dataclass, field, replace
from itertools import count
from typing import Any, Generic, TypeVar

from fitcalc.documents.car import Car
from fitcalc.documents.declared import Declared
from fitcalc.documents.driver import Driver
from fitcalc.documents.edit import field_at, value_at, with_value
from fitcalc.documents.effort import Effort
from fitcalc.documents.fields import Document
from fitcalc.documents.setup import Setup

Kind = TypeVar("Kind", bound=Document)
KINDS: dict[str, type[Document]] = {"car": Car, "driver": Driver, "setup": Setup, "effort": Effort}
_keys = count(1)


@dataclass(frozen=True)
class Held(Generic[Kind]):
    """A document and the key by which its file is known, whatever its content becomes."""

    key: int
    document: Kind


def held(document: Kind) -> Held[Kind]:
    """A document under a new key: its own file, or none yet."""
    return Held(next(_keys), document)


@dataclass(frozen=True)
class Occupant:
    """One driver and the rework of the car for this driver."""

    driver: Held[Driver]
    setup: Held[Setup]


@dataclass(frozen=True)
class Work:
    """One car, its drivers, which of them is worked on, and what may be changed at which cost."""

    car: Held[Car]
    occupants: tuple[Occupant, ...]
    chosen: int = 0
    effort: Held[Effort] = field(default_factory=lambda: held(Effort()))

    @property
    def occupant(self) -> Occupant:
        """The driver that is worked on."""
        return self.occupants[self.chosen]

    @property
    def driver(self) -> Driver:
        """The chosen driver's document."""
        return self.occupant.driver.document

    @property
    def setup(self) -> Setup:
        """The chosen driver's rework."""
        return self.occupant.setup.document

    def documents(self) -> tuple[Held[Any], ...]:
        """Every document, the car first and what work costs last."""
        people = (each for person in self.occupants for each in (person.driver, person.setup))
        return (self.car, *people, self.effort)


def new_work(car: Car, *drivers: Driver) -> Work:
    """A car as found with its drivers."""
    return Work(held(car), tuple(Occupant(held(driver), held(Setup())) for driver in drivers))


def document_of(work: Work, name: str) -> Document:
    """The document that a ref begins with."""
    return {
        "car": work.car.document,
        "driver": work.driver,
        "setup": work.setup,
        "effort": work.effort.document,
    }[name]


def at_ref(work: Work, ref: str) -> Any:
    """The value at a ref; InputError when there is none."""
    name, _, path = ref.partition(".")
    return value_at(document_of(work, name), path)


def declared_for(ref: str) -> Declared:
    """Title, unit, bounds and how to measure what a ref names."""
    name, _, path = ref.partition(".")
    return field_at(KINDS[name], path)


def with_ref(work: Work, ref: str, value: Any) -> Work:
    """The work with one value replaced; InputError, with the path as its field, when it would not be valid."""
    name, _, path = ref.partition(".")
    return with_document(work, name, with_value(document_of(work, name), path, value))


def with_document(work: Work, name: str, document: Any) -> Work:
    """The work with the car, what work costs, the chosen driver or rework replaced, under the same key."""
    if name in ("car", "effort"):
        return replace(work, **{name: replace(getattr(work, name), document=document)})
    held_before: Held[Any] = getattr(work.occupant, name)
    return with_occupant(work, replace(work.occupant, **{name: replace(held_before, document=document)}))


def with_occupant(work: Work, occupant: Occupant) -> Work:
    """The work with the chosen driver and rework replaced."""
    people = (*work.occupants[: work.chosen], occupant, *work.occupants[work.chosen + 1 :])
    return replace(work, occupants=people)


def with_content(work: Work, key: int, document: Any) -> Work:
    """The work with the content of one of its documents replaced, whichever that is."""

    def new(each: Held[Any]) -> Held[Any]:
        return replace(each, document=document) if each.key == key else each

    people = tuple(Occupant(new(person.driver), new(person.setup)) for person in work.occupants)
    return replace(work, car=new(work.car), occupants=people, effort=new(work.effort))


def with_car(work: Work, car: Held[Car]) -> Work:
    """The work with another car: every rework starts from that car as found."""
    people = tuple(replace(person, setup=held(Setup())) for person in work.occupants)
    return replace(work, car=car, occupants=people)


def with_driver(work: Work, driver: Held[Driver]) -> Work:
    """The work with a further driver, who is chosen."""
    people = (*work.occupants, Occupant(driver, held(Setup())))
    return replace(work, occupants=people, chosen=len(work.occupants))


def without_driver(work: Work) -> Work:
    """The work without the chosen driver; the last one stays."""
    if len(work.occupants) == 1:
        return work
    people = tuple(person for person in work.occupants if person is not work.occupant)
    return replace(work, occupants=people, chosen=min(work.chosen, len(people) - 1))
