package org.chordlog.station;

import org.chordlog.measure.Bridge;
import org.chordlog.store.Gauges;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Mounts the bridge that the station file names, while none was ever mounted. */
record FirstBridge(StationContext around) {
  private static final Logger LOG = LoggerFactory.getLogger(FirstBridge.class);
  private static final String BY = "station file";

  void mount(StationSettings settings) {
    @Nullable Bridge wanted = settings.bridge();
    if (wanted == null) {
      return;
    }
    Gauges gauges = around.store().gauges();
    @Nullable Bridge mounted = gauges.mountedOn(settings.name()).orElse(null);
    if (mounted == null) {
      long id = known(gauges, wanted).id();
      gauges.mount(settings.name(), id, around.clock().wallMicros(), BY);
    } else if (mounted.name().equals(wanted.name()) && !same(mounted, wanted)) {
      LOG.atWarn()
          .addKeyValue("station", settings.name())
          .addKeyValue("bridge", wanted.name())
          .log(
              "the records say other values for the bridge than the station file; the records"
                  + " hold. Change the bridge on the page.");
    }
  }

  private static Bridge known(Gauges gauges, Bridge wanted) {
    return gauges.bridges().stream()
        .filter(bridge -> same(bridge, wanted))
        .findFirst()
        .orElseGet(() -> gauges.add(wanted, BY));
  }

  private static boolean same(Bridge a, Bridge b) {
    return a.withId(0).equals(b.withId(0));
  }
}
