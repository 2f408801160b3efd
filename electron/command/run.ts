import { engineVersion } from "../../core/ground/version.ts";
import { analyzeCommand } from "./analyze-command.ts";
import { analyzeHelp, generalHelp, inspectHelp, sheetHelp } from "./help.ts";
import { inspectCommand } from "./inspect-command.ts";
import { registerCommand } from "./register-command.ts";
import { registerHelp } from "./register-help.ts";
import { sheetCommand } from "./sheet-command.ts";
import { type Sinks, type Streams, streamsInto } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Runs the command line.
 * @param typed what stands after the program's name
 * @returns the exit code: 0 every trial analysed, 1 some partial or refused, 2 usage or nothing to read, 3 our mistake
 */
export async function run(typed: readonly string[], sinks: Sinks): Promise<number> {
  const streams = streamsInto(sinks);
  try {
    return await dispatch(typed, streams);
  } catch (error) {
    if (error instanceof UsageError) {
      streams.say(error.message);
      return 2;
    }
    const [what = "", ...where] = (error instanceof Error ? (error.stack ?? error.message) : String(error)).split("\n");
    for (const line of [`A mistake in the program: ${what}`, ...where]) streams.say(line);
    return 3;
  }
}

async function dispatch(typed: readonly string[], streams: Streams): Promise<number> {
  const [command, ...rest] = typed;
  const wantsHelp = typed.includes("--help") || typed.includes("-h");
  switch (command) {
    case "analyze":
      return wantsHelp ? show(analyzeHelp, streams) : analyzeCommand(rest, streams);
    case "sheet":
      return wantsHelp ? show(sheetHelp, streams) : sheetCommand(rest, streams);
    case "inspect":
      return wantsHelp ? show(inspectHelp, streams) : inspectCommand(rest, streams);
    case "register":
      return wantsHelp ? show(registerHelp, streams) : registerCommand(rest, streams);
    case "--version":
      return show(`${engineVersion}\n`, streams);
    case "--help":
    case "-h":
      return show(generalHelp, streams);
    case undefined:
      throw new UsageError("Name a command: analyze, inspect, sheet or register. counterpoise --help shows examples.");
    default:
      throw new UsageError(
        `There is no command "${command}"; there are analyze, inspect, sheet and register, and --help.`,
      );
  }
}

function show(text: string, streams: Streams): number {
  streams.out(text);
  return 0;
}
