package sagbook.logfile;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import sagbook.align.ClockOffset;
import sagbook.model.Channels;

/**
 * The files of one bank and what was decided about them together.
 *
 * @param name of the bank
 * @param files as surveyed
 * @param groups the files by logger; the one with the cell voltages first
 * @param offsets what to add to the clock of each group; empty for none
 * @param holdS how long a value holds in a log that writes only what changed, s
 * @param channels what they hold together
 * @param sensorOf temperature sensor of each cell, cell 1 first; 0 when it has none
 * @param sign of the current
 * @param from leave out what is earlier
 * @param to leave out what is this late or later
 * @param zone of the pack, for moments that are said
 * @param notes plain sentences about how the files were understood
 */
record BankLogs(
    String name,
    List<FileSurvey> files,
    List<FileGroup> groups,
    List<Optional<ClockOffset>> offsets,
    double holdS,
    Channels channels,
    int[] sensorOf,
    SignDecision sign,
    Optional<Instant> from,
    Optional<Instant> to,
    ZoneId zone,
    List<String> notes) {
  BankLogs {
    files = List.copyOf(files);
    groups = List.copyOf(groups);
    offsets = List.copyOf(offsets);
    notes = List.copyOf(notes);
  }
}
