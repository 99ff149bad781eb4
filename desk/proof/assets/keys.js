// Every key of the page in one table: what it does, and what the help says of it.

import { make, fill } from "/assets/make.js";
import { merge, move, split } from "./step_tools.js";

const STORE = "spokeshave-keys";

const onEntry = (act) => (proof) => {
  const entry = proof.list?.current;
  if (entry) {
    act(entry, proof);
  }
};
const onStep = (act) => onEntry((entry, proof) => proof.sheets.current === "procedure" && act(entry, proof));

/** [key as the browser names it, with Shift, what the help calls the key, what it does, in words] */
const KEYS = [
  ["ArrowDown", false, "↓", (proof) => proof.list?.step(1), "next"],
  ["ArrowUp", false, "↑", (proof) => proof.list?.step(-1), "the one before"],
  ["g", false, "G", (proof) => goOpen(proof), "next that is open"],
  ["s", false, "S", onEntry((entry, proof) => proof.rule(entry, "stet")), "stet: let it stand"],
  ["a", false, "A", onEntry((entry) => entry.amend()), "amend: read something else"],
  ["x", false, "X", onEntry((entry, proof) => proof.rule(entry, "strike")), "strike: take it out"],
  ["n", false, "N", onEntry((entry) => entry.note()), "note for whoever proofs"],
  ["d", false, "D", (proof) => proof.openAdd(), "add what the machine missed, at the clip’s second"],
  ["1", false, "1 to 9", null, "take that reading; Enter amends to it. Of several statements: this one is meant, 0 for none of them"],
  ["p", false, "P", onEntry((entry, proof) => proof.play(entry)), "play the clip, or stop it"],
  ["l", false, "L", (proof) => proof.clip.slower(), "slower, and round to full speed"],
  ["w", false, "W", onEntry((entry, proof) => proof.clip.widen(entry.item, 1)), "wider: more around it"],
  ["w", true, "Shift W", onEntry((entry, proof) => proof.clip.widen(entry.item, -1)), "tighter: less around it"],
  ["u", false, "U", (proof) => proof.undo(), "undo the last ruling"],
  ["u", true, "Shift U", (proof) => proof.redo(), "redo it"],
  ["ArrowUp", true, "Shift ↑", onStep((entry, proof) => move(entry, proof, -1)), "step earlier (procedure)"],
  ["ArrowDown", true, "Shift ↓", onStep((entry, proof) => move(entry, proof, 1)), "step later (procedure)"],
  ["m", false, "M", onStep(merge), "merge with the next step (procedure)"],
  ["t", false, "T", onStep(split), "split the step (procedure)"],
  ["q", false, "Q", (proof) => proof.sheets.turn("queries"), "sheet: to rule on"],
  ["f", false, "F", (proof) => proof.sheets.turn("figures"), "sheet: figures"],
  ["o", false, "O", (proof) => proof.sheets.turn("procedure"), "sheet: procedure"],
  ["k", false, "K", (proof) => proof.sheets.turn("kit"), "sheet: tools and materials"],
  ["e", false, "E", (proof) => proof.sheets.turn("errata"), "sheet: errata and what is open"],
  ["i", false, "I", (proof) => proof.sheets.turn("unplaced"), "sheet: not placed"],
  ["v", false, "V", (proof) => proof.sheets.turn("galley"), "sheet: the page"],
  ["z", false, "Z", (proof) => proof.state?.musts === 0 && !proof.state.passed && proof.pass(), "pass for press, where nothing must be settled"],
  ["?", null, "?", () => showKeys(), "this help"],
];

/** Have the keys work wherever nothing is being typed. */
export function listenToKeys(proof) {
  document.addEventListener("keydown", (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || typing(event.target) || !wanted()) {
      return;
    }
    const found = find(event);
    if (found) {
      event.preventDefault();
      found(proof);
    }
  });
}

function find(event) {
  if (/^[0-9]$/.test(event.key)) {
    return onEntry((entry) => {
      if (entry.item.traced) {
        const one = entry.item.candidates[Number(event.key) - 1] ?? null;
        if (one || event.key === "0") {
          entry.retract(one);
        }
        return;
      }
      const reading = entry.item.readings[Number(event.key) - 1];
      if (reading) {
        entry.amend(reading);
      }
    });
  }
  const pressed = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const row = KEYS.find(([name, shift]) => name === pressed && (shift === null || shift === event.shiftKey));
  return row?.[3] ?? null;
}

function typing(target) {
  const name = target.tagName;
  const on = name === "INPUT" || name === "TEXTAREA" || name === "SELECT" || name === "VIDEO" || name === "AUDIO";
  return on || target.isContentEditable || Boolean(document.querySelector("dialog[open]"));
}

function wanted() {
  try {
    return localStorage.getItem(STORE) !== "off";
  } catch {
    return true;
  }
}

function goOpen(proof) {
  const next = proof.list?.nextOpen();
  if (next) {
    proof.go(next);
  }
}

/** Open the help. */
export function showKeys() {
  const dialog = document.getElementById("keys");
  const off = make("input", {
    type: "checkbox", checked: !wanted(),
    onchange: (event) => localStorage.setItem(STORE, event.target.checked ? "off" : "on"),
  });
  fill(
    dialog,
    make("h2", { id: "keys-heading" }, "Keys"),
    make("dl.keys", {}, ...KEYS.map(([, , name, , words]) => make("div", {}, make("dt", {}, make("kbd", {}, name)), make("dd", {}, words)))),
    make("p", {}, "While you type, Enter gives the ruling and Esc leaves it. Nothing you rule changes a file of the machine’s; every ruling can be undone."),
    make("label.choice", {}, off, make("span", {}, "Keys off: only buttons")),
    make("form", { method: "dialog" }, make("button.press.go", { type: "submit", autofocus: true }, "Close ", make("kbd", { "aria-hidden": "true" }, "Esc"))),
  );
  dialog.showModal();
}
