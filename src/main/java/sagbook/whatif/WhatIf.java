package sagbook.whatif;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.StringDraws;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.whatif.StringModel.State;
import sagbook.wording.Words;

/**
 * Works out a {@link Prospect} by drawing the cells from their estimates and doing the arithmetic
 * on every draw. Differences are taken draw by draw, so that what a change leaves alone does not
 * widen its gain.
 */
public final class WhatIf {
  private static final Words WORDS = Words.english();

  /** From this excess over the string's median on a joint is worth a question, as a share. */
  private static final double JOINT_WORTH = 0.1;

  private static final double SURE = 0.95;
  private static final String NO_CAPACITIES = WORDS.say("unknown.change");

  private final List<CellEstimates> cells;
  private final Estimate medianAh;
  private final Use use;
  private final Spare spare;
  private final Optional<StringModel> model;

  /**
   * What-ifs of one string.
   *
   * @param cells cell 1 first
   * @param medianAh capacity of the median cell; where it is unknown, gains are reckoned as if it
   *     were nominal and what the string gives in all stays unknown
   * @param emptyVoltage the lower limit under load, V
   */
  public WhatIf(
      List<CellEstimates> cells,
      Estimate medianAh,
      double nominalAh,
      Chemistry chemistry,
      double emptyVoltage,
      Use use,
      Spare spare) {
    this.cells = List.copyOf(cells);
    this.medianAh = medianAh;
    this.use = use;
    this.spare = spare;
    this.model =
        StringDraws.of(cells, medianAh, nominalAh)
            .map(
                draws ->
                    new StringModel(
                        cells,
                        draws,
                        spare,
                        new LoadedEnd(chemistry, emptyVoltage),
                        use.eveningA().orElse(0)));
  }

  /** What one change buys; every gain unknown when most capacities are. */
  public Outcome outcome(Change change) {
    return model.map(m -> outcome(m, change)).orElseGet(() -> unknown(change));
  }

  /** What spares that differ from each other buy together, by place, Ah. */
  public Estimate gainAh(Map<Integer, Spare> spares) {
    return model
        .<Estimate>map(
            m -> {
              StringModel seen = m.takingAtTheirWord(List.copyOf(spares.keySet()));
              return StringDraws.spanning(
                  gained(m.now(), m.after(spares), State::usableAh),
                  gained(seen.now(), seen.after(spares), State::usableAh));
            })
        .orElse(Estimate.unknown(NO_CAPACITIES));
  }

  /** As {@link #gainAh}, of the best values alone; 0 when most capacities are unknown. */
  public ToDoubleFunction<Map<Integer, Spare>> likeliestGainAh() {
    return spares ->
        model.map(m -> m.after(spares, 0).usableAh() - m.now()[0].usableAh()).orElse(0.0);
  }

  /** The whole string's voltage drop at the highest discharge current seen, as it is, V. */
  public Estimate sagNow() {
    return outcome(Change.nothing()).sagV();
  }

  /** Everything that could be asked. */
  public Prospect prospect() {
    return model.map(this::prospect).orElseGet(this::unknownProspect);
  }

  private Prospect prospect(StringModel model) {
    List<Prospect.CellCost> costs = new ArrayList<>();
    List<Outcome> single = new ArrayList<>();
    List<Outcome> pairs = new ArrayList<>();
    List<Outcome> mended = new ArrayList<>();
    for (int cell = 1; cell <= cells.size(); cell++) {
      int it = cell;
      StringModel seen = model.takingAtTheirWord(List.of(cell));
      costs.add(
          cost(
              it,
              StringDraws.spanning(
                  byRow(model, row -> model.aloneAh(it, row)),
                  byRow(seen, row -> seen.aloneAh(it, row)))));
      single.add(outcome(model, Change.replace(List.of(cell))));
      for (int other = cell + 1; other <= cells.size(); other++) {
        pairs.add(outcome(model, Change.replace(List.of(cell, other))));
      }
      if (mayBeAJoint(cells.get(cell - 1))) {
        mended.add(outcome(model, Change.mend(cell)));
      }
    }
    Estimate energy = medianAh instanceof Estimate.Unknown ? medianAh : energyNow(model);
    return new Prospect(
        use,
        spare,
        energy,
        minutes(energy),
        sag(model, of(model.now(), State::totalMilliohm)),
        likely(model, model::fullFirst),
        likely(model, model::emptyFirst),
        costs,
        outcome(model, Change.rebalance()),
        single,
        pairs,
        mended);
  }

