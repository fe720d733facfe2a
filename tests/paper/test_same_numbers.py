"""One walk over the same numbers: sheet, cut list, tables and the JSON record, for every sample."""

import csv
import io

import pytest
from openpyxl import load_workbook
from sheet_jobs import PAIRS, fitted_job

from fitcalc.paper.page import A4, Words
from fitcalc.paper.pages import cut_list_pages, finding_pages
from fitcalc.paper.tables_file import csv_bytes, xlsx_bytes
from fitcalc.present.bench_parts import bench_number
from fitcalc.present.cut_list import CutRow, cut_rows
from fitcalc.present.findings import FindingRow, finding_rows
from fitcalc.present.wording import amount


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
