// Files from the service with progress: counted lines of a CSV, else the time that it takes.

import { get } from "./api.js";
import { h } from "./dom.js";
import { home } from "./home.js";
import { zone } from "./times.js";
import { unitAsked } from "./units.js";
import { viewer } from "./viewer.js";

/** Time zone and unit of whoever looks, for a report. */
export const printing = () => new URLSearchParams({ zone: zone(), unit: unitAsked() });

/** A CSV file with numbers as the viewer's spreadsheet reads them; sealed ones have decimal points. */
export function csvPath(path, { sealed = false } = {}) {
  if (viewer("decimal") === "comma") return `${path}?decimal=comma`;
  return sealed ? `${path}?seal=true` : path;
}

/**
 * A button that takes a file; lines(): how many to expect, or null where that can't be told;
 * progress(token): where the service tells how far it is; path(token) names each file taken.
 */
export function fileButton(words, path, name, { lines = () => null, progress = null } = {}) {
  const box = h("span", { class: "progress" });
  const button = h("button", { class: "button", type: "button", on: { click: () => take() } }, words);
  box.append(button);
  async function take() {
    if (button.getAttribute("aria-busy") === "true") return;
    const stop = new AbortController();
    const token = anyToken();
    const bar = new Bar(lines(), progress?.(token), () => stop.abort());
    button.setAttribute("aria-busy", "true");
    box.append(bar.element);
    try {
      keep(await fetched(path(token), stop.signal, bar), name);
      bar.end("Done");
    } catch (problem) {
      bar.end(stop.signal.aborted ? "Cancelled" : `Not done: ${problem.message}`);
    } finally {
      button.removeAttribute("aria-busy");
    }
  }
  return box;
}

/** Also where the page is not served over TLS, so no randomUUID. */
function anyToken() {
  return Array.from(crypto.getRandomValues(new Uint32Array(4)), (part) => part.toString(36)).join("-");
}

class Bar {
  constructor(total, progress, cancel) {
    this.total = total;
    this.progress = progress;
    this.started = performance.now();
    this.bar = h("progress", { "aria-label": "Progress", max: total && "1" });
    this.words = h("span", { class: "small", role: "status" });
    this.stop = h("button", { class: "button plain", type: "button", on: { click: cancel } }, "Cancel");
    this.element = h("span", { class: "progress" }, this.bar, this.words, this.stop);
    this.timer = setInterval(() => {
      if (!total) this.ask();
    }, 400);
  }

  done(lines) {
    if (!this.total) return;
    this.bar.value = Math.min(1, lines / this.total);
    this.say(`${Math.min(lines, this.total)} of ${this.total} readings`);
  }

  async ask() {
    const { rows, of } = this.progress
      ? await get(this.progress).catch(() => ({ rows: 0, of: 0 }))
      : { rows: 0, of: 0 };
    if (this.ended) return;
    if (of > 0) this.bar.value = rows / of;
    this.say(of > 0 ? `Laid out ${Math.ceil(rows / 2)} of ${of / 2} readings` : undefined);
  }

  say(words) {
    this.words.textContent = words ?? `Working, ${Math.round((performance.now() - this.started) / 1000)} s`;
  }

  end(words) {
    clearInterval(this.timer);
    this.ended = true;
    this.bar.remove();
    this.stop.remove();
    this.say(words);
    setTimeout(() => this.element.remove(), 6000);
  }
}

async function fetched(path, signal, bar) {
  const answer = await fetch(home(path), { signal });
  if (!answer.ok)
    throw new Error(
      (await answer.json().catch(() => ({}))).detail ?? `the service answered ${answer.status}`,
    );
  const parts = [];
  let lines = -1;
  for (const reader = answer.body.getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    for (const byte of value) if (byte === 10) lines++;
    bar.done(lines);
  }
  return new Blob(parts, { type: answer.headers.get("Content-Type") });
}

function keep(blob, name) {
  const url = URL.createObjectURL(blob);
  h("a", { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 10000);
}
