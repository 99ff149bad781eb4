// What else a figure may be: rivals by ear, and figures worked out. Each takes one press and Enter.

import { make } from "/assets/make.js";
import { typeset } from "/assets/typeset.js";

const WHY = { heard_wrong: "may have been said", said_wrong: "worked out" };

/** A list of the figures in question and of their readings; null where there is nothing to choose. */
export function readings(item, choose) {
  if (!item.figures.length && !item.readings.length) {
    return null;
  }
  return make(
    "div.readings", {},
    item.figures.length ? make("ul.in-question", {}, ...item.figures.map(figure)) : null,
    item.readings.length
      ? make("ol.rivals", { "aria-label": "Other readings" }, ...item.readings.map((one, at) => rival(one, at, item, choose)))
      : null,
  );
}

function figure(one) {
  return make(
    "li", {},
    one.what ? `${one.what}: ` : "",
    make(one.stands ? "b.figure" : "s", {}, typeset(one.display)),
    one.other ? make("span.other", {}, " · ", make("i", {}, typeset(one.other))) : null,
    one.sure === null ? null : make("span.aside", {}, ` heard with confidence ${one.sure}`),
  );
}

function rival(one, at, item, choose) {
  const about = item.figures.length > 1 ? item.figures.find((figure) => figure.id === one.figure) : null;
  return make(
    "li", {},
    make(
      "button.press.reading", { type: "button", onclick: () => choose(one), "aria-keyshortcuts": String(at + 1) },
      make("kbd", { "aria-hidden": "true" }, String(at + 1)), " ",
      make("b.figure", {}, typeset(one.text)),
      about ? make("span", {}, " for ", typeset(about.display)) : null,
      make("span.aside", {}, one.said ? ` “${one.said}”, ${WHY[one.because]}` : ` ${WHY[one.because]}`),
    ),
  );
}
