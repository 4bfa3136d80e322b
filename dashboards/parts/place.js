// Whose records a page shows: those of the service itself, of a whole plant, or of one of its workshop computers.

const told = (name) => document.querySelector(`meta[name="${name}"]`)?.content ?? null;

/** The workshop computer whose records these are, at a plant; null elsewhere. */
export const workshop = told("workshop");

/** Where it is. */
export const site = told("site");

/** Whether this is a page of the plant itself. */
export const ofPlant = told("plant") !== null;

/** Changes are made at the machine: a page of a plant has none of the buttons for them. */
document.documentElement.dataset.readHere = String(workshop !== null);
