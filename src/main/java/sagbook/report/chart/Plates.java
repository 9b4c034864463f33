package sagbook.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.model.PackDescription;
import sagbook.record.BankResult;
import sagbook.wording.Words;

/**
 * All plates of one bank.
 *
 * @param drawn in the order of the page
 * @param missing why others could not be drawn, plain sentences
 */
public record Plates(List<Plate> drawn, List<String> missing) {
  public Plates {
    drawn = List.copyOf(drawn);
    missing = List.copyOf(missing);
  }

  /** Draws every plate that the bank's evidence supports. */
  public static Plates of(BankResult bank, PackDescription pack, Words words) {
    Subject subject = new Subject(bank, pack, Picks.of(bank.verdict().cells()), words);
    List<Plate> drawn = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    take(TurnPlate.of(subject, true), words.say("plate.charge-end.missing"), drawn, missing);
    take(TurnPlate.of(subject, false), words.say("plate.discharge-end.missing"), drawn, missing);
    take(StringMapPlate.of(subject), words.say("plate.map.missing"), drawn, missing);
    take(EstimatePlate.capacity(subject), words.say("plate.capacity.missing"), drawn, missing);
    take(EstimatePlate.resistance(subject), words.say("plate.resistance.missing"), drawn, missing);
    take(EdgePlate.of(subject), words.say("plate.edge.missing"), drawn, missing);
    take(TemperaturePlate.of(subject), words.say("plate.temperature.missing"), drawn, missing);
    take(WarmthPlate.of(subject), words.say("plate.warmth.missing"), drawn, missing);
    take(DayPlate.of(subject), words.say("plate.days.missing"), drawn, missing);
    return new Plates(drawn, missing);
  }

  private static void take(
      Optional<Plate> plate, String reason, List<Plate> drawn, List<String> missing) {
    plate.ifPresentOrElse(drawn::add, () -> missing.add(reason));
  }
}
