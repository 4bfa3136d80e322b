/** The service and its demo. */
@NullMarked
package org.chordlog.cli.service;

import org.jspecify.annotations.NullMarked;
