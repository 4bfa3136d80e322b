package org.chordlog.station;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.util.Arrays;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.FrameProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.yaml.FieldBinder;

/** A link and a profile as the station file has them. */
final class SettingNodes {
  static final YAMLMapper YAML = FieldBinder.yaml().build();

  private SettingNodes() {}

  static JsonNode of(LinkSettings link) {
    return link.match(new LinkNode(YAML));
  }

  /** A built-in profile's name, or the fields of one's own. */
  static JsonNode of(FrameProfile profile) {
    return Arrays.stream(BuiltInProfile.values())
        .filter(known -> known.profile().equals(profile))
        .findFirst()
        .<JsonNode>map(known -> TextNode.valueOf(known.plainName()))
        .orElseGet(() -> YAML.valueToTree(profile));
  }
}
