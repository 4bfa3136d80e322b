package org.chordlog.station;

import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Reading;
import org.chordlog.radius.ZeroEvaluation;
import org.jspecify.annotations.Nullable;

/**
 * The plunger standing still: its value, the reading that was taken in the same contact, done once
 * it is committed, what is shown in free air (null where not known), and whether this contact was
 * known before to be on no piece.
 */
record AtRest(
    ZeroEvaluation value,
    @Nullable CompletableFuture<Reading> contactReading,
    @Nullable Long freeAirNm,
    boolean onNoPiece) {}
