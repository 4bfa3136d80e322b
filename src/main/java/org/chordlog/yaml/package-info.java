/** Files in YAML that people write: bound to records, with every fault and its place. */
@NullMarked
package org.chordlog.yaml;

import org.jspecify.annotations.NullMarked;
