"""The pages on limits, as Markdown: every check with its drawing, and every set with what it does not cover."""

from collections.abc import Iterable, Iterator, Mapping

from fitcalc.checks.limits import LimitSet
from fitcalc.checks.limits_table import LimitUse, QuantityUse, every_set, limits_table
from fitcalc.checks.quantities import Quantity

TOPICS = {
    "head": "Head",
    "harness": "Harness",
    "wheel": "Steering wheel",
    "knee": "Knees",
    "leg": "Legs",
    "feet": "Feet",
    "cleat": "Shoes and pads",
    "height": "Pad heights",
    "pedal": "Pedals",
    "posture": "Joint angles",
    "reach": "Reach",
    "sight": "Sight",
    "mirror": "Mirrors",
    "seat": "Seat",
    "cockpit": "Cockpit",
    "template": "Rule template",
    "balance": "Balance",
}
INTRO = """\
# Limits

Every check, between which points it is measured, which limit sets bound it and by which source, and what mends it. Made by
`python docs/make_limits.py` from what the program itself reads; `fitcalc limits` prints the same. Values in the drawings are
those of invented sample cars. **The current rule book of your event decides**; a row marked second-hand, from memory, as
common practice or as design inference was not read in a rule.

A helmet too high under hoops or braces is told how much lower, further reclined or further forward its driver must sit.
A finding *fails* when a bound that must hold is broken, and is *advised* against when only a "better" bound is.

Not measured, because it would need guesses: what a mirror shows past helmet and body side, and how far out it may stand; straps
that stretch, slip or move with the shoulder; a shell that gives; the far edge of a helmet that tilts; tethers of a
head-and-neck restraint. Rules that geometry cannot judge stand in each set's list to tick.
"""


def pages(drawn: Iterable[str] = ()) -> Mapping[str, str]:
    """Every page by its path below `docs`.

    Args:
        drawn: quantities that have a drawing.
    """
    own = {f"limits/{each.id}.md": "\n".join(_set_page(each)) + "\n" for each in every_set()}
    return {"limits.md": "\n".join(_checks_page(frozenset(drawn))) + "\n"} | own


def _checks_page(drawn: frozenset[str]) -> Iterator[str]:
    uses = limits_table(every_set())
    yield INTRO
    yield "## Sets\n"
    yield "| set | what it is | rows | to tick |\n|---|---|---|---|"
    for each in every_set():
        row = (f"[{each.id}](limits/{each.id}.md)", each.title, len(each.limits), len(each.checklist))
        yield _row(*map(str, row))
    for topic, title in TOPICS.items():
        yield f"\n## {title}"
        for use in uses:
            if use.quantity.id.split(".")[0] == topic:
                yield from _check(use, use.quantity.id in drawn)


def _check(use: QuantityUse, is_drawn: bool) -> Iterator[str]:
    quantity = use.quantity
    yield f"\n### `{quantity.id}`\n"
    yield f"**{quantity.label}**, {quantity.unit}. {quantity.points}\n"
    if is_drawn:
        yield f"![{quantity.label}](limits/{quantity.id}.svg)\n"
    if use.uses:
        yield "| set | limit | source | confidence |\n|---|---|---|---|"
        yield from (
            _row(each.rules, each.bounds, each.limit.source.citation, each.limit.confidence) for each in use.uses
        )
    else:
        yield "For information: no limit on it was found."
    mends = list(_mends(quantity))
    if mends:
        yield "\n" + " ".join(mends)


def _mends(quantity: Quantity) -> Iterator[str]:
    for name, text in (("Too low", quantity.too_low), ("Too high", quantity.too_high)):
        if text:
            yield f"{name}: {text.replace('{margin}', '*so much*')}"


def _set_page(each: LimitSet) -> Iterator[str]:
    yield f"# {each.title} (`{each.id}`)\n"
    yield "Written from [the same files](../limits.md) that the program reads.\n"
    yield "## Taken from\n"
    yield from (f"- {edition}" for edition in each.editions)
    yield "\n## NOT covered\n"
    yield from (
        f"- {lack}" for lack in each.missing or ("Nothing that was looked for is known to be missing.",)
    )
    yield "\n## Covered\n"
    yield "| check | limit | applies to | measured | source | confidence | note |\n|---|---|---|---|---|---|---|"
    for row in each.limits:
        bounds = LimitUse(each.id, row).bounds
        cells = (
            f"`{row.quantity}`",
            bounds,
            row.applies_to,
            row.measured,
            row.source.citation,
            row.confidence,
            row.note,
        )
        yield _row(*cells)
    yield "\n## To be ticked by hand: geometry cannot judge these\n"
    if not each.checklist:
        yield "None in this set."
    yield from (f"- [ ] {rule.text} ({rule.source})" for rule in each.checklist)


def _row(*cells: str) -> str:
    return "| " + " | ".join(cell.replace("|", "/") for cell in cells) + " |"
