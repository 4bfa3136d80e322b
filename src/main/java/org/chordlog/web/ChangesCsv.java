package org.chordlog.web;

import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Reading;
import org.chordlog.report.DecimalMark;
import org.chordlog.report.UtcTime;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** What happened in a job as CSV (RFC 4180), one a line, the oldest first; lengths in mm. */
public final class ChangesCsv {
  private static final String[] HEADER = {
    "job_id",
    "job",
    "time_utc",
    "wall_micros",
    "by",
    "kind",
    "what",
    "from",
    "to",
    "why",
    "reading_id",
    "piece",
    "position",
    "event",
    "setting_before",
    "setting_after",
    "material_lot"
  };

  private final Store store;
  private final DecimalMark mark;

  public ChangesCsv(Store store, DecimalMark mark) {
    this.store = store;
    this.mark = mark;
  }

  /** How many lines were written below the heading. */
  public long write(Job job, Appendable out) throws IOException {
    CSVPrinter printer = new CSVPrinter(out, mark.format());
    printer.printRecord((Object[]) HEADER);
    List<JobHappening> all = JobHistory.happened(store, job);
    for (JobHappening each : all) {
      print(printer, new Object[] {job.id(), job.name()});
      print(printer, told(each));
      print(printer, about(each));
      printer.println();
    }
    return all.size();
  }

  private void print(CSVPrinter to, @Nullable Object[] cells) throws IOException {
    for (Object cell : cells) {
      to.print(mark.cell(cell));
    }
  }

  private static Object[] told(JobHappening each) {
    return new Object[] {
      UtcTime.text(each.atMicros()),
      each.atMicros(),
      each.by(),
      each.kind(),
      each.what(),
      each.from().in(Lengths.MM),
      each.to().in(Lengths.MM),
      each.why()
    };
  }

  private static @Nullable Object[] about(JobHappening each) {
    Reading reading = each.reading();
    JobEvent event = each.event();
    return new @Nullable Object[] {
      of(reading, Reading::id),
      of(reading, Reading::piece),
      of(reading, Reading::position),
      of(event, JobEvent::kind),
      of(event, JobEvent::settingBefore),
      of(event, JobEvent::settingAfter),
      of(event, JobEvent::materialLot)
    };
  }

  private static <T> @Nullable Object of(@Nullable T thing, Function<T, @Nullable Object> part) {
    return thing == null ? null : part.apply(thing);
  }
}
