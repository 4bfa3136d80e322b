package org.chordlog.cli;

import java.io.PrintWriter;
import org.chordlog.measure.BadInput;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command line: exit code 0 well, 1 ran and found a fault, 2 bad input. */
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
      Span.class,
      TakeZero.class,
      Trigger.class,
      Calibrate.class,
      CheckMaster.class,
      Report.class,
      Analyse.class,
      Listen.class,
      Export.class,
      Backup.class,
      Restore.class,
      Recompute.class,
      Audit.class,
      Ports.class
    })
public final class Chordlog implements Runnable {
  public static final int WELL = 0;
  public static final int FAULT = 1;
  public static final int BAD_INPUT = 2;

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "A command is needed.");
  }

  public static int run(String... arguments) {
    return commandLine().execute(arguments);
  }

  static CommandLine commandLine() {
    return new CommandLine(new Chordlog())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setExitCodeExceptionMapper(e -> isBadInput(e) ? BAD_INPUT : FAULT)
        .setExecutionExceptionHandler((e, line, result) -> report(e, line));
  }

  private static boolean isBadInput(Throwable e) {
    return e instanceof BadInput || e instanceof ParameterException;
  }

  private static int report(Exception e, CommandLine line) {
    PrintWriter err = line.getErr();
    String message = e.getMessage();
    err.println(message == null ? e.toString() : message);
    return line.getExitCodeExceptionMapper().getExitCode(e);
  }
}
