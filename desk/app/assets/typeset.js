// Figures set as the published pages set them: small fractions that still copy as 5/64.

const FRACTION = /(?<![\w/.,])(?:(\d{1,4})[ \u202f\u00a0])?(\d{1,3})\/(\d{1,3})(?![\w/]|\.\d)([\u202f\u00a0][^\s]+)?/gu;
const LARGEST = 128;
const NARROW = "\u202f";

/** A text as a fragment whose fractions are set. */
export function typeset(text) {
  const plain = String(text ?? "").replace(/\u00a0/g, NARROW).replace(/(?<![\w.)\]-])-(?=\d)/gu, "−");
  const fragment = document.createDocumentFragment();
  let done = 0;
  for (const found of plain.matchAll(FRACTION)) {
    const [whole, before, above, below, unit] = found;
    if (!(Number(above) > 0 && Number(above) < Number(below) && Number(below) <= LARGEST)) {
      continue;
    }
    fragment.append(plain.slice(done, found.index), fraction(before, above, below, unit));
    done = found.index + whole.length;
  }
  fragment.append(plain.slice(done));
  return fragment;
}

function fraction(before, above, below, unit) {
  const part = span("frac");
  const top = span("");
  const bottom = span("");
  top.textContent = above;
  bottom.textContent = below;
  part.append(top, "/", bottom);
  const whole = span("nobreak");
  whole.append(before ? `${before}${NARROW}` : "", part, unit ?? "");
  return whole;
}

function span(name) {
  const element = document.createElement("span");
  if (name) {
    element.className = name;
  }
  return element;
}
