"""Numbers in the units that the person reads; the documents stay in mm, degrees and kg."""

import re
from dataclasses import dataclass

from fitcalc.present import wording
from fitcalc.units import KG_PER_POUND, MM_PER_INCH

NUMBER = r"-?\d+(?:\.\d+)?"
AMOUNT = re.compile(
    rf"(?P<first>{NUMBER})(?: to (?P<last>{NUMBER}))? mm\b"
    rf"(?: \N{{PLUS-MINUS SIGN}}(?P<error>{NUMBER}))?(?: \((?P<other>{NUMBER})\))?",
    re.ASCII,
)
"""A length in words, or a span of two, perhaps with how sure it is, or with another one in brackets."""
DECIMALS = {"mm": 1, "in": 3, "kg": 1, "lb": 1, "deg": 1, "-": 3}
"""Decimals of a measured value; results are rounded by `present.wording`."""


@dataclass(frozen=True)
class Shown:
    """Which units are shown."""

    inches: bool = False
    pounds: bool = False

    def unit(self, unit: str) -> str:
        """The unit that stands beside a value stored in `unit`."""
        return {"mm": "in" if self.inches else "mm", "kg": "lb" if self.pounds else "kg"}.get(unit, unit)

    def value(self, stored: float, unit: str) -> float:
        """A stored value as it is shown."""
        return stored / self._factor(unit)

    def stored(self, value: float, unit: str) -> float:
        """A shown value as it is stored."""
        return value * self._factor(unit)

    def typed(self, stored: float, unit: str) -> str:
        """A stored value as one would type it: no more digits than it has."""
        shown = f"{self.value(stored, unit):.{DECIMALS.get(self.unit(unit), 3)}f}"
        return shown.rstrip("0").rstrip(".") if "." in shown else shown

    def rounded(self, stored: float, unit: str) -> str:
        """A result without its unit."""
        return wording.number(self.value(stored, unit), self.unit(unit))

    def amount(self, stored: float | None, unit: str) -> str:
        """A result with its unit."""
        return wording.amount(self._or_none(stored, unit), self.unit(unit))

    def signed(self, stored: float, unit: str) -> str:
        """A result with its sign and unit."""
        return wording.signed(self.value(stored, unit), self.unit(unit))

    def span(self, low: float | None, high: float | None, unit: str) -> str:
        """An allowed range in words."""
        return wording.span(self._or_none(low, unit), self._or_none(high, unit), self.unit(unit))

    def words(self, text: str) -> str:
        """A sentence with its lengths in the units shown."""
        return AMOUNT.sub(self._length, text) if self.inches else text

    def lengths(self, text: str) -> str:
        """A text of which every number is a length, in the units shown."""
        return re.sub(NUMBER, lambda found: self.rounded(float(found[0]), "mm"), text)

    def _length(self, found: re.Match[str]) -> str:
        first, last, error, other = (
            None if found[name] is None else self.rounded(float(found[name]), "mm")
            for name in ("first", "last", "error", "other")
        )
        span = first if last is None else f"{first} to {last}"
        more = "" if error is None else f" \N{PLUS-MINUS SIGN}{error}"
        return f"{span} {self.unit('mm')}{more}{'' if other is None else f' ({other})'}"

    def _or_none(self, stored: float | None, unit: str) -> float | None:
        return None if stored is None else self.value(stored, unit)

    def _factor(self, unit: str) -> float:
        if unit == "mm" and self.inches:
            return MM_PER_INCH
        return KG_PER_POUND if unit == "kg" and self.pounds else 1.0
