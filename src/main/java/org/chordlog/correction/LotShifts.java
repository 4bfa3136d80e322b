package org.chordlog.correction;

import java.util.Objects;
import java.util.stream.Stream;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * What the change from one material lot to another does to the curvature, 1/mm, for each section.
 * Springback makes a lot an offset in curvature that does not depend on the radius as long as it
 * eats less than half of the bend.
 */
final class LotShifts {
  /** A change of curvature with its variance. */
  record Shift(String section, String from, String to, double perMm, double variance) {
    private Shift reversed() {
      return new Shift(section, to, from, -perMm, variance);
    }

    private Shift then(Shift next) {
      return new Shift(section, from, next.to, perMm + next.perMm, variance + next.variance);
    }

    /** Mean of two findings, weighted by their variances; lots are never quite even. */
    private Shift with(Shift other, double least) {
      double weight = variance / (variance + other.variance);
      double mean = perMm + weight * (other.perMm - perMm);
      double both = variance * other.variance / (variance + other.variance);
      return new Shift(section, from, to, mean, Math.max(least, both));
    }

    private void write(Packer to1) {
      to1.put(section).put(from).put(to).put(perMm).put(variance);
    }

    private static Shift read(Unpacker from1) {
      return new Shift(from1.text(), from1.text(), from1.text(), from1.aDouble(), from1.aDouble());
    }
  }

  private final Recent<Shift> table = new Recent<>();

  /** From lot to lot, or by way of a third one; null if not known. Unnamed lots never are. */
  @Nullable Shift find(String section, String from, String to) {
    if (from.isEmpty() || to.isEmpty()) {
      return null;
    }
    if (from.equals(to)) {
      return new Shift(section, from, to, 0, 0);
    }
    Shift direct = table.find(key(section, from, to));
    return direct == null ? byWayOfAnother(section, from, to) : direct;
  }

  private @Nullable Shift byWayOfAnother(String section, String from, String to) {
    Shift best = null;
    for (Shift first : table.all().stream().filter(s -> starts(s, section, from)).toList()) {
      Shift second =
          table.all().stream()
              .filter(s -> starts(s, section, first.to) && s.to.equals(to))
              .findFirst()
              .orElse(null);
      if (second != null && (best == null || first.then(second).variance < best.variance)) {
        best = first.then(second);
      }
    }
    return best;
  }

  private static boolean starts(Shift shift, String section, String from) {
    return shift.section.equals(section) && shift.from.equals(from);
  }

  /** A shift as it was found; {@code least} is a variance below which none is believed. */
  void learn(Shift found, double least) {
    if (found.from.isEmpty() || found.to.isEmpty()) {
      return;
    }
    Stream.of(found, found.reversed()).forEach(each -> put(each, least));
  }

  private void put(Shift found, double least) {
    String key = key(found.section, found.from, found.to);
    Shift known = table.find(key);
    table.put(key, known == null ? found : Objects.requireNonNull(known).with(found, least));
  }

  private static String key(String section, String from, String to) {
    return section + '\n' + from + '\n' + to;
  }

  void write(Packer to) {
    table.write(to, Shift::write);
  }

  void read(Unpacker from) {
    table.read(from, Shift::read);
  }
}
