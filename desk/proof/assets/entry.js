// One item of a list: a line when it is closed, its words, its clip and its rulings when it is open.

import { make, fill } from "/assets/make.js";
import { typeset } from "/assets/typeset.js";
import { AmendForm } from "./amend.js";
import { NoteForm } from "./note.js";
import { clipPart } from "./clip_part.js";
import { candidates } from "./candidates.js";
import { readings } from "./readings.js";
import { mark } from "./mark.js";
import { press } from "./press.js";
import { said } from "./said.js";

const STRIP = 110; // pixels that the strip at the top covers, and a breath

/** An item on the page. `proof` is the page's own object: it rules, plays and moves on. */
export class Entry {
  constructor(item, proof, tools = () => []) {
    this.proof = proof;
    this.tools = tools;
    this.current = false;
    this.turn = make("button.turn", { type: "button", "aria-expanded": "false", onclick: () => proof.press(this) });
    this.mark = make("span.mark-of");
    this.at = make("button.at", { type: "button", onclick: () => proof.play(this) });
    this.body = make("div.body", { hidden: true });
    this.element = make(
      "li.entry.query", {},
      make("span.margin", {}, this.at),
      make("div.slip", {}, make("h4.line", {}, this.turn, " ", this.mark), this.body),
    );
    this.update(item);
  }

  /** Show what the server now tells of the item, and what waits to be sent about it. */
  update(item) {
    const waiting = this.proof.outbox.about(item.id);
    const told = JSON.stringify([item, waiting]);
    if (told === this.told) {
      return;
    }
    this.told = told;
    this.item = item;
    this.waiting = waiting;
    this.element.dataset.item = item.id;
    this.element.classList.toggle("settled", item.settled);
    this.at.textContent = item.clock;
    this.at.setAttribute("aria-label", `${item.clock}, play the clip`);
    fill(this.turn, typeset(item.title));
    fill(this.mark, mark(item, waiting, this.proof));
    if (this.current) {
      this.setBody();
    }
  }

  /** True where the item waits for a person and nothing is on its way. */
  get open() {
    return !this.item.settled && (!this.waiting || Boolean(this.waiting.refused));
  }

  /** Open it; `focus` also puts the keyboard on it. */
  show(focus) {
    this.current = true;
    this.element.classList.add("current");
    this.turn.setAttribute("aria-expanded", "true");
    this.setBody();
    this.body.hidden = false;
    if (focus) {
      this.turn.focus({ preventScroll: true });
      this.bringIntoSight();
    }
  }

  /** Scroll as little as shows it whole; what is taller than the window is shown from its top. */
  bringIntoSight() {
    const whole = this.element.getBoundingClientRect().height < window.innerHeight - STRIP;
    this.element.scrollIntoView({ block: whole ? "nearest" : "start", behavior: "instant" });
  }

  /** Close it. */
  hide() {
    this.current = false;
    this.element.classList.remove("current");
    this.turn.setAttribute("aria-expanded", "false");
    this.body.hidden = true;
    this.body.replaceChildren();
    this.form = null;
  }

  setBody() {
    if (this.form) {
      return; // a person is typing: what they see stays until they are done
    }
    const { item, proof } = this;
    this.clip = clipPart(item, proof, this);
    this.place = make("div.place");
    fill(
      this.body,
      make(
        "div.words", {},
        said(item),
        item.source ? make("p.aside", {}, `Held against: ${item.source}`) : null,
        ...item.notes.map((one) => make("p.aside.noted", {}, "Note: ", one)),
        item.wording ? make("p.wording", {}, typeset(item.wording)) : null,
        readings(item, (reading) => this.amend(reading)),
        candidates(item, (one) => this.retract(one)),
        make("div.rulings", { role: "group", "aria-label": "Ruling" }, ...this.buttons()),
        this.place,
      ),
      this.clip.element,
    );
  }

  buttons() {
    const { proof } = this;
    return [
      press("Stet", "S", () => proof.rule(this, "stet"), "stet"),
      press("Amend", "A", () => this.amend()),
      press("Strike", "X", () => proof.rule(this, "strike"), "strike"),
      press("Note", "N", () => this.note()),
      ...this.tools(this),
    ];
  }

  /** Open the form for an amendment, with a reading that was chosen, or empty. */
  amend(reading = null) {
    this.open_form(new AmendForm(this.item, this.proof, reading, (change) => this.done(change)));
  }

  /** Say which statement of an earlier session is meant; null for none of them. */
  retract(one) {
    this.proof.rule(this, "retract", { of: one?.item ?? "", text: one?.session ?? "" });
  }

  /** Open the form for a note. */
  note() {
    this.open_form(new NoteForm((text) => this.done(text && { act: "note", text })));
  }

  open_form(form) {
    this.form = form;
    fill(this.place, form.element);
    form.focus();
    form.element.scrollIntoView({ block: "nearest", behavior: "instant" });
  }

  /** The form was left, with a ruling or without. */
  done(change) {
    this.form = null;
    this.setBody();
    this.turn.focus({ preventScroll: true });
    if (change) {
      this.proof.rule(this, change.act, change);
    }
  }
}
