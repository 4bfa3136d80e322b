package org.chordlog.store;

/**
 * The newest entry of a database's chain of hashes: everything recorded up to it is fixed by this
 * hash (64 hexadecimal digits). Sequence 0: nothing was recorded yet.
 */
public record SealTip(String database, long seq, String hash) {
  /** SEQ:HASH, as an audit takes it. */
  public String anchor() {
    return seq + ":" + hash;
  }
}
