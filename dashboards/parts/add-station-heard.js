// What a port sends: the rate is searched, the plunger moved, and the ways to read it are shown side by side
// with what each reads now, for the person to pick.

import { act } from "./identity.js";
import { get } from "./api.js";
import { busy, note } from "./dialogs.js";
import { $, h, state, table } from "./dom.js";
import { stream } from "./heard-stream.js";
import { fixed, length, unit } from "./units.js";

const SURE = 0.7;
const SILENT_TRIES = 8;
const SEARCH_SECONDS = 1.5;
const MOVE_SECONDS = 4;
let turn = 0; // of listening; what an earlier one still does is dropped
let reading = Promise.resolve(); // done when the port is free again

/** Listens at a port in one of the ways; picked({ port, way, heard, proposal }) when a reading was picked. */
export async function listen(port, way, picked) {
  const mine = ++turn;
  await reading;
  $("hear").hidden = false;
  $("push").hidden = true;
  $("name").hidden = true;
  const found = way.way === "registers" ? await registers(port, way) : await moved(port, way, mine);
  if (mine !== turn) return;
  if (found === null) {
    $("hear").hidden = true;
    return;
  }
  show(port, way, found, picked);
  if (found.proposals.length && way.way !== "button") reading = keepReading(mine, port, found);
}

/** Tries the usual settings in turn until what comes looks like an indicator; then the plunger is moved. */
async function moved(port, way, mine) {
  const tries = await get(`api/ports/tries?port=${encodeURIComponent(port)}`);
  const how = { port, request: way.request, intervalMs: 100, button: way.way === "button" };
  if (way.way === "button")
    ask("Press the data button a few times, with the plunger at another place each time.");
  let best = null;
  let silent = 0;
  for (const each of tries) {
    progress(each, tries.length, way);
    const seconds = way.way === "button" ? MOVE_SECONDS : SEARCH_SECONDS;
    const heard = await act("POST", "api/ports/hear", { ...how, attempt: each.attempt, seconds });
    if (heard === null || mine !== turn) return null;
    if (heard.bytes === 0) silent++;
    if (
      !best ||
      heard.likeness > best.likeness ||
      (heard.likeness === best.likeness && heard.bytes > best.bytes)
    )
      best = heard;
    if (best.likeness >= SURE || silent === SILENT_TRIES) break;
  }
  if (best.bytes === 0) return best;
  ask(
    way.way === "button"
      ? "Now press the data button six times, with the plunger at another place each time."
      : "Now push the plunger slowly in and let it out again, a few times.",
  );
  const again = { ...how, attempt: best.tried.attempt, seconds: MOVE_SECONDS, moved: true };
  return act("POST", "api/ports/hear", again);
}

async function registers(port, way) {
  const { device, table: registerTable, first, count } = way;
  const tries = await get(`api/ports/tries?port=${encodeURIComponent(port)}`);
  let found = null;
  for (const each of tries) {
    progress(each, tries.length, way);
    const asked = {
      port,
      attempt: each.attempt,
      seconds: MOVE_SECONDS + 1,
      device,
      table: registerTable,
      first,
      count,
    };
    found = await act("POST", "api/ports/registers", asked);
    if (found === null || found.answered) break;
  }
  return found && { ...found, bytes: found.answered ? found.registers : 0, pieces: [] };
}

function ask(words) {
  $("heard").replaceChildren(
    h("p", { class: "lead", role: "status" }, words),
    h("progress", { "aria-label": "Listening" }),
  );
}

function progress(each, count, { way }) {
  const hint = {
    registers: "Push the plunger slowly in and out meanwhile.",
    button: "Press the data button a few times, with the plunger at another place each time.",
  }[way];
  $("heard").replaceChildren(
    h("p", { role: "status" }, `Listening at ${each.words}: try ${each.attempt + 1} of ${count}`),
    h("progress", { value: each.attempt, max: count, "aria-label": "Settings tried" }),
    ...(hint ? [h("p", { class: "lead" }, hint)] : []),
  );
}

function show(port, way, found, picked) {
  const again = h("button", { class: "button", type: "button" }, "Listen again");
  again.addEventListener("click", () =>
    busy(
      again,
      () => listen(port, way, picked),
      (problem) => note(problem.message, "bad"),
    ),
  );
  $("heard").replaceChildren(...parts(port, way, found, picked), h("div", { class: "row" }, again));
}

