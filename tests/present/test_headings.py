"""What heads the tables of a record, and what stands below a plot, on made-up records."""

import pytest

from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car
from fitcalc.present.certainty_chart import odds_chart
from fitcalc.present.certainty_record import AgainRecord, CertaintyRecord, OddsRecord
from fitcalc.present.certainty_tables import again_title, certainty_heading
from fitcalc.present.change_words import told
from fitcalc.present.coverage_record import CoverageRecord, GroupRecord
from fitcalc.present.coverage_tables import coverage_heading
from fitcalc.present.shared_car_record import SharedCarRecord
from fitcalc.present.shared_car_tables import fixed_table, shared_car_heading
from fitcalc.present.solve_record import ChanceRecord, ReworkRecord, SolveRecord
from fitcalc.present.solve_tables import solve_heading
from fitcalc.present.trade_chart import trade_chart
from fitcalc.present.trade_record import AxisRecord, RangeRecord, TradeRecord
from fitcalc.present.trade_tables import ranges_table, trade_heading
from fitcalc.present.wanted import BrokenRecord

CAR = load_car(sample_path("hillclimb"))
COMMON = {"car": "Test car", "rules": "club", "unmade": 0, "cautions": []}
LOW_HELMET = BrokenRecord(
    id="head.hoop_line", label="helmet below the line over the hoops", value=40.0, unit="mm",
    wanted="at least 50 mm", lacking=10.0, movable=True, remedy="",
)  # fmt: skip
STOPPED = "before its end"
UNMADE = "2 checks could not be made for want of a measurement"


def solved(**given):
    best = ReworkRecord(setup=Setup(), minutes=0.0, passes=True, changes=[], broken=[])
    plain = {
        "driver": "Robin", "verdict": "", "passes": True, "best": best, "others": [], "conflict": [], "ways": [],
        "chance": None, "uncertain": [], "allowed": [], "checks": [], "complete": True,
    }  # fmt: skip
    return SolveRecord(**COMMON | plain | given)


def sure(**given):
    plain = {
        "driver": "Robin", "setup": Setup(), "draws": 20_000, "few": 2_000, "all_hold": 0.9, "lengths": [],
        "needed": [], "figures": [], "odds": [], "never": [], "again": [], "complete": True,
    }  # fmt: skip
    return CertaintyRecord(**COMMON | plain | given)


def odds(passes):
    return OddsRecord(
        id="head.hoop_line", label="helmet", wanted="at least 50 mm", passes=passes, draws=2_000
    )


def traded(**given):
    axis = AxisRecord(
        path="seat_travel", title="seat travel", sense="positive forward", unit="mm", low=0, high=40, step=20
    )
    plain = {
        "driver": "Robin", "setup": Setup(), "x": axis, "y": axis, "share": 0.4, "points": [], "ranges": [],
        "limits": [], "region": [[(0, 0), (20, 0), (20, 20)]], "everywhere": [], "elsewhere": [], "without": [],
        "complete": True,
    }  # fmt: skip
    return TradeRecord(**COMMON | plain | given)


def group(**given):
    plain = {
        "sex": "male", "bodies": 300, "fits": 0.5, "stature": None, "classes": [], "turned_away": [],
        "regardless": [], "complete": True,
    }  # fmt: skip
    return GroupRecord(**plain | given)


def test_a_probability_that_is_reached_is_told_beside_the_one_asked_for():
    text = solve_heading(solved(chance=ChanceRecord(asked=0.9, reached=0.93, enough=True)))
    assert "passes with a probability of 93 %; 90 % were asked for" in text


def test_a_probability_that_nothing_reaches_is_not_claimed():
    text = solve_heading(solved(chance=ChanceRecord(asked=0.9, reached=0.7, enough=False)))
    assert "No rework was found that passes with 90 %; this one, the likeliest, does with 70 %" in text


@pytest.mark.parametrize(
    ("heading", "made"),
    [
        (solve_heading, solved),
        (certainty_heading, sure),
        (trade_heading, traded),
        (lambda record: coverage_heading(record), lambda **given: covered(group(**given))),
    ],
    ids=["solve", "certainty", "trade", "coverage"],
)
def test_what_was_stopped_says_so(heading, made):
    assert STOPPED in heading(made(complete=False))
    assert STOPPED not in heading(made())


