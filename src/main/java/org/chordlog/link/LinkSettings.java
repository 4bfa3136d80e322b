package org.chordlog.link;

/** Where the bytes come from. */
public interface LinkSettings {
  /** A short name for messages, as a path or host:port. */
  String target();

  /** One attempt; the caller retries. */
  Link open() throws LinkException;

  /** A cheap look whether an attempt could succeed now; true where that can't be told. */
  default boolean present() {
    return true;
  }

  /** Whether a foot switch is wired to it. */
  default boolean hasFootSwitch() {
    return false;
  }
}
