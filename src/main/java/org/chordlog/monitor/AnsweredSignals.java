package org.chordlog.monitor;

import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.SignalAnswer;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.SignalKey;
import org.chordlog.store.SignalAnswers;
import org.jspecify.annotations.Nullable;

/** Signals of a job whose cause was found. */
final class AnsweredSignals {
  private AnsweredSignals() {}

  /** Of the charts of the radius. */
  static Set<SignalKey> of(SignalAnswers answers, long jobId) {
    return of(answers, jobId, null);
  }

  /** Of the charts of a measure along the pieces; null: of the radius. */
  static Set<SignalKey> of(SignalAnswers answers, long jobId, @Nullable AlongMeasure measure) {
    return answers.ofJob(jobId, 0).stream()
        .filter(each -> AlongMeasure.named(each.characteristic()).orElse(null) == measure)
        .map(AnsweredSignals::key)
        .collect(Collectors.toSet());
  }

  /** Id of the newest answer, 0 if there is none. */
  static long newest(SignalAnswers answers, long jobId) {
    return answers.ofJob(jobId, 0).stream().mapToLong(SignalAnswer::id).max().orElse(0);
  }

  private static SignalKey key(SignalAnswer answer) {
    return new SignalKey(ChartKind.valueOf(answer.chart()), answer.readingId());
  }
}
