"""`fitcalc body` and `limits`: what the calculation takes for granted, to read."""

import json

from fitcalc.commands.asking import COMPUTED, Commands, Options, ask_driver, command, driver_of
from fitcalc.commands.printing import print_tables


def add(commands: Commands) -> None:
    """Both commands."""
    body = command(commands, "body", _body, "what is taken for the driver's body, measured or estimated")
    ask_driver(body)
    body.add_argument("--json", action="store_true", help="print the table as JSON")
    command(commands, "limits", _limits, "every check, what it measures, and which rules limit it")


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
