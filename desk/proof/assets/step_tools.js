// What may be done with a step beside the common rulings: put it elsewhere, merge it with the next, split it.

import { make } from "/assets/make.js";
import { press } from "./press.js";

/** The buttons of a step. */
export function stepTools(entry, proof) {
  if (entry.item.group === "struck") {
    return [];
  }
  return [
    press("Earlier", "⇧↑", () => move(entry, proof, -1)),
    press("Later", "⇧↓", () => move(entry, proof, 1)),
    press("Merge with next", "M", () => merge(entry, proof)),
    press("Split", "T", () => split(entry)),
  ];
}

/** Put a step one place earlier or later. */
export function move(entry, proof, by) {
  proof.whenTold(() => {
    const steps = proof.state.steps.map((step) => step.id);
    const at = steps.indexOf(entry.item.id);
    const to = at + by;
    if (at >= 0 && to >= 0 && to < steps.length) {
      proof.rule(entry, "reorder", { after: by > 0 ? steps[to] : (steps[to - 1] ?? null) });
    }
  });
}

/** Make one step of this one and the next. */
export function merge(entry, proof) {
  proof.whenTold(() => {
    const steps = proof.state.steps.map((step) => step.id);
    const at = steps.indexOf(entry.item.id);
    if (at >= 0 && at + 1 < steps.length) {
      proof.rule(entry, "merge", { others: [steps[at + 1]] });
    }
  });
}

/** Open the form that splits a step. */
export function split(entry) {
  entry.open_form(new SplitForm(entry.item.text, (change) => entry.done(change)));
}

class SplitForm {
  constructor(text, done) {
    this.done = done;
    const guess = text.split(/, then |[.;] +/).map((part) => part.slice(0, 1).toUpperCase() + part.slice(1));
    this.lines = make("textarea", { value: guess.join("\n"), rows: Math.max(3, guess.length + 1), maxLength: 4000 });
    this.element = make(
      "form.slip-form", { onsubmit: (event) => this.submit(event), onkeydown: (event) => this.pressed(event) },
      make("label", {}, "One step a line", this.lines),
      make(
        "div.presses", {},
        make("button.press.go", { type: "submit" }, "Split ", make("kbd", { "aria-hidden": "true" }, "Ctrl ⏎")),
        make("button.press", { type: "button", onclick: () => done(null) }, "Leave ", make("kbd", { "aria-hidden": "true" }, "Esc")),
      ),
    );
  }

  focus() {
    this.lines.focus();
  }

  pressed(event) {
    if (event.key === "Escape") {
      event.stopPropagation();
      this.done(null);
    } else if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      this.element.requestSubmit();
    }
  }

  submit(event) {
    event.preventDefault();
    const into = this.lines.value.split("\n").map((line) => line.trim()).filter(Boolean);
    if (into.length > 1) {
      this.done({ act: "split", into });
    } else {
      this.lines.focus();
    }
  }
}
