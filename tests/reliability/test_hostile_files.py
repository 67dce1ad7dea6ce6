"""Hostile recipes and logs: one plain sentence in half a second, nothing executed or written elsewhere."""

import os
import time
import tracemalloc
import zlib
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reliability.days import GOLDEN, PLAIN, QUICK

from dyesession.errors import UserError
from dyesession.session.log import create_log, open_log, read_log
from dyesession.session.seal import sealed_header
from dyesession.storage import DISK
from dyesession.tomlfile import HAND_WRITTEN, LOG, read_toml

LONGEST_CPU_S = 0.5
MOST_MEMORY = 100_000_000
EVIL = "x\x1b]52;c;aGk=\x07[@click=app.quit]hi[/]\x9b31m\u202e"

FULL = HAND_WRITTEN.file_bytes


def filled(unit: bytes, size: int = FULL) -> bytes:
    """As many whole units as fit into `size` bytes."""
    return unit * (size // len(unit))


BOMBS: dict[str, bytes] = {
    "a dotted key of 8,000 parts": b"a." * 8000 + b"a = 1\n",
    "dotted keys in the longest line, again and again": filled(b"a." * 7900 + b"a = 1\n"),
    "dotted keys of quoted parts": b'"=".' * 4000 + b"a = 1\n",
    "dotted keys with spaces": b"a . " * 4000 + b"a = 1\n",
    "dotted headings": filled(b"[" + b"a." * 20 + b"a]\n"),
    "a dotted key hidden behind a text": b"x = '''\n'''\n" + b"a." * 5000 + b"a = 1\n",
    "a dotted key inside a table on one line": b"x = {" + b"a." * 5000 + b"a = 1}\n",
    "300 brackets": b"x = " + b"[" * 300 + b"]" * 300 + b"\n",
    "100,000 brackets": b"x = " + filled(b"[\n", 200_000),
    "nested tables": b"x = " + b"{a = " * 500 + b"1" + b"}" * 500 + b"\n",
    "a line of the whole file": b'x = "' + b"y" * (FULL - 10) + b'"\n',
    "a number of 400,000 digits": b"x = " + b"9" * 400_000 + b"\n",
    "a number of 15,000 digits": b"x = " + b"9" * 15_000 + b"\n",
    "too large by one byte": b"#" * FULL + b"\n",
    "zeros": bytes(FULL),
    "noise": bytes(range(256)) * 1000,
    "quotes and backslashes": filled(b'\\"', 15_000) * 20,
    "unclosed texts": filled(b'"\\"\\"\\"\n'),
    "an unclosed long text": b'x = """\n' + filled(b'\\"""', 400_000),
    "dots": filled(b"." * 15_000 + b"\n"),
    "names without end": filled(b"a" * 15_000 + b"\n"),
    "spaces": filled(b" " * 15_000 + b"\n") + b"x",
    "half a character": b'x = "\xe2\x82"\n',
    "a lone surrogate": b'x = "\\ud800"\n',
    "a nul": b'x = "\0"\n',
    "an escape sequence as a key": b"\x1b[31m = 1\n",
    "a table twice": b"[a]\n[a]\n",
    "a list closed and added to": b"event = []\n[[event]]\nn = 1\n",
}


def bounded(act: Callable[[], object]) -> UserError | None:
    """Do it within the limits; the error it ended with."""
    tracemalloc.start()
    try:
        act()
    except UserError:
        pass
    finally:
        _, most = tracemalloc.get_traced_memory()
        tracemalloc.stop()
    assert most < MOST_MEMORY
    started = time.process_time()  # a second time: watching the memory slows everything down several times
    error = None
    try:
        act()
    except UserError as caught:
        error = caught
    assert time.process_time() - started < LONGEST_CPU_S
    return error


def plain_sentence(error: UserError | None) -> bool:
    return error is not None and str(error).isprintable() and 20 < len(str(error)) < 400


@pytest.mark.parametrize("name", BOMBS)
def test_a_recipe_that_is_a_bomb_is_refused_in_one_sentence(tmp_path: Path, name: str) -> None:
    path = tmp_path / "recipe.toml"
    path.write_bytes(BOMBS[name])
    assert plain_sentence(bounded(lambda: read_toml(path)))
    assert os.listdir(tmp_path) == ["recipe.toml"]


@pytest.mark.parametrize("name", BOMBS)
def test_a_bomb_is_no_log_either(tmp_path: Path, name: str) -> None:
    path = tmp_path / "log.toml"
    path.write_bytes(BOMBS[name])
    for act in (lambda: read_log(DISK, path), lambda: open_log(DISK, path)):
        assert plain_sentence(bounded(act))
    assert path.read_bytes() == BOMBS[name]
    assert os.listdir(tmp_path) == ["log.toml"]


@pytest.mark.parametrize("name", [name for name in BOMBS if len(BOMBS[name]) < 60_000])
def test_a_bomb_in_a_sealed_entry_is_marked_and_the_others_are_read(tmp_path: Path, name: str) -> None:
    path = tmp_path / "log.toml"
    golden = (GOLDEN / f"{PLAIN.name}.toml").read_bytes()
    at = golden.index(b"ingredient =")
    bombed = golden[:at] + BOMBS[name] + golden[at:]
    path.write_bytes(resealed(bombed))
    assert bounded(lambda: read_log(DISK, path)) is None
    contents = read_log(DISK, path)
    assert [one.n for one in contents.entries if one.trouble][:1] in ([1], [2])
    assert contents.notes and all(one.isprintable() for one in contents.notes)


def resealed(data: bytes) -> bytes:
    """The log with the first entry's checksum made right, and the second's tie to it."""
    start = data.index(b"[[event]]")
    end = data.index(b'seal = "1-', start) + len(b'seal = "1-144633ae-')
    old, new = data[end : end + 8], b"%08x" % zlib.crc32(data[start:end])
    return data.replace(old, new, 1)


def test_a_log_of_nothing_but_entry_lines_is_refused_at_once(tmp_path: Path) -> None:
    path = tmp_path / "log.toml"
    path.write_bytes(sealed_header("format = 1\n")[0] + filled(b"[[event]]\n", LOG.file_bytes - 100))
    assert plain_sentence(bounded(lambda: read_log(DISK, path)))


@pytest.mark.parametrize("kind", ["link", "pipe", "socket", "device", "folder"])
def test_what_is_no_plain_file_is_refused_without_waiting(tmp_path: Path, kind: str) -> None:
    path = tmp_path / "log.toml"
    (tmp_path / "elsewhere").mkdir()
    target = tmp_path / "elsewhere" / "log.toml"
    target.write_bytes((GOLDEN / f"{PLAIN.name}.toml").read_bytes())
    if kind == "link":
        path.symlink_to(target)
    elif kind == "pipe":
        os.mkfifo(path)
    elif kind == "socket":
        import socket

        with socket.socket(socket.AF_UNIX) as made:
            made.bind(str(path))
    elif kind == "device":
        path = Path("/dev/zero")
    else:
        path.mkdir()
    for act in (lambda: read_toml(path), lambda: read_log(DISK, path), lambda: open_log(DISK, path)):
        assert plain_sentence(bounded(act))
    assert os.listdir(tmp_path / "elsewhere") == ["log.toml"]


def evil_names() -> Iterator[str]:
    yield from (
        "..",
        "../x",
        "../../x",
        "/x",
        "a/../../x",
        "~/x",
        "$HOME",
        "x;ls",
        "`ls`",
        "$(ls)",
        "nul",
        "x\0y",
    )
    yield from (
        "con",
        "aux.",
        "x ",
        " x",
        "-rf",
        "*",
        "?",
        EVIL,
        "x" * 300,
        "\u202ex",
        "é",
        "e\u0301",
        "\ud800",
    )
    yield from (
        f"a{chr(code)}b" for code in [*range(1, 48), 58, 63, 64, 91, 92, 96, 123, 127, *range(128, 155)]
    )


@pytest.mark.parametrize("name", sorted(set(evil_names())), ids=ascii)
def test_no_name_makes_a_file_outside_the_folder_or_reads_as_anything_but_text(
    tmp_path: Path, name: str
) -> None:
    folder = tmp_path / "workroom" / "logs"
    folder.mkdir(parents=True)
    try:
        create_log(QUICK, folder, name, {}).close()
    except UserError as error:
        assert str(error).isprintable()
    written = [one for one in tmp_path.rglob("*") if one.is_file()]
    assert all(one.parent == folder and one.name.isascii() for one in written)


def test_there_are_a_hundred_evil_names() -> None:
    assert len(set(evil_names())) >= 100


def test_evil_text_in_a_file_is_told_without_its_controls(tmp_path: Path) -> None:
    path = tmp_path / "recipe.toml"
    path.write_text(f"name = 'x'\ndose = {EVIL}\n", "utf-8")
    error = bounded(lambda: read_toml(path))
    assert error is not None and str(error).isprintable()
    path.write_text("name = 1\n" + '"\\u001b]52" = 2\n')
    document = read_toml(path)
    with pytest.raises(UserError) as unknown:
        document.top.unknown_keys({"name"})
    assert str(unknown.value).isprintable()


@given(data=st.binary(max_size=400))
def test_no_bytes_make_reading_end_in_anything_but_a_sentence(
    data: bytes, tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = tmp_path_factory.getbasetemp() / "any.toml"
    path.write_bytes(data)
    for act in (lambda: read_toml(path), lambda: read_log(DISK, path)):
        try:
            act()
        except UserError as error:
            assert str(error).isprintable()


TOMLISH = st.text(st.sampled_from("ab.=[]{}\"'\\#,\n \t1-:T+eExu0\r\u00e9"), max_size=120)


@given(text=TOMLISH)
def test_no_toml_like_text_makes_reading_end_in_anything_but_a_sentence(
    text: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = tmp_path_factory.getbasetemp() / "tomlish.toml"
    path.write_bytes(text.encode())
    try:
        document = read_toml(path)
    except UserError as error:
        assert str(error).isprintable()
    else:
        assert all(document.line_of((key,)) >= 1 for key in document.values)
