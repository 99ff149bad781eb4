// What a screen reader is told besides what has the focus.

/** Say a line politely; the same line twice is said twice. */
export function tell(line) {
  const place = document.getElementById("told");
  if (place) {
    place.textContent = place.textContent === line ? `${line}\u200b` : line;
  }
}
