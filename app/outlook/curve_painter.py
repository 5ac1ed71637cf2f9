"""Paints a battery's course: volts above, light below, hours lit at the foot, the calendar at the head."""

from bisect import bisect_left
from datetime import date, timedelta
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from app.outlook.axis import Axis, tick_words, ticks
from app.theme.fonts import screen_font
from app.theme.surfaces import Surfaces, mixed
from wiring.studies.outlook import Curve, Outlook

LEFT, RIGHT, TOP, BOTTOM, BETWEEN = 58.0, 22.0, 40.0, 44.0, 30.0
VOLTS_SHARE = 0.58  # of the height, when there is light to show below
_DAYS_A_MONTH = 30.44


class Frames(NamedTuple):
    """Where the two plots lie and what their axes mean."""

    volts_box: QRectF
    light_box: QRectF | None
    hours: Axis
    volts: Axis
    light: Axis | None


class Reading(NamedTuple):
    """What the curve says at one moment."""

    hours: float
    days: float
    volts: float
    lightness: float | None


def frames(outlook: Outlook, room: QRectF) -> Frames:
    """Return where everything goes in a room of that size."""
    curve = outlook.curve
    left, right = room.left() + LEFT, room.right() - RIGHT
    top, bottom = room.top() + TOP, room.bottom() - BOTTOM
    longest = max([outlook.hours.high, *curve.hours[-1:]]) or 1.0
    hours = Axis(0.0, longest * 1.03, left, right)
    split = top + (bottom - top) * VOLTS_SHARE if curve.lightness else bottom
    volts_box = QRectF(left, top, right - left, split - top)
    low, high = min(curve.volts, default=0.0), max(curve.volts, default=1.0)
    air = max((high - low) * 0.12, 0.05)
    volts = Axis(max(0.0, low - air), high + air, volts_box.bottom(), volts_box.top())
    if not curve.lightness:
        return Frames(volts_box, None, hours, volts, None)
    light_box = QRectF(left, split + BETWEEN, right - left, bottom - split - BETWEEN)
    light = Axis(0.0, max(105.0, max(curve.lightness) * 1.05), light_box.bottom(), light_box.top())
    return Frames(volts_box, light_box, hours, volts, light)


def reading_at(curve: Curve, hours: float) -> Reading | None:
    """Return the curve's sample nearest to a number of hours."""
    if not curve.hours:
        return None
    after = min(bisect_left(curve.hours, hours), len(curve.hours) - 1)
    before = max(after - 1, 0)
    nearest = before if hours - curve.hours[before] < curve.hours[after] - hours else after
    light = curve.lightness[nearest] if curve.lightness else None
    return Reading(curve.hours[nearest], curve.days[nearest], curve.volts[nearest], light)


def when_words(days: float, fitted: date | None) -> str:
    """Return a date, or how long after fitting when no date is known."""
    if fitted is not None:
        return (fitted + timedelta(days=int(days))).strftime("%d %b %Y").lstrip("0")
    if days < 2 * _DAYS_A_MONTH:
        return f"{days:.0f} days after fitting"
    return f"{days / _DAYS_A_MONTH:.1f} months after fitting"


def fitted_on(outlook: Outlook) -> date | None:
    """Return the day the course is counted from, as far as the forecast knows it."""
    return outlook.counted_from


