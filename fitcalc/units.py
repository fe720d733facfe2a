"""The house units as annotations, and conversion at the edge.

Inside: mm, degrees, kg, N, MPa. An annotation names the unit of an array over cases, shape `(n,)`;
`Points` is `(n, 3)` in the car's frame (x rearward, y to the right, z up). Docstrings say so only where it differs.
"""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Floats: TypeAlias = NDArray[np.float64]
Bools: TypeAlias = NDArray[np.bool_]
Points: TypeAlias = Floats
Mm: TypeAlias = Floats
Deg: TypeAlias = Floats
Kg: TypeAlias = Floats
Newton: TypeAlias = Floats
MPa: TypeAlias = Floats

MM_PER_INCH = 25.4
KG_PER_POUND = 0.45359237
GRAVITY = 9.80665
"""Standard acceleration of free fall in m/s2 (ISO 80000-3)."""
