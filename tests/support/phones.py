"""A phone in a headless browser: pages are opened from disk, fingers tap, drag and pinch."""

import shutil
import time
from contextlib import contextmanager

import pytest

CHROMIUM, DRIVER = shutil.which("chromium"), shutil.which("chromedriver")
SWITCHES = (
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
ON_WIRE = """
const path = document.querySelector(`.wire[data-wire="${arguments[0]}"] path`);
const p = path.getPointAtLength(path.getTotalLength() * arguments[1]).matrixTransform(path.getScreenCTM());
return [p.x, p.y];
"""
CLEAR_SPOTS = """
const along = (path, steps) => Array.from({ length: steps }, (_, i) => {
  const at = path.getPointAtLength(path.getTotalLength() * i / (steps - 1));
  const p = at.matrixTransform(path.getScreenCTM());
  return [p.x, p.y];
});
const ways = [...document.querySelectorAll(".wire")].map(group => {
  const path = group.querySelector("path");
  return [group.dataset.wire, along(path, 41), along(path, 300)];
});
const found = {};
for (const [wire, spots] of ways) {
  const clear = spots.slice(4, -4).find(([x, y]) => ways.every(([other, , points]) =>
    other === wire || points.every(([u, v]) => Math.hypot(u - x, v - y) > 6)));
  if (clear) found[wire] = clear;
}
return found;
"""
AWAIT_TAP = """
window.tapped = false;  // until the page has it, which takes a moment on a busy machine
addEventListener("click", () => { window.tapped = true; }, { capture: true, once: true });
"""
REFUSE_STORAGE = """
Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } });
"""


class Phone:
    """One browser window the size of a phone, and two fingers."""

    def __init__(self, folder, width=360, height=740):
        if CHROMIUM is None or DRIVER is None:
            pytest.skip("needs chromium and chromedriver: apt-get install chromium chromium-driver")
        webdriver = pytest.importorskip("selenium.webdriver", reason="needs selenium: pip install selenium")
        from selenium.webdriver.chrome.service import Service

        options = webdriver.ChromeOptions()
        options.binary_location = CHROMIUM
        for switch in (*SWITCHES, f"--user-data-dir={folder / 'profile'}"):
            options.add_argument(switch)
        options.add_experimental_option("prefs", {"download.default_directory": str(folder)})
        options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
        self.driver = webdriver.Chrome(options=options, service=Service(DRIVER))
        self.resize(width, height)
        self.cdp("Emulation.setTouchEmulationEnabled", enabled=True, maxTouchPoints=5)
        self.looks("light")

    def cdp(self, command, **arguments):
        return self.driver.execute_cdp_cmd(command, arguments)

    def resize(self, width, height):
        self.cdp(
            "Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=2, mobile=True
        )

    def looks(self, scheme):
        features = [
            {"name": "prefers-color-scheme", "value": scheme},
            {"name": "prefers-reduced-motion", "value": "reduce"},  # so that nothing is still on its way
        ]
        self.cdp("Emulation.setEmulatedMedia", features=features)

    def open(self, path, fresh=True):
        """Open a page; a fresh one finds nothing kept from before."""
        if not fresh:
            time.sleep(0.3)  # a busy browser keeps what it is told a moment later, no hand is so quick
        with self.beforehand("localStorage.clear()" if fresh else ""):
            self.driver.get(path.as_uri())

    @contextmanager
    def beforehand(self, script):
        """Run a script in each page that is opened meanwhile, before the page's own."""
        made = self.cdp("Page.addScriptToEvaluateOnNewDocument", source=script)
        try:
            yield
        finally:
            self.cdp("Page.removeScriptToEvaluateOnNewDocument", identifier=made["identifier"])

    def run(self, script, *arguments):
        return self.driver.execute_script(script, *arguments)

    def text(self, selector):
        return self.run("return document.querySelector(arguments[0]).textContent", selector)

    def texts(self, selector):
        script = "return [...document.querySelectorAll(arguments[0])].map(e => e.textContent)"
        return self.run(script, selector)

    def count(self, selector):
        return self.run("return document.querySelectorAll(arguments[0]).length", selector)

    def tap(self, selector):
        """Tap the middle of the first such element, brought into view as a person would scroll to it."""
        x, y, top = self.run(
            """const e = document.querySelector(arguments[0]); e.scrollIntoView({ block: "center" });
            const b = e.getBoundingClientRect(), x = b.left + b.width / 2, y = b.top + b.height / 2;
            const on = document.elementFromPoint(x, y);
            return [x, y, Boolean(on) && (e === on || e.contains(on) || on.contains(e))];""",
            selector,
        )
        assert top, f"{selector} is covered"
        self.run(AWAIT_TAP)
        self.tap_at(x, y)
        assert self.becomes(lambda: self.run("return window.tapped !== false")), f"{selector} was not tapped"

    def tap_at(self, x, y):
        self.touch("touchStart", (x, y))
        self.touch("touchEnd")

    def touch(self, kind, *points):
        fingers = [{"x": x, "y": y, "id": i} for i, (x, y) in enumerate(points)]
        self.cdp("Input.dispatchTouchEvent", type=kind, touchPoints=fingers)

    def on_wire(self, wire, share):
        """Return where on the screen a wire lies, a share of its length from its start."""
        return self.run(ON_WIRE, wire, share)

    def clear_spots(self):
        """Return a spot on each wire that has one six pixels away from every other wire."""
        return self.run(CLEAR_SPOTS)

    def enter(self, selector, value):
        self.run(
            """const field = document.querySelector(arguments[0]); field.value = arguments[1];
            field.dispatchEvent(new Event("input"));""",
            selector,
            value,
        )

    def becomes(self, true):
        """Return whether something comes true within a few seconds."""
        return any(true() or time.sleep(0.1) for _ in range(50))

    def complaints(self):
        return [line["message"] for line in self.driver.get_log("browser")]

    def close(self):
        self.driver.quit()
