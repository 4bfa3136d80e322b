package org.chordlog.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program itself, whatever its commands are. */
@Command(
    name = "chordlog",
    mixinStandardHelpOptions = true,
    version = "chordlog 0.1.0",
    description = "Reads a digital depth indicator on a bridge and keeps the radius of every bend.")
class Program implements Runnable {
  @Spec private CommandSpec spec;

  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "Print where in the program an error came from.")
  private boolean debug;

  final boolean debug() {
    return debug;
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "A command is needed, such as serve or demo.");
  }
}
