package org.chordlog.station;

/** Station files for tests. */
final class StationFiles {
  /** Of two stations, one with more stated than it must. */
  static final String GOOD =
      """
      stations:
        - name: rolls-1
          machine: three-roll bender
          link: {kind: serial, port: /dev/indicator, rate: 4800, parity: even, dataBits: 7}
          profile: signed-mm-lines
          indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.7}
          bridge: {name: long, spanMm: 200, spanUncertaintyMm: 0.02, footRadiusMm: 5}
          capture: {mode: settled, bandMm: 0.004}
          zero: {maximumAgeHours: 4, whenStale: refuse}
        - name: rolls-2
          link: {kind: tcp, host: 10.1.2.3, port: 4001}
          profile: {framing: {kind: terminator}, unit: inch}
          indicator: {resolutionMm: 0.01, permissibleErrorMm: 0.02, travelMm: 25}
      """;

  private StationFiles() {}
}