class CurvePainter:
    """Paints one outlook; made anew for each paint, so it keeps nothing."""

    def __init__(self, painter: QPainter, outlook: Outlook, s: Surfaces, lit: str) -> None:
        self.p, self.outlook, self.s, self.lit = painter, outlook, s, lit

    def paint(self, room: QRectF, hover_hours: float | None) -> None:
        """Paint everything, and a reading where the pointer is."""
        f = frames(self.outlook, room)
        curve = self.outlook.curve
        self.p.setRenderHint(QPainter.RenderHint.Antialiasing)
        for box, axis, title in (
            (f.volts_box, f.volts, "Volts at the battery"),
            (f.light_box, f.light, "Light"),
        ):
            if box is not None and axis is not None:
                self._grid(box, axis, title)
        self._band(f)
        self._hours_axis(f)
        self._calendar(f)
        self._line(f.hours, f.volts, curve.hours, curve.volts, self.s.copper)
        if f.light is not None:
            self._line(f.hours, f.light, curve.hours, curve.lightness, self.s.ink)
        self._end(f)
        if self.outlook.measured:
            self._measured(f)
        if hover_hours is not None:
            self._hover(f, hover_hours)

    def _words(
        self, x: float, y: float, text: str, colour: str, align: Qt.AlignmentFlag, weight: str = "regular"
    ) -> None:
        self.p.setFont(screen_font(12, weight))
        self.p.setPen(QColor(colour))
        width = 260.0
        left = {Qt.AlignmentFlag.AlignLeft: x, Qt.AlignmentFlag.AlignRight: x - width}.get(
            align, x - width / 2
        )
        self.p.drawText(QRectF(left, y - 9, width, 18), align | Qt.AlignmentFlag.AlignVCenter, text)

    def _grid(self, box: QRectF, axis: Axis, title: str) -> None:
        values = ticks(axis.low, axis.high, max(2, int(box.height() / 42)))
        step = values[1] - values[0] if len(values) > 1 else 1.0
        for value in values:
            y = axis.px(value)
            self.p.setPen(QPen(QColor(self.s.hair), 1))
            self.p.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
            self._words(box.left() - 9, y, tick_words(value, step), self.s.quiet, Qt.AlignmentFlag.AlignRight)
        self._words(box.left() - 2, box.top() - 11, title, self.s.ink, Qt.AlignmentFlag.AlignLeft, "semibold")

    def _band(self, f: Frames) -> None:
        low, high = f.hours.px(self.outlook.hours.low), f.hours.px(self.outlook.hours.high)
        colour = QColor(self.s.copper)
        colour.setAlpha(34)
        for box in filter(None, (f.volts_box, f.light_box)):
            self.p.fillRect(QRectF(low, box.top(), max(high - low, 2), box.height()), colour)
        y = f.volts_box.bottom() - 11
        self._words(low + 6, y, "low", self.s.quiet, Qt.AlignmentFlag.AlignLeft)
        self._words(high - 6, y, "high", self.s.quiet, Qt.AlignmentFlag.AlignRight)

    def _hours_axis(self, f: Frames) -> None:
        box = f.light_box or f.volts_box
        values = ticks(0.0, f.hours.high, max(2, int(box.width() / 90)))
        step = values[1] - values[0] if len(values) > 1 else 1.0
        self.p.setPen(QPen(QColor(self.s.edge), 1))
        self.p.drawLine(box.bottomLeft(), box.bottomRight())
        for value in values:
            self.p.setPen(QPen(QColor(self.s.edge), 1))
            x = f.hours.px(value)
            self.p.drawLine(QPointF(x, box.bottom()), QPointF(x, box.bottom() + 4))
            self._words(
                x, box.bottom() + 14, tick_words(value, step), self.s.quiet, Qt.AlignmentFlag.AlignHCenter
            )
        title = "Hours lit since it was measured" if self.outlook.measured else "Hours lit"
        self._words(box.center().x(), box.bottom() + 32, title, self.s.quiet, Qt.AlignmentFlag.AlignHCenter)

    def _calendar(self, f: Frames) -> None:
        curve, fitted = self.outlook.curve, fitted_on(self.outlook)
        if len(curve.hours) < 2 or curve.hours[-1] <= 0:
            return
        days_per_hour = curve.days[-1] / curve.hours[-1]
        y = f.volts_box.top() - 29
        for share in (0.25, 0.5, 0.75, 1.0):
            hours = curve.hours[-1] * share
            words = when_words(hours * days_per_hour, fitted).replace(" after fitting", "")
            x = min(f.hours.px(hours), f.volts_box.right() - 40)
            self._words(x, y, words, self.s.quiet, Qt.AlignmentFlag.AlignHCenter)

    def _line(
        self, across: Axis, up: Axis, xs: tuple[float, ...], ys: tuple[float, ...], colour: str
    ) -> None:
        self.p.setPen(QPen(QColor(colour), 2))
        self.p.setBrush(Qt.BrushStyle.NoBrush)
        self.p.drawPolyline(QPolygonF([QPointF(across.px(x), up.px(y)) for x, y in zip(xs, ys, strict=True)]))

    def _end(self, f: Frames) -> None:
        x = f.hours.px(self.outlook.hours.typical)
        bottom = (f.light_box or f.volts_box).bottom()
        pen = QPen(QColor(self.s.copper), 1.4)
        pen.setDashPattern([3, 3])
        self.p.setPen(pen)
        self.p.drawLine(QPointF(x, f.volts_box.top() - 16), QPointF(x, bottom))
        side = Qt.AlignmentFlag.AlignRight if x > f.volts_box.center().x() else Qt.AlignmentFlag.AlignLeft
        away = -6 if side == Qt.AlignmentFlag.AlignRight else 6
        self._words(x + away, f.volts_box.top() + 10, "typical end", self.s.copper, side, "semibold")

    def _measured(self, f: Frames) -> None:
        """Mark the reading the forecast starts from."""
        curve = self.outlook.curve
        if not curve.hours:
            return
        place = QPointF(f.hours.px(curve.hours[0]), f.volts.px(curve.volts[0]))
        self.p.setPen(QPen(QColor(self.s.copper), 2))
        self.p.setBrush(QColor(self.s.paper))
        self.p.drawEllipse(place, 5, 5)
        self._words(
            place.x() + 11, place.y() - 10, "measured", self.s.copper, Qt.AlignmentFlag.AlignLeft, "semibold"
        )

    def _hover(self, f: Frames, hours: float) -> None:
        reading = reading_at(self.outlook.curve, hours)
        if reading is None:
            return
        x, bottom = f.hours.px(reading.hours), (f.light_box or f.volts_box).bottom()
        self.p.setPen(QPen(QColor(self.s.quiet), 1))
        self.p.drawLine(QPointF(x, f.volts_box.top()), QPointF(x, bottom))
        self.p.setPen(Qt.PenStyle.NoPen)
        self.p.setBrush(QColor(self.s.copper))
        self.p.drawEllipse(QPointF(x, f.volts.px(reading.volts)), 4, 4)
        lines = [
            f"{reading.hours:.0f} h lit",
            when_words(reading.days, fitted_on(self.outlook)),
            f"{reading.volts:.2f} V",
        ]
        if reading.lightness is not None and f.light is not None:
            self.p.setBrush(QColor(self.s.ink))
            self.p.drawEllipse(QPointF(x, f.light.px(reading.lightness)), 4, 4)
            lines.append(f"light {reading.lightness:.0f} of 100")
        width, height = 158.0, 10 + 18.0 * len(lines)
        left = x + 12 if x + 12 + width < f.volts_box.right() else x - 12 - width
        plate = QRectF(left, f.volts_box.top() + 24, width, height)
        self.p.setPen(QPen(QColor(self.s.hair), 1))
        self.p.setBrush(QColor(mixed(self.s.side, self.s.field, 0.8)))
        self.p.drawRoundedRect(plate, 6, 6)
        for number, line in enumerate(lines):
            y = plate.top() + 14 + 18 * number
            self._words(plate.left() + 10, y, line, self.s.ink, Qt.AlignmentFlag.AlignLeft)
