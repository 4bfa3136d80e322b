package org.chordlog.notify;

import java.time.Duration;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Alerts;
import org.chordlog.store.Plant;

/**
 * A plant whose workshop computers are watched. {@code silent}: without a word for that long one is
 * told of; {@code turn}: whether it is this program that watches now, where several serve the
 * plant.
 */
public record WatchedPlant(Plant plant, Duration silent, BooleanSupplier turn) {
  /** The pages call one silent before anybody is told; a tea break is no reason for a mail. */
  public static final Duration USUAL_SILENT = Duration.ofMinutes(15);

  private static final long LEAST_MINUTES = 6;
  private static final long MOST_MINUTES = 14 * 24 * 60;

  /** {@link BadInput} unless it is longer than what a computer that is well may be silent. */
  public static Duration silentMinutes(String field, int minutes) {
    if (minutes < LEAST_MINUTES || minutes > MOST_MINUTES) {
      throw new BadInput(
          field, minutes, "is out of range", LEAST_MINUTES + " to " + MOST_MINUTES + " minutes");
    }
    return Duration.ofMinutes(minutes);
  }

  Alerts alerts() {
    return plant.own().alerts();
  }

  List<Plant.Edge> edges() {
    return plant.edges();
  }
}
