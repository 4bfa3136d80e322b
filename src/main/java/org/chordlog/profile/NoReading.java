package org.chordlog.profile;

import org.chordlog.measure.Sentence;
import org.chordlog.profile.Refused.Reason;

/** Ends an evaluation that gives no reading; never leaves the package. */
final class NoReading extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final transient Refused why;

  NoReading(Reason reason, Sentence detail) {
    super(detail.toString(), null, false, false);
    why = new Refused(reason, detail);
  }

  Refused why() {
    return why;
  }
}
