package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.random.RandomGenerator;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Job;
import org.chordlog.measure.Master;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.store.Store;
import org.chordlog.verdict.StudyWords;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.jspecify.annotations.Nullable;

/** What a study is planned from. */
record StudyForm(
    @Needed @Nullable String station,
    @Needed @Nullable String name,
    @Needed GaugeStudy.@Nullable Kind kind,
    @JsonPropertyDescription(
            "names of the pieces, lots or days, for own pieces shared among the operators in"
                + " order; empty for bias, linearity and type 1")
        @Nullable List<String> parts,
    @JsonPropertyDescription("names of the marked places on each piece, for a split study")
        @Nullable List<String> places,
    @Nullable List<String> operators,
    @Needed @Nullable Integer repeats,
    @JsonPropertyDescription(
            "the job whose section and limits apply; needed but for bias, linearity and stability")
        @Nullable Long jobId,
    @JsonPropertyDescription("masters, for bias, linearity, stability and type 1")
        @Nullable List<Long> masterIds,
    @JsonPropertyDescription("start of the drawn order; drawn too if left out")
        @Nullable Long seed) {
  /** The study, paused, not stored yet; refuses with every fault there is. */
  GaugeStudy study(Store store, GaugeStudy.Made made) {
    Faults faults = new Faults();
    faults.text("station", station);
    faults.text("name", name);
    GaugeStudy.Kind asked = faults.needed("kind", kind, "CROSSED, SPLIT, ONE_OPERATOR …");
    Integer times = faults.needed("repeats", repeats, "1 to 100");
    faults.refuse();
    GaugeStudy.Kind known = Objects.requireNonNull(asked);
    List<Master> masters = known.onMasters() ? masters(store, known) : List.of();
    List<String> names =
        known.onMasterEach() ? masters.stream().map(Master::name).toList() : given(parts);
    GaugeStudy.Design design =
        new GaugeStudy.Design(
            known,
            names,
            places(known),
            given(operators),
            Objects.requireNonNull(times),
            seed == null ? RandomGenerator.getDefault().nextInt(1, 1_000_000) : (long) seed);
    refuseUnfit(design);
    return new GaugeStudy(
        0,
        Objects.requireNonNull(station),
        Objects.requireNonNull(name),
        design,
        subject(store, masters),
        GaugeStudy.State.PAUSED,
        made);
  }

  private List<String> places(GaugeStudy.Kind of) {
    return switch (of) {
      case SPLIT -> given(places);
      case PLACING -> List.of(GaugeStudy.BY_EYE, GaugeStudy.ON_MARK);
      default -> List.of();
    };
  }

  private static List<String> given(@Nullable List<String> names) {
    return names == null ? List.of() : names.stream().map(String::strip).toList();
  }

  /** What the evaluation would refuse at the end is refused at once. */
  private static void refuseUnfit(GaugeStudy.Design design) {
    boolean several = design.kind().severalOperators();
    int operators = design.operators().size();
    if (several && operators < 2) {
      throw new BadInput(
          "operators", design.operators().get(0), "is the only one", "two or more operators");
    }
    if (!several && operators > 1) {
      throw new BadInput("operators", operators, "are too many", "one operator in this study");
    }
    refuseSmall(design);
    var unused = StudySteps.of(design);
  }

  private static void refuseSmall(GaugeStudy.Design design) {
    if (!design.kind().onMasterEach() && design.parts().size() < 2) {
      String allowed = "two or more " + StudyWords.parts(design.kind()).toLowerCase(Locale.ROOT);
      throw new BadInput("parts", design.parts().size(), "is too few", allowed);
    }
    if (design.repeats() < 2) {
      throw new BadInput("repeats", design.repeats(), "shows no repeatability", "2 or more");
    }
    if (design.kind() == GaugeStudy.Kind.SPLIT && design.places().size() < 2) {
      throw new BadInput("places", design.places().size(), "is too few", "two or more places");
    }
    if (design.kind() == GaugeStudy.Kind.LINEARITY && design.parts().size() < 3) {
      throw new BadInput("masterIds", design.parts().size(), "is too few", "three or more masters");
    }
  }

  private List<Master> masters(Store store, GaugeStudy.Kind of) {
    List<Long> wanted = masterIds == null ? List.of() : masterIds;
    List<Master> found =
        store.gauges().masters().stream().filter(each -> wanted.contains(each.id())).toList();
    if (found.isEmpty() || found.size() < wanted.size()) {
      throw new BadInput("masterIds", wanted, "are not known", "ids from the list of masters");
    }
    if (of != GaugeStudy.Kind.LINEARITY && found.size() > 1) {
      throw new BadInput("masterIds", wanted, "are several", "one master in this study");
    }
    if (found.stream().map(Master::face).distinct().count() > 1) {
      throw new BadInput("masterIds", wanted, "have different faces", "masters of one face");
    }
    return found;
  }

  private GaugeStudy.Subject subject(Store store, List<Master> masters) {
    boolean needed = masters.isEmpty() || kind == GaugeStudy.Kind.TYPE1;
    if (needed && jobId == null) {
      throw new BadInput("jobId", "", "is missing", "the job whose section and limits apply");
    }
    Job job = jobId == null ? null : store.jobs().find(jobId).orElse(null);
    if (jobId != null && job == null) {
      throw new BadInput("jobId", jobId, "does not exist", "the number of a job");
    }
    return masters.isEmpty() ? ofPieces(Objects.requireNonNull(job)) : ofMasters(masters, job);
  }

  private static GaugeStudy.Subject ofPieces(Job job) {
    return new GaugeStudy.Subject(
        job.section(), job.measuredFace(), job.specification(), List.of());
  }

  /** Limits of a job as far from the master as they are from the job's target. */
  private static GaugeStudy.Subject ofMasters(List<Master> masters, @Nullable Job job) {
    Master first = masters.get(0);
    double radius = first.radiusMm();
    Double lower = job == null ? null : job.specification().lowerLimitMm();
    Double upper = job == null ? null : job.specification().upperLimitMm();
    double target = job == null ? radius : job.specification().targetMm();
    return new GaugeStudy.Subject(
        new Section.Flat(1, 1),
        first.face(),
        new Specification(
            first.face(),
            radius,
            lower == null ? null : (Double) (lower - target + radius),
            upper == null ? null : (Double) (upper - target + radius)),
        masters);
  }
}
