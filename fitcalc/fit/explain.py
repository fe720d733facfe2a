"""Which figures of body and car would explain that readings differ from the prediction, and by how much.

Weighted least squares: of all shifts that bring the prediction to the readings within what the tools promise, the one
that asks least of every figure, counted in its own uncertainty. It says what would explain the difference. It does not
say what is so: several other shifts would do nearly as well, and only measuring again tells.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.predicted import Readout, Work
from fitcalc.fit.suspects import EVEN, Suspect, Suspects, suspects
from fitcalc.units import Floats

LEAST_ERROR = 0.05
"""No tool is taken as better than this, mm or deg: design inference."""


@dataclass(frozen=True, eq=False)
class Shift:
    """One figure that would explain something.

    Attributes:
        together: by how much it would be off if all figures share the difference.
        alone: by how much if it alone were off; 0 where it moves none of the readings.
        explains: part of the difference that it would then explain, 0 to 1, readings weighed by their tools.
    """

    suspect: Suspect
    together: float
    alone: float
    explains: float

    @property
    def strain(self) -> float:
        """The shared shift, in the figure's own standard uncertainties."""
        return abs(self.together) / self.suspect.u


@dataclass(frozen=True, eq=False)
class Explanation:
    """What would explain m differences.

    Attributes:
        shifts: of every figure that has a say, the most strained first.
        left: what would then still differ, worked out anew with all shifts in place, `(m,)`.
        surprise: size of the differences against what uncertainties and tools let expect; about 1 is ordinary.
    """

    shifts: tuple[Shift, ...]
    left: Floats
    surprise: float


def explain(work: Work, read: Readout, measured: Floats, errors: Floats) -> Explanation:
    """What would bring the prediction to the readings.

    Args:
        work: as made.
        read: names the m figures.
        measured: the readings, `(m,)`.
        errors: what each tool can promise, plus or minus, `(m,)`.

    Source: generalised least squares with the prior covariance of the inputs (textbook, from memory); slopes by
        differences of one standard uncertainty to each side (JCGM 100:2008 5.1.3, note 2).
    """
    known = suspects(work)
    u = np.array([each.u for each in known.each])
    predicted, slopes = _slopes(work, known, read, u)
    difference = measured - predicted
    tools = np.maximum(errors, LEAST_ERROR) * EVEN
    crossed = known.covariance @ slopes.T
    expected = slopes @ crossed + np.diag(tools**2)
    solved = np.linalg.solve(expected, difference)
    together = crossed @ solved
    moved = _read(work, known, read, together[:, None])[:, 0]
    return Explanation(
        shifts=_shifts(known, together, slopes / tools[:, None], difference / tools),
        left=measured - moved,
        surprise=float(np.sqrt(difference @ solved / len(difference))),
    )


def _slopes(work: Work, known: Suspects, read: Readout, u: Floats) -> tuple[Floats, Floats]:
    """The prediction, `(m,)`, and how each figure moves it, `(m, k)`, in one evaluation."""
    steps = np.diag(u)
    values = _read(work, known, read, np.concatenate([np.zeros((len(u), 1)), steps, -steps], axis=1))
    up, down = values[:, 1 : 1 + len(u)], values[:, 1 + len(u) :]
    return values[:, 0], np.divide(up - down, 2.0 * u, out=np.zeros_like(up), where=u > 0.0)


def _read(work: Work, known: Suspects, read: Readout, shifts: Floats) -> Floats:
    car, links, made = known.cases(shifts)
    rows = read(evaluate(car, work.driver, made, work.rules, links))
    return np.broadcast_to(rows, (len(rows), shifts.shape[1]))


def _shifts(known: Suspects, together: Floats, slopes: Floats, difference: Floats) -> tuple[Shift, ...]:
    """Each figure's part; slopes `(m, k)` and difference `(m,)` in standard uncertainties of the tools."""
    pull, grip = difference @ slopes, np.sum(slopes**2, axis=0)
    alone = np.divide(pull, grip, out=np.zeros_like(pull), where=grip > 0.0)
    whole = float(difference @ difference)
    explains = alone * pull / whole if whole > 0.0 else np.zeros_like(pull)
    rows = zip(known.each, together, alone, explains, strict=True)
    found = [
        Shift(each, float(a), float(b), float(c)) for each, a, b, c in rows if each.named and each.u > 0.0
    ]
    return tuple(sorted(found, key=lambda shift: -shift.strain))
