package sagbook.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import sagbook.account.Account;
import sagbook.account.BalancingAccount;
import sagbook.account.StressAccount;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.BankEstimator;
import sagbook.estimate.UntoldCapacity;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
import sagbook.issue.InputProblem;
import sagbook.logfile.LogFolder;
import sagbook.logfile.OpenedLogs;
import sagbook.logfile.ReadReport;
import sagbook.logfile.ReadRequest;
import sagbook.model.CapacitySource;
import sagbook.model.PackDescription;
import sagbook.record.BankResult;
import sagbook.record.CheckResult;
import sagbook.record.InputFile;
import sagbook.verdict.BankVerdict;
import sagbook.verdict.Judge;
import sagbook.verdict.TestPlan;
import sagbook.whatif.Prospect;
import sagbook.whatif.Spare;
import sagbook.whatif.Use;
import sagbook.whatif.WhatIf;
import sagbook.wording.Words;

/** The monthly health check, from logs to result. */
public final class Check {
  private static final Words WORDS = Words.english();

  private Check() {}

  /**
   * Runs all stages: log, evidence, estimate, verdict, record.
   *
   * @param softwareVersion goes into the result
   * @param progress told in a few words what is being done
   */
  public static CheckResult run(
      ReadRequest request, String softwareVersion, Consumer<String> progress) throws InputProblem {
    PackDescription told = request.pack();
    PackDescription reckoned = told;
    progress.accept(WORDS.say("progress.looking"));
    OpenedLogs logs = LogFolder.open(request);
    Map<String, InputFile> inputs = new LinkedHashMap<>();
    List<BankResult> banks = new ArrayList<>();
    for (String bank : logs.banks()) {
      progress.accept(WORDS.say("progress.reading", bank));
      EvidenceCollector collector =
          new EvidenceCollector(
              logs.channels(bank), told.limits(), told.nominalCapacityAh(), told.bleedOhm());
      ReadReport reading = logs.read(bank, collector);
      note(reading, inputs);
      Evidence evidence = collector.finish(reading.lagS());
      if (evidence.rows() == 0) {
        throw InputProblem.input("problem.log.hour", InputProblem.quoted(bank));
      }
      progress.accept(WORDS.say("progress.estimating", bank));
      PackDescription pack = UntoldCapacity.reckoned(evidence, told);
      // Banks of one battery are alike; what is said of the battery as a whole goes by the first
      // whose log shows a size.
      reckoned = reckoned.capacitySource() == CapacitySource.ASSUMED ? pack : reckoned;
      BankEstimates estimates = BankEstimator.estimate(evidence, pack);
      Prospect prospect =
          new WhatIf(
                  estimates.cells(),
                  estimates.medianCapacityAh(),
                  pack.nominalCapacityAh(),
                  pack.chemistry(),
                  pack.limits().cellEmptyVoltage(),
                  Use.of(evidence, pack.timezone(), pack.nominalCapacityAh()),
                  Spare.of(pack))
              .prospect();
      BankVerdict verdict =
          new Judge(pack).judge(estimates, prospect, evidence.stress(), reading.advice());
      banks.add(
          new BankResult(
              bank,
              pack.chemistry(),
              pack.seriesCells(),
              instant(evidence.firstS()),
              instant(evidence.lastS()),
              evidence,
              estimates,
              new Account(
                  StressAccount.of(evidence, pack, estimates.medianCapacityAh()),
                  BalancingAccount.of(evidence, estimates, pack)),
              prospect,
              verdict,
              TestPlan.of(verdict, estimates, evidence, pack),
              reading.sentences(),
              reading.channels()));
    }
    return new CheckResult(softwareVersion, reckoned, List.copyOf(inputs.values()), banks);
  }

  private static void note(ReadReport reading, Map<String, InputFile> inputs) {
    for (ReadReport.Input i : reading.inputs()) {
      inputs.put(i.file(), new InputFile(i.file(), i.sha256(), i.rows(), i.first(), i.last()));
    }
  }

  private static Instant instant(double seconds) {
    return Instant.ofEpochMilli(Math.round(seconds * 1000));
  }
}
