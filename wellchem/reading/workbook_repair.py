"""A workbook that its library cannot open, cut down to its cells, number formats, merges, comments and hidden parts.

Workbooks written by other programs name parts that are missing, carry drawings, tables, links and styles that break
the reader, or use the strict form's namespaces (ISO/IEC 29500-1). None of that holds a result.
"""

from __future__ import annotations

import posixpath
import re
import zipfile
from io import BytesIO
from xml.etree import ElementTree

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
PACKAGE_RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships"
CONTENT_TYPES = "http://schemas.openxmlformats.org/package/2006/content-types"
STRICT = (
    (b"http://purl.oclc.org/ooxml/spreadsheetml/main", MAIN.encode()),
    (
        b"http://purl.oclc.org/ooxml/officeDocument/relationships",
        b"http://schemas.openxmlformats.org/officeDocument/2006/relationships",
    ),
)
KEPT = ("officeDocument", "worksheet", "sharedStrings", "styles", "comments")  # kinds of relation worth following
SHEET_DATA = re.compile(rb"<(?:\w+:)?sheetData\b.*</(?:\w+:)?sheetData>|<(?:\w+:)?sheetData\s*/>", re.DOTALL)
MERGES = re.compile(rb"<(?:\w+:)?mergeCells\b.*?</(?:\w+:)?mergeCells>", re.DOTALL)
BROKEN_DIMENSION = re.compile(rb"<(?:\w+:)?dimension\b[^>]*/>")


def repaired(data: bytes) -> bytes:
    """The archive with what is needed alone, and with relations to what is there. Raises what zip and XML raise."""
    parts: dict[str, bytes] = {}
    with zipfile.ZipFile(BytesIO(data)) as archive:
        for member in archive.namelist():
            content = archive.read(member)
            for strict, transitional in STRICT:
                content = content.replace(strict, transitional)
            parts[member.replace("\\", "/").lstrip("/")] = content
    by_lower = {name.lower(): name for name in parts}
    kept: dict[str, bytes] = {}

    def follow(owner: str) -> None:
        """Keep a part's relations to kept kinds of parts that are there, and those parts."""
        folder, base = posixpath.split(owner)
        relations = f"{folder}/_rels/{base}.rels".lstrip("/")
        actual = by_lower.get(relations.lower())
        if actual is None:
            return
        root = ElementTree.fromstring(parts[actual])
        for relation in list(root):
            kind = relation.get("Type", "").rsplit("/", 1)[-1]
            target = posixpath.normpath(posixpath.join("/" + folder, relation.get("Target", ""))).lstrip("/")
            found = by_lower.get(target.lower())
            if kind not in KEPT or relation.get("TargetMode") == "External" or found is None:
                root.remove(relation)
                continue
            relation.set("Target", "/" + target)
            kept[target] = _cut(kind, parts[found])
            follow(target)
        ElementTree.register_namespace("", PACKAGE_RELATIONS)
        kept[relations] = ElementTree.tostring(root)

    follow("")
    types = by_lower.get("[content_types].xml")
    if types is not None:
        root = ElementTree.fromstring(parts[types])
        for override in list(root):
            name = override.get("PartName", "").lstrip("/")
            if override.tag.endswith("Override") and name.lower() not in {part.lower() for part in kept}:
                root.remove(override)
        ElementTree.register_namespace("", CONTENT_TYPES)
        kept["[Content_Types].xml"] = ElementTree.tostring(root)
    out = BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for name, content in kept.items():
            archive.writestr(name, content)
    return out.getvalue()


def _cut(kind: str, content: bytes) -> bytes:
    """One part without what breaks readers."""
    if kind == "worksheet":
        return _cut_sheet(content)
    if kind == "styles":
        return _cut_styles(content)
    if kind == "officeDocument":
        root = ElementTree.fromstring(content)
        for child in list(root):
            if child.tag.rsplit("}", 1)[-1] not in ("workbookPr", "sheets"):
                root.remove(child)
        return ElementTree.tostring(root)
    return content


def _cut_sheet(content: bytes) -> bytes:
    """A sheet up to its cells, and its merges."""
    data = SHEET_DATA.search(content)
    if data is None:
        return content
    head = BROKEN_DIMENSION.sub(b"", content[: data.start()])
    merges = MERGES.search(content, data.end())
    closing = content[content.rindex(b"</") :]
    return head + data[0] + (merges[0] if merges else b"") + closing


def _cut_styles(content: bytes) -> bytes:
    """Number formats and which cell style uses which; fonts, fills and the rest as plain as they can be."""
    root = ElementTree.fromstring(content)
    formats = root.find(f"{{{MAIN}}}numFmts")
    used = root.find(f"{{{MAIN}}}cellXfs")
    plain = ElementTree.fromstring(
        f'<styleSheet xmlns="{MAIN}"><fonts><font><name val="Calibri"/></font></fonts>'
        "<fills><fill><patternFill/></fill></fills><borders><border/></borders>"
        "<cellStyleXfs><xf/></cellStyleXfs><cellXfs/>"
        '<cellStyles><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
    )
    styles = plain.find(f"{{{MAIN}}}cellXfs")
    assert styles is not None  # written four lines above
    for style in list(used) if used is not None else [ElementTree.Element(f"{{{MAIN}}}xf")]:
        ElementTree.SubElement(styles, f"{{{MAIN}}}xf", {"numFmtId": style.get("numFmtId", "0"), "xfId": "0"})
    if formats is not None:
        plain.insert(0, formats)
    return ElementTree.tostring(plain)
