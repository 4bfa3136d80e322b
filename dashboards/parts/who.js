// Who is signed in, in the bar of every page; at a shared screen, who is at it.

import { send } from "./api.js";
import { askForm, openDialog } from "./dialogs.js";
import { $, h, say } from "./dom.js";
import { field } from "./forms.js";
import { home } from "./home.js";
import { personCame, rightsInWords, session, signOut, toSignIn } from "./session.js";

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

function own({ name, rights, password }) {
  if (rights.includes("ADMINISTER"))
    document.querySelector("nav.places").append(h("a", { href: home("accounts.html") }, "Accounts"));
  place([
    button("signed-in", name, () => (password ? ownAccount : elsewhere)(name, rights)),
    button("sign-out", "Sign out", signOut),
  ]);
}

const elsewhere = (name, rights) =>
  openDialog(name, h("p", {}, rightsInWords(rights), " Your password is the provider’s."), () => "Close");

/** What the one who is signed in may do, and a new password. */
async function ownAccount(name, rights) {
  const secret = (field_, label, hint = "") => field({ name: field_, label, kind: "secret", hint, required: true });
  const done = await askForm({
    title: name,
    intro: `${rightsInWords(rights)} To change your password, type it here; you are signed out everywhere else.`,
    fields: [
      secret("now", "Current password"),
      secret("next", "New password", "At least 8 characters; several words are easy to remember."),
      secret("again", "The same again"),
    ],
    confirm: "Change password",
    act: changePassword,
  });
  if (done) await openDialog("Your password is changed", "You are signed out everywhere else.", () => "OK");
}

async function changePassword({ now, next, again }) {
  if (again !== next) throw { faults: [{ field: "again", problem: "is not the same", allowed: "" }] };
  await send("POST", "api/session/password", { now, next }).catch((problem) => {
    if (problem.status === 401) throw { faults: [{ field: "now", problem: "is wrong", allowed: "" }] };
    throw problem;
  });
  return true;
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
      field({ name: "pin", label: "PIN, 6 digits", kind: "pin" }),
    ],
    confirm: "Continue",
    act: (typed) => send("POST", "api/session/person", typed.badge ? { badge: typed.badge } : said(typed)),
  });
  if (answer === null) return false;
  const now = await session(true);
  shared(now);
  await personCame();
  return true;
}

const said = ({ name, pin }) => ({ name, pin });
