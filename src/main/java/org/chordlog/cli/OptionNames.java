package org.chordlog.cli;

import java.util.Locale;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import picocli.CommandLine.ParseResult;

/**
 * What was refused, under the name by which it was typed: the parts below name their fields, as
 * {@code footRadiusMm}, for the API too.
 */
final class OptionNames {
  /** Fields whose option is called otherwise. */
  private static final Map<String, String> OTHERWISE =
      Map.ofEntries(
          Map.entry("lowerLimit", "--lower"),
          Map.entry("lowerSpecificationLimit", "--lower"),
          Map.entry("measuredFace", "--face"),
          Map.entry("sampleCount", "--samples"),
          Map.entry("step", "--scale-step"),
          Map.entry("bits", "--counter-bits"),
          Map.entry("device", "--modbus"),
          Map.entry("developed", "--length"),
          Map.entry("roles", "--role"),
          Map.entry("rights", "--right"),
          Map.entry("maxEventClients", "--event-clients"),
          Map.entry("dueAt", "--keep-until"));

  private OptionNames() {}

  static BadInput as(ParseResult typed, BadInput refusal) {
    return new BadInput(refusal.faults().stream().map(each -> as(typed, each)).toList());
  }

  /** Only an option that was typed: a file that the command reads may have such a field too. */
  private static Fault as(ParseResult typed, Fault fault) {
    String option = option(fault.field().replaceFirst("Mm$", ""));
    return typed.hasMatchedOption(option) ? fault.at(option) : fault;
  }

  private static String option(String field) {
    String usual = "--" + field.replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT);
    return OTHERWISE.getOrDefault(field, usual);
  }
}
