import { RequestRefused } from "../refusals/request-refused.ts";
import { machineCircumstances, openRegister } from "../register/open-register.ts";
import type { Register } from "../register/register.ts";
import { convertToEnd } from "../register/unfinished.ts";
import { visibleLine } from "../terminal/visible-text.ts";
import { parseArguments } from "./parse-arguments.ts";
import { readPassphraseFile } from "./passphrase-file.ts";
import { registerActions } from "./register-actions.ts";
import type { RegisterAnswer, RegisterRequest } from "./register-request.ts";
import { registerOptionNames } from "./register-request.ts";
import { choice } from "./stated-options.ts";
import type { Streams } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

const fieldsBetweenTellings = 5000;
const formats = ["text", "json"] as const;

/** `counterpoise register`: opens the register, does one thing with it, and closes it. */
export async function registerCommand(typed: readonly string[], streams: Streams): Promise<number> {
  const [name = "", ...rest] = typed;
  const action = Object.hasOwn(registerActions, name) ? registerActions[name] : undefined;
  if (action === undefined) {
    const known = Object.keys(registerActions).join(", ");
    throw new UsageError(`${name === "" ? "Name" : `There is no register command "${name}"; name`} one of ${known}.`);
  }
  const { options, positionals } = parseArguments(rest, registerOptionNames);
  const format = choice("--format", options.format ?? "text", formats);
  if (options.register === undefined) throw new UsageError("--register FILE says which register is meant.");
  if (positionals.length > 0 && !action.takesPaths)
    throw new UsageError(`register ${name} takes no ${positionals[0]}.`);
  const passphrase = passphraseIn(options["passphrase-file"]);
  const filePassphrase = passphraseIn(options["file-passphrase-file"]);
  const newPassphrase = passphraseIn(options["new-passphrase-file"]);
  const tell = tellingProgress(streams);
  const by = readActor(options.by, name, action.readsOnly ?? false);
  const request: RegisterRequest = {
    options,
    tell,
    paths: positionals,
    ...(filePassphrase !== undefined && { filePassphrase }),
    ...(newPassphrase !== undefined && { newPassphrase }),
  };
  try {
    action.check?.(request);
    const register = await openRegister(options.register, {
      create: action.creates ?? false,
      convertLater: true,
      circumstances: { ...machineCircumstances(), ...(by !== undefined && { by }) },
      ...(passphrase !== undefined && { passphrase }),
    });
    const run = () => {
      if (register.locked && !action.worksLocked) {
        throw new UsageError("The register is under a passphrase: --passphrase-file FILE gives it.");
      }
      convertToEnd(register, tell);
      return action.run(register, request);
    };
    return await answered(register, run, format, streams);
  } catch (error) {
    if (error instanceof RequestRefused) throw new UsageError(error.message);
    throw error;
  }
}

/** Says how far a long conversion is, every few seconds' worth of fields. */
function tellingProgress(streams: Streams): RegisterRequest["tell"] {
  let told = 0;
  return ({ done, total }) => {
    if (done - told < fieldsBetweenTellings) return;
    told = done;
    streams.say(`Written again under the register's new protection: ${done} of ${total}.`);
  };
}

/** `--by NAME`: who acts, for the journal. */
function readActor(by: string | undefined, command: string, readsOnly: boolean): string | undefined {
  if (by === undefined) return undefined;
  if (readsOnly) throw new UsageError(`register ${command} writes nothing, so it takes no --by.`);
  const name = by.trim();
  if (name === "" || name.length > 100 || /\p{Cc}/u.test(name)) {
    throw new UsageError("--by takes a name of one line, up to 100 letters.");
  }
  return name;
}

async function answered(
  register: Register,
  run: () => RegisterAnswer | Promise<RegisterAnswer>,
  format: (typeof formats)[number],
  streams: Streams,
): Promise<number> {
  try {
    for (const said of [register.readOnlyBecause, register.damage, register.unfinishedErasure]) {
      if (said !== undefined) streams.say(said);
    }
    const { damage } = register;
    const { document, lines, remarks, needsEyes } = await run();
    const inColumns = (line: string | readonly string[]) => [line].flat().map(visibleLine).join("\t");
    const texts = format === "json" ? [JSON.stringify(document, null, 2)] : lines.map(inColumns);
    streams.out(texts.map((text) => `${text}\n`).join(""));
    for (const remark of remarks ?? []) streams.say(remark);
    return needsEyes || damage !== undefined ? 1 : 0;
  } finally {
    register.close();
  }
}

function passphraseIn(file: string | undefined): Uint8Array | undefined {
  return file === undefined ? undefined : readPassphraseFile(file);
}
