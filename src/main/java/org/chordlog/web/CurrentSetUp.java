package org.chordlog.web;

import java.util.Optional;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.chordlog.measure.SetUp;
import org.chordlog.station.StationSettings;
import org.chordlog.store.Gauges;

/** What a reading of a job would be computed from, as the station is set up now. */
record CurrentSetUp(StationSettings settings, Gauges gauges) {
  /** Empty while no bridge is mounted. */
  Optional<SetUp> of(Job job) {
    return gauges.mountedOn(settings.name()).map(bridge -> on(bridge, job));
  }

  private SetUp on(Bridge bridge, Job job) {
    String station = settings.name();
    return new SetUp(
        bridge,
        settings.indicator(),
        gauges.zeroOfMounted(station).orElse(null),
        gauges.latestCalibration(station, bridge.id()).orElse(null),
        job.section(),
        job.measuredFace(),
        job.specification().face());
  }
}
