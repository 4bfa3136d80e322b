/**
 * The JSON in which stores keep set-ups, sections, limits and jobs. Its keys are part of every
 * database that was ever written: they are named here and nowhere else, so that a component of a
 * domain record can be renamed without touching stored data. A key is never renamed or removed, and
 * a new one is optional when read.
 */
@NullMarked
package org.chordlog.store.json;

import org.jspecify.annotations.NullMarked;
