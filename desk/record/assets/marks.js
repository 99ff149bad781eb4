// The moments that were marked, each with its second and room for a word.

import { make } from "/assets/make.js";
import { tell } from "/assets/tell.js";

/** Dispatches "change" when the marks are others. */
export class Marks extends EventTarget {
  constructor(section) {
    super();
    this.section = section;
    this.list = section.querySelector("ol");
    this.marks = [];
  }

  /** Mark a second. */
  add(second) {
    const mark = { second: Math.round(second * 10) / 10, note: "" };
    this.marks.push(mark);
    const note = make("input", {
      type: "text", maxLength: 500, "aria-label": `What is at ${clock(second)}`, placeholder: "what is it? (may stay empty)",
      onchange: () => {
        mark.note = note.value;
        this.tellChange();
      },
    });
    const row = make(
      "li", {},
      make("span.at", {}, clock(second)), note,
      make("button.press.small", { type: "button", onclick: () => this.take(mark, row), "aria-label": `Unmark ${clock(second)}` }, "Unmark"),
    );
    this.list.prepend(row);
    this.section.hidden = false;
    tell(`Marked at ${clock(second)}.`);
    this.tellChange();
  }

  take(mark, row) {
    this.marks.splice(this.marks.indexOf(mark), 1);
    row.remove();
    this.section.hidden = !this.marks.length;
    tell(`No longer marked: ${clock(mark.second)}.`);
    document.getElementById("mark").focus();
    this.tellChange();
  }

  tellChange() {
    this.dispatchEvent(new Event("change"));
  }
}

/** Seconds as a person reads them on a player: 3:07, 1:02:40. */
export function clock(seconds) {
  const whole = Math.floor(seconds);
  const two = (number) => String(number).padStart(2, "0");
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return hours ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}
