"""How good the body estimates are, worked out from the shipped figures: writes `docs/body.md`.

Run: python docs/body_validation.py
"""

import csv
from collections.abc import Iterable, Sequence
from functools import cache
from pathlib import Path
from textwrap import fill

import numpy as np

from fitcalc.body.comfort import motion_tables, posture_sets, single_seater
from fitcalc.body.dimensions import MASS, prior, reported, titles
from fitcalc.body.estimate import estimate_many
from fitcalc.body.posterior import column
from fitcalc.body.relations import relations
from fitcalc.body.survey import Sex
from fitcalc.units import Floats

PAGE = Path(__file__).with_name("body.md")
COMPARISON = Path(__file__).with_name("comparison")
SEXES: tuple[Sex, ...] = ("male", "female")
MEASURED = ("stature", MASS, "sittingheight", "buttockkneelength")
STEPS = ("stature", "mass", "sitting", "buttockknee")
HEADS = ("stature", "+ mass", "+ sitting height", "+ buttock-knee")
COUNT = 20_000
SEED = 20_140
JOINTS = ("recline", "hip", "knee", "ankle", "elbow", "shoulder")

Bodies = dict[str, Floats]
Judged = dict[str, tuple[float, float]]
Rows = Iterable[Sequence[str]]


def people(sex: Sex, count: int, seed: int = SEED) -> Bodies:
    """Bodies drawn from the published means and covariance of one sex, dimension -> (count,)."""
    model = prior(sex)
    draws = np.random.default_rng(seed).standard_normal((count, len(model.names)))
    table = (model.mean + draws @ np.linalg.cholesky(model.covariance).T) @ reported(model.names).T
    table[:, column(MASS)] = np.exp(table[:, column(MASS)])
    return dict(zip(titles(), table.T, strict=True))