function parts(port, way, found, picked) {
  if (found.bytes === 0) return [nothing(way, found)];
  const came = [
    h("p", {}, `At ${found.tried.words} came:`),
    ...(found.pieces.length ? [stream(found.pieces)] : []),
  ];
  if (found.proposals.length)
    return [
      h(
        "p",
        { class: "lead" },
        "Hold the plunger still and pick the line that reads what the indicator shows.",
      ),
      proposals(found, async (proposal) => {
        turn++;
        await reading;
        picked({ port, way, heard: found, proposal });
      }),
      h("details", {}, h("summary", {}, "What came"), ...came),
    ];
  return [...came, h("p", {}, ...verdict(found))];
}

function nothing({ way }, { answered, tried }) {
  const hint = {
    registers:
      answered === true
        ? ` The device answers at ${tried.words}, but it has none of these registers.`
        : " Nothing answers at that device address. Is the indicator on, its cable in, and is that its address?",
    asked: " Is the indicator on, its cable in, and is that its request?",
    button: " Was its data button pressed? Is the indicator on and its cable in?",
  }[way];
  return h(
    "p",
    {},
    state("bad", "Nothing came"),
    hint ?? " Is the indicator on, its cable in, and is it set to send?",
  );
}

function verdict({ standsStill }) {
  return standsStill
    ? [
        state("open", "The plunger was not seen to move"),
        " A standing value does not show how it is written. Listen again, and push the plunger in and out.",
      ]
    : [
        state("bad", "Nothing fits"),
        " Listen again and move the plunger up and down. If that does not help, set the indicator to send " +
          "plain text, or ask the person who looks after the computer.",
      ];
}

function proposals({ proposals: all }, pick) {
  return table(
    "Ways to read it",
    [
      {
        head: "The indicator shows",
        cell: (p) => h("strong", { class: "reads-now", data: { place: all.indexOf(p) } }, ...newest(p)),
      },
      { head: `While it was moved, ${unit()}`, cell: (p) => h("span", { class: "small" }, whileMoved(p)) },
      { head: "If you pick it", cell: (p) => p.assumptions.join("; ") || "nothing is assumed" },
      { head: "Pick", cell: (p) => pickButton(p, pick) },
    ],
    all,
  );
}

const newest = ({ channels, unit }) =>
  lines(
    channels.map(({ channel, valuesMm }) => ({ channel, mm: valuesMm.at(-1) })),
    unit,
  );

function lines(read, unit) {
  return read.map(({ channel, mm }) =>
    h("span", { class: "line" }, `${read.length > 1 ? `${channel}: ` : ""}${asShown(mm, unit)}`),
  );
}

/** In the unit of the indicator, whatever the viewer’s is, so that both can be compared. */
function asShown(mm, unit) {
  if (unit === "INCH") return `${fixed(mm / 25.4, 5)} in`;
  return unit === "UM" ? `${fixed(mm * 1000, 1)}\u00a0µm` : `${fixed(mm, 4)}\u00a0mm`;
}

/** From the least to the greatest, since the newest ones alike would show no movement. */
const whileMoved = ({ channels }) =>
  channels
    .map(({ valuesMm }) => `${length(Math.min(...valuesMm), 3)} to ${length(Math.max(...valuesMm), 3)}`)
    .join(" | ");

function pickButton(proposal, pick) {
  const button = h("button", { class: "button", type: "button", "aria-pressed": "false" }, "Use this");
  button.addEventListener("click", () =>
    busy(
      button,
      async () => {
        await pick(proposal);
        inUse(button);
      },
      (problem) => note(problem.message, "bad"),
    ),
  );
  return button;
}

/** So that the line that was picked can be told while the rest is filled in. */
function inUse(button) {
  for (const each of button.closest("table").querySelectorAll("button")) {
    each.setAttribute("aria-pressed", String(each === button));
    each.textContent = each === button ? "In use" : "Use this";
  }
}

/** Reads on by all of them, so that each line shows what it reads now. */
async function keepReading(mine, port, { tried, proposals: all }) {
  while (mine === turn && $("hear").isConnected) {
    const asked = { port, attempt: tried.attempt, profiles: all.map((p) => p.profile), seconds: 0.7 };
    const read = await act("POST", "api/ports/read", asked).catch(() => null);
    if (read === null || mine !== turn) return;
    read.forEach(({ channels }, place) => {
      const cell = document.querySelector(`.reads-now[data-place="${place}"]`);
      if (cell && channels.length)
        cell.replaceChildren(
          ...lines(
            channels.map(({ channel, lastMm }) => ({ channel, mm: lastMm })),
            all[place].unit,
          ),
        );
    });
  }
}
