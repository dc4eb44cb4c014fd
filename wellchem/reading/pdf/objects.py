"""What pdfminer draws on a page, without pdfplumber's dictionaries, which cost as much again."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from pdfminer.converter import PDFPageAggregator
from pdfminer.layout import LTChar, LTContainer, LTCurve, LTImage
from pdfminer.pdfinterp import PDFPageInterpreter

UNPAINTED = (3, 7)  # modes of text that paint nothing (ISO 32000-1:2008, table 106)


@dataclass(frozen=True)
class PageObjects:
    """Objects of a page in the order in which they were drawn; `shaded` tells of gradients, which are no shapes."""

    characters: list[Any]
    shapes: list[Any]
    pictures: list[Any]
    shaded: bool
    visible: tuple[float, float, float, float]  # what viewers show of the page: x0, y0, x1, y1, y upwards


class _Device(PDFPageAggregator):
    """A device that keeps which characters are unpainted, and whether gradients were drawn."""

    shaded = False

    def render_string(self, textstate: Any, seq: Any, ncs: Any, graphicstate: Any) -> None:
        begun = len(self.cur_item._objs)
        super().render_string(textstate, seq, ncs, graphicstate)
        if textstate.render in UNPAINTED:
            for item in self.cur_item._objs[begun:]:
                item.unpainted = True  # type: ignore[attr-defined]


class _Interpreter(PDFPageInterpreter):
    """An interpreter that tells its device of gradients."""

    def do_sh(self, name: Any) -> None:
        self.device.shaded = True  # type: ignore[attr-defined]


def page_objects(page: Any) -> PageObjects:
    """Objects of a page of pdfplumber's."""
    device = _Device(page.pdf.rsrcmgr, pageno=page.page_number, laparams=None)
    _Interpreter(page.pdf.rsrcmgr, device).process_page(page.page_obj)
    found: tuple[list[Any], list[Any], list[Any]] = ([], [], [])
    waiting = [iter(device.get_result())]
    while waiting:
        for item in waiting[-1]:
            if isinstance(item, LTChar):
                found[0].append(item)
            elif isinstance(item, LTCurve):
                found[1].append(item)
            elif isinstance(item, LTImage):
                found[2].append(item)
            elif isinstance(item, LTContainer):
                waiting.append(iter(item))
                break
        else:
            waiting.pop()
    return PageObjects(*found, device.shaded, on_page(page, list(page.page_obj.cropbox)))


def on_page(page: Any, rectangle: list[float]) -> tuple[float, float, float, float]:
    """A rectangle of the file in the page's own frame, y upwards, as pdfminer turns what is printed."""
    left, low, right, high = page.page_obj.mediabox
    (a, b, c, d), (x, y) = {
        90: ((0, 1, -1, 0), (-low, right)),
        180: ((-1, 0, 0, -1), (right, high)),
        270: ((0, -1, 1, 0), (high, -left)),
    }.get(page.page_obj.rotate, ((1, 0, 0, 1), (-left, -low)))
    (x_a, y_a), (x_b, y_b) = ((a * u + b * v + x, c * u + d * v + y) for u, v in (rectangle[:2], rectangle[2:]))
    return min(x_a, x_b), min(y_a, y_b), max(x_a, x_b), max(y_a, y_b)
