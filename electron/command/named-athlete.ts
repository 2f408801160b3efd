import type { Register } from "../register/register.ts";
import type { AthleteLine } from "../register/register-views.ts";
import { UsageError } from "./usage-error.ts";

/** What of an athlete a command needs to know. */
export type NamedAthlete = Pick<AthleteLine, "id" | "code">;

/** @throws UsageError where the list holds none, or several, of this code or identifier */
export function athleteOf(register: Register, codeOrId: string): NamedAthlete {
  return theOnly(athletesNamed(register.reads.athletes(), codeOrId), codeOrId);
}

export function athletesNamed(athletes: readonly NamedAthlete[], codeOrId: string): readonly NamedAthlete[] {
  return athletes.filter(({ code, id }) => code === codeOrId || id === codeOrId);
}

/** @throws UsageError where there is none, or more than one */
export function theOnly(found: readonly NamedAthlete[], codeOrId: string): NamedAthlete {
  const [only] = found;
  if (only === undefined) throw new UsageError(`There is no athlete ${codeOrId} in the register.`);
  if (found.length > 1) {
    throw new UsageError(
      `${found.length} athletes carry the code ${codeOrId}; name one by its identifier from list --format json.`,
    );
  }
  return only;
}
