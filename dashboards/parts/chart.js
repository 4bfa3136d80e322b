// A chart: the service's picture, with its points told on touch, hover, and by the arrow keys.

import { get, turns } from "./api.js";
import { h } from "./dom.js";
import { dateTime } from "./times.js";
import { inches } from "./units.js";

const REACH_PX = 44;

/** Shows charts in a container; onPick(place) is called when a point is chosen by click or Enter. */
export class Chart {
  constructor(container, { onPick = () => {}, height = 460, narrowHeight = 420, positions = true } = {}) {
    Object.assign(this, {
      container,
      onPick,
      height,
      narrowHeight,
      positions,
      view: null,
      at: -1,
      turn: turns(),
    });
    container.classList.add("picture");
    container.tabIndex = 0;
    container.setAttribute("role", "group");
    this.pin = h("span", { class: "pin", hidden: true });
    this.callout = h("div", { class: "callout", role: "status", hidden: true });
    container.addEventListener("pointermove", (event) => this.near(event));
    container.addEventListener("pointerdown", (event) => this.near(event));
    container.addEventListener("pointerleave", () => this.choose(-1));
    container.addEventListener("click", () => this.pick());
    container.addEventListener("keydown", (event) => this.key(event));
    container.addEventListener("blur", () => this.choose(-1));
  }

  /** Fetches the chart at that path (without width and height) and shows it. */
  async show(path) {
    const current = this.turn();
    const width = Math.max(300, Math.min(1600, Math.round(this.container.clientWidth / 20) * 20));
    const height = width < 600 ? this.narrowHeight : this.height;
    const view = await get(
      `${path}${path.includes("?") ? "&" : "?"}width=${width}&height=${height}${inches() ? "&unit=inch" : ""}`,
    );
    if (current()) this.put(view);
  }

  put(view) {
    const known = this.at >= 0 ? key(this.view.places[this.at]) : null;
    const svg = new DOMParser().parseFromString(view.svg, "image/svg+xml").documentElement;
    svg.setAttribute("aria-hidden", "true");
    this.view = view;
    this.container.setAttribute(
      "aria-label",
      `${view.title}: ${view.places.length} points. Arrow keys go from point to point.`,
    );
    this.container.replaceChildren(document.importNode(svg, true), this.pin, this.callout);
    this.choose(known === null ? -1 : view.places.findIndex((place) => key(place) === known));
  }

  clear(...children) {
    this.turn();
    this.view = null;
    this.at = -1;
    this.container.removeAttribute("aria-label");
    this.container.replaceChildren(...children);
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
    const to = {
      ArrowRight: this.at + 1,
      ArrowLeft: this.at < 0 ? count - 1 : this.at - 1,
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
    this.pin.hidden = this.callout.hidden = index < 0;
    if (index < 0) return;
    const place = this.view.places[index];
    const left = (100 * place.xPx) / this.view.widthPx;
    const top = (100 * place.yPx) / this.view.heightPx;
    this.pin.style.left = `${left}%`;
    this.pin.style.top = `${top}%`;
    this.callout.replaceChildren(...words(place, this.positions));
    Object.assign(
      this.callout.style,
      left > 55 ? { left: "auto", right: `${102 - left}%` } : { left: `${left + 2}%`, right: "auto" },
    );
    Object.assign(
      this.callout.style,
      top > 55 ? { top: "auto", bottom: `${102 - top}%` } : { top: `${top + 2}%`, bottom: "auto" },
    );
  }
}

const key = (place) => `${place.panel} ${place.point?.number ?? place.label}`;

function words(place, positions) {
  const { point } = place;
  if (!point) return [h("p", {}, place.label)];
  return [
    h("p", {}, h("strong", {}, place.label)),
    h("p", {}, `Piece ${point.piece}${positions && point.position ? `, ${point.position}` : ""}`),
    h("p", {}, dateTime(point.at)),
    ...point.broken.map((rule) => h("p", {}, `◆ ${rule}`)),
    ...(point.excluded ? [h("p", {}, `Excluded: ${point.reason}`)] : []),
  ];
}
