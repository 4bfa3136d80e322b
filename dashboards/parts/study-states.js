// States and verdicts of studies as signs, in the service's words.

import { state } from "./dom.js";
import words from "../api/words.js";

export const stateSign = (of) => state(words.studyStateTones[of], words.studyStates[of]);

export const verdictSign = (of) => state(words.studyVerdictTones[of], words.studyVerdicts[of]);

export const CARE =
  "Measure only with the rollers stopped and the drive locked out. Take pieces to a bench where you can. " +
  "Machine manual and local rules first.";
