package org.chordlog.cli.service;

import org.chordlog.simulator.Forgetful;

/**
 * How the demo's rollers are moved: by whom, how far they are from the scenario's setting at the
 * start, mm, and which moves are recorded.
 */
record DemoMoves(RollerHand hand, double movedMm, Forgetful memory) {}
