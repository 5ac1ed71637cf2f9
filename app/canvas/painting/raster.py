"""Draws thousands of hairlines and boxes straight into the memory of an image, without a call for each."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRect
from PySide6.QtGui import QImage, QPainter

from app.canvas.table import Floats

Colours = NDArray[np.uint32]  # as QColor.rgba() has them; opaque ones only
Whole = NDArray[np.intp]


class Raster(NamedTuple):
    """The pixels of an image, rows first, the part of it that may be drawn on, and how strongly."""

    pixels: NDArray[np.uint32]
    left: int
    top: int
    right: int  # one beyond the last
    bottom: int
    ratio: float  # pixels of the image to one of the painter
    opacity: float = 1.0


@contextmanager
def raster(painter: QPainter, width_px: float, height_px: float) -> Iterator[Raster]:
    """Open what lies under a painter that has not been moved; what is no image gets one laid over it."""
    device = painter.device()
    ratio = device.devicePixelRatioF()
    image = device if isinstance(device, QImage) else None
    if image is None:
        image = QImage(
            round(width_px * ratio), round(height_px * ratio), QImage.Format.Format_ARGB32_Premultiplied
        )
        image.setDevicePixelRatio(ratio)
        image.fill(0)
    pixels = np.frombuffer(image.bits(), np.uint32).reshape(image.height(), -1)
    clip = QRect(0, 0, image.width(), image.height())
    if painter.hasClipping():
        box = painter.clipBoundingRect()
        left, top = round(box.left() * ratio), round(box.top() * ratio)
        clip &= QRect(left, top, round(box.right() * ratio) - left, round(box.bottom() * ratio) - top)
    direct = image is device
    yield Raster(
        pixels,
        clip.left(),
        clip.top(),
        clip.right() + 1,
        clip.bottom() + 1,
        ratio,
        painter.opacity() if direct else 1.0,
    )
    if not direct:
        painter.drawImage(QPointF(0, 0), image)


def draw_grid(on: Raster, xs_px: Floats, ys_px: Floats, colour: int) -> None:
    """Draw upright and level lines from edge to edge, one pixel of the painter wide."""
    area = on.pixels[on.top : on.bottom, on.left : on.right]
    across = _stripes(xs_px, on.ratio, on.left, on.right)
    down = _stripes(ys_px, on.ratio, on.top, on.bottom)
    area[:, across] = colour
    area[down] = colour


def draw_hairs(on: Raster, lines_px: Floats, colours: Colours) -> None:
    """Draw lines one pixel of the image wide; columns x, y, x, y in pixels of the painter."""
    places = np.floor(lines_px * on.ratio)
    low, high = np.minimum(places[:, :2], places[:, 2:]), np.maximum(places[:, :2], places[:, 2:])
    seen = (low[:, 0] < on.right) & (high[:, 0] >= on.left) & (low[:, 1] < on.bottom) & (high[:, 1] >= on.top)
    low, high = low[seen].astype(np.intp), high[seen].astype(np.intp)
    ends, colours = places[seen], colours[seen]
    level, upright = low[:, 1] == high[:, 1], low[:, 0] == high[:, 0]
    _draw_runs(on, low, high, colours, np.flatnonzero(level), along=0)
    _draw_runs(on, low, high, colours, np.flatnonzero(upright & ~level), along=1)
    slanted = np.flatnonzero(~level & ~upright)
    _draw_slanted(on, ends[slanted], colours[slanted])


def draw_boxes(on: Raster, boxes_px: Floats, edge: int, fill: int) -> None:
    """Draw filled boxes with an edge of one pixel of the painter; left, top, right, bottom in its pixels."""
    places = np.rint(boxes_px * on.ratio).astype(np.intp)
    line = max(1, round(on.ratio))
    places[:, 2:] = np.maximum(places[:, 2:], places[:, :2]) + line
    seen = (places[:, 0] < on.right) & (places[:, 2] > on.left)
    seen &= (places[:, 1] < on.bottom) & (places[:, 3] > on.top)
    places = places[seen]
    cut = (places[:, 0] < on.left) | (places[:, 2] > on.right)
    cut |= (places[:, 1] < on.top) | (places[:, 3] > on.bottom)
    for left, top, right, bottom in places[cut].tolist():
        box = _box(right - left, bottom - top, line, edge, fill)
        x, y, u, v = max(left, on.left), max(top, on.top), min(right, on.right), min(bottom, on.bottom)
        piece = box[y - top : v - top, x - left : u - left]
        there = on.pixels[y:v, x:u]
        there[:] = piece if on.opacity >= 1.0 else _mixed(there, piece, on.opacity)
    whole = places[~cut]
    wide, high = whole[:, 2] - whole[:, 0], whole[:, 3] - whole[:, 1]
    sizes = wide << 20 | high
    for size in np.unique(sizes).tolist():
        width, height = size >> 20, size & 0xFFFFF
        some = whole[sizes == size]
        box = _box(width, height, line, edge, fill)
        windows = _windows(on.pixels, width, height)
        at = some[:, 1], some[:, 0]
        windows[at] = box if on.opacity >= 1.0 else _mixed(windows[at], box, on.opacity)


def _stripes(places_px: Floats, ratio: float, low: int, high: int) -> Whole:
    """Return the rows or columns of lines, counted from `low`."""
    first = np.rint(places_px * ratio).astype(np.intp)
    rows = (first[:, None] + np.arange(max(1, round(ratio)))).ravel()
    return np.asarray(rows[(rows >= low) & (rows < high)] - low)


def _draw_runs(on: Raster, low: Whole, high: Whole, colours: Colours, which: Whole, *, along: int) -> None:
    """Draw level lines (`along` 0) or upright ones (1) of the image."""
    across = 1 - along
    least, most = ((on.left, on.right), (on.top, on.bottom))[along]
    row = low[which, across]
    start = np.maximum(low[which, along], least)
    count = np.minimum(high[which, along], most - 1) - start + 1
    wide = on.pixels.shape[1]
    first, step = (row * wide + start, 1) if along == 0 else (start * wide + row, wide)
    # One long row of all pixels of all lines: its place within its line, times the step, from the first.
    places = np.arange(int(count.sum()))
    places -= np.repeat(np.cumsum(count) - count, count)
    if step != 1:
        places *= step
    places += np.repeat(first, count)
    _put(on, places, np.repeat(colours[which], count))


def _draw_slanted(on: Raster, ends: Floats, colours: Colours) -> None:
    way = ends[:, 2:] - ends[:, :2]
    most = np.abs(way).max(axis=1, initial=0.0)
    count = most.astype(np.intp) + 1
    step = np.arange(int(count.sum()), dtype=np.float32) if len(count) else np.empty(0, np.float32)
    step -= np.repeat((np.cumsum(count) - count).astype(np.float32), count)
    slope = (way / most[:, None]).astype(np.float32)
    start = (ends[:, :2] + 0.5).astype(np.float32)  # to be cut off, not rounded
    x = (np.repeat(start[:, 0], count) + step * np.repeat(slope[:, 0], count)).astype(np.intp)
    y = (np.repeat(start[:, 1], count) + step * np.repeat(slope[:, 1], count)).astype(np.intp)
    colours = np.repeat(colours, count)
    outside = (ends.reshape(-1, 2).min(axis=0, initial=0.0) < (on.left, on.top)).any() or (
        ends.reshape(-1, 2).max(axis=0, initial=0.0) >= (on.right, on.bottom)
    ).any()
    if outside:
        seen = (x >= on.left) & (x < on.right) & (y >= on.top) & (y < on.bottom)
        x, y, colours = x[seen], y[seen], colours[seen]
    _put(on, y * on.pixels.shape[1] + x, colours)


def _put(on: Raster, places: Whole, colours: Colours) -> None:
    flat = on.pixels.reshape(-1)
    flat[places] = colours if on.opacity >= 1.0 else _mixed(flat[places], colours, on.opacity)


def _mixed(under: Colours, over: Colours, share: float) -> Colours:
    """Return colours with others laid over them that let some through."""
    over = np.broadcast_to(over, under.shape)
    below, above = (np.ascontiguousarray(c).view(np.uint8).astype(np.float32) for c in (under, over))
    return (below + (above - below) * np.float32(share)).astype(np.uint8).view(np.uint32)


def _windows(pixels: NDArray[np.uint32], width: int, height: int) -> NDArray[np.uint32]:
    """Return every box of that size of an image, by the row and column of its corner; nothing is copied."""
    rows, columns = pixels.shape
    shape = rows - height + 1, columns - width + 1, height, width
    return np.ndarray(shape, np.uint32, pixels, strides=pixels.strides * 2)


@lru_cache(maxsize=512)
def _box(width: int, height: int, line: int, edge: int, fill: int) -> Colours:
    made = np.full((height, width), edge, np.uint32)
    made[line : height - line, line : width - line] = fill
    return made
