// A chart: the service's picture, with its points told on touch, hover and by the arrow keys, in words,
// and as a table.

import { get, turns } from "./api.js";
import { stand } from "./callout.js";
import { h, table } from "./dom.js";
import { decisionsOf } from "./point-decisions.js";
import { dateTime } from "./times.js";

const REACH_PX = 44;
const PAGE = 20;
const ROWS = 200;
const REST_MS = 150;
/** No wider drawn than that: its letters of 14 px are of 7 pt on paper (A4, 185 mm), whatever the screen. */
const MOST_PX = 1040;
const FITS = 0.15; // a picture drawn for another width is up to this much too large or small
let number = 0;

/**
 * Shows charts in a container; onPick(place) is called when a point is chosen by click or Enter. height is px or
 * a function of the container; mostPx: as wide as it is drawn at most, where it has less than a sheet's width.
 */
export class Chart {
  constructor(container, options = {}) {
    const { onPick = () => {}, height = 460, narrowHeight = 420, positions = true, newestFirst = true } = options;
    const { mostPx = MOST_PX } = options;
    Object.assign(this, {
      container,
      onPick,
      height,
      narrowHeight,
      mostPx,
      positions,
      newestFirst,
      view: null,
      at: -1,
      turn: turns(),
    });
    const id = `chart-words-${++number}`;
    container.classList.add("picture");
    container.tabIndex = 0;
    container.setAttribute("role", "application");
    container.setAttribute("aria-roledescription", "chart");
    container.setAttribute("aria-describedby", id);
    this.described = h("p", { class: "unseen", id });
    this.rows = h("div", { hidden: true });
    this.asTable = h(
      "button",
      {
        class: "button plain as-table no-print",
        type: "button",
        "aria-expanded": "false",
        on: { click: () => this.showTable(this.rows.hidden) },
      },
      "Show as table",
    );
    this.pin = h("span", { class: "pin", hidden: true });
    this.callout = h("div", { class: "callout", role: "status", hidden: true });
    container.addEventListener("pointermove", (event) => this.near(event));
    container.addEventListener("pointerdown", (event) => this.near(event));
    container.addEventListener("pointerleave", () => this.choose(-1));
    container.addEventListener("click", () => this.pick());
    container.addEventListener("keydown", (event) => this.key(event));
    container.addEventListener("blur", () => this.choose(-1));
    new ResizeObserver(() => this.fit()).observe(container);
    this.awaited = true;
  }

  width() {
    return Math.max(300, Math.min(this.mostPx, Math.round(this.container.clientWidth / 20) * 20));
  }

  /** Of the picture to come, px. */
  size() {
    const width = this.width();
    const wide = typeof this.height === "function" ? this.height(this.container) : this.height;
    const shrunk = Math.min(1, width / this.container.clientWidth); // a wide screen enlarges it
    return { widthPx: width, heightPx: Math.round((width < 600 ? this.narrowHeight : wide) * shrunk) };
  }

  /** Keeps the room of a picture and of its button, so that what is below stays where it is when they come. */
  keepRoom({ widthPx, heightPx }) {
    this.awaited = false;
    this.container.style.aspectRatio = `${widthPx} / ${heightPx}`;
    if (this.asTable.isConnected) return;
    this.asTable.style.visibility = "hidden";
    this.container.after(this.described, this.asTable, this.rows);
  }

  /** A screen that was turned, or a page that was zoomed, gets a picture of its width, with letters of usual size. */
  fit() {
    clearTimeout(this.fitting);
    if (this.awaited && this.container.clientWidth > 0) this.keepRoom(this.size());
    const fits = () => Math.abs(this.width() / this.view.widthPx - 1) <= FITS;
    this.fitting = setTimeout(() => {
      if (this.view && this.container.clientWidth > 0 && !fits()) this.show(this.path).catch(() => {});
    }, REST_MS);
  }

  /** Fetches the chart at that path (without width and height) and shows it. */
  async show(path) {
    const current = this.turn();
    this.path = path;
    const size = this.size();
    if (!this.view) this.keepRoom(size);
    const asked = `width=${size.widthPx}&height=${size.heightPx}`;
    const view = await get(`${path}${path.includes("?") ? "&" : "?"}${asked}`);
    if (current()) this.put(view);
  }

  put(view) {
    const known = this.at >= 0 ? key(this.view.places[this.at]) : null;
    const svg = new DOMParser().parseFromString(view.svg, "image/svg+xml").documentElement;
    const description = svg.getAttribute("aria-label") ?? "";
    svg.setAttribute("aria-hidden", "true");
    this.view = view;
    this.container.setAttribute("aria-label", view.title);
    this.described.textContent = `${description} Arrow keys go from point to point, Page keys by ${PAGE}.`;
    this.container.replaceChildren(document.importNode(svg, true), this.pin, this.callout);
    this.keepRoom(view);
    this.asTable.style.visibility = "";
    this.asTable.hidden = view.places.length === 0;
    if (!this.rows.hidden) this.rows.replaceChildren(this.tableOf());
    this.choose(known === null ? -1 : view.places.findIndex((place) => key(place) === known));
  }

