"""One walk over the same numbers: sheet, cut list, tables, the JSON record and the screen, for every sample."""

import csv
import io
import json

import pytest
from openpyxl import load_workbook
from PySide6.QtCore import QEvent
from sheet_jobs import PAIRS, fitted_job

from fitcalc.paper.page import A4, Words
from fitcalc.paper.pages import cut_list_pages, finding_pages, summary_pages
from fitcalc.paper.tables_file import csv_bytes, xlsx_bytes
from fitcalc.present.bench_parts import bench_number
from fitcalc.present.cut_list import CutRow, cut_rows
from fitcalc.present.findings import FindingRow, finding_rows
from fitcalc.present.wording import amount
from fitcalc.window.findings.model import FINDING
from fitcalc.window.program import open_window
from fitcalc.window.work import new_work, with_ref


def said_on(pages):
    return {mark.text for page in pages for mark in page.marks if isinstance(mark, Words)}


@pytest.mark.parametrize("pair", PAIRS, ids="-".join)
def test_lengths_to_cut_agree_everywhere(pair):
    job = fitted_job(*pair)
    record = job.record.model_dump(mode="json")
    rows = {(row.part, row.size): row for row in cut_rows(job.bench)}
    said = said_on(cut_list_pages(job, A4))
    for name, pedal in record["pedals"].items():
        for way in ("stand_off", "longer_arm"):
            if pedal[way] > 0.0:
                value = rows[f"{name}.{way}", "length to cut"].value
                assert value == pytest.approx(pedal["bar"][f"cut_{way}"], abs=0.05)
                assert bench_number(value) in said


@pytest.mark.parametrize("pair", PAIRS, ids="-".join)
def test_findings_agree_everywhere(pair):
    job = fitted_job(*pair)
    rows = finding_rows(job.record)
    lines = list(csv.DictReader(io.StringIO(csv_bytes(rows, FindingRow).decode("utf-8-sig"))))
    said = said_on(finding_pages(job, A4))
    for row, line, check in zip(rows, lines, job.record.checks, strict=True):
        assert (row.id, row.value, row.status) == (check.id, check.value, check.status)
        assert line["id"] == check.id
        assert (float(line["value"]) if line["value"] else None) == check.value
        assert amount(check.value, check.unit) in said


@pytest.mark.parametrize("pair", PAIRS, ids="-".join)
def test_workbook_reopens_with_the_same_rows(pair):
    job = fitted_job(*pair)
    cut, findings = cut_rows(job.bench), finding_rows(job.record)
    content = xlsx_bytes({"cut list": (CutRow, cut), "findings": (FindingRow, findings)}, {"date": "today"})
    book = load_workbook(io.BytesIO(content))
    values = [row[6] for row in book["cut list"].iter_rows(min_row=2, values_only=True)]
    assert values == [row.value for row in cut]
    values = [row[2] for row in book["findings"].iter_rows(min_row=2, values_only=True)]
    assert values == pytest.approx([row.value for row in findings], rel=1e-14)  # a workbook keeps 16 digits


def test_no_cell_is_taken_for_a_formula():
    row = CutRow("=1+1", "@SUM(A1)", 1, "-x", "+y", "s", -2.0, 0.1, None, None, "", "mm")
    line = csv_bytes([row], CutRow).decode("utf-8-sig").splitlines()[1]
    assert line.startswith("'=1+1,'@SUM(A1),1,'-x,'+y,s,-2.0")


@pytest.fixture(scope="module")
def window(qapp):
    opened = open_window(qapp, [])
    yield opened
    opened._close_now()
    opened.deleteLater()
    qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    qapp.processEvents()


@pytest.mark.parametrize("pair", PAIRS, ids="-".join)
def test_sheet_screen_and_json_say_the_same(window, pair):
    job = fitted_job(*pair)
    told = json.loads(job.record.model_dump_json())
    shown = findings_on_screen(window, job.after)
    said = said_on([*summary_pages(job, A4), *finding_pages(job, A4)])
    assert [finding.id for finding in shown] == [check["id"] for check in told["checks"]]
    for finding, check in zip(shown, told["checks"], strict=True):
        value = "" if check["value"] is None else amount(check["value"], check["unit"])
        assert (finding.status, finding.value) == (check["status"], value)
        assert value in said or not value
    assert strip_on_screen(window) == strip_told(told["setup"], window)
    for name, pedal in told["pedals"].items():
        assert amount(pedal["stand_off"], "mm") in said, name


def findings_on_screen(window, result):
    """What the list of findings shows of a rework, every status listed."""
    work = new_work(result.car, result.driver)
    for name in type(result.setup).model_fields:
        work = with_ref(work, f"setup.{name}", getattr(result.setup, name))
    window.session.show(work)
    window.session.finish_evaluation()
    window.findings.refresh()
    model = window.findings.model
    return [model.index(row).data(FINDING) for row in range(model.rowCount())]


def strip_on_screen(window):
    """Text of every box of the rework strip, by its ref."""
    window.rework.refresh()
    return {each.control.ref: each.box.text() for each in window.rework.controls}


def strip_told(setup, window):
    """What those boxes must say."""
    told = {}
    for each in window.rework.controls:
        value = setup
        for step in each.control.ref.split(".")[1:]:
            value = value[step]
        told[each.control.ref] = f"{value:.1f} {each.control.unit}"
    return told
