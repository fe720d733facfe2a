"""Drawings of what has not changed are the very same primitives again."""

from fitcalc.present.picture import Text
from fitcalc.present.same import Same, once


def test_a_drawing_is_made_once_for_one_thing_and_anew_for_another_alike():
    made = []

    def draw(thing):
        made.append(thing)
        yield Text("key", "note", "", (0.0, 0.0), str(thing))

    drawn, one, other = once(draw), ["a"], ["a"]
    assert drawn(one) is drawn(one)
    assert drawn(other) == drawn(one)
    assert len(made) == 2


def test_a_thing_is_the_same_as_itself_only():
    one, other = [], []
    assert Same(one) == Same(one)
    assert Same(one) != Same(other)


def test_a_drawing_of_several_things_is_made_anew_when_one_of_them_is_another():
    drawn = once(lambda one, other: iter([Text("key", "note", "", (0.0, 0.0), f"{one}{other}")]))
    one, other, third = ["a"], ["b"], ["b"]
    assert drawn(one, other) is drawn(one, other)
    assert drawn(one, third) is not drawn(one, other)
    assert drawn(one, other=other) == drawn(one, other)
