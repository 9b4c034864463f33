package sagbook.account;

import java.util.Optional;

/**
 * A bank's accounts.
 *
 * @param stress what it went through
 * @param balancing what the boards did about balance; empty when no bleed level was logged
 */
public record Account(StressAccount stress, Optional<BalancingAccount> balancing) {}
