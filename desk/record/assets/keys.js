// Keys for the buttons in sight. Each key presses its button, so that both do the same and only what is offered works.

const STORE = "spokeshave-keys";

/** Have keys press buttons, wherever nothing is being typed: `buttons` maps a key to the names of its buttons. */
export function listenToKeys(buttons, help) {
  const off = document.getElementById("keys-off");
  off.checked = !wanted();
  off.addEventListener("change", () => localStorage.setItem(STORE, off.checked ? "off" : "on"));
  document.addEventListener("keydown", (event) => {
    if (event.defaultPrevented || event.repeat || event.ctrlKey || event.metaKey || event.altKey || !wanted()) {
      return;
    }
    if (typing(event.target)) {
      return;
    }
    const dialog = document.querySelector("dialog[open]");
    const named = event.key === "?" && !dialog ? [help] : buttons[event.key.toLowerCase()] ?? [];
    const button = named.map((name) => document.getElementById(name)).find((one) => usable(one, dialog));
    if (button) {
      event.preventDefault();
      button.click();
    }
  });
}

function usable(button, dialog) {
  return !button.disabled && button.checkVisibility() && (!dialog || dialog.contains(button));
}

function typing(target) {
  return ["INPUT", "TEXTAREA", "SELECT"].includes(target.tagName) || target.isContentEditable;
}

function wanted() {
  try {
    return localStorage.getItem(STORE) !== "off";
  } catch {
    return true;
  }
}
