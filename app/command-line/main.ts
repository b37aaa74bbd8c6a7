/** The program as it is started from a shell. The exit code is set, never forced, so that everything written arrives. */
import { run } from "./run.ts";
import { CRASH, processTerminal } from "./terminal.ts";

const terminal = processTerminal();
try {
  process.exitCode = await run(process.argv.slice(2), terminal);
} catch (error) {
  process.exitCode = CRASH;
  await terminal.complain(crashText(error));
}

/** What the machine refused is told in a line; a mistake of ours with its trace. */
function crashText(error: unknown): string {
  if (!(error instanceof Error)) return `This is a mistake of the program, not of the site: ${String(error)}\n`;
  const { code, syscall } = error as NodeJS.ErrnoException;
  if (syscall !== undefined) return `The system refused to read or write (${code}).\n`;
  return `This is a mistake of the program, not of the site.\n${error.stack ?? error.message}\n`;
}
