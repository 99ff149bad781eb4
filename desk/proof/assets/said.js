// The words around an item, with those in question marked.

import { make } from "/assets/make.js";

/** A paragraph of the words before, the words in question, and the words after. */
export function said(item) {
  if (!item.quote) {
    return null;
  }
  return make(
    "p.said", {},
    item.before ? `… ${item.before} ` : "",
    make("mark.queried", {}, item.quote),
    item.after ? ` ${item.after} …` : "",
  );
}
