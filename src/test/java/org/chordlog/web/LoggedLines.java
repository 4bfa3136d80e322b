package org.chordlog.web;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.AppenderBase;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.slf4j.LoggerFactory;

/** What the program and its libraries log meanwhile, at the levels at which the service does. */
final class LoggedLines extends AppenderBase<ILoggingEvent> implements AutoCloseable {
  private final Logger root = (Logger) LoggerFactory.getLogger(Logger.ROOT_LOGGER_NAME);
  private final List<String> lines = new CopyOnWriteArrayList<>();

  LoggedLines() {
    start();
    root.addAppender(this);
  }

  @Override
  protected void append(ILoggingEvent event) {
    lines.add(
        event.getLevel()
            + " "
            + event.getFormattedMessage()
            + " "
            + event.getKeyValuePairs()
            + " "
            + causes(event));
  }

  private static String causes(ILoggingEvent event) {
    return event.getThrowableProxy() == null
        ? ""
        : ThrowableProxyUtil.asString(event.getThrowableProxy());
  }

  /** Those with that text and level. */
  List<String> with(Level level, String text) {
    return lines.stream()
        .filter(line -> line.startsWith(level + " ") && line.contains(text))
        .toList();
  }

  /** Every line. */
  String all() {
    return String.join("\n", lines);
  }

  @Override
  public void close() {
    root.detachAppender(this);
  }
}
