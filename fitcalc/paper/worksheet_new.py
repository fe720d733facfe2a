"""A car or a driver begun from a filled-in worksheet, and what the worksheet still lacks for it."""

from collections.abc import Iterator, Sequence

from pydantic import ValidationError

from fitcalc.documents.declared import declared_at
from fitcalc.documents.fields import Document
from fitcalc.documents.messages import explained
from fitcalc.paper.worksheet_file import Change, filled_in
from fitcalc.present.worksheet_rows import TYPES, Kind

MOST = 20
"""So many of the lacking measurements are named."""
PLACE = {"x", "z"}
"""A section with these is a place: told as one measurement."""


def lacking(changes: Sequence[Change], kind: Kind) -> str:
    """What must be filled in yet, as the end of a sentence; empty where it is enough for a file.

    Raises:
        InputError: an entry of a list is filled in before the one ahead of it.
    """
    try:
        TYPES[kind].model_validate(filled_in({}, changes))
    except ValidationError as error:
        faults = [fault for fault in error.errors(include_url=False) if fault["type"] == "missing"]
        paths = [".".join(map(str, fault["loc"])) for fault in faults]
        return _told([each for path in paths for each in _needed(TYPES[kind], path)], kind)
    return ""


def begun(changes: Sequence[Change], kind: Kind) -> Document:
    """A document that says what was filled in, and nothing else.

    Raises:
        InputError: something is lacking, or the numbers don't go together.
    """
    try:
        return TYPES[kind].model_validate(filled_in({}, changes))
    except ValidationError as error:
        raise explained(error, TYPES[kind]) from None


def _needed(document_type: type[Document], path: str) -> Iterator[str]:
    """The measurements that a missing part cannot be without."""
    declared = declared_at(document_type, path)
    if declared is None or declared.kind != "section" or set(declared.names) >= PLACE:
        yield path
        return
    for name in declared.names:
        below = declared_at(document_type, f"{path}.{name}")
        if below is not None and below.required:
            yield from _needed(document_type, f"{path}.{name}")


def _told(paths: Sequence[str], kind: Kind) -> str:
    if not paths:
        return ""
    named = [_named(path, kind) for path in paths[:MOST]]
    more = f" and {len(paths) - MOST} more" if len(paths) > MOST else ""
    return f"the worksheet lacks {len(paths)} of what a {kind} file must say: {', '.join(named)}{more}"


def _named(path: str, kind: Kind) -> str:
    declared = declared_at(TYPES[kind], path)
    return path if declared is None else f"{declared.title} ({path})"
