package org.chordlog.store;

import org.jspecify.annotations.Nullable;

/** The store can't do what was asked: the disk is full, the file is locked or damaged. */
public class StoreException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public StoreException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
