// The event stream. A page that is not looked at closes it, so that many tabs hold one connection;
// looked at again, or after a loss, it goes on from the last reading it saw.

import { inViewersUnit } from "./api.js";
import { home } from "./home.js";

const SILENCE_MS = 25000;
const LONGEST_PAUSE_MS = 10000;
const LONGEST_GREETING_MS = 3000;

/**
 * Follows events until stop() is called. handlers: { reading(data), live(data), … }. Only what happens while the
 * stream is open is told, so "again" shows everything anew whenever it has opened, the first time too (or where it
 * doesn't open soon), and events wait until that is done. shown: the first of it is done, or failed.
 */
export function follow({ stations = [], liveMillis = 200 }, handlers) {
  const stream = new Stream(stations, liveMillis, handlers);
  const look = () => (document.hidden ? stream.close() : stream.open());
  document.addEventListener("visibilitychange", look);
  addEventListener("pagehide", () => stream.close());
  addEventListener("pageshow", look);
  look();
  stream.impatience = setTimeout(() => stream.again(), document.hidden ? 0 : LONGEST_GREETING_MS);
  return {
    shown: stream.shown,
    stop() {
      document.removeEventListener("visibilitychange", look);
      stream.close();
    },
  };
}

class Stream {
  constructor(stations, liveMillis, handlers) {
    Object.assign(this, {
      stations,
      liveMillis,
      handlers,
      lastId: 0,
      epoch: "",
      pause: 1000,
      source: null,
      timer: 0,
      lostAt: null,
      impatience: 0,
    });
    this.shown = new Promise((shown, failed) => Object.assign(this, { begin: shown, fail: failed }));
    this.ready = this.shown.catch(() => {});
  }

  open() {
    if (this.source) return;
    const query = new URLSearchParams({ liveMillis: this.liveMillis });
    this.stations.forEach((station) => query.append("station", station));
    if (this.lastId) query.set("lastEventId", `${this.lastId}-${this.epoch}`);
    this.source = new EventSource(home(inViewersUnit(`api/events?${query}`)));
    this.source.addEventListener("error", () => this.lost());
    for (const name of ["hello", "heartbeat", "alerts", ...Object.keys(this.handlers)]) {
      this.source.addEventListener(name, (event) => this.heard(name, event));
    }
    this.watch();
  }

  heard(name, event) {
    const data = JSON.parse(event.data);
    if (event.lastEventId) this.lastId = Number.parseInt(event.lastEventId, 10);
    this.watch();
    this.pause = 1000;
    tell((this.lostAt = null));
    if (name === "hello") this.greeted(data);
    else if (name === "alerts") document.dispatchEvent(new CustomEvent("alerts", { detail: data }));
    else this.ready.then(() => this.handlers[name]?.(data));
  }

  greeted(hello) {
    this.epoch = hello.epoch; // ids of another one mean other readings
    this.lastId = Math.max(hello.reload ? 0 : this.lastId, hello.lastReadingId);
    this.again();
  }

  again() {
    clearTimeout(this.impatience);
    this.impatience = 0;
    const done = Promise.resolve(this.handlers.again?.());
    done.then(this.begin, this.fail);
    this.ready = done.catch((problem) => console.warn(problem.message));
  }

  watch() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.lost(), SILENCE_MS);
  }

  lost() {
    this.close();
    if (this.impatience) this.again();
    tell((this.lostAt ??= new Date()));
    this.timer = setTimeout(() => {
      if (!document.hidden) this.open();
    }, this.pause);
    this.pause = Math.min(LONGEST_PAUSE_MS, this.pause * 2);
  }

  close() {
    clearTimeout(this.timer);
    this.source?.close();
    this.source = null;
  }
}

/** Tells the frame since when nothing came; null: it comes. */
export function tell(since) {
  document.documentElement.dataset.stale = String(since !== null);
  document.dispatchEvent(new CustomEvent("freshness", { detail: { since } }));
}
