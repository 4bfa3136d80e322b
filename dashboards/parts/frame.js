// The frame of every page: bar, places to go, what the viewer chose, freshness, safety line.

import { showWaiting } from "./alerts-waiting.js";
import { $, h, say } from "./dom.js";
import { helpPath, pageName } from "./help-place.js";
import { home } from "./home.js";
import { ofPlant, site, workshop } from "./place.js";
import { askSettings } from "./settings.js";
import { minuteWords } from "./times.js";
import { viewer } from "./viewer.js";
import { showWho } from "./who.js";
import "./held-keys.js";
import "./print.js";

const JOBS = ["jobs", "Jobs", "jobs.html"];
const MACHINES = ["machines", "Machines", "machines.html"];
const ALERTS = ["alerts", "Alerts", "alerts.html"];

function places() {
  if (ofPlant) return [["plant", "Plant", ""], JOBS, ALERTS];
  if (workshop !== null)
    return [["workshop", workshop, ""], JOBS, MACHINES, ["gauges", "Studies", "studies.html"], ALERTS];
  return [["stations", "Stations", ""], JOBS, MACHINES, ["gauges", "Gauges", "gauge.html"], ALERTS];
}

/**
 * Puts the frame around the main element. here: plant, workshop, stations, jobs, machines, gauges or alerts;
 * care: whether the safety line stands at its foot.
 */
export function frame(here, { care = true } = {}) {
  const main = document.querySelector("main");
  main.id ||= "main";
  main.tabIndex = -1;
  document.body.prepend(
    h("a", { class: "skip", href: `#${main.id}` }, "To the content"),
    bar(here),
    workshop === null ? "" : whose(),
    h("p", { id: "stale", class: "stale", role: "status", hidden: true }),
  );
  if (care)
    document.body.append(
      h(
        "footer",
        { class: "care" },
        "Measure and adjust only with the rollers stopped and the drive locked out. Machine manual and " +
          "local rules first.",
      ),
    );
  if (here !== "sign-in") showWaiting(document.querySelector("nav.places a:last-child"));
  showWho(here).catch((problem) => console.warn(problem.message));
  document.addEventListener("freshness", ({ detail }) => showFreshness(detail.since));
  document.addEventListener("viewer", ({ detail }) => {
    if (detail.what === "name") say($("viewer-name"), viewer("name") || "Settings");
  });
}

/** At a plant: whose records these are, and that they are changed there. */
function whose() {
  return h(
    "nav",
    { class: "whose", "aria-label": "Where this is" },
    h("a", { href: home("../../") }, "Plant"),
    h("span", {}, `› ${site ? `${site} › ` : ""}`),
    h("strong", {}, workshop),
    h("span", { class: "only-read" }, "To be read here; changes are made at the machine."),
  );
}

const front = ofPlant ? "the plant" : (workshop ?? "all stations");

function bar(here) {
  return h(
    "header",
    { class: "bar" },
    h(
      "a",
      { class: "home", href: home(), "aria-label": `Chordlog, ${front}` },
      h("img", { src: home("parts/mark.svg"), alt: "", width: 36, height: 36 }),
      h("span", {}, "Chordlog"),
    ),
    h(
      "nav",
      { class: "places", "aria-label": "Pages" },
      places().map(([name, words, path]) =>
        h("a", { href: home(path), "aria-current": name === here && "page" }, words),
      ),
    ),
    h("a", { class: "to-help", href: helpPath(), "aria-current": here === "help" && "page" }, "Help"),
    h("span", { id: "freshness", class: "freshness" }),
    h(
      "button",
      { class: "viewer", type: "button", "aria-haspopup": "dialog", on: { click: () => askSettings() } },
      h("span", { id: "viewer-name" }, viewer("name") || "Settings"),
    ),
  );
}

function showFreshness(since) {
  const stale = since !== null;
  $("freshness").dataset.stale = String(stale);
  say($("freshness"), stale ? "Not live" : "Live");
  $("stale").hidden = !stale;
  say(
    $("stale"),
    stale
      ? `Not up to date since ${minuteWords(since)}. The connection is lost; it is being tried again.`
      : "",
  );
}

/** Where to look for what an address names and is not there, by the page. */
const LISTS = {
  job: ["All jobs", "jobs.html"],
  "job-form": ["All jobs", "jobs.html"],
  "job-changes": ["All jobs", "jobs.html"],
  line: ["All jobs", "jobs.html"],
  machine: ["All machines", "machines.html"],
  study: ["All studies", "studies.html"],
  gauge: ["The gauges", "gauge.html"],
};

/** To try again helps where the service was away; what is not there or damaged is so the next time too. */
function wayOn({ status, damaged }) {
  if (status !== 404 && !damaged)
    return h("button", { class: "button", type: "button", on: { click: () => location.reload() } }, "Try again");
  const [words, path] = LISTS[pageName()] ?? [ofPlant ? "Plant" : (workshop ?? "All stations"), ""];
  return h("a", { class: "button", href: home(path) }, words);
}

const FOR_SUPPORT =
  "All others are as they were. Trying again does not help: call the person who looks after the computer, " +
  "who can get it back from a backup.";

/** Shows why a page could not be filled, in the place given, with a way to go on. */
export function showTrouble(place, problem) {
  console.warn(problem.message);
  const { status, damaged } = problem;
  const said = damaged ? "This record is damaged." : status === 404 ? "Not found." : "This can’t be shown now.";
  place.removeAttribute("aria-busy");
  place.replaceChildren();
  place.replaceChildren(
    h(
      "div",
      { class: "empty", role: "alert" },
      document.querySelector("h1") ? h("p", {}, h("strong", {}, said)) : h("h1", {}, said),
      h("p", {}, problem.message),
      damaged ? h("p", {}, FOR_SUPPORT) : "",
      wayOn(problem),
    ),
  );
}
