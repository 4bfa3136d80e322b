/** Health, metrics and the API document of the service itself. */
@NullMarked
package org.chordlog.web.service;

import org.jspecify.annotations.NullMarked;
