"""One drag of a grip, from press to drop or Escape."""

from dataclasses import dataclass

from fitcalc.present.picture import XY, Handle


@dataclass(frozen=True)
class Drag:
    """A grip being held.

    Attributes:
        handle: as it stood when it was taken.
        start: where the pointer took it.
    """

    handle: Handle
    start: XY

    def place(self, pointer: XY) -> XY:
        """Where the grip belongs with the pointer here: along its own line, where it has one."""
        dx, dy = pointer[0] - self.start[0], pointer[1] - self.start[1]
        if self.handle.along is not None:
            ax, ay = self.handle.along
            along = dx * ax + dy * ay
            dx, dy = along * ax, along * ay
        return self.handle.at[0] + dx, self.handle.at[1] + dy
