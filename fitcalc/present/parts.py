"""What every part of a JSON record is made of."""

from pydantic import BaseModel, ConfigDict


class Record(BaseModel):
    """Base of every part: no NaN, no infinity."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)
