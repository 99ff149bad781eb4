// Recordings that were cut off: what this browser still has of them goes to the server, then the person may go on with them.

import { Refusal, read, send } from "/assets/ask.js";
import { fill, make } from "/assets/make.js";
import { Sender } from "./sender.js";

/** Send what an earlier run of the page left in the reserve; gives a line for each recording that it can't go to. */
export async function sendReserve(reserve, largest, trouble) {
  const lines = [];
  for (const take of await reserve.takes()) {
    const sender = new Sender(take.slug, reserve, largest);
    sender.addEventListener("trouble", async ({ detail }) => {
      if (detail.kind === "refused" && !(await isOpen(take.slug))) {
        lines.push(`What came after the end of “${take.title}” can’t be added to it any more: ${detail.message}.`);
        sender.pieces.length = 0;
        sender.jobs.clear();
      } else {
        trouble(detail);
      }
    });
    if (take.marks?.length) {
      sender.jobs.set("marks", () => send(`${sender.address}marks`, { marks: take.marks }));
    }
    await sender.addKept(take.pieces);
    await reserve.dropTake(take.slug);
  }
  return lines;
}

async function isOpen(slug) {
  try {
    return (await read("/record/standing")).cut_off.some((one) => one.slug === slug);
  } catch (error) {
    if (error instanceof Refusal) {
      return true;
    }
    throw error;
  }
}

/** Show the recordings that were cut off; `goOn` is called with the one that the person wants written up. */
export function showCutOff(cutOff, goOn, takenAway) {
  const section = document.getElementById("cut-off");
  const shown = cutOff.map((one) => one.slug).join("/");
  if (section.dataset.shown === shown) {
    return;
  }
  section.dataset.shown = shown;
  section.hidden = !cutOff.length;
  fill(document.getElementById("cut-off-list"), ...cutOff.map((one) => entry(one, goOn, takenAway)));
}

function entry(one, goOn, takenAway) {
  const problem = make("p.problem", { hidden: true, role: "alert" });
  const act = async (event, then) => {
    event.target.disabled = true;
    try {
      then(await send(`/record/sessions/${encodeURIComponent(one.slug)}/end`, { second: 0 }));
    } catch (error) {
      event.target.disabled = false;
      problem.hidden = false;
      problem.textContent = String(error.message);
    }
  };
  const button = one.empty
    ? make("button.press", { type: "button", onclick: (event) => act(event, takenAway) }, "Take it away")
    : make("button.press", { type: "button", onclick: (event) => act(event, goOn) }, "Write it up as it is");
  return make(
    "li.cut-off-entry", {},
    make("p", {}, one.line), button,
    one.command ? make("p.aside", {}, "From a terminal: ", make("code", {}, one.command)) : null, problem,
  );
}
