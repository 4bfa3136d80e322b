// A screen on a wall does not go dark. Browsers allow that by https or on this computer, and not on a low battery.

let held = null;

/** A page that was out of sight has lost it. */
async function hold() {
  if (document.hidden || held?.released === false) return;
  held = await navigator.wakeLock.request("screen").catch(() => null);
  document.documentElement.dataset.awake = String(held !== null);
}

export function stayAwake() {
  if (!navigator.wakeLock) return;
  document.addEventListener("visibilitychange", hold);
  hold();
}
