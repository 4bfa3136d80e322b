package org.chordlog.study;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/** Readings of studies whose components are known: invented, normally distributed, from a seed. */
public final class Simulated {
  private final RandomGenerator random;

  public Simulated(long seed) {
    random = new Well19937c(seed);
  }

  /** Standard deviations of parts, operators, their interaction and repeats. */
  public record Sigmas(double part, double operator, double interaction, double repeat) {
    public double gauge() {
      return Math.sqrt(operator * operator + interaction * interaction + repeat * repeat);
    }

    public double total() {
      return Math.sqrt(part * part + gauge() * gauge());
    }
  }

  double[] normal(int count, double sigma) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = sigma * random.nextGaussian();
    }
    return values;
  }

  public double[] normal(int count, double mean, double sigma) {
    double[] values = normal(count, sigma);
    for (int i = 0; i < count; i++) {
      values[i] += mean;
    }
    return values;
  }

  public List<StudyReading> crossed(int parts, int operators, int repeats, Sigmas sigmas) {
    double[] ofPart = normal(parts, sigmas.part());
    double[] ofOperator = normal(operators, sigmas.operator());
    List<StudyReading> readings = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      for (int j = 0; j < operators; j++) {
        double cell = ofPart[i] + ofOperator[j] + sigmas.interaction() * random.nextGaussian();
        for (int k = 1; k <= repeats; k++) {
          readings.add(
              new StudyReading(
                  "P" + i, "", "O" + j, k, 0, cell + sigmas.repeat() * random.nextGaussian()));
        }
      }
    }
    return readings;
  }

  /** Each operator with parts of their own. */
  public List<StudyReading> nested(int operators, int parts, int repeats, Sigmas sigmas) {
    double[] ofOperator = normal(operators, sigmas.operator());
    List<StudyReading> readings = new ArrayList<>();
    for (int j = 0; j < operators; j++) {
      for (int i = 0; i < parts; i++) {
        double cell = ofOperator[j] + sigmas.part() * random.nextGaussian();
        for (int k = 1; k <= repeats; k++) {
          double value = cell + sigmas.repeat() * random.nextGaussian();
          readings.add(new StudyReading("P" + i, "", "O" + j, k, 0, value));
        }
      }
    }
    return readings;
  }

  /** Standard deviations of a split design; {@code sigmas} of pieces, operators and repeats. */
  public record SplitSigmas(Sigmas sigmas, double place, double placeInteraction) {}

  /** {@code named} gives places of all pieces the same names and a common difference of 0.5. */
  public List<StudyReading> split(
      int pieces, int places, int operators, int repeats, SplitSigmas all, boolean named) {
    double[] ofOperator = normal(operators, all.sigmas().operator());
    List<StudyReading> readings = new ArrayList<>();
    for (int i = 0; i < pieces; i++) {
      double piece = all.sigmas().part() * random.nextGaussian();
      double[] both = normal(operators, all.sigmas().interaction());
      for (int s = 0; s < places; s++) {
        double place = piece + all.place() * random.nextGaussian() + (named ? 0.5 * s : 0);
        String name = named ? "S" + s : "S" + i + "-" + s;
        for (int j = 0; j < operators; j++) {
          double cell =
              place + ofOperator[j] + both[j] + all.placeInteraction() * random.nextGaussian();
          for (int k = 1; k <= repeats; k++) {
            double value = cell + all.sigmas().repeat() * random.nextGaussian();
            readings.add(new StudyReading("P" + i, name, "O" + j, k, 0, value));
          }
        }
      }
    }
    return readings;
  }
}
