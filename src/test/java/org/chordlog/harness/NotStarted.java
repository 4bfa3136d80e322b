package org.chordlog.harness;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A service that ended before it said where it is; the message is what it said instead. */
final class NotStarted extends IOException {
  private static final long serialVersionUID = 1;

  NotStarted(String said, @Nullable Throwable cause) {
    super("the service did not start: " + said, cause);
  }
}
