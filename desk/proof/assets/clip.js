// The clip of an item: the few seconds around it, in a player that stands in the item's own frame.

import { make } from "/assets/make.js";
import { tell } from "/assets/tell.js";

const MARGIN = 1.5;
const STEP = 1.5;
const MOST = 30;
const RATES = [1, 0.75, 0.5];

/** One player for the whole page: it moves to the item whose clip is played. */
export class Clip {
  constructor(kind, address) {
    this.kind = kind;
    this.player = kind
      ? make(kind === "video" ? "video" : "audio", { src: address, preload: "metadata", controls: true, playsInline: true })
      : null;
    this.rate = 1;
    this.margins = new Map();
    this.item = null;
    this.until = Infinity;
    this.onchange = () => {};
    this.player?.setAttribute("aria-label", "The clip");
    this.player?.addEventListener("timeupdate", () => this.stopAtEnd());
    for (const event of ["play", "pause", "ratechange"]) {
      this.player?.addEventListener(event, () => this.onchange());
    }
  }

  /** True while a clip of this item plays. */
  plays(item) {
    return this.item === item.id && this.player !== null && !this.player.paused;
  }

  /** The second at which the clip stands; of an item whose clip was not played, where the item begins. */
  second(item) {
    return this.item === item.id && this.player ? this.player.currentTime : item.start;
  }

  /** First and last second of an item's clip. */
  range(item) {
    const margin = MARGIN + (this.margins.get(item.id) ?? 0);
    return [Math.max(0, item.start - margin), item.end + margin];
  }

  /** Play the item's clip from its start, or stop it. `frame` is where the player is put. */
  toggle(item, frame) {
    if (!this.player) {
      return;
    }
    if (this.plays(item)) {
      this.player.pause();
      return;
    }
    this.put(item, frame);
    const [from, until] = this.range(item);
    this.until = until;
    this.player.currentTime = from;
    this.player.playbackRate = this.rate;
    this.player.preservesPitch = true;
    this.player.play().catch((error) => tell(`The clip can't be played: ${error.message}`));
  }

  /** Put the player into the item's frame, over its still. */
  put(item, frame) {
    this.item = item.id;
    if (this.player.parentElement !== frame) {
      frame.append(this.player);
    }
    frame.classList.add("playing");
  }

  /** Slower, and round to full speed again. */
  slower() {
    this.rate = RATES[(RATES.indexOf(this.rate) + 1) % RATES.length];
    if (this.player) {
      this.player.playbackRate = this.rate;
    }
    tell(`Speed ${this.rate}`);
    this.onchange();
  }

  /** Take more, or less, around the item into its clip. */
  widen(item, by) {
    const margin = Math.min(MOST, Math.max(0, (this.margins.get(item.id) ?? 0) + by * STEP));
    this.margins.set(item.id, margin);
    if (this.item === item.id) {
      this.until = this.range(item)[1];
    }
    const [from, until] = this.range(item);
    tell(`Clip of ${Math.round(until - from)} seconds`);
    this.onchange();
  }

  /** Stop, and take the player out of sight. */
  leave() {
    this.player?.pause();
    this.player?.parentElement?.classList.remove("playing");
    this.player?.remove();
    this.item = null;
  }

  stopAtEnd() {
    // Only where the clip ran on into its end: a person who seeks elsewhere in the player wants to hear that.
    if (this.player.currentTime >= this.until && this.player.currentTime < this.until + 0.6) {
      this.player.pause();
      this.until = Infinity;
    }
  }
}
