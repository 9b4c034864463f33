package sagbook.logfile;

/**
 * A column of a file and what it was taken for.
 *
 * @param field index in the row, from 0
 * @param name as written in the file
 * @param meaning what it holds, with the unit used and the cell counted from 1
 * @param how why it was taken for that, in a few plain words
 */
record Column(int field, String name, Meaning meaning, String how) {
  Column withMeaning(Meaning other, String otherHow) {
    return new Column(field, name, other, otherHow);
  }
}
