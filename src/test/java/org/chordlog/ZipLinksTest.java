package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Whoever unpacks the zip and begins with its README finds every page and picture it leads to. */
final class ZipLinksTest {
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]+)[^)]*\\)");
  private static final Pattern CODE = Pattern.compile("(?s)```.*?```|`[^`\n]*`");

  /** Where each file of the zip comes from, by its path in the zip. */
  private final Map<Path, Path> files = new HashMap<>();

  private void read() throws Exception {
    Element zip =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(Path.of("src/dist/zip.xml").toFile())
            .getDocumentElement();
    NodeList single = zip.getElementsByTagName("source");
    for (int i = 0; i < single.getLength(); i++) {
      Path source = Path.of(single.item(i).getTextContent());
      files.put(source.getFileName(), source);
    }
    NodeList sets = zip.getElementsByTagName("fileSet");
    for (int i = 0; i < sets.getLength(); i++) {
      add((Element) sets.item(i));
    }
  }

  private void add(Element set) throws IOException {
    Path directory = Path.of(text(set, "directory"));
    Path target = Path.of(text(set, "outputDirectory"));
    List<PathMatcher> includes = new ArrayList<>();
    NodeList patterns = set.getElementsByTagName("include");
    for (int i = 0; i < patterns.getLength(); i++) {
      String pattern = patterns.item(i).getTextContent();
      includes.add(FileSystems.getDefault().getPathMatcher("glob:" + pattern));
    }
    try (Stream<Path> all = Files.walk(directory)) {
      all.filter(Files::isRegularFile)
          .map(directory::relativize)
          .filter(each -> includes.isEmpty() || includes.stream().anyMatch(p -> p.matches(each)))
          .forEach(each -> files.put(target.resolve(each), directory.resolve(each)));
    }
  }

  private static String text(Element of, String name) {
    return of.getElementsByTagName(name).item(0).getTextContent();
  }

  @Test
  void everyLinkOfItsPagesLeadsToAFileInIt() throws Exception {
    read();
    List<String> broken = new ArrayList<>();
    int links = 0;
    for (Map.Entry<Path, Path> each : files.entrySet()) {
      if (each.getKey().toString().endsWith(".md")) {
        for (String link : links(each.getValue())) {
          links++;
          Path to = each.getKey().resolveSibling(link).normalize();
          if (files.keySet().stream().noneMatch(file -> file.startsWith(to))) {
            broken.add(each.getKey() + " -> " + link);
          }
        }
      }
    }
    assertEquals(List.of(), broken);
    assertTrue(links > 20, links + " links");
  }

  private static List<String> links(Path page) throws IOException {
    Matcher links = LINK.matcher(CODE.matcher(Files.readString(page)).replaceAll(""));
    return links
        .results()
        .map(each -> each.group(1))
        .filter(each -> !each.matches("[a-z]+:.*"))
        .toList();
  }
}
