package org.chordlog.store.postgres;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Writes;

/** Refuses every change of records that an edge alone may change; the words name it. */
record WrittenAtEdge(String name) implements Writes {
  @Override
  public CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
    return CompletableFuture.failedFuture(refusal());
  }

  @Override
  public boolean append(String station, List<Sample> samples) {
    throw refusal();
  }

  @Override
  public <T> T call(Sql.Body<T> body) {
    throw refusal();
  }

  private BadInput refusal() {
    return new BadInput(
        "record",
        "of " + name,
        "can only be looked at here, at the plant",
        "a change on the workshop computer '" + name + "' itself");
  }
}
