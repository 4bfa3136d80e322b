/**
 * TLS of the service's own port: its files, their renewal while it runs, and the proof at start.
 */
@NullMarked
package org.chordlog.web.tls;

import org.jspecify.annotations.NullMarked;
