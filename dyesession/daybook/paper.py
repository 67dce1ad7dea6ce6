"""Tags and labels as one self-contained HTML page, to be printed and cut out. Pure."""

from collections.abc import Iterable, Sequence
from html import escape

from dyesession.care import Label, label_svg
from dyesession.daybook.skein_tags import Tag

_STYLE = """
body{font:11pt sans-serif;color:#000;background:#fff;margin:8mm}
div.tag{display:inline-block;vertical-align:top;width:95mm;border:0.4mm solid #000;margin:2mm;padding:3mm;
break-inside:avoid}
svg{margin:2mm;break-inside:avoid}
td{padding:0 2mm 0 0;vertical-align:top}td:first-child{font-weight:bold}
span.patch{display:inline-block;width:10mm;height:5mm;border:0.2mm solid #000;vertical-align:middle}
"""


def paper_page(tags: Sequence[Tag], labels: Iterable[Label]) -> str:
    """The whole page: skein tags first, then the labels of kept baths."""
    body = "\n".join((*(_tag(one) for one in tags), *(label_svg(one) for one in labels)))
    return (
        f'<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8"><title>Tags and labels</title>'
        f"<style>{_STYLE}</style></head>\n<body>\n{body}\n</body></html>\n"
    )


def _tag(tag: Tag) -> str:
    patch = f' <span class="patch" style="background:{escape(tag.colour)}"></span>' if tag.colour else ""
    rows = "".join(
        f"<tr><td>{escape(name)}</td><td>{escape(text)}{patch if name == 'colour' else ''}</td></tr>"
        for name, text in tag.rows
    )
    return f'<div class="tag"><table>{rows}</table></div>'
