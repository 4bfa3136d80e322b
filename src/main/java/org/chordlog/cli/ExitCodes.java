package org.chordlog.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import org.chordlog.cli.common.ExitCode;
import picocli.CommandLine;

/** What the exit codes mean, at the end of each command's help. */
final class ExitCodes {
  private static final Map<String, String> MEANING = meaning();

  private ExitCodes() {}

  private static Map<String, String> meaning() {
    Map<String, String> codes = new LinkedHashMap<>();
    codes.put(String.valueOf(ExitCode.WELL), "Done, and nothing is wrong.");
    codes.put(
        String.valueOf(ExitCode.FAULT),
        "Done, and something is wrong: what, is printed; or it could not be done.");
    codes.put(String.valueOf(ExitCode.BAD_INPUT), "An option, a file or a value is wrong.");
    codes.put(
        String.valueOf(ExitCode.OUT_OF_MEMORY), "Memory was used up (serve and demo end then).");
    return codes;
  }

  static void describeIn(CommandLine command) {
    command.getCommandSpec().usageMessage().exitCodeListHeading("%nExit codes:%n");
    command.getCommandSpec().usageMessage().exitCodeList(MEANING);
    command.getSubcommands().values().forEach(ExitCodes::describeIn);
  }
}
