// Rulings that found no place: shown with their words, never dropped.

import { make, fill } from "/assets/make.js";
import { typeset } from "/assets/typeset.js";

/** List them in `place`. */
export function showLost(place, lost, proof) {
  if (!lost.length) {
    fill(place, make("p", {}, "Every ruling has its place."));
    return;
  }
  fill(
    place,
    make("p", {}, "The session was heard or read anew, and nothing like these is in the record now. They are kept; take back those that are no longer wanted."),
    make("ol.entries", {}, ...lost.map((one) => row(one, proof))),
  );
}

function row(one, proof) {
  return make(
    "li.entry", {},
    make("span.margin", {}, make("span.at", {}, one.clock)),
    make(
      "div", {},
      make("p", {}, make("q", {}, one.words)),
      make("p.aside", {}, typeset(one.act), ": ", one.why),
      one.id
        ? make("button.press", { type: "button", onclick: () => proof.outbox.put({ act: "undo", of: one.id, item: "" }) }, "Take this ruling back")
        : make("p.aside", {}, "The line stays in the file."),
    ),
  );
}
