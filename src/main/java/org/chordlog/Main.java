package org.chordlog;

import org.chordlog.cli.Chordlog;
import org.chordlog.cli.common.NativeFolder;

/** Starts the command line. */
public final class Main {
  private Main() {}

  public static void main(String[] arguments) {
    NativeFolder.use();
    System.exit(Chordlog.run(arguments));
  }
}
