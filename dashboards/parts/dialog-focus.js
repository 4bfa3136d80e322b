// Where the focus is while a dialog is open, and after it.

/** The first field or choice, also where the middle of the dialog scrolls and the browser would take that. */
export function focusFirst(dialog) {
  const within = dialog.querySelector(".within");
  if (document.activeElement !== within) return;
  within.querySelector("input, select, textarea, button")?.focus({ preventScroll: true });
}

const REDRAWN_WITHIN_MS = 3000;

/** One engine gives a pressed button no focus, but what it stands in. */
export const unfocused = () => document.activeElement?.matches("body, main") ?? true;

/** Focus goes back to what opened a dialog, also where the page draws that anew after the action. */
export function focusAgain(opener) {
  const section = opener.closest?.("section");
  const lost = () => unfocused() && !document.querySelector("dialog[open]");
  const seek = () => {
    if (lost()) (opener.isConnected ? opener : alike(opener))?.focus();
  };
  const redrawn = new MutationObserver(seek);
  redrawn.observe(document.body, { childList: true, subtree: true });
  setTimeout(() => {
    redrawn.disconnect();
    if (lost() && section?.isConnected) focusOn(section);
  }, REDRAWN_WITHIN_MS);
  seek();
}

/** What opened it is done and gone: the reader goes on in its section. */
function focusOn(section) {
  section.tabIndex = -1;
  section.focus({ preventScroll: true });
}

/** What stands now where that element stood: with its name for screen readers, or its words. */
function alike(element) {
  const name = element.getAttribute("aria-label") ?? element.textContent;
  return [...document.querySelectorAll(element.tagName)].find(
    (each) => (each.getAttribute("aria-label") ?? each.textContent) === name && !each.disabled,
  );
}
