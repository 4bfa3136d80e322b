package org.chordlog.notify.channel;

/** What became of an attempt to deliver; problems are sentences for people. */
public sealed interface Outcome {
  /** The other side took it. */
  record Delivered() implements Outcome {}

  /** It may work later. */
  record Later(String problem) implements Outcome {}

  /** The other side will never take it. */
  record Never(String problem) implements Outcome {}
}
