package org.chordlog.bench;

import java.util.Locale;
import java.util.stream.IntStream;
import org.chordlog.bench.MachineRates.Course;
import org.chordlog.bench.MachineRates.Said;
import org.chordlog.stats.drift.MachineVerdict.State;

/**
 * How often the verdicts on a job and on a machine raise a false alarm, and how often they find
 * what is there: simulated, seeded, each rate with its standard error and counts. The argument
 * scales the counts (1: about 4 minutes of one core).
 */
public final class VerdictRates {
  private static final int[] SIZES = {1, 2, 3, 5, 10};
  private static final int[] LENGTHS = {25, 50, 100, 200, 500, 1000, 2000};
  private final double scale;

  private VerdictRates(double scale) {
    this.scale = scale;
  }

  public static void main(String[] arguments) {
    VerdictRates rates =
        new VerdictRates(arguments.length > 0 ? Double.parseDouble(arguments[0]) : 1);
    rates.jobs();
    rates.longJobs();
    rates.otherJobs();
    rates.steadyMachines();
    rates.creepingMachines();
    rates.jumpedMachines();
  }

  private int times(int count) {
    return (int) Math.max(10, Math.round(scale * count));
  }

  private static void say(String format, Object... values) {
    System.out.printf(Locale.ROOT, format + "%n", values);
  }

  private void jobs() {
    say("Job: looks that say \"not in control\" (steady: at most 5 %%), and changes found");
    for (int size : SIZES) {
      JobRates rates = new JobRates(size, 0);
      Rate[] steady = rates.steady(times(5000), 1, LENGTHS);
      for (int i = 0; i < LENGTHS.length; i++) {
        say("  subgroups of %d, steady, %d readings: %s", size, LENGTHS[i], steady[i]);
      }
      for (int before : new int[] {25, 100}) {
        say(
            "  subgroups of %d, shift of 1.5 after %d points, within 12: %s",
            size, before, rates.found(times(5000), 2, before, 12, point -> 1.5));
      }
      say(
          "  subgroups of %d, creep of 1 in 20 points after 25, within 40: %s",
          size, rates.found(times(5000), 3, 25, 40, point -> 0.05 * point));
    }
  }

  private void longJobs() {
    int[] lengths = IntStream.rangeClosed(1, 10).map(part -> 10_000 * part).toArray();
    for (int size : new int[] {1, 5}) {
      Rate[] steady = new JobRates(size, 0).steady(times(200), 4, lengths);
      for (int i = 0; i < lengths.length; i++) {
        say("  subgroups of %d, steady, %d readings: %s", size, lengths[i], steady[i]);
      }
    }
  }

  /** What the stated rate does not hold for, and what else is found. */
  private void otherJobs() {
    for (double correlation : new double[] {0.2, 0.4}) {
      say(
          "  single readings, neighbours correlated by %.1f, steady, 200 readings: %s",
          correlation, new JobRates(1, correlation).steady(times(2000), 5, 200)[0]);
    }
    for (int size : new int[] {1, 5}) {
      say(
          "  subgroups of %d, scatter twice as large after 50 points, within 12: %s",
          size, new JobRates(size, 0).found(times(2000), 6, 50, 12, point -> 0, 2));
    }
  }

  private void steadyMachines() {
    say("Machine: verdicts that are not steady on a steady machine (at most 1 %%)");
    for (int pieces : new int[] {15, 60, 150, 300}) {
      Said said = MachineRates.looks(Course.steady(), times(2000), 1, pieces, pieces, 1);
      say("  %d pieces: %s", pieces, said.notSteady());
    }
    for (int every : new int[] {12, 25, 50}) {
      Course course = Course.steady().correctedEach(every);
      Said said = MachineRates.looks(course, times(500), 2, 45, 245, 50);
      say("  corrected each %d pieces, 5 looks: %s", every, said.notSteady());
    }
    Course tampered = Course.steady().correctedWhenOff(0.8);
    Said said = MachineRates.looks(tampered, times(500), 3, 45, 245, 50);
    say("  corrected when five are off by 0.8, 5 looks: %s", said.notSteady());
    Course lot = Course.stepping(0, "B");
    say(
        "  with a lot, 4 looks: %s",
        MachineRates.looks(lot, times(500), 4, 46, 121, 25).notSteady());
  }

  private void creepingMachines() {
    say("Machine that creeps, sigma per 100 pieces: first verdict that is not steady, and looks");
    for (double creep : new double[] {0.5, 1, 2, 4}) {
      Course alone = Course.creeping(creep);
      creeping("no correction", alone);
      creeping("corrected when five are off by 1.2", alone.correctedWhenOff(1.2));
      creeping("corrected when five are off by 2", alone.correctedWhenOff(2));
      creeping("corrected each 40 pieces", alone.correctedEach(40));
    }
  }

  private void creeping(String how, Course course) {
    Said first = MachineRates.first(course, times(150), 5, 400, 5);
    Said looks = MachineRates.looks(course, times(40), 6, 100, 400, 20);
    say(
        "  %.1f, %s: found %s of machines, %s of looks",
        course.creep(), how, first.notSteady(), looks.notSteady());
    say(
        "    named creep, not jump: first %s, looks %s",
        first.named(State.CREEPING), looks.named(State.CREEPING));
    say(
        "    creep of all that moved: first %s, looks %s",
        first.creepOfMoved(), looks.creepOfMoved());
  }

  private void jumpedMachines() {
    say("Machine that jumps at piece 41");
    for (double step : new double[] {1, 1.5, 2, 3}) {
      for (int pieces : new int[] {60, 100}) {
        Said said = MachineRates.looks(Course.stepping(step, ""), times(300), 7, pieces, pieces, 1);
        say(
            "  by %.1f, at piece %d: found %s, named jump, not creep %s",
            step, pieces, said.notSteady(), said.named(State.JUMPED));
      }
      say(
          "  by %.1f with a recorded lot: named its cause at piece 46 %s, at 60 %s",
          step,
          MachineRates.lotNamed(step, times(300), 8, 46),
          MachineRates.lotNamed(step, times(300), 8, 60));
    }
  }
}
