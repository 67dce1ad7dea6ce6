"""Loading the shipped data: once, quickly, without heavy libraries."""

import subprocess
import sys
from dataclasses import FrozenInstanceError

import pytest

from dyesession.substances import load


def test_the_data_are_read_once_and_cannot_be_changed():
    assert load() is load()
    with pytest.raises(TypeError):
        load()["alum"] = None
    with pytest.raises(FrozenInstanceError):
        load()["potassium alum"].home_use = "refused"


def test_what_a_substance_is_like_gives_its_words_but_never_its_names():
    extract, chips = load()["logwood extract"], load()["logwood chips"]
    assert extract.caution == chips.caution
    assert not set(extract.names) & set(chips.names)
    assert extract.word == "logwood extract"
    assert chips.word == "logwood"


def test_loading_takes_less_than_thirty_milliseconds_and_nothing_heavy():
    """The quickest of several fresh loads, for a busy machine must not fail an honest loader."""
    code = (
        "import sys, time, dyesession.substances.loader as loader\n"
        "took = []\n"
        "for _ in range(7):\n"
        "    loader.load.cache_clear(); began = time.perf_counter(); loader.load()\n"
        "    took.append(time.perf_counter() - began)\n"
        "heavy = {'pint', 'tomli_w', 'textual', 'difflib'} & set(sys.modules)\n"
        "print(min(took), sorted(heavy))\n"
    )
    printed = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    seconds, heavy = printed.split(maxsplit=1)
    assert float(seconds) < 0.030
    assert heavy.strip() == "[]"
