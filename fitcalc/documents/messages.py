"""What is wrong with a document, as one sentence."""

import json
from collections.abc import Sequence
from typing import Any

from pydantic import ValidationError

from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.fields import FILE_NAME, Document
from fitcalc.documents.slips import slip_hint
from fitcalc.errors import InputError

Step = str | int
LONGEST = 60
"""Most characters of a user's text that are quoted in a sentence."""
PATTERNS = (("must be a day", "write it as 2026-05-31"), ("must be a bare name", "without a folder"))
"""What a text must look like that is a date, and one that names a file."""


def explained(
    error: ValidationError, document_type: type[Document], above: Sequence[Step] = (), where: str = ""
) -> InputError:
    """The first thing that is wrong, and how many more there are.

    Args:
        error: what the validation of a document, or of one section of it, found.
        document_type: the whole document's type.
        above: path of the section that was validated.
        where: follows the value, as in " in car.toml".
    """
    faults = _without_echoes(error.errors(include_url=False))
    loc = (*above, *faults[0]["loc"])
    field, value, allowed, hint = _told(faults[0], loc, document_type)
    more = f"{' ' if hint else ''}(and {len(faults) - 1} more)" if len(faults) > 1 else ""
    return InputError(field, value + where, allowed, hint + more)


def path_text(steps: Sequence[Step]) -> str:
    """A path with dots, each key short and on one line."""
    return ".".join(str(step) if _is_plain(step) else shown(step) for step in steps)


def shown(value: Any) -> str:
    """A value as the user would have written it, short and on one line."""
    if isinstance(value, (dict, Document)):
        return "a section"
    if isinstance(value, (list, tuple)):
        return f"a list of {len(value)}"
    if isinstance(value, float):
        return f"{value:.10g}"
    if isinstance(value, (str, bool)):
        return _short(json.dumps(value, ensure_ascii=False))
    return "nothing" if value is None else _short(_digits(value))


def nearest_hint(name: Step, known: Sequence[str]) -> str:
    """The known name that is nearest to an unknown one; empty when none is near."""
    from difflib import get_close_matches

    text = str(name)[:LONGEST]
    near = get_close_matches(text, known, n=3)
    # swapped letters and a right first letter are the likelier slips among names equally near
    best = max(near, key=lambda one: (sorted(one) == sorted(text), one[:1] == text[:1]), default="")
    return f"perhaps {best} is meant" if best else ""


def _short(text: str) -> str:
    printable = "".join(c if c.isprintable() else "�" for c in text[: LONGEST + 1])
    return printable if len(text) <= LONGEST else printable[: LONGEST - 3] + "..."


def _digits(value: Any) -> str:
    huge = isinstance(value, int) and value.bit_length() > 200
    return "a number of more than 60 digits" if huge else str(value)


def _is_plain(step: Step) -> bool:
    text = str(step)
    return len(text) <= LONGEST and (text.replace("-", "_").isidentifier() or text.isdecimal())


def _without_echoes(faults: list[Any]) -> list[Any]:
    """The faults, an unknown key ahead of the missing one that it was meant to be, and that one left out."""
    from difflib import get_close_matches

    missing = {fault["loc"]: fault for fault in faults if fault["type"] == "missing"}
    unknown = [fault for fault in faults if fault["type"] == "extra_forbidden"] if missing else []
    meant = {}
    for fault in unknown[:100]:
        *above, key = fault["loc"]
        beside = [loc[-1] for loc in missing if list(loc[:-1]) == above]
        near = get_close_matches(str(key)[:LONGEST], beside, n=1)
        if near:
            meant[(*above, near[0])] = fault | {"meant": near}
    named = {fault["loc"] for fault in meant.values()}
    rest = [fault for fault in faults if fault["loc"] not in meant and fault["loc"] not in named]
    return [*meant.values(), *rest]


def _told(fault: Any, loc: tuple[Step, ...], document_type: type[Document]) -> tuple[str, str, str, str]:
    """Field, value, what is allowed and how to mend it."""
    field, known = path_text(loc), declared_at(document_type, ".".join(map(str, loc)))
    match fault["type"]:
        case "clash":
            told = fault["ctx"]
            return (
                path_text((*loc, *told["field"].split("."))),
                shown(told["value"]),
                told["allowed"],
                told["hint"],
            )
        case "value_error":
            return field or "the file", "not usable", str(fault["ctx"]["error"]), ""
        case "extra_forbidden":
            return _unknown(field, loc, document_type, fault.get("meant", []))
        case "missing":
            return field, "missing", f"must be {_wanted(known)}", _how(known)
        case "string_pattern_mismatch":
            return field, shown(fault["input"]), *PATTERNS[fault["ctx"]["pattern"] == FILE_NAME]
        case "too_short" | "too_long":
            return field, shown(fault["input"]), _count(fault["ctx"]), _how(known)
        case _:
            return field, shown(fault["input"]), f"must be {_wanted(known)}", _mend(fault, known)


def _unknown(
    field: str, loc: tuple[Step, ...], document_type: type[Document], meant: list[str]
) -> tuple[str, str, str, str]:
    above = declared_at(document_type, ".".join(map(str, loc[:-1]))) if len(loc) > 1 else None
    names = above.names if above else tuple(document_type.model_fields)
    near = nearest_hint(loc[-1], meant or names)
    return field, "not a known field", near or f"the fields here are {', '.join(names)}", ""


def _wanted(known: Declared | None) -> str:
    if known is None:
        return "something else"
    match known.kind:
        case "number":
            return f"a number from {known.low:g} to {known.high:g} {known.unit}".rstrip(" -")
        case "choice":
            return "one of " + ", ".join(json.dumps(choice) for choice in known.choices)
        case "section":
            return "a section with " + ", ".join(known.names)
        case kind:
            return {"text": "a text in quotes", "list": "a list in square brackets"}[kind]


def _how(known: Declared | None) -> str:
    return f"how to measure it: {known.description.rstrip('.')}" if known and known.description else ""


def _mend(fault: Any, known: Declared | None) -> str:
    given = fault["input"]
    if known is None:
        return ""
    if known.kind == "choice":
        return nearest_hint(shown(given).strip('"'), [str(choice) for choice in known.choices])
    if (
        fault["type"] in ("greater_than_equal", "less_than_equal")
        and known.low is not None
        and known.high is not None
    ):
        return slip_hint(given, known.low, known.high, known.unit) or _how(known)
    if isinstance(given, str) and known.kind == "number":
        return "write the number without quotes and without a unit"
    return _how(known)


def _count(limits: dict[str, Any]) -> str:
    if "min_length" in limits:
        return f"must hold at least {limits['min_length']} entries"
    return f"must hold at most {limits['max_length']} entries"
