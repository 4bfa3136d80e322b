/**
 * An invented bending shop on the simulator's physics, and policies of correcting in it: all meet
 * the same pieces.
 */
package org.chordlog.bench.shopfloor;
