"""Documents on disk: read whole or refused with one sentence, written whole or not at all."""

import re
import stat
import tomllib
from pathlib import Path
from typing import Any, TypeVar

from pydantic import ValidationError

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.fields import Document
from fitcalc.documents.messages import explained, path_text, shown
from fitcalc.documents.setup import Setup
from fitcalc.errors import InputError

LARGEST = 1_000_000
"""Most bytes that are read, so that any file is read or refused soon; three lines of 10,000 points fit."""
DEEPEST = 100
"""Most dots in one key; the time that TOML takes to read a key grows with their square."""
TELLING = {"car": "pedals", "driver": "measurements"}
"""The section by which a kind of file is known."""

Kind = TypeVar("Kind", bound=Document)


def load_car(path: Path | str) -> Car:
    """The car in a file; InputError with one sentence when there is none to be had."""
    return load(Car, path)


def load_driver(path: Path | str) -> Driver:
    """The driver in a file; InputError with one sentence when there is none to be had."""
    return load(Driver, path)


def load_setup(path: Path | str) -> Setup:
    """The rework in a file; InputError with one sentence when there is none to be had."""
    return load(Setup, path)


def load(document_type: type[Kind], path: Path | str) -> Kind:
    """The document in a file.

    Raises:
        InputError: the file can't be read, or what it says can't be used.
    """
    return parse(document_type, read_text(path), str(path))


def parse(document_type: type[Kind], text: str, name: str) -> Kind:
    """The document in a text; `name` is what sentences call the text."""
    data, where = _table(text, name), f" in {Path(name).name}"
    _require_kind(document_type, data, name)
    _require_format(document_type, data, where)
    try:
        return document_type.model_validate(data)
    except ValidationError as error:
        raise explained(error, document_type, where=where) from None


def read_text(path: Path | str) -> str:
    """The text of a file, as it stands but for a byte order mark."""
    return _decoded(_content(Path(path)), str(path))


def save(document: Document, path: Path | str) -> None:
    """Writes a document, keeping comments, order and layout of a file that is already there.

    Only values that changed are touched; defaults that were not in the file stay out of it. The file is
    replaced in one step: whatever fails, it holds either all of the old or all of the new.

    Raises:
        InputError: the file can't be written, or what is there can't be updated without loss.
    """
    from fitcalc.documents.atomic import replace_file
    from fitcalc.documents.toml_text import fresh, updated

    where = Path(path)
    before = _content(where) if where.exists() else b""
    text = _decoded(before, str(path)) if before.strip() else ""
    if not text:
        replace_file(where, fresh(document).encode())
        return
    old = _updatable(type(document), text, str(path))
    after = updated(text, old, document)
    if parse(type(document), after, str(path)) != document:
        raise InputError(
            str(path), "", "is laid out in a way that can't be updated", "save under another name"
        )
    mark = b"\xef\xbb\xbf" if before.startswith(b"\xef\xbb\xbf") else b""
    replace_file(where, mark + after.encode())


def _updatable(document_type: type[Kind], text: str, name: str) -> Kind:
    try:
        return parse(document_type, text, name)
    except InputError as error:
        hint = "mend it first, or save under another name; nothing was written"
        raise InputError(
            name, "", f"can't be updated, because {error.sentence().rstrip('.')}", hint
        ) from None


def _content(path: Path) -> bytes:
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            kind = "a directory" if path.is_dir() else "not a file on a disk"
            raise InputError(str(path), kind, "must be a file", "name a .toml file")
        with path.open("rb") as file:
            content = file.read(LARGEST + 1)
    except FileNotFoundError:
        raise InputError(str(path), "missing", "there is no such file", "check name and folder") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(
            shown(str(path)), "unreadable", reason, "check its permissions and its name"
        ) from None
    if len(content) > LARGEST:
        raise InputError(
            str(path), "too large", f"must be {LARGEST / 1e6:g} MB or less", "is this the right file?"
        )
    return content


def _decoded(content: bytes, name: str) -> str:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise InputError(
            name, "not UTF-8 text", f"line {line} holds other bytes", "save it as UTF-8"
        ) from None
    if not text.strip():
        raise InputError(name, "empty", "must hold a document", "start from one of the samples")
    return text


def _table(text: str, name: str) -> dict[str, Any]:
    deep = InputError(name, "not usable TOML", "it is nested too deeply", "a document needs four levels")
    if any(piece.replace("..", "").count(".") > DEEPEST for piece in re.split(r"[\n,=\[\]{}]", text)):
        raise deep
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise deep from None
    except ValueError as error:
        raise _syntax_error(str(error), text, name) from None


def _syntax_error(told: str, text: str, name: str) -> InputError:
    place = re.search(r"\(at line (\d+), column (\d+)\)", told)
    at = f"line {place[1]}, column {place[2]}" if place else "at its end"
    reason = shown(re.sub(r" \(at .*\)$", "", told, flags=re.DOTALL)).strip('"').replace('\\"', '"')
    if place and re.match(r"Cannot (overwrite|declare|mutate)", told):
        key = _key_at(text, int(place[1]))
        return InputError(key, f"given twice in {Path(name).name}", f"{at} repeats it", "keep one of the two")
    return InputError(
        name, "not TOML", f"{at}: {reason}", "mend that line; texts stand in quotes, decimals have a point"
    )


def _key_at(text: str, line: int) -> str:
    lines = text.splitlines()[:line]
    if (head := lines[-1].strip()).startswith("["):
        return shown(head.partition("]")[0].strip("[] ")).strip('"')
    heads = (found[1].strip() for here in reversed(lines) if (found := re.match(r"\s*\[+([^\]]+)\]", here)))
    return ".".join(filter(None, (next(heads, ""), path_text([lines[-1].partition("=")[0].strip()]))))


def _require_kind(document_type: type[Document], data: dict[str, Any], name: str) -> None:
    wanted = document_type.__name__.lower()
    if TELLING.get(wanted) in data:
        return
    for kind, section in TELLING.items():
        if section in data and kind != wanted:
            raise InputError(
                name, f"a {kind} file", f"must be a {wanted} file", f"name the {wanted} file here"
            )


def _require_format(document_type: type[Document], data: dict[str, Any], where: str) -> None:
    given, known = data.get("format", 1), document_type.model_fields["format"].default
    if isinstance(given, bool) or not isinstance(given, int):
        raise InputError("format", shown(given) + where, f"must be the whole number {known}")
    if given > known:
        hint = "update fitcalc to open it; the file is left as it is"
        raise InputError("format", shown(given) + where, f"this fitcalc reads formats up to {known}", hint)
