package org.chordlog.cli.common;

/** What a command ends with. */
public final class ExitCode {
  public static final int WELL = 0;
  public static final int FAULT = 1;
  public static final int BAD_INPUT = 2;

  /** As the JVM's own option ExitOnOutOfMemoryError ends it. */
  public static final int OUT_OF_MEMORY = 3;

  private ExitCode() {}
}
