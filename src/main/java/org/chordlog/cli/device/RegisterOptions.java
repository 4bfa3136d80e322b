package org.chordlog.cli.device;

import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.decode.RegisterBlock;
import picocli.CommandLine.Option;

/** Which registers of a Modbus RTU device are looked through. */
final class RegisterOptions {
  @Option(
      names = "--modbus",
      required = true,
      paramLabel = "DEVICE",
      description = "Look through the registers of that Modbus RTU device, 1 to 247.")
  private int device;

  @Option(
      names = "--table",
      paramLabel = "TABLE",
      defaultValue = "HOLDING",
      description = "${COMPLETION-CANDIDATES} registers (${DEFAULT-VALUE}).")
  private Table table;

  @Option(
      names = "--register",
      paramLabel = "N",
      defaultValue = "0",
      description = "First register, counted from 0 as in the frame (${DEFAULT-VALUE}).")
  private int first;

  @Option(
      names = "--count",
      paramLabel = "N",
      defaultValue = "20",
      description = "How many registers, 1 to 60 (${DEFAULT-VALUE}).")
  private int count;

  RegisterBlock block() {
    return new RegisterBlock(device, table, first, count);
  }
}
