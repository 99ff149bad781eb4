// The strip at the top: how much is settled, what is on disk and what is not, undo, redo and the keys.

import { make, fill } from "/assets/make.js";
import { mending } from "./mark.js";

const TROUBLES = {
  away: (count) => `The server does not answer. ${count}This page keeps asking.`,
  shut: (count) => `The server was started anew, with a new address: open the one that it printed. ${count}`,
  disk: (count, message) => `${message}. ${count}This page keeps trying.`,
};

export class Strip {
  constructor(proof) {
    this.proof = proof;
    for (const name of ["progress", "tally", "kept", "undo", "redo", "add", "help", "trouble"]) {
      this[name] = document.getElementById(name);
    }
    this.undo.addEventListener("click", () => proof.undo());
    this.redo.addEventListener("click", () => proof.redo());
    this.add.addEventListener("click", () => proof.openAdd());
    this.help.addEventListener("click", () => proof.help());
  }

  /** Show how things stand. */
  update() {
    const { state, outbox } = this.proof;
    const waiting = outbox.waiting;
    if (state) {
      this.count(state);
      this.add.disabled = !state.whole;
      setOff(this.undo, !state.undo && !waiting.length, state.undo?.words);
      setOff(this.redo, !state.redo || waiting.length > 0, state.redo?.words);
    }
    this.tellKept(waiting);
    this.tellTrouble(waiting);
  }

  count(state) {
    const { queries: all, settled } = state.counts;
    this.progress.max = Math.max(all, 1);
    this.progress.value = all ? settled : 1;
    this.tally.textContent = `${settled} of ${all} settled`;
    const { figures, steps: procedure, kit, errata, unplaced } = state.counts;
    const counts = { queries: all - settled, figures, procedure, kit, errata, unplaced };
    for (const [name, count] of Object.entries(counts)) {
      document.getElementById(`count-${name}`).textContent = count ? `(${count})` : "";
    }
    document.querySelector('.sheets a[href="#unplaced"]').classList.toggle("lost", unplaced > 0);
  }

  tellKept(waiting) {
    const refused = waiting.filter((one) => one.refused).length;
    const going = waiting.length - refused;
    const told = going ? `${going} not on disk yet` : refused ? `${refused} refused` : "Everything is on disk";
    if (this.kept.textContent !== told) {
      this.kept.textContent = told;
      this.kept.classList.toggle("waits", waiting.length > 0);
    }
  }

  tellTrouble(waiting) {
    const { session, outbox } = this.proof;
    const trouble = outbox.trouble ?? (session.trouble && { kind: session.trouble.kind, message: session.trouble.message });
    const going = waiting.filter((one) => !one.refused).length;
    const count = going ? `${going} ${going === 1 ? "ruling waits" : "rulings wait"} in this browser. ` : "";
    const told = trouble ? (TROUBLES[trouble.kind] ?? TROUBLES.disk)(count, trouble.message) : "";
    const lost = waiting.filter((one) => one.refused && !this.proof.list?.entries.has(one.ruling.item));
    const key = told + lost.map((one) => one.ruling.id).join();
    if (this.trouble.dataset.told === key) {
      return;
    }
    this.trouble.dataset.told = key;
    fill(this.trouble, told ? make("p", {}, told) : null, ...lost.map((one) => this.refusal(one)));
  }

  /** A refused ruling whose item is not in sight, so that its refusal is. */
  refusal(one) {
    return make(
      "p", {},
      `Refused: ${one.ruling.act}: ${one.refused.problem} `,
      ...mending(one, this.proof),
    );
  }
}

function setOff(button, off, words) {
  button.disabled = off;
  button.title = off || !words ? "" : words;
}
