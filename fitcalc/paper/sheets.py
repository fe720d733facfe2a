"""The whole set for the bench as files in one folder: sheets, tables, parts, and the documents they belong to."""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from fitcalc.documents.atomic import replace_file
from fitcalc.documents.fields import Document
from fitcalc.documents.toml_text import fresh
from fitcalc.errors import InputError
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.paper.dxf import dxf_bytes
from fitcalc.paper.job import Job
from fitcalc.paper.page import Paper
from fitcalc.paper.pages import sheet_pages
from fitcalc.paper.pdf import pdf_bytes
from fitcalc.paper.svg import svg_bytes
from fitcalc.paper.tables_file import csv_bytes, xlsx_bytes
from fitcalc.present.cut_list import CutRow, cut_rows
from fitcalc.present.findings import FindingRow, finding_rows

CONTENTS = "contents.json"
"""Names what the last set wrote, so that a new set takes away parts that are no longer to be made."""
SUFFIXES = (".dxf", ".svg")


def sheet_files(job: Job, paper: Paper) -> dict[str, bytes]:
    """Every file of a set by name; nothing is written."""
    cut, findings = cut_rows(job.bench), finding_rows(job.record)
    about = _about(job)
    tables = {"cut list": (CutRow, cut), "findings": (FindingRow, findings)}
    files = {
        "sheets.pdf": pdf_bytes(sheet_pages(job, paper), job.about, paper, "Bench sheets"),
        "cut_list.csv": csv_bytes(cut, CutRow),
        "findings.csv": csv_bytes(findings, FindingRow),
        "tables.xlsx": xlsx_bytes(tables, about),
        "result.json": job.record.model_dump_json(indent=2).encode(),
    }
    for part in job.bench.parts:
        if part.drawn:
            files[f"{part.id}.dxf"] = dxf_bytes(part, job.about.digest)
            files[f"{part.id}.svg"] = svg_bytes(part, job.about.digest)
    after = job.after
    named: dict[str, Document] = {"car": after.car, "driver": after.driver, "rework": after.setup}
    files |= {f"{name}.toml": fresh(document).encode() for name, document in named.items()}
    return files | {
        CONTENTS: json.dumps(about | {"files": sorted(files)}, indent=2, ensure_ascii=False).encode()
    }


def write_sheets(job: Job, paper: Paper, folder: Path, progress: Progress = unheeded) -> list[Path]:
    """Writes a whole set; all is made before the first file is replaced, and each file is replaced in one step.

    Parts that an earlier set in the same folder had and this one has not are taken away.

    Args:
        job: what the sheets show.
        paper: to print on.
        folder: to write to; made where it is not there.
        progress: told when all is made; where it answers no, nothing is written and nothing is handed back.

    Raises:
        InputError: the folder can't be made or written.
    """
    files = sheet_files(job, paper)
    if not progress(1.0):
        return []
    make_folder(folder)
    old = _written_before(folder)
    for name, content in files.items():
        replace_file(folder / name, content)
    for name in old - files.keys():
        _remove(folder / name)
    return [folder / name for name in files]


def _about(job: Job) -> dict[str, str]:
    about = {"subject": job.about.subject, "date": job.about.date, "documents": job.about.digest}
    return about | {"lengths": "mm", "angles": "deg"}


def make_folder(folder: Path) -> None:
    """Makes a folder where there is none; InputError where it can't be."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(
            str(folder), "", f"the folder can't be made: {reason}", "choose another folder"
        ) from None


def _written_before(folder: Path) -> set[str]:
    """Parts that the last set named; nothing where its list can't be read."""
    try:
        listed: Any = json.loads((folder / CONTENTS).read_bytes())
    except (OSError, ValueError):
        return set()
    named = listed.get("files") if isinstance(listed, Mapping) else None
    names = named if isinstance(named, list) else []
    return {
        name
        for name in names
        if isinstance(name, str) and name.endswith(SUFFIXES) and Path(name).name == name
    }


def _remove(path: Path) -> None:
    try:
        path.unlink(missing_ok=True)
    except OSError as error:
        told = f"belongs to an older rework and can't be removed: {error.strerror}"
        raise InputError(str(path), "", told, "remove it") from None
