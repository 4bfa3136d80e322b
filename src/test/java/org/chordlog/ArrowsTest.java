package org.chordlog;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;

/** The way of the data: who may use whom. */
@AnalyzeClasses(
    packages = "org.chordlog",
    importOptions = {ImportOption.DoNotIncludeTests.class})
final class ArrowsTest {
  private static final String[] PURE = {
    "org.chordlog.measure..",
    "org.chordlog.decode..",
    "org.chordlog.capture..",
    "org.chordlog.radius..",
    "org.chordlog.stats.."
  };

  @ArchTest
  static final ArchRule arrows =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true)
          .ensureAllClassesAreContainedInArchitecture()
          .layer("measure")
          .definedBy("org.chordlog.measure..")
          .layer("decode")
          .definedBy("org.chordlog.decode..")
          .layer("capture")
          .definedBy("org.chordlog.capture..")
          .layer("radius")
          .definedBy("org.chordlog.radius..")
          .layer("stats")
          .definedBy("org.chordlog.stats..")
          .layer("link")
          .definedBy("org.chordlog.link..")
          .layer("store")
          .definedBy("org.chordlog.store..")
          .layer("station")
          .definedBy("org.chordlog.station..")
          .layer("monitor")
          .definedBy("org.chordlog.monitor..")
          .layer("chart")
          .definedBy("org.chordlog.chart..")
          .layer("report")
          .definedBy("org.chordlog.report..")
          .layer("web")
          .definedBy("org.chordlog.web..")
          .layer("simulator")
          .definedBy("org.chordlog.simulator..")
          .layer("main")
          .definedBy("org.chordlog", "org.chordlog.cli..")
          .whereLayer("measure")
          .mayNotAccessAnyLayer()
          .whereLayer("decode")
          .mayOnlyAccessLayers("measure")
          .whereLayer("capture")
          .mayOnlyAccessLayers("measure")
          .whereLayer("radius")
          .mayOnlyAccessLayers("measure")
          .whereLayer("stats")
          .mayOnlyAccessLayers("measure")
          .whereLayer("link")
          .mayNotAccessAnyLayer()
          .whereLayer("store")
          .mayOnlyAccessLayers("measure")
          .whereLayer("station")
          .mayOnlyAccessLayers("measure", "decode", "capture", "radius", "link", "store")
          .whereLayer("monitor")
          .mayOnlyAccessLayers("station", "stats", "store", "measure")
          .whereLayer("chart")
          .mayOnlyAccessLayers("stats", "measure")
          .whereLayer("report")
          .mayOnlyAccessLayers("chart", "stats", "store", "measure")
          .whereLayer("simulator")
          .mayOnlyAccessLayers("decode", "radius", "measure")
          .whereLayer("web")
          .mayOnlyAccessLayers(
              "measure", "decode", "capture", "radius", "stats", "link", "store", "station",
              "monitor", "chart", "report")
          .whereLayer("main")
          .mayNotBeAccessedByAnyLayer();

  @ArchTest
  static final ArchRule pureCodeKnowsNoInputOutputClockOrThread =
      noClasses()
          .that()
          .resideInAnyPackage(PURE)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "java.io..", "java.nio.file..", "java.net..", "java.sql..", "java.util.concurrent..")
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Thread.class)
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class)
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis");

  @ArchTest
  static final ArchRule serialPortsLiveInLink = only("com.fazecast..", "org.chordlog.link..");

  @ArchTest
  static final ArchRule jdbcLivesInSqlite = only("java.sql..", "org.chordlog.store.sqlite..");

  @ArchTest
  static final ArchRule chartsAreDrawnInChart = only("org.jfree..", "org.chordlog.chart..");

  @ArchTest static final ArchRule httpLivesInWeb = only("io.javalin..", "org.chordlog.web..");

  @ArchTest
  static final ArchRule nativeCallsLiveInSimulator =
      only("com.sun.jna..", "org.chordlog.simulator..");

  private static ArchRule only(String library, String home) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(home)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .allowEmptyShould(true);
  }
}
