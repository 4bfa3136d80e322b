package org.chordlog.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Reading;
import org.chordlog.stats.drift.DriftSnapshot;
import org.chordlog.stats.drift.DriftSnapshot.Mark;
import org.chordlog.store.Logbooks;
import org.chordlog.store.Readings;
import org.chordlog.verdict.Words;

/** Where settings, work, lots and jobs of a machine belong among its pieces, by their times. */
final class MachineMarks {
  private final List<DriftSnapshot.BlockMean> pieces;
  private final List<Mark> marks = new ArrayList<>();

  private MachineMarks(DriftSnapshot drift) {
    pieces = drift.jobs();
  }

  static DriftSnapshot on(
      DriftSnapshot drift,
      List<JobEvent> events,
      List<Logbooks.Listed> work,
      List<Job> jobs,
      Readings readings) {
    MachineMarks made = new MachineMarks(drift);
    events.stream().filter(JobEvent::startsPhase).forEach(made::happened);
    work.stream().filter(MachineMarks::holds).map(Logbooks.Listed::entry).forEach(made::done);
    for (Job job : jobs) {
      readings.ofJob(job.id(), 0, 1).forEach(first -> made.begins(job, first));
    }
    made.marks.sort(Comparator.comparingDouble(Mark::pieces));
    return drift.withMarks(made.marks);
  }

  private void happened(JobEvent event) {
    place(event.atMicros())
        .ifPresent(
            at -> marks.add(new Mark(at, Mark.Kind.valueOf(event.kind().name()), words(event))));
  }

  private static boolean holds(Logbooks.Listed each) {
    return each.correctedById() == null && each.entry().tellsOfWork();
  }

  private void done(LogbookEntry entry) {
    place(entry.done().atMicros())
        .ifPresent(at -> marks.add(new Mark(at, Mark.Kind.WORK, Words.of(entry.work()))));
  }

  private void begins(Job job, Reading first) {
    place(first.wallMicros()).ifPresent(at -> marks.add(new Mark(at, Mark.Kind.JOB, job.name())));
  }

  /** Halfway between the pieces before and after that time; none before the first one shown. */
  private OptionalDouble place(long micros) {
    int after = 0;
    while (after < pieces.size() && pieces.get(after).atMicros() < micros) {
      after++;
    }
    if (after == 0) {
      boolean first = !pieces.isEmpty() && pieces.get(0).atMicros() == micros;
      return first ? OptionalDouble.of(pieces.get(0).pieces() - 0.5) : OptionalDouble.empty();
    }
    double before = pieces.get(after - 1).pieces();
    double next = after < pieces.size() ? pieces.get(after).pieces() : before + 1;
    return OptionalDouble.of((before + next) / 2);
  }

  private static String words(JobEvent event) {
    Double from = event.settingBefore();
    Double to = event.settingAfter();
    String setting =
        from == null || to == null ? "" : Decimals.setting(from) + " to " + Decimals.setting(to);
    return Stream.of(setting, event.materialLot(), event.note())
        .filter(each -> !each.isEmpty())
        .collect(Collectors.joining("; "));
  }
}
