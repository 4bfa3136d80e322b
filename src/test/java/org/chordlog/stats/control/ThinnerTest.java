package org.chordlog.stats.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.junit.jupiter.api.Test;

/** What is left out of a long chart, and what never is. */
final class ThinnerTest {
  private static final JudgedLimits BASIS = new JudgedLimits(0, -3, 3, 1, true);
  private static final Signal SIGNAL = new Signal(1, List.of(1L), Signal.Side.ABOVE);

  private final Thinner thinner = new Thinner();

  private static Plotted plotted(long number, double value, List<Signal> signals, String reason) {
    Point point =
        new Point(
            value,
            0,
            0,
            1,
            new PointReadings(number, number, 1, "middle", 1),
            new PointExclusion(!reason.isEmpty(), reason));
    return new Plotted(number, point, value, Double.NaN, value, BASIS, signals);
  }

  private void add(long from, long to) {
    for (long i = from; i <= to; i++) {
      thinner.add(plotted(i, Math.sin((double) i), List.of(), ""));
    }
  }

  private List<Long> numbers() {
    List<Long> numbers = new ArrayList<>();
    thinner.forEach(plotted -> numbers.add(plotted.number()));
    return numbers;
  }

  @Test
  void nothingIsLeftOutOfAnOrdinaryJob() {
    add(1, 500);
    assertEquals(LongStream.rangeClosed(1, 500).boxed().toList(), numbers());
  }

  @Test
  void newestAllThereAndTheRestBounded() {
    add(1, 1_000_000);
    List<Long> numbers = numbers();
    assertTrue(numbers.size() <= Thinner.RECENT + 4 * Thinner.BUCKETS, numbers.size() + " points");
    assertEquals(numbers.stream().sorted().distinct().toList(), numbers);
    List<Long> newest = numbers.subList(numbers.size() - Thinner.RECENT, numbers.size());
    assertEquals(LongStream.rangeClosed(999_801, 1_000_000).boxed().toList(), newest);
  }

  @Test
  void extremesSignalsAndExcludedPointsStay() {
    add(1, 9);
    thinner.add(plotted(10, 7, List.of(), ""));
    thinner.add(plotted(11, -8, List.of(), ""));
    thinner.add(plotted(12, 0.5, List.of(SIGNAL), ""));
    thinner.add(plotted(13, 99, List.of(), "slipped"));
    add(14, 100_000);
    assertTrue(numbers().containsAll(List.of(10L, 11L, 12L, 13L)), () -> numbers().toString());
  }

  @Test
  void theSameComesBackFromACheckpointAndSharesItsLimits() {
    add(1, 12_345);
    Packer packer = new Packer();
    thinner.pack(packer);
    Thinner back = new Thinner();
    back.unpack(new Unpacker(packer.bytes()));
    List<Plotted> before = new ArrayList<>();
    List<Plotted> after = new ArrayList<>();
    thinner.forEach(before::add);
    back.forEach(after::add);
    assertEquals(before, after);
    assertEquals(
        1, after.stream().map(each -> System.identityHashCode(each.basis())).distinct().count());
  }
}
