"""The process that draws brochure pages: bounded in memory, asked one page at a time, for the files are from strangers.

The first line it is given has the bounds; each line after it names a file, its digest, a page, and strips from top to
bottom. It answers with one line of JSON: the page's width and the strips as WebP pictures, or why there are none.
"""

from __future__ import annotations

import base64
import contextlib
import hashlib
import io
import json
import os
import sys
from typing import Any

from specscan.reading.archive import is_there, read_content
from specscan.records.errors import DocumentError

MOST_PIXELS = 24_000_000  # of a whole page, while it is drawn


class NoPicture(Exception):
    """A page cannot be drawn; the message says why, for readers of the report."""


def main() -> None:
    """Answer requests until the pipe closes."""
    answers = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)  # whatever a library prints must not mix with the answers
    bounds = json.loads(sys.stdin.readline())
    _bound_memory(int(bounds["memory_mb"]))
    opened = _Opened(int(bounds["file_mb"]))
    for line in sys.stdin:
        request = json.loads(line)
        try:
            answer = _draw(opened, request, bounds)
        except NoPicture as error:
            answer = {"why": str(error)}
        except MemoryError:
            answer = {"why": "drawing the page needs more memory than is allowed"}
        except Exception as error:  # one page that cannot be drawn must not lose the others
            answer = {"why": f"the page cannot be drawn ({type(error).__name__})"}
        answers.write(json.dumps(answer) + "\n")
        answers.flush()


class _Opened:
    """The document that was asked for last."""

    def __init__(self, file_mb: int):
        self.file_mb = file_mb
        self.key: tuple[str, str] | None = None
        self.document: Any = None

    def get(self, path: str, sha256: str) -> Any:
        import pypdfium2

        if self.key == (path, sha256):
            return self.document
        if self.document is not None:
            self.document.close()
        self.key, self.document = None, None
        if not is_there(path):
            raise NoPicture("the file is no longer where it was read")
        try:
            data = read_content(path, self.file_mb)
        except DocumentError as error:
            raise NoPicture(str(error)) from error
        if hashlib.sha256(data).hexdigest() != sha256:
            raise NoPicture("the file has changed since it was read")
        self.document = pypdfium2.PdfDocument(data)
        self.key = (path, sha256)
        return self.document


def _draw(opened: _Opened, request: dict[str, Any], bounds: dict[str, Any]) -> dict[str, Any]:
    document = opened.get(request["path"], request["sha256"])
    number = request["page"] - 1
    if not 0 <= number < len(document):
        raise NoPicture("the file has no such page")
    page = document[number]
    try:
        width, height = page.get_size()
        if width <= 0 or height <= 0:
            raise NoPicture("the page has no size")
        scale = min(
            bounds["pixels_per_point"], bounds["widest_pixels"] / width, (MOST_PIXELS / (width * height)) ** 0.5
        )
        picture = page.render(scale=scale, may_draw_forms=False).to_pil().convert("L")
    finally:
        page.close()
    strips: list[dict[str, Any] | None] = []
    for top, bottom in request["strips"]:
        upper, lower = max(0, int(top * scale)), min(picture.height, int(bottom * scale) + 1)
        if lower <= upper:
            strips.append(None)
            continue
        out = io.BytesIO()
        picture.crop((0, upper, picture.width, lower)).save(out, "WEBP", quality=bounds["quality"], method=4)
        strips.append(
            {"top": upper / scale, "height": (lower - upper) / scale, "data": base64.b64encode(out.getvalue()).decode()}
        )
    return {"width": width, "strips": strips}


def _bound_memory(megabytes: int) -> None:
    with contextlib.suppress(ImportError, ValueError, OSError):
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (megabytes * 1_000_000, megabytes * 1_000_000))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


if __name__ == "__main__":
    main()
