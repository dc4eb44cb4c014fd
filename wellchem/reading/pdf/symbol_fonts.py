"""Characters of the fonts Symbol and ZapfDingbats, which come as plain letters where a file does not say what they are.

A Greek mu drawn as the letter m of Symbol would turn micrograms into milligrams. Encodings: PDF Reference (ISO
32000-1:2008), annex D.5 and D.6; both from memory, compared in the tests with another library's tables.
"""

from __future__ import annotations

# Codes 0x21-0x7E and 0xA1-0xFE of the Symbol encoding.
_LOW = "!∀#∃%&∋()∗+,−./0123456789:;<=>?≅ΑΒΧΔΕΦΓΗΙϑΚΛΜΝΟΠΘΡΣΤΥςΩΞΨΖ[∴]⊥_‾αβχδεφγηιϕκλµνοπθρστυϖωξψζ{|}∼"
_HIGH = "ϒ′≤⁄∞ƒ♣♦♥♠↔←↑→↓°±″≥×∝∂•÷≠≡≈…⏐⎯↵ℵℑℜ℘⊗⊕∅∩∪⊃⊇⊄⊂⊆∈∉∠∇®©™∏√⋅¬∧∨⇔⇐⇑⇒⇓◊〈®©™∑⎛⎜⎝⎡⎢⎣⎧⎨⎩⎪\u00a0〉∫⌠⎮⌡⎞⎟⎠⎤⎥⎦⎫⎬⎭"
SYMBOL = {0x21 + at: character for at, character in enumerate(_LOW)} | {
    0xA1 + at: character for at, character in enumerate(_HIGH)
}
DINGBATS = {code: chr(0x2700 + code - 0x20) for code in range(0x21, 0x7F)} | {
    ord("l"): "●", ord("n"): "■", ord("s"): "▲", ord("t"): "▼", ord("u"): "◆", ord("w"): "◗",
}  # fmt: skip
# What codes above 0xA0 look like where a reader took them for standard or western text.
_MISREAD = {"£": 0xA3, "‡": 0xB3, "³": 0xB3, "–": 0xB1, "´": 0xB4, "\uf8ff": 0xF0}
_FONTS = (("symbol", SYMBOL), ("dingbats", DINGBATS))


def decoded(text: str, font: str) -> str:
    """What a character of a font is, where the font is one of signs and the file gave only its code."""
    lower = font.lower()
    for name, table in _FONTS:
        if name in lower:
            return table.get(_code(text), text)
    return text


def _code(text: str) -> int:
    """The code behind a character: itself, in the private area of signs, or in pdfminer's words for unknown ones."""
    if text.startswith("(cid:") and text[5:-1].isdigit():
        return int(text[5:-1])
    if len(text) != 1:
        return -1
    code = ord(text)
    if 0xF020 <= code <= 0xF0FF:
        return code - 0xF000
    return code if code < 0x7F else _MISREAD.get(text, -1)
