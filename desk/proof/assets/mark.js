// The mark in the margin: what was ruled, what is on its way, or what is still wanted. Always in words.

import { make } from "/assets/make.js";
import { typeset } from "/assets/typeset.js";

/** The mark of an item. */
export function mark(item, waiting, proof) {
  if (waiting?.refused) {
    return make("span.flag.must", {}, "refused: ", waiting.refused.problem, " ", ...mending(waiting, proof));
  }
  if (waiting) {
    return make("span.flag.waits", {}, `${waiting.ruling.act}, ${waiting.landed ? "on disk" : "not on disk yet"}`);
  }
  if (item.ruled) {
    return make(`span.ruled.${item.ruled.act}`, {}, typeset(item.ruled.words));
  }
  return item.wanted ? make(`span.flag.${item.group === "settle" ? "must" : "look"}`, {}, item.wanted) : null;
}

/** Buttons that mend a refused ruling. */
export function mending(waiting, proof) {
  const buttons = [
    make("button.small", { type: "button", onclick: () => proof.outbox.drop(waiting.ruling.id) }, "Drop this ruling"),
  ];
  if (waiting.refused.overrule) {
    const again = () => {
      proof.outbox.drop(waiting.ruling.id);
      const { id: _, ...ruling } = waiting.ruling;
      proof.outbox.put({ ...ruling, overrule: true });
    };
    buttons.unshift(make("button.small", { type: "button", onclick: again }, "I mean it"), " ");
  }
  return buttons;
}
