// Loads the module beside this file. `data-started` on <html> says that it runs.
// Whatever ends the page shows as text, with the gear file as it stood before the last solve.
"use strict";

(() => {
  const node = (id) => document.getElementById(id);
  // Before the first paint; the module takes over with what the person has chosen.
  const dark = typeof matchMedia === "function" && matchMedia("(prefers-color-scheme: dark)").matches;
  document.documentElement.dataset.theme = dark ? "dark" : "light";
  // Written by the module: `recovery` before each solve, `panic` when it gives up.
  const shared = (window.gearswing = { recovery: "", panic: "", looks: false });
  // Asked for before it can be done, it is done then.
  shared.look = () => {
    shared.looks = true;
  };
  // In the form of one file: the module, and the page as it was read.
  const own = window.gearswingFile;
  if (own) node("plain").hidden = true;

  const through = async (bytes, stream) =>
    new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
  const unpacked = (id) => {
    const text = node(id).textContent;
    if (!text) throw new Error("This file holds no module: it was not saved whole. Ask for it again.");
    const bytes = Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
    return through(bytes, new DecompressionStream("gzip"));
  };
  const got = async (name) => {
    const response = await fetch(name);
    if (!response.ok) throw new Error(`${name}: ${response.status}`);
    return response;
  };
  const filled = (page, id, text) => page.replace(new RegExp(`( id="${id}">)[^<]*`), (_, head) => head + text);

  // The page as one file, with the code of a gear in it.
  shared.file = async (code) => {
    const page = own ? own.page : await (await got("gearswing.html")).text();
    return filled(page, "given", code);
  };

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
    node("page").inert = true;
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
    if (!own && location.protocol === "file:") {
      throw new Error(
        "It was opened straight from a folder. Open gearswing.html, which lies beside it and needs no server, or run the serve command of its README and open the address that it prints.",
      );
    }
    if (typeof WebAssembly !== "object") {
      throw new Error("This browser has no WebAssembly. A browser of 2024 or later has it.");
    }
    let module = own?.module;
    if (!own) {
      try {
        module = await import("./gearswing_page.js");
      } catch (error) {
        console.error(error);
        throw new Error("The file gearswing_page.js did not load. Is the whole folder on the server?");
      }
    }
    const exports = await module.default(own && { module_or_path: await unpacked("module-text") });
    await module.begin();
    // For measuring: the module's memory never shrinks.
    shared.bytes = () => exports.memory.buffer.byteLength;
    document.documentElement.dataset.started = "yes";
    node("start-notice").hidden = true;
  };

  // The licenses stand in the one file as text.
  const notices = () => {
    node("about").querySelector("a").addEventListener("click", async (event) => {
      event.preventDefault();
      const text = new Blob([await unpacked("notices-text")], { type: "text/plain;charset=utf-8" });
      open(URL.createObjectURL(text));
    });
  };

  const late = (error) => console.info(error);
  // Keeps the page for use without a network, and looks out for a newer version: it waits until it is asked for.
  const offline = async () => {
    const worker = navigator.serviceWorker;
    if (!worker) return;
    let asked = false;
    const kept = await worker.register("offline.js");
    const waits = () => {
      if (!kept.waiting || !worker.controller) return;
      if (asked) kept.waiting.postMessage("take over");
      else window.dispatchEvent(new Event("gearswing-newer"));
    };
    let again = true;
    const watch = (next) =>
      next.addEventListener("statechange", () => {
        waits();
        // met a host in the middle of a change: once more
        if (next.state === "redundant" && again) {
          again = false;
          kept.update().catch(late);
        }
      });
    kept.addEventListener("updatefound", () => watch(kept.installing));
    if (kept.installing) watch(kept.installing);
    worker.addEventListener("controllerchange", () => {
      if (asked) location.reload();
    });
    shared.newer = () => {
      asked = true;
      waits();
    };
    // For what a newer version has made: takes over at once what is found.
    shared.look = async () => {
      asked = true;
      try {
        await kept.update();
      } catch (error) {
        console.info(error);
      }
      waits();
      asked = Boolean(kept.installing || kept.waiting);
    };
    waits();
    if (shared.looks) await shared.look();
  };

  start().then(() => (own ? notices : () => offline().catch(late))()).catch((error) => {
    console.error(error);
    const said = error instanceof Error ? error.message : String(error);
    if (shared.panic || shared.recovery) brokeOff(error);
    else notStarted(said);
  });
})();
