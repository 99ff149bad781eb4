// The page as it will be published, in a frame: made anew when it is turned to and when a ruling changed it.

import { make, fill } from "/assets/make.js";

export class Galley {
  constructor(place, address, proof) {
    this.place = place;
    this.address = address;
    this.proof = proof;
    this.frame = null;
    this.shown = null;
  }

  /** Something may have changed; only a galley in sight is made anew. */
  changed(inSight) {
    if (!inSight || this.shown === this.proof.session.tag) {
      return;
    }
    this.shown = this.proof.session.tag;
    const at = this.frame?.contentWindow?.scrollY ?? 0;
    const frame = make("iframe.galley", { src: this.address, title: "The page as it will be published" });
    frame.addEventListener("load", () => frame.contentWindow?.scrollTo(0, at));
    this.frame = frame;
    fill(this.place, make("p", {}, make("a", { href: this.address, target: "_blank", rel: "noopener" }, "Open it by itself")), frame);
  }

  /** Turned away from: what it plays must not be heard any more. */
  leave() {
    this.frame?.remove();
    this.frame = null;
    this.shown = null;
  }
}
