// A note on an item, for whoever proofs it next. It changes nothing.

import { make } from "/assets/make.js";

/** One line to write in; `done` is given the text, or nothing where the person thought better of it. */
export class NoteForm {
  constructor(done) {
    this.line = make("input", { type: "text", maxLength: 2000, autocomplete: "off", required: true });
    this.element = make(
      "form.slip-form", { onsubmit: (event) => this.submit(event, done), onkeydown: (event) => leave(event, done) },
      make("label", {}, "Note for whoever proofs this ", this.line),
      make(
        "div.presses", {},
        make("button.press.go", { type: "submit" }, "Keep the note ", make("kbd", { "aria-hidden": "true" }, "⏎")),
        make("button.press", { type: "button", onclick: () => done(null) }, "Leave ", make("kbd", { "aria-hidden": "true" }, "Esc")),
      ),
    );
  }

  focus() {
    this.line.focus();
  }

  submit(event, done) {
    event.preventDefault();
    if (this.line.value.trim()) {
      done(this.line.value.trim());
    }
  }
}

function leave(event, done) {
  if (event.key === "Escape") {
    event.stopPropagation();
    done(null);
  }
}
