// Rulings on their way to the disk. Each is kept in the browser before it is sent, and is let go only when the server
// has it safe; a ruling sent twice is kept once there, since it brings its own id.

import { send } from "/assets/ask.js";

const BATCH = 20;
const ORPHANED = 3000;
const WAITS = [500, 1000, 2000, 4000];

/** The rulings of one session that are not yet on disk. Dispatches "change" whenever what it holds has changed. */
export class Outbox extends EventTarget {
  constructor(slug, address) {
    super();
    this.address = address;
    this.prefix = `spokeshave-outbox/${slug}/`;
    this.held = new Map();
    this.landed = new Map(); // safe on disk, but the page has not been told of it yet
    this.trouble = null;
    this.keeps = true;
    this.failures = 0;
    this.sending = false;
    this.timer = 0;
    this.channel = "BroadcastChannel" in window ? new BroadcastChannel(this.prefix) : null;
    this.load();
    window.addEventListener("storage", (event) => event.key?.startsWith(this.prefix) && this.hear(event));
  }

  /** Rulings that wait, oldest first; those that the server refused are among them. */
  get waiting() {
    return [...this.held.values()].sort((one, other) => one.since - other.since);
  }

  /** True where the page has been told of everything that was ruled. */
  get quiet() {
    return !this.landed.size && !this.waiting.some((one) => !one.refused);
  }

  /** The page has been told of these rulings by the server. */
  seen(ids) {
    ids.forEach((id) => this.landed.delete(id));
  }

  /** The latest ruling on an item that the server has not yet told of. */
  about(item) {
    return this.waiting.findLast((one) => one.ruling.item === item) ?? [...this.landed.values()].findLast((one) => one.ruling.item === item);
  }

  /** Take rulings in, in their order. Gives back their ids. */
  put(...rulings) {
    const ids = rulings.map((ruling) => {
      const entry = { ruling: { id: newId(), ...ruling }, since: stamp(), tried: false, refused: null };
      this.hold(entry);
      return entry.ruling.id;
    });
    this.changed();
    this.flush();
    return ids;
  }

  /** Take back the last ruling that waits: drop it where it was never sent, else have it undone behind it. */
  takeBackLast() {
    const last = this.waiting.findLast((one) => !one.refused);
    if (!last) {
      return null;
    }
    if (last.tried || last.ruling.act === "undo" || last.ruling.act === "redo") {
      this.put({ act: "undo", of: last.ruling.id, item: last.ruling.item });
    } else {
      this.drop(last.ruling.id);
    }
    return last.ruling;
  }

  /** Forget a ruling that the server refused, or that was never sent. */
  drop(id) {
    this.held.delete(id);
    try {
      localStorage.removeItem(this.prefix + id);
    } catch {
      this.keeps = false;
    }
    this.changed();
  }

  /** Send what waits, now. */
  async flush() {
    clearTimeout(this.timer);
    if (this.sending) {
      return;
    }
    this.sending = true;
    try {
      for (;;) {
        const batch = this.waiting.filter((one) => !one.refused).slice(0, BATCH);
        if (!batch.length) {
          break;
        }
        if (!(await this.sendBatch(batch))) {
          break;
        }
      }
    } finally {
      this.sending = false;
      this.changed();
    }
  }

  async sendBatch(batch) {
    for (const one of batch) {
      one.tried = true;
      this.hold(one);
    }
    try {
      const { results } = await send(this.address, { rulings: batch.map((one) => one.ruling) });
      const told = new Map(results.map((one) => [one.id, one]));
      for (const one of batch) {
        this.settle(one, told.get(one.ruling.id));
      }
      const held = results.find((one) => one.again);
      this.trouble = held ? { kind: "disk", message: held.problem } : null;
      this.dispatchEvent(new CustomEvent("kept", { detail: results.filter((one) => one.kept) }));
      this.channel?.postMessage("kept");
      if (!held) {
        this.failures = 0;
        return true;
      }
    } catch (error) {
      this.trouble = { kind: error.kind ?? "away", message: error.message };
      if (error.kind === "refused") {
        batch.forEach((one) => this.settle(one, { problem: error.message }));
        this.trouble = null;
        return true;
      }
    }
    const wait = WAITS[Math.min(this.failures, WAITS.length - 1)];
    this.failures += 1;
    this.timer = setTimeout(() => this.flush(), wait);
    return false;
  }

  settle(entry, result) {
    if (result?.kept) {
      this.landed.set(entry.ruling.id, { ...entry, landed: true });
      this.drop(entry.ruling.id);
    } else if (result && !result.again) {
      entry.refused = { problem: result.problem, overrule: Boolean(result.overrule) };
      this.hold(entry);
    }
  }

  hold(entry) {
    this.held.set(entry.ruling.id, entry);
    try {
      localStorage.setItem(this.prefix + entry.ruling.id, JSON.stringify(entry));
    } catch {
      this.keeps = false; // a full or forbidden store: what waits lives in this page alone, and leaving it is warned of
    }
  }

  load() {
    try {
      for (let at = 0; at < localStorage.length; at += 1) {
        const key = localStorage.key(at);
        if (key.startsWith(this.prefix)) {
          const entry = JSON.parse(localStorage.getItem(key));
          this.held.set(entry.ruling.id, entry);
        }
      }
    } catch {
      this.keeps = false;
    }
  }

  /** Another tab took a ruling in, or let one go. Should that tab be closed before it could send, this one does. */
  hear({ key, newValue }) {
    const id = key.slice(this.prefix.length);
    if (newValue) {
      this.held.set(id, JSON.parse(newValue));
      setTimeout(() => this.held.has(id) && this.flush(), ORPHANED);
    } else {
      this.held.delete(id);
    }
    this.changed();
  }

  changed() {
    if (!this.waiting.some((one) => !one.refused)) {
      this.trouble = null; // what could not be sent from here is safe by way of another tab, or was dropped
    }
    this.dispatchEvent(new Event("change"));
  }
}

let last = 0;

function stamp() {
  last = Math.max(Date.now(), last + 0.001);
  return last;
}

function newId() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((one) => one.toString(16).padStart(2, "0")).join("");
}
