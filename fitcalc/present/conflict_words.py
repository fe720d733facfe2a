"""What stands in the way of every rework, in sentences."""

from collections.abc import Iterator, Mapping, Sequence

from fitcalc.checks.check import Check
from fitcalc.fit.conflict import Clash, Conflict, Way
from fitcalc.present.wanted import asked, wanted_span

PARTS = {
    "seat_down": "setting the seat {mm} lower than the car file allows",
    "seat_up": "setting the seat {mm} higher than the car file allows",
    "seat_forward": "setting the seat {mm} further forward than the car file allows",
    "seat_back": "setting the seat {mm} further back than the car file allows",
    "cushion_insert": "an insert under the driver {mm} thicker than the car file allows",
    "back_insert": "an insert behind the back {mm} thicker than the car file allows",
    "box_forward": "setting the pedal box {mm} further forward than the car file allows",
    "box_back": "setting the pedal box {mm} further rearward than the car file allows",
    "stand_off": "standing the {pedal} pad off {mm} more than is allowed",
    "longer_arm": "making the {pedal} arm {mm} longer than is allowed",
    "main_hoop_up": "a main hoop {mm} higher",
    "front_hoop_up": "a front hoop {mm} higher",
    "wheel_up": "setting the steering wheel {mm} higher",
    "wheel_forward": "setting the steering wheel {mm} further forward",
    "head_restraint_back": "setting the head restraint {mm} further back",
    "shoulder_anchors_up": "setting the shoulder anchors {mm} higher still",
    "shoulder_anchors_down": "setting the shoulder anchors {mm} lower still",
}
"""By part, or what follows the pedal's name: what would be done."""


def conflict_sentences(conflict: Conflict) -> list[str]:
    """Which limits shut each other out; limits that meet the same obstacle share a sentence."""
    return [*_never(conflict.clashes), *_against(conflict.clashes)]


def way_sentences(conflict: Conflict, all_else_holds: bool) -> list[str]:
    """What single change of the car would make room.

    Args:
        conflict: what stands in the way.
        all_else_holds: whether what no allowed change moves holds.
    """
    whole = [_doing(way) for way in conflict.ways if not way.mends]
    if whole:
        outcome = "let everything pass" if all_else_holds else "mend all that can be moved"
        return [f"{_capital(', or '.join(whole))} would {outcome}."]
    labels = {clash.check.id: clash.check.label for clash in conflict.clashes}
    shared: dict[str, list[Way]] = {}
    for way in conflict.ways:
        shared.setdefault(way.part, []).append(way)
    return [_mending(ways, labels) for ways in shared.values()]


def _mending(ways: Sequence[Way], labels: Mapping[str, str]) -> str:
    """What one part, moved far enough for all of them, would mend."""
    far = max(ways, key=lambda way: way.amount)
    mended = "; ".join(_together([(labels[way.mends], "") for way in ways]))
    return f"{_capital(_doing(far))} would mend {mended}; not everything would pass then."


def _never(clashes: Sequence[Clash]) -> Iterator[str]:
    """What holds in no rework, limits of one kind in one sentence."""
    kinds: dict[tuple[str, str], list[Clash]] = {}
    for clash in clashes:
        if clash.against is None:
            kind = (clash.check.label.rpartition(": ")[2], wanted_span(clash.check))
            kinds.setdefault(kind, []).append(clash)
    for (rest, wanted), several in kinds.items():
        yield f"No allowed rework gives {rest} {wanted}: the nearest lacks {', '.join(map(_lack, several))}."


def _lack(clash: Clash) -> str:
    head, colon, _ = clash.check.label.rpartition(": ")
    return f"{clash.least:.1f} {clash.check.figure.unit}{f' ({head})' if colon else ''}"


def _against(clashes: Sequence[Clash]) -> Iterator[str]:
    met: dict[str, tuple[Check, list[Check]]] = {}
    told = set[frozenset[str]]()
    for clash in clashes:
        if clash.against is None or frozenset({clash.check.id, clash.against.id}) in told:
            continue
        told.add(frozenset({clash.check.id, clash.against.id}))
        met.setdefault(clash.against.id, (clash.against, []))[1].append(clash.check)
    for obstacle, checks in met.values():
        each = _together([(check.label, f" {wanted_span(check)}") for check in checks])
        if len(each) == 1:
            yield f"No allowed rework gives both {each[0]} and {asked(obstacle)}."
        else:
            yield f"No allowed rework gives {asked(obstacle)} together with any one of: {'; '.join(each)}."


def _together(labels: Sequence[tuple[str, str]]) -> list[str]:
    """Labels of one kind as one, with what follows: `knee, pedal released (clutch, brake) 110.0 to 135.0 deg`."""
    kinds: dict[tuple[str, str], list[str]] = {}
    for label, more in labels:
        head, _, rest = label.rpartition(": ")
        kinds.setdefault((rest, more), []).append(head)
    return [
        f"{rest}{f' ({_heads(heads)})' if any(heads) else ''}{more}" for (rest, more), heads in kinds.items()
    ]


def _heads(heads: Sequence[str]) -> str:
    return (
        "; ".join(dict.fromkeys(heads))
        if any("," in head for head in heads)
        else ", ".join(dict.fromkeys(heads))
    )


def _doing(way: Way) -> str:
    pedal, _, kind = way.part.rpartition(".")
    return PARTS[kind].format(mm=f"{way.amount:.0f} mm", pedal=pedal)


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]
