package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.issue.IssueStore;

/** Puts together the stages through which a bank's rows run. */
final class StreamBuilder {
  private final BankLogs logs;
  private final Slots slots;
  private final IssueStore issues;
  private final List<RunMerger> mergers = new ArrayList<>();
  private Optional<SweepGatherer> sweeps = Optional.empty();
  private Optional<PlaceKeeper> places = Optional.empty();

  StreamBuilder(BankLogs logs, Slots slots, IssueStore issues) {
    this.logs = logs;
    this.slots = slots;
    this.issues = issues;
  }

  /** Merged, gathered into rows, cleaned, and joined with the logs beside it. */
  RowStream open(List<FileSurvey> wanted) {
    FileGroup leading = logs.groups().get(0);
    RowStream rows = gathered(leading.only(wanted));
    if (rows instanceof SweepGatherer gatherer) {
      sweeps = Optional.of(gatherer);
    }
    List<Companion> companions = new ArrayList<>();
    for (int i = 1; i < logs.groups().size(); i++) {
      FileGroup group = logs.groups().get(i);
      companions.add(
          new Companion(
              gathered(group.only(wanted)),
              slots,
              logs.offsets().get(i),
              group.cadenceS(),
              leading.cadenceS()));
    }
    RowStream joined = companions.isEmpty() ? rows : new JoinedStream(rows, companions);
    String file = leading.files().get(0).plan().source().name();
    RowStream clean = new SpikeFilter(joined, slots, leading.cadenceS(), issues, file);
    return leading.isPartial() ? clean : keepingPlaces(clean, leading.cadenceS());
  }

  private RowStream keepingPlaces(RowStream rows, double cadenceS) {
    PlaceKeeper keeper = new PlaceKeeper(rows, slots, cadenceS, logs.zone());
    places = Optional.of(keeper);
    return keeper;
  }

  /** What was done about channels that changed places, in plain sentences. */
  List<String> placeSentences() {
    return places.map(PlaceKeeper::sentences).orElse(List.of());
  }

  /** How long after the current each cell is written, s; empty where the log doesn't say. */
  double[] lagS() {
    return sweeps.map(SweepGatherer::lagS).orElse(new double[0]);
  }

  private RowStream gathered(FileGroup group) {
    RunMerger merger = new RunMerger(group.files(), slots);
    mergers.add(merger);
    if (group.files().isEmpty() || !group.isPartial()) {
      return merger;
    }
    double holdS = group.isChangeOnly() ? logs.holdS() : 0;
    return new SweepGatherer(merger, slots, group.largest().rhythm().sweepS(), holdS);
  }

  /** Rows that were merged into another row of the same time. */
  long duplicates() {
    return mergers.stream().mapToLong(RunMerger::duplicates).sum();
  }
}
