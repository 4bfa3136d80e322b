package org.chordlog;

import org.chordlog.cli.Chordlog;
import org.chordlog.cli.common.NativeFolder;
import org.chordlog.cli.common.OutputCharset;

/** Starts the command line. */
public final class Main {
  private Main() {}

  public static void main(String[] arguments) {
    NativeFolder.use();
    OutputCharset.use();
    System.exit(Chordlog.run(arguments));
  }
}
