package org.chordlog.store.sqlite;

/** Daemon threads, which do not keep the process alive. */
final class Threads {
  private Threads() {}

  static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }
}
