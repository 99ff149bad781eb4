// The moments that were marked at the bench: each plays the few seconds from where it was marked.

const BACK = 4;
const ON = 6;

/** Let each mark's button play its clip in the frame below the list, or stop it. */
export function offerMarks(clip) {
  const frame = document.getElementById("mark-frame");
  for (const button of document.querySelectorAll("button[data-mark]")) {
    const second = Number(button.dataset.mark);
    // One marks what has just been said: the clip begins before the mark.
    const item = { id: `mark ${second}`, start: Math.max(0, second - BACK), end: second + ON };
    button.disabled = !clip.player;
    button.addEventListener("click", () => clip.toggle(item, frame));
  }
}
