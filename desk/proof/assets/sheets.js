// The sheets of the page: what needs a ruling, all figures, the procedure, tools and materials, errata and what is open, what has lost its place, the page itself.

const SHEETS = ["queries", "figures", "procedure", "kit", "errata", "unplaced", "galley"];

/** Shows the sheet that the address names, and tells who listens. */
export class Sheets extends EventTarget {
  constructor() {
    super();
    window.addEventListener("hashchange", () => this.show());
  }

  /** Name of the sheet in sight. */
  get current() {
    const named = location.hash.slice(1);
    return SHEETS.includes(named) ? named : SHEETS[0];
  }

  /** Turn to a sheet. */
  turn(name) {
    if (name !== this.current) {
      location.hash = name;
      this.show();
    }
  }

  /** Have the page show the current sheet. */
  show() {
    if (this.shown === this.current) {
      return;
    }
    this.shown = this.current;
    for (const name of SHEETS) {
      document.getElementById(name).hidden = name !== this.current;
      const link = document.querySelector(`.sheets a[href="#${name}"]`);
      if (name === this.current) {
        link.setAttribute("aria-current", "true");
      } else {
        link.removeAttribute("aria-current");
      }
    }
    this.dispatchEvent(new CustomEvent("turned", { detail: this.current }));
  }
}
