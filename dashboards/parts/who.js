// Who is signed in, in the bar of every page; at a shared screen, who is at it.

import { send } from "./api.js";
import { askForm } from "./dialogs.js";
import { $, h, say } from "./dom.js";
import { field } from "./forms.js";
import { rightsInWords, session, signOut, toSignIn } from "./session.js";

/** Shows it, and leads to signing in where nobody is; nothing where people do not sign in. */
export async function showWho(here) {
  const now = await session();
  if (!now.accounts || here === "sign-in") return;
  if (!now.name && !now.screen) toSignIn();
  else now.screen ? shared(now) : own(now);
  say($("viewer-name"), "Settings");
  document.addEventListener("freshness", ({ detail }) => {
    if (detail.since !== null) lookAgain();
  });
}

// A stream that ended may have ended with its session.
async function lookAgain() {
  const now = await session(true).catch(() => null);
  if (now && !now.name && !now.screen) toSignIn();
}

function own({ name, rights }) {
  if (rights.includes("ADMINISTER"))
    document.querySelector("nav.places").append(h("a", { href: "/accounts.html" }, "Accounts"));
  place([
    h("span", { id: "signed-in", title: rightsInWords(rights) }, name),
    button("sign-out", "Sign out", signOut),
  ]);
}

function shared({ name }) {
  place([
    h("span", { id: "signed-in" }, name || "Nobody"),
    button("change-person", "Change person", whoIsHere),
    name ? button("sign-out", "Leave", signOut) : null,
  ]);
}

function place(parts) {
  $("who")?.remove();
  document.querySelector("header.bar").append(h("span", { id: "who", class: "row" }, parts));
}

const button = (id, words, click) =>
  h("button", { id, class: "button plain", type: "button", on: { click: () => click() } }, words);

/** Asks who is at a shared screen: a badge is read, or a name chosen and its PIN typed. */
export async function whoIsHere() {
  const { people } = await session();
  const badge = field({
    name: "badge",
    label: "Hold the badge to the reader",
    kind: "secret",
    hint: "Or choose your name and type your PIN.",
  });
  const answer = await askForm({
    title: "Who is at this screen?",
    fields: [
      badge,
      field({ name: "name", label: "Name", kind: "choice", options: ["", ...people].map((each) => [each, each]) }),
      field({ name: "pin", label: "PIN, 6 digits", kind: "secret" }),
    ],
    confirm: "Continue",
    act: (typed) => send("POST", "/api/session/person", typed.badge ? { badge: typed.badge } : said(typed)),
  });
  if (answer === null) return false;
  const now = await session(true);
  shared(now);
  return true;
}

const said = ({ name, pin }) => ({ name, pin });
