// Paper is light, whatever the screen is; what is folded is printed open, and the time stands at its end.

import { h } from "./dom.js";
import { dateTime } from "./times.js";

const root = document.documentElement;
let before = null;

addEventListener("beforeprint", () => {
  const folded = [...document.querySelectorAll("details:not([open])")];
  const printed = h("p", { class: "printed" }, "Printed ", dateTime(new Date().toISOString()));
  before = { theme: root.dataset.theme, folded, printed };
  root.dataset.theme = "light";
  before.folded.forEach((each) => {
    each.open = true;
  });
  document.body.append(printed);
});
addEventListener("afterprint", () => {
  root.dataset.theme = before.theme;
  before.folded.forEach((each) => {
    each.open = false;
  });
  before.printed.remove();
});
