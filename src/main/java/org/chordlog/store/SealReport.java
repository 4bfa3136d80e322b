package org.chordlog.store;

import java.util.List;

/**
 * What an audit of the chain of hashes found: its newest entry, the key that signed the newest
 * checkpoint, a sentence for each fault, and what is worth knowing though nothing is wrong.
 */
public record SealReport(
    SealTip newest, String keyFingerprint, List<String> faults, List<String> notes) {
  public SealReport {
    faults = List.copyOf(faults);
    notes = List.copyOf(notes);
  }
}
