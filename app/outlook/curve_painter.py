"""Paints a battery's course: volts above, light below, sessions as bands, the end marked and its spread."""

from datetime import date
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QLinearGradient, QPainter, QPen, QPolygonF

from app.outlook.axis import Axis, tick_words, ticks
from app.outlook.calendar_ticks import calendar_ticks
from app.outlook.chart_pen import LEFT_OF, MIDDLE, RIGHT_OF, ChartPen
from app.outlook.course_frames import (
    DAYS,
    HOURS,
    Frames,
    along,
    frames,
    lasts,
    sessions_along,
    when_words,
)
from app.outlook.course_marks import CourseMarks, end_plate_width
from app.theme.surfaces import Surfaces
from app.theme.words import lined, scaled
from wiring.studies.outlook import Outlook

VOLTS_TITLE = "Volts at the battery, under load"
NUMBERED_PX = 24.0  # a session's band as wide as this bears its number
LABEL_PX = 96.0  # between labels along the foot
DATE_AIR_PX = 14.0  # between two dates
LIMIT_AIR_PX = 22.0  # over or under the line of a limit, for its words
SEEN_PX = 1.5  # the least width of a session's band


class CurvePainter(ChartPen):
    """Paints one outlook; made anew for each paint, so it keeps nothing."""

    def __init__(self, painter: QPainter, outlook: Outlook, s: Surfaces, what: str = HOURS) -> None:
        super().__init__(painter, s)
        self.outlook, self.what = outlook, what

    def paint(self, room: QRectF, hover: float | None) -> None:
        """Paint everything, and a reading where the pointer is."""
        f = frames(self.outlook, room, self.what)
        curve = self.outlook.curve
        self.p.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._sessions(f)
        self._spread(f)
        self._grid(f.volts_box, f.volts, VOLTS_TITLE)
        if f.light_box is not None and f.light is not None:
            self._grid(f.light_box, f.light, "Light of the faintest lamp, of 100 when fresh")
        self._limits(f)
        self._foot(f)
        self._line(f, f.volts, f.volts_box, curve.volts, self.s.copper)
        if f.light is not None and f.light_box is not None:
            self._line(f, f.light, f.light_box, curve.lightness, self.s.ink)
        CourseMarks(self.p, self.outlook, self.s, self.what).paint(f, hover)

    def _sessions(self, f: Frames) -> None:
        """Shade the sessions: every other one along the hours, all of them along the calendar."""
        bands = sessions_along(self.outlook.curve, self.what)
        shade = self.faint(self.s.ink, 10 if self.what == HOURS else 20)
        # Else small ones were run as one, or nothing is ever off.
        single = not self.outlook.always_on and abs(len(bands) - self.outlook.sessions.typical) <= 1.0
        foot, clear_from = f.volts_box.bottom() - lined(11, 0.5), self._clear_from(f)
        for number, (first, last) in enumerate(bands, start=1):
            left, right = f.across.px(first), f.across.px(last)
            if self.what == DAYS or (single and number % 2 == 0):
                for box in filter(None, (f.volts_box, f.light_box)):
                    self.p.fillRect(QRectF(left, box.top(), max(right - left, SEEN_PX), box.height()), shade)
            numbered = self.what == HOURS and single and right - left >= scaled(NUMBERED_PX)
            middle = (left + right) / 2
            if numbered and middle - self.width(str(number)) / 2 > clear_from:
                self.words(middle, foot, str(number), self.s.quiet, MIDDLE)

    def _clear_from(self, f: Frames) -> float:
        """Return from where along the foot numbers do not run into the words on the lowest volts."""
        above_foot = f.volts_box.bottom() - lined(11, 0.5) - (f.volts.px(self.outlook.end_v) - lined(9, 0.5))
        if not f.volts.low < self.outlook.end_v < f.volts.high or above_foot > lined(14):
            return f.volts_box.left()
        return f.volts_box.left() + self.width(self._over_words()) + 12

    def _over_words(self) -> str:
        return f"over at {self.outlook.end_v:.1f} V"

    def _spread(self, f: Frames) -> None:
        """Shade when poor and very good cells end, densest at the typical end."""
        span = lasts(self.outlook, self.what)
        low, typical, high = (f.across.px(value) for value in span)
        if high - low < 1:
            return
        shade = QLinearGradient(low, 0, high, 0)
        shade.setColorAt(0, self.faint(self.s.copper, 10))
        shade.setColorAt(min(max((typical - low) / (high - low), 0.0), 1.0), self.faint(self.s.copper, 60))
        shade.setColorAt(1, self.faint(self.s.copper, 10))
        pen = QPen(self.faint(self.s.copper, 90), 1)
        for box in filter(None, (f.volts_box, f.light_box)):
            self.p.fillRect(QRectF(low, box.top(), high - low, box.height()), shade)
            self.p.setPen(pen)
            for x in (low, high):
                self.p.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()))
        y, half = f.volts_box.top() - lined(11, 0.5), end_plate_width(self) / 2 + 6
        poor = "poor cells end"
        right = min(low - 4, typical - half)
        if right - self.width(poor) > f.across.start_px + self.width(VOLTS_TITLE) + 12:
            self.words(right, y, poor, self.s.quiet, RIGHT_OF)
        left = max(high + 4, typical + half)
        if left + self.width("best") < f.volts_box.right() + 24:
            self.words(left, y, "best", self.s.quiet, LEFT_OF)

    def _grid(self, box: QRectF, axis: Axis, title: str) -> None:
        values = ticks(axis.low, axis.high, max(2, int(box.height() / lined(42))))
        step = values[1] - values[0] if len(values) > 1 else 1.0
        for value in values:
            y = axis.px(value)
            self.p.setPen(QPen(QColor(self.s.hair), 1))
            self.p.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
            self.words(box.left() - 9, y, tick_words(value, step), self.s.quiet, RIGHT_OF)
        self.words(box.left(), box.top() - lined(11, 0.5), title, self.s.ink, LEFT_OF, "semibold")

    def _limits(self, f: Frames) -> None:
        """Draw the volts at which it is over, and the light below which it is too dim."""
        pen = QPen(self.faint(self.s.copper, 150), 1)
        pen.setDashPattern([2, 4])
        limits = [(f.volts, f.volts_box, self.outlook.end_v, self._over_words())]
        if f.light is not None and f.light_box is not None and self.outlook.dim_lightness > 0:
            dim = self.outlook.dim_lightness
            limits.append((f.light, f.light_box, dim, f"too dim below {dim:.0f}"))
        for axis, box, value, words in limits:
            if axis.low < value < axis.high:
                y = axis.px(value)
                self.p.setPen(pen)
                self.p.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))
                if y - box.top() >= lined(LIMIT_AIR_PX):  # else they would run into the title above
                    self.words(box.left() + 6, y - lined(9, 0.5), words, self.s.copper, LEFT_OF)
                elif box.bottom() - y >= lined(LIMIT_AIR_PX):
                    self.words(box.left() + 6, y + lined(9, 0.5), words, self.s.copper, LEFT_OF)

    def _foot(self, f: Frames) -> None:
        """Label the foot with hours or dates, and the head with the dates that go with the hours."""
        box, start = f.light_box or f.volts_box, self.outlook.counted_from
        room = max(2, int(box.width() / scaled(LABEL_PX)))
        if self.what == DAYS:
            labels = calendar_ticks(start, f.across.high, room)
            title = "Calendar; shaded while lamps are lit"
        else:
            values = ticks(0.0, f.across.high, room)
            step = values[1] - values[0] if len(values) > 1 else 1.0
            labels = tuple((value, tick_words(value, step)) for value in values)
            title = "Hours lit since it was measured" if self.outlook.measured else "Hours lit"
            self._dates(f, start)
        self.p.setPen(QPen(QColor(self.s.edge), 1))
        self.p.drawLine(box.bottomLeft(), box.bottomRight())
        for value, words in labels:
            x = f.across.px(value)
            self.p.setPen(QPen(QColor(self.s.edge), 1))
            self.p.drawLine(QPointF(x, box.bottom()), QPointF(x, box.bottom() + 4))
            self.words(x, box.bottom() + lined(14, 0.5), words, self.s.quiet, MIDDLE)
        self.words(box.center().x(), box.bottom() + lined(33, 1.5), title, self.s.quiet, MIDDLE)

    def _dates(self, f: Frames, start: date | None) -> None:
        curve = self.outlook.curve
        if len(curve.hours) < 2 or curve.hours[-1] <= 0:
            return
        y, days_per_hour = f.volts_box.top() - lined(36, 1.5), curve.days[-1] / curve.hours[-1]
        last = when_words(curve.days[-1], start).replace(" after fitting", "")
        roomy = f.volts_box.width() / 4 > self.width(last) + DATE_AIR_PX
        for share in (0.25, 0.5, 0.75, 1.0) if roomy else (0.4, 1.0):
            hours = curve.hours[-1] * share
            words = when_words(hours * days_per_hour, start).replace(" after fitting", "")
            x = min(f.across.px(hours), f.volts_box.right() - self.width(words) / 2)
            self.words(x, y, words, self.s.quiet, MIDDLE)

    def _line(self, f: Frames, up: Axis, box: QRectF, ys: tuple[float, ...], colour: str) -> None:
        """Draw a course with a soft ground below it; along the calendar, rests are only hinted at."""
        xs = along(self.outlook.curve, self.what)
        points = [QPointF(f.across.px(x), up.px(y)) for x, y in zip(xs, ys, strict=True)]
        if len(points) < 2:
            return
        ground = QLinearGradient(0, box.top(), 0, box.bottom())
        ground.setColorAt(0, self.faint(colour, 46))
        ground.setColorAt(1, self.faint(colour, 4))
        self.p.setPen(Qt.PenStyle.NoPen)
        self.p.setBrush(ground)
        feet = [QPointF(points[-1].x(), box.bottom()), QPointF(points[0].x(), box.bottom())]
        self.p.drawPolygon(QPolygonF([*points, *feet]))
        self.p.setBrush(Qt.BrushStyle.NoBrush)
        pen = QPen(QColor(colour), 2)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        if self.what == HOURS:
            self.p.setPen(pen)
            self.p.drawPolyline(QPolygonF(points))
            return
        self.p.setPen(QPen(self.faint(colour, 80), 1))
        self.p.drawPolyline(QPolygonF(points))
        self.p.setPen(pen)
        lit = self.outlook.curve.hours
        for (one, other), (before, after) in zip(pairwise(points), pairwise(lit), strict=True):
            if after > before:
                self.p.drawLine(one, other)
