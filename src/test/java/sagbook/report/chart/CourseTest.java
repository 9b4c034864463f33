package sagbook.report.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class CourseTest {
  private static final double NONE = Double.NaN;

  @Test
  void aLineThatStaysInsideIsLeftAsItIs() {
    Course inside = new Course(new double[] {0, 1, 2}, new double[] {0, NONE, 1});
    assertFalse(inside.leaves(0, 1));
    assertSame(inside, inside.within(0, 1));
  }

  @Test
  void isCutWhereItCrossesTheUpperEdgeAndComesBack() {
    Course course = new Course(new double[] {0, 1, 2}, new double[] {0, 2, 0});
    assertTrue(course.leaves(0, 1));
    Course within = course.within(0, 1);
    assertArrayEquals(new double[] {0, 0.5, 1, 1.5, 2}, within.x(), 1e-12);
    assertArrayEquals(new double[] {0, 1, NONE, 1, 0}, within.y(), 1e-12);
  }

  @Test
  void oneStepRightAcrossIsCutAtBothEdges() {
    Course within = new Course(new double[] {0, 4}, new double[] {3, -1}).within(0, 2);
    assertArrayEquals(new double[] {0, 1, 3, 4}, within.x(), 1e-12);
    assertArrayEquals(new double[] {NONE, 2, 0, NONE}, within.y(), 1e-12);
  }

  @Test
  void nothingIsJoinedOverAMissingPoint() {
    Course within = new Course(new double[] {0, 1, 2}, new double[] {0, NONE, 5}).within(0, 1);
    assertArrayEquals(new double[] {0, NONE, NONE}, within.y(), 1e-12);
  }
}
