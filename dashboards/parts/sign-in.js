// Signing in by name and password, or for the first time by a code.

import { asked, send } from "./api.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame } from "./frame.js";
import { home } from "./home.js";
import { session } from "./session.js";

const NAME = () => field({ name: "name", label: "Name", required: true });
const secret = (name, label, hint = "") => field({ name, label, kind: "secret", hint, required: true });

async function start() {
  frame("sign-in", { care: false });
  const { accounts, encrypted, notice, provider } = await session();
  if (!accounts) {
    $("sign-in").append(h("p", {}, "People do not sign in at this service. ", h("a", { href: "./" }, "Go on")));
    return;
  }
  if (!encrypted && location.hostname !== "localhost" && !location.hostname.startsWith("127."))
    $("sign-in").before(h("p", { class: "care-note" }, "What you type here travels unencrypted."));
  if (notice) $("sign-in").before(h("p", { id: "notice", class: "notice" }, notice));
  if (provider) showProvider(provider);
  byPassword();
}

const REFUSED = {
  none: "This service has no provider at which people sign in.",
  away: "The provider does not answer. Try again, or sign in with a password of this service.",
  denied: "The provider did not let you in.",
  stale: "That took too long, or began in another window. Try again.",
  unproved: "The provider’s answer can’t be trusted. Tell your administrator; the log says why.",
  roles: "You are known, but none of your groups has a role here. Ask your administrator.",
  disabled: "Your account here is disabled. Ask your administrator.",
};

function showProvider(provider) {
  const to = encodeURIComponent(back());
  const refused = REFUSED[asked("refused")];
  $("sign-in").before(
    refused ? h("p", { class: "fault general", role: "alert" }, refused) : "",
    h("a", { id: "provider", class: "button main", href: `api/session/provider?to=${to}` }, provider),
    h("p", { class: "small" }, "Or with a password of this service:"),
  );
}

function byPassword() {
  show({
    fields: [NAME(), secret("password", "Password")],
    confirm: "Sign in",
    other: ["I have a code", byCode],
    act: (typed) => send("POST", "api/session", typed),
  });
}

function byCode() {
  show({
    fields: [
      NAME(),
      field({ name: "code", label: "Code", hint: "From your administrator, valid for 24 hours.", required: true }),
      secret("password", "New password", "At least 8 characters; several words are easy to remember."),
      secret("again", "The same again"),
    ],
    confirm: "Choose this password",
    other: ["I have a password", byPassword],
    act: ({ again, ...typed }) => {
      if (again !== typed.password)
        throw { faults: [{ field: "again", problem: "is not the same", allowed: "" }] };
      return send("POST", "api/session/activation", typed);
    },
  });
}

function show({ fields, confirm, other: [words, go], act }) {
  const form = h(
    "form",
    { novalidate: true },
    fields,
    h("p", { class: "fault general", role: "alert" }),
    h(
      "div",
      { class: "ends" },
      h("button", { class: "button main", type: "submit" }, confirm),
      h("button", { class: "button plain", type: "button", on: { click: go } }, words),
    ),
  );
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    showFaults(form);
    try {
      await act(values(form));
      location.assign(back());
    } catch (problem) {
      showFaults(form, problem);
    }
  });
  $("sign-in").replaceChildren(form);
  form.querySelector("input").focus();
}

/** Only to a page of this service. */
function back() {
  const to = asked("to") ?? home();
  const place = new URL(to, location.origin);
  return place.origin === location.origin ? place.pathname + place.search : home();
}

start();
