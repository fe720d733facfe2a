"""Shell completion: a script that knows the commands, their options, and the samples."""

import argparse
from collections.abc import Mapping, Sequence

ZSH = "autoload -U +X compinit bashcompinit && compinit && bashcompinit\n"
"""What makes zsh understand a script for bash."""
SCRIPT = """\
_fitcalc() {{
    local words="{words}"
    if [ "$COMP_CWORD" -gt 1 ]; then
        case "${{COMP_WORDS[1]}}" in
{cases}
            *) words="" ;;
        esac
    fi
    COMPREPLY=($(compgen -W "$words" -- "${{COMP_WORDS[COMP_CWORD]}}"))
}}
complete -o default -o bashdefault -F _fitcalc fitcalc
"""


def completion(parser: argparse.ArgumentParser, shell: str, samples: Mapping[str, Sequence[str]]) -> str:
    """The completion script of a shell; files are completed besides.

    Args:
        parser: the whole command line.
        shell: "bash" or "zsh".
        samples: by the name that an argument has in the help, what it may be besides a file.
    """
    commands = _commands(parser)
    cases = "\n".join(
        f'            {name}) words="{_line(each, samples)}" ;;' for name, each in commands.items()
    )
    script = SCRIPT.format(words=" ".join((*commands, *_options(parser))), cases=cases)
    return ZSH + script if shell == "zsh" else script


def _commands(parser: argparse.ArgumentParser) -> Mapping[str, argparse.ArgumentParser]:
    found = (action.choices for action in parser._actions if isinstance(action, argparse._SubParsersAction))
    return next(found, {})


def _options(parser: argparse.ArgumentParser) -> list[str]:
    return [max(action.option_strings, key=len) for action in parser._actions if action.option_strings]


def _line(command: argparse.ArgumentParser, samples: Mapping[str, Sequence[str]]) -> str:
    words = _options(command)
    for action in command._actions:
        words += [*map(str, action.choices or ()), *samples.get(str(action.metavar), ())]
    return " ".join(dict.fromkeys(words))
