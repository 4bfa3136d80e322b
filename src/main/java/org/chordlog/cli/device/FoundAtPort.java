package org.chordlog.cli.device;

import java.util.List;
import org.chordlog.decode.Proposal;
import org.chordlog.link.LinkSettings;
import org.chordlog.station.PortSearch;
import org.chordlog.station.RegisterSearch;

/**
 * What was found at a port, by listening or in registers.
 *
 * @param came how much: bytes, or registers
 * @param standsStill whether nothing is proposed because the plunger was not seen to move
 */
record FoundAtPort(LinkSettings link, long came, List<Proposal> proposals, boolean standsStill) {
  static FoundAtPort of(PortSearch.Heard heard) {
    return new FoundAtPort(heard.link(), heard.bytes(), heard.proposals(), heard.standsStill());
  }

  static FoundAtPort of(RegisterSearch.Found found) {
    return new FoundAtPort(
        found.link(), found.registers(), found.proposals().best(), found.proposals().standsStill());
  }
}
