// Asks the server how a typed figure reads, a moment after the last key.

import { read } from "/assets/ask.js";

const MOMENT = 150;

/** `show` is given what the server made of the words: `display` and `other`, or a `problem`. */
export class Check {
  constructor(address, show) {
    this.address = address;
    this.show = show;
    this.timer = 0;
  }

  /** Ask when the typing rests. */
  ask(item, text, attribute = "") {
    clearTimeout(this.timer);
    this.stop?.abort();
    if (!text.trim()) {
      this.show({ item, text });
      return;
    }
    this.timer = setTimeout(async () => {
      try {
        this.show(await this.now(item, text, attribute));
      } catch (error) {
        if (error.name !== "AbortError") {
          this.show({ item, text, problem: error.message });
        }
      }
    }, MOMENT);
  }

  /** Ask at once. Where the server can't be asked the words are taken as they are; it reads them when it gets them. */
  async now(item, text, attribute = "") {
    clearTimeout(this.timer);
    this.stop?.abort();
    this.stop = new AbortController();
    try {
      const query = new URLSearchParams({ item, text, attribute });
      return { item, text, ...(await read(`${this.address}reads?${query}`, { signal: this.stop.signal })) };
    } catch (error) {
      if (error.kind === "away" || error.kind === "shut") {
        return { item, text };
      }
      throw error;
    }
  }
}
