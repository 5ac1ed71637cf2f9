// The lists: which page is shown, which rows the search, the place and "left to do" let through.
function openLists(ticks) {
  const find = document.getElementById("find");
  const place = document.getElementById("place");
  const leftOnly = document.getElementById("left-only");
  const empty = document.getElementById("empty");
  const pages = new Map([...document.querySelectorAll(".page")].map((page) => [page.dataset.page, page]));
  const rows = [...document.querySelectorAll(".row")].map((row) => {
    const box = row.querySelector("[data-tick]");
    const group = row.closest(".group");
    const title = group ? group.querySelector("h2").textContent : "";
    return {
      row,
      box,
      key: box ? box.dataset.tick : "",
      page: row.closest(".page").dataset.page,
      place: group ? group.dataset.place || "" : "",
      text: `${title} ${row.textContent}`.toLowerCase(),
    };
  });
  const groups = [...document.querySelectorAll(".group")];
  const left = new Map(); // how far each page was scrolled when it was left
  let lingering = "";
  let now = "wires";

  for (const name of new Set(rows.map((r) => r.place).filter(Boolean))) place.add(new Option(name, name));

  function passes(r, words) {
    if (place.value && r.place && r.place !== place.value) return false;
    if (place.value && !r.place && r.page !== "findings") return false;
    if (leftOnly.checked && r.page !== "findings" && r.key !== lingering && (!r.box || ticks.is(r.key))) return false;
    return words.every((word) => r.text.includes(word));
  }

  function sift() {
    const words = find.value.toLowerCase().split(/\s+/).filter(Boolean);
    for (const r of rows) r.row.hidden = !passes(r, words);
    for (const group of groups) group.hidden = !group.querySelector(".row:not([hidden])");
    const mine = rows.filter((r) => r.page === now);
    const none = mine.length > 0 && mine.every((r) => r.row.hidden);
    empty.hidden = !none || now === "safety" || now === "findings";
    empty.textContent = words.length || place.value ? "Nothing here matches the search and the place." : "Nothing is left to do here.";
  }

  function count() {
    for (const page of pages.keys()) {
      const mine = rows.filter((r) => r.page === page && r.box);
      const open = mine.filter((r) => !ticks.is(r.key)).length;
      const tab = document.querySelector(`[data-to="${page}"] i`);
      if (mine.length) tab.textContent = open ? `${open} left` : "done";
    }
    const wires = rows.filter((r) => r.page === "wires" && r.box);
    const made = wires.filter((r) => ticks.is(r.key)).length;
    const open = wires.length - made;
    document.getElementById("progress").textContent = open ? `${open} of ${wires.length} wires left to do` : wires.length ? "Every wire is made" : "";
    document.querySelector("#bar i").style.width = `${wires.length ? (100 * made) / wires.length : 0}%`;
  }

  function paint() {
    for (const r of rows) {
      if (!r.box) continue;
      r.box.checked = ticks.is(r.key);
      r.row.classList.toggle("done", r.box.checked);
    }
    count();
    sift();
  }

  function turn(page) {
    const list = document.getElementById("lists");
    left.set(now, list.scrollTop);
    now = pages.has(page) ? page : "wires";
    document.documentElement.dataset.page = now;
    for (const [name, element] of pages) element.classList.toggle("shown", name === now);
    for (const tab of document.querySelectorAll("#tabs button")) tab.setAttribute("aria-current", tab.dataset.to === now);
    sift();
    list.scrollTop = left.get(now) || 0;
  }

  function free() {
    find.value = "";
    place.value = "";
    leftOnly.checked = false;
    sift();
  }

  for (const field of [find, place, leftOnly]) {
    field.addEventListener("input", () => {
      lingering = "";
      sift();
    });
  }
  return {
    paint,
    turn,
    free,
    now: () => now,
    keep: (key) => { lingering = key; },
    rows,
    row: (wire, page) => rows.find((r) => r.page === page && r.row.dataset.wire === wire),
    order: () => rows.filter((r) => r.page === "wires" && !r.row.hidden),
  };
}
