package sagbook.logfile;

import java.util.List;
import sagbook.wording.Words;

/**
 * Which temperature sensor stands for which cell.
 *
 * @param sensorOf sensor of each cell, cell 1 first; 0 when it has none
 * @param sentence for the keeper; empty when each cell has its own
 */
record Sensors(int[] sensorOf, String sentence) {
  private static final Words WORDS = Words.english();

  static Sensors of(List<FileSurvey> files, int cells) {
    int[] own = new int[cells];
    int present = 0;
    int highest = 0;
    for (int sensor = 1; sensor <= cells; sensor++) {
      int number = sensor;
      if (files.stream().anyMatch(f -> f.hasTemperature(number))) {
        own[sensor - 1] = sensor;
        present++;
        highest = sensor;
      }
    }
    boolean few = present > 0 && present == highest && present * 2 <= cells;
    if (!few) {
      return new Sensors(own, "");
    }
    for (int i = 0; i < cells; i++) {
      own[i] = 1 + i * present / cells;
    }
    String sentence =
        present == 1
            ? WORDS.say("reading.sensors.one")
            : WORDS.say(
                cells % present == 0 ? "reading.sensors" : "reading.sensors.about",
                Integer.toString(present),
                Integer.toString(cells),
                Long.toString(Math.round((double) cells / present)));
    return new Sensors(own, sentence);
  }

  boolean isPresent() {
    for (int sensor : sensorOf) {
      if (sensor > 0) {
        return true;
      }
    }
    return false;
  }
}
