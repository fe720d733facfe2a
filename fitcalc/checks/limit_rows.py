"""One limit set as its file says it: rows to judge by, and rules to tick by hand."""

from functools import cached_property
from typing import Annotated, Literal, Self

import numpy as np
from pydantic import StringConstraints, model_validator

from fitcalc.checks.quantities import quantities
from fitcalc.documents import fields
from fitcalc.documents.fields import Document, part
from fitcalc.documents.messages import nearest_hint
from fitcalc.sources import Confidence, Source
from fitcalc.units import Floats

Text = Annotated[str, StringConstraints(min_length=1)]
BOUNDS = ("low", "high", "recommended_low", "recommended_high")
WIDEST = (-1_000_000, 1_000_000)


class Sourced(Document):
    """Something a publication says; one without a source does not load."""

    id: Text = part("id", "Name of this row, unlike any other in the set.")
    document: Text = part("document", 'Title of the publication, or "common practice" or "this project".')
    clause: str = part("clause", "Clause, table, page or figure.", "")
    edition: str = part("edition", "Edition or year.", "")
    confidence: Confidence = part("confidence", "How well the row is known.")
    note: str = part("note", "Anything worth remembering about it.", "")

    @cached_property
    def source(self) -> Source:
        """Where the row comes from."""
        return Source(
            document=self.document, clause=self.clause, edition=self.edition, confidence=self.confidence
        )

    @model_validator(mode="after")
    def _published_is_cited(self) -> Self:
        published = self.confidence.startswith("seen") or self.confidence == "second-hand"
        if published and not (self.clause and self.edition):
            raise ValueError(f"row {self.id} is {self.confidence}, so it must give clause and edition")
        return self


class Rule(Sourced):
    """What geometry cannot judge: to be ticked by hand."""

    text: Text = part("text", "What must be so, as one sentence.")


class Limit(Sourced):
    """Bounds on one quantity.

    Attributes:
        when: holds only for a seat that is upright, or only for one that is reclined; such rows come in
            pairs.
    """

    quantity: Text = part("quantity", "Key of what is limited, as `fitcalc limits` lists them.")
    low: float | None = fields.quantity("low", "Least that must hold.", "", WIDEST, None)
    high: float | None = fields.quantity("high", "Most that must hold.", "", WIDEST, None)
    recommended_low: float | None = fields.quantity(
        "recommended low", "Least that should hold.", "", WIDEST, None
    )
    recommended_high: float | None = fields.quantity(
        "recommended high", "Most that should hold.", "", WIDEST, None
    )
    unit: Text = part("unit", "Unit of the bounds; the quantity's own.")
    applies_to: Text = part("applies to", "Cars or drivers that the row is written for.")
    measured: Text = part("measured", "How the publication measures it.")
    when: Literal["upright", "reclined"] | None = part("when", "Seat that the row is written for.", None)

    @cached_property
    def bounds(self) -> tuple[Floats | None, ...]:
        """The four bounds in the order of `BOUNDS`, each `(1,)`."""
        values = (getattr(self, name) for name in BOUNDS)
        return tuple(None if value is None else np.array([value]) for value in values)

    @property
    def bounded(self) -> tuple[bool, ...]:
        """Which of the four bounds the row gives."""
        return tuple(getattr(self, bound) is not None for bound in BOUNDS)

    @model_validator(mode="after")
    def _known_quantity(self) -> Self:
        known = quantities()
        if self.quantity not in known:
            near = nearest_hint(self.quantity, list(known)) or "see `fitcalc limits` for what is"
            raise ValueError(f"row {self.id} limits {self.quantity}, which is not measured; {near}")
        unit = known[self.quantity].unit
        if self.unit != unit:
            raise ValueError(f"row {self.id} has the unit {self.unit}, but {self.quantity} is in {unit}")
        return self

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not any(self.bounded):
            raise ValueError(f"row {self.id} must give at least one bound: {', '.join(BOUNDS)}")
        for low, high in (("low", "high"), ("recommended_low", "recommended_high")):
            least, most = getattr(self, low), getattr(self, high)
            if least is not None and most is not None and least > most:
                raise ValueError(f"row {self.id} has {low} {least:g} above {high} {most:g}")
        return self


class LimitFile(Document):
    """One file of limits."""

    id: Text = part("id", "Name of the set, as it stands beside every finding.")
    title: Text = part("title", "What the set is, in words.")
    editions: tuple[Text, ...] = part(
        "editions", "Publications and editions that the rows were taken from.", ()
    )
    extends: str = part("extends", "A set that comes with the program and that this one adds to.", "")
    leave_out: tuple[str, ...] = part("leave out", "Rows of that set that do not hold here, by id.", ())
    missing: tuple[Text, ...] = part("missing", "What was looked for and not found.", ())
    limit: tuple[Limit, ...] = part("limit", "The rows to judge by.", ())
    checklist: tuple[Rule, ...] = part("checklist", "What is ticked by hand.", ())
