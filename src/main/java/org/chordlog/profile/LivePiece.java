package org.chordlog.profile;

/**
 * A piece that is running through now: how far it has come, whether it stands or runs back, the
 * profile so far, and when its touch began.
 */
public record LivePiece(
    double placeMm, boolean stopped, boolean backwards, Profile soFar, long beganNanos) {}
