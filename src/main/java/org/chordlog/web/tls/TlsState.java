package org.chordlog.web.tls;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * The certificate in use: until when it is valid, and why the files of now are not used; empty
 * where they are.
 */
public record TlsState(Instant notAfter, String problem) {
  private static final int WARNED_DAYS = 30;

  /** Whole days, rounded down; negative once it has expired. */
  public long daysLeft(Instant now) {
    return Math.floorDiv(Duration.between(now, notAfter).toSeconds(), 86_400L);
  }

  /** What somebody should see to. */
  public List<String> reasons(Instant now) {
    List<String> said = new ArrayList<>();
    if (!problem.isEmpty()) {
      said.add("certificate: the new files are not used: " + problem);
    }
    long days = daysLeft(now);
    if (days < 0) {
      said.add("certificate: it expired at " + notAfter + "; browsers refuse the pages");
    } else if (days < WARNED_DAYS) {
      said.add("certificate: " + days + " days left; renew it");
    }
    return said;
  }
}
