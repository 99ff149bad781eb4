// Writing up: asked for by a press, done by the server in the background, its progress shown until it is over.

import { fill, make } from "/assets/make.js";
import { Refusal, read, send } from "/assets/ask.js";
import { clock } from "./marks.js";

const BREATH = 700;

/** Have a session written up and show how far it is; ends with the way to its proof page. */
export async function writeUp(slug) {
  const place = document.getElementById("writing");
  const address = `/record/sessions/${encodeURIComponent(slug)}/writeup`;
  place.hidden = false;
  let now = null;
  try {
    now = await send(address, {});
  } catch (error) {
    return show({ state: "failed", lines: [String(error.message)] }, slug);
  }
  while (now.state !== "done" && now.state !== "failed") {
    show(now, slug);
    await new Promise((resolve) => setTimeout(resolve, BREATH));
    try {
      now = await read(address);
    } catch (error) {
      if (!(error instanceof Refusal) || error.kind === "refused") {
        now = { state: "failed", lines: [String(error.message)] };
      } else {
        line("The server does not answer. Once it is started again, press “Write it up now” again: it goes on from there.");
      }
    }
  }
  return show(now, slug);
}

function show(now, slug) {
  const bar = document.getElementById("writing-bar");
  const told = document.getElementById("writing-told");
  bar.hidden = now.state === "done" || now.state === "failed";
  if (now.total) {
    bar.max = now.total;
    bar.value = Math.min(now.done, now.total);
  } else {
    bar.removeAttribute("value");
  }
  if (now.state === "waiting") {
    line("Waiting for the session before.");
  } else if (now.state === "hearing") {
    line(now.total ? `Heard ${clock(now.done)} of ${clock(now.total)}.` : "Loading the speech model.");
  } else if (now.state === "extracting") {
    line("Heard. Reading what was said, and publishing.");
  } else if (now.state === "failed") {
    line("");
    fill(told, ...now.lines.map((one) => make("li.problem", {}, one)));
  } else {
    line("Written up.");
    fill(told, ...now.lines.map((one) => make("li", {}, one)));
    const way = make("a.press.large.go", { href: `/proof/sessions/${encodeURIComponent(slug)}/`, id: "to-proof" }, "To its proof page");
    document.getElementById("write").replaceWith(way);
    way.focus();
  }
  return now.state;
}

function line(words) {
  const place = document.getElementById("writing-line");
  if (place.textContent !== words) {
    place.textContent = words;
  }
}
