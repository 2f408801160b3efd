import { checkCopy } from "../register/copies/check-copy.ts";
import { checkWords, copyTroubles, protectionWords } from "../register/copies/copy-words.ts";
import { forgetCopy } from "../register/copies/forget-copy.ts";
import { listCopies } from "../register/copies/list-copies.ts";
import type { Register } from "../register/register.ts";
import type { CheckedCopy, KnownCopy } from "../register/register-views.ts";
import type { RegisterAnswer, RegisterRequest } from "./register-request.ts";
import { UsageError } from "./usage-error.ts";

/** `register copies`: every copy that is known, checked first where that is asked for. */
export async function copiesAction(
  register: Register,
  { options, filePassphrase }: RegisterRequest,
): Promise<RegisterAnswer> {
  if (options.gone !== undefined) forget(register, options.gone);
  const list = listCopies(register);
  const checks: CheckedCopy[] = [];
  if (options.verify === "yes") {
    for (const { key, protection } of list.copies) {
      checks.push(
        await checkCopy(register, key, protection === "a passphrase of its own" ? filePassphrase : undefined),
      );
    }
  }
  // What could not be kept of a check is shown all the same.
  const copies = list.copies.map((copy) => checks.find(({ key }) => key === copy.key)?.copy ?? copy);
  const notChecked = checks.flatMap(({ copy, notChecked: why }) =>
    why === undefined || copy.state === "unreachable" ? [] : [{ path: copy.path, why }],
  );
  const unkept = checks.some(
    ({ isKept, copy, notChecked: why }) => !isKept && why === undefined && copy.state === "there",
  );
  return {
    document: { ...list, copies, notChecked },
    lines: copies.length === 0 ? ["No copy is known."] : copies.flatMap(linesOf),
    remarks: [
      ...list.notTold,
      ...notChecked.map(({ path, why }) => `${path}: ${why}`),
      ...(unkept ? ["When they were checked could not be kept: the register is open for reading only."] : []),
    ],
    needsEyes: list.notTold.length > 0 || notChecked.length > 0 || copies.some((copy) => copyTroubles(copy).length > 0),
  };
}

/** Takes every copy off the list that is said to have lain at a place. */
function forget(register: Register, path: string): void {
  if (register.locked) throw new UsageError("The register is under a passphrase: --passphrase-file FILE gives it.");
  const copies = listCopies(register).copies.filter((copy) => copy.path === path && copy.kind.endsWith("elsewhere"));
  if (copies.length === 0) throw new UsageError(`No copy elsewhere is listed as ${path}; nothing was changed.`);
  for (const { key } of copies) forgetCopy(register, key);
}

function linesOf(copy: KnownCopy): readonly (string | readonly string[])[] {
  const { path, kind, madeAt, byteLength, state, athlete } = copy;
  const line = [
    path,
    athlete === undefined ? kind : `${kind}, ${athlete} alone`,
    madeAt === undefined ? "made: not known" : `made ${minute(madeAt)}`,
    byteLength === undefined ? "size not known" : `${byteLength} bytes`,
    protectionWords(copy),
    checkWords(copy, minute),
    state,
  ];
  return [line, ...copyTroubles(copy).map((sentence) => `  ${sentence}`)];
}

/** An ISO time to the minute. */
function minute(time: string): string {
  return `${time.slice(0, 16).replace("T", " ")} UTC`;
}
