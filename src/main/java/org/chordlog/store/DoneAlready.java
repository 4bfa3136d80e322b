package org.chordlog.store;

/** The request of that key was done under it before; nothing was done again. */
public final class DoneAlready extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public DoneAlready(RequestKey key) {
    super("the request with the key " + key.key() + " was done before");
  }
}
