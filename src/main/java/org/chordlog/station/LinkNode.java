package org.chordlog.station;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.ReplaySettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.TcpSettings;

/** A link as the station file has it under {@code link}; {@link LinkFields} reads it. */
record LinkNode(ObjectMapper mapper) implements LinkSettings.Cases<ObjectNode> {
  @Override
  public ObjectNode serial(SerialSettings serial) {
    return kind("serial").setAll((ObjectNode) mapper.valueToTree(serial));
  }

  @Override
  public ObjectNode tcp(TcpSettings tcp) {
    return kind("tcp").setAll((ObjectNode) mapper.valueToTree(tcp));
  }

  @Override
  public ObjectNode replay(ReplaySettings replay) {
    return kind("replay").put("speed", replay.speed()).put("file", replay.file().toString());
  }

  private ObjectNode kind(String name) {
    return mapper.createObjectNode().put("kind", name);
  }
}
