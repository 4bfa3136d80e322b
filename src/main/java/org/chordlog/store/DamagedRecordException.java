package org.chordlog.store;

/** The record that was asked for is there and can't be read; all others can. */
public final class DamagedRecordException extends StoreException {
  private static final long serialVersionUID = 1L;

  public DamagedRecordException(String message) {
    super(message, null);
  }
}
