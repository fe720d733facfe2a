"""A document as TOML text: fresh, or worked into a text that a person laid out and commented."""

import re
import tomllib
from collections.abc import Iterator
from typing import Any

from fitcalc.documents.fields import Document, Point, SideMark
from fitcalc.documents.migrate import is_older, kind_of, migrate, present_format

WIDEST_ROW = 100
"""Most characters of a list that is written on one line."""


def fresh(document: Document) -> str:
    """The text of a document that has no file yet."""
    import tomlkit

    text = tomlkit.document()
    text.append("format", tomlkit.item(present_format(type(document))))
    _fill(text, document)
    return tomlkit.dumps(text)


def updated(text: str, old: Document, new: Document) -> str:
    """A text that held `old`, made to hold `new`: comments, order and everything unchanged stay.

    Args:
        text: TOML, as it stands in the file.
        old: what the text says.
        new: what it shall say, of the same type.
    """
    import tomlkit

    if old == new:
        return text
    table = tomlkit.parse(text)
    _change(table, old, new)
    return _with_line_ends_of(text, tomlkit.dumps(table))


def migrated(text: str, document_type: type[Document]) -> str:
    """A text of an older format in the present one; comments, order and everything unchanged stay."""
    import tomlkit

    present = present_format(document_type)
    if not is_older(tomllib.loads(text), present):
        return text
    table = tomlkit.parse(text)
    migrate(table, kind_of(document_type), present)
    return _with_line_ends_of(text, tomlkit.dumps(table))


def _with_line_ends_of(before: str, after: str) -> str:
    only_crlf = "\r\n" in before and not re.search(r"(?<!\r)\n", before)
    return re.sub(r"(?<!\r)\n", "\r\n", after) if only_crlf else after


def plain(value: Any) -> Any:
    """A number or text as it is written; whole numbers without a point."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


def stated(document: Document) -> Iterator[tuple[str, Any]]:
    """Name and value of each field that is required or differs from its default."""
    for name, field in type(document).model_fields.items():
        value = getattr(document, name)
        if field.is_required() or value != field.default:
            yield name, value


def _fill(table: Any, document: Document) -> None:
    parts = [(name, _item(value)) for name, value in stated(document)]
    for name, item in sorted(parts, key=lambda part: _is_headed(part[1])):
        table.append(name, item)


def _is_headed(item: Any) -> bool:
    from tomlkit.items import AoT, Table

    return isinstance(item, (AoT, Table))


def _item(value: Any, inline: bool = False) -> Any:
    import tomlkit

    if isinstance(value, tuple):
        return _list(value, inline)
    if not isinstance(value, Document):
        return tomlkit.item(plain(value))
    if inline or isinstance(value, (Point, SideMark)):
        return _inline(value)
    table = tomlkit.table()
    _fill(table, value)
    return table


def _inline(document: Document) -> Any:
    import tomlkit

    table = tomlkit.inline_table()
    for name, value in stated(document):
        table.append(name, _item(value, inline=True))
    return table


def _list(values: tuple[Any, ...], inline: bool) -> Any:
    import tomlkit

    if not inline and values and isinstance(values[0], Document) and not isinstance(values[0], Point):
        tables = tomlkit.aot()
        for value in values:
            tables.append(_item(value))
        return tables
    array = tomlkit.array()
    for value in values:
        array.append(_item(value, inline=True))
    return array.multiline(len(array.as_string()) > WIDEST_ROW and not inline)


def _change(table: Any, old: Document, new: Document) -> None:
    for name in type(new).model_fields:
        before, after = getattr(old, name), getattr(new, name)
        if before != after:
            _change_entry(table, name, before, after)


def _change_entry(table: Any, name: str | int, before: Any, after: Any) -> None:
    if after is None:
        del table[name]
    elif isinstance(name, str) and name not in table:
        table[name] = _item(after, inline=_is_inline(table))
    elif isinstance(before, Document):
        _change(table[name], before, after)
    elif isinstance(before, tuple):
        _change_list(table[name], before, after)
    else:
        keeps_point = isinstance(table[name], float) and isinstance(after, float)
        table[name] = after if keeps_point else _item(after, inline=_is_inline(table))


def _is_inline(table: Any) -> bool:
    from tomlkit.items import Array, InlineTable

    return isinstance(table, (Array, InlineTable))


def _change_list(rows: Any, before: tuple[Any, ...], after: tuple[Any, ...]) -> None:
    """Changes a list between the entries that stay the same at its start and at its end."""
    start = _same(before, after)
    end = _same(before[start:][::-1], after[start:][::-1])
    both = min(len(before), len(after)) - end
    for index in range(start, both):
        if before[index] != after[index]:
            _change_row(rows, index, before[index], after[index])
    for _ in range(len(before) - len(after)):
        del rows[both]
    for index in range(both, len(after) - end):
        rows.insert(index, _item(after[index], inline=_is_inline(rows)))


def _change_row(rows: Any, index: int, before: Any, after: Any) -> None:
    if isinstance(before, Document):
        _change(rows[index], before, after)
    else:
        rows[index] = _item(after, inline=True)


def _same(before: tuple[Any, ...], after: tuple[Any, ...]) -> int:
    """How many entries are the same from the start."""
    pairs = enumerate(zip(before, after, strict=False))
    return next((index for index, (a, b) in pairs if a != b), min(len(before), len(after)))
