package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.joran.JoranConfigurator;
import ch.qos.logback.classic.spi.LoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.slf4j.event.KeyValuePair;

/** The log that the service writes unless told otherwise: one line an event, with its cause. */
final class LogLinesTest {
  private static PatternLayoutEncoder encoder(LoggerContext context) throws Exception {
    JoranConfigurator configurator = new JoranConfigurator();
    configurator.setContext(context);
    configurator.doConfigure(LogLinesTest.class.getResource("/logback.xml"));
    Logger root = context.getLogger(Logger.ROOT_LOGGER_NAME);
    var appender = (ConsoleAppender<?>) root.getAppender("STDERR");
    return (PatternLayoutEncoder) appender.getEncoder();
  }

  private static String line(String message, String value, @Nullable Throwable cause)
      throws Exception {
    LoggerContext context = new LoggerContext();
    PatternLayoutEncoder encoder = encoder(context);
    Logger root = context.getLogger(Logger.ROOT_LOGGER_NAME);
    LoggingEvent event = new LoggingEvent("x", root, Level.ERROR, message, cause, new Object[0]);
    event.setKeyValuePairs(List.of(new KeyValuePair("host", value)));
    return new String(encoder.encode(event), StandardCharsets.UTF_8);
  }

  @Test
  void everySignIsWrittenWhateverTheLocale() throws Exception {
    assertTrue(line("2 ± 1 °", "Jörg", null).contains("2 ± 1 °"));
    assertEquals(StandardCharsets.UTF_8, encoder(new LoggerContext()).getCharset());
  }

  @Test
  void theCauseStandsInTheLineOfWhatFailed() throws Exception {
    Exception cause = new IllegalStateException("not done", new IOException("no space\nleft"));
    String line = line("request failed", "h", cause);
    assertEquals(1, line.lines().count(), line);
    assertTrue(line.contains("java.lang.IllegalStateException: not done"), line);
    assertTrue(line.contains("java.io.IOException: no space | left"), line);
  }

  @Test
  void nothingThatIsLoggedBeginsALineOfItsOwn() throws Exception {
    String line = line("failed\r\nFORGED", "x\nFORGED LINE \u001b[31m", null);
    assertEquals(1, line.lines().count(), line);
    assertTrue(line.contains("x FORGED LINE"), line);
    assertTrue(line.stripTrailing().chars().noneMatch(Character::isISOControl), line);
  }
}
