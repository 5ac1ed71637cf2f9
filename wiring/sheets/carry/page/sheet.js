// Ties ticks, plan and lists together: what is chosen in one shows in the others.
(function carrySheet() {
  const root = document.documentElement;
  const by = (id) => document.getElementById(id);
  const facts = JSON.parse(by("facts").textContent);
  const boxes = [...document.querySelectorAll("[data-tick]")];
  const plain = Object.fromEntries(boxes.map((box) => [box.dataset.tick, box.defaultChecked]));
  const wires = boxes.filter((box) => box.dataset.made).map((box) => ({ id: box.dataset.made, key: box.dataset.tick, built: box.defaultChecked }));
  const ticks = openTicks(facts, plain);
  root.classList.replace("still", "ready");
  const lists = openLists(ticks);
  const svg = by("plan");
  const plan = svg ? openPlan(svg, picked) : null;
  let chosen = "";
  let undo = null;
  let noteEnds = 0;
  let hints = 0;

  function say(words, back) {
    const note = by("note");
    note.firstElementChild.textContent = words;
    by("undo").hidden = !back;
    undo = back || null;
    note.style.top = `${by("head").offsetHeight + 6}px`; // beside the buttons, not over them
    note.hidden = false;
    clearTimeout(noteEnds);
    noteEnds = setTimeout(() => { note.hidden = true; }, back ? 6000 : 4500);
  }

  function paint() {
    lists.paint();
    for (const wire of wires) if (plan) plan.done(wire.id, ticks.is(wire.key));
    hold();
  }

  function tick(key, ticked) {
    ticks.set(key, ticked);
    lists.keep(key);
    paint();
    if (ticks.refused()) say("This browser keeps no ticks. Save them with the tick sign above before you close this page.");
  }

  // What is in hand: the chosen wire's own row, set larger.
  function hold() {
    const entry = chosen && lists.row(chosen, "wires");
    const made = by("made");
    made.classList.toggle("is-made", Boolean(entry && ticks.is(entry.key)));
    if (!entry) {
      const hint = document.createElement("p");
      hint.className = "hint";
      hint.textContent = plan ? "Tap a wire, on the plan or in the list." : "Tap a wire in the list.";
      by("held").replaceChildren(hint);
      made.textContent = "Start";
      made.hidden = !wires.length;
      return;
    }
    made.textContent = ticks.is(entry.key) ? "Not made" : "Made";
    const copy = (name) => entry.row.querySelector(`.${name}`).cloneNode(true);
    const ends = ["from", "to"].map((which) => {
      const button = document.createElement("button");
      button.type = "button";
      button.className = `end ${which}`;
      button.append(...copy(which).childNodes);
      button.addEventListener("click", () => lookAtEnd(which));
      return button;
    });
    by("held").replaceChildren(copy("line"), copy("facts"), ...ends);
  }

  function endPoint(wire, which) {
    const points = plan ? plan.points(wire) : [];
    const turned = lists.row(wire, "wires").row.dataset.turned !== undefined;
    return (which === "from") !== turned ? points[0] : points[points.length - 1];
  }

  // The wire and the parts at its ends, as the plan names them.
  function namesOf(wire) {
    const row = lists.row(wire, "wires").row;
    return [row.querySelector(".name"), ...row.querySelectorAll(".way b")].map((e) => e.textContent.split(":")[0]);
  }

  function lookAtEnd(which) {
    const point = plan && endPoint(chosen, which);
    if (point) plan.look([point]);
  }

  function lightRows(test) {
    for (const r of lists.rows) r.row.classList.toggle("on", test(r.row));
  }

  function scrollTo(row) {
    row.scrollIntoView({ block: "nearest" });
  }

  function choose(wire, from) {
    chosen = wire;
    if (from === "plan" && wire) {
      const page = lists.now() === "strips" ? "strips" : "wires";
      if (lists.now() !== page) lists.turn(page);
      const entry = lists.row(wire, lists.now()) || lists.row(wire, "wires");
      if (entry.page !== lists.now()) lists.turn(entry.page);
      if (entry.row.hidden) {
        lists.free();
        say(`Search and filters are off again, to show ${entry.row.querySelector(".name").textContent}.`);
      }
    }
    lightRows((row) => wire !== "" && row.dataset.wire === wire);
    if (plan) {
      const points = wire ? plan.points(wire) : [];
      const marks = points.length ? ["from", "to"].map((which) => [...endPoint(wire, which), which]) : [];
      plan.light(wire ? [wire] : [], marks, wire ? namesOf(wire) : []);
      if (from !== "plan") plan.look(points);
    }
    hold();
    const entry = wire && lists.row(wire, lists.now());
    if (entry && from !== "row") scrollTo(entry.row);
  }

  function picked(wire, near) {
    choose(wire, "plan");
    if (near > 1 && hints < 2) {
      hints += 1;
      say(`${near} wires lie here: tap again for the next one.`);
    }
  }

  function chooseRow(row) {
    const data = row.dataset;
    if (data.wire) return choose(data.wire, "row");
    chosen = "";
    hold();
    lightRows((other) => other === row);
    if (!plan) return undefined;
    const ids = (data.wires || "").split(" ").filter(Boolean);
    const marks = (data.marks || "").split(";").filter(Boolean).map((mark) => {
      const [x, y, name] = mark.split(",");
      return [Number(x), Number(y), name];
    });
    const names = [...row.querySelectorAll(".probe b")].map((e) => e.textContent.split(":")[0]);
    plan.light(ids, marks, names);
    plan.look([...ids.flatMap(plan.points), ...marks]);
    return undefined;
  }

  function step(by1) {
    const order = lists.order();
    if (!order.length) return;
    const at = order.findIndex((r) => r.row.dataset.wire === chosen);
    const next = at < 0 ? order[by1 > 0 ? 0 : order.length - 1] : order[at + by1];
    if (next) choose(next.row.dataset.wire, "step");
    else say(by1 > 0 ? "That was the last wire of the list." : "This is the first wire of the list.");
  }

  function nextLeft() {
    const order = lists.order();
    const at = order.findIndex((r) => r.row.dataset.wire === chosen);
    return [...order.slice(at + 1), ...order.slice(0, at + 1)].find((r) => !ticks.is(r.key));
  }

  function made() {
    const entry = chosen && lists.row(chosen, "wires");
    if (entry) {
      const name = entry.row.querySelector(".name").textContent;
      const was = ticks.is(entry.key);
      const wire = chosen;
      tick(entry.key, !was);
      if (was) return;
      const kept = !ticks.refused();
      if (kept) say(`${name} is made.`, () => { tick(entry.key, false); choose(wire, "step"); });
    }
    const next = nextLeft();
    if (next) choose(next.row.dataset.wire, "step");
    else if (wires.every((wire) => ticks.is(wire.key))) say("Every wire is made. Now the meter checks.");
    else say("Nothing is left to do in this list.");
  }

  by("lists").addEventListener("click", (event) => {
    const button = event.target.closest("button.pick");
    if (button) chooseRow(button.closest(".row"));
  });
  by("lists").addEventListener("change", (event) => {
    const box = event.target.closest("[data-tick]");
    if (box) tick(box.dataset.tick, box.checked);
  });
  by("tabs").addEventListener("click", (event) => {
    const tab = event.target.closest("button");
    if (!tab) return;
    root.classList.remove("large");
    by("large").setAttribute("aria-pressed", "false");
    lists.turn(tab.dataset.to);
    const entry = chosen && lists.row(chosen, lists.now());
    if (entry) scrollTo(entry.row);
  });
  by("before").addEventListener("click", () => step(-1));
  by("after").addEventListener("click", () => step(1));
  by("made").addEventListener("click", made);
  by("undo").addEventListener("click", () => {
    by("note").hidden = true;
    if (undo) undo();
  });
  by("large").addEventListener("click", () => {
    const large = root.classList.toggle("large");
    by("large").setAttribute("aria-pressed", String(large));
  });
  for (const name of ["nearer", "farther", "whole"]) by(name).addEventListener("click", () => plan && plan[name]());
  addEventListener("storage", (event) => {
    if (!ticks.owns(event.key)) return;
    ticks.again();
    paint();
  });
  stayAwake();
  openLook(root, by("look"));
  openTickSheet(facts, ticks, wires, { paint, say });
  lists.turn("wires");
  paint();
  if (ticks.refused()) say("This browser keeps no ticks. Save them with the tick sign above before you close this page.");
  else if (ticks.adopted) say(`${ticks.adopted} ${ticks.adopted === 1 ? "tick was" : "ticks were"} taken over from the sheet before; what was changed is open again.`);
})();
