package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The job on the machine as it is now: its newest piece's number, how many pieces it had, how many
 * since the set-up.
 */
record JobState(
    long job,
    Aim aim,
    String part,
    String section,
    String lot,
    @Nullable Integer planned,
    int newest,
    int pieces,
    int sinceSetUp) {
  static JobState of(Told.JobStart start) {
    return new JobState(
        start.job(),
        start.aim(),
        start.part(),
        start.section(),
        start.lot(),
        start.pieces(),
        0,
        0,
        0);
  }

  JobState setUp() {
    return new JobState(job, aim, part, section, lot, planned, newest, pieces, 0);
  }

  JobState with(String otherLot) {
    return new JobState(job, aim, part, section, otherLot, planned, newest, pieces, sinceSetUp);
  }

  JobState with(Aim other) {
    return new JobState(job, other, part, section, lot, planned, newest, pieces, sinceSetUp);
  }

  JobState piece(int number) {
    return new JobState(job, aim, part, section, lot, planned, number, pieces + 1, sinceSetUp + 1);
  }

  /** How many pieces a correction now would count for; a plan that is used up tells nothing. */
  int toCome(int most) {
    Integer plan = planned;
    return plan == null || pieces > plan ? most : Math.min(most, plan - pieces);
  }

  PartStarts.Place place(Belief belief) {
    return new PartStarts.Place(aim, part, section, lot, belief);
  }

  void write(Packer to) {
    to.put(job).put(aim.targetMm());
    Packing.put(to, aim.lowerMm());
    Packing.put(to, aim.upperMm());
    to.put(part).put(section).put(lot).put(planned != null).put(planned == null ? 0 : planned);
    to.put(newest).put(pieces).put(sinceSetUp);
  }

  static JobState read(Unpacker from) {
    long job = from.aLong();
    Aim aim = new Aim(from.aDouble(), Packing.nullable(from), Packing.nullable(from));
    String part = from.text();
    String section = from.text();
    String lot = from.text();
    boolean known = from.aBoolean();
    int count = from.anInt();
    return new JobState(
        job,
        aim,
        part,
        section,
        lot,
        known ? (Integer) count : null,
        from.anInt(),
        from.anInt(),
        from.anInt());
  }
}
