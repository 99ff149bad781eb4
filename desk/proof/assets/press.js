// Buttons that show the key that does the same.

import { make } from "/assets/make.js";

/** A button that shows the key that does the same. */
export function press(words, letter, act, kind = "plain") {
  return make(
    `button.press.${kind}`, { type: "button", onclick: act, "aria-keyshortcuts": letter },
    words, " ", make("kbd", { "aria-hidden": "true" }, letter),
  );
}
