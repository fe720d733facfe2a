"""One value of a document, read or replaced by its path, as in `pedals.brake.arm` or `harness.crotch.0.x`."""

from typing import Any, TypeVar

from pydantic import ValidationError

from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.fields import Document
from fitcalc.documents.messages import explained, nearest_hint
from fitcalc.errors import InputError

Kind = TypeVar("Kind", bound=Document)


def value_at(document: Document, path: str) -> Any:
    """The value, section or list at a path.

    Raises:
        InputError: there is nothing of that name, or the part it belongs to is not given.
    """
    holder: Any = document
    for count, step in enumerate(path.split(".")):
        holder = _entry(type(document), path.split(".")[:count], holder, step)
    return holder


def field_at(document_type: type[Document], path: str) -> Declared:
    """Title, unit, description and bounds of the field at a path.

    Raises:
        InputError: such documents have no such field.
    """
    declared = declared_at(document_type, path)
    if declared is None:
        above, _, name = path.rpartition(".")
        raise _unknown(path, name, _names(document_type, above))
    return declared


def with_value(document: Kind, path: str, value: Any) -> Kind:
    """The document with one value replaced; every part off the path is the same object.

    Every section on the way is validated with the new value in it.

    Args:
        document: stays as it is.
        path: of the value, section or list to replace.
        value: the new one; None takes an optional part away. A section may be given as a dict.

    Raises:
        InputError: the document would not be valid; its field is the full path.
    """
    field_at(type(document), path)
    replaced: Kind = _replaced(type(document), [], document, path.split("."), value)
    return replaced


def _replaced(root: type[Document], above: list[str], holder: Any, steps: list[str], value: Any) -> Any:
    if not steps:
        return value
    head, *rest = steps
    below = _entry(root, above, holder, head)
    new = _replaced(root, [*above, head], below, rest, value)
    if isinstance(holder, tuple):
        return (*holder[: int(head)], new, *holder[int(head) + 1 :])
    return _with_field(root, above, holder, head, new)


def _with_field(root: type[Document], above: list[str], section: Document, name: str, value: Any) -> Document:
    try:
        checked = type(section).model_validate({**dict(section), name: value})
    except ValidationError as error:
        raise explained(error, root, above) from None
    # model_copy alone validates nothing, and the checked section alone has new lists off the path
    return section.model_copy(update={name: _kept(getattr(section, name), value, getattr(checked, name))})


def _kept(old: Any, given: Any, checked: Any) -> Any:
    """A checked list with the old entries that were given again in place of their copies."""
    if not (isinstance(old, tuple) and isinstance(given, tuple)):
        return checked
    known = {id(entry) for entry in old}
    return tuple(a if id(a) in known else b for a, b in zip(given, checked, strict=True))


def _entry(root: type[Document], above: list[str], holder: Any, step: str) -> Any:
    path = ".".join([*above, step])
    if isinstance(holder, tuple):
        if step.isdecimal() and int(step) < len(holder):
            return holder[int(step)]
        raise InputError(path, "not there", f"the list has {len(holder)} entries, counted from 0")
    if isinstance(holder, Document) and step in type(holder).model_fields:
        return getattr(holder, step)
    if holder is None:
        raise InputError(
            path, "not there", f"{'.'.join(above)} is not given", f"give {'.'.join(above)} first"
        )
    raise _unknown(path, step, _names(root, ".".join(above)))


def _names(document_type: type[Document], path: str) -> tuple[str, ...]:
    declared = declared_at(document_type, path) if path else None
    return declared.names if declared else () if path else tuple(document_type.model_fields)


def _unknown(path: str, name: str, names: tuple[str, ...]) -> InputError:
    allowed = f"the fields here are {', '.join(names)}" if names else "it has no fields"
    return InputError(path, "not a known field", nearest_hint(name, names) or allowed)
