"""What pdfminer draws on a page, without pdfplumber's dictionaries, which cost as much again."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from pdfminer.converter import PDFPageAggregator
from pdfminer.layout import LTChar, LTContainer, LTCurve, LTImage
from pdfminer.pdfinterp import PDFPageInterpreter
from pdfminer.pdftypes import resolve1
from pdfminer.psparser import PSLiteral, literal_name

UNPAINTED = (3, 7)  # modes of text that paint nothing (ISO 32000-1:2008, table 106)
SYMBOLIC, NONSYMBOLIC = 4, 32  # flags of a font's descriptor (the same, table 123)


@dataclass(frozen=True)
class PageObjects:
    """Objects of a page in the order in which they were drawn; `shaded` tells of gradients, which are no shapes."""

    characters: list[Any]
    shapes: list[Any]
    pictures: list[Any]
    shaded: bool
    visible: tuple[float, float, float, float]  # what viewers show of the page: x0, y0, x1, y1, y upwards


class _Device(PDFPageAggregator):
    """A device that keeps which characters are unpainted, what is painted through, and whether gradients were drawn."""

    shaded = False
    veiled = False

    def paint_path(self, *args: Any, **named: Any) -> None:
        begun = len(self.cur_item._objs)
        super().paint_path(*args, **named)
        if self.veiled:
            for item in self.cur_item._objs[begun:]:
                item.veiled = True  # type: ignore[attr-defined]

    def render_string(self, textstate: Any, seq: Any, ncs: Any, graphicstate: Any) -> None:
        begun = len(self.cur_item._objs)
        super().render_string(textstate, seq, ncs, graphicstate)
        if textstate.render in UNPAINTED:
            for item in self.cur_item._objs[begun:]:
                item.unpainted = True  # type: ignore[attr-defined]


class _Interpreter(PDFPageInterpreter):
    """An interpreter that tells its device of gradients, and whether what lies below shines through what is painted."""

    def __init__(self, resources: Any, device: Any) -> None:
        super().__init__(resources, device)
        self._group = device.veiled  # of the form that is drawn: nothing in it is more opaque than the whole
        self._veils: list[bool] = []

    def init_resources(self, resources: dict[object, object]) -> None:
        super().init_resources(resources)
        for name, spec in (resolve1(resources.get("Font")) or {}).items() if resources else ():
            if _untold(resolve1(spec)):
                self.fontmap[name].cid2unicode = {}  # type: ignore[attr-defined]

    def do_q(self) -> None:
        super().do_q()
        self._veils.append(self.device.veiled)  # type: ignore[attr-defined]

    def do_Q(self) -> None:
        super().do_Q()
        if self._veils:
            self.device.veiled = self._veils.pop()  # type: ignore[attr-defined]

    def do_gs(self, name: Any) -> None:
        states = resolve1(self.resources.get("ExtGState")) or {}
        state = resolve1(states.get(literal_name(name))) or {}
        if not {"ca", "BM", "SMask"} & set(state):
            return
        mode, mask = resolve1(state.get("BM")), resolve1(state.get("SMask"))
        plain = mode is None or literal_name(mode) in ("Normal", "Compatible")
        masked = mask is not None and not (isinstance(mask, PSLiteral) and literal_name(mask) == "None")
        opaque = float(resolve1(state.get("ca", 1.0))) >= 1.0 and plain and not masked
        self.device.veiled = self._group or not opaque  # type: ignore[attr-defined]

    def do_sh(self, name: Any) -> None:
        self.device.shaded = True  # type: ignore[attr-defined]


def _untold(font: dict[str, Any]) -> bool:
    """Whether a font draws letters of its own and nothing says which: its codes may stand for any of them."""
    own = resolve1(font.get("FontDescriptor")) or {}
    flags = resolve1(own.get("Flags", NONSYMBOLIC))
    embedded = "FontFile2" in own or "FontFile3" in own
    return embedded and not {"Encoding", "ToUnicode"} & set(font) and flags & (SYMBOLIC | NONSYMBOLIC) == SYMBOLIC


def page_objects(page: Any) -> PageObjects:
    """Objects of a page of pdfplumber's."""
    device = _Device(page.pdf.rsrcmgr, pageno=page.page_number, laparams=None)
    _Interpreter(page.pdf.rsrcmgr, device).process_page(page.page_obj)
    found: tuple[list[Any], list[Any], list[Any]] = ([], [], [])
    waiting = [iter(device.get_result())]
    drawn = 0
    while waiting:
        for item in waiting[-1]:
            item.drawn = drawn = drawn + 1  # type: ignore[attr-defined]
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
