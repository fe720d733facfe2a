"""The one error that a user sees."""


class InputError(Exception):
    """Something the user gave cannot be used.

    Attributes:
        field: path of the field, as in `car.pedals.brake.arm`, or the name of the file.
        value: what was given, as text; empty when nothing was given.
        allowed: what would be accepted.
        hint: how to mend it.
    """

    def __init__(self, field: str, value: str, allowed: str, hint: str = "") -> None:
        self.field, self.value, self.allowed, self.hint = field, value, allowed, hint
        super().__init__(self.sentence())

    def sentence(self) -> str:
        """The whole message as one sentence."""
        given = f" is {self.value}" if self.value else ""
        mend = f"; {self.hint}" if self.hint else ""
        return f"{self.field}{given}: {self.allowed}{mend}."
