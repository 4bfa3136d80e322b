package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.measure.LengthUnit;

/** Which registers of a device hold the depth, and as what, by how they move with the plunger. */
public final class RegisterGuess {
  private static final double LEAST_STEADY = 0.5;
  private static final double REAL = 0.8;
  private static final double LOW_FIRST = 0.95;
  private static final double SINGLE = 0.9;
  private static final double UNSIGNED = 0.85;
  private static final long SWEEP_NANOS = 100_000_000;
  private final int device;
  private final Table table;
  private final List<Map<Integer, Integer>> sweeps;

  private RegisterGuess(int device, Table table, List<Map<Integer, Integer>> sweeps) {
    this.device = device;
    this.table = table;
    this.sweeps = sweeps;
  }

  /**
   * Ranked proposals, each with another reading; none while no register moves as a plunger does.
   * {@code sweeps} are the registers with their words, as read one time after another.
   */
  public static Proposals of(int device, Table table, List<Map<Integer, Integer>> sweeps) {
    RegisterGuess guess = new RegisterGuess(device, table, sweeps);
    List<Proposal> tried = new ArrayList<>();
    sweeps.stream()
        .flatMap(sweep -> sweep.keySet().stream())
        .distinct()
        .sorted()
        .forEach(register -> guess.tryAll(register, tried));
    List<Proposal> best = Proposals.ranked(tried);
    return new Proposals(best, best.isEmpty() && !sweeps.isEmpty(), sweeps.isEmpty() ? 0 : 1);
  }

  private void tryAll(int register, List<Proposal> tried) {
    for (ModbusRegisters.Type type : ModbusRegisters.Type.values()) {
      for (boolean lowFirst : new boolean[] {false, true}) {
        boolean there =
            sweeps.stream().allMatch(s -> s.keySet().containsAll(needed(register, type)));
        if (there && (type.registers() == 2 || !lowFirst)) {
          tryOne(new ModbusRegisters(device, table, register, type, lowFirst, 0, 0), tried);
        }
      }
    }
  }

  private static List<Integer> needed(int register, ModbusRegisters.Type type) {
    return type.registers() == 2 ? List.of(register, register + 1) : List.of(register);
  }

  private void tryOne(ModbusRegisters registers, List<Proposal> tried) {
    if (registers.type() == ModbusRegisters.Type.FLOAT32) {
      tried.addAll(tried(registers, NumberForm.DECIMAL, LengthUnit.MM, REAL, "the unit is mm"));
      return;
    }
    for (CountScales scale : CountScales.usual()) {
      tried.addAll(
          tried(registers, scale.counts(), scale.unit(), scale.trust(), scale.assumption()));
    }
  }

  private List<Proposal> tried(
      ModbusRegisters registers, NumberForm form, LengthUnit unit, double trust, String asked) {
    FrameProfile profile = FrameProfile.of(registers, form, unit);
    Candidate candidate =
        new Candidate(
            profile, trust * trust(registers), List.of("register " + registers.register(), asked));
    Proposal proposal = Trials.of(candidate, answers(registers), damaged -> {});
    boolean steady = proposal.confidence() >= LEAST_STEADY * candidate.trust();
    return steady ? List.of(proposal) : List.of();
  }

  private static double trust(ModbusRegisters registers) {
    double trust =
        switch (registers.type()) {
          case INT32, FLOAT32 -> 1;
          case INT16 -> SINGLE;
          case UINT32 -> UNSIGNED;
          case UINT16 -> SINGLE * UNSIGNED;
        };
    return registers.lowWordFirst() ? LOW_FIRST * trust : trust;
  }

  /** What the device would have answered to the requests of that profile. */
  private List<Arrival> answers(ModbusRegisters registers) {
    List<Arrival> answers = new ArrayList<>();
    for (Map<Integer, Integer> sweep : sweeps) {
      int count = registers.type().registers();
      int[] frame = new int[3 + 2 * count];
      frame[0] = registers.device();
      frame[1] = registers.table().function();
      frame[2] = 2 * count;
      for (int i = 0; i < count; i++) {
        int word = sweep.getOrDefault(registers.register() + i, 0);
        frame[3 + 2 * i] = word >>> 8;
        frame[4 + 2 * i] = word & 0xFF;
      }
      answers.add(new Arrival(answers.size() * SWEEP_NANOS, ModbusFrames.withCrc(frame)));
    }
    return answers;
  }
}
