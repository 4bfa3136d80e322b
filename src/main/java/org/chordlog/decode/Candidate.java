package org.chordlog.decode;

import java.util.List;

/** A profile to be tried, how far its assumptions can be trusted (0 to 1), and what they are. */
record Candidate(FrameProfile profile, double trust, List<String> assumptions) {}
