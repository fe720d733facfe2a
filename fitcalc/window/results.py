"""What the session shows: the car as found, after the rework, and what they are held against."""

from dataclasses import dataclass

from fitcalc.body.links import Links, links_for
from fitcalc.documents.setup import Setup
from fitcalc.fit.result import Result
from fitcalc.window.work import Occupant, Work

AS_FOUND = Setup()


@dataclass(frozen=True)
class Choice:
    """What the results are asked for.

    Attributes:
        rules: id of the limit set; empty for the car's own.
        compared: id of a second limit set; empty for none.
        overlaid: place of a second driver in the work; None for none.
    """

    rules: str = ""
    compared: str = ""
    overlaid: int | None = None


@dataclass(frozen=True, eq=False)
class Results:
    """The results of one work.

    Attributes:
        found: the chosen driver in the car as found.
        after: the chosen driver after the rework; the same object as `found` where nothing is changed.
        compared: `after` held against the second limit set, or none.
        other: the overlaid driver with the other rework, or none.
        is_checked: everything is evaluated; otherwise only the posture is known.
    """

    work: Work
    choice: Choice
    found: Result
    after: Result
    compared: Result | None
    other: Result | None
    is_checked: bool = True


def results_of(work: Work, choice: Choice, last: Results | None) -> Results:
    """The results of a work; what the last ones already hold is taken from there.

    Raises:
        InputError: a limit set is not known.
    """
    links = links_now(work, last)
    found = _found(work, choice, links, last)
    after = found if work.setup == AS_FOUND else _result(work, work.setup, choice.rules, links)
    compared = _result(work, work.setup, choice.compared, links) if choice.compared else None
    return Results(work, choice, found, after, compared, _other(work, choice, last))


def links_now(work: Work, last: Results | None) -> Links:
    """The chosen driver's body: the very same as in the last results where those are of this driver."""
    if last is not None and work.driver is last.found.driver:
        return last.found.links
    return links_for(work.driver)


def _found(work: Work, choice: Choice, links: Links, last: Results | None) -> Result:
    if last is not None and _same_start(work, choice, last):
        return last.found
    return _result(work, AS_FOUND, choice.rules, links)


def _same_start(work: Work, choice: Choice, last: Results) -> bool:
    if not last.is_checked:
        return False
    same_rules = choice.rules == last.choice.rules
    return same_rules and work.car.document is last.found.car and work.driver is last.found.driver


def _result(work: Work, setup: Setup, rules: str, links: Links) -> Result:
    from fitcalc.fit.evaluate import evaluate

    return evaluate(work.car.document, work.driver, setup, rules or None, links)


def _other(work: Work, choice: Choice, last: Results | None) -> Result | None:
    if choice.overlaid is None or not _is_another(work, choice.overlaid):
        return None
    from fitcalc.fit.evaluate import evaluate

    person = work.occupants[choice.overlaid]
    if last and last.other and _is_of(last.other, work, person):
        return last.other
    return evaluate(work.car.document, person.driver.document, person.setup.document, choice.rules or None)


def _is_another(work: Work, place: int) -> bool:
    return place < len(work.occupants) and place != work.chosen


def _is_of(result: Result, work: Work, person: Occupant) -> bool:
    same_person = result.driver is person.driver.document and result.setup is person.setup.document
    return same_person and result.car is work.car.document
