import { run } from "../../../electron/command/run.ts";

/** What one run of the command line wrote and how it ended. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line in this process. */
export async function runInProcess(...typed: readonly string[]): Promise<Ran> {
  let out = "";
  let err = "";
  const code = await run(typed, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}
