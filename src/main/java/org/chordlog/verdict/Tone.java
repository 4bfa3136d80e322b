package org.chordlog.verdict;

/** How much a statement asks of its reader, the most urgent first. */
public enum Tone {
  /** Act before going on. */
  BAD,
  /** Look at it soon. */
  OPEN,
  /** Worth knowing, or not known yet. */
  QUIET,
  /** Nothing to do. */
  GOOD
}
