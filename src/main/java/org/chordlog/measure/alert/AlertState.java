package org.chordlog.measure.alert;

/**
 * Where an alert is, in the words of ISA-18.2 (alarm management in the process industries). Names
 * are stored.
 */
public enum AlertState {
  /** Over: nothing is wrong, or somebody knows and it went away. */
  NORMAL,
  /** Something is wrong and nobody has said that he knows. */
  UNACKNOWLEDGED,
  /** Something is wrong and somebody knows. */
  ACKNOWLEDGED,
  /** It went away by itself before anybody said that he knew: still asks for a word. */
  RETURNED_UNACKNOWLEDGED,
  /** Put aside with a reason until a time; comes back by itself. */
  SHELVED,
  /** Its machine or station is under repair; ended by what ends a repair. */
  OUT_OF_SERVICE;

  /** Whether it waits for somebody. */
  public boolean waits() {
    return this == UNACKNOWLEDGED || this == RETURNED_UNACKNOWLEDGED;
  }
}
