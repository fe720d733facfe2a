"""`fitcalc body`, `limits` and `schema`: what the calculation takes for granted, to read."""

import json

from fitcalc.commands.asking import COMPUTED, Commands, Options, ask_driver, command, driver_of
from fitcalc.commands.printing import print_tables

KINDS = ("car", "driver", "setup", "history", "readings", "result", "pedals", "straps", "built")


def add(commands: Commands) -> None:
    """The three commands."""
    body = command(commands, "body", _body, "what is taken for the driver's body, measured or estimated")
    ask_driver(body)
    body.add_argument("--json", action="store_true", help="print the table as JSON")
    command(commands, "limits", _limits, "every check, what it measures, and which rules limit it")
    schema = command(commands, "schema", _schema, "JSON Schema of a file or of the result")
    schema.add_argument("kind", choices=KINDS)


def _body(options: Options) -> int:
    from fitcalc.present.body_table import body_remarks, body_table, links_table

    driver = driver_of(options)
    table = body_table(driver)
    if options.json:
        print(json.dumps([dict(zip(table.header, row, strict=True)) for row in table.rows], indent=2))
        return COMPUTED
    for remark in body_remarks(driver):
        print(remark, end="\n\n")
    print_tables([table, links_table(driver)])
    return COMPUTED


def _limits(options: Options) -> int:
    from fitcalc.present.limits_tables import limits_tables

    print_tables(limits_tables())
    return COMPUTED


def _schema(options: Options) -> int:
    from fitcalc.documents.schema import schema_for
    from fitcalc.present.as_built_record import BuiltRecord
    from fitcalc.present.parts import Record
    from fitcalc.present.pedal_record import PedalsRecord
    from fitcalc.present.record import ResultRecord
    from fitcalc.present.strap_record import StrapsRecord

    records: dict[str, type[Record]] = {
        "result": ResultRecord,
        "pedals": PedalsRecord,
        "straps": StrapsRecord,
        "built": BuiltRecord,
    }
    record = records.get(options.kind)
    schema = schema_for(options.kind) if record is None else record.model_json_schema()
    print(json.dumps(schema, indent=2, ensure_ascii=False))
    return COMPUTED
