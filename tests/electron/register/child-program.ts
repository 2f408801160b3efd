import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";

const registerFolder = fileURLToPath(new URL("../../../electron/register/", import.meta.url));

/** A TypeScript program of its own, with the register's functions at hand. */
function programFile(body: string): string {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-program-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, "program.mts");
  const modules = [
    "open-register",
    "import-sessions",
    "backups",
    "archive/write-archive",
    "restore-backup",
    "copies/list-copies",
  ];
  const imports = modules.map(
    (name, at) => `import * as m${at} from ${JSON.stringify(`${registerFolder}${name}.ts`)};`,
  );
  const [names] = [modules.map((_, at) => `...m${at}`).join(", ")];
  writeFileSync(
    file,
    `${imports.join("\n")}\nconst register = { ${names} };\nconst [, , file = "", other = ""] = process.argv;\n${body}\n`,
  );
  return file;
}

/** Runs a program to its end. Behind `limits`, shell settings such as `ulimit -f`. */
export function runProgram(
  body: string,
  parameters: readonly string[],
  limits = "",
): { readonly code: number | null; readonly out: string; readonly err: string } {
  const program = programFile(body);
  const words = [process.execPath, program, ...parameters].map((word) => `'${word}'`).join(" ");
  const { status, stdout, stderr } = spawnSync("sh", ["-c", `${limits} exec ${words}`], { encoding: "utf8" });
  return { code: status, out: stdout, err: stderr };
}

/** Starts a program and waits for its first line. */
export async function startProgram(body: string, parameters: readonly string[]) {
  const child = spawn(process.execPath, [programFile(body), ...parameters], { stdio: ["pipe", "pipe", "inherit"] });
  onTestFinished(() => void child.kill("SIGKILL"));
  const ended = new Promise<void>((resolve) => child.on("close", () => resolve()));
  const firstLine = await new Promise<string>((resolve) =>
    child.stdout.once("data", (data: Buffer) => resolve(data.toString())),
  );
  return {
    firstLine,
    kill: async () => {
      child.kill("SIGKILL");
      await ended;
    },
  };
}
