// The form for an amendment: a figure or words, checked by the server while they are typed, and whether the figure was
// said wrong on the film or only heard wrong.

import { make, fill } from "/assets/make.js";
import { typeset } from "/assets/typeset.js";
import { slipKeys } from "./slip_keys.js";
import { Check } from "./check.js";
import { Naming } from "./naming.js";

const BECAUSE = [
  ["said_wrong", "Said wrong on the film: goes into the errata"],
  ["heard_wrong", "Only heard wrong: the film is right"],
];

/** `done` is given the ruling, or nothing where the person thought better of it. */
export class AmendForm {
  constructor(item, proof, reading, done) {
    this.item = item;
    this.done = done;
    this.figures = item.figures.filter((one) => one.id);
    this.ofFigure = this.figures.length > 0;
    this.chosen = reading?.figure ?? this.figures[0]?.id ?? item.id;
    this.words = this.ofFigure
      ? make("input", { type: "text", value: reading?.text.replace(/\u00a0/g, " ") ?? "", autocomplete: "off", spellcheck: false, maxLength: 200 })
      : make("textarea", { value: item.text, rows: 3, maxLength: 2000 });
    this.words.id = "amend-words";
    this.told = make("output", { htmlFor: "amend-words" });
    this.naming = item.kind === "measure" ? new Naming(this.figures[0]) : null;
    this.check = new Check(proof.address, (told) => this.show(told));
    this.element = make(
      "form.slip-form", { onsubmit: (event) => this.submit(event), onkeydown: (event) => slipKeys(event, this.element, this.words, () => this.done(null)) },
      this.which(),
      make("label", { htmlFor: "amend-words" }, this.ofFigure ? "Read instead (figure and unit)" : "Read instead"),
      this.words,
      this.ofFigure ? this.told : null,
      this.ofFigure ? this.why(reading?.because ?? item.because) : null,
      this.naming?.element,
      make(
        "div.presses", {},
        make("button.press.go", { type: "submit" }, "Amend ", make("kbd", { "aria-hidden": "true" }, "⏎")),
        make("button.press", { type: "button", onclick: () => done(null) }, "Leave ", make("kbd", { "aria-hidden": "true" }, "Esc")),
      ),
    );
    this.words.addEventListener("input", () => this.ask());
    this.ask();
  }

  focus() {
    this.words.focus();
    this.words.select();
  }

  which() {
    if (this.figures.length < 2) {
      return null;
    }
    const choose = (id) => {
      this.chosen = id;
      this.ask();
    };
    return choice("Which figure is wrong", "figure", this.figures.map((one) => [one.id, one.display]), this.chosen, choose);
  }

  why(because) {
    this.because = because;
    return choice("Why", "because", BECAUSE, because, (value) => {
      this.because = value;
    });
  }

  ask() {
    if (this.ofFigure) {
      this.check.ask(this.chosen, this.words.value);
    }
  }

  /** What the server made of the words so far. */
  show(told) {
    this.answer = told;
    this.words.setAttribute("aria-invalid", told.problem && told.text ? "true" : "false");
    this.told.className = told.problem ? "problem" : "reads";
    fill(this.told, told.problem ? told.problem : told.display ? typeset(`${told.display}${told.other ? ` = ${told.other}` : ""}`) : "");
  }

  /** How the words read: as told while they were typed, else asked for now; keys meanwhile go nowhere. */
  async read(words) {
    if (this.answer?.item === this.chosen && this.answer.text.trim() === words && (this.answer.display || this.answer.problem)) {
      return this.answer;
    }
    this.words.readOnly = true;
    try {
      return await this.check.now(this.chosen, words);
    } finally {
      this.words.readOnly = false;
    }
  }

  async submit(event) {
    event.preventDefault();
    const words = this.words.value.trim();
    if (!this.ofFigure) {
      return words ? this.done({ act: "amend", to: { text: words } }) : this.words.focus();
    }
    const to = this.naming?.changes() ?? {};
    let overrule = false;
    if (words) {
      const told = await this.read(words);
      this.show(told);
      if (told.problem && !(told.overrule && this.warned === words)) {
        this.warned = words;
        this.words.focus();
        return null;
      }
      overrule = Boolean(told.overrule);
      to.figure = words;
    }
    if (!Object.keys(to).length) {
      return this.words.focus();
    }
    return this.done({ act: "amend", item: this.chosen, of: this.item.id, to, overrule, because: to.figure ? this.because : null });
  }
}

function choice(legend, name, options, chosen, change) {
  return make(
    "fieldset", {},
    make("legend", {}, legend),
    ...options.map(([value, words]) =>
      make(
        "label.choice", {},
        make("input", { type: "radio", name: `amend-${name}`, value, checked: value === chosen, onchange: () => change(value) }),
        make("span", {}, typeset(words)),
      ),
    ),
  );
}
