package org.chordlog.web;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Times;

/** A short text that differs wherever two states of a job do; what is measured does not count. */
final class JobVersion {
  private static final int BYTES = 8;

  private JobVersion() {}

  static String of(Job job) {
    return digest(
        List.of(
            List.of(job.id(), job.name(), job.part(), job.materialLot(), job.state()),
            List.of(job.machine(), job.station(), job.measuredFace()),
            SectionForm.of(job.section()),
            SpecificationForm.of(job.specification()),
            PlanForm.of(job.plan()),
            DetailsForm.of(job.details()),
            Times.iso(job.openedAtMicros())));
  }

  /** Of the whole answer, which begins with the version of the job. */
  static String tag(JobView view) {
    return view.version() + "." + digest(view);
  }

  /** Differs wherever what would be answered does. */
  static String digest(Object parts) {
    try {
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(Json.bytes(parts));
      return HexFormat.of().formatHex(Arrays.copyOf(hash, BYTES));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
