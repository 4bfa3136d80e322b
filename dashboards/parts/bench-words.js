// Figures and words as they are shown.

const whole = new Intl.NumberFormat("en", { maximumFractionDigits: 0, useGrouping: false });
const clock = new Intl.DateTimeFormat(undefined, { hour: "2-digit", minute: "2-digit", second: "2-digit" });

export const decisions = {
  CONFORMS: "Conforms",
  DOES_NOT_CONFORM: "Does not conform",
  UNDECIDED: "Undecided",
  NO_LIMITS: "No limits given",
};
export const phases = { FREE: "free", MOVING: "moving", RESTING: "at rest", TAKEN: "taken" };
export const faces = { OUTER: "outer face", INNER: "inner face", CENTRELINE: "centreline" };

export function fixed(value, digits) {
  return value === null || value === undefined ? "–" : value.toFixed(digits).replace("-", "−");
}

// A radius with no more digits than its uncertainty supports.
export function radiusDigits(reading) {
  const half = halfWidth(reading);
  if (half === null || half >= 5) return 0;
  return half >= 0.5 ? 1 : 2;
}

export function halfWidth(reading) {
  return reading.radiusMm === null || reading.upperMm === null ? null : (reading.upperMm - reading.lowerMm) / 2;
}

export function plusMinus(reading) {
  if (reading.radiusMm === null) return "";
  const digits = radiusDigits(reading);
  if (reading.upperMm === null) return `+∞ −${fixed(reading.radiusMm - reading.lowerMm, digits)}`;
  const up = reading.upperMm - reading.radiusMm;
  const down = reading.radiusMm - reading.lowerMm;
  if (Math.abs(up - down) < 0.05 * (up + down)) return `± ${fixed((up + down) / 2, digits)}`;
  return `+${fixed(up, digits)} −${fixed(down, digits)}`;
}

export function radius(reading) {
  if (reading.radiusMm === null) return "flat";
  return reading.radiusMm >= 1e5 ? whole.format(reading.radiusMm) : fixed(reading.radiusMm, radiusDigits(reading));
}

export function time(iso) {
  const element = document.createElement("time");
  element.dateTime = iso;
  element.title = `${iso} (UTC)`;
  element.textContent = clock.format(new Date(iso));
  return element;
}
