package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.UnreadableRecord;
import org.chordlog.verdict.JobVerdict;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.Tone;
import org.chordlog.verdict.Words;

/** What of a job needs someone's attention, the most pressing first. */
record Attention(
    long jobId,
    @JsonPropertyDescription("the higher, the more pressing; 0: nothing") int weight,
    List<String> words) {
  private static final int DAMAGED = 200;
  private static final int NOT_CONFORMING = 100;
  private static final int SIGNAL = 50;
  private static final int NOT_CAPABLE = 20;
  private static final int UNDECIDED = 10;

  /** Gathers the findings of one job; a kind weighs once, at however many positions. */
  private static final class Findings {
    private final List<String> words = new ArrayList<>();
    private final Set<Integer> weights = new HashSet<>();

    void add(int weight, String text) {
      weights.add(weight);
      words.add(text);
    }

    int weight() {
      return weights.stream().mapToInt(Integer::intValue).sum();
    }
  }

  /** A job of which nothing can be read. */
  static Attention lost(UnreadableRecord job) {
    return new Attention(job.jobId(), DAMAGED, List.of(Capital.of(job.sentence()) + "."));
  }

  static Attention notJudged(Job job, String why) {
    return new Attention(job.id(), DAMAGED, List.of("Its statistics can't be made: " + why + "."));
  }

  /** The same with those damaged records that belong to this job. */
  Attention with(List<UnreadableRecord> damaged) {
    List<String> all =
        Stream.concat(
                damaged.stream()
                    .filter(each -> each.jobId() == jobId)
                    .map(each -> Capital.of(each.sentence()) + "."),
                words.stream())
            .toList();
    return all.size() == words.size() ? this : new Attention(jobId, weight + DAMAGED, all);
  }

  static Attention of(Job job, Optional<ReadingView> newest, JobStatistics statistics) {
    Findings findings = new Findings();
    newest.ifPresent(reading -> decision(reading, findings));
    List<String> names = statistics.characteristics();
    for (String name : names) {
      String where = names.size() > 1 ? " (" + name + ")" : "";
      judged(verdict(job, statistics, name), where, findings);
    }
    return new Attention(job.id(), findings.weight(), findings.words);
  }

  private static JobVerdict verdict(Job job, JobStatistics statistics, String name) {
    return new JobVerdict(
        statistics.summary(name, Scope.PHASE), statistics.control(name), job.specification());
  }

  private static void judged(JobVerdict verdict, String where, Findings findings) {
    if (verdict.control().tone() == Tone.OPEN) {
      findings.add(SIGNAL, said(verdict.control(), where));
    }
    if (verdict.capability().tone() == Tone.BAD) {
      findings.add(NOT_CAPABLE, said(verdict.capability(), where));
    }
  }

  private static String said(Statement statement, String where) {
    return statement.word() + where + ": " + statement.reason();
  }

  private static void decision(ReadingView reading, Findings findings) {
    String which = "Newest reading (piece " + reading.piece() + ", " + reading.position() + "): ";
    String word = Words.of(reading.decision()).toLowerCase(Locale.ROOT) + ".";
    if (reading.decision() == Decision.DOES_NOT_CONFORM) {
      findings.add(NOT_CONFORMING, which + word);
    } else if (reading.decision() == Decision.UNDECIDED) {
      findings.add(UNDECIDED, which + word);
    }
  }
}
