"""Documents on disk: read whole or refused with one sentence, written whole or not at all."""

import re
import tomllib
from pathlib import Path
from typing import Any, TypeVar

from pydantic import ValidationError

from fitcalc.documents.car import Car
from fitcalc.documents.content import MARK, content, content_if_there, decoded, require_size
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.fields import Document
from fitcalc.documents.messages import explained, path_text, shown
from fitcalc.documents.migrate import kind_of, migrate, present_format
from fitcalc.documents.setup import Setup
from fitcalc.documents.stamp import Stamp, stamp_of
from fitcalc.errors import InputError

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


def load_effort(path: Path | str) -> Effort:
    """What may be changed and what it costs, in a file; InputError with one sentence when there is none to be had."""
    return load(Effort, path)


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
    migrate(data, kind_of(document_type), present_format(document_type))
    try:
        return document_type.model_validate(data)
    except ValidationError as error:
        raise explained(error, document_type, where=where) from None


def load_stamped(document_type: type[Kind], path: Path | str) -> tuple[Kind, Stamp]:
    """The document in a file, and the stamp by which a later `save` notices that the file was changed.

    Raises:
        InputError: the file can't be read, or what it says can't be used.
    """
    where = Path(path)
    found = content(where)
    return parse(document_type, decoded(found, str(path)), str(path)), stamp_of(where, found)


def read_text(path: Path | str) -> str:
    """The text of a file, as it stands but for a byte order mark."""
    return decoded(content(Path(path)), str(path))


def save(document: Document, path: Path | str, expected: Stamp | None = None) -> Stamp:
    """Writes a document, keeping comments, order and layout of a file that is already there.

    Only values that changed are touched; defaults that were not in the file stay out of it. The file is
    replaced in one step: whatever fails, it holds either all of the old or all of the new. Where the text changed,
    the previous version is kept beside it, under the same name with `~`.

    Args:
        document: to write.
        path: where; a link is followed.
        expected: the file as it was last read or written; None takes it as it is.

    Returns:
        The stamp of what was written.

    Raises:
        InputError: the file can't be written, or was changed since, or can't be updated without loss.
    """
    from fitcalc.documents.atomic import replace_file

    where, name = Path(path), str(path)
    before = content_if_there(where)
    if before is not None and expected is not None and not expected.holds(before):
        hint = "open it again to see what changed, or save under another name; nothing was written"
        raise InputError(name, "", "was changed by another program since it was opened", hint)
    after = _rewritten(document, before or b"", name)
    require_size(after, name)
    replace_file(where, after, keeps_previous=after != before)
    return stamp_of(where, after)


def _rewritten(document: Document, before: bytes, name: str) -> bytes:
    """The bytes of a file that held others, made to hold the document."""
    from fitcalc.documents.toml_text import fresh, updated

    if not before.removeprefix(MARK).strip():
        return fresh(document).encode()
    text, old = _updatable(type(document), decoded(before, name), name)
    after = updated(text, old, document)
    if parse(type(document), after, name) != document:
        raise InputError(name, "", "is laid out in a way that can't be updated", "save under another name")
    return (MARK if before.startswith(MARK) else b"") + after.encode()


def _updatable(document_type: type[Kind], text: str, name: str) -> tuple[str, Kind]:
    """A file's text in the present format, and what it says."""
    from fitcalc.documents.toml_text import migrated

    try:
        old = parse(document_type, text, name)
        return migrated(text, document_type), old
    except InputError as error:
        hint = "mend it first, or save under another name; nothing was written"
        raise InputError(
            name, "", f"can't be updated, because {error.sentence().rstrip('.')}", hint
        ) from None


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
    wanted = kind_of(document_type)
    if TELLING.get(wanted) in data:
        return
    for kind, section in TELLING.items():
        if section in data and kind != wanted:
            raise InputError(
                name, f"{_one(kind)} file", f"must be {_one(wanted)} file", f"name the {wanted} file here"
            )


def _one(kind: str) -> str:
    return f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"


def _require_format(document_type: type[Document], data: dict[str, Any], where: str) -> None:
    given, known = data.get("format", 1), present_format(document_type)
    if isinstance(given, bool) or not isinstance(given, int):
        raise InputError("format", shown(given) + where, f"must be the whole number {known}")
    if given > known:
        hint = "update fitcalc to open it; the file is left as it is"
        raise InputError("format", shown(given) + where, f"this fitcalc reads formats up to {known}", hint)
