package org.chordlog.stats.math;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;

final class RanksTest {
  private final SplittableRandom random = new SplittableRandom(20_261_127);

  /** Also of equal values, and of those that are in order already, either way or in waves. */
  private List<double[]> arrays(int size) {
    return List.of(
        random.doubles(size).toArray(),
        random.ints(size, -2, 3).asDoubleStream().toArray(),
        DoubleStream.generate(() -> 7).limit(size).toArray(),
        IntStream.range(0, size).asDoubleStream().toArray(),
        IntStream.range(0, size).mapToDouble(i -> -i).toArray(),
        IntStream.range(0, size).mapToDouble(i -> Math.min(i, size - i)).toArray());
  }

  @Test
  void eachPlaceIsThatOfTheSortedValues() {
    for (int size : new int[] {1, 2, 3, 4, 5, 17, 64}) {
      for (double[] values : arrays(size)) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        for (int place = 0; place < size; place++) {
          assertEquals(sorted[place], Ranks.select(values.clone(), place));
        }
      }
    }
  }

  @Test
  void theMedianIsThatOfTheLibraryToTheLastBit() {
    for (int size : new int[] {1, 2, 3, 10, 11, 1_000, 1_001}) {
      for (double[] values : arrays(size)) {
        assertEquals(new Median().evaluate(values), Ranks.median(values));
      }
    }
  }
}
