// Elements made from plain text: nothing that was said, typed or named is ever read as markup.

/** An element with properties, attributes (names with a dash, role, for ...) and children (text or elements). */
export function make(tag, properties = {}, ...children) {
  const [name, ...classes] = tag.split(".");
  const element = document.createElement(name);
  if (classes.length) {
    element.className = classes.join(" ");
  }
  for (const [key, value] of Object.entries(properties)) {
    if (value === null || value === undefined) {
      continue;
    }
    if (key.startsWith("on")) {
      element.addEventListener(key.slice(2), value);
    } else if (key in element && !key.includes("-") && key !== "list" && key !== "form") {
      element[key] = value;
    } else {
      element.setAttribute(key, value);
    }
  }
  element.append(...children.filter((one) => one !== null && one !== undefined && one !== ""));
  return element;
}

/** Put children in the place of what an element holds. */
export function fill(element, ...children) {
  element.replaceChildren(...children.filter((one) => one !== null && one !== undefined && one !== ""));
  return element;
}
