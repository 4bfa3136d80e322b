// Where the help explains a page, by its name; the first steps for any other.

import { home } from "./home.js";
import { ofPlant, workshop } from "./place.js";

const HELP = {
  station: "stations#how-a-depth-is-taken",
  line: "stations#a-gauge-in-the-line",
  "add-station": "stations#frame-profiles",
  "station-settings": "stations#stations",
  job: "service#charts",
  "job-form": "service",
  jobs: "service",
  "job-changes": "service",
  "import-orders": "service",
  wall: "service",
  alerts: "service#alerts",
  accounts: "service#people",
  "sign-in": "service#people",
  gauge: "command-line#zero-masters-and-checks",
  machine: "error-rates#a-machine-is-it-steady",
  machines: "error-rates#a-machine-is-it-steady",
  studies: "error-rates#studies-of-the-gauge-do-the-intervals-hold-the-truth",
  study: "error-rates#studies-of-the-gauge-do-the-intervals-hold-the-truth",
};

/** Of this page, as in its address; empty for a first one. */
export const pageName = () => location.pathname.split("/").at(-1).split(".")[0];

/** The page of the help that explains this one. */
export function helpPath() {
  const page = pageName();
  if (ofPlant || page === "") return home(ofPlant || workshop !== null ? "help/plant" : "help/start");
  return home(`help/${HELP[page] ?? "start"}`);
}
