"""Reading files that nobody vouches for: ordinary files only, and no more of them than is allowed."""

from __future__ import annotations

import io
import os
import stat
from pathlib import Path


class NotOrdinary(OSError):
    """What has the name is a device, a pipe, a socket or a folder."""

    def __init__(self, path: Path | str):
        super().__init__(0, "it is no ordinary file", str(path))


class TooLarge(OSError):
    """The file holds more than is allowed."""


def open_ordinary(path: Path | str, *, follow: bool = True) -> io.BufferedReader:
    """Open an ordinary file for reading; never waits, as opening a pipe would. ``follow`` says whether through a link.

    Raises:
        NotOrdinary: it is a device, a pipe, a socket or a folder.
        OSError: it cannot be opened.
    """
    flags = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
    handle = os.open(path, flags | (0 if follow else getattr(os, "O_NOFOLLOW", 0)))
    try:
        if not stat.S_ISREG(os.fstat(handle).st_mode):
            raise NotOrdinary(path)
        return os.fdopen(handle, "rb")
    except BaseException:
        os.close(handle)
        raise


def read_ordinary(path: Path | str, limit_bytes: int, *, follow: bool = True) -> bytes:
    """Give the content of an ordinary file.

    Raises:
        NotOrdinary: it is a device, a pipe, a socket or a folder.
        TooLarge: it holds more than ``limit_bytes``.
        OSError: it cannot be read.
    """
    with open_ordinary(path, follow=follow) as file:
        data = file.read(limit_bytes + 1)
    if len(data) > limit_bytes:
        raise TooLarge(0, "it is too large", str(path))
    return data
