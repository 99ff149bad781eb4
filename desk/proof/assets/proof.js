// The proof page of one session: brings its parts together. Each part is a module of its own.

import { fill } from "/assets/make.js";
import { tell } from "/assets/tell.js";
import { AddForm } from "./add.js";
import { Clip } from "./clip.js";
import { Galley } from "./galley.js";
import { listenToKeys, showKeys } from "./keys.js";
import { Lists } from "./lists.js";
import { offerMarks } from "./marks.js";
import { Outbox } from "./outbox.js";
import { SessionState } from "./session.js";
import { Sheets } from "./sheets.js";
import { Strip } from "./strip.js";

/** What the parts ask of the page: to rule, to play, to move on. */
class Proof {
  constructor(root) {
    this.address = root.dataset.address;
    this.outbox = new Outbox(root.dataset.slug, `${this.address}rulings`);
    this.session = new SessionState(`${this.address}state`, this.outbox);
    this.clip = new Clip(root.dataset.picture, `${this.address}film`);
    this.sheets = new Sheets();
    this.galley = new Galley(document.querySelector("#galley .lists"), root.dataset.galley, this);
    this.lists = new Lists(this);
    this.strip = new Strip(this);
    this.later = [];
    this.session.addEventListener("told", () => this.outbox.quiet && this.later.shift()?.());
    this.clip.onchange = () => this.list?.current?.clip?.refresh?.();
    this.outbox.addEventListener("change", () => this.refresh());
    this.session.addEventListener("change", () => this.update());
    for (const event of ["trouble", "well"]) {
      this.session.addEventListener(event, () => this.strip.update());
    }
    this.sheets.addEventListener("turned", () => this.turned());
    window.addEventListener("beforeunload", (event) => this.outbox.waiting.length && !this.outbox.keeps && event.preventDefault());
    listenToKeys(this);
    offerMarks(this.clip);
  }

  async start() {
    this.sheets.show();
    await this.session.start();
    this.outbox.flush();
  }

  /** The list in sight; null on sheets without one. */
  get list() {
    return this.lists.of(this.sheets.current);
  }

  get state() {
    return this.session.state;
  }

  /** Address of the still of an item. */
  still(item) {
    return `${this.address}stills/${Math.round(item.start * 10)}.jpg`;
  }

  update() {
    performance.mark("told");
    this.lists.update(this.sheets.current);
    this.strip.update();
    this.galley.changed(this.sheets.current === "galley");
    performance.mark("shown");
  }

  refresh() {
    this.list?.refresh();
    this.strip.update();
  }

  turned() {
    this.clip.leave();
    if (this.state) {
      this.update();
    }
    if (this.sheets.current !== "galley") {
      this.galley.leave();
    }
  }

  /** An entry's line was pressed: open it, or close it. */
  press(entry) {
    if (entry.current) {
      this.clip.leave();
      this.list.go(null);
      entry.hide();
      entry.turn.focus();
    } else {
      this.go(entry);
    }
  }

  /** Open an entry. */
  go(entry) {
    this.clip.leave();
    this.list.go(entry);
  }

  /** Play an entry's clip, or stop it. */
  play(entry) {
    if (!entry.current) {
      this.go(entry);
    }
    if (entry.clip?.frame) {
      this.clip.toggle(entry.item, entry.clip.frame);
    }
  }

  /** Rule on an entry's item, and go on to the next that is open. */
  rule(entry, act, more = {}) {
    const list = this.list;
    this.outbox.put({ item: entry.item.id, ...more, act });
    if (act === "note") {
      tell("Note on its way");
      return;
    }
    const onwards = this.sheets.current === "queries" ? list.nextOpen() : null;
    const words = entry.item.title;
    if (onwards) {
      this.go(onwards);
      tell(`${act}: ${words}. Next: ${onwards.item.wanted}, ${onwards.item.title}`);
    } else {
      tell(this.sheets.current === "queries" ? `${act}: ${words}. Nothing further is open.` : `${act}: ${words}`);
    }
  }

  /** Do what rests on the order of steps once the page knows the order that the last ruling left. */
  whenTold(act) {
    if (this.outbox.quiet) {
      act();
    } else {
      this.later.push(act);
    }
  }

  /** Take back the last ruling, here or in another tab. */
  undo() {
    const waiting = this.outbox.takeBackLast();
    const last = this.state?.undo;
    if (waiting) {
      this.find(waiting.item);
      tell(`Taken back: ${waiting.act}`);
    } else if (last) {
      this.outbox.put({ act: "undo", of: last.id, item: last.item });
      this.find(last.item);
      tell(`Taken back: ${last.words}`);
    }
  }

  /** Give the ruling again that was taken back last. */
  redo() {
    const last = this.state?.redo;
    if (last && !this.outbox.waiting.length) {
      this.outbox.put({ act: "redo", of: last.id, item: last.item });
      this.find(last.item);
      tell(`Given again: ${last.words}`);
    }
  }

  find(item) {
    const entry = this.list?.entries.get(item);
    if (entry) {
      this.go(entry);
    }
  }

  /** Open the form for what the machine missed: in the open item, beside its clip, else at the top. */
  openAdd() {
    if (!this.state?.whole) {
      return;
    }
    const entry = this.list?.current ?? null;
    const place = document.getElementById("adding");
    const left = (change) => {
      if (entry) {
        entry.done(null);
      } else {
        fill(place);
        this.strip.add.focus();
      }
      if (change) {
        this.outbox.put({ act: "add", item: "", ...change });
        tell("Added; undo takes it back");
      }
    };
    this.clip.player?.pause();
    const form = new AddForm(this, entry ? () => this.clip.second(entry.item) : null, left);
    if (entry) {
      entry.open_form(form);
    } else {
      fill(place, form.element);
      form.focus();
    }
  }

  /** Ask for the session to be passed for press. */
  pass() {
    this.outbox.put({ act: "pass", item: "" });
  }

  help() {
    showKeys();
  }
}

const root = document.getElementById("proof");
const proof = new Proof(root);
proof.start();
