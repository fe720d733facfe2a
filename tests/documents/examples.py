"""Small files for tests, commented as a person would."""

CAR = """\
# our hillclimb car, measured on the flat floor of the shed
format = 1
name = "Test car"

[reference]
wheelbase = 2300  # both sides agree
level_plane = "floor top"

[seat]
kind = "shell"
junction = { x = 1250, y = 0, z = 40 }  # straightedge
profile = [
    [-350, 90],  # front lip
    [0, 0],
    [250, 550],  # top of the back
]
half_width = 190
mounts = [{ x = 950, y = -150, z = 5 }, { x = 1250, y = 150, z = 5 }]

[rails]
kind = "drilled"
forward_travel = 60
rearward_travel = 40

[pedals.brake]
foot = "right"  # heel and toe
hinge = "hanging"
pivot = { x = 250, y = 0, z = 400 }
arm = 250  # pivot to pad
rest_angle = 10
travel_angle = 20
pad_y = 0
pad_width = 60
pad_height = 50
cleat_height = 8
cleat_spacing = 56

[pedals.brake.cylinder]
joint_radius = 50
rod_end = { x = 80, z = 350 }
bore = 19.1
stroke = 30

[pedals.throttle]
foot = "right"
hinge = "hanging"
pivot = { x = 250, y = 110, z = 400 }
arm = 240
rest_angle = 10
pad_travel = 60
pad_y = 110
pad_width = 45
pad_height = 80

[pedals.throttle.cable]
joint_radius = 60
needed = 35

[footwell]
floor = [[-100, 0], [1200, 0]]
bulkhead = -50

[[footwell.obstacles]]
name = "rack"  # hard on
centre = { x = 500, z = 330 }
radius = 25
y_low = -200
y_high = 200

[harness]
points = 6
shoulder_left = { x = 1700, y = -100, z = 600 }
shoulder_right = { x = 1700, y = 100, z = 600 }
lap_left = { x = 1200, y = -220, z = 40 }
lap_right = { x = 1200, y = 220, z = 40 }
crotch = [{ x = 1000, y = -40, z = 10 }, { x = 1000, y = 40, z = 10 }]
"""

DRIVER = """\
name = "Test driver"  # barefoot

[measurements]
stature = 1755  # against the wall
sitting_height = 915
"""

SETUP = """\
seat_travel = 40  # two holes forward

[brake]
stand_off = 30
"""


def changed(text: str, before: str, after: str) -> str:
    """The text with its one `before` replaced."""
    assert text.count(before) == 1, before
    return text.replace(before, after)
