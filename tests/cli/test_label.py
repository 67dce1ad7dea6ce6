"""Tags for skeins and labels for baths, as text, a page or a drawing to be cut out; made of the demo season."""

from pathlib import Path
from xml.etree import ElementTree

import pytest

from dyesession.cli import FINE, TO_PUT_RIGHT, main
from dyesession.daybook.paper_svg import paper_svg, tag_svg
from dyesession.daybook.skein_tags import Tag

DAY = "demo-2025-08-02-cochineal-crimson"


@pytest.fixture(autouse=True)
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("DYESESSION_WORKROOM", str(tmp_path / "room"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path


def svg_texts(text: str) -> list[str]:
    return [one.text or "" for one in ElementTree.fromstring(text).iter("{http://www.w3.org/2000/svg}text")]


def test_a_day_gives_a_tag_a_skein_and_a_label_a_bath(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["label", DAY]) == FINE
    out = capsys.readouterr().out
    assert "recipe   Cochineal crimson on wool" in out and "dyed     2025-08-02 (demo)" in out
    assert out.count("NOT FOOD: DYE") == 2 and "80 g wool" in out and "#8e1f3e" in out
    assert "wash" not in out.split("NOT FOOD")[0]


@pytest.mark.parametrize("ending", ["txt", "svg", "html"])
def test_the_same_is_written_as_text_as_a_drawing_and_as_a_page(room: Path, ending: str) -> None:
    path = room / f"tags.{ending}"
    assert main(["label", DAY, "--write", str(path)]) == FINE
    text = path.read_text("utf-8")
    said = " ".join(svg_texts(text)) if ending == "svg" else text
    for wanted in ("Cochineal crimson on wool", "#8e1f3e", "NOT FOOD: DYE", "cochineal bath 4", "alum bath 3"):
        assert wanted in said


def test_one_bath_is_labelled_alone(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["label", "Cochineal", "bath", "4"]) == FINE
    out = capsys.readouterr().out
    assert out.count("NOT FOOD: DYE") == 1 and "look again" in out and "keep from" in out


def test_an_ending_nobody_can_print_and_a_name_nobody_knows_are_one_sentence(
    room: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for words in (["label", DAY, "--write", str(room / "tags.pdf")], ["label", "weld bath 99"]):
        assert main(words) == TO_PUT_RIGHT
        err = capsys.readouterr().err
        assert err.startswith("dyesession: ") and err.count("\n") == 1 and "Traceback" not in err
    assert not (room / "tags.pdf").exists()


def test_tags_stand_below_each_other_and_a_dyers_own_words_are_no_markup() -> None:
    one = Tag("large skein", "#8b3a2b", (("skein", "<b>165 g & more</b>"), ("colour", "#8b3a2b")))
    other = Tag("small skein", "", (("skein", "75 g wool"),))
    assert "<b>165 g & more</b>" in svg_texts(tag_svg(one))
    page = ElementTree.fromstring(paper_svg((one, other), ()))
    inner = page.findall("{http://www.w3.org/2000/svg}svg")
    tops = [float(each.attrib["y"]) for each in inner]
    assert tops[0] == 0.0 and tops[1] >= float(inner[0].attrib["height"])
    assert [each.attrib.get("fill") for each in page.iter() if each.attrib.get("fill") == "#8b3a2b"] == ["#8b3a2b"]
