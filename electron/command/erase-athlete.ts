import { countOf } from "../../core/ground/plain-words.ts";
import { dataFolder } from "../layouts/data-folder.ts";
import { certificateNeedsEyes, certificateSections } from "../register/erasing/certificate-words.ts";
import { eraseForGood, previewErasure } from "../register/erasing/erase-for-good.ts";
import type { Register } from "../register/register.ts";
import type { ErasureCertificate } from "../register/register-views.ts";
import { athletesNamed, type NamedAthlete, theOnly } from "./named-athlete.ts";
import type { RegisterAnswer, RegisterRequest } from "./register-request.ts";
import { UsageError } from "./usage-error.ts";

/**
 * Says what erasing an athlete would remove; where the code is repeated, erases at once, from the list or the bin, and
 * prints the certificate. Typed again after an attempt that was broken off, it tells how that one was finished.
 */
export function eraseAthlete(register: Register, { options }: RegisterRequest): RegisterAnswer {
  const { earlierErasure } = register;
  const typed = options.athlete;
  const found = typed === undefined ? [] : athletesNamed(eraseable(register), typed);
  if (found.length === 0 && earlierErasure !== undefined) return certified(earlierErasure, {}, []);
  if (typed === undefined) throw new UsageError("--athlete CODE is needed.");
  const { id, code } = theOnly(found, typed);
  const root = { kind: "athletes", id } as const;
  const preview = previewErasure(register, [root]);
  const removed = `${code}: ${countOf(preview.sessions, "session")}, ${countOf(preview.recordings, "recording")} and ${countOf(preview.others, "other record")}, also in ${countOf(preview.backups, "backup")}.`;
  if (options.confirm === undefined) {
    const elsewhere = preview.copiesElsewhere.map((copy) => `Not reached, delete it yourself: ${copy}`);
    const remarks = [...elsewhere, `Nothing was erased. --confirm ${code} erases it for good.`];
    return { document: { preview, erased: false }, lines: [removed], remarks };
  }
  if (options.confirm !== code) throw new UsageError(`--confirm must repeat the code ${code}.`);
  const certificate = eraseForGood(register, [root], { alsoOutsideBin: true, dataFolder: dataFolder() });
  return certified(certificate, { preview }, [`Erased. ${removed}`]);
}

/** The certificate is printed and kept nowhere; what was typed stands above it and not in it. */
function certified(certificate: ErasureCertificate, beside: object, before: readonly string[]): RegisterAnswer {
  const sections = certificateSections(certificate);
  const lines = sections.flatMap(({ title, lines: below }) => [title, ...below.map((line) => `  ${line}`)]);
  return {
    document: { ...beside, erased: true, certificate },
    lines: [...before, ...lines],
    needsEyes: certificateNeedsEyes(certificate),
  };
}

/** Those in the list, and those in the bin. */
function eraseable(register: Register): readonly NamedAthlete[] {
  const binned = [...register.contents.store.readAll("athletes")].filter((each) => each.binned);
  return [...register.reads.athletes(), ...binned.map(({ id, content }) => ({ id, code: content.code }))];
}
