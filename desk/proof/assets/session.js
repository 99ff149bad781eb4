// The session as the server last told it, asked for again and again so that what another tab rules is seen here too.

import { Refusal, read } from "/assets/ask.js";

const BREATH = 2000;

/** Dispatches "change" when the state is another, "told" whenever the server has answered, "trouble" when the server can't be asked, "well" when it can again. */
export class SessionState extends EventTarget {
  constructor(address, outbox) {
    super();
    this.address = address;
    this.outbox = outbox;
    this.state = null;
    this.tag = null;
    this.trouble = null;
    this.asking = null;
    outbox.addEventListener("kept", () => this.refresh());
    outbox.channel?.addEventListener("message", () => this.refresh());
    document.addEventListener("visibilitychange", () => !document.hidden && this.refresh());
  }

  /** Begin to ask, and go on: first for what the first screens show, then for the whole. */
  async start() {
    await this.begin();
    await this.refresh();
    setInterval(() => !document.hidden && this.refresh(), BREATH);
  }

  /** What can't be asked here is asked again with the whole, which tells of trouble. */
  async begin() {
    try {
      this.state = await read(`${this.address}?part=beginning`);
      this.dispatchEvent(new Event("change"));
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    } catch (error) {
      if (!(error instanceof Refusal)) {
        throw error;
      }
    }
  }

  /** Ask now; a question under way is answered first. */
  refresh() {
    this.asking = (this.asking ?? Promise.resolve()).then(() => this.ask());
    return this.asking;
  }

  async ask() {
    const landed = [...this.outbox.landed.keys()];
    try {
      const told = await read(this.address, { known: this.tag });
      if (this.trouble) {
        this.trouble = null;
        this.dispatchEvent(new Event("well"));
      }
      this.outbox.seen(landed);
      if (told) {
        this.tag = told.tag;
        this.state = told;
        this.dispatchEvent(new Event("change"));
      }
      this.dispatchEvent(new Event("told"));
    } catch (error) {
      this.trouble = error;
      this.dispatchEvent(new Event("trouble"));
    }
  }
}
