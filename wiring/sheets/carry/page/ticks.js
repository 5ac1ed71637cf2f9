// Ticks that stay: kept by the browser under the plan's title and the sheet's content. Only what differs from
// the plan itself is kept, so that a wire the plan already has as built needs no memory here.
function openTicks(facts, plain) {
  const family = `underboard carry ${JSON.stringify([facts.title])} `;
  const own = family + facts.sheet;
  let kept = {};
  let refused = false;
  let adopted = 0;

  function read(key) {
    try {
      const found = JSON.parse(localStorage.getItem(key));
      return found && typeof found.ticks === "object" && found.ticks ? found : null;
    } catch (_) {
      return null;
    }
  }

  function fitting(ticks) {
    const some = {};
    for (const key of Object.keys(plain)) {
      if (typeof ticks[key] === "boolean" && ticks[key] !== plain[key]) some[key] = ticks[key];
    }
    return some;
  }

  // A sheet made anew after a change to the plan takes over what its forerunner had ticked; a wire that was
  // changed has another key, and is left to do again.
  function forerunner() {
    let newest = null;
    for (let i = 0; i < localStorage.length; i += 1) {
      const key = localStorage.key(i);
      const found = key.startsWith(family) && key !== own ? read(key) : null;
      if (found && (!newest || (found.saved || 0) > (newest.saved || 0))) newest = found;
    }
    return newest;
  }

  function load() {
    try {
      const mine = read(own);
      const before = mine ? null : forerunner();
      kept = fitting((mine || before || { ticks: {} }).ticks);
      adopted = before ? Object.keys(kept).length : 0;
      localStorage.setItem(`${family}trial`, "1");
      localStorage.removeItem(`${family}trial`);
    } catch (_) {
      refused = true;
    }
  }

  function save() {
    try {
      localStorage.setItem(own, JSON.stringify({ saved: Date.now(), ticks: kept }));
      refused = false;
    } catch (_) {
      refused = true;
    }
  }

  load();
  if (adopted) save();
  return {
    adopted,
    is: (key) => (key in kept ? kept[key] : plain[key] === true),
    refused: () => refused,
    owns: (key) => key === own,
    again: load,
    set(key, ticked) {
      if (ticked === plain[key]) delete kept[key];
      else kept[key] = ticked;
      save();
    },
    clear() {
      kept = {};
      for (const key of Object.keys(plain)) if (plain[key]) kept[key] = false;
      save();
    },
  };
}

// What goes back to the computer: every wire ticked, and those the plan had as built that are no longer.
function ticksText(facts, ticks, wires) {
  const built = {};
  const undone = {};
  for (const wire of wires) {
    if (ticks.is(wire.key)) built[wire.id] = wire.key;
    else if (wire.built) undone[wire.id] = wire.key;
  }
  const whole = { format: "underboard ticks", version: 1, plan: facts.title, sheet: facts.sheet, built, undone };
  return JSON.stringify(whole, null, 1);
}
