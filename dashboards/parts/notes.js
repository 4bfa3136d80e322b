// What came of actions: short messages that cover no button of a dialog and no figure of an instrument, and go
// when what they were about is over.

import { h } from "./dom.js";

/** Of results that went well; trouble stays until it is read, however much follows. */
const MOST_KEPT = 3;
/** So long the page may still be coming to show what the message is about. */
const SETTLES_MS = 1500;
const GAP_PX = 8;

/** Above everything else on the page until it is tapped or over; about: see over. */
export function note(said, kind = "good", about = "") {
  const text = h("p", { role: kind === "bad" ? "alert" : "status" });
  const close = h("button", { class: "button plain", type: "button" }, "OK");
  const element = h("div", { class: "note", data: { kind, about, said } }, text, close);
  element.addEventListener("click", () => read([element]));
  for (const same of notes()) if (same.dataset.said === said) same.remove();
  place().prepend(element);
  for (const old of wentWell().slice(MOST_KEPT)) old.remove();
  saidAt.set(element, Date.now());
  showAll();
}

const saidAt = new WeakMap();
const notes = () => [...document.querySelectorAll(".note")];
const wentWell = () => notes().filter((each) => each.dataset.kind !== "bad");

/** What the page shows now, in a text that is the same while it is: messages of what was before go. */
export function showsNow(state) {
  const old = wentWell().filter((each) => {
    if (Date.now() - saidAt.get(each) > SETTLES_MS) return each.dataset.state !== state;
    each.dataset.state = state;
    return false;
  });
  if (old.length > 0) read(old);
}

/** What that was about has been put right. */
export function over(about) {
  const old = notes().filter((each) => each.dataset.about === about);
  if (old.length > 0) read(old);
}

/** One on small screens and beside an instrument, where more would cover what is read from afar. */
const mostSeen = () => (innerHeight < 500 || innerWidth < 900 || instruments().length > 0 ? 1 : 3);
const instruments = () => [...document.querySelectorAll(".instrument")];

function place() {
  const there = document.querySelector(".notes");
  if (there) return there;
  const all = h("button", { class: "button", type: "button", on: { click: () => read(notes()) } }, "All read");
  const count = h("p", { class: "row" }, h("span", {}), all);
  const made = h(
    "div",
    { class: "notes", popover: "manual", role: "region", "aria-label": "Not read yet" },
    count,
  );
  document.body.append(made);
  return made;
}

function read(which) {
  which.forEach((each) => each.remove());
  countNotes();
}

/**
 * The newest are seen, at most three; those behind them come back as these are read. Where only one is seen it
 * says how many are behind it, and nothing hangs below it over the verdict.
 */
function countNotes() {
  const all = notes();
  if (all.length === 0) return document.querySelector(".notes")?.remove();
  all.forEach((each, i) => (each.hidden = i >= mostSeen()));
  const behind = all.length - mostSeen();
  const row = place().lastChild;
  row.hidden = all.length === 1 || mostSeen() === 1;
  all.forEach((each) => delete each.firstChild.dataset.behind);
  if (mostSeen() === 1 && behind > 0) all[0].firstChild.dataset.behind = behind;
  row.firstChild.textContent = behind > 0 ? `and ${behind} more not read yet` : "";
  besideInstruments();
}

/** A dialog opens: what went well before it is read by then, and trouble waits until it is closed. */
export function makeWay() {
  const old = wentWell();
  if (old.length > 0) read(old);
  showAll();
}

/** Above the page, where no figure of an instrument is; not while a dialog is open, whose buttons are pressed. */
export function showAll() {
  const there = document.querySelector(".notes");
  if (!there) return;
  if (there.matches(":popover-open")) there.hidePopover();
  if (document.querySelector("dialog[open]")) return;
  there.showPopover();
  for (const each of notes()) each.firstChild.textContent = each.dataset.said;
  countNotes();
}

/** Over the bar, which is above the first instrument; it scrolls away with the bar rather than cover a figure. */
function besideInstruments() {
  const there = document.querySelector(".notes");
  if (!there?.matches(":popover-open")) return;
  const boxes = instruments().map((each) => each.getBoundingClientRect());
  const first = Math.min(...boxes.map(({ top }) => top + scrollY));
  there.style.maxHeight = boxes.length > 0 ? `${Math.max(0, first - GAP_PX)}px` : "";
  const covers = ({ top, bottom }) => top < there.offsetHeight + GAP_PX && bottom > 0;
  there.dataset.scrolls = String(boxes.some(covers));
}

addEventListener("resize", countNotes);
addEventListener("scroll", besideInstruments, { passive: true });
