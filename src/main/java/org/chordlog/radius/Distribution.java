package org.chordlog.radius;

/** What is known of a source of uncertainty (GUM 4.2, 4.3). */
public enum Distribution {
  NORMAL("normal"),
  STUDENT_T("Student's t"),
  RECTANGULAR("rectangular"),
  ONE_WAY("one way"),
  JOINT("joint normal");

  private final String word;

  Distribution(String word) {
    this.word = word;
  }

  /** As a budget prints it. */
  public String word() {
    return word;
  }
}
