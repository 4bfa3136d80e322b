package org.chordlog.cli.correction;

import org.chordlog.cli.common.TypedNumber;
import org.chordlog.correction.Certificates;
import org.chordlog.correction.Told;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** The yield strength of the lot in the machine, and what the next one's changes. */
final class LotYields {
  /** Metals are within; a strength in Pa or psi is not. Common practice, no source. */
  private static final double LEAST_MPA = 10;

  private static final double MOST_MPA = 5000;

  private final JobOptions options;
  private @Nullable Double presentMpa;

  LotYields(JobOptions options) {
    this.options = options;
    presentMpa = checked(options.certificates().yieldMpa());
  }

  /** Another lot, with what is foretold where both yield strengths are known. */
  Told.Lot next(String name, @Nullable Double nextMpa, double targetMm) {
    Double present = presentMpa;
    Double next = checked(nextMpa);
    return present == null || next == null
        ? new Told.Lot(name)
        : new Told.Lot(name, certificates().step(targetMm, present, next));
  }

  /** The lot in the machine now; null: its yield strength is not known. */
  void changed(@Nullable Double yieldMpa) {
    presentMpa = yieldMpa;
  }

  /** Told once more of the lot in the machine, as a file does in each row; null tells nothing. */
  void repeated(@Nullable Double yieldMpa) {
    Double told = checked(yieldMpa);
    Double present = presentMpa;
    if (told != null && present != null && !told.equals(present)) {
      throw new BadInput("yieldMpa", told, "is not what its lot had before", present.toString());
    }
    presentMpa = told == null ? present : told;
  }

  /** A cell of a file; null where it is empty. */
  static @Nullable Double cell(String text) {
    return text.isEmpty() ? null : (Double) TypedNumber.cell("yieldMpa", text);
  }

  /** {@link BadInput} where the options lack what yield strengths need. */
  void requireCertificates() {
    certificates();
  }

  private @Nullable Double checked(@Nullable Double yieldMpa) {
    if (yieldMpa != null) {
      Check.within("yieldMpa", yieldMpa, LEAST_MPA, MOST_MPA);
      requireCertificates();
    }
    return yieldMpa;
  }

  private Certificates certificates() {
    return options.certificates().of(options.section(), options.lengths());
  }
}
