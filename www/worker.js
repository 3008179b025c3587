// Beside the page: works out what takes longer than an edit may. What is asked last counts; what was under way is left.
import init, { ask, build, part } from "./gearswing_worker.js";

// Between two slices newer questions come in.
const SLICE_MS = 50;
const ready = init();
let asked = 0;

const goOn = (of) => {
  const end = performance.now() + SLICE_MS;
  while (of === asked && performance.now() < end) {
    const found = part();
    if (found !== undefined) postMessage([of, build(), found]);
    if (found === null) return;
  }
  if (of === asked) setTimeout(goOn, 0, of);
};

addEventListener("message", async ({ data: [of, text] }) => {
  asked = of;
  try {
    await ready;
    if (of !== asked) return;
    ask(text);
    goOn(of);
  } catch (error) {
    postMessage([of, "", String(error)]);
  }
});
