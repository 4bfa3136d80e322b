// What came from a port, as it came: its newest pieces, with names for what can't be printed.

import { h } from "./dom.js";

export function stream(pieces) {
  return h(
    "pre",
    { class: "stream", tabindex: "0", "aria-label": "What came" },
    pieces.slice(-12).map((piece) => `${piece.atSeconds.toFixed(2).padStart(6)} s  ${named(piece.text)}\n`),
  );
}

const FIRST_PICTURE = 0x2400;
const LAST_PICTURE = 0x2421;
const CONTROLS = new Map([
  [0x0a, "‹LF›"],
  [0x0d, "‹CR›"],
  [0x02, "‹STX›"],
  [0x03, "‹ETX›"],
]);

/** The pictures of control characters, which are in few fonts, by name or number. */
const named = (text) => [...text].map(readable).join("");

function readable(sign) {
  const code = sign.codePointAt(0);
  if (code < FIRST_PICTURE || code > LAST_PICTURE) return sign;
  const control = code - FIRST_PICTURE;
  return CONTROLS.get(control) ?? `‹${control.toString(16).padStart(2, "0")}›`;
}
