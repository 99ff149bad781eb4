// Sends a recording to the server, piece by piece in order, again and again until each is answered for.

import { Refusal, send, sendBytes } from "/assets/ask.js";

const BREATH = 1500;

/**
 * Dispatches "kept" with the server's answer, "trouble" with a `Refusal`, and "well" when it is over.
 * A piece leaves the reserve only when the server has it on the disk.
 */
export class Sender extends EventTarget {
  constructor(slug, reserve, largest) {
    super();
    this.address = `/record/sessions/${encodeURIComponent(slug)}/`;
    this.slug = slug;
    this.reserve = reserve;
    this.largest = largest;
    this.pieces = [];
    this.jobs = new Map();
    this.next = 0;
    this.reached = 0;
    this.troubled = false;
    this.running = null;
  }

  /** Take in what was recorded up to a second. */
  add(blob, second) {
    for (let at = 0; at < blob.size; at += this.largest) {
      const piece = { number: this.next, second, blob: blob.slice(at, at + this.largest) };
      this.next += 1;
      this.pieces.push(piece);
      this.reserve.keepPiece(this.slug, piece).catch(() => this.dispatchEvent(new Event("unreserved")));
    }
    this.go();
  }

  /** Take in the pieces that another run of the page left in the reserve. */
  addKept(pieces) {
    this.pieces.push(...pieces);
    this.next = pieces.length ? pieces[pieces.length - 1].number + 1 : 0;
    return this.go();
  }

  /** Send all marks, in the place of what was sent before. */
  sendMarks(marks) {
    this.jobs.set("marks", () => send(`${this.address}marks`, { marks }));
    this.go();
  }

  /** Send a still. */
  sendStill(blob, second) {
    this.jobs.set(`still ${second}`, () => sendBytes(`${this.address}stills?second=${second.toFixed(2)}`, blob));
    this.go();
  }

  /** Say that it ended, once everything before was answered for; gives the server's answer. */
  async end(second) {
    let told = null;
    this.jobs.set("end", async () => {
      told = await send(`${this.address}end`, { second });
    });
    await this.go();
    return told;
  }

  /** Seconds of recording that the server does not have yet. */
  get behind() {
    return this.pieces.length ? this.pieces[this.pieces.length - 1].second - this.reached : 0;
  }

  /** Go on until nothing is left to send. */
  go() {
    this.running ??= this.run().finally(() => {
      this.running = null;
    });
    return this.running;
  }

  async run() {
    while (this.pieces.length || this.jobs.size) {
      try {
        await (this.pieces.length ? this.sendPiece(this.pieces[0]) : this.sendJob());
        if (this.troubled) {
          this.troubled = false;
          this.dispatchEvent(new Event("well"));
        }
      } catch (error) {
        if (!(error instanceof Refusal)) {
          throw error;
        }
        this.troubled = true;
        this.dispatchEvent(new CustomEvent("trouble", { detail: error }));
        await new Promise((resolve) => setTimeout(resolve, BREATH));
      }
    }
  }

  async sendPiece(piece) {
    const told = await sendBytes(`${this.address}pieces/${piece.number}?second=${piece.second.toFixed(3)}`, piece.blob);
    if (told.next < piece.number) {
      throw new Refusal("refused", `the server lacks the piece before (${told.next} of ${piece.number})`);
    }
    while (this.pieces.length && this.pieces[0].number < told.next) {
      this.reached = this.pieces.shift().second;
    }
    this.reserve.dropPieces(this.slug, told.next).catch(() => {});
    this.dispatchEvent(new CustomEvent("kept", { detail: told }));
  }

  async sendJob() {
    const [name, job] = this.jobs.entries().next().value;
    await job();
    if (this.jobs.get(name) === job) {
      this.jobs.delete(name);
    }
  }
}
