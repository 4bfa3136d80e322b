package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.SignalAnswer;

/** What people found and did about signals of charts; append-only. */
public interface SignalAnswers {
  /**
   * Stores an answer under a new id. Throws {@link org.chordlog.measure.BadInput} when the reading
   * is not one of that job.
   */
  SignalAnswer add(SignalAnswer answer);

  /** Answers of a job with id above {@code afterId}, ascending; the last one of a point counts. */
  List<SignalAnswer> ofJob(long jobId, long afterId);

  /** Those that count in the jobs of a machine, the newest first. */
  List<SignalAnswer> ofMachine(String machine, int limit);
}
