package org.chordlog.verdict;

import java.util.Collection;
import java.util.Locale;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertSubject;

/**
 * A machine's open alert beside its status. An alert keeps what was found when it was told; the
 * status is of all pieces until now, so that it may name another piece, or nothing any more.
 */
public record AlertBesideStatus(MachineStatement now, Collection<Alert> open) {
  /** Why they differ; empty where they say the same, or there is no such alert. */
  public Sentence sentence() {
    return open.stream().anyMatch(this::differs) ? told().and(ends()) : Sentence.EMPTY;
  }

  private boolean differs(Alert alert) {
    Double told = alert.evidence().figure(AlertFigure.SINCE_PIECE);
    Long since = now.verdict().sincePiece();
    return alert.subject().type() == AlertSubject.Type.MACHINE
        && told != null
        && (since == null || since.doubleValue() != told);
  }

  private Sentence told() {
    String word = now.statement().word();
    return Sentence.plain(
        "The alert says what was found when it was told; now, after %s, the status is: %s."
            .formatted(
                Counted.of(now.verdict().pieces(), "piece"),
                word.substring(0, 1).toLowerCase(Locale.ROOT) + word.substring(1)));
  }

  private Sentence ends() {
    return now.verdict().finding() == null
        ? Sentence.plain("The alert ends once two judgements in a row find nothing that matters.")
        : Sentence.EMPTY;
  }
}
