package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Objects;
import java.util.function.Function;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.jspecify.annotations.Nullable;

/** What a job is made or changed from; {@code why} is needed to change one. */
record JobForm(
    @Needed @Nullable String name,
    @Nullable String part,
    @Nullable String machine,
    @Needed @Nullable String station,
    @Needed @Nullable SectionForm section,
    @Nullable String materialLot,
    @Needed @Nullable Face measuredFace,
    @Needed @Nullable SpecificationForm specification,
    @Needed @Nullable PlanForm plan,
    @Nullable DetailsForm details,
    @JsonPropertyDescription(
            "true: what was found doubtful is meant so (else 400, kind /problems/doubtful)")
        @Nullable Boolean confirmed,
    @Nullable String why,
    @JsonPropertyDescription(
            "true: 409 where another job has this name; left out: repeat orders may have it")
        @Nullable Boolean unlessNamed) {
  private static final int LONGEST = 200;

  /** A job with that id, state and opening time; refuses with every fault there is. */
  Job job(long id, Job.State state, long openedAtMicros, JobStation stations) {
    Faults faults = new Faults();
    String checkedName = text(faults, "name", name);
    String checkedStation = text(faults, "station", station);
    String checkedMachine = stations.machine(faults, checkedStation, machine);
    Section madeSection = part(faults, "section", section, SectionForm::section);
    Specification made =
        part(faults, "specification", specification, SpecificationForm::specification);
    Plan madePlan = part(faults, "plan", plan, PlanForm::plan);
    Face face = faults.needed("measuredFace", measuredFace, "outer, inner");
    if (face == Face.CENTRELINE) {
      faults.add("measuredFace", face, "can't carry a bridge", "outer, inner");
    }
    OrderDetails order = order(faults);
    faults.refuse();
    Job job =
        new Job(
                id,
                0,
                new Job.Order(
                    checkedName,
                    Objects.requireNonNullElse(part, ""),
                    Objects.requireNonNullElse(materialLot, "")),
                new Job.Workplace(checkedMachine, checkedStation),
                new Job.Inspection(
                    Objects.requireNonNull(madeSection),
                    Objects.requireNonNull(face),
                    Objects.requireNonNull(made),
                    Objects.requireNonNull(madePlan)),
                state,
                openedAtMicros)
            .withDetails(order);
    stations.refuseImpossible(job);
    if (!Boolean.TRUE.equals(confirmed)) {
      JobDoubts.of(job).ask();
    }
    return job;
  }

  /** Whether a name that another job has is to be asked about. */
  boolean asksForNamesakes() {
    return Boolean.TRUE.equals(unlessNamed);
  }

  private OrderDetails order(Faults faults) {
    DetailsForm form = details;
    OrderDetails made = form == null ? null : faults.made("details.", form::details);
    return made == null ? OrderDetails.NONE : made;
  }

  private static String text(Faults faults, String field, @Nullable String value) {
    if (value == null || value.isBlank() || value.length() > LONGEST) {
      String given = value == null ? "" : value;
      faults.add(
          field, given, given.isBlank() ? "is missing" : "is too long", "1 to 200 characters");
      return "";
    }
    return value.strip();
  }

  private static <F, T> @Nullable T part(
      Faults faults, String field, @Nullable F form, Function<F, T> maker) {
    if (form == null) {
      faults.add(field, "", "is missing", "an object");
      return null;
    }
    return faults.made(field + ".", () -> maker.apply(form));
  }
}
