// Loads the module beside this file. `data-started` on <html> says that it runs;
// a failure is shown instead of an empty page.
import init from "./gearswing_page.js";

try {
  await init();
  document.documentElement.dataset.started = "yes";
} catch (error) {
  console.error(error);
  document.getElementById("start-reason").textContent = String(error);
  document.getElementById("start-notice").hidden = false;
}