  clear(...children) {
    this.turn();
    this.view = null;
    this.awaited = false;
    this.container.style.aspectRatio = "";
    this.at = -1;
    this.container.setAttribute("aria-label", "Chart without points");
    this.described.textContent = "";
    this.container.replaceChildren(...children);
    this.asTable.hidden = true;
    this.showTable(false);
  }

  showTable(shown) {
    this.rows.hidden = !shown;
    this.asTable.setAttribute("aria-expanded", String(shown));
    this.asTable.textContent = shown ? "Hide the table" : "Show as table";
    this.rows.replaceChildren(...(shown ? [this.tableOf()] : []));
  }

  /** The points, the newest first unless time does not order them, at most so many. */
  tableOf() {
    const all = [...this.view.places];
    const rows = (this.newestFirst ? all.reverse() : all).slice(0, ROWS);
    const columns = [
      { head: "Value", kind: "lead", cell: (row) => row.label },
      { head: "Limits", kind: "new", cell: (row) => row.limits ?? "" },
    ];
    if (rows.some(({ point }) => point))
      columns.push(
        {
          head: "Piece",
          number: true,
          kind: "named",
          cell: ({ point }) => (point ? String(point.piece) : ""),
        },
        { head: "Time", kind: "new", cell: ({ point }) => (point ? dateTime(point.at) : "") },
        { head: "Rule broken", kind: "new", cell: ({ point }) => point?.broken.join("; ") ?? "" },
      );
    const order = this.newestFirst ? "points, the newest first" : "all that it shows";
    return table(`${this.view.title}: ${order}`, columns, rows, "lines");
  }

  near(event) {
    if (!this.view) return;
    const box = this.container.getBoundingClientRect();
    const scale = this.view.widthPx / box.width;
    const x = (event.clientX - box.left) * scale;
    const y = (event.clientY - box.top) * scale;
    const far = this.view.places.map((place) => Math.hypot(place.xPx - x, place.yPx - y));
    const least = Math.min(...far);
    this.choose(least <= REACH_PX * scale ? far.indexOf(least) : -1);
  }

  key(event) {
    if (!this.view) return;
    const count = this.view.places.length;
    const from = this.at < 0 ? count : this.at;
    const to = {
      ArrowRight: this.at + 1,
      ArrowLeft: from - 1,
      PageDown: this.at + PAGE,
      PageUp: from - PAGE,
      Home: 0,
      End: count - 1,
    }[event.key];
    if (to !== undefined && count > 0) this.choose(Math.min(count - 1, Math.max(0, to)));
    else if (event.key === "Escape") this.choose(-1);
    else if (event.key === "Enter" || event.key === " ") this.pick();
    else return;
    event.preventDefault();
  }

  pick() {
    if (this.at >= 0) this.onPick(this.view.places[this.at]);
  }

  choose(index) {
    if (index === this.at && !this.callout.hidden === index >= 0) return;
    this.at = index;
    clearTimeout(this.rest);
    this.pin.hidden = this.callout.hidden = index < 0;
    if (index < 0) return;
    const place = this.view.places[index];
    const left = (100 * place.xPx) / this.view.widthPx;
    const top = (100 * place.yPx) / this.view.heightPx;
    this.pin.style.left = `${left}%`;
    this.pin.style.top = `${top}%`;
    this.callout.replaceChildren(...words(place, this.positions));
    this.rest = setTimeout(() => this.decisions(place), REST_MS);
    this.stand();
  }

  stand() {
    const { xPx, yPx } = this.view.places[this.at];
    const scale = this.container.clientWidth / this.view.widthPx;
    stand(this.callout, this.container, { x: xPx * scale, y: yPx * scale });
  }

  /** How the readings of the point were decided, once it is looked at for a moment. */
  async decisions(place) {
    const { jobId } = this.view;
    if (!place.point || !jobId) return;
    const decided = await decisionsOf(jobId, place.point).catch(() => null);
    if (!decided || this.view?.places[this.at] !== place) return;
    this.callout.append(decided);
    this.stand();
  }
}

const key = (place) => `${place.panel} ${place.point?.number ?? place.label}`;

function words(place, positions) {
  const { point, limits } = place;
  if (!point) return [h("p", {}, place.label)];
  return [
    h("p", {}, h("strong", {}, place.label)),
    ...(limits ? [h("p", {}, limits)] : []),
    h("p", {}, `Piece ${point.piece}${positions && point.position ? `, ${point.position}` : ""}`),
    h("p", {}, dateTime(point.at)),
    ...point.broken.map((rule) => h("p", {}, `◆ ${rule}`)),
    ...(point.excluded ? [h("p", {}, `Excluded: ${point.reason}`)] : []),
  ];
}
