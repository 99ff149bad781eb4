// The sheets that are lists: which items each shows, under which headings, with which rulings of its own.

import { List } from "./list.js";
import { offerPass } from "./pass.js";
import { stepTools } from "./step_tools.js";
import { showLost } from "./lost.js";

const QUERIES = [
  ["settle", "To settle"],
  ["tie", "To listen to again"],
  ["retraction", "Taken back of an earlier session"],
  ["correction", "Taken back on film"],
  ["look", "To look at"],
  ["doubt", "To look up"],
  ["step", "Steps the machine was not sure of"],
];
const FIGURES = [
  ["as found", "As found"],
  ["aim", "Aim"],
  ["as left", "As left"],
  ["rule of thumb", "Rule of thumb"],
];
const STEPS = [
  ["step", "Steps in the order of work"],
  ["struck", "Struck"],
];
const KIT = [
  ["tool", "Tools"],
  ["material", "Materials"],
  ["struck", "Struck"],
];

const ERRATA = [
  ["correction", "Taken back, or put right in proof"],
  ["follow_up", "Left for later"],
  ["doubt", "To look up"],
  ["struck", "Struck"],
];

export class Lists {
  constructor(proof) {
    this.proof = proof;
    const place = (name) => document.querySelector(`#${name} .lists`);
    this.queries = new List(place("queries"), QUERIES, proof);
    this.figures = new List(place("figures"), FIGURES, proof);
    this.steps = new List(place("procedure"), STEPS, proof, (entry) => stepTools(entry, proof));
    this.kit = new List(place("kit"), KIT, proof);
    this.errata = new List(place("errata"), ERRATA, proof);
    this.lost = place("unplaced");
  }

  /** The list of a sheet; null where it has none. */
  of(sheet) {
    return { queries: this.queries, figures: this.figures, procedure: this.steps, kit: this.kit, errata: this.errata }[sheet] ?? null;
  }

  /** Bring the sheet in sight up to date; the others wait until they are turned to. */
  update(sheet) {
    const { state } = this.proof;
    if (!state.whole && sheet !== "queries" && sheet !== "unplaced") {
      return; // the whole is on its way
    }
    if (sheet === "queries") {
      this.queries.update(state.queries, state.whole, "The machine found nothing that needs a ruling. Read it through all the same.");
      offerPass(document.getElementById("pass"), this.proof);
      if (!this.queries.current) {
        this.begin();
      }
    } else if (sheet === "figures") {
      this.figures.update(state.figures, true, "No figure was said.");
    } else if (sheet === "procedure") {
      const struck = state.struck.map((item) => ({ ...item, group: "struck" }));
      this.steps.update([...state.steps, ...struck], true, "No step was found.");
    } else if (sheet === "kit") {
      const kit = state.kit.map((item) => (item.ruled?.act === "strike" ? { ...item, group: "struck" } : item));
      this.kit.update(kit, true, "No tool or material was named.");
    } else if (sheet === "errata") {
      this.errata.update(state.errata, true, "Nothing was taken back, left for later or to be looked up.");
    } else if (sheet === "unplaced") {
      showLost(this.lost, state.unplaced, this.proof);
    }
  }

  /** Open the worst of what is open, without taking the focus from where it is. */
  begin() {
    const first = this.queries.nextOpen();
    if (first) {
      this.queries.go(first, false);
    }
  }
}
