// What kinds, states and verdicts of studies are called on the pages.

export const kinds = {
  CROSSED: "Pieces and operators",
  SPLIT: "Pieces, marked places and operators",
  ONE_OPERATOR: "Pieces, one operator",
  BIAS: "Bias on one master",
  LINEARITY: "Bias on several masters",
  TYPE1: "One master against the tolerance",
};

export const states = {
  PAUSED: ["quiet", "Paused"],
  RUNNING: ["open", "Running"],
  DONE: ["good", "Done"],
  ABANDONED: ["quiet", "Given up"],
};

export const verdicts = {
  PASSES: ["good", "Good enough"],
  UNDECIDED: ["open", "Undecided"],
  FAILS: ["bad", "Not good enough"],
};

export const onMasters = (kind) => ["BIAS", "LINEARITY", "TYPE1"].includes(kind);

export const CARE =
  "Measure only with the rollers stopped and the drive locked out. Take pieces to a bench where you can. " +
  "Machine manual and local rules first.";
