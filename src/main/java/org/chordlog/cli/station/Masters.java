package org.chordlog.cli.station;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;

/** Masters of the running service by id or name. */
final class Masters {
  private Masters() {}

  static long id(ServiceClient client, String wanted) {
    List<String> known = new ArrayList<>();
    for (JsonNode master : client.get("/api/masters")) {
      String id = master.path("id").asText();
      String name = master.path("name").asText();
      if (wanted.equals(id) || wanted.equals(name)) {
        return master.path("id").asLong();
      }
      known.add(id + " (" + name + ")");
    }
    String allowed = known.isEmpty() ? "none exists yet" : String.join(", ", known);
    throw new BadInput("--master", wanted, "is not known", allowed);
  }
}
