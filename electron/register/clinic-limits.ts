import { defaultSettings, settingsHash } from "../../core/settings/settings.ts";
import { type ClinicLimits, clinicLimitsSchema } from "../../core/stated/cautions-schema.ts";
import type { RecordContent } from "./record-schemas.ts";
import type { Register } from "./register.ts";

/** The document among the settings that holds them. */
const documentName = "Limits of the clinic for jump testing";

/** The clinic's limits in a register; `confirmed` is absent while nobody has set any. */
export function readLimits(register: Register): { readonly confirmed?: ClinicLimits; readonly document?: string } {
  const found = register.reads.records("settingsDocuments").find(({ content }) => content.name === documentName);
  const read = clinicLimitsSchema.safeParse(found?.content.limits);
  return {
    ...(read.success && { confirmed: read.data }),
    ...(found !== undefined && { document: found.id }),
  };
}

/** Keeps the clinic's limits, with who set them and when; sessions that are there keep the limits they had. */
export function writeLimits(register: Register, limits: Omit<ClinicLimits, "setAt">, setAt: string): ClinicLimits {
  const now: ClinicLimits = { ...limits, setAt };
  const content: RecordContent<"settingsDocuments"> = {
    name: documentName,
    hash: settingsHash(defaultSettings),
    values: {},
    limits: now,
  };
  const { document } = readLimits(register);
  register.writes.act("settings changed", (changes) => {
    if (document === undefined) changes.add("settingsDocuments", {}, content);
    else changes.change("settingsDocuments", document, content);
  });
  return now;
}
