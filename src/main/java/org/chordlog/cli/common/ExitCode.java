package org.chordlog.cli.common;

/** What a command ends with. */
public final class ExitCode {
  public static final int WELL = 0;
  public static final int FAULT = 1;
  public static final int BAD_INPUT = 2;

  private ExitCode() {}
}
