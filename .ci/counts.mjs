// Prints "N passed, N failed" from vitest's JSON result and exits as the whole run has to: 0 only when every step
// succeeded and at least one test ran. A test file that could not be loaded counts as one failure.
// Usage: node counts.mjs RESULT-FILE EXIT-STATUS-OF-THE-RUN
import { readFileSync } from "node:fs";

const [file, statusText] = process.argv.slice(2);
const status = Number(statusText);
const text = readFileSync(file, "utf8");

if (text === "") {
  console.log(`No test ran: a step before the tests failed (exit status ${status}), see above.`);
  process.exit(status || 1);
}

const result = JSON.parse(text);
const passed = result.numPassedTests;
const unloaded = result.testResults.filter((suite) => suite.status === "failed" && suite.assertionResults.length === 0);
const failed = result.numFailedTests + unloaded.length;
const skipped = result.numPendingTests + result.numTodoTests;

for (const suite of unloaded) console.log(`Not loaded: ${suite.name}`);
if (status !== 0 && failed === 0) console.log(`The run failed outside the tests (exit status ${status}), see above.`);
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`);
process.exit(status !== 0 ? status : failed > 0 || passed === 0 ? 1 : 0);
