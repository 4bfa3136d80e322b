package org.chordlog.notify;

/** Looks at a part of what is watched, on the watch's thread. */
interface Round {
  void run(long atMicros);
}
