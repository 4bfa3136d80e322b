// People who sign in, tokens of programs and shared screens, for the administrator.

import { get, send } from "./api.js";
import { askForm, note, openDialog } from "./dialogs.js";
import { $, h, say, state, table } from "./dom.js";
import { field } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { session } from "./session.js";
import { date, time } from "./times.js";
import words from "../api/words.js";

const capital = (text) => `${text[0].toUpperCase()}${text.slice(1)}`;
const ROLES = Object.entries(words.roles).map(([role, name]) => [role, `${capital(name)}: ${words.roleTasks[role]}`]);
const RIGHTS = Object.entries(words.rights).filter(([right]) => right !== "ANYONE");

const NOT_IN_USE =
  "People do not sign in at this service as it was started. Accounts made here are used once it is started with " +
  "--accounts, or beyond this computer.";

async function start() {
  frame("accounts", { care: false });
  $("add").addEventListener("click", addPerson);
  $("add-token").addEventListener("click", addToken);
  $("share").addEventListener("click", share);
  await load().catch((problem) => showTrouble($("accounts"), problem));
  const { accounts } = await session();
  if (!accounts) $("accounts").before(h("p", { class: "care-note" }, NOT_IN_USE));
}

async function load() {
  const [accounts, tokens, screens] = await Promise.all([
    get("api/accounts"),
    get("api/tokens"),
    get("api/screens"),
  ]);
  $("accounts").replaceChildren(table("Accounts", accountColumns(), accounts));
  $("accounts").removeAttribute("aria-busy");
  fill("tokens", "Tokens", tokenColumns(), tokens);
  fill("screens", "Shared screens", screenColumns(), screens);
}

const fill = (id, name, columns, rows) =>
  $(id).replaceChildren(rows.length ? table(name, columns, rows) : h("p", { class: "small" }, "None yet."));

function accountColumns() {
  return [
    { head: "Name", cell: (each) => h("strong", {}, each.name) },
    { head: "Roles", cell: (each) => each.roles.map((role) => words.roles[role]).join(", ") },
    { head: "State", cell: stateOf },
    { head: "", cell: (each) => h("div", { class: "row" }, accountButtons(each)) },
  ];
}

function stateOf({ disabled, activated, elsewhere, pin, badge }) {
  if (disabled) return state("bad", "disabled");
  if (!activated) return state("open", "has not chosen a password");
  const at = [pin && "PIN", badge && "badge"].filter(Boolean).join(" and ");
  const use = elsewhere ? "signs in at the provider" : "in use";
  return state("good", at ? `${use}, with ${at}` : use);
}

function accountButtons(account) {
  return [
    account.elsewhere ? null : button("Roles", () => changeRoles(account)),
    button("PIN", () => identify(account, "pin", "PIN, 6 digits", "pin")),
    button("Badge", () => identify(account, "badge", "Hold the badge to the reader")),
    account.elsewhere ? null : button("New code", () => newCode(account)),
    button(account.disabled ? "Enable" : "Disable", () => disable(account)),
  ];
}

const button = (caption, click) =>
  h("button", { class: "button plain", type: "button", on: { click } }, caption);

const boxes = (name, choices, chosen) =>
  h(
    "fieldset",
    {},
    h("legend", {}, name),
    choices.map(([value, caption]) =>
      h(
        "label",
        { class: "tick" },
        h("input", { type: "checkbox", "data-box": value, checked: chosen.includes(value) }),
        h("span", {}, caption),
      ),
    ),
  );

const ticked = (set) => [...set.querySelectorAll("[data-box]:checked")].map((each) => each.dataset.box);

async function addPerson() {
  const roles = boxes("Roles", ROLES, []);
  const made = await askForm({
    title: "Add a person",
    fields: [field({ name: "name", label: "Name", required: true }), roles],
    confirm: "Add",
    act: ({ name }) => send("POST", "api/accounts", { name, roles: ticked(roles) }),
  });
  if (made) await showCode(made);
}

async function changeRoles(account) {
  const roles = boxes("Roles", ROLES, account.roles);
  await changed(account, {
    title: `Roles of ${account.name}`,
    intro: "Takes effect at once; the person signs in again.",
    fields: [roles],
    confirm: "Save",
    act: () => send("POST", `api/accounts/${account.id}/roles`, { roles: ticked(roles) }),
  });
}

const identify = (account, name, label, kind = "secret") =>
  changed(account, {
    title: `${account.name} at shared screens`,
    intro: "For measuring only. Left empty, it is taken away.",
    fields: [field({ name, label, kind })],
    confirm: "Save",
    act: (typed) => send("POST", `api/accounts/${account.id}/${name}`, { [name]: typed[name] }),
  });

