"""The JSON Schema of each kind of file."""

from typing import Any

from fitcalc.documents.as_built import History, Readings
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.fields import Document
from fitcalc.documents.messages import nearest_hint
from fitcalc.documents.setup import Setup
from fitcalc.errors import InputError

KINDS: dict[str, type[Document]] = {
    "car": Car,
    "driver": Driver,
    "setup": Setup,
    "effort": Effort,
    "history": History,
    "readings": Readings,
}
DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema_for(kind: str) -> dict[str, Any]:
    """The JSON Schema of a kind of file, as "car" or "history".

    Each field carries its title, description, bounds and, as `unit`, its unit.

    Raises:
        InputError: there is no such kind.
    """
    if kind not in KINDS:
        raise InputError("kind", kind, f"must be one of {', '.join(KINDS)}", nearest_hint(kind, tuple(KINDS)))
    return {"$schema": DIALECT, **KINDS[kind].model_json_schema()}
