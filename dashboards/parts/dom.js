// Elements without a framework.

export const $ = (id) => document.getElementById(id);

/** h("p", { class: "small", hidden: true, on: { click } }, "text", child) */
export function h(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) set(element, key, value);
  const shown = children.flat().filter((child) => child !== null && child !== undefined);
  element.append(...shown.map((child) => (typeof child === "string" ? kept(child) : child)));
  return element;
}

const UNITS = ["mm", "in", "%", "µm", "ppm"];
const MARKS = [".", ",", ";", ":", ")"];

/** The same words, in which no line ends between a number and its unit, or after ±. */
export function kept(text) {
  return text.split(" ").reduce((said, word) => {
    const whole = said.endsWith("±") || (UNITS.includes(bare(word)) && isDigit(said.at(-1)));
    return `${said}${whole ? "\u00a0" : " "}${word}`;
  });
}

const bare = (word) => (MARKS.includes(word.at(-1)) ? bare(word.slice(0, -1)) : word);
const isDigit = (letter) => letter >= "0" && letter <= "9";

function set(element, key, value) {
  if (key === "on") {
    for (const [event, handle] of Object.entries(value)) element.addEventListener(event, handle);
  } else if (key === "data") {
    Object.assign(element.dataset, value);
  } else if (value === true) {
    element.setAttribute(key, "");
  } else if (value !== false && value !== null && value !== undefined) {
    element.setAttribute(key, value);
  }
}

/** A state as word, shape and colour: good, open, bad, quiet. */
export function state(kind, words) {
  return h("span", { class: "state", data: { state: kind } }, words);
}

/** Sets text only where it differs, so that live regions do not repeat themselves. */
export function say(element, words) {
  const said = kept(String(words ?? ""));
  if (element.textContent !== said) element.textContent = said;
}

/** Terms and their values: [["Span", "200 mm"], …]; empty values are left out. */
export function facts(rows) {
  return h(
    "dl",
    { class: "facts" },
    rows
      .filter(([, value]) => value !== null && value !== undefined && value !== "")
      .flatMap(([term, value]) => [h("dt", {}, term), h("dd", {}, value)]),
  );
}

/** A button, seen on a phone only, for what a place keeps folded there. */
export function unfold(place, words) {
  const open = () => place.dataset.open === "true";
  const turn = () => {
    place.dataset.open = String(!open());
    button.setAttribute("aria-expanded", String(open()));
  };
  const button = h(
    "button",
    {
      class: "button plain narrow-only",
      type: "button",
      "aria-expanded": String(open()),
      on: { click: turn },
    },
    words,
  );
  return button;
}

/** The head of a column of buttons. */
const unnamed = () => h("span", { class: "unseen" }, "Action");

/**
 * A table that scrolls by itself; on a narrow screen each row becomes a block, each cell with its head,
 * unless asBlocks is false. With asBlocks "lines" the cells of a row follow each other in lines: kind "new"
 * starts a line, "named" shows the head, "lead" is bold, "act" is at the right.
 * columns: { head, short (head in blocks and lines), number, kind (classes), cell(row) }.
 */
export function table(title, columns, rows, asBlocks = true) {
  const side = ({ number, kind }) => ({
    class: [number && "number", kind].filter(Boolean).join(" ") || null,
  });
  const cell = (each, row) =>
    h(
      "td",
      { ...side(each), "data-head": asBlocks && each.head ? (each.short ?? each.head) : null },
      each.cell(row),
    );
  return h(
    "div",
    {
      class: asBlocks ? `table ${asBlocks === true ? "stack" : asBlocks}` : "table",
      tabindex: "0",
      role: "region",
      "aria-label": title,
    },
    h(
      "table",
      {},
      h(
        "thead",
        {},
        h(
          "tr",
          {},
          columns.map((each) => h("th", { scope: "col", ...side(each) }, each.head || unnamed())),
        ),
      ),
      h(
        "tbody",
        {},
        rows.map((row) =>
          h(
            "tr",
            {},
            columns.map((each) => cell(each, row)),
          ),
        ),
      ),
    ),
  );
}