def covered(*groups, **given):
    return CoverageRecord(**COMMON | {"setup": Setup(), "adjustments": [], "groups": list(groups)} | given)


@pytest.mark.parametrize(
    ("heading", "made"),
    [
        (solve_heading, solved),
        (certainty_heading, sure),
        (lambda record: "\n".join(odds_chart(record).notes), sure),
        (trade_heading, traded),
        (coverage_heading, covered),
        (shared_car_heading, lambda **given: shared(**given)),
    ],
    ids=["solve", "certainty", "odds", "trade", "coverage", "shared"],
)
def test_checks_that_could_not_be_made_are_counted(heading, made):
    assert UNMADE in heading(made(unmade=2))
    assert "could not be made" not in heading(made())


def shared(**given):
    plain = {
        "verdict": "",
        "fits_all": True,
        "minutes": 0,
        "fixed": [],
        "quick": [],
        "drivers": [],
        "complete": True,
    }
    return SharedCarRecord(**COMMON | plain | given)


def test_a_shared_car_that_needs_nothing_says_to_leave_it():
    assert fixed_table(shared()).rows == (("nothing: leave holes and bars as found", "", ""),)


def test_what_is_broken_in_every_draw_is_named():
    assert "Broken in every draw: helmet below the line over the hoops." in certainty_heading(
        sure(never=[LOW_HELMET])
    )


@pytest.mark.parametrize(("share", "settles"), [(0.7, True), (0.2, False)])
def test_measuring_again_is_not_oversold(share, settles):
    again = AgainRecord(path="measurements.stature", title="stature", share=share, most=share, most_in="knee")
    assert ("try it on in the car" not in again_title(sure(again=[again]))) is settles


def test_checks_that_hold_nearly_always_are_counted_below_the_odds():
    assert any(
        "1 more pass with over 99 %" in note for note in odds_chart(sure(odds=[odds(0.5), odds(0.999)])).notes
    )
    assert not any("more pass" in note for note in odds_chart(sure(odds=[odds(0.5)])).notes)


def test_what_is_broken_for_everybody_is_named_with_who_fits():
    text = coverage_heading(covered(group(regardless=["helmet below the line over the hoops"])))
    assert "Broken for all men alike, and left out of that: helmet below the line over the hoops." in text


@pytest.mark.parametrize("kind", ["everywhere", "elsewhere"])
def test_a_map_that_passes_in_part_names_what_the_two_cannot_mend(kind):
    text = trade_heading(traded(**{kind: [LOW_HELMET]}))
    assert "but for limits that the two cannot mend" in text
    assert "helmet below the line over the hoops, at least 50 mm" in text
    assert [each.text for each in trade_chart(traded(**{kind: [LOW_HELMET]})).legend] == [
        "would pass, but for what is named below"
    ]


def test_a_map_where_nothing_passes_says_so():
    assert "No combination of the two passes." in trade_heading(traded(region=[], share=0.0))


def test_a_map_with_pedals_left_off_names_them():
    assert "The clutch's and the throttle's own limits" in trade_heading(
        traded(without=["clutch", "throttle"])
    )


def test_a_single_place_that_passes_is_no_range():
    spans = [RangeRecord(x=0.0, low=low, high=20.0, below="", above="", nearest="") for low in (10.0, 20.0)]
    assert [row[1] for row in ranges_table(traded(ranges=spans)).rows] == ["10 to 20 mm", "20 mm"]


@pytest.mark.parametrize(
    ("path", "value", "order"),
    [
        ("wheel_spacer", 20.0, "put a 20 mm spacer behind the steering wheel"),
        ("shoulder_anchor_raise", 15.0, "set both shoulder anchors 15 mm higher"),
        ("shoulder_anchor_raise", -15.0, "set both shoulder anchors 15 mm lower"),
        ("box_travel", -10.0, "slide the pedal box 10 mm forward"),
        ("brake.longer_arm", 10.0, "lengthen the brake arm by 10 mm"),
    ],
)
def test_changes_are_orders_at_the_bench(path, value, order):
    assert told(path, value, CAR) == order


def test_a_seat_that_slides_freely_has_no_holes_to_count():
    free = CAR.model_copy(update={"rails": CAR.rails.model_copy(update={"kind": "continuous"})})
    assert "hole" in told("seat_travel", 40.0, CAR)
    assert "hole" not in told("seat_travel", 40.0, free)
