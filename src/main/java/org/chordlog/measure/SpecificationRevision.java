package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * One revision of a job's specification: in force from {@code atMicros} until the next one. {@code
 * from} is what it replaced, null for the first.
 */
public record SpecificationRevision(
    long jobId,
    int revision,
    long atMicros,
    String by,
    String why,
    @Nullable Specification from,
    Specification to) {
  public SpecificationRevision {
    Check.within("revision", revision, 1, Integer.MAX_VALUE);
  }
}
