package org.chordlog;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.junit.ArchTests;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;

/** The way of the data: who may use whom ({@link Room}), and where each library may be used. */
@AnalyzeClasses(
    packages = "org.chordlog",
    importOptions = {ImportOption.DoNotIncludeTests.class})
final class ArrowsTest {
  private static final String[] PURE = {
    "org.chordlog.measure..",
    "org.chordlog.decode..",
    "org.chordlog.capture..",
    "org.chordlog.radius..",
    "org.chordlog.profile..",
    "org.chordlog.stats..",
    "org.chordlog.study..",
    "org.chordlog.correction..",
    "org.chordlog.verdict..",
    "org.chordlog.notify.rule..",
    "org.chordlog.notify.people.."
  };

  @ArchTest static final ArchRule arrows = arrows();

  private static LayeredArchitecture arrows() {
    LayeredArchitecture all =
        layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .ensureAllClassesAreContainedInArchitecture()
            .layer("commands")
            .definedBy(in("org.chordlog").or(in("org.chordlog.cli")).or(below("org.chordlog.cli")));
    for (Room room : Room.ALL) {
      all = all.layer(room.name()).definedBy(in("org.chordlog." + room.name()));
    }
    for (Room room : Room.ALL) {
      all = mayUse(all, room);
    }
    return all.whereLayer("commands").mayNotBeAccessedByAnyLayer();
  }

  /** In that package itself; compared letter by letter, which is quicker than a pattern. */
  private static DescribedPredicate<JavaClass> in(String name) {
    return DescribedPredicate.describe(name, each -> each.getPackageName().equals(name));
  }

  private static DescribedPredicate<JavaClass> below(String name) {
    return DescribedPredicate.describe(
        "below " + name, each -> each.getPackageName().startsWith(name + "."));
  }

  private static LayeredArchitecture mayUse(LayeredArchitecture all, Room room) {
    return room.mayUse().length == 0
        ? all.whereLayer(room.name()).mayNotAccessAnyLayer()
        : all.whereLayer(room.name()).mayOnlyAccessLayers(room.mayUse());
  }

  @ArchTest static final ArchTests constructors = ArchTests.in(ConstructorRules.class);

  @ArchTest
  static final ArchRule noPackageUsesItselfByAnother =
      slices().matching("org.chordlog.(**)").should().beFreeOfCycles();

  /** Where the computer's language has digits of its own, too; see {@link DigitsTest}. */
  @ArchTest
  static final ArchRule formatsNameTheirLocale =
      noClasses()
          .should()
          .callMethod(String.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(PrintStream.class, "printf", String.class, Object[].class)
          .orShould()
          .callMethod(PrintStream.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(PrintWriter.class, "printf", String.class, Object[].class)
          .orShould()
          .callMethod(PrintWriter.class, "format", String.class, Object[].class);

  @ArchTest
  static final ArchRule theProgramIsUsedByNobody =
      noClasses()
          .that()
          .resideInAPackage("org.chordlog..")
          .and()
          .doNotBelongToAnyOf(Main.class)
          .should()
          .dependOnClassesThat()
          .belongToAnyOf(Main.class);

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

  @ArchTest static final ArchRule serialPorts = only("com.fazecast..", "link");

  @ArchTest
  static final ArchRule jdbc =
      only("java.sql..", "store.sql", "store.sqlite", "store.postgres", "forward");

  @ArchTest static final ArchRule sqlite = only("org.sqlite..", "store.sqlite");

  @ArchTest static final ArchRule postgres = only("org.postgresql..", "store.postgres", "forward");

  @ArchTest static final ArchRule pools = only("com.zaxxer..", "store.postgres");
  @ArchTest static final ArchRule charts = only("org.jfree..", "chart");
  @ArchTest static final ArchRule svg = only("org.apache.batik..", "chart");
  @ArchTest static final ArchRule pdf = only("com.lowagie..", "report");
  @ArchTest static final ArchRule http = only("io.javalin..", "web..");
  @ArchTest static final ArchRule mails = only("jakarta.mail..", "notify.mail");
  @ArchTest static final ArchRule mailServers = only("org.eclipse.angus..", "notify.mail");
  @ArchTest static final ArchRule passwords = only("com.password4j..", "account");
  @ArchTest static final ArchRule openId = only("com.nimbusds..", "web.openid");
  @ArchTest static final ArchRule handbook = only("org.commonmark..", "web");
  @ArchTest static final ArchRule metrics = only("io.prometheus..", "web.service");
  @ArchTest static final ArchRule schemas = only("com.github.victools..", "web.http");
  @ArchTest static final ArchRule nativeCalls = only("com.sun.jna..", "simulator");
  @ArchTest static final ArchRule commandLine = only("picocli..", "cli..");
  @ArchTest static final ArchRule patterns = only("com.google.re2j..", "decode");

  @ArchTest
  static final ArchRule mathematics =
      only("org.apache.commons.math3..", "radius", "stats..", "study");

  /** So that another store can stand beside it. */
  @ArchTest
  static final ArchRule onlyOnePlaceKnowsTheDatabase =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              "org.chordlog.store.sqlite..",
              "org.chordlog.store.postgres..",
              "org.chordlog.store.sql..",
              "org.chordlog.store.open..",
              "org.chordlog.forward..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "org.chordlog.store.sqlite..",
              "org.chordlog.store.postgres..",
              "org.chordlog.store.sql..");

  /** Nor do the databases know each other. */
  @ArchTest
  static final ArchRule onlySqliteKnowsSqlite =
      noClasses()
          .that()
          .resideInAnyPackage(
              "org.chordlog.store.postgres..", "org.chordlog.store.sql..", "org.chordlog.forward..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.chordlog.store.sqlite..");

  @ArchTest
  static final ArchRule distributions =
      only(
          "org.apache.commons.statistics..", "radius", "stats..", "correction", "study", "profile");

  @ArchTest
  static final ArchRule json =
      only(
          "com.fasterxml.jackson..",
          "cli..",
          "forward",
          "notify.settings",
          "notify.send",
          "simulator",
          "station",
          "store.json",
          "web..",
          "yaml");

  private static ArchRule only(String library, String... homes) {
    String[] packages =
        Arrays.stream(homes).map(home -> "org.chordlog." + home).toArray(String[]::new);
    return noClasses()
        .that()
        .resideOutsideOfPackages(packages)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library);
  }
}
