package org.chordlog.station;

import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Reading;
import org.chordlog.radius.ZeroEvaluation;
import org.jspecify.annotations.Nullable;

/**
 * The plunger standing still: its value, and the reading that was taken in the same contact, done
 * once it is committed; null if none.
 */
record AtRest(ZeroEvaluation value, @Nullable CompletableFuture<Reading> contactReading) {}
