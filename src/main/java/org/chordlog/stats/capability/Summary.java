package org.chordlog.stats.capability;

import java.util.List;
import java.util.Optional;
import org.chordlog.stats.control.Scope;

/** The figures of one characteristic over its newest phase or its whole job, with cautions. */
public record Summary(
    String characteristic, Scope scope, long count, List<Figure> figures, List<Caution> cautions) {
  public Summary {
    figures = List.copyOf(figures);
    cautions = List.copyOf(cautions);
  }

  public Summary over(Scope other) {
    return new Summary(characteristic, other, count, figures, cautions);
  }

  /** The figure of that kind. */
  public Optional<Figure> figure(FigureKind kind) {
    return figure(kind.figure());
  }

  /** The figure of that name, for example {@code Cpk}. */
  public Optional<Figure> figure(String name) {
    return figures.stream().filter(figure -> figure.name().equals(name)).findFirst();
  }
}
