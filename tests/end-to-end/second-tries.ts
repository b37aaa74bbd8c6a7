import type { Reporter, TestCase } from "vitest/node";

/**
 * A browser test that fails is tried once more, as a busy machine can come between. Whatever passed only then is named at
 * the end with what went wrong first: it is a race, in the page or in the test, and wants mending.
 */
export default class SecondTries implements Reporter {
  readonly #told: string[] = [];

  onTestCaseResult(test: TestCase): void {
    if (test.diagnostic()?.flaky !== true) return;
    const [first] = test.result().errors ?? [];
    this.#told.push(`  ${test.module.relativeModuleId} > ${test.fullName}: ${first?.message ?? "no reason told"}`);
  }

  onTestRunEnd(): void {
    if (this.#told.length > 0) console.log(`Passed at the second try only, to be mended:\n${this.#told.join("\n")}`);
    this.#told.length = 0;
  }
}
