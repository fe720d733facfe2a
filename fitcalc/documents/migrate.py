"""Files of older formats, brought up to the present one.

A step changes a table of one format into the next one in place, with nothing but what a dict can do: the same step
works on the plain table that is read and on the laid-out text that is saved, where comments stay with their keys. A
step takes what it finds: a key that is missing or of the wrong type is left for the validation to name.
"""

from collections.abc import Callable, Mapping, MutableMapping
from types import MappingProxyType
from typing import Any

from fitcalc.documents.fields import Document

Table = MutableMapping[str, Any]
Step = Callable[[Table], None]

STEPS: Mapping[str, Mapping[int, Step]] = MappingProxyType(
    {"car": {}, "driver": {}, "setup": {}, "effort": {}, "history": {}, "readings": {}}
)
"""By kind of file and the format that a step starts from; every format below the present one has its step."""
FIRST = 1
"""The format of a file that names none."""


def is_older(table: Mapping[str, Any], present: int) -> bool:
    """Whether a file's format is one that there are steps from."""
    return FIRST <= table.get("format", FIRST) < present


def migrate(table: Table, kind: str, present: int) -> None:
    """Brings a table of an older format up to the present one, in place; any other stays as it is."""
    if not is_older(table, present):
        return
    for number in range(table.get("format", FIRST), present):
        STEPS[kind][number](table)
    table["format"] = present


def kind_of(document_type: type[Document]) -> str:
    """The kind of file that holds such documents, as "car" or "setup"."""
    return document_type.__name__.lower()


def present_format(document_type: type[Document]) -> int:
    """The format that such files have now."""
    present: int = document_type.model_fields["format"].default
    return present
