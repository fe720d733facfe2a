"""`fitcalc certainty` as a person uses it, and the same numbers on the bench sheets."""

import csv
import io

import jsonschema
import pytest
from pypdf import PdfReader

from fitcalc.cli import main
from fitcalc.present.certainty_record import CertaintyRecord
from fitcalc.present.certainty_tables import percent
from tests.cli.printed import printed, printed_json

FEWER = ("--draws", "300")


@pytest.fixture(scope="module")
def robin(tmp_path_factory):
    path = tmp_path_factory.mktemp("sure") / "sure.pdf"
    return *printed_json("certainty", "hillclimb", "robin", *FEWER, "--out", path), path.read_bytes()


def test_record_follows_its_schema(robin):
    jsonschema.validate(robin[1], CertaintyRecord.model_json_schema())
    assert robin[0] == 0


def test_lengths_lie_in_their_intervals_and_angles_have_one(robin):
    lengths = robin[1]["lengths"]
    assert {each["part"] for each in lengths} == {"clutch.stand_off", "brake.stand_off", "throttle.stand_off"}
    assert all(each["low"] <= each["value"] <= each["high"] for each in lengths)
    angles = {each["id"] for each in robin[1]["figures"] if each["unit"] == "deg"}
    assert angles >= {"posture.knee_pressed.brake", "harness.shoulder_left.side_angle"}


def test_all_together_are_no_likelier_than_the_least_likely(robin):
    odds = [each["passes"] for each in robin[1]["odds"]]
    assert odds == sorted(odds)
    assert robin[1]["all_hold"] <= odds[0]


def test_table_and_page_tell_the_odds_of_the_record(robin):
    _, text = printed("certainty", "hillclimb", "robin", *FEWER)
    page = " ".join(" ".join(page.extract_text() for page in PdfReader(io.BytesIO(robin[2])).pages).split())
    for each in robin[1]["odds"][:10]:
        line = next(line for line in text.splitlines() if each["label"] in line and each["wanted"] in line)
        assert line.startswith(percent(each["passes"]))
        assert f"{each['label']}, {each['wanted']}" in page


def test_same_seed_same_record_another_seed_another(robin):
    assert printed_json("certainty", "hillclimb", "robin", *FEWER)[1] == robin[1]
    other = printed_json("certainty", "hillclimb", "robin", *FEWER, "--seed", "2")[1]
    assert other["all_hold"] != robin[1]["all_hold"] or other["odds"] != robin[1]["odds"]


def test_sheets_with_certainty_have_the_same_lengths(tmp_path):
    main(["sheets", "student", "robin", "--certainty", "--out", str(tmp_path)])
    rows = list(csv.DictReader((tmp_path / "cut_list.csv").read_text("utf-8-sig").splitlines()))
    cut = {row["part"]: (float(row["low"]), float(row["high"])) for row in rows if row["basis"] == "90 %"}
    _, record = printed_json("certainty", "student", "robin")
    assert {each["part"]: (each["low"], each["high"]) for each in record["lengths"]} == cut
    text = " ".join(page.extract_text() for page in PdfReader(tmp_path / "sheets.pdf").pages)
    assert f"All of them together hold with {percent(record['all_hold'])}" in text


@pytest.mark.parametrize("draws", ["5", "-1", "many"])
def test_draws_have_bounds(capsys, draws):
    with pytest.raises(SystemExit) as stopped:
        main(["certainty", "hillclimb", "robin", f"--draws={draws}"])
    assert stopped.value.code == 2
    assert "100 to 2000000" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("share", "words"),
    [(0.0, "0 %"), (0.004, "under 1 %"), (0.5, "50 %"), (0.996, "over 99 %"), (1.0, "100 %")],
)
def test_what_is_not_quite_sure_is_not_told_as_sure(share, words):
    assert percent(share) == words
