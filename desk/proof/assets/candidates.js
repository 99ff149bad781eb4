// Statements of earlier sessions that a retraction may mean: each with its words, its clip, and what speaks for it.

import { make, fill } from "/assets/make.js";
import { tell } from "/assets/tell.js";
import { typeset } from "/assets/typeset.js";
import { said } from "./said.js";

const MARGIN = 1.5;

/** The list, with a press for each statement and one for none of them; null for any other item. */
export function candidates(item, choose) {
  if (!item.traced) {
    return null;
  }
  const none = make(
    "button.press.none", { type: "button", onclick: () => choose(null), "aria-keyshortcuts": "0" },
    item.candidates.length ? "None of these " : "None that the shop has ", make("kbd", { "aria-hidden": "true" }, "0"),
  );
  return make(
    "section.meant", { "aria-label": "Which statement is meant" },
    make("p.aside", {}, item.traced),
    item.candidates.length ? make("ol.candidates", {}, ...item.candidates.map((one, at) => candidate(one, at, choose))) : null,
    none,
  );
}

function candidate(one, at, choose) {
  const frame = make(`div.frame.${one.picture || "none"}`);
  const when = `${one.clock} of ${one.title}${one.date ? ` (${one.date})` : ""}`;
  if (one.picture === "video") {
    frame.append(
      make("img", { src: `${one.address}stills/${Math.round(one.start * 10)}.jpg`, alt: `The film at ${when}`, loading: "lazy", decoding: "async", width: 640, height: 360 }),
    );
  }
  const play = make("button.press", { type: "button", onclick: () => playClip(one, frame) }, "Play");
  return make(
    `li${one.chosen ? ".chosen" : ""}`, {},
    make("p", {}, make("b", {}, typeset(one.told)), ` at ${when}`, one.again ? make("span.aside", {}, `, said ${one.again + 1} times`) : null, one.chosen ? make("span.flag.look", {}, " taken to be meant") : null),
    said(one),
    make("p.aside", {}, `For it: ${one.reasons.join("; ")}.`),
    frame,
    make(
      "div.presses", {},
      one.picture ? play : null,
      make(
        "button.press.go", { type: "button", onclick: () => choose(one), "aria-keyshortcuts": String(at + 1) },
        "This one ", make("kbd", { "aria-hidden": "true" }, String(at + 1)),
      ),
    ),
  );
}

/** Play the few seconds of the other session's recording, or stop them. */
function playClip(one, frame) {
  const known = frame.querySelector("video, audio");
  if (known && !known.paused) {
    known.pause();
    return;
  }
  const player = known ?? make(one.picture === "video" ? "video" : "audio", { src: `${one.address}film`, preload: "metadata", controls: true, playsInline: true });
  if (!known) {
    player.setAttribute("aria-label", `The clip at ${one.clock} of ${one.title}`);
    player.addEventListener("timeupdate", () => player.currentTime >= one.end + MARGIN && player.currentTime < one.end + MARGIN + 0.6 && player.pause());
    fill(frame, player);
    frame.classList.add("playing");
  }
  player.currentTime = Math.max(0, one.start - MARGIN);
  player.play().catch((error) => tell(`The clip can't be played: ${error.message}`));
}
