// A sheet's list of items in groups, brought up to date piece by piece so that what a person is at stays as it is.

import { make, fill } from "/assets/make.js";
import { Entry } from "./entry.js";

/** `groups` is a list of [name, heading]; an item whose group is not named there is left out. */
export class List {
  constructor(place, groups, proof, tools) {
    this.place = place;
    this.proof = proof;
    this.tools = tools;
    this.entries = new Map();
    this.order = [];
    this.current = null;
    this.groups = groups.map(([name, heading, action]) => {
      const title = make("h3", {}, heading, " ", make("span.count"));
      const list = make("ol.entries");
      list.setAttribute("role", "list");
      const part = make("div.group", { hidden: true }, make("div.group-head", {}, title, action ? action(this, name) : null), list);
      place.append(part);
      return { name, title, list, part };
    });
    this.empty = make("p.empty", { hidden: true });
    place.append(this.empty);
  }

  /** Show these items; `whole` where they are all, and can be counted. */
  update(items, whole, whenEmpty) {
    this.order = [];
    const kept = new Set();
    for (const group of this.groups) {
      const own = items.filter((item) => item.group === group.name);
      group.part.hidden = !own.length;
      const open = own.filter((item) => !item.settled && item.wanted).length;
      group.title.lastChild.textContent = !whole ? "" : open && open < own.length ? `(${open} of ${own.length} open)` : `(${own.length})`;
      const elements = own.map((item) => {
        const entry = this.entry(item);
        this.order.push(entry);
        kept.add(item.id);
        return entry.element;
      });
      arrange(group.list, elements);
    }
    for (const [id, entry] of this.entries) {
      if (!kept.has(id)) {
        this.leave(entry);
      }
    }
    this.empty.hidden = this.order.length > 0;
    fill(this.empty, whenEmpty);
  }

  /** Bring the marks up to date with what waits to be sent. */
  refresh() {
    this.order.forEach((entry) => entry.update(entry.item));
  }

  entry(item) {
    const known = this.entries.get(item.id);
    if (known) {
      known.update(item);
      return known;
    }
    const made = new Entry(item, this.proof, this.tools);
    this.entries.set(item.id, made);
    return made;
  }

  leave(entry) {
    this.entries.delete(entry.item.id);
    entry.element.remove();
    if (this.current === entry) {
      this.current = null;
    }
  }

  /** Open an entry, and close the one that was. */
  go(entry, focus = true) {
    if (this.current && this.current !== entry) {
      this.current.hide();
    }
    this.current = entry;
    entry?.show(focus);
  }

  /** The entry `by` places on; stays within the list. */
  step(by) {
    if (!this.order.length) {
      return;
    }
    const at = this.current ? this.order.indexOf(this.current) + by : by > 0 ? 0 : this.order.length - 1;
    this.go(this.order[Math.min(Math.max(at, 0), this.order.length - 1)]);
  }

  /** The next open entry behind the current one, from the top again where there is none; null where all is settled. */
  nextOpen() {
    const at = this.current ? this.order.indexOf(this.current) : -1;
    return [...this.order.slice(at + 1), ...this.order.slice(0, Math.max(at, 0))].find((one) => one.open && one.item.wanted) ?? null;
  }
}

/** Put elements in this order, and leave the focus, and a clip that plays, where they are. */
function arrange(list, elements) {
  const focused = document.activeElement;
  let before = null;
  for (const element of elements) {
    const due = before ? before.nextSibling : list.firstChild;
    if (due !== element) {
      if (element.isConnected && "moveBefore" in list) {
        list.moveBefore(element, due);
      } else {
        list.insertBefore(element, due);
      }
    }
    before = element;
  }
  if (document.activeElement !== focused && focused.isConnected) {
    focused.focus({ preventScroll: true });
  }
}
