package org.chordlog.station;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.CapturedDepth;
import org.jspecify.annotations.Nullable;

/**
 * The depth that waits for the operator's word, if there is one. Changed by the station's thread
 * alone; {@link #question} may be asked by any.
 */
final class AskedDepth {
  private volatile @Nullable Pending pending;

  /** A depth, the bytes it came in, and what is asked about it. */
  record Pending(CapturedDepth depth, String rawHex, OpenQuestion question) {
    boolean replaces() {
      return question.kind() == OpenQuestion.Kind.LATER_REST;
    }
  }

  void ask(CapturedDepth depth, String rawHex, OpenQuestion question) {
    pending = new Pending(depth, rawHex, question);
  }

  /** What the operator is asked; null if nothing. */
  @Nullable OpenQuestion question() {
    Pending now = pending;
    return now == null ? null : now.question;
  }

  /** {@link BadInput} where no question is open. */
  Pending needed() {
    Pending now = pending;
    if (now == null) {
      throw new BadInput("question", "none", "is open", "an answer to a question only");
    }
    return now;
  }

  /** As {@link #needed}, and it waits no longer. */
  Pending answered() {
    Pending now = needed();
    pending = null;
    return now;
  }

  void forget() {
    pending = null;
  }

  /** A question about the same contact ends with it, another one stays until the next depth. */
  void contactEnded() {
    Pending now = pending;
    if (now != null && now.replaces()) {
      pending = null;
    }
  }
}
