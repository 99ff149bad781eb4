// The form for what the machine missed: what it is, its second, and what is to stand there.

import { read } from "/assets/ask.js";
import { make, fill } from "/assets/make.js";
import { typeset } from "/assets/typeset.js";
import { slipKeys } from "./slip_keys.js";
import { Check } from "./check.js";
import { clock, secondsIn } from "./clock.js";
import { Naming } from "./naming.js";

/** [kind, its name, what the line asks for, on which sheet it is the first choice] */
const KINDS = [
  ["measure", "A figure", "Figure and unit", ["queries", "figures"]],
  ["step", "A step", "The step", ["procedure"]],
  ["correction", "Something said wrong", "Read instead", ["errata"]],
  ["tool", "A tool", "Its name", ["kit"]],
  ["material", "A material", "Its name", []],
  ["doubt", "Something to look up", "What is to be looked up", []],
  ["follow_up", "Something to come back to", "What is to be done", []],
];
const MOST = 25; // figures offered as the one that was said wrong: those nearest to the second
const UNKNOWN = { attribute: null, item: null, where: null, phase: "as_found" };

/** `second` gives where the clip stands, null where there is none; `done` is given the ruling, or nothing. */
export class AddForm {
  constructor(proof, second, done) {
    this.proof = proof;
    this.done = done;
    const sheet = proof.sheets.current;
    this.kind = KINDS.find(([, , , sheets]) => sheets.includes(sheet))?.[0] ?? "measure";
    const id = (name) => `add-${name}`;
    const choices = KINDS.map(([value, words]) => make("option", { value, selected: value === this.kind }, words));
    this.which = make("select", { id: id("kind"), onchange: () => this.turn(this.which.value) }, ...choices);
    this.at = make("input", { id: id("at"), type: "text", value: clock(second?.() ?? 0), autocomplete: "off", size: 9, oninput: () => this.heed() });
    this.there = make("output.aside", { htmlFor: id("at") });
    this.fields = make("div");
    this.check = new Check(proof.address, (told) => this.show(told));
    this.element = make(
      "form.slip-form.adding", { onsubmit: (event) => this.submit(event), onkeydown: (event) => slipKeys(event, this.element, this.words, () => this.done(null)), "aria-label": "Something to add" },
      make("label", { htmlFor: id("kind") }, "What the machine missed"), this.which,
      this.fields,
      make("label", { htmlFor: id("at") }, "At (minutes:seconds)"),
      make("div.at-second", {}, this.at, second ? make("button.press", { type: "button", onclick: () => this.stamp(second()) }, "The clip’s second") : null),
      this.there,
      make(
        "div.presses", {},
        make("button.press.go", { type: "submit" }, "Add ", make("kbd", { "aria-hidden": "true" }, "⏎")),
        make("button.press", { type: "button", onclick: () => done(null) }, "Leave ", make("kbd", { "aria-hidden": "true" }, "Esc")),
      ),
    );
    this.turn(this.kind);
    this.listen();
  }

  focus() {
    (this.said ?? this.words).focus();
  }

  /** Show the lines of another kind; what was typed stays. */
  turn(kind) {
    this.kind = kind;
    const typed = this.words?.value ?? "";
    const long = kind === "step" || kind === "doubt" || kind === "follow_up";
    this.words = long
      ? make("textarea", { value: typed, rows: 2, maxLength: 2000 })
      : make("input", { type: "text", value: typed, autocomplete: "off", spellcheck: false, maxLength: 200 });
    this.words.id = "add-words";
    this.words.addEventListener("input", () => this.ask());
    this.told = make("output", { htmlFor: "add-words" });
    this.naming = kind === "measure" ? new Naming(UNKNOWN) : null;
    this.said = kind === "correction" ? make("input", { id: "add-said", type: "text", autocomplete: "off", maxLength: 500 }) : null;
    this.of = kind === "correction" ? this.figures() : null;
    fill(
      this.fields,
      this.of ? make("label", { htmlFor: "add-of" }, "Which figure was said wrong") : null, this.of,
      this.said ? make("label", { htmlFor: "add-said" }, "What was said") : null, this.said,
      make("label", { htmlFor: "add-words" }, KINDS.find(([name]) => name === kind)[2]), this.words, this.told,
      this.naming?.element,
    );
    this.ask();
  }

  /** The figures nearest to the second, to choose the one that was said wrong. */
  figures() {
    const second = secondsIn(this.at.value) ?? 0;
    const near = this.proof.state.figures
      .map((item) => [Math.abs(item.start - second), item])
      .sort(([one], [other]) => one - other)
      .slice(0, MOST)
      .map(([, item]) => item);
    const choose = () => {
      const item = near.find((one) => one.id === this.of.value);
      if (item) {
        this.said.value = item.quote;
        this.stamp(item.start);
      }
    };
    const options = near.map((item) => make("option", { value: item.id }, `${item.clock} ${item.title}`));
    return make("select", { id: "add-of", onchange: choose }, make("option", { value: "" }, "none of the figures"), ...options);
  }

  stamp(second) {
    this.at.value = clock(second);
    this.heed();
  }

  /** The second was changed: show what is said there, a moment after the last key. */
  heed() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.listen(), 150);
  }

  async listen() {
    const second = secondsIn(this.at.value);
    this.at.setAttribute("aria-invalid", second === null ? "true" : "false");
    if (second === null) {
      fill(this.there, "Write it as 1:23, or 1:02:03 after the first hour.");
      return;
    }
    try {
      const { quote } = await read(`${this.proof.address}said?second=${second}`);
      fill(this.there, quote ? `Said there: “${quote}”` : "Nothing is said there.");
    } catch {
      fill(this.there); // the strip tells what is wrong with the server
    }
  }

  ask() {
    this.answer = null;
    if (this.kind === "measure" || this.kind === "correction") {
      this.check.ask("", this.words.value, this.attribute);
    }
  }

  get attribute() {
    return this.naming?.changes().attribute ?? "";
  }

  /** What the server made of the figure; a correction that is none is taken as words. */
  show(told) {
    this.answer = told;
    const wrong = this.kind === "measure" && Boolean(told.problem && told.text);
    this.words.setAttribute("aria-invalid", wrong ? "true" : "false");
    this.told.className = wrong ? "problem" : told.display ? "reads" : "";
    const reads = told.display ? typeset(`${told.display}${told.other ? ` = ${told.other}` : ""}`) : "";
    fill(this.told, wrong ? told.problem : reads);
  }

  async submit(event) {
    event.preventDefault();
    const { kind, words: line } = this;
    const second = secondsIn(this.at.value);
    const words = line.value.trim();
    if (second === null) {
      this.at.focus();
      return;
    }
    if (!words) {
      line.focus();
      return;
    }
    const change = { kind, second, said: this.said?.value.trim() ?? "", of: this.of?.value ?? "", to: { text: words } };
    if (kind === "measure" || kind === "correction") {
      const told = await this.check.now("", words, this.attribute);
      this.show(told);
      if (kind === "measure" && told.problem && !(told.overrule && this.warned === words)) {
        this.warned = words;
        line.focus();
        return;
      }
      change.overrule = Boolean(told.overrule);
      if (kind === "measure" || !told.problem) {
        change.to = { figure: words };
      }
    }
    if (this.naming) {
      change.to = { ...change.to, phase: this.naming.phase.value, ...this.naming.changes() };
    }
    this.done(change);
  }
}
