// Acting in somebody's name: asks once on this device who that is, and for the key where one is needed.

import { send } from "./api.js";
import { askForm, note } from "./dialogs.js";
import { field } from "./forms.js";
import { session } from "./session.js";
import { choose, viewer } from "./viewer.js";
import { whoIsHere } from "./who.js";

const GIVEN_UP = Symbol("given up");

/** Sends a change; asks for what is missing first. Throws a Problem; null when the viewer gave up. */
export async function act(method, path, body, version) {
  try {
    await named();
    return await keyed(() => send(method, path, body, version));
  } catch (problem) {
    if (problem === GIVEN_UP) return null;
    throw problem;
  }
}

/** As act, by POST; a refusal is told at the edge of the page. Answers null when nothing was done. */
export async function tryTo(path, body, done) {
  try {
    const answer = await act("POST", path, body);
    if (answer !== null && done) note(done);
    return answer;
  } catch (problem) {
    note(problem.message, "bad");
    return null;
  }
}

async function named() {
  const { accounts, name, screen } = await session();
  if (accounts) {
    if (screen && !name && !(await whoIsHere())) throw GIVEN_UP;
    return;
  }
  if (viewer("name")) return;
  const kept = await askForm({
    title: "Who is at this screen?",
    intro: "Your name stands in the record beside what you do. This screen remembers it.",
    fields: [nameField()],
    confirm: "Continue",
    act: keepName,
  });
  if (!kept) throw GIVEN_UP;
}

export function nameField(required = true) {
  return field({ name: "name", label: "Name or initials", value: viewer("name"), required });
}

export function keepName({ name }) {
  if (!name) throw { faults: [{ field: "name", problem: "is missing", allowed: "1 to 80 characters" }] };
  choose("name", name.slice(0, 80));
  return true;
}

async function keyed(work) {
  try {
    return await work();
  } catch (problem) {
    if (problem.status !== 401 || (await session()).accounts) throw problem;
    const kept = await askForm({
      title: "Key needed",
      intro: "Changes from this screen need the key of this service. Whoever looks after it can tell you.",
      fields: [field({ name: "key", label: "Key", kind: "secret", required: true })],
      confirm: "Continue",
      act: ({ key }) => choose("key", key),
    });
    if (!kept) throw GIVEN_UP;
    return work();
  }
}
