// The ticks as a file or on the clipboard, and clearing them.
function openTickSheet(facts, ticks, wires, page) {
  const by = (id) => document.getElementById(id);
  const dialog = by("ticks");
  const text = by("ticks-text");
  let sure = false;

  function fill() {
    const made = wires.filter((wire) => ticks.is(wire.key)).length;
    text.value = ticksText(facts, ticks, wires);
    by("ticks-count").textContent = `${made} of ${wires.length} wires are ticked as made.`;
    by("ticks-kept").textContent = ticks.refused()
      ? "This browser keeps no ticks: save them before you close this page."
      : "They stay on this phone, in this browser.";
    sure = false;
    by("ticks-clear").textContent = "Clear all";
  }

  function copied() {
    text.focus();
    text.select();
    try {
      return document.execCommand("copy");
    } catch (_) {
      return false;
    }
  }

  by("ticks-open").addEventListener("click", () => {
    fill();
    if (dialog.showModal) dialog.showModal();
    else dialog.setAttribute("open", "");
  });
  by("ticks-close").addEventListener("click", () => (dialog.close ? dialog.close() : dialog.removeAttribute("open")));
  by("ticks-copy").addEventListener("click", async () => {
    let done = false;
    try {
      await navigator.clipboard.writeText(text.value);
      done = true;
    } catch (_) {
      done = copied();
    }
    by("ticks-copy").textContent = done ? "Copied" : "Hold the text below";
    setTimeout(() => { by("ticks-copy").textContent = "Copy"; }, 2500);
  });
  by("ticks-save").addEventListener("click", () => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text.value], { type: "application/json" }));
    link.download = `${facts.file}-ticks.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  });
  by("ticks-clear").addEventListener("click", () => {
    if (!sure) {
      sure = true;
      by("ticks-clear").textContent = "Really clear?";
      return;
    }
    ticks.clear();
    page.paint();
    fill();
  });
}

// Light or dark: as the phone has it, until the button says otherwise.
function openLook(root, button) {
  const KEY = "underboard carry look";
  const phone = matchMedia("(prefers-color-scheme: dark)");
  let wanted = "";
  try {
    wanted = localStorage.getItem(KEY) || "";
  } catch (_) {
    wanted = "";
  }
  const show = () => {
    const dark = wanted ? wanted === "dark" : phone.matches;
    root.dataset.look = dark ? "dark" : "light";
    button.setAttribute("aria-pressed", String(dark));
  };
  button.addEventListener("click", () => {
    wanted = root.dataset.look === "dark" ? "light" : "dark";
    try {
      localStorage.setItem(KEY, wanted);
    } catch (_) {
      // the look holds until the page is closed
    }
    show();
  });
  phone.addEventListener("change", show);
  show();
}
