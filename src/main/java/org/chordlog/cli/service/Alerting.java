package org.chordlog.cli.service;

import java.nio.file.Path;
import java.util.List;
import org.chordlog.notify.AlertWatch;
import org.chordlog.store.SealExpected;
import org.chordlog.store.StoreFiles;
import org.chordlog.store.open.Stores;

/** How alerts are watched for: in which rounds, and where the backups and the record are known. */
record Alerting(AlertWatch.Times times, StoreFiles files) {
  /** Of the store in that directory. */
  static Alerting of(Path data, AlertWatch.Times times) {
    return new Alerting(times, Stores.files(data));
  }

  /** A sentence for each fault of the chain of hashes; reads everything that is sealed. */
  List<String> audit() {
    return files.auditSeal(SealExpected.NOTHING).faults();
  }
}
