package org.chordlog.web;

import org.chordlog.measure.BadInput;
import org.chordlog.web.http.Needed;
import org.jspecify.annotations.Nullable;

/** Why something is done that needs a reason. */
record Reason(@Needed @Nullable String reason) {
  String needed() {
    if (reason == null || reason.isBlank()) {
      throw new BadInput("reason", "", "is missing", "a reason");
    }
    return reason.strip();
  }
}
