"""Keeps a hostile PDF within bounds: what its streams unpack to, how much memory and time reading it takes."""

import signal
import threading
import zlib
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from types import FrameType, SimpleNamespace
from typing import Any, Final

import pdfminer.pdftypes as pdf_types
from pdfminer.lzw import LZWDecoder

LARGEST_STREAM: Final = 16_000_000
"""Bytes that one stream may unpack to; a page of text and figures has some 100,000."""
LARGEST_TOTAL: Final = 80_000_000
"""Bytes that all streams together may unpack to."""
_SLOW: Final = 2_000_000
"""Bytes that a filter which works byte by byte is given."""
_MEASURED: Final = {
    "lzwdecode": _SLOW,
    "ccittfaxdecode": _SLOW,
    "rldecode": _SLOW // 64,
    "ascii85decode": _SLOW,
    "asciihexdecode": _SLOW,
    "apply_png_predictor": _SLOW,
    "apply_tiff_predictor": _SLOW,
}
"""pdfminer's filters and what each of them is given at most."""
_MOST_MEMORY: Final = 600_000_000
"""Bytes of address space that reading may take beyond what the process has."""
SECONDS: Final = 40
"""After this long reading ends; the bounds above end nearly everything long before."""


class TooMuch(Exception):
    """A file has more in it than a paper can have; the message says of what."""


@contextmanager
def within_bounds() -> Iterator[None]:
    """Reading inside raises TooMuch or MemoryError rather than going on for ever.

    pdfminer unpacks a stream in one go and has no limit of its own, so its filters are exchanged meanwhile.
    """
    left = [LARGEST_TOTAL]
    before: dict[str, Any] = {name: getattr(pdf_types, name) for name in (*_MEASURED, "zlib", "decompress_corrupted")}
    bounded: dict[str, Any] = {name: _if_short(before[name], most) for name, most in _MEASURED.items()}
    bounded["zlib"] = SimpleNamespace(
        decompress=lambda content: _counted(_inflated(content), left),
        decompressobj=zlib.decompressobj,
        error=zlib.error,
    )
    bounded["decompress_corrupted"] = lambda content: _counted(_rescued(content), left)
    bounded["lzwdecode"] = lambda content: _counted(_lzw(content), left)
    bounded["ccittfaxdecode"] = _refused_filter
    with _memory_limit():
        try:
            for name, value in bounded.items():
                setattr(pdf_types, name, value)
            yield
        finally:
            for name, value in before.items():
                setattr(pdf_types, name, value)


def _inflated(content: bytes) -> bytes:
    unpacker = zlib.decompressobj()
    unpacked = unpacker.decompress(content, LARGEST_STREAM + 1)
    if len(unpacked) > LARGEST_STREAM:
        raise TooMuch(f"a stream that unpacks to more than {LARGEST_STREAM:,} bytes was read")
    if not unpacker.eof:
        raise zlib.error("the end is missing")
    return unpacked


def _rescued(content: bytes) -> bytes:
    """What a stream gives up to where it is damaged."""
    unpacker = zlib.decompressobj()
    unpacked = bytearray()
    for at in range(0, len(content), 256):
        try:
            unpacked += unpacker.decompress(content[at : at + 256], LARGEST_STREAM + 1 - len(unpacked))
        except zlib.error:
            break
        if len(unpacked) > LARGEST_STREAM:
            raise TooMuch(f"a stream that unpacks to more than {LARGEST_STREAM:,} bytes was read")
    return bytes(unpacked)


def _lzw(content: bytes) -> bytes:
    import io

    if len(content) > _SLOW:
        raise TooMuch(f"a packed stream of more than {_SLOW:,} bytes was read")
    unpacked = bytearray()
    for piece in LZWDecoder(io.BytesIO(content)).run():
        unpacked += piece
        if len(unpacked) > LARGEST_STREAM:
            raise TooMuch(f"a stream that unpacks to more than {LARGEST_STREAM:,} bytes was read")
    return bytes(unpacked)


def _counted(unpacked: bytes, left: list[int]) -> bytes:
    left[0] -= len(unpacked)
    if left[0] < 0:
        raise TooMuch(f"streams that unpack to more than {LARGEST_TOTAL:,} bytes were read")
    return unpacked


def _if_short(work: Callable[..., bytes], most: int) -> Callable[..., bytes]:
    """The filter for contents of at most `most` bytes, whatever its other arguments are."""

    def bounded(*given: Any, **named: Any) -> bytes:
        for one in (*given, *named.values()):
            if isinstance(one, bytes) and len(one) > most:
                raise TooMuch(f"a packed stream of more than {most:,} bytes was read")
        return work(*given, **named)

    return bounded


def _refused_filter(*_: Any) -> bytes:
    """Fax pictures are no text, and unpack without bounds."""
    return b""


@contextmanager
def time_limit() -> Iterator[None]:
    """Raises TooMuch inside after SECONDS, on the main thread of a system that has alarms."""
    if not hasattr(signal, "SIGALRM") or threading.current_thread() is not threading.main_thread():
        yield
        return

    def stop(_signal: int, _frame: FrameType | None) -> None:
        raise TooMuch(f"reading took longer than {SECONDS} seconds")

    before = signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


@contextmanager
def _memory_limit() -> Iterator[None]:
    """Bounds the memory of the process while the work inside goes on, where the system can do that."""
    try:
        import resource
        from pathlib import Path

        pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[0])
        limit = pages * resource.getpagesize() + _MOST_MEMORY
        before = resource.getrlimit(resource.RLIMIT_AS)
        if before[0] != resource.RLIM_INFINITY:
            limit = min(limit, before[0])
        resource.setrlimit(resource.RLIMIT_AS, (limit, before[1]))
    except (ImportError, OSError, ValueError):
        yield
        return
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_AS, before)
