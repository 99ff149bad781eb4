// Passing the whole for press: offered where nothing must be settled any more.

import { make, fill } from "/assets/make.js";
import { press } from "./press.js";

/** Show, in its place at the end of the list, how far the whole is from being passed. */
export function offerPass(place, proof) {
  const { state, outbox } = proof;
  const asked = outbox.waiting.some((one) => one.ruling.act === "pass");
  const told = JSON.stringify([state.passed, state.musts, asked]);
  if (place.dataset.told === told) {
    return;
  }
  place.dataset.told = told;
  place.hidden = state.musts > 0;
  if (state.passed) {
    fill(place, make("p", {}, "Passed for press: the next ", make("code", {}, "spokeshave publish"), " puts these notes out as proofed."));
  } else {
    fill(
      place,
      make("p", {}, "Nothing must be settled any more. Have you held the notes against the film? Then pass them: the page says “proofed”."),
      press(asked ? "Passing …" : "Pass for press", "Z", () => proof.pass(), "go"),
    );
  }
}
