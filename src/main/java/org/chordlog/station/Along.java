package org.chordlog.station;

import java.util.List;
import org.chordlog.measure.Decision;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.RadiusEstimate;

/**
 * What was found along a piece that ran through: its mean radius, the decision as the job's
 * specification asks for it, the profiles to store, and the set-up that all this holds for.
 */
record Along(
    WorkSnapshot.Computed by,
    RadiusEstimate radius,
    Decision decision,
    List<PassedProfile> profiles) {}
