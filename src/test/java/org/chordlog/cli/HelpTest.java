package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** What the command line says of itself, and of what was typed wrongly. */
final class HelpTest {
  private static final int LONGEST_LINE = 80;

  /** Made once, since to make every command takes time. */
  private static final CommandLine ALL = Chordlog.commandLine();

  static Stream<String> commands() {
    return ALL.getSubcommands().keySet().stream();
  }

  @Test
  void everyCommandIsListedUnderOneTask() {
    List<String> listed =
        CommandGroups.BY_TASK.values().stream().flatMap(Collection::stream).toList();
    assertEquals(listed.size(), listed.stream().distinct().count());
    Map<String, CommandLine> all = ALL.getSubcommands();
    assertEquals(new TreeSet<>(all.keySet()), new TreeSet<>(listed));
    String help = ALL.getUsageMessage();
    CommandGroups.BY_TASK.keySet().forEach(task -> assertTrue(help.contains(task + ":"), help));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void theHelpOfACommandBeginsWithASentenceAndTellsItsExitCodes(String name) {
    CommandLine command = Objects.requireNonNull(ALL.getSubcommands().get(name));
    String first = command.getCommandSpec().usageMessage().description()[0];
    assertTrue(first.endsWith("."), first);
    String help = command.getUsageMessage();
    assertTrue(help.contains("Exit codes:"), help);
    assertTrue(help.lines().allMatch(line -> line.length() <= LONGEST_LINE), help);
  }

  /** A start makes the command alone that is typed. */
  @ParameterizedTest
  @MethodSource("commands")
  void aCommandThatIsMadeAloneIsTheSame(String name) {
    Map<String, CommandLine> alone = Chordlog.commandLine(name, "--help").getSubcommands();
    assertEquals(List.of(name), List.copyOf(alone.keySet()));
    CommandLine among = Objects.requireNonNull(ALL.getSubcommands().get(name));
    assertEquals(
        among.getUsageMessage(), Objects.requireNonNull(alone.get(name)).getUsageMessage());
  }

  /** The library breaks lines behind a colon, that of an address and of a time too. */
  @ParameterizedTest
  @MethodSource("withTheirOwn")
  void anAddressOrATimeIsOnOneLine(String name, CommandLine command) {
    String help = command.getUsageMessage();
    assertTrue(
        help.lines().noneMatch(line -> line.matches(".*(http|[0-9]{2}|\\.[0-9]):")), name + help);
  }

  /** What the code calls a value is nobody's business. */
  @ParameterizedTest
  @MethodSource("withTheirOwn")
  void everyValueHasANameForPeople(String name, CommandLine command) {
    List<String> unnamed =
        command.getCommandSpec().args().stream()
            .filter(each -> each.arity().max() > 0)
            .map(ArgSpec::paramLabel)
            .filter(label -> label.startsWith("<"))
            .toList();
    assertEquals(List.of(), unnamed, name);
  }

  private static Stream<Arguments> withTheirOwn() {
    return ALL.getSubcommands().values().stream()
        .flatMap(each -> Stream.concat(Stream.of(each), each.getSubcommands().values().stream()))
        .map(each -> Arguments.of(each.getCommandSpec().qualifiedName(), each));
  }

  /**
   * A line that breaks by itself within a sentence leaves a short one where it is wrapped again.
   */
  @ParameterizedTest
  @MethodSource("commands")
  void textsAreDividedBetweenSentencesOnly(String name) {
    CommandLine command = Objects.requireNonNull(ALL.getSubcommands().get(name));
    Stream<String[]> options =
        command.getCommandSpec().options().stream().map(OptionSpec::description);
    List<String> cut =
        Stream.concat(
                Stream.<String[]>of(command.getCommandSpec().usageMessage().description()), options)
            .flatMap(HelpTest::beforeOthers)
            .filter(line -> !line.isBlank() && !line.matches("(?s) .*|.*[.:;}]"))
            .toList();
    assertEquals(List.of(), cut);
  }

  private static Stream<String> beforeOthers(String[] lines) {
    return Stream.of(lines).limit(Math.max(0, lines.length - 1));
  }

  /** The library warns on the standard error stream of a text that it can't format. */
  @ParameterizedTest
  @MethodSource("commands")
  void helpIsPrintedWithoutAWarning(String name) {
    PrintStream before = System.err;
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
    try {
      assertEquals(
          0,
          Chordlog.commandLine(name)
              .setOut(new PrintWriter(new StringWriter()))
              .execute(name, "--help"));
    } finally {
      System.setErr(before);
    }
    assertEquals("", said.toString(StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "seve|There is no command or argument 'seve'; did you mean serve|chordlog --help",
        "nonsense|There is no command or argument 'nonsense'.|chordlog --help",
        "radius --span 200 --deph 3|There is no option '--deph'; did you mean|chordlog radius --help",
        "radius --depth 3|Missing required option: '--span=L'|chordlog radius --help",
        "serve --port abc|--port: 'abc' is not a whole number|chordlog serve --help",
        "radius --unit foot --depth 3 --span 200|--unit: 'foot' is not one of mm, inch|radius --help"
      })
  void aMistakeIsToldInOneLineWithAHint(String typed, String told, String hint) {
    StringWriter err = new StringWriter();
    CommandLine program = Chordlog.commandLine().setErr(new PrintWriter(err));
    assertEquals(2, program.execute(typed.split(" ")));
    List<String> lines = err.toString().lines().toList();
    assertEquals(2, lines.size(), err::toString);
    assertTrue(lines.get(0).startsWith(told), err::toString);
    assertTrue(lines.get(1).contains(hint), err::toString);
  }
}
