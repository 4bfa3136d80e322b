package org.chordlog.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.measure.NumberText;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What the user typed wrongly: one line, and one that says where to look. */
final class Mistakes {
  private Mistakes() {}

  /** As a handler of the library's: whatever was typed is in the mistake. */
  static int tell(ParameterException mistake, String... ignored) {
    CommandLine command = mistake.getCommandLine();
    PrintWriter err = command.getErr();
    err.println(words(mistake));
    err.println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    return ExitCode.BAD_INPUT;
  }

  private static String words(ParameterException mistake) {
    if (mistake instanceof UnmatchedArgumentException unmatched) {
      return unknown(unmatched);
    }
    ArgSpec argument = mistake.getArgSpec();
    String value = mistake.getValue();
    String problem = argument == null || value == null ? "" : problem(argument.type(), value);
    return problem.isEmpty()
        ? String.valueOf(mistake.getMessage())
        : name(argument) + ": '" + value + "' " + problem;
  }

  /** Empty where the type says nothing that a user understands. */
  private static String problem(Class<?> type, String value) {
    if (type.isEnum()) {
      return "is not one of " + choices(type);
    }
    if (type == int.class || type == long.class || type == Integer.class || type == Long.class) {
      return value.matches("[-+]?\\d+") ? "is too large" : "is not a whole number";
    }
    if (type == Path.class) {
      return "is not the name of a file or folder";
    }
    if (type == ZoneId.class) {
      return "is not a time zone, as Europe/London or UTC";
    }
    return type == double.class || type == Double.class ? NumberText.problem(value) : "";
  }

  private static String choices(Class<?> type) {
    return Stream.of(type.getEnumConstants())
        .map(each -> each.toString().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", "));
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
  }

  private static String unknown(UnmatchedArgumentException mistake) {
    String given = mistake.getUnmatched().get(0);
    String kind = given.startsWith("-") ? "option" : "command or argument";
    String known = "There is no " + kind + " '" + given + "'";
    List<String> near = Spelling.near(given, mistake.getSuggestions());
    return known + (near.isEmpty() ? "." : "; did you mean " + String.join(", ", near) + "?");
  }
}
