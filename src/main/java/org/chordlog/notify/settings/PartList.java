package org.chordlog.notify.settings;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.chordlog.measure.BadInput;
import org.chordlog.yaml.FieldBinder;
import org.jspecify.annotations.Nullable;

/** Keys whose value is a list of parts. */
record PartList(FieldBinder binder, JsonNode root) {
  private static final int MOST = 200;

  /** What each part of a list makes; faults are placed at the part. */
  <F, T> List<T> each(String key, Class<F> type, Function<F, T> make) {
    JsonNode list = root.hasNonNull(key) ? root.get(key) : MissingNode.getInstance();
    if (!list.isMissingNode() && (!list.isArray() || list.size() > MOST)) {
      binder.add(key, list, "is not a list", "up to " + MOST + " entries, each after a dash");
      return List.of();
    }
    List<T> made = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      String path = key + "[" + i + "]";
      @Nullable F fields = binder.bind(path, list.get(i), type);
      @Nullable T one = fields == null ? null : binder.under(path, () -> make.apply(fields));
      if (one != null) {
        made.add(one);
      }
    }
    return made;
  }

  static void unique(Map<String, ?> known, @Nullable String name) {
    if (name != null && known.containsKey(name)) {
      throw new BadInput("name", name, "is taken", "a name of its own");
    }
  }
}
