"""`fitcalc shared` and `fitcalc coverage` as a person uses them."""

import jsonschema
import pytest

from fitcalc.cli import main
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_setup
from fitcalc.present.coverage_record import CoverageRecord
from fitcalc.present.shared_car_record import SharedCarRecord
from tests.cli.printed import printed, printed_json

LITTLE = """\
[seat_raise]
low = 0
high = 0
[wheel_spacer]
high = 0
[shoulder_anchor_raise]
low = 0
high = 0
[longer_arm]
high = 0
"""
"""Only the pedal box and the bars may change: what keeps the search short."""


@pytest.fixture(scope="module")
def little(tmp_path_factory):
    path = tmp_path_factory.mktemp("effort") / "little.toml"
    path.write_text(LITTLE, encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def both(little):
    return printed_json("shared", "student", "robin", "otto", "--effort", little)


def test_shared_record_follows_its_schema(both):
    status, record = both
    jsonschema.validate(record, SharedCarRecord.model_json_schema())
    assert status == (0 if record["fits_all"] else 1)


def test_drivers_differ_in_what_they_set_only(both):
    quick = both[1]["quick"]
    fixed = [
        {path: value for path, value in each["setup"].items() if path not in quick}
        for each in both[1]["drivers"]
    ]
    assert quick == ["box_travel"]
    assert fixed[0] == fixed[1]


def test_table_tells_what_each_sets(both, little, tmp_path):
    _, text = printed("shared", "student", "robin", "otto", "--effort", little, "--save", tmp_path)
    for each, name in zip(both[1]["drivers"], ("robin", "otto"), strict=True):
        assert each["words"][0] in text
        assert load_setup(tmp_path / f"{name}.toml").model_dump() == each["setup"]
    assert both[1]["verdict"] in text


def test_pads_of_one_s_own_are_no_longer_fixed(little, both):
    _, record = printed_json("shared", "student", "robin", "otto", "--effort", little, "--pads")
    assert {"brake.stand_off", "throttle.stand_off"} <= set(record["quick"])
    assert record["minutes"] <= both[1]["minutes"]
    assert "brake" not in " ".join(change["words"] for change in record["fixed"])


def test_one_driver_alone_is_sent_to_solve(little):
    _, text = printed("shared", "student", "robin", "--effort", little)
    assert "fitcalc solve" in text


@pytest.fixture(scope="module")
def men(tmp_path_factory):
    path = tmp_path_factory.mktemp("coverage") / "men.pdf"
    return *printed_json("coverage", "student", "--sex", "male", "--bodies", "40", "--out", path), path


def test_coverage_record_follows_its_schema_and_adds_up(men):
    status, record, path = men
    jsonschema.validate(record, CoverageRecord.model_json_schema())
    (group,) = record["groups"]
    assert status == 0
    assert sum(each["bodies"] for each in group["classes"]) == group["bodies"] == 40
    fitting = sum(each["bodies"] * each["fits"] for each in group["classes"])
    assert fitting == pytest.approx(group["fits"] * group["bodies"])
    assert path.read_bytes().startswith(b"%PDF")


def test_coverage_table_tells_who_is_turned_away(men):
    _, text = printed("coverage", "student", "--sex", "male", "--bodies", "40")
    first = men[1]["groups"][0]["turned_away"][0]
    line = next(line for line in text.splitlines() if first["label"] in line)
    assert line.startswith(f"{100 * first['share']:.0f} %")
    assert "Set for each body: pedal box." in text


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        (["coverage", "nowhere"], "nowhere"),
        (["coverage", "student", "--out", "who.gif"], ".png"),
        (["shared", "student", "robin", "inez"], "inez"),
    ],
)
def test_bad_input_is_one_sentence_and_status_two(capsys, words, wanted):
    assert main(words) == 2
    told = capsys.readouterr()
    assert (told.out, told.err.count("\n")) == ("", 1)
    assert wanted in told.err


def test_insert_of_one_s_own_is_told(tmp_path, little):
    """Nothing but the rail, the bars and the insert may change; the shorter driver wants his back padded."""
    car = tmp_path / "car.toml"
    text = sample_path("hillclimb").read_text(encoding="utf-8")
    car.write_text(text.replace("[seat]\n", "[seat]\nback_insert_max = 60.0\n"), encoding="utf-8")
    _, record = printed_json("shared", car, "robin", "otto", "--effort", little)
    assert "back_insert" in record["quick"]
    sets = [change for change in record["drivers"][0]["sets"] if change["path"] == "back_insert"]
    assert sets[0]["work"] == "bolt_on"
    _, text = printed("shared", car, "robin", "otto", "--effort", little)
    assert sets[0]["words"] in text
    assert "no insert behind the back" in text
