import pytest

from dyesession.colour.logged import screen_hex


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("#8B3A2B", "#8b3a2b"), ("#abc", "#aabbcc"), ("lab(42 45 30) D65/2 ± 1.5 dry, colorimeter", "#ad3d34"),
        ("brick red", ""), ("", ""), ("lab(42 45)", ""), ("#12345", ""),
    ],
)  # fmt: skip
def test_a_colour_in_a_log_is_shown_where_it_is_one(text: str, shown: str) -> None:
    assert screen_hex(text) == shown


def test_a_lab_for_another_observer_is_seen_again_for_the_screen() -> None:
    assert screen_hex("lab(42 45 30) D65/10") not in ("", "#ad3d34")