  private Estimate energyNow(StringModel model) {
    State[] now = model.now();
    return inTheEvening(
        StringDraws.estimate(byRow(model, row -> kiloWattHours(now[row], now[row]))));
  }

  private Prospect.CellCost cost(int cell, Estimate alone) {
    CellEstimates estimates = cells.get(cell - 1);
    Estimate known =
        estimates.capacityRelative() instanceof Estimate.Unknown size
            ? size
            : estimates.chargeOffsetPercent() instanceof Estimate.Unknown charge ? charge : alone;
    Estimate sag =
        use.highestDischargeA().isPresent()
            ? estimates
                .resistanceMilliohm()
                .map(r -> Math.max(0, r) * use.highestDischargeA().getAsDouble())
            : Estimate.unknown(WORDS.say("unknown.no-discharge"));
    return new Prospect.CellCost(known, sag);
  }

  private static boolean mayBeAJoint(CellEstimates cell) {
    return cell.ohmicExcessMilliohm() instanceof Estimate.Known excess
        && excess.value() > 0
        && cell.resistanceRelative() instanceof Estimate.Known whole
        && whole.value() > 1 + JOINT_WORTH;
  }

  private Outcome outcome(StringModel model, Change change) {
    State[] now = model.now();
    State[] then = model.after(change);
    Estimate sag = sag(model, of(then, State::totalMilliohm));
    Estimate lessSag = sag(model, gained(then, now, State::totalMilliohm));
    Optional<Estimate> unseen = unseen(change);
    if (unseen.isPresent()) {
      Estimate none = unseen.get();
      return new Outcome(change, none, none, none, none, sag, lessSag);
    }
    StringModel atTheirWord = model.takingAtTheirWord(change);
    State[] seenNow = atTheirWord.now();
    State[] seenThen = atTheirWord.after(change);
    Estimate kWh =
        inTheEvening(StringDraws.spanning(energyGain(now, then), energyGain(seenNow, seenThen)));
    return new Outcome(
        change,
        StringDraws.spanning(
            gained(now, then, State::usableAh), gained(seenNow, seenThen, State::usableAh)),
        inTheEvening(
            StringDraws.spanning(
                gained(now, then, State::eveningAh), gained(seenNow, seenThen, State::eveningAh))),
        kWh,
        minutes(kWh),
        sag,
        lessSag);
  }

  private double[] energyGain(State[] now, State[] then) {
    double[] gain = new double[now.length];
    for (int row = 0; row < gain.length; row++) {
      gain[row] = kiloWattHours(then[row], now[row]) - kiloWattHours(now[row], now[row]);
    }
    return gain;
  }

  private static double[] gained(State[] now, State[] then, ToDoubleFunction<State> quantity) {
    double[] gain = of(then, quantity);
    for (int row = 0; row < gain.length; row++) {
      gain[row] -= quantity.applyAsDouble(now[row]);
    }
    return gain;
  }

  private static double[] of(State[] states, ToDoubleFunction<State> quantity) {
    return Arrays.stream(states).mapToDouble(quantity).toArray();
  }

