// The alerts of one machine or station, on its page; nothing where there are none.

import { get } from "./api.js";
import { h, state } from "./dom.js";
import { kindOf } from "./findings.js";

/** about: machine or station; beside(): what is to be said under them, empty for nothing. */
export class AlertsHere {
  constructor(about, name, beside = () => "") {
    this.beside = beside;
    this.path = `api/alerts?${about}=${encodeURIComponent(name)}`;
    this.element = h("section", { class: "sheet form", "aria-label": "Alerts", hidden: true });
    document.addEventListener("alerts", () => this.show());
  }

  /** A page stays usable where they can't be read. */
  async show() {
    const { alerts } = await get(this.path).catch(() => ({ alerts: [] }));
    const beside = alerts.length === 0 ? "" : await this.beside();
    this.element.hidden = alerts.length === 0;
    this.element.replaceChildren(
      h(
        "ul",
        { class: "needs" },
        alerts.map(({ statement, stateWords }) =>
          h("li", {}, state(kindOf(statement.tone), statement.word), ` ${statement.reason} ${stateWords}.`),
        ),
      ),
      beside ? h("p", { class: "small" }, beside) : "",
      h("a", { class: "button plain", href: "alerts.html" }, "To the alerts"),
    );
  }
}
