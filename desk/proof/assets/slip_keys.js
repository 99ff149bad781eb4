// The keys of a form on a slip: Esc leaves it, Enter in its line of words gives what it says.

/** Answer a key in `form`; `line` is where Enter gives. */
export function slipKeys(event, form, line, leave) {
  if (event.key === "Escape") {
    event.stopPropagation();
    leave();
  } else if (event.key === "Enter" && !event.shiftKey && event.target === line) {
    event.preventDefault();
    form.requestSubmit();
  }
}
