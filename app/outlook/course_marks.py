"""What is marked on a battery's course: its typical end, the reading it starts from, what is pointed at."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from app.outlook.chart_pen import LEFT_OF, MIDDLE, ChartPen
from app.outlook.course_frames import DAYS, Frames, along, lasts, reading_at, when_words
from app.theme.surfaces import Surfaces, mixed
from app.theme.words import lined
from wiring.studies.outlook import Outlook

END_WORDS, END_AIR_PX = "typical end", 16.0


def end_plate_width(pen: ChartPen) -> float:
    """Return how wide the plate is that names the typical end."""
    return pen.width(END_WORDS, "semibold") + END_AIR_PX


class CourseMarks(ChartPen):
    """Painted over the course; made anew for each paint."""

    def __init__(self, painter: QPainter, outlook: Outlook, s: Surfaces, what: str) -> None:
        super().__init__(painter, s)
        self.outlook, self.what = outlook, what

    def paint(self, f: Frames, hover: float | None) -> None:
        """Paint the marks, and a reading where the pointer is."""
        self._end(f)
        if self.outlook.measured:
            self._measured(f)
        if hover is not None:
            self._hover(f, hover)

    def _end(self, f: Frames) -> None:
        span, curve = lasts(self.outlook, self.what), self.outlook.curve
        x = f.across.px(span.typical)
        pen = QPen(QColor(self.s.copper), 1.4)
        pen.setDashPattern([3, 3])
        self.p.setPen(pen)
        self.p.drawLine(QPointF(x, f.volts_box.top() - 2), QPointF(x, f.foot_px))
        width = end_plate_width(self)
        left = min(max(x - width / 2, f.volts_box.left()), f.volts_box.right() + 18 - width)
        high = lined(19)
        plate = QRectF(left, f.volts_box.top() - 2 - high, width, high)
        self.p.setPen(Qt.PenStyle.NoPen)
        self.p.setBrush(QColor(self.s.copper))
        self.p.drawRoundedRect(plate, high / 2, high / 2)
        self.words(plate.center().x(), plate.center().y(), END_WORDS, self.s.on_copper, MIDDLE, "semibold")
        self.p.setPen(QPen(QColor(self.s.paper), 2))
        self.p.setBrush(QColor(self.s.copper))
        if curve.volts:
            self.p.drawEllipse(QPointF(x, f.volts.px(curve.volts[-1])), 5, 5)
        if f.light is not None and curve.lightness:
            self.p.setBrush(QColor(self.s.ink))
            self.p.drawEllipse(QPointF(x, f.light.px(curve.lightness[-1])), 5, 5)

    def _measured(self, f: Frames) -> None:
        """Mark the reading the forecast starts from."""
        curve = self.outlook.curve
        if not curve.hours:
            return
        place = QPointF(f.across.px(along(curve, self.what)[0]), f.volts.px(curve.volts[0]))
        self.p.setPen(QPen(QColor(self.s.copper), 2))
        self.p.setBrush(QColor(self.s.paper))
        self.p.drawEllipse(place, 5, 5)
        words = f"measured, {curve.volts[0]:.2f} V"
        self.words(place.x() + 11, place.y() - lined(10, 0.5), words, self.s.copper, LEFT_OF, "semibold")

    def _hover(self, f: Frames, place: float) -> None:
        reading = reading_at(self.outlook.curve, place, self.what)
        if reading is None:
            return
        x = f.across.px(reading.days if self.what == DAYS else reading.hours)
        self.p.setPen(QPen(QColor(self.s.quiet), 1))
        self.p.drawLine(QPointF(x, f.volts_box.top()), QPointF(x, f.foot_px))
        lines = [f"{reading.volts:.2f} V", f"{reading.hours:.1f} h lit"]
        lines.append(when_words(reading.days, self.outlook.counted_from))
        dots = [(f.volts.px(reading.volts), self.s.copper)]
        if reading.lightness is not None and f.light is not None:
            dots.append((f.light.px(reading.lightness), self.s.ink))
            lines.insert(1, f"light {reading.lightness:.0f} of 100")
        self.p.setPen(QPen(QColor(self.s.paper), 1.5))
        for y, colour in dots:
            self.p.setBrush(QColor(colour))
            self.p.drawEllipse(QPointF(x, y), 4.5, 4.5)
        width = max(self.width(line, "semibold") for line in lines) + 24
        line_px = lined(18)
        height = 12 + line_px * len(lines)
        left = x + 14 if x + 14 + width < f.volts_box.right() else x - 14 - width
        plate = QRectF(left, f.volts_box.top() + 12, width, height)
        self.p.setPen(QPen(QColor(self.s.edge), 1))
        self.p.setBrush(QColor(mixed(self.s.side, self.s.field, 0.8)))
        self.p.drawRoundedRect(plate, 7, 7)
        for number, line in enumerate(lines):
            first = number == 0
            y = plate.top() + 6 + line_px * (number + 0.5)
            colour, weight = (self.s.copper, "semibold") if first else (self.s.ink, "regular")
            self.words(plate.left() + 12, y, line, colour, LEFT_OF, weight)
