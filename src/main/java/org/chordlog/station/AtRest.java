package org.chordlog.station;

import org.chordlog.radius.ZeroEvaluation;

/**
 * The plunger standing still: its value, and the sequence of the reading that was taken in the same
 * contact, 0 if none.
 */
record AtRest(ZeroEvaluation value, long contactReading) {}
