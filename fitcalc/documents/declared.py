"""What is declared about a field, found by its path: for forms, messages and exports."""

from dataclasses import dataclass
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from annotated_types import Ge, Le
from pydantic.fields import FieldInfo

from fitcalc.documents.fields import Document

Kind = Literal["number", "text", "choice", "section", "list"]


@dataclass(frozen=True)
class Declared:
    """One field as declared in its document.

    Attributes:
        path: from the document down, as in `pedals.brake.arm`; digits count the entries of a list from 0.
        title: what a form calls it.
        description: how to measure it.
        kind: what may stand there.
        unit: of a number; empty otherwise.
        low: least number allowed.
        high: greatest number allowed.
        choices: every value allowed; empty when `kind` is not "choice".
        names: the fields of a section; empty when `kind` is not "section".
        required: must be given.
        default: what holds when it is not given; None when nothing does.
    """

    path: str
    title: str
    description: str
    kind: Kind
    unit: str
    low: float | None
    high: float | None
    choices: tuple[Any, ...]
    names: tuple[str, ...]
    required: bool
    default: Any


def declared_at(document_type: type[Document], path: str) -> Declared | None:
    """What is declared at a path; None where the document has no such field."""
    field: FieldInfo | None = FieldInfo(annotation=document_type, title=document_type.__name__)
    for step in path.split("."):
        field = _below(field, step)
        if field is None:
            return None
    return None if field is None else _declared(path, field)


def bare(annotation: Any) -> Any:
    """The type itself, without "or nothing" and without its bounds."""
    origin = get_origin(annotation)
    if origin is Annotated:
        return bare(get_args(annotation)[0])
    if origin in (Union, UnionType):
        return bare(next(kind for kind in get_args(annotation) if kind is not type(None)))
    return annotation


def _below(field: FieldInfo | None, step: str) -> FieldInfo | None:
    kind = bare(field.annotation) if field else None
    if isinstance(kind, type) and issubclass(kind, Document):
        return kind.model_fields.get(step)
    if get_origin(kind) is tuple and step.isdecimal():
        return _entry(get_args(kind), int(step))
    return None


def _entry(kinds: tuple[Any, ...], index: int) -> FieldInfo | None:
    if kinds[-1] is Ellipsis:
        return FieldInfo.from_annotation(kinds[0])
    return FieldInfo.from_annotation(kinds[index]) if index < len(kinds) else None


def _declared(path: str, field: FieldInfo) -> Declared:
    kind = bare(field.annotation)
    extra = field.json_schema_extra
    return Declared(
        path=path,
        title=field.title or path.rpartition(".")[2],
        description=field.description or "",
        kind=_kind(kind),
        unit=str(extra.get("unit", "")) if isinstance(extra, dict) else "",
        low=next((_plain(bound.ge) for bound in field.metadata if isinstance(bound, Ge)), None),
        high=next((_plain(bound.le) for bound in field.metadata if isinstance(bound, Le)), None),
        choices=get_args(kind) if get_origin(kind) is Literal else (),
        names=tuple(kind.model_fields) if _is_section(kind) else (),
        required=field.is_required(),
        default=None if field.is_required() else field.default,
    )


def _plain(bound: Any) -> float:
    return float(bound)


def _is_section(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, Document)


def _kind(kind: Any) -> Kind:
    if _is_section(kind):
        return "section"
    if get_origin(kind) is Literal:
        return "choice"
    if get_origin(kind) is tuple:
        return "list"
    return "text" if kind is str else "number"
