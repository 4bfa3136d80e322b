package org.chordlog.link;

/** Where the bytes come from: one record for each {@link LinkKind}. */
public sealed interface LinkSettings permits SerialSettings, TcpSettings, ReplaySettings {
  /** One answer for each kind of link, so that a new kind is missed nowhere. */
  interface Cases<T> {
    T serial(SerialSettings serial);

    T tcp(TcpSettings tcp);

    T replay(ReplaySettings replay);
  }

  /** The answer for this kind. */
  <T> T match(Cases<T> cases);

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

  /** Whether two stations may read it at once, as they may a recording. */
  default boolean shareable() {
    return false;
  }
}
