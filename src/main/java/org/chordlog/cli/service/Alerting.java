package org.chordlog.cli.service;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.chordlog.notify.AlertWatch;
import org.chordlog.store.SealExpected;
import org.chordlog.store.open.Stores;

/** How alerts are watched for: in which rounds, and what follows the chain of hashes once a day. */
record Alerting(AlertWatch.Times times, Supplier<List<String>> audit) {
  /** Of the store in that directory. */
  static Alerting of(Path data, AlertWatch.Times times) {
    return new Alerting(times, () -> Stores.files(data).auditSeal(SealExpected.NOTHING).faults());
  }
}
