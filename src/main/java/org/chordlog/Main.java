package org.chordlog;

import org.chordlog.cli.Chordlog;

/** Starts the command line. */
public final class Main {
  private Main() {}

  public static void main(String[] arguments) {
    System.exit(Chordlog.run(arguments));
  }
}
