package org.chordlog.web;

import org.chordlog.measure.Capital;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.measure.Sentence;
import org.chordlog.station.StationStatus;
import org.chordlog.verdict.Finding;
import org.chordlog.verdict.MachineStatement;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.StationIssue;
import org.chordlog.verdict.StationVerdict;
import org.chordlog.verdict.StudyAtStation;
import org.chordlog.verdict.Tone;
import org.chordlog.verdict.Words;
import org.jspecify.annotations.Nullable;

/** Brings together what is known of a station for its verdict. */
record StationJudge(StationStatus status, GaugeView gauge) {
  /** {@code last}: of the newest reading against the limits in force, null without one. */
  StationVerdict verdict(
      @Nullable Job job, @Nullable Decision last, boolean inControl, MachineStatement machine) {
    StationVerdict.Builder found = new StationVerdict.Builder();
    found.when(status.counts().droppedReadings() > 0, StationIssue.READINGS_LOST);
    link(found);
    length(found);
    doubt(found);
    gauge.attention().forEach(issue -> gauge(issue, found));
    work(job, found);
    piece(last, found);
    found.when(job != null && !inControl, StationIssue.NOT_IN_CONTROL);
    machine(job, machine, found);
    return found.build();
  }

  /** While a job runs at the station; what the rollers need says the advice. */
  private static void machine(
      @Nullable Job job, MachineStatement machine, StationVerdict.Builder found) {
    if (job != null && machine.verdict().finding() != null) {
      found.add(new Finding(StationIssue.MACHINE_MOVED, machine.statement()));
    }
  }

  private void link(StationVerdict.Builder found) {
    if (status.link() != StationStatus.LinkState.OPEN) {
      String word = linkWord(status.link());
      found.add(
          new Finding(StationIssue.LINK, new Statement(Tone.BAD, word, status.message(), "")));
    } else if (status.indicatorState() != null) {
      found.when(true, StationIssue.INDICATOR);
    }
  }

  private void length(StationVerdict.Builder found) {
    StationStatus.LengthNow now = status.length();
    String words = now == null ? "" : now.words();
    if (!words.isEmpty()) {
      Statement said = StationIssue.LENGTH.statement();
      found.add(
          new Finding(
              StationIssue.LENGTH,
              new Statement(
                  said.tone(), said.word(), Sentence.plain(Capital.of(words)), said.advice())));
    }
  }

  private void gauge(StationIssue issue, StationVerdict.Builder found) {
    ZeroView zero = gauge.zero();
    Sentence doubt = zero == null ? null : zero.doubt();
    if (issue == StationIssue.ZERO_DOUBTFUL && doubt != null) {
      Statement usual = issue.statement();
      found.add(
          new Finding(issue, new Statement(usual.tone(), usual.word(), doubt, usual.advice())));
    } else {
      found.when(true, issue);
    }
  }

  private void doubt(StationVerdict.Builder found) {
    StationStatus.InDoubt doubt = status.doubt();
    if (doubt != null) {
      String word = Words.of(doubt.kind());
      found.add(
          new Finding(
              StationIssue.STREAM_DOUBTFUL,
              new Statement(Tone.BAD, word, doubt.words(), Sentence.EMPTY)));
    }
  }

  private static String linkWord(StationStatus.LinkState link) {
    return switch (link) {
      case OPEN -> "Indicator connected";
      case WAITING -> "Waiting for the indicator";
      case UNREADABLE -> "Indicator can't be read";
      case OTHER_CHANNEL -> "Values of another channel";
      case SILENT -> "Indicator sends nothing";
      case LOST -> "Indicator lost";
      case STOPPED -> "Station stopped";
    };
  }

  /** Masters and studies are measured with a job or without one. */
  private void work(@Nullable Job job, StationVerdict.Builder found) {
    StationStatus.@Nullable StudyNow study = status.place().study();
    if (study != null) {
      found.add(StudyAtStation.finding(study.step(), study.of()));
    } else if (status.place().onMasters()) {
      found.when(true, StationIssue.ON_MASTERS);
    } else {
      job(job, found);
    }
  }

  private static void job(@Nullable Job job, StationVerdict.Builder found) {
    found.when(job == null, StationIssue.NO_JOB);
    found.when(job != null && job.state() == Job.State.CLOSED, StationIssue.JOB_CLOSED);
  }

  private static void piece(@Nullable Decision last, StationVerdict.Builder found) {
    found.when(last == Decision.DOES_NOT_CONFORM, StationIssue.OUT_OF_TOLERANCE);
    found.when(last == Decision.UNDECIDED, StationIssue.TOO_CLOSE_TO_CALL);
  }
}
