"""`fitcalc schema`: the JSON Schema of every kind of file and of what every command prints with `--json`."""

import json
from importlib import import_module

from fitcalc.commands.asking import COMPUTED, Commands, Options, command

FILES = ("car", "driver", "setup", "effort", "history", "readings")
RECORDS = {
    "result": ("record", "ResultRecord"),
    "solve": ("solve_record", "SolveRecord"),
    "trade": ("trade_record", "TradeRecord"),
    "certainty": ("certainty_record", "CertaintyRecord"),
    "shared": ("shared_car_record", "SharedCarRecord"),
    "coverage": ("coverage_record", "CoverageRecord"),
    "pedals": ("pedal_record", "PedalsRecord"),
    "straps": ("strap_record", "StrapsRecord"),
    "built": ("as_built_record", "BuiltRecord"),
}
"""By command: the module of `present` and the record in it, read only when it is asked for."""


def add(commands: Commands) -> None:
    """The command."""
    schema = command(commands, "schema", _schema, "JSON Schema of a file or of what a command prints")
    schema.add_argument("kind", choices=(*FILES, *RECORDS))


def _schema(options: Options) -> int:
    from fitcalc.documents.schema import schema_for

    if options.kind in FILES:
        schema = schema_for(options.kind)
    else:
        module, name = RECORDS[options.kind]
        schema = getattr(import_module(f"fitcalc.present.{module}"), name).model_json_schema()
    print(json.dumps(schema, indent=2, ensure_ascii=False))
    return COMPUTED
