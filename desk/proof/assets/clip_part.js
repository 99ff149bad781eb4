// The part of an open item that plays: the still of its second, the clip, slower and wider.

import { make, fill } from "/assets/make.js";
import { clock } from "./clock.js";
import { press } from "./press.js";

/** The frame and its buttons; `refresh` brings the words on the buttons up to date. */
export function clipPart(item, proof, entry) {
  const { clip } = proof;
  if (!clip.kind) {
    return { element: make("div.clip", {}, make("p.aside", {}, "The recording is not there: no clip.")), frame: null };
  }
  const frame = make(`div.frame.${clip.kind}`);
  if (clip.kind === "video") {
    frame.append(
      make("img", { src: proof.still(item), alt: `The film at ${item.clock}`, loading: "lazy", decoding: "async", width: 640, height: 360 }),
    );
  }
  const play = press("Play", "P", () => proof.play(entry), "go");
  const slower = press("Slower", "L", () => clip.slower());
  const wider = press("Wider", "W", () => clip.widen(entry.item, 1));
  const tighter = press("Tighter", "⇧W", () => clip.widen(entry.item, -1));
  tighter.setAttribute("aria-keyshortcuts", "Shift+W");
  const here = make("button.small", { type: "button", onclick: () => proof.openAdd() }, "Add here");
  const range = make("p.aside.range");
  const part = {
    frame,
    element: make("div.clip", {}, frame, make("div.presses", {}, play, slower, wider, tighter), make("div.range-line", {}, range, here)),
    refresh() {
      const [from, until] = clip.range(entry.item);
      fill(range, `${clock(from)} to ${clock(until)}, ${clip.rate === 1 ? "full speed" : `at ${clip.rate} of its speed`}`);
      play.firstChild.textContent = clip.plays(entry.item) ? "Stop" : "Play";
    },
  };
  part.refresh();
  return part;
}
