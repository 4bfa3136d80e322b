package org.chordlog.notify.send;

import java.util.List;

/**
 * How telling goes: messages that wait for a delivery or for their next attempt, deliveries that
 * succeeded, that were given up (both of the last 90 days) and that were given up in the last 24
 * hours, and what is wrong now, one sentence each.
 */
public record DeliveryStatus(
    long waiting, long delivered, long failed, long failedLately, List<String> problems) {
  public DeliveryStatus {
    problems = List.copyOf(problems);
  }
}
