package org.chordlog.correction;

import org.chordlog.correction.PartStarts.Place;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The job on the machine with its limits and lot as they are now: its newest piece's number and
 * pass, how many pieces it had, how many since the set-up.
 */
record JobState(JobStart job, int newest, int pass, int pieces, int sinceSetUp) {
  static JobState of(JobStart start) {
    return new JobState(start, 0, 0, 0, 0);
  }

  Aim aim() {
    return job.aim();
  }

  String lot() {
    return job.lot();
  }

  JobState setUp() {
    return new JobState(job, newest, pass, pieces, 0);
  }

  /**
   * A lot that is told late, within a piece: what is measured of that piece from then on counts.
   */
  JobState with(String otherLot) {
    return new JobState(job.withLot(otherLot), newest, pass - 1, pieces, sinceSetUp);
  }

  JobState with(Aim other) {
    return new JobState(job.withAim(other), newest, pass, pieces, sinceSetUp);
  }

  /** Whether that comes after the newest piece, or is that piece rolled once more. */
  boolean takes(int number, int inPass) {
    return number > newest || (number == newest && inPass > pass);
  }

  JobState piece(int number, int inPass) {
    int another = number == newest ? 0 : 1;
    return new JobState(job, number, inPass, pieces + another, sinceSetUp + 1);
  }

  /** How many pieces a correction now would count for; a plan that is used up tells nothing. */
  int toCome(int most) {
    Integer plan = job.pieces();
    return plan == null || pieces > plan ? most : Math.min(most, plan - pieces);
  }

  Place place(Belief belief) {
    return new Place(aim(), job.part(), job.section(), lot(), belief);
  }

  void write(Packer to) {
    Aim aim = job.aim();
    Integer plan = job.pieces();
    to.put(job.job()).put(aim.targetMm());
    Packing.put(to, aim.lowerMm());
    Packing.put(to, aim.upperMm());
    to.put(job.part()).put(job.section()).put(job.lot()).put(plan == null ? 0 : plan);
    to.put(newest).put(pass).put(pieces).put(sinceSetUp);
  }

  static JobState read(Unpacker from) {
    return new JobState(readJob(from), from.anInt(), from.anInt(), from.anInt(), from.anInt());
  }

  private static JobStart readJob(Unpacker from) {
    long id = from.aLong();
    Aim aim = new Aim(from.aDouble(), Packing.nullable(from), Packing.nullable(from));
    return new JobStart(id, aim, from.text(), from.text(), from.text(), planned(from.anInt()));
  }

  private static @Nullable Integer planned(int count) {
    return count == 0 ? null : (Integer) count;
  }
}
