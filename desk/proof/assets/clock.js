// Seconds as a person reads and writes them: 1:23.4, or 1:02:03 after the first hour.

/** Seconds with their tenths. */
export function clock(seconds) {
  const tenths = Math.round(seconds * 10);
  const [hours, minutes, rest] = [Math.floor(tenths / 36000), Math.floor((tenths % 36000) / 600), (tenths % 600) / 10];
  const tail = rest.toFixed(1).padStart(4, "0");
  return hours ? `${hours}:${String(minutes).padStart(2, "0")}:${tail}` : `${minutes}:${tail}`;
}

/** The seconds that a text names; null where it names none. */
export function secondsIn(text) {
  const found = /^(?:(?:(\d+):)?(\d+):)?(\d+(?:[.,]\d+)?)$/.exec(text.trim());
  if (!found) {
    return null;
  }
  const [, hours, minutes, seconds] = found;
  return Number(hours ?? 0) * 3600 + Number(minutes ?? 0) * 60 + Number(seconds.replace(",", "."));
}
