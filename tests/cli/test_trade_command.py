"""`fitcalc trade` as a person uses it: table, record and picture tell the same."""

import io

import jsonschema
import pytest
from pypdf import PdfReader

from fitcalc.cli import main
from fitcalc.documents.samples import sample_cars, sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver, save
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.sweep import required_room
from fitcalc.present.trade_record import TradeRecord
from tests.cli.printed import printed, printed_json

MAGIC = {".pdf": b"%PDF", ".svg": b"<?xml", ".png": b"\x89PNG"}


@pytest.fixture(scope="module")
def robin(tmp_path_factory):
    path = tmp_path_factory.mktemp("trade") / "map.pdf"
    return *printed_json("trade", "hillclimb", "robin", "--out", path), path.read_bytes()


def text_of(content):
    return " ".join(page.extract_text() for page in PdfReader(io.BytesIO(content)).pages)


@pytest.mark.parametrize("car", sample_cars())
def test_record_follows_its_schema(car):
    status, record = printed_json("trade", car, "otto")
    jsonschema.validate(record, TradeRecord.model_json_schema())
    assert status in (0, 1)
    assert [point["name"] for point in record["points"]] == ["as found", "recommended", "chosen"]


def test_range_ends_where_its_limit_does(robin):
    """Worked out again by `evaluate`: holds at the end of the range, is broken a millimetre below it."""
    record = robin[1]
    reach = next(each for each in record["ranges"] if each["x"] == 60.0)
    car, driver = (
        load(sample_path(name)) for load, name in ((load_car, "hillclimb"), (load_driver, "robin"))
    )
    rooms = [_room(car, driver, record["setup"], reach["low"] + more, reach["below"]) for more in (0.0, -1.0)]
    assert rooms[0] >= 0.0 > rooms[1]


def _room(car, driver, setup, stand_off, label):
    changed = setup | {"brake": setup["brake"] | {"stand_off": stand_off}}
    checks = evaluate(car, driver, Setup.model_validate(changed)).checks
    return required_room(next(check for check in checks if check.label == label))[0]


def test_table_tells_the_ranges_of_the_record(robin):
    _, text = printed("trade", "hillclimb", "robin")
    for each in robin[1]["ranges"]:
        wanted = f"{each['low']:g} to {each['high']:g} mm" if each["low"] is not None else "nothing"
        place = "as found" if each["x"] == 0.0 else f"{each['x']:+g} mm"
        assert any(line.startswith(place) and wanted in line for line in text.splitlines())


def test_page_tells_the_limits_of_the_record(robin):
    page = " ".join(text_of(robin[2]).split())
    for limit in robin[1]["limits"]:
        mark = "~" if limit["interpolated"] else ""
        assert f"{limit['number']}{mark} {limit['label']}, {limit['wanted']}" in page
    assert "recommended, chosen" in page
    assert "CAUTIONS" in page


def test_same_map_every_time(robin, tmp_path):
    again = tmp_path / "again.pdf"
    assert printed_json("trade", "hillclimb", "robin", "--out", again)[1] == robin[1]
    assert again.read_bytes() == robin[2]


@pytest.mark.parametrize("ending", MAGIC)
def test_picture_is_what_its_name_says(tmp_path, ending):
    path = tmp_path / f"map{ending}"
    _, text = printed("trade", "student", "robin", "--out", path)
    assert text.startswith(str(path))
    assert path.read_bytes().startswith(MAGIC[ending])


def test_second_pair_can_be_chosen():
    _, record = printed_json("trade", "student", "robin", "--pair", "box_travel", "throttle.stand_off")
    assert (record["x"]["path"], record["y"]["path"]) == ("box_travel", "throttle.stand_off")
    assert record["without"] == ["brake"]


def test_own_rework_is_the_chosen_point(tmp_path):
    path = tmp_path / "rework.toml"
    path.write_text("box_travel = 40.0\n[brake]\nstand_off = 20.0\n", encoding="utf-8")
    _, record = printed_json("trade", "student", "robin", "--setup", path)
    assert [(point["x"], point["y"]) for point in record["points"]][2] == (40.0, 20.0)


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        (["--pair", "seat_travel", "nose"], "seat_raise"),
        (["--pair", "recline", "recline"], "two different"),
        (["--out", "map.gif"], ".svg"),
    ],
)
def test_bad_input_is_one_sentence_and_status_two(capsys, words, wanted):
    assert main(["trade", "hillclimb", "robin", *words]) == 2
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)
    assert wanted in told.err


def test_what_could_not_be_checked_is_told_and_not_taken_for_good(tmp_path):
    car = load_car(sample_path("student")).model_copy(update={"harness": None})
    path = tmp_path / "car.toml"
    save(car, path)
    _, record = printed_json("trade", path, "robin")
    _, text = printed("trade", path, "robin", "--out", tmp_path / "map.pdf")
    told = f"{record['unmade']} checks could not be made for want of a measurement"
    assert record["unmade"] > 1
    assert told in text
    assert told in " ".join(text_of((tmp_path / "map.pdf").read_bytes()).split())


def test_filled_part_is_not_told_to_pass_where_something_else_is_broken(tmp_path):
    _, record = printed_json("trade", "student", "otto", "--out", tmp_path / "map.pdf")
    page = " ".join(text_of((tmp_path / "map.pdf").read_bytes()).split())
    assert record["elsewhere"]
    assert "would pass, but for what is named below" in page
    assert all(broken["label"] in page for broken in record["elsewhere"])
