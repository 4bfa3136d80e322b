package org.chordlog.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Objects;
import java.util.stream.Stream;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.correction.Advise;
import org.chordlog.cli.correction.Close;
import org.chordlog.cli.device.Listen;
import org.chordlog.cli.device.Ports;
import org.chordlog.cli.device.Simulate;
import org.chordlog.cli.gauge.ProfileCommand;
import org.chordlog.cli.gauge.Radius;
import org.chordlog.cli.gauge.Span;
import org.chordlog.cli.records.Audit;
import org.chordlog.cli.records.Backup;
import org.chordlog.cli.records.Export;
import org.chordlog.cli.records.Recompute;
import org.chordlog.cli.records.Report;
import org.chordlog.cli.records.Restore;
import org.chordlog.cli.records.Verify;
import org.chordlog.cli.service.AlertsCommand;
import org.chordlog.cli.service.Demo;
import org.chordlog.cli.service.ForwardCommand;
import org.chordlog.cli.service.PlantCommand;
import org.chordlog.cli.service.Serve;
import org.chordlog.cli.station.AccountCommand;
import org.chordlog.cli.station.Calibrate;
import org.chordlog.cli.station.CalibrationsCommand;
import org.chordlog.cli.station.CheckMaster;
import org.chordlog.cli.station.MastersCommand;
import org.chordlog.cli.station.TakeZero;
import org.chordlog.cli.station.Trigger;
import org.chordlog.cli.statistics.Analyse;
import org.chordlog.cli.study.Study;
import org.chordlog.link.LinkException;
import org.chordlog.measure.BadInput;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** The command line. */
@Command(
    subcommands = {
      Serve.class,
      Demo.class,
      Simulate.class,
      Radius.class,
      ProfileCommand.class,
      Span.class,
      TakeZero.class,
      Trigger.class,
      Calibrate.class,
      CheckMaster.class,
      MastersCommand.class,
      CalibrationsCommand.class,
      Report.class,
      Analyse.class,
      Study.class,
      Advise.class,
      Close.class,
      Listen.class,
      Export.class,
      Backup.class,
      Restore.class,
      Recompute.class,
      Audit.class,
      Verify.class,
      Ports.class,
      AccountCommand.class,
      AlertsCommand.class,
      PlantCommand.class,
      ForwardCommand.class
    })
public final class Chordlog extends Program {
  public static int run(String... arguments) {
    return commandLine(arguments).execute(arguments);
  }

  /** With every command. */
  public static CommandLine commandLine() {
    return described(new CommandLine(new Chordlog()));
  }

  /** For these words: with the command alone that they begin with, since to make all takes time. */
  public static CommandLine commandLine(String... words) {
    return Stream.of(annotation(Chordlog.class).subcommands())
        .filter(each -> words.length > 0 && words[0].equals(annotation(each).name()))
        .map(each -> described(new CommandLine(new Program()).addSubcommand(each)))
        .findFirst()
        .orElseGet(Chordlog::commandLine);
  }

  private static Command annotation(Class<?> command) {
    return Objects.requireNonNull(command.getAnnotation(Command.class));
  }

  private static CommandLine described(CommandLine program) {
    CommandGroups.applyTo(program);
    ExitCodes.describeIn(program);
    ITypeConverter<Double> finite = Chordlog::finite;
    return program
        .registerConverter(Path.class, Chordlog::path)
        .registerConverter(double.class, finite)
        .registerConverter(Double.class, finite)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setParameterExceptionHandler(Mistakes::tell)
        .setExitCodeExceptionMapper(e -> isBadInput(e) ? ExitCode.BAD_INPUT : ExitCode.FAULT)
        .setExecutionExceptionHandler((e, line, result) -> report(e, line));
  }

  /** A script's variable that is empty would mean the folder in which the command runs. */
  private static Path path(String typed) {
    if (typed.isBlank()) {
      throw new TypeConversionException("no name");
    }
    return Path.of(typed);
  }

  private static double finite(String text) {
    double number = Double.parseDouble(text);
    if (!Double.isFinite(number)) {
      throw new NumberFormatException("not finite");
    }
    return number;
  }

  private static boolean isBadInput(Throwable e) {
    return e instanceof BadInput || e instanceof ParameterException;
  }

  private static int report(Exception e, CommandLine line) {
    PrintWriter err = line.getErr();
    err.println(message(e, line));
    if (e instanceof LinkException link && link.reason() == LinkException.Reason.MISSING) {
      err.println("`chordlog ports` lists what is there.");
    }
    if (root(line).debug()) {
      e.printStackTrace(err);
    }
    return line.getExitCodeExceptionMapper().getExitCode(e);
  }

  private static String message(Exception e, CommandLine line) {
    if (e instanceof BadInput refusal) {
      return String.valueOf(OptionNames.as(line.getParseResult(), refusal).getMessage());
    }
    String message = e.getMessage();
    return message == null ? e.toString() : message;
  }

  private static Program root(CommandLine line) {
    return (Program) line.getCommandSpec().root().userObject();
  }
}
