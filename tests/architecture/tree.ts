import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const repository = new URL("../../", import.meta.url);

/** Every file of the project that git keeps or would keep (nothing ignored), as paths from the top of the repository. */
export function projectFiles(): string[] {
  const listed = execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], {
    cwd: fileURLToPath(repository),
    encoding: "utf8",
  });
  const files = [...new Set(listed.split("\0"))].filter((file) => file && existsSync(new URL(file, repository)));
  if (files.length === 0) throw new Error("git lists no files of this project");
  return files.sort();
}

export const textOf = (file: string): string => readFileSync(new URL(file, repository), "utf8");

/** The project's TypeScript under the given top folders: path -> text. */
export function sourcesUnder(...folders: string[]): Map<string, string> {
  const files = projectFiles().filter((file) => /\.tsx?$/.test(file) && folders.includes(file.split("/")[0] ?? ""));
  return new Map(files.map((file) => [file, textOf(file)]));
}
