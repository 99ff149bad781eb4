// The list of sessions: what is open in each is asked for one by one, the newest first, so that the list is there at once.

import { read } from "/assets/ask.js";

for (const place of document.querySelectorAll("[data-open-at]")) {
  try {
    place.textContent = (await read(place.dataset.openAt)).open;
  } catch (error) {
    place.className = "problem";
    place.textContent = error.message;
  }
}
