package org.chordlog.measure;

/**
 * What is bent, as seen in the bend plane. {@code heightMm} is the full height in that plane,
 * {@code centroidFromOuterMm} the distance of the centroid from the outer face.
 */
public sealed interface Section {
  /** The kinds, so that a switch over them is exhaustive. */
  enum Kind {
    ROUND_TUBE,
    SOLID_ROUND,
    FLAT,
    BOX,
    PROFILE
  }

  /** Which of the sections it is. */
  Kind kind();

  /** Height in the bend plane, mm. */
  double heightMm();

  /** Distance of the centroid from the outer face, mm. */
  double centroidFromOuterMm();

  /** Curvature of the face across the bend, 1/mm: 1/r on a round section, 0 on a flat one. */
  double transverseCurvaturePerMm();

  record RoundTube(double outsideDiameterMm, double wallMm) implements Section {
    public RoundTube {
      Check.positive("outsideDiameterMm", outsideDiameterMm);
      if (!(Check.positive("wallMm", wallMm) < outsideDiameterMm / 2)) {
        throw new BadInput("wallMm", wallMm, "leaves no bore", below(outsideDiameterMm / 2));
      }
    }

    @Override
    public Kind kind() {
      return Kind.ROUND_TUBE;
    }

    @Override
    public double heightMm() {
      return outsideDiameterMm;
    }

    @Override
    public double centroidFromOuterMm() {
      return outsideDiameterMm / 2;
    }

    @Override
    public double transverseCurvaturePerMm() {
      return 2 / outsideDiameterMm;
    }
  }

  record SolidRound(double diameterMm) implements Section {
    public SolidRound {
      Check.positive("diameterMm", diameterMm);
    }

    @Override
    public Kind kind() {
      return Kind.SOLID_ROUND;
    }

    @Override
    public double heightMm() {
      return diameterMm;
    }

    @Override
    public double centroidFromOuterMm() {
      return diameterMm / 2;
    }

    @Override
    public double transverseCurvaturePerMm() {
      return 2 / diameterMm;
    }
  }

  record Flat(double heightMm, double widthMm) implements Section {
    public Flat {
      Check.positive("heightMm", heightMm);
      Check.positive("widthMm", widthMm);
    }

    @Override
    public Kind kind() {
      return Kind.FLAT;
    }

    @Override
    public double centroidFromOuterMm() {
      return heightMm / 2;
    }

    @Override
    public double transverseCurvaturePerMm() {
      return 0;
    }
  }

  record Box(double heightMm, double widthMm, double wallMm) implements Section {
    public Box {
      Check.positive("heightMm", heightMm);
      Check.positive("widthMm", widthMm);
      double most = Math.min(heightMm, widthMm) / 2;
      if (!(Check.positive("wallMm", wallMm) < most)) {
        throw new BadInput("wallMm", wallMm, "leaves no hollow", below(most));
      }
    }

    @Override
    public Kind kind() {
      return Kind.BOX;
    }

    @Override
    public double centroidFromOuterMm() {
      return heightMm / 2;
    }

    @Override
    public double transverseCurvaturePerMm() {
      return 0;
    }
  }

  record Profile(double heightMm, double centroidFromOuterMm) implements Section {
    public Profile {
      Check.positive("heightMm", heightMm);
      Check.lengthWithin("centroidFromOuterMm", centroidFromOuterMm, 0, heightMm);
    }

    @Override
    public Kind kind() {
      return Kind.PROFILE;
    }

    @Override
    public double transverseCurvaturePerMm() {
      return 0;
    }
  }

  private static Sentence below(double mm) {
    return Sentence.of("below %s", Quantity.stated(mm));
  }
}
