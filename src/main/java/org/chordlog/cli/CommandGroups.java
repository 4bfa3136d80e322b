package org.chordlog.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Column;
import picocli.CommandLine.Help.TextTable;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The commands by task, as the help of the program lists them. */
final class CommandGroups {
  static final Map<String, List<String>> BY_TASK = byTask();
  private static final int INDENT = 2;
  private static final int NAME = 13;

  private CommandGroups() {}

  private static Map<String, List<String>> byTask() {
    Map<String, List<String>> tasks = new LinkedHashMap<>();
    tasks.put("Start", List.of("serve", "demo", "simulate"));
    tasks.put("Connect an indicator", List.of("ports", "listen"));
    tasks.put(
        "Look after the gauge",
        List.of(
            "zero", "masters", "calibrate", "calibrations", "check", "trigger", "span", "study"));
    tasks.put("Radius and rollers", List.of("radius", "profile", "advise", "close"));
    tasks.put("Statistics and records", List.of("analyse", "report", "export"));
    tasks.put("Look after the data", List.of("backup", "restore", "recompute", "audit", "verify"));
    tasks.put("Look after people and programs", List.of("account", "alerts"));
    tasks.put("Several workshop computers", List.of("plant", "forward"));
    return tasks;
  }

  /** Lists the commands of the program itself by task. */
  static void applyTo(CommandLine program) {
    program.getHelpSectionMap().put(UsageMessageSpec.SECTION_KEY_COMMAND_LIST, CommandGroups::list);
    program.getHelpSectionMap().remove(UsageMessageSpec.SECTION_KEY_COMMAND_LIST_HEADING);
  }

  private static String list(Help help) {
    StringBuilder text = new StringBuilder();
    BY_TASK.forEach(
        (task, names) -> {
          text.append('\n').append(task).append(":\n");
          text.append(table(help, names));
        });
    return text.append('\n').toString();
  }

  private static String table(Help help, List<String> names) {
    int width = help.commandSpec().usageMessage().width();
    TextTable table =
        TextTable.forColumns(
            help.colorScheme(),
            new Column(NAME, INDENT, Column.Overflow.SPAN),
            new Column(width - NAME, INDENT, Column.Overflow.WRAP));
    names.forEach(name -> table.addRowValues(name, summary(help, name)));
    return table.toString();
  }

  private static String summary(Help help, String name) {
    String[] description =
        Objects.requireNonNull(help.subcommands().get(name))
            .commandSpec()
            .usageMessage()
            .description();
    return description.length == 0 ? "" : String.format(Locale.ROOT, description[0]);
  }
}
