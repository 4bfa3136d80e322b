package org.chordlog.cli;

import java.io.PrintWriter;
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
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The command line. */
@Command(
    name = "chordlog",
    mixinStandardHelpOptions = true,
    version = "chordlog 0.1.0",
    description = "Reads a digital depth indicator on a bridge and keeps the radius of every bend.",
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
public final class Chordlog implements Runnable {
  @Spec private CommandSpec spec;

  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Print where in the program an error came from.")
  private boolean debug;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "A command is needed, such as serve or demo.");
  }

  public static int run(String... arguments) {
    return commandLine().execute(arguments);
  }

  public static CommandLine commandLine() {
    CommandLine program = new CommandLine(new Chordlog());
    CommandGroups.applyTo(program);
    ExitCodes.describeIn(program);
    return program
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setParameterExceptionHandler(Mistakes::tell)
        .setExitCodeExceptionMapper(e -> isBadInput(e) ? ExitCode.BAD_INPUT : ExitCode.FAULT)
        .setExecutionExceptionHandler((e, line, result) -> report(e, line));
  }

  private static boolean isBadInput(Throwable e) {
    return e instanceof BadInput || e instanceof ParameterException;
  }

  private static int report(Exception e, CommandLine line) {
    PrintWriter err = line.getErr();
    String message = e.getMessage();
    err.println(message == null ? e.toString() : message);
    if (e instanceof LinkException link && link.reason() == LinkException.Reason.MISSING) {
      err.println("`chordlog ports` lists what is there.");
    }
    if (root(line).debug) {
      e.printStackTrace(err);
    }
    return line.getExitCodeExceptionMapper().getExitCode(e);
  }

  private static Chordlog root(CommandLine line) {
    return (Chordlog) line.getCommandSpec().root().userObject();
  }
}
