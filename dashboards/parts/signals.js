// Sound and flash for gloves, glare and noise: recorded, refused, out of tolerance. Each device may
// switch them off under Settings. A browser stays silent until the page was touched or a key pressed once.

import { h } from "./dom.js";
import { viewer } from "./viewer.js";

const FLASH_MS = 700;

/** Tones one after the other: [Hz, ms, wave]; 0 Hz is a pause. */
const SOUNDS = {
  good: [
    [880, 90, "sine"],
    [1320, 140, "sine"],
  ],
  quiet: [[880, 120, "sine"]],
  open: [
    [620, 130, "triangle"],
    [0, 70, "sine"],
    [620, 130, "triangle"],
  ],
  bad: [
    [230, 170, "square"],
    [0, 80, "sine"],
    [230, 170, "square"],
    [0, 80, "sine"],
    [230, 260, "square"],
  ],
  refused: [
    [330, 150, "sawtooth"],
    [220, 300, "sawtooth"],
  ],
};

let audio = null;

/** Wakes the sound up, which a browser allows upon a touch or a key only. */
function wake() {
  audio ??= new AudioContext();
  return audio.resume();
}

/** Lets a touch or a key wake the sound up. */
export function listenForTouch() {
  for (const event of ["pointerdown", "keydown"]) addEventListener(event, wake, { passive: true });
}

/** Whether the sound is switched on but waits for the first touch of this page. */
export const soundWaits = () => viewer("sound") === "on" && audio === null;

/** kind: good, quiet, open, bad or refused. */
export function signal(kind) {
  if (viewer("sound") === "on") play(SOUNDS[kind]);
  if (viewer("flash") === "on") flash(kind);
}

/** The same upon a touch, to hear and see it whatever is switched on. */
export function tryOut(kind) {
  flash(kind);
  wake().then(() => play(SOUNDS[kind]));
}

function play(tones) {
  if (audio?.state !== "running") return;
  let at = audio.currentTime + 0.01;
  for (const [hertz, ms, wave] of tones) {
    if (hertz > 0) beep(hertz, wave, at, ms / 1000);
    at += ms / 1000;
  }
}

function beep(hertz, wave, at, seconds) {
  const gain = new GainNode(audio, { gain: 0 });
  const tone = new OscillatorNode(audio, { type: wave, frequency: hertz });
  gain.gain.setValueAtTime(0, at);
  gain.gain.linearRampToValueAtTime(wave === "sine" ? 0.5 : 0.3, at + 0.01);
  gain.gain.setValueAtTime(wave === "sine" ? 0.5 : 0.3, at + seconds - 0.02);
  gain.gain.linearRampToValueAtTime(0, at + seconds);
  tone.connect(gain).connect(audio.destination);
  tone.start(at);
  tone.stop(at + seconds);
}

/** One flash at the edge of the screen, so never more than three in a second. */
function flash(kind) {
  document.querySelectorAll(".flash").forEach((each) => each.remove());
  const element = h("div", { class: "flash", "aria-hidden": "true", data: { kind } });
  document.body.append(element);
  setTimeout(() => element.remove(), FLASH_MS);
}
