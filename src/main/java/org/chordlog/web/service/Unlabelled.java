package org.chordlog.web.service;

import io.prometheus.metrics.core.metrics.CounterWithCallback;
import io.prometheus.metrics.core.metrics.GaugeWithCallback;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import io.prometheus.metrics.model.snapshots.Unit;
import java.util.function.DoubleSupplier;
import org.jspecify.annotations.Nullable;

/** Metrics without labels; each asks for its value when it is read. */
record Unlabelled(PrometheusRegistry registry) {
  void gauge(String name, String help, @Nullable Unit unit, DoubleSupplier value) {
    GaugeWithCallback.Builder builder =
        GaugeWithCallback.builder()
            .name(name)
            .help(help)
            .callback(call -> call.call(value.getAsDouble()));
    if (unit != null) {
      builder.unit(unit);
    }
    builder.register(registry);
  }

  /** {@code name} without the {@code _total} that it is shown with. */
  void counter(String name, String help, DoubleSupplier value) {
    CounterWithCallback.builder()
        .name(name)
        .help(help)
        .callback(call -> call.call(value.getAsDouble()))
        .register(registry);
  }
}