  /**
   * Nothing is said of what a change buys to a cell whose size or charge the log does not show: the
   * answer would be what cells usually hold, not what this one does. Levelling is about the charge
   * of all of them.
   */
  private Optional<Estimate> unseen(Change change) {
    return cells.stream()
        .filter(
            cell ->
                switch (change.kind()) {
                  case REPLACE -> change.cells().contains(cell.cell()) && isUnseen(cell);
                  case REBALANCE -> cell.chargeOffsetPercent() instanceof Estimate.Unknown;
                  case NOTHING, MEND_JOINT -> false;
                })
        .findFirst()
        .map(cell -> Estimate.unknown(WORDS.say("unknown.changed", Integer.toString(cell.cell()))));
  }

  private static boolean isUnseen(CellEstimates cell) {
    return cell.capacityRelative() instanceof Estimate.Unknown
        || cell.chargeOffsetPercent() instanceof Estimate.Unknown;
  }

  /**
   * Energy at the evening load: charge times the voltage that the log shows while discharging, less
   * what a change of resistance moves it by.
   */
  private double kiloWattHours(State state, State asLogged) {
    double ampere = use.eveningA().orElse(0);
    double moved = ampere * (state.totalMilliohm() - asLogged.totalMilliohm()) / 1000;
    return state.eveningAh() * (use.dischargeVoltageV().orElse(0) - moved) / 1000;
  }

  private Estimate inTheEvening(Estimate.Known estimate) {
    return use.eveningA().isPresent()
        ? estimate
        : Estimate.unknown(WORDS.say("unknown.no-evening"));
  }

  private Estimate minutes(Estimate kWh) {
    return kWh.map(energy -> 60_000 * energy / use.eveningLoadW().orElse(0));
  }

  private Estimate sag(StringModel model, double[] milliohm) {
    if (!model.resistanceKnown()) {
      return Estimate.unknown(WORDS.say("unknown.resistances"));
    }
    if (use.highestDischargeA().isEmpty()) {
      return Estimate.unknown(WORDS.say("unknown.no-discharge"));
    }
    double ampere = use.highestDischargeA().getAsDouble();
    return StringDraws.estimate(milliohm).map(total -> total * ampere / 1000);
  }

  private static double[] byRow(StringModel model, IntToDoubleFunction of) {
    double[] values = new double[model.rows()];
    for (int row = 0; row < values.length; row++) {
      values[row] = of.applyAsDouble(row);
    }
    return values;
  }

  /** The likeliest cells that together hold for 95 of 100 draws. */
  private static List<Integer> likely(StringModel model, IntToCell first) {
    Map<Integer, Integer> counts = new TreeMap<>();
    for (int row = 1; row < model.rows(); row++) {
      counts.merge(first.at(row), 1, Integer::sum);
    }
    List<Integer> order = new ArrayList<>(counts.keySet());
    order.sort(Comparator.comparing(cell -> -counts.getOrDefault(cell, 0)));
    List<Integer> likely = new ArrayList<>();
    int held = 0;
    for (int cell : order) {
      if (held >= SURE * (model.rows() - 1)) {
        break;
      }
      likely.add(cell);
      held += counts.getOrDefault(cell, 0);
    }
    return likely;
  }

  private interface IntToCell {
    int at(int row);
  }

  private static Outcome unknown(Change change) {
    Estimate none = Estimate.unknown(NO_CAPACITIES);
    return new Outcome(change, none, none, none, none, none, none);
  }

  private Prospect unknownProspect() {
    Estimate none = Estimate.unknown(NO_CAPACITIES);
    List<Prospect.CellCost> costs = new ArrayList<>();
    List<Outcome> single = new ArrayList<>();
    for (int cell = 1; cell <= cells.size(); cell++) {
      costs.add(cost(cell, none));
      single.add(unknown(Change.replace(List.of(cell))));
    }
    return new Prospect(
        use,
        spare,
        none,
        none,
        none,
        List.of(),
        List.of(),
        costs,
        unknown(Change.rebalance()),
        single,
        List.of(),
        List.of());
  }
}
