package org.chordlog.web.service;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.notify.send.DeliveryStatus;

/** Messages about alerts to people and programs; numbers of the last 90 days. */
record MessagesHealth(
    long waiting,
    long delivered,
    @JsonPropertyDescription("given up") long failed,
    @JsonPropertyDescription("given up in the last 24 hours") long failedLately) {
  static MessagesHealth of(DeliveryStatus told) {
    return new MessagesHealth(told.waiting(), told.delivered(), told.failed(), told.failedLately());
  }
}
