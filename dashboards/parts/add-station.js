// Adding a station: choose the port, see what comes, pick the reading that agrees with the indicator, push
// the plunger in once, name the station.

import { listen } from "./add-station-heard.js";
import { showForm } from "./add-station-form.js";
import { showPush } from "./add-station-push.js";
import { get } from "./api.js";
import { busy, note } from "./dialogs.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";

const LOOK_MS = 2000;
const WAYS = [
  ["itself", "by itself, all the time"],
  ["button", "when its data button is pressed"],
  ["asked", "when it is asked for its value"],
  ["registers", "as registers of Modbus RTU"],
];

async function start() {
  frame("stations");
  const [ports, stations] = await Promise.all([get("api/ports"), get("api/stations")]);
  const used = new Map(stations.map((station) => [station.target, station.station]));
  const names = stations.map((station) => station.station);
  const way = wayForm();
  const go = (port) => listen(port, values(way), (chosen) => showPush(chosen, () => showForm(chosen, names)));
  const list = h("div");
  const show = (now) => list.replaceChildren(portList(now, used, (path) => refusedAt(way, () => go(path))));
  $("ports").replaceChildren(way, list, otherPort(go));
  show(ports);
  followPorts(ports, show);
}

function portList(ports, used, go) {
  return ports.length
    ? h(
        "div",
        { class: "choices" },
        ports.map((port) => portButton(port, used, go)),
      )
    : h(
        "p",
        { class: "empty" },
        "No serial port is plugged in. Plug the indicator’s cable or Bluetooth adapter in: its port appears here.",
      );
}

/** Until one is listened to: what is plugged in meanwhile appears by itself. */
function followPorts(ports, show) {
  let shown = paths(ports);
  setInterval(async () => {
    if (document.hidden || !$("hear").hidden) return;
    const now = await get("api/ports").catch(() => null);
    if (now === null || paths(now) === shown) return;
    shown = paths(now);
    show(now);
  }, LOOK_MS);
}

const paths = (ports) => ports.map((port) => port.path).join("\n");

/** What the form refuses is told at its fields, anything else at the edge of the page. */
async function refusedAt(form, work) {
  showFaults(form);
  try {
    await work();
  } catch (problem) {
    showFaults(form, problem);
    if (!form.querySelector("[aria-invalid]")) note(problem.message, "bad");
  }
}

/** How the indicator sends, with what has to be known of it then. */
function wayForm() {
  const more = h("div", { class: "fields" });
  const way = field({
    name: "way",
    label: "How does it send?",
    kind: "choice",
    value: "itself",
    options: WAYS,
  });
  const select = way.querySelector("select");
  select.addEventListener("change", () => more.replaceChildren(...fieldsOf(select.value)));
  return h("form", { class: "form", novalidate: true }, h("div", { class: "fields" }, way), more);
}

function fieldsOf(way) {
  if (way === "asked") {
    return [
      field({
        name: "request",
        label: "Request",
        value: "?\\r",
        hint: "As its manual says; \\r is CR, \\n is LF, \\x05 is the byte 05",
        required: true,
      }),
    ];
  }
  if (way !== "registers") return [];
  return [
    field({ name: "device", label: "Device address", kind: "number", value: 1, hint: "1 to 247" }),
    field({
      name: "table",
      label: "Registers",
      kind: "choice",
      value: "HOLDING",
      options: [
        ["HOLDING", "holding"],
        ["INPUT", "input"],
      ],
    }),
    field({ name: "first", label: "From register", kind: "number", value: 0, hint: "Counted from 0" }),
    field({ name: "count", label: "How many", kind: "number", value: 20, hint: "1 to 60" }),
  ];
}

function otherPort(go) {
  const form = h(
    "form",
    { class: "form", novalidate: true },
    field({
      name: "port",
      label: "Or another port",
      hint: "A device’s path as /dev/ttyUSB0, COM3, or the address of a device server as 192.168.1.20:4001",
    }),
    h("div", { class: "row" }, h("button", { class: "button", type: "submit" }, "Listen here")),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    busy(
      form.querySelector("button"),
      () => refusedAt(form, () => go(values(form).port)),
      (problem) => note(problem.message, "bad"),
    );
  });
  return form;
}

function portButton(port, used, go) {
  const path =
    (port.alike.length > 0
      ? port.stableLinks.find((link) => link.includes("/by-path/"))
      : port.stableLinks[0]) ?? port.path;
  const taken =
    used.get(path) ?? used.get(port.path) ?? port.stableLinks.map((link) => used.get(link)).find(Boolean);
  const what = [port.description, port.serialNumber].filter(Boolean).join(", ");
  const element = h(
    "button",
    { class: "button", type: "button", disabled: Boolean(taken) },
    port.path,
    h("small", {}, taken ? `in use by station ${taken}` : what || "serial port"),
  );
  element.addEventListener("click", () =>
    busy(
      element,
      () => go(path),
      (problem) => note(problem.message, "bad"),
    ),
  );
  return element;
}

start().catch((problem) => showTrouble($("ports"), problem));
