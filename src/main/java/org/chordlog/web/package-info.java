/** Routes, JSON, events and access. */
@NullMarked
package org.chordlog.web;

import org.jspecify.annotations.NullMarked;
