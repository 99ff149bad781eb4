// What a figure measures, of what, where and in which phase: folded away until it is wanted.

import { make } from "/assets/make.js";

const NAMES = [
  ["attribute", "What is measured"],
  ["item", "Of what"],
  ["where", "Where"],
];
const PHASES = [
  ["as_found", "as found"],
  ["target", "aim"],
  ["as_left", "as left"],
  ["general", "rule of thumb"],
];

/** The fields of a measure beside its figure. */
export class Naming {
  constructor(figure) {
    this.figure = figure;
    this.lines = new Map(NAMES.map(([name]) => [name, make("input", { type: "text", value: figure[name] ?? "", maxLength: 200 })]));
    this.phase = make(
      "select", {},
      ...PHASES.map(([value, words]) => make("option", { value, selected: value === figure.phase }, words)),
    );
    this.element = make(
      "details.naming", {},
      make("summary", {}, "What it measures"),
      ...NAMES.map(([name, words]) => make("label", {}, `${words} `, this.lines.get(name))),
      make("label", {}, "Phase ", this.phase),
    );
  }

  /** The fields that the person changed; an empty text clears one. */
  changes() {
    const changed = {};
    for (const [name, line] of this.lines) {
      if (line.value.trim() !== (this.figure[name] ?? "")) {
        changed[name] = line.value.trim();
      }
    }
    if (this.phase.value !== this.figure.phase) {
      changed.phase = this.phase.value;
    }
    return changed;
  }
}
