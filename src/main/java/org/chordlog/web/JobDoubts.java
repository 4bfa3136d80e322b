package org.chordlog.web;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Job;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.chordlog.web.http.Refusal;

/** What of a job may be a slip of the pen: it is asked about, and taken when confirmed. */
record JobDoubts(List<Doubt> all) {
  /** A tolerance wider than that part of the radius is no roll-bending tolerance; no source. */
  private static final double WIDE = 0.25;

  /** Limits that far off the middle; no source. */
  private static final double LOPSIDED = 10;

  /** For whoever fills a form, and field by field for programs. */
  private record Doubt(Sentence words, String field, double value, String problem, String better) {
    Fault fault(String or) {
      return new Fault(field, String.valueOf(value), problem, better + ", or " + or);
    }
  }

  static JobDoubts of(Job job) {
    Specification asked = job.specification();
    Double lower = asked.lowerLimitMm();
    Double upper = asked.upperLimitMm();
    List<Doubt> all = new ArrayList<>();
    if (lower != null && upper != null) {
      double below = asked.targetMm() - lower;
      double above = upper - asked.targetMm();
      if (below + above > WIDE * asked.targetMm()) {
        all.add(wide(below + above, upper));
      }
      if (Math.max(below, above) > LOPSIDED * Math.min(below, above)) {
        all.add(lopsided(below, above, lower));
      }
    }
    return new JobDoubts(List.copyOf(all));
  }

  private static Doubt wide(double widthMm, double upper) {
    return new Doubt(
        Sentence.of(
            "From limit to limit it is %s, more than a quarter of the radius.",
            Quantity.stated(widthMm)),
        "specification.upperLimitMm",
        upper,
        "makes a tolerance of more than a quarter of the radius",
        "limits near the target");
  }

  private static Doubt lopsided(double belowMm, double aboveMm, double lower) {
    return new Doubt(
        Sentence.of(
            "The target is almost at a limit: the lower one is %s below it, the upper one %s above.",
            Quantity.stated(belowMm), Quantity.stated(aboveMm)),
        "specification.lowerLimitMm",
        lower,
        "leaves the target almost at a limit",
        "limits around the target");
  }

  /** Answers with what is in doubt, so that it can be confirmed. */
  void ask() {
    if (!all.isEmpty()) {
      Sentence words = Sentence.joined(" ", all.stream().map(Doubt::words).toList());
      throw Refusal.doubtful(words, faults("confirmed: true"));
    }
  }

  /** Where nothing can be confirmed. */
  void refuse() {
    if (!all.isEmpty()) {
      throw new BadInput(faults("the job opened by itself"));
    }
  }

  private List<Fault> faults(String or) {
    return all.stream().map(each -> each.fault(or)).toList();
  }
}
