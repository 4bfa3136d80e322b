// How many alerts wait for somebody, in the bar of every page: a word with its number; the word alone for none.

import { get } from "./api.js";
import { h } from "./dom.js";

const LOOK_MS = 60000;

/** Follows it at that link. A page that has a stream of events hears of each change; the others look each minute. */
export function showWaiting(link) {
  let streams = false;
  const look = () => get("api/alerts/waiting").then(show).catch(() => {});
  const show = ({ waiting }) => {
    const word = waiting === 1 ? "alert" : "alerts";
    const words = `${waiting} ${word}`;
    link.dataset.waiting = String(waiting > 0);
    link.replaceChildren(waiting > 0 ? h("span", {}, String(waiting), h("span", {}, ` ${word}`)) : "Alerts");
    link.title = waiting > 0 ? `${words} ${waiting === 1 ? "waits" : "wait"} for somebody` : "";
  };
  document.addEventListener("alerts", ({ detail }) => {
    streams = true;
    show(detail);
  });
  setInterval(() => {
    if (!streams && !document.hidden) look();
  }, LOOK_MS);
  look();
}
