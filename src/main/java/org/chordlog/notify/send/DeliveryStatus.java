package org.chordlog.notify.send;

import java.util.List;

/**
 * How telling goes: messages that wait for a delivery or for their next attempt, deliveries that
 * succeeded and that were given up (of the last 90 days), and what is wrong now, one sentence each.
 */
public record DeliveryStatus(long waiting, long delivered, long failed, List<String> problems) {
  public DeliveryStatus {
    problems = List.copyOf(problems);
  }
}
