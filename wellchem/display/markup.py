"""Small pieces of HTML: escaped text, lists, tables that stack on a narrow screen."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape


def tag(name: str, text: str, css: str = "") -> str:
    """One element with escaped text."""
    attribute = f' class="{css}"' if css else ""
    return f"<{name}{attribute}>{escape(text)}</{name}>"


def paragraph(text: str, css: str = "") -> str:
    """A paragraph, or nothing for no text."""
    return tag("p", text, css) if text else ""


def items(texts: Iterable[str], ordered: bool = False, css: str = "") -> str:
    """A list of escaped texts, or nothing."""
    body = "".join(tag("li", text) for text in texts if text)
    kind = "ol" if ordered else "ul"
    attribute = f' class="{css}"' if css else ""
    return f"<{kind}{attribute}>{body}</{kind}>" if body else ""


def table(header: Sequence[str], rows: Iterable[tuple[Sequence[str], str]]) -> str:
    """A table of escaped cells; each row comes with its class. Cells carry their header for narrow screens."""
    body = []
    for cells, css in rows:
        attribute = f' class="{css}"' if css else ""
        inside = "".join(
            f'<td data-head="{escape(head)}">{escape(cell)}</td>' for head, cell in zip(header, cells, strict=True)
        )
        body.append(f"<tr{attribute}>{inside}</tr>")
    if not body:
        return ""
    head = "".join(tag("th", text) for text in header)
    return (
        f'<div class="wide"><table class="stack"><thead><tr>{head}</tr></thead>'
        f"<tbody>{''.join(body)}</tbody></table></div>"
    )


def figure(picture: str, caption: str) -> str:
    """A picture with its caption, or nothing for no picture."""
    return f"<figure>{picture}<figcaption>{escape(caption)}</figcaption></figure>" if picture else ""
