// Calls to the service. A refusal is thrown as a Problem, with one fault for each field.

import { home } from "./home.js";
import { viewer } from "./viewer.js";

export class Problem extends Error {
  constructor(status, said) {
    super(said.detail || `The service answered ${status}.`);
    this.status = status;
    this.damaged = said.type === "/problems/damaged-record";
    this.sameName = said.type === "/problems/same-name";
    this.doubtful = said.type === "/problems/doubtful";
    this.faults = said.faults || [];
    this.present = said.present; // what was to be changed, as it is now
  }
}

export function get(path) {
  return ask(inViewersUnit(path), { headers: { Accept: "application/json" } });
}

/**
 * Changes something, in the name of the viewer; see identity.js for asking who that is. `version` is the state
 * that is meant to be changed, where that matters.
 */
export function send(method, path, body = {}, version = "") {
  const headers = { "Content-Type": "application/json", "Chordlog-By": encodeURIComponent(viewer("name")) };
  if (viewer("key")) headers.Authorization = `Bearer ${viewer("key")}`;
  if (version) headers["If-Match"] = `"${version}"`;
  headers["Idempotency-Key"] = newKey();
  const options = { method, headers, body: JSON.stringify(body) };
  // an answer that was lost on its way is asked for once more: by its key the change is done once
  return ask(inViewersUnit(path), options).catch((problem) => {
    if (problem.status !== 0) throw problem;
    return ask(inViewersUnit(path), options);
  });
}

const newKey = () =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");

/** The service says lengths in sentences, and draws charts, in the unit asked for. */
export const inViewersUnit = (path) =>
  viewer("unit") === "inch" ? `${path}${path.includes("?") ? "&" : "?"}unit=inch` : path;

/** How often what the service is busy with is asked for again: too much at once, or a change still being saved. */
const ATTEMPTS = { 503: 4, 409: 20 };
let aheadMs = 0;

/** The service's clock, ms: a tablet's own may be wrong. */
export const serviceNow = () => Date.now() + aheadMs;

async function ask(path, options, attempt = 1) {
  let answer;
  try {
    answer = await fetch(home(path), options);
  } catch {
    throw new Problem(0, {
      detail: "The service does not answer. Is it running, and is this device on its network?",
    });
  }
  const date = Date.parse(answer.headers.get("Date"));
  if (Math.abs(date - serviceNow()) > 2000) aheadMs = date - Date.now();
  const wait = Number(answer.headers.get("Retry-After"));
  if (wait > 0 && attempt < (ATTEMPTS[answer.status] ?? 0)) {
    await new Promise((resolve) => setTimeout(resolve, 1000 * wait));
    return ask(path, options, attempt + 1);
  }
  const text = await answer.text();
  const said = text ? parsed(text) : null;
  if (answer.status === 401 && said?.title === "Sign in") document.dispatchEvent(new Event("signed-out"));
  if (!answer.ok) throw new Problem(answer.status, said ?? {});
  return said ?? {};
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/**
 * Numbers the questions of one place: `turn()` begins one, what it gives says whether none was begun after it.
 * An answer to an earlier question may come late, and is passed over.
 */
export function turns() {
  let newest = 0;
  return () => {
    const mine = ++newest;
    return () => mine === newest;
  };
}

/** The value of a query parameter of this page, or null. */
export function asked(name) {
  return new URLSearchParams(location.search).get(name);
}

/** As {@link asked}, on a page that shows nothing without it: `what` is to be chosen from a list. */
export function needed(name, what) {
  const value = asked(name);
  if (value) return value;
  throw Object.assign(new Error(`This address names no ${what}. Choose one from the list.`), { status: 404 });
}
