// Loads the module beside this file. `data-started` on <html> says that it runs.
// Whatever ends the page shows as text, with the gear file as it stood before the last solve.
"use strict";

(() => {
  const node = (id) => document.getElementById(id);
  // Before the first paint; the module takes over with what the person has chosen.
  const dark = typeof matchMedia === "function" && matchMedia("(prefers-color-scheme: dark)").matches;
  document.documentElement.dataset.theme = dark ? "dark" : "light";
  // Written by the module: `recovery` before each solve, `panic` when it gives up.
  const shared = (window.gearswing = { recovery: "", panic: "" });

  const notStarted = (sentence) => {
    node("start-notice").hidden = false;
    node("start-notice").setAttribute("role", "alert");
    node("start-line").textContent = "Gearswing could not start.";
    node("start-reason").className = "";
    node("start-reason").textContent = sentence;
  };

  const brokeOff = (reason) => {
    if (!node("panic-notice").hidden) return;
    node("panic-text").value = shared.recovery;
    node("panic-reason").textContent = shared.panic || String(reason);
    const kept = shared.recovery !== "";
    for (const id of ["panic-save", "panic-copy"]) node(id).disabled = !kept;
    node("panic-notice").hidden = false;
    document.documentElement.dataset.broken = "yes";
    node("panic-notice").scrollIntoView();
  };

  window.addEventListener("error", (event) => {
    const error = event.error;
    const fatal =
      (typeof WebAssembly === "object" && error instanceof WebAssembly.RuntimeError) ||
      shared.panic !== "" ||
      error instanceof RangeError;
    if (fatal) brokeOff(error);
  });

  node("panic-save").addEventListener("click", () => {
    const address = URL.createObjectURL(new Blob([shared.recovery], { type: "application/json" }));
    const anchor = document.createElement("a");
    anchor.href = address;
    anchor.download = "gear-recovered.json";
    anchor.click();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
    node("panic-done").textContent = "Handed to the browser as gear-recovered.json.";
  });
  node("panic-copy").addEventListener("click", async () => {
    node("panic-text").select();
    let copied = false;
    try {
      await navigator.clipboard.writeText(shared.recovery);
      copied = true;
    } catch (error) {
      copied = document.execCommand("copy");
    }
    node("panic-done").textContent = copied ? "Copied." : "Select the text below and copy it.";
  });
  node("panic-fresh").addEventListener("click", () => location.assign(location.pathname + "?fresh"));
  node("panic-reload").addEventListener("click", () => location.reload());

  const start = async () => {
    if (location.protocol === "file:") {
      throw new Error(
        "It was opened straight from a folder. Browsers load it from a web server only: run the serve command of its README and open the address that it prints.",
      );
    }
    if (typeof WebAssembly !== "object") {
      throw new Error("This browser has no WebAssembly. A browser of 2023 or later has it.");
    }
    let module;
    try {
      module = await import("./gearswing_page.js");
    } catch (error) {
      console.error(error);
      throw new Error("The file gearswing_page.js did not load. Is the whole folder on the server?");
    }
    const exports = await module.default();
    await module.begin();
    // For measuring: the module's memory never shrinks.
    shared.bytes = () => exports.memory.buffer.byteLength;
    document.documentElement.dataset.started = "yes";
    node("start-notice").hidden = true;
  };

  start().catch((error) => {
    console.error(error);
    const said = error instanceof Error ? error.message : String(error);
    if (shared.panic || shared.recovery) brokeOff(error);
    else notStarted(said);
  });
})();
