// What this viewer chose, kept on this device alone: unit, light or dark, name, key, sound, pedal.

const usual = {
  unit: "mm",
  decimal: "point",
  theme: "device",
  name: "",
  key: "",
  sound: "on",
  flash: "on",
  keyAgain: "*",
  keyNext: "+",
  keyUndo: "-",
  keyMeasure: "0",
};

export function viewer(what) {
  try {
    return localStorage.getItem(what) ?? usual[what];
  } catch {
    return usual[what];
  }
}

/** Keeps a choice and tells the page: event "viewer" on the document. */
export function choose(what, value) {
  try {
    localStorage.setItem(what, value);
  } catch {
    usual[what] = value;
  }
  document.dispatchEvent(new CustomEvent("viewer", { detail: { what, value } }));
}
