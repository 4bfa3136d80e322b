package org.chordlog.web.service;

import com.sun.management.UnixOperatingSystemMXBean;
import io.prometheus.metrics.core.metrics.CounterWithCallback;
import io.prometheus.metrics.core.metrics.GaugeWithCallback;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import io.prometheus.metrics.model.snapshots.Unit;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.lang.management.RuntimeMXBean;
import java.lang.management.ThreadMXBean;

/** What the process itself uses, under the names that Prometheus' client libraries agree on. */
final class ProcessMetrics {
  private static final double NANOS = 1e9;
  private static final double MILLIS = 1e3;

  private ProcessMetrics() {}

  static void register(PrometheusRegistry to) {
    MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    RuntimeMXBean runtime = ManagementFactory.getRuntimeMXBean();
    gauge("jvm_memory_used_bytes", "Heap in use.")
        .unit(Unit.BYTES)
        .labelNames("area")
        .callback(call -> call.call((double) memory.getHeapMemoryUsage().getUsed(), "heap"))
        .register(to);
    gauge("jvm_threads_current", "Threads.")
        .callback(call -> call.call(threads.getThreadCount()))
        .register(to);
    gauge("process_start_time_seconds", "Start, since 1970-01-01 UTC.")
        .unit(Unit.SECONDS)
        .callback(call -> call.call(runtime.getStartTime() / MILLIS))
        .register(to);
    if (ManagementFactory.getOperatingSystemMXBean() instanceof UnixOperatingSystemMXBean system) {
      system(system, to);
    }
  }

  private static void system(UnixOperatingSystemMXBean system, PrometheusRegistry to) {
    CounterWithCallback.builder()
        .name("process_cpu_seconds_total")
        .help("User and system time.")
        .unit(Unit.SECONDS)
        .callback(call -> call.call(system.getProcessCpuTime() / NANOS))
        .register(to);
    gauge("process_open_fds", "Open file descriptors.")
        .callback(call -> call.call((double) system.getOpenFileDescriptorCount()))
        .register(to);
    gauge("process_max_fds", "Most file descriptors.")
        .callback(call -> call.call((double) system.getMaxFileDescriptorCount()))
        .register(to);
  }

  private static GaugeWithCallback.Builder gauge(String name, String help) {
    return GaugeWithCallback.builder().name(name).help(help);
  }
}
