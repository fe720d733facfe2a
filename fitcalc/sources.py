"""Where a figure comes from."""

from typing import Literal

from pydantic import BaseModel, ConfigDict

Confidence = Literal[
    "seen in text",
    "seen in figure",
    "second-hand",
    "from memory",
    "derived",
    "common practice, no source",
    "design inference",
]


OWN = ("common practice", "this project")
"""Not published: what follows is a reason, not a clause."""


class Source(BaseModel):
    """One origin of one figure.

    Attributes:
        document: title of the publication, or "common practice" or "this project".
        clause: clause, table, page or equation.
        edition: edition or year.
        confidence: how well the figure is known; shown wherever the figure is shown.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    document: str
    clause: str = ""
    edition: str = ""
    confidence: Confidence

    @property
    def citation(self) -> str:
        """Where it is to be found, without how well it is known."""
        own = self.document in OWN and self.clause
        parts = (
            f"{self.document}:" if own else self.document,
            self.clause,
            self.edition and f"({self.edition})",
        )
        return " ".join(part for part in parts if part)

    def __str__(self) -> str:
        known = "" if self.confidence.startswith("seen") else f" [{self.confidence}]"
        return self.citation + known