def mixed_people(count: int) -> Bodies:
    """Half men, half women."""
    halves = [people(sex, count // 2, SEED + at) for at, sex in enumerate(SEXES)]
    return {name: np.concatenate([half[name] for half in halves]) for name in titles()}


def judge(bodies: Bodies, given: Sequence[str], sex: Sex | None) -> Judged:
    """Root mean square error and share inside the 90 % interval of every dimension not given."""
    result = estimate_many({name: bodies[name] for name in given}, sex, tape=0.0)
    truth = np.stack([bodies[name] for name in result.names], axis=1)
    low, high = result.interval()
    error = np.sqrt(((result.mean - truth) ** 2).mean(axis=0))
    inside = ((low <= truth) & (truth <= high)).mean(axis=0)
    figures = zip(result.names, error, inside, strict=True)
    return {name: (float(rmse), float(share)) for name, rmse, share in figures if name not in given}


def steps(bodies: Bodies, sex: Sex | None) -> list[Judged]:
    """The same people judged from one measurement, then two, three and four."""
    return [judge(bodies, MEASURED[:taken], sex) for taken in range(1, 5)]


@cache
def held_out() -> dict[tuple[str, str], dict[str, str]]:
    """The survey's own hold-out figures by sex and dimension."""
    with (COMPARISON / "ansur2_hold_out.csv").open(encoding="utf-8", newline="") as file:
        return {(row["sex"], row["dimension"]): row for row in csv.DictReader(file)}


@cache
def fractions() -> dict[str, float]:
    """Drillis & Contini's fractions of stature by dimension."""
    with (COMPARISON / "drillis_contini_1966.csv").open(encoding="utf-8", newline="") as file:
        return {row["dimension"]: float(row["fraction"]) for row in csv.DictReader(file)}


def survey_name(name: str) -> str:
    """What the published comparisons call a dimension; their sitting shoulder height is derived one way."""
    return "acromialheightsitting_A" if name == "acromialheightsitting" else name


def markdown(head: Sequence[str], rows: Rows) -> str:
    """A table in Markdown."""
    return "\n".join("| " + " | ".join(row) + " |" for row in (head, ["---"] * len(head), *rows))


def accuracy(sex: Sex, count: int) -> Rows:
    """RMSE and coverage on people drawn from the published figures, hold-out and fixed fractions beside."""
    bodies = people(sex, count)
    judged = steps(bodies, sex)
    for name, title in titles().items():
        if name not in MEASURED[:2]:
            told = held_out()[sex, survey_name(name)]
            known = zip(judged, STEPS, strict=True)
            errors = [
                f"{at[name][0]:.1f} ({float(told[f'rmse_{key}']):.1f})" if name in at else ""
                for at, key in known
            ]
            inside = [f"{100 * at[name][1]:.1f}" if name in at else "" for at in judged]
            yield [title, *errors, fixed(bodies, name), *inside]


def fixed(bodies: Bodies, name: str) -> str:
    """RMSE of one fixed fraction of stature, the fraction in brackets; empty where none is published."""
    fraction = fractions().get(survey_name(name))
    if fraction is None:
        return ""
    return f"{np.sqrt(np.mean((fraction * bodies['stature'] - bodies[name]) ** 2)):.1f} ({fraction:g})"


def coverage(count: int) -> Rows:
    """Least, mean and greatest share inside over all dimensions, and the hold-out's least and greatest."""
    for sex in SEXES:
        for head, key, at in zip(HEADS, STEPS, steps(people(sex, count), sex), strict=True):
            told = [row[f"cover_{key}"] for (who, _), row in held_out().items() if who == sex]
            known = [float(text) for text in told if text]
            yield [sex, head, *shares(at), f"{100 * min(known):.1f}", f"{100 * max(known):.1f}"]
    for head, at in zip(HEADS, steps(mixed_people(count), None), strict=True):
        yield ["not given", head, *shares(at), "", ""]


def shares(judged: Judged) -> list[str]:
    """Least, mean and greatest coverage, %."""
    inside = [100 * share for _, share in judged.values()]
    return [f"{value:.1f}" for value in (min(inside), float(np.mean(inside)), max(inside))]


def constants() -> Rows:
    """Every constant of the links."""
    for row in relations().values():
        figures = (f"{value:g}" for value in (row.men, row.women, row.spread))
        yield [row.quantity, *figures, row.unit, row.of, str(row.source)]


def span(ends: Sequence[float] | None) -> str:
    """Low and high, and the mean in brackets where there is one."""
    if ends is None:
        return ""
    return f"{ends[0]:g}-{ends[1]:g}" + (f" ({ends[2]:g})" if len(ends) > 2 else "")


def postures() -> Rows:
    """Published joint angles by author."""
    for row in posture_sets().values():
        yield [row.title, *(span(row.angles.get(joint)) for joint in JOINTS), row.basis, row.confidence]


def windows() -> Rows:
    """The single-seater's windows."""
    for name, row in single_seater().items():
        yield [name, row.quantity, span(row.recommended), span(row.permitted)]


def motion() -> Rows:
    """Published ranges of motion, women / men."""
    for row in motion_tables().values():
        for move in row.men:
            yield [
                row.document,
                move.replace("_", " "),
                f"{row.women[move]:g}",
                f"{row.men[move]:g}",
                row.confidence,
            ]


HOW = """A driver file gives stature and whatever else was measured. Every other dimension is the
conditional normal estimate on the published means, spreads and correlations of the ANSUR II survey (US Army
Natick TR-15/007, Gordon et al. 2014: 4082 men, 1986 women, aged 17 to 58), one model per sex, mass as its
logarithm. Sex left out: both models, weighed by how likely each makes the measurements. A measured value
stays as measured and carries the tape's tolerance. Sitting shoulder height was not measured in the survey;
it is the mean of two ways to derive it, with 12 mm of scatter, because the two differ by 5.9 +- 12.4 mm
(men) and 3.5 +- 11.2 mm (women)."""

LIMITS = """What it does not do: children and bodies more than three standard deviations off the survey are
estimated by extrapolation, and the result says so. Very heavy bodies (body mass index beyond the 97.5th
percentile) scatter more than the intervals say: in the survey their breadths and depths came out 3 to 10 mm
larger, with 72 to 85 % inside. Populations differ: given stature and mass alone, sitting height was off by
+5, -24 and +15 mm for White, Black and Asian men. Measure sitting height: it removes most of that, and cuts
the error of eye, shoulder and knee heights by a third to a half. The interval of sitting height, and of
what follows from it, stays honest only for people like those surveyed."""

ACCURACY = """RMSE in mm on people drawn from the published means and covariance ({count} per sex), in
brackets the survey's own hold-out: ten random 70/30 splits of the raw data, published figures, not rerun
here. The two agree because the survey is nearly normal. Beside them one fixed fraction of stature (Drillis
& Contini 1966, the fraction in brackets; the biacromial, hip and knee fractions mean other landmarks, which
is part of their error). Right: share inside the 90 % interval, %, on the drawn people. The hold-out's
sitting shoulder height is derived one way only, without the scatter of a direct measurement, so its error
is smaller."""

LINKS = """Each constant with its spread (one standard deviation of the relation) and source. Constants in
mm hold for the survey's mean body of that sex and grow in proportion to what they are "of", so that a body
scaled as a whole has scaled joints. Sex left out takes the mean of both. No published source gives a hard-
shell hip point, a lap strap or a crotch strap in the body's own terms: those rows are design inference."""

ANGLES = """Published sets, degrees, mean in brackets where people were observed. Most were taken from
memory of the papers: check the paper before quoting one."""

SINGLE = """The reclined single-seater's windows are inference: no published joint-angle data exist for such
cars."""


def page(count: int = COUNT) -> str:
    """The whole page."""
    head = [
        "dimension",
        *(f"RMSE {step}" for step in HEADS),
        "fixed fraction",
        *(f"inside, {step}" for step in HEADS),
    ]
    parts = (
        "# The body: from a few tape measurements to joints",
        wrap(
            "Written by `docs/body_validation.py` from the figures that ship with the program: run it again."
        ),
        "## How it works",
        wrap(HOW),
        wrap(LIMITS),
        "## Accuracy",
        wrap(ACCURACY.format(count=count)),
        "### Men",
        markdown(head, accuracy("male", count)),
        "### Women",
        markdown(head, accuracy("female", count)),
        "## Coverage of the 90 % intervals, %",
        markdown(
            ["sex", "given", "least", "mean", "greatest", "hold-out least", "hold-out greatest"],
            coverage(count),
        ),
        "## Links: from outside dimensions to joints",
        wrap(LINKS),
        markdown(["what", "men", "women", "spread", "unit", "of", "source"], constants()),
        "## Joint angles",
        wrap(ANGLES),
        markdown(["set", *JOINTS, "basis", "known"], postures()),
        wrap(SINGLE),
        markdown(["angle", "what", "recommended", "permitted"], windows()),
        "How far joints move, degrees from standing straight:",
        markdown(["table", "movement", "women", "men", "known"], motion()),
    )
    return "\n\n".join(parts) + "\n"


def wrap(text: str) -> str:
    """A paragraph in lines of the page's width."""
    return fill(" ".join(text.split()), 118)


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
