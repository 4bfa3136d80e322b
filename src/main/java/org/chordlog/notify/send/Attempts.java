package org.chordlog.notify.send;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.people.Retry;
import org.chordlog.store.Outbox.Progress;
import org.chordlog.store.Outbox.State;

/** How far a delivery is after one more attempt. */
final class Attempts {
  private Attempts() {}

  static Progress after(Progress before, Outcome outcome, Retry retry, Instant now) {
    int attempts = before.attempts() + 1;
    if (outcome instanceof Outcome.Later later) {
      Optional<Duration> wait = retry.after(attempts);
      State state = wait.isPresent() ? State.WAITING : State.FAILED;
      return new Progress(
          state, attempts, Micros.of(now.plus(wait.orElse(Duration.ZERO))), later.problem());
    }
    return outcome instanceof Outcome.Never never
        ? new Progress(State.FAILED, attempts, Micros.of(now), never.problem())
        : new Progress(State.DELIVERED, attempts, Micros.of(now), "");
  }
}
