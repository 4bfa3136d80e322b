package org.chordlog;

import java.util.Locale;
import org.chordlog.cli.Chordlog;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.LostLetters;
import org.chordlog.cli.common.NativeFolder;
import org.chordlog.cli.common.OutputCharset;

/** Starts the command line. */
public final class Main {
  private Main() {}

  /** All that is written is English, with digits 0 to 9, whatever the computer's language is. */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ENGLISH);
    NativeFolder.use();
    OutputCharset.use();
    LostLetters.in(arguments).ifPresent(Main::refuse);
    System.exit(told(Chordlog.run(arguments)));
  }

  /** What is cut off, as on a full disk, is not "done, and nothing is wrong". */
  private static int told(int code) {
    if (!System.out.checkError()) {
      return code;
    }
    System.err.println(
        "Not all could be written: standard output was closed, or its disk is full.");
    return code == ExitCode.WELL ? ExitCode.FAULT : code;
  }

  private static void refuse(String fault) {
    System.err.println(fault);
    System.exit(ExitCode.BAD_INPUT);
  }
}
