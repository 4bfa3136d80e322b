// Who is signed in here, where people sign in at this service.

import { get, send } from "./api.js";
import { home } from "./home.js";
import { choose, viewer } from "./viewer.js";
import words from "../api/words.js";

let known = null;

document.addEventListener("signed-out", () => toSignIn());

/** { accounts, name, rights, screen, people, encrypted, notice }; asked once a page, or anew. */
export function session(anew = false) {
  if (!known || anew) known = get("api/session").then(named);
  return known;
}

// The name that goes with each change is the one who is signed in; the service looks at nothing else.
function named(session) {
  if (session.accounts && viewer("name") !== session.name) choose("name", session.name);
  return session;
}

/** To the page for signing in, and back here afterwards. */
export function toSignIn() {
  if (location.pathname === home("sign-in.html")) return;
  location.assign(home(`sign-in.html?to=${encodeURIComponent(location.pathname + location.search)}`));
}

/** Whether who is here may do that; at a shared screen whoever comes may, and is asked who he is. */
export async function may(right) {
  const { accounts, rights, screen } = await session();
  return !accounts || Boolean(screen) || rights.includes(right);
}

let atScreen = { comes: async () => {}, leaves: async () => {} };

/** What this page does when somebody says who is at a shared screen, and before that person leaves. */
export function followPerson(does) {
  atScreen = does;
}

export const personCame = () => atScreen.comes();

/** Ends the session; at a shared screen only its person leaves. */
export async function signOut() {
  const { screen } = await session();
  if (screen) await atScreen.leaves();
  await send("DELETE", "api/session");
  choose("name", "");
  if (screen) location.reload();
  else toSignIn();
}

/** What the one who is signed in may do, in words for people. */
export function rightsInWords(rights) {
  const all = Object.keys(words.rights).filter((right) => right !== "ANYONE");
  const may = all.filter((right) => rights.includes(right));
  const not = all.filter((right) => !rights.includes(right));
  const list = (some) => some.map((right) => words.rights[right]).join(", ");
  return `You may ${list(may)}.${not.length ? ` Not among your rights: ${list(not)}.` : ""}`;
}
