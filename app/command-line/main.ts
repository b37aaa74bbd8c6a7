/** The program as it is started from a shell. The exit code is set, never forced, so that everything written arrives. */
import { run } from "./run.ts";
import { CRASH, processTerminal } from "./terminal.ts";

const terminal = processTerminal();
try {
  process.exitCode = await run(process.argv.slice(2), terminal);
} catch (error) {
  process.exitCode = CRASH;
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  await terminal.complain(`This is a mistake of the program, not of the site.\n${trace}\n`);
}
