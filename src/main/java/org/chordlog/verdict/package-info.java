/**
 * What is said to whom of figures, signals, checks, link and age: the only place where a judgement
 * or a threshold of one is put into words. Pure.
 */
@NullMarked
package org.chordlog.verdict;

import org.jspecify.annotations.NullMarked;
