package org.chordlog.station;

import org.chordlog.measure.Sentence;

/** What the operator is asked about the last depth, and which answers there are. */
public record OpenQuestion(Kind kind, Sentence sentence) {
  /** What it is about. */
  public enum Kind {
    /**
     * A depth far from the target: a piece of the job (confirm), a piece of another job (another,
     * with that job), or no piece (decline).
     */
    FAR_FROM_TARGET,
    /**
     * A later rest of one contact: the same place put right (confirm), the next one (another), or
     * neither (decline).
     */
    LATER_REST
  }
}
