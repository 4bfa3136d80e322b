package org.chordlog.stats.drift;

import java.util.List;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Corrections and set-ups made meanwhile: how many, how many of them with a recorded amount, and
 * the sum of those amounts in the machine's own unit.
 */
public record Corrections(int count, int recorded, double amount) {
  public static final Corrections NONE = new Corrections(0, 0, 0);

  static Corrections of(List<Start> starts) {
    List<Double> amounts =
        starts.stream().filter(each -> each.amount() != null).map(Start::amount).toList();
    double sum = amounts.stream().mapToDouble(Double::doubleValue).sum();
    return new Corrections(starts.size(), amounts.size(), sum);
  }

  void pack(Packer packer) {
    packer.put(count).put(recorded).put(amount);
  }

  static Corrections unpack(Unpacker from) {
    return new Corrections(from.anInt(), from.anInt(), from.aDouble());
  }
}
