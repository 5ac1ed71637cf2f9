// The plan: drag, pinch and wheel move it; a tap finds the nearest wire; chosen wires light up.
function openPlan(svg, onPick) {
  const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  const [, , wide, high] = svg.getAttribute("viewBox").split(" ").map(Number);
  const wires = new Map();
  for (const group of svg.querySelectorAll(".wire")) {
    const numbers = group.firstElementChild.getAttribute("d").match(/-?[\d.]+/g).map(Number);
    const points = [];
    for (let i = 0; i + 1 < numbers.length; i += 2) points.push([numbers[i], numbers[i + 1]]);
    wires.set(group.dataset.wire, { group, points });
  }
  // Each word on the plan begins with the name of its wire or part.
  const words = [...svg.querySelectorAll(".layer-words text")].map((text) => [text, text.textContent.split(" ")[0]]);
  for (const [text] of words) text.setAttribute("lengthAdjust", "spacingAndGlyphs");
  const layer = svg.querySelector(".layer-marks");
  const REACH_PX = 20;
  const CLOSEST_MM = 24;
  const TOOLS_PX = 52;
  const READABLE = 5.5; // pixels a millimetre: labels are as large as the words of the lists
  let view = { x: 0, y: 0, w: wide, h: high };
  let moving = 0;
  let lastPick = null;

  // Asking for it while the plan moves would lay the whole drawing out once more each time.
  let box = svg.getBoundingClientRect();
  const unit = () => view.w / Math.max(box.width, 1);

  // The view that holds a box, beside the buttons at the right edge.
  function frame(x, y, spanX, spanY, least) {
    const width = Math.max(box.width, 1);
    const ratio = width / Math.max(box.height, 1);
    const free = Math.max(width - TOOLS_PX, 1) / width;
    const w = Math.max(spanX / free, spanY * ratio, least);
    return { x: x - (w * free) / 2, y: y - w / ratio / 2, w, h: w / ratio };
  }

  const whole = () => frame(wide / 2, high / 2, wide, high, 1);

  function show(next) {
    const all = whole();
    const ratio = all.w / all.h;
    const w = Math.min(Math.max(next.w, CLOSEST_MM), all.w * 1.15);
    const x = Math.min(Math.max(next.x + next.w / 2, 0), wide);
    const y = Math.min(Math.max(next.y + next.h / 2, 0), high);
    view = { x: x - w / 2, y: y - w / ratio / 2, w, h: w / ratio };
    svg.setAttribute("viewBox", `${view.x} ${view.y} ${view.w} ${view.h}`);
    const u = unit();
    svg.style.setProperty("--u", u.toFixed(4));
    svg.classList.toggle("far", u > 0.42);
    for (const mark of layer.children) {
      mark.setAttribute("transform", `translate(${mark.dataset.x} ${mark.dataset.y}) scale(${u})`);
    }
  }

  // Fingers report faster than the drawing can follow: the last report before a frame counts.
  function soon(next) {
    const all = whole();
    view = { ...next, h: (next.w * all.h) / all.w };
    cancelAnimationFrame(moving);
    moving = requestAnimationFrame(() => show(view));
  }

  function glide(target) {
    cancelAnimationFrame(moving);
    if (calm) return show(target);
    const from = { ...view };
    const begun = performance.now();
    const step = (now) => {
      const t = Math.min((now - begun) / 260, 1);
      const s = t * t * (3 - 2 * t);
      const between = (key) => from[key] + (target[key] - from[key]) * s;
      show({ x: between("x"), y: between("y"), w: between("w"), h: between("h") });
      if (t < 1) moving = requestAnimationFrame(step);
    };
    moving = requestAnimationFrame(step);
  }

  function around(points) {
    const xs = points.map((p) => p[0]);
    const ys = points.map((p) => p[1]);
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
    return frame((left + right) / 2, (top + bottom) / 2, (right - left) * 1.25, (bottom - top) * 1.4, box.width / READABLE);
  }

  function zoomAbout(factor, clientX, clientY) {
    const fx = clientX === undefined ? 0.5 : (clientX - box.left) / box.width;
    const fy = clientY === undefined ? 0.5 : (clientY - box.top) / box.height;
    const w = view.w / factor;
    const h = view.h / factor;
    return { x: view.x + (view.w - w) * fx, y: view.y + (view.h - h) * fy, w, h };
  }

  function distance(p, points) {
    let least = Infinity;
    for (let i = 1; i < points.length; i += 1) {
      const [ax, ay] = points[i - 1];
      const [bx, by] = points[i];
      const long = (bx - ax) ** 2 + (by - ay) ** 2;
      const t = long ? Math.min(Math.max(((p[0] - ax) * (bx - ax) + (p[1] - ay) * (by - ay)) / long, 0), 1) : 0;
      least = Math.min(least, Math.hypot(p[0] - ax - t * (bx - ax), p[1] - ay - t * (by - ay)));
    }
    return least;
  }

  // Wires of one bundle lie closer than a finger is wide: a second tap on the same spot gives the next of them.
  function pick(clientX, clientY) {
    const p = [view.x + ((clientX - box.left) / box.width) * view.w, view.y + ((clientY - box.top) / box.height) * view.h];
    const reach = REACH_PX * unit();
    const near = [...wires]
      .map(([id, wire]) => [distance(p, wire.points), id])
      .filter(([far]) => far <= reach)
      .sort((a, b) => a[0] - b[0])
      .map(([, id]) => id);
    const still = lastPick && Math.hypot(clientX - lastPick.x, clientY - lastPick.y) < 14;
    const again = still && near[0] === lastPick.order[0] && near.includes(lastPick.id);
    const order = again ? lastPick.order.filter((id) => near.includes(id)) : near;
    const id = again ? order[(order.indexOf(lastPick.id) + 1) % order.length] : order[0];
    lastPick = id ? { x: clientX, y: clientY, id, order } : null;
    onPick(id || "", order.length);
  }

  const fingers = new Map();
  let tap = null;
  svg.addEventListener("pointerdown", (event) => {
    cancelAnimationFrame(moving);
    box = svg.getBoundingClientRect();
    svg.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    tap = fingers.size === 1 ? { x: event.clientX, y: event.clientY } : null;
  });
  svg.addEventListener("pointermove", (event) => {
    const finger = fingers.get(event.pointerId);
    if (!finger) return;
    const other = [...fingers].find(([id]) => id !== event.pointerId);
    const dx = event.clientX - finger.x;
    const dy = event.clientY - finger.y;
    if (tap && Math.hypot(event.clientX - tap.x, event.clientY - tap.y) > 9) tap = null;
    if (tap) return;
    let next = { ...view };
    if (other && fingers.size === 2) {
      const [, o] = other;
      const before = Math.max(Math.hypot(finger.x - o.x, finger.y - o.y), 8);
      const now = Math.max(Math.hypot(event.clientX - o.x, event.clientY - o.y), 8);
      next = zoomAbout(now / before, (event.clientX + o.x) / 2, (event.clientY + o.y) / 2);
    }
    const share = fingers.size === 2 ? 0.5 : 1;
    next.x -= dx * unit() * share;
    next.y -= dy * unit() * share;
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    soon(next);
  });
  svg.addEventListener("pointerup", (event) => {
    if (tap && fingers.size === 1) pick(tap.x, tap.y);
    fingers.delete(event.pointerId);
    tap = null;
  });
  svg.addEventListener("pointercancel", (event) => {
    fingers.delete(event.pointerId);
    tap = null;
  });
  svg.addEventListener("wheel", (event) => {
    event.preventDefault();
    soon(zoomAbout(Math.exp(-event.deltaY * 0.002), event.clientX, event.clientY));
  }, { passive: false });

  function mark(x, y, name) {
    const group = document.createElementNS(svg.namespaceURI, "g");
    group.setAttribute("class", `mark ${name}`);
    group.dataset.x = x;
    group.dataset.y = y;
    const disc = document.createElementNS(svg.namespaceURI, "circle");
    disc.setAttribute("r", name === "part" ? 18 : name === "red" || name === "black" ? 10 : 7);
    group.append(disc);
    if (name === "red" || name === "black") {
      const letter = document.createElementNS(svg.namespaceURI, "text");
      letter.setAttribute("y", 4);
      letter.textContent = name === "red" ? "+" : "−";
      group.append(letter);
    }
    layer.append(group);
  }

  function light(ids, marks, names) {
    for (const [id, wire] of wires) {
      const on = ids.includes(id);
      wire.group.classList.toggle("on", on);
      if (on) wire.group.parentNode.append(wire.group);
    }
    for (const [text, name] of words) text.classList.toggle("on", names.includes(name));
    layer.replaceChildren();
    for (const [x, y, name] of marks) mark(x, y, name);
    svg.classList.toggle("chosen", ids.length > 0);
    show(view);
  }

  new ResizeObserver(() => {
    box = svg.getBoundingClientRect();
    show(view);
  }).observe(svg);
  glide(whole());
  return {
    light,
    points: (id) => (wires.get(id) || { points: [] }).points,
    done: (id, made) => wires.has(id) && wires.get(id).group.classList.toggle("done", made),
    look: (points) => points.length && glide(around(points)),
    nearer: () => glide(zoomAbout(1.8)),
    farther: () => glide(zoomAbout(1 / 1.8)),
    whole: () => glide(whole()),
  };
}
