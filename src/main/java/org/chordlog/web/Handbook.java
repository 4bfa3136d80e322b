package org.chordlog.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.AttributeProvider;
import org.commonmark.renderer.html.HtmlRenderer;

/** The README and the pages of reference, as HTML; each has a name of its own in the help. */
final class Handbook {
  /** Names and titles of the pages, in the order in which they are offered. */
  static final Map<String, String> TITLES = titles();

  private static final Map<String, String> FILES =
      Map.of(
          "start", "README.md",
          "stations", "stations.md",
          "service", "service.md",
          "alerts", "alerts.md",
          "plant", "plant.md",
          "command-line", "command-line.md",
          "error-rates", "error-rates.md",
          "changes", "CHANGELOG.md");

  private static final List<Extension> EXTENSIONS =
      List.of(TablesExtension.create(), HeadingAnchorExtension.create());
  private static final Parser PARSER = Parser.builder().extensions(EXTENSIONS).build();
  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder()
          .extensions(EXTENSIONS)
          .escapeHtml(true)
          .attributeProviderFactory(context -> links())
          .build();

  private Handbook() {}

  private static Map<String, String> titles() {
    Map<String, String> titles = new LinkedHashMap<>();
    titles.put("start", "First steps and troubles");
    titles.put("stations", "Stations, indicators, captures");
    titles.put("service", "Service, pages, API");
    titles.put("alerts", "Alerts by mail and webhook");
    titles.put("plant", "A plant of many computers");
    titles.put("command-line", "Command line");
    titles.put("error-rates", "How sure the verdicts are");
    titles.put("changes", "Changes");
    return titles;
  }

  /** The HTML of a page; empty where there is none of that name. */
  static Optional<String> html(String name) {
    return Optional.ofNullable(FILES.get(name))
        .map(file -> RENDERER.render(PARSER.parse(read(file))));
  }

  private static String read(String file) {
    try (InputStream in = Handbook.class.getResourceAsStream("/help/" + file)) {
      return new String(Objects.requireNonNull(in, file).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A link from one file to another leads to its page; what is no page here, to the pages. */
  private static AttributeProvider links() {
    return (Node node, String tag, Map<String, String> attributes) -> {
      if (node instanceof Link link && !link.getDestination().contains("://")) {
        attributes.put("href", address(link.getDestination()));
      } else if (node instanceof Image image) {
        attributes.put("src", "pictures/" + name(image.getDestination()));
      }
    };
  }

  static String address(String destination) {
    int mark = destination.indexOf('#');
    String file = mark < 0 ? destination : destination.substring(0, mark);
    String place = mark < 0 ? "" : destination.substring(mark);
    return file.isEmpty()
        ? place
        : FILES.entrySet().stream()
            .filter(each -> each.getValue().equals(name(file)))
            .findFirst()
            .map(each -> each.getKey() + place)
            .orElse("start");
  }

  private static String name(String path) {
    return path.substring(path.lastIndexOf('/') + 1);
  }
}
