package org.chordlog.notify.people;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** When a message that could not be delivered is tried again, until it is given up. */
public enum Retry {
  /** A minute after the first attempt, then ever later, for six hours. */
  MAIL(1, 2, 5, 10, 20, 40, 60, 60, 60, 60, 42),
  /** The same for 24 hours. */
  WEBHOOK(1, 2, 5, 10, 20, 40, 60, 120, 240, 360, 360, 222);

  @SuppressWarnings("ImmutableEnumChecker") // a list that can't be changed
  private final List<Duration> waits;

  Retry(long... minutes) {
    waits = Arrays.stream(minutes).mapToObj(Duration::ofMinutes).toList();
  }

  /** After that many attempts; empty where it is given up. */
  public Optional<Duration> after(int attempts) {
    return attempts > waits.size() ? Optional.empty() : Optional.of(waits.get(attempts - 1));
  }
}
