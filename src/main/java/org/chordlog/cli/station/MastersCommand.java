package org.chordlog.cli.station;

import picocli.CommandLine.Command;

/** Masters in and out as a file. */
@Command(
    name = "masters",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Writes the masters of the running service as CSV, or adds masters from CSV.",
      "Columns: name, face (outer or inner), radius_mm, expanded_uncertainty_mm (k ="
          + " 2, as the certificate states it), check_limit_mm (may be empty)."
    })
public final class MastersCommand extends GaugeFile {}