const disable = (account) =>
  changed(account, {
    title: `${account.disabled ? "Enable" : "Disable"} ${account.name}?`,
    intro: account.disabled
      ? "The person may sign in again."
      : "The person is signed out everywhere at once. What was recorded under the name stays.",
    confirm: account.disabled ? "Enable" : "Disable",
    act: () => send("POST", `api/accounts/${account.id}/disabled`, { disabled: !account.disabled }),
  });

async function changed(account, question) {
  if ((await askForm(question)) === null) return;
  note(`${account.name}: done`);
  await load();
}

async function newCode(account) {
  const made = await askForm({
    title: `A new code for ${account.name}?`,
    intro: "The present password ends, and the person is signed out everywhere.",
    confirm: "Make a code",
    act: () => send("POST", `api/accounts/${account.id}/code`),
  });
  if (made) await showCode(made);
}

const showCode = ({ account, code }) =>
  showOnce(
    `Code of ${account.name}`,
    code,
    `${account.name} opens the page Sign in, presses “I have a code” and chooses a password, within 24 hours.`,
  );

/** The secret has the focus, so that it is read aloud, and a second press of Enter does not close what shows it. */
async function showOnce(title, secret, hint) {
  await load();
  const shown = h("p", { class: "secret-once", tabindex: "-1", autofocus: true }, secret);
  shown.addEventListener("focus", () => getSelection().selectAllChildren(shown));
  const body = h("div", { class: "form" }, h("div", { class: "row" }, shown, copyOf(secret)), h("p", {}, hint));
  body.append(h("p", {}, "It is shown only now: copy it or write it down."));
  await openDialog(title, body, () => "Done");
}

/** Browsers let pages copy only where the connection is safe. */
function copyOf(secret) {
  if (!navigator.clipboard) return null;
  const copy = h("button", { class: "button", type: "button" }, "Copy");
  copy.addEventListener("click", () =>
    navigator.clipboard.writeText(secret).then(
      () => say(copy, "Copied"),
      () => say(copy, "Not copied: select it"),
    ),
  );
  return copy;
}

function tokenColumns() {
  return [
    { head: "Name", cell: (each) => h("strong", {}, each.name) },
    { head: "Rights", cell: (each) => each.rights.map((right) => words.rights[right]).join(", ") },
    { head: "Valid until", cell: (each) => date(each.validUntil) },
    { head: "State", cell: (each) => (each.revoked ? state("bad", "revoked") : state("good", "in use")) },
    { head: "", cell: (each) => (each.revoked ? "" : button("Revoke", () => revoke(each))) },
  ];
}

async function addToken() {
  const rights = boxes("Rights", RIGHTS, ["LOOK"]);
  const made = await askForm({
    title: "Add a token",
    intro: "For a program, which sends it as Authorization: Bearer …",
    fields: [
      field({ name: "name", label: "Name of the program", required: true }),
      field({ name: "days", label: "Days that it is valid", kind: "number", value: 365, required: true }),
      rights,
    ],
    confirm: "Add",
    act: ({ name, days }) => send("POST", "api/tokens", { name, days, rights: ticked(rights) }),
  });
  if (made) await showOnce(`Token of ${made.token.name}`, made.secret, "Put it into the program’s own secrets.");
}

async function revoke(token) {
  const done = await askForm({
    title: `Revoke the token of ${token.name}?`,
    intro: "The program is refused at once. This can’t be taken back.",
    confirm: "Revoke",
    act: () => send("DELETE", `api/tokens/${token.id}`),
  });
  if (done !== null) await load();
}

function screenColumns() {
  return [
    { head: "Name", cell: (each) => h("strong", {}, each.name) },
    { head: "Shared since", cell: (each) => date(each.sharedAt) },
    { head: "Who is there", cell: (each) => each.person || "nobody" },
    { head: "Last seen", cell: (each) => (each.usedAt ? time(each.usedAt) : "not since the start") },
    { head: "", cell: (each) => button("End sharing", () => endSharing(each)) },
  ];
}

async function endSharing(screen) {
  const done = await askForm({
    title: `End sharing of ${screen.name}?`,
    intro: "Nobody can measure there until somebody signs in by name, or the screen is shared again.",
    confirm: "End sharing",
    act: () => send("DELETE", `api/screens/${screen.id}`),
  });
  if (done === null) return;
  note(`${screen.name}: no longer shared`);
  await load();
}

async function share() {
  const done = await askForm({
    title: "Share this screen?",
    intro: "You are signed out here. Whoever stands at this screen says so by PIN or badge, and may only measure.",
    fields: [field({ name: "name", label: "Name of this screen", required: true })],
    confirm: "Share it",
    act: ({ name }) => send("POST", "api/session/screen", { name }),
  });
  if (done !== null) location.assign("./");
}

start();
